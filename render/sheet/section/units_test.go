package section_test

import (
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
)

// TestSizesAreInTheScenesUnits: the catalogue writes metres, a scene in feet is lettered in feet.
func TestSizesAreInTheScenesUnits(t *testing.T) {
	in := fixture.Example()
	in.Setup.Lights[1].Head.UnitLabel = "1.2 m LED tube, 100 W"
	for _, c := range []struct {
		feet bool
		want string
	}{{false, "1.2 m LED tube, 100 W, softbox 0.9 m"}, {true, "3'11\" LED tube, 100 W, softbox 2'11½\""}} {
		in.Setup.Feet = c.feet
		if got := reportOf(in).LightLabel(&in.Setup.Lights[1]); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
