package lens_test

import (
	"math"
	"testing"

	"scrimshaw/plan/lens"
	"scrimshaw/testdata/published"
)

// blur is the diameter, mm, of the circle that a thin lens focused at one distance makes of a point at another, m: by the
// lens equation, from where the two images lie.
func blur(l lens.Focus, focused, at float64) float64 {
	image := func(metres float64) float64 { return 1 / (1/l.Focal - 1/(metres*1000)) }
	return l.Focal / l.Number * math.Abs(image(focused)-image(at)) / image(at)
}

func TestHyperfocal(t *testing.T) {
	for _, row := range published.Read(t, "focus.txt", "hyperfocal") {
		l := lens.Focus{Focal: row.In[0], Number: row.In[1], Confusion: row.In[2]}
		within(t, label(row), l.Hyperfocal(), row.Out[0], 0.005)
	}
	for _, row := range published.Read(t, "focus.txt", "confusion") {
		within(t, label(row), lens.Confusion(row.In[0], row.In[1]), row.Out[0], 5e-4)
	}
}

// At both ends of what is sharp a point makes the largest circle that counts as one, and beyond them a larger.
func TestSharpEndsWhereAPointIsACircle(t *testing.T) {
	for _, row := range published.Read(t, "focus.txt", "sharp") {
		near, far, ok := lens.Focus{Focal: row.In[0], Number: row.In[1], Confusion: row.In[2]}.Sharp(row.In[3])
		if !ok {
			t.Fatalf("%s: nothing is sharp", label(row))
		}
		within(t, label(row)+" near", near, row.Out[0], 5e-4)
		within(t, label(row)+" far", far, row.Out[1], 5e-4)
	}
	for _, l := range []lens.Focus{{18, 2.8, 0.0207}, {50, 4, 0.0207}, {85, 1.4, 0.0288}, {135, 8, 0.0288}} {
		for _, d := range []float64{0.6, 1.5, 3, 8} {
			near, far, _ := l.Sharp(d)
			within(t, "the circle of the nearest", blur(l, d, near), l.Confusion, 1e-9)
			if !math.IsInf(far, 1) {
				within(t, "the circle of the farthest", blur(l, d, far), l.Confusion, 1e-9)
			}
		}
		h := l.Hyperfocal()
		near, far, _ := l.Sharp(h)
		within(t, "the nearest from the hyperfocal distance", near, h/2, 1e-12*h)
		if !math.IsInf(far, 1) {
			t.Errorf("focused at %g m, %g m is the farthest", h, far)
		}
		within(t, "the circle of infinity", blur(l, h, 1e9), l.Confusion, 1e-6)
	}
	if _, _, ok := (lens.Focus{50, 2.8, 0.02}).Sharp(0.05); ok {
		t.Error("a lens is focused at its focal length")
	}
}
