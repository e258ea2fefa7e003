package section_test

import (
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
)

// TestSizesAreInTheScenesUnits: the catalogue writes metres, a scene in feet is lettered in feet.
func TestSizesAreInTheScenesUnits(t *testing.T) {
	in := fixture.Example()
	const tube, mat = "1.2 m LED tube, 100 W", "flexible mat 1.2 × 0.6 m"
	for _, c := range []struct {
		unit string
		feet bool
		want string
	}{
		{tube, false, tube + ", softbox 0.9 m"}, {tube, true, "3'11\" LED tube, 100 W, softbox 2'11½\""},
		{mat, false, mat + ", softbox 0.9 m"}, {mat, true, "flexible mat 3'11\" × 1'11½\", softbox 2'11½\""},
	} {
		in.Setup.Lights[1].Head.UnitLabel, in.Setup.Feet = c.unit, c.feet
		if got := reportOf(in).LightLabel(&in.Setup.Lights[1]); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
