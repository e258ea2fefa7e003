package section

import (
	"slices"
	"testing"

	"scrimshaw/plan"
)

// What all set-ups assume is said once, of all things together that it is the same for; what one set-up assumes is not.
func TestCommonAssumptionsAreGathered(t *testing.T) {
	of := func(thing, what, value string) plan.Assumption {
		return plan.Assumption{Thing: thing, What: what, Value: value}
	}
	both := []plan.Assumption{of("hall", "wall", "0.15 m"), of("A", "lens", "35 mm"), of("store", "wall", "0.15 m"), of("A", "height", "1.5 m"), of("porch", "wall", "0.2 m")}
	got := CommonAssumed([]Digest{{Assumed: both}, {Assumed: append(slices.Clone(both[:4]), of("porch", "wall", "0.3 m"))}}).Words
	if want := []string{"hall, store: wall 0.15 m", "A: lens 35 mm; height 1.5 m"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}
