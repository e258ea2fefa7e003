package solid

import (
	"math"
	"testing"
)

// The Fresnel slab of index 1.526 that takes nothing (testdata: checks of materials, computed): each figure as printed.
func TestFresnelSlab(t *testing.T) {
	for degrees, want := range map[float64]float64{0: 0.9169, 15: 0.9168, 30: 0.9145, 45: 0.9011, 60: 0.8421, 70: 0.7236, 80: 0.4554} {
		if got := sheetsOf(1, 1.526, 1, math.Cos(degrees*math.Pi/180)); math.Abs(got-want) > 5e-5 {
			t.Errorf("at %g degrees %.5f passes, want %.4f", degrees, got, want)
		}
	}
	hemisphere, n := 0.0, 20000
	for i := range n {
		cos := (float64(i) + 0.5) / float64(n)
		hemisphere += 2 * cos * sheetsOf(1, 1.526, 1, cos) / float64(n)
	}
	if math.Abs(hemisphere-0.8451) > 5e-5 {
		t.Errorf("from all over the hemisphere %.5f passes, want 0.8451", hemisphere)
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
