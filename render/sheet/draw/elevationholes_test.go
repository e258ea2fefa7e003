package draw

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// TestThePaneInTheMiddle is where an opening is named first: the lower left of several.
func TestThePaneInTheMiddle(t *testing.T) {
	hole := box.Of(0, 0, 40, 30)
	for panes, want := range map[[2]int]r2.Vec{{1, 1}: box.At(20, 15), {2, 2}: box.At(10, 7.5), {3, 1}: box.At(20, 15), {4, 2}: box.At(15, 7.5), {0, 0}: box.At(20, 15)} {
		if b := panesOf(hole, panes)[0]; !near(box.Middle(b.Min, b.Max), want) {
			t.Errorf("of %v panes the middle one is %v", panes, b)
		}
	}
}
