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

// arrangements are the last few of a drawing, the newest first.
type arrangements []arrangement

// mostArrangements bounds how many are kept.
const mostArrangements = 6

// place is carto.Place, by what has been asked before where that is the same.
func (before *arrangements) place(labels []carto.Label, o carto.PlaceOptions) []carto.Placement {
	for i := range *before {
		if a := &(*before)[i]; reflect.DeepEqual(a.labels, labels) && reflect.DeepEqual(a.options, o) {
			return a.placed
		}
	}
	placed := carto.Place(labels, o)
	*before = append(arrangements{{labels, o, placed}}, (*before)[:min(len(*before), mostArrangements-1)]...)
	return placed
}
