package radiosity

import (
	"testing"

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
