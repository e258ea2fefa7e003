package truth

import (
	"math"
	"testing"

	"scrimshaw/plan/solid"
	"scrimshaw/testdata/published"
)

// The tracer's glass, which follows light from face to face, and the engine's closed form agree, and the tracer's with what is
// published of sheets that take nothing.
func TestGlassFaceByFace(t *testing.T) {
	for _, row := range published.Read(t, "glass.txt", "slab") {
		if got := passesAt(math.Cos(row.In[2]*math.Pi/180), row.In[0], int(row.In[1]), 0); !(math.Abs(got-row.Out[0]) <= 5e-5) {
			t.Errorf("at %g degrees %.5f passes, want %g: %s", row.In[2], got, row.Out[0], row.Source)
		}
	}
	for _, g := range []*solid.Glass{solid.NewGlass(1.526, 1, 0.90), solid.NewGlass(1.526, 2, 0.80), solid.NewGlass(1.526, 1, 0.45), solid.NewGlass(1.7, 3, 0.5)} {
		f := face{glass: g}
		takes := f.taken()
		ahead := passesAt(1, g.Index, g.Sheets, takes)
		if !(math.Abs(ahead-g.Ahead) <= 1e-6) {
			t.Errorf("%d sheets pass %.6f from ahead, not %.6f", g.Sheets, ahead, g.Ahead)
		}
		for degrees := 0.0; degrees < 90; degrees += 5 {
			cos := math.Cos(degrees * math.Pi / 180)
			got, want := g.Ratio(cos), passesAt(cos, g.Index, g.Sheets, takes)/ahead
			if !(math.Abs(got-want) <= 2e-4) {
				t.Errorf("%d sheets of %g at %g degrees: %.5f, face by face %.5f", g.Sheets, g.Ahead, degrees, got, want)
			}
		}
	}
}
