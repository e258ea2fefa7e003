package light

import (
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// Way is how light of a lamp comes straight to a receptor, through the same panes.
type Way struct {
	Via    []solid.ID // panes passed, in order from the lamp
	Filter colour.RGB // what they leave of it
	Lux    float64    // at levels of {1, 1, 1}, before the filter
}

// Straight finds the ways on which the light of a lamp comes straight to a receptor of a world, as its Basis does: none where nothing of
// it is seen.
func Straight(w *World, e *Emitter, r *Receptor) []Way {
	t := &tracer{visibleSums: newVisibleSums(w.bvh)}
	var ways []Way
	for _, s := range t.light(newStraightLamp(w, e), r) {
		ways = append(ways, Way{Via: slices.Clone(s.via), Filter: s.filter, Lux: s.value})
	}
	return ways
}

// Receptor is what reads the light of point i: the target itself, or of a Radiance a flat receptor on the surface that it
// looks at.
func (b *Basis) Receptor(i int) Receptor { return b.resolved[i] }
