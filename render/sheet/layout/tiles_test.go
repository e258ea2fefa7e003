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
		split, ok := tiled(extent, panel, 100, Seams{})
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
					if got := split.Part(i); box.Width(got) > (box.Width(panel)-2*marginX)/10+1e-9 || box.Height(got) > (box.Height(panel)-2*marginY)/10+1e-9 {
						t.Fatalf("case %d: part %d is %v m and its panel %v mm at 1:100", n, i, got, panel)
					}
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

// TestMatchLinesRunThroughEmptyFloor scatters things: no match line runs through one, neighbours share 5 to 10 % of a
// panel.
func TestMatchLinesRunThroughEmptyFloor(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	lines := 0
	for n := range 200 {
		extent := box.Of(0, 0, 20+40*random.Float64(), 15+30*random.Float64())
		panel := box.Of(20, 30, 250+150*random.Float64(), 200+80*random.Float64())
		var clear Seams
		for range 6 {
			at := r2.Vec{X: random.Float64() * box.Width(extent), Y: random.Float64() * box.Height(extent)}
			clear.Never = append(clear.Never, r2.Box{Min: r2.Sub(at, r2.Vec{X: 0.4, Y: 0.4}), Max: r2.Add(at, r2.Vec{X: 0.4, Y: 0.4})})
		}
		split, ok := tiled(extent, panel, 100, clear)
		if !ok || split.Parts() == 1 {
			continue
		}
		for _, x := range split.xs[1 : len(split.xs)-1] {
			lines++
			for _, b := range clear.Never {
				if x > b.Min.X && x < b.Max.X {
					t.Errorf("case %d: a line at x = %.2f runs through %v", n, x, b)
				}
			}
		}
		for _, y := range split.ys[1 : len(split.ys)-1] {
			lines++
			for _, b := range clear.Never {
				if y > b.Min.Y && y < b.Max.Y {
					t.Errorf("case %d: a line at y = %.2f runs through %v", n, y, b)
				}
			}
		}
		if share := 2 * split.shown.X / (box.Width(panel) - 2*marginX) * 10; split.Nx > 1 && (share < 0.05 || share > 0.10) {
			t.Errorf("case %d: neighbours share %.0f %% of a panel", n, 100*share)
		}
	}
	if lines < 100 {
		t.Errorf("only %d lines", lines)
	}
}
