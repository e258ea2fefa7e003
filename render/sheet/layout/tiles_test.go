package layout

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// TestPartsCoverThePlan splits extents at random: every point of one lies in a part, and the parts'
// own pieces, up to the match lines, lie beside each other without a gap.
func TestPartsCoverThePlan(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for n := range 200 {
		extent := box.Of(-3, 2, -3+80*random.Float64(), 2+60*random.Float64())
		panel := box.Of(20, 30, 150+200*random.Float64(), 140+150*random.Float64())
		split, ok := tiled(extent, panel, 100)
		if !ok {
			if split.Parts() <= maxParts {
				t.Fatalf("case %d: not split, with %d parts", n, split.Parts())
			}
			continue
		}
		for range 50 {
			p := r2.Vec{X: extent.Min.X + random.Float64()*box.Width(extent), Y: extent.Min.Y + random.Float64()*box.Height(extent)}
			owners := 0
			for i := range split.Parts() {
				if box.Contains(split.Own(i), p) {
					owners++
					if !box.Contains(split.Part(i), p) {
						t.Fatalf("case %d: part %d owns what it does not show", n, i)
					}
				}
			}
			if owners != 1 {
				t.Fatalf("case %d: %v lies in %d parts' own pieces", n, p, owners)
			}
		}
	}
}
