package radiosity

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// A set of greys is computed as one channel; any two channels that differ anywhere make it three, and black returns nothing.
func TestColoursDecideTheChannels(t *testing.T) {
	for _, c := range []struct {
		colours  []colour.RGB
		channels int
		reflects bool
	}{
		{nil, 1, false},
		{[]colour.RGB{{}, {}}, 1, false},
		{[]colour.RGB{{0.5, 0.5, 0.5}, {0.2, 0.2, 0.2}}, 1, true},
		{[]colour.RGB{{0.5, 0.5, 0.3}}, 3, true},
		{[]colour.RGB{{0.3, 0.5, 0.5}, {0.2, 0.2, 0.2}}, 3, true},
		{[]colour.RGB{{0.2, 0.2, 0.2}, {0, 0, 0.1}, {}}, 3, true},
	} {
		m := mesh{channels: 1}
		for _, one := range c.colours {
			m.noteColour(one)
		}
		if m.channels != c.channels || m.reflects != c.reflects {
			t.Errorf("%v: %d channels, returns light: %v; want %d, %v", c.colours, m.channels, m.reflects, c.channels, c.reflects)
		}
	}
}

// Places on a patch fill it evenly from its corner, whatever its sides.
func TestPlacesFillTheirPatch(t *testing.T) {
	f, ok := newFace([]r3.Vec{{}, {X: 4}, {X: 4, Y: 1}, {Y: 1}})
	if !ok {
		t.Fatal("a rectangle is no face")
	}
	f.du, f.dv = 0.5, 0.25
	p := &patch{x: 1, y: 0.5}
	for at, want := range map[[2]float64]r3.Vec{{0, 0}: f.at(1, 0.5), {1, 0}: f.at(1.5, 0.5), {0, 1}: f.at(1, 0.75), {0.5, 0.2}: f.at(1.25, 0.55)} {
		if got := placeOn(&f, p, at[0], at[1]); r3.Norm(r3.Sub(got, want)) > 1e-12 {
			t.Errorf("the place of %v is %v, want %v", at, got, want)
		}
	}
}
