package radiosity

import (
	"math"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// What an element is worth that is seen through panes does not tell, by a single bit, which of the rays that see it alike came first.
func TestRaysThatSeeAlikeCountAlike(t *testing.T) {
	glass := solid.Skin{Direct: colour.RGB{0.8, 0.7, 0.6}, Glass: solid.NewGlass(1.52, 2, 0.8)}
	worth := map[float32]colour.RGB{}
	for number := range 2000 {
		cos := float64(number+1) / 2000
		panes := []solid.Pane{
			{ID: 1, Ahead: glass.Direct, Ratio: glass.Glass.Ratio(cos)},
			{ID: 2, Ahead: glass.Direct, Ratio: glass.Glass.Ratio(1 - cos/2)},
			{ID: 3, Ahead: glass.Direct, Ratio: glass.Glass.Ratio(math.Sqrt(cos))},
		}
		settle(panes, veils{}, newGlassTurns(), number)
		var seen filteredElements
		seen.behind(4, panes, false)
		alone := seen.list[0]
		if first, known := worth[alone.ratio]; known && first != alone.factor {
			t.Fatalf("seen %g as well as from straight ahead: %v, and of another ray %v", alone.ratio, first, alone.factor)
		}
		worth[alone.ratio] = alone.factor
	}
	if len(worth) < 10 {
		t.Errorf("rays see in %d ways", len(worth))
	}
}
