package draw

import (
	"reflect"

	"scrimshaw/render/carto"
)

// A plan is arranged to see what its labels say of a layout, again beside the next one, and at last to be drawn. Among many labels that
// is most of the work of a sheet, so that what has been asked before is not worked out anew.

// arrangement is where labels went in the way of obstacles.
type arrangement struct {
	labels  []carto.Label
	options carto.PlaceOptions
	placed  []carto.Placement
}

// mostArrangements bounds how many are kept of a drawing.
const mostArrangements = 6

// arrange is carto.Place, by what has been asked before where that is the same.
func (c *Drawing) arrange(labels []carto.Label, o carto.PlaceOptions) []carto.Placement {
	for i := range c.before {
		if a := &c.before[i]; reflect.DeepEqual(a.labels, labels) && reflect.DeepEqual(a.options, o) {
			return a.placed
		}
	}
	placed := carto.Place(labels, o)
	c.before = append([]arrangement{{labels, o, placed}}, c.before[:min(len(c.before), mostArrangements-1)]...)
	return placed
}
