package section_test

import (
	"slices"
	"testing"

	"scrimshaw/plan/scene"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// A sheet says how the meter of its faces is held, up to eight lights: with more lights, without a side of a face or without a stop to work at it does not.
func TestWhoSaysHowFacesAreMetered(t *testing.T) {
	for name, c := range map[string]struct {
		change func(in *section.Input)
		want   bool
	}{
		"as it is":      {func(*section.Input) {}, true},
		"eight lights":  {func(in *section.Input) { lightsOf(in, 8) }, true},
		"nine lights":   {func(in *section.Input) { lightsOf(in, 9) }, false},
		"no side known": {func(in *section.Input) { in.Faces = []section.Face{{Person: "ruth"}} }, false},
		"no stop":       {func(in *section.Input) { in.Setup.Exposure.Stop = scene.Stop{} }, false},
	} {
		in := fixture.Example()
		c.change(&in)
		said := slices.ContainsFunc(reportOf(in).Sections(), func(s *section.Section) bool { return s.Title == "How faces are metered" })
		if said != c.want {
			t.Errorf("%s: said %v", name, said)
		}
	}
}

// lightsOf gives an input as many lights, all like its first.
func lightsOf(in *section.Input, count int) {
	in.Setup.Lights = slices.Repeat(in.Setup.Lights[:1], count)
}
