package solid

import (
	"math"
	"testing"

	"scrimshaw/testdata/published"
)

// Sheets that take nothing: each figure as published.
func TestFresnelSheets(t *testing.T) {
	for _, row := range published.Read(t, "glass.txt", "slab", "covers") {
		index, sheets, degrees := row.In[0], int(row.In[1]), row.In[2]
		last := map[string]float64{"slab": 5e-5, "covers": 5e-3}[row.Label]
		if got, back := sheetsOf(sheets, index, 1, math.Cos(degrees*math.Pi/180)); !(math.Abs(got+back-1) <= 1e-12) || !(math.Abs(got-row.Out[0]) <= last) {
			t.Errorf("%d sheets at %g degrees let %.5f pass, want %g: %s", sheets, degrees, got, row.Out[0], row.Source)
		}
	}
	row := published.Read(t, "glass.txt", "hemisphere")[0]
	hemisphere, n := 0.0, 20000
	for i := range n {
		cos := (float64(i) + 0.5) / float64(n)
		through, _ := sheetsOf(1, row.In[0], 1, cos)
		hemisphere += 2 * cos * through / float64(n)
	}
	if !(math.Abs(hemisphere-row.Out[0]) <= 5e-5) {
		t.Errorf("from all over the hemisphere %.5f passes, want %g", hemisphere, row.Out[0])
	}
}

// A kept law lets straight ahead pass what is given, falls to nothing aside, and two sheets pass less from aside than one.
func TestGlassLaw(t *testing.T) {
	one, two := NewGlass(1.526, 1, 0.90), NewGlass(1.526, 2, 0.80)
	last := math.Inf(1)
	for cos := 1.0; cos > 0; cos -= 0.01 {
		a, b := one.Ratio(cos), two.Ratio(cos)
		if a > last+1e-4 || b > a+1e-6 {
			t.Errorf("at the cosine %.2f one sheet passes %.5f of ahead, before it %.5f; two %.5f", cos, a, last, b)
		}
		last = a
	}
	if one.Ratio(1) != 1 || one.Ratio(-1) != 1 || one.Ratio(0) != 0 {
		t.Errorf("from ahead %g, from behind %g, along the glass %g", one.Ratio(1), one.Ratio(-1), one.Ratio(0))
	}
}

// A pane throws back what its two faces do: with all light that is thrown to and fro and nothing taken, 2r/(1+r) of one face's r
// (4.3 % at an index of 1.526, A. Fresnel, 1823), and all of it along the glass.
func TestPanesReturnLight(t *testing.T) {
	clear := NewGlass(1.526, 1, 1)
	face := math.Pow(0.526/2.526, 2)
	clear.inner = 1
	if got, want := clear.Returned(1), 2*face/(1+face); !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("from straight ahead %.6f, want %.6f", got, want)
	}
	if got := clear.Returned(0); got != 1 {
		t.Errorf("along the glass %g, want all", got)
	}
	taking := NewGlass(1.526, 1, 0.90)
	if a, b := taking.Returned(1), taking.Returned(-0.5); a > clear.Returned(1) || a < face || b < a {
		t.Errorf("glass that takes some returns %.4f from ahead and %.4f from 60° behind it", a, b)
	}
}
