package draw

import (
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// kitchenDrawing is a drawing of an input in the look of the day.
func kitchenDrawing(t *testing.T, in section.Input) *Drawing {
	t.Helper()
	setup := in.Setup
	units := section.Units{Feet: setup.Feet, Stop: setup.Exposure.Stop.N}
	look := themes()[0]
	p := Pad{Look: &look, Face: fixture.Family(t), White: section.WhiteOf(setup)}
	return New(section.Report{In: &in, Units: units}, p, func(text string) { t.Errorf("%q is cut", text) }, How{})
}
