package draw

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
)

// What has been asked before is not worked out anew, and whatever is asked, labels go where they do by themselves: with other lettering,
// other obstacles and less paper, too. Of a drawing the last few are kept.
func TestArrangementsAreRemembered(t *testing.T) {
	labels := func(wide float64) (all []carto.Label) {
		for i := range 4 {
			toward := r2.Vec{X: 1}
			all = append(all, carto.Label{Anchor: r2.Vec{X: 20 + 9*float64(i), Y: 30}, Forms: []carto.Form{{Size: r2.Vec{X: wide, Y: 6}, Leader: 30}}, Toward: &toward})
		}
		return all
	}
	options := func(wide, obstacle float64) carto.PlaceOptions {
		return carto.PlaceOptions{Area: box.Of(0, 0, wide, 60), Gap: 1.2, Obstacles: []carto.Obstacle{hard(box.Of(obstacle, 32, obstacle+9, 36))}}
	}
	var before arrangements
	for range 2 {
		for n, q := range []struct {
			labels  []carto.Label
			options carto.PlaceOptions
		}{{labels(12), options(80, 30)}, {labels(14), options(80, 30)}, {labels(12), options(80, 31)}, {labels(12), options(50, 30)}} {
			got := before.place(q.labels, q.options)
			if want := carto.Place(q.labels, q.options); !slices.Equal(got, want) {
				t.Errorf("question %d: labels go to %v, want %v", n, got, want)
			}
		}
	}
	if len(before) != 4 {
		t.Errorf("%d arrangements are kept of four that were asked for twice", len(before))
	}
	for n := range mostArrangements {
		before.place(labels(12), options(90+float64(n), 30))
	}
	if before.place(labels(12), options(80, 30)); len(before) != mostArrangements || before[0].options.Area != box.Of(0, 0, 80, 60) {
		t.Errorf("%d arrangements are kept, last %v", len(before), before[0].options.Area)
	}
}
