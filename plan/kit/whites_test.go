package kit

import (
	"math"
	"testing"

	"scrimshaw/plan/source"
)

// A unit whose white could not be read has the plain one: figures of no colour were infinite.
func TestUnitWithoutWhite(t *testing.T) {
	log := &source.Log{}
	b := &builder{log: log}
	b.setWhite(&Unit{})
	if k := b.head.native.Kelvin; k != PlainWhite || math.IsInf(1e6/k, 0) {
		t.Errorf("it has %g K", k)
	}
}
