package kit

import (
	"testing"

	"scrimshaw/plan/photometry"
)

// How an edge is set shows in a beam that is known by its angles, which becomes a flat field then; measured light keeps its own.
func TestMeasuredLightKeepsItsEdge(t *testing.T) {
	soft := 1.0
	for _, c := range []struct {
		d    photometry.Distribution
		flat bool
	}{{photometry.NewLobe(20, 40), true}, {photometry.Cosine{}, false}} {
		h := Head{Source: photometry.Source{Flux: 1000, Distribution: c.d}, Edge: &soft}
		h.SetGate(nil, nil)
		if changed := h.Source.Distribution != c.d; changed != c.flat {
			t.Errorf("%T: changed %v by a soft edge, want %v", c.d, changed, c.flat)
		}
		if got := (&Head{Source: photometry.Source{Distribution: c.d}}).TakesEdge(); got != c.flat {
			t.Errorf("%T takes an edge: %v, want %v", c.d, got, c.flat)
		}
	}
}
