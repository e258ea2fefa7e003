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
	worth, turns := map[float32]colour.RGB{}, newGlassTurns(&turns{}, 3)
	for number := range 2000 {
		cos := float64(number+1) / 2000
		panes := []solid.Pane{
			{ID: 1, Ahead: glass.Direct, Ratio: glass.Glass.Ratio(cos)},
			{ID: 2, Ahead: glass.Direct, Ratio: glass.Glass.Ratio(1 - cos/2)},
			{ID: 3, Ahead: glass.Direct, Ratio: glass.Glass.Ratio(math.Sqrt(cos))},
		}
		settle(panes, veils{}, turns, onFirst(number))
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

// What panes one behind the other count as, and behind mirrors, knows nothing of each other: the mean of the product is the product
// of the means, which are what passes.
func TestPanesCountByThemselves(t *testing.T) {
	const rays = 20000
	all := newGlassTurns(&turns{}, 3)
	first := turns{}
	stretches := newStretches(&first, mostMirrors)
	for _, ratios := range [][]float64{{0.95, 0.95}, {0.6, 0.6}, {0.4, 0.9}, {0.1, 0.1}, {0.6, 0.6, 0.6}, {0.3, 0.8, 0.95}} {
		for met := range mostMirrors {
			want, ahead, behind := 1.0, 0.0, 0.0
			for _, r := range ratios {
				want *= r
			}
			for number := range rays {
				before := passedBy(ratios, all, onFirst(number))
				ahead += before / rays
				behind += before * passedBy(ratios, all, moment{number, stretches[met+1]}) / rays
			}
			if !(math.Abs(ahead-want) <= 1e-3) || !(math.Abs(behind-want*want) <= 1e-3) {
				t.Errorf("panes that pass %g pass %.5f in all, not %.5f, and with those behind %d mirrors %.5f, not %.5f", ratios, ahead, want, met+1, behind, want*want)
			}
		}
	}
}

// passedBy is what panes that pass so much count as for a ray.
func passedBy(ratios []float64, turns glassTurns, now moment) float64 {
	var panes []solid.Pane
	for i, r := range ratios {
		panes = append(panes, solid.Pane{ID: solid.ID(i + 1), Ahead: colour.RGB{1, 1, 1}, Ratio: r})
	}
	settle(panes, veils{}, turns, now)
	return float64(ratioOf(panes))
}
