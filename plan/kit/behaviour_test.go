package kit_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
)

// A box takes of the light that leaves the head, not of the lamp inside it.
func TestSoftboxOnAnOpenFaceTakesOfItsLight(t *testing.T) {
	for _, unit := range []string{"open-tungsten-1000", "discharge-1800"} {
		bare := head(t, kit.Choice{Unit: unit})
		box := head(t, kit.Choice{Unit: unit, Modifier: "softbox-90"})
		within(t, unit, box.Source.Flux/bare.Source.Flux, 0.55, 1e-9)
	}
}

// A tube of LED shines to one side: pi times as bright in front as one that shines all round, and nothing behind.
func TestTubeShinesToOneSide(t *testing.T) {
	h := head(t, kit.Choice{Unit: "led-tube-120"})
	within(t, "in front", h.Source.Intensity(r3.Vec{Z: -1}), 3000/math.Pi, 1e-9)
	within(t, "behind", h.Source.Intensity(r3.Vec{Z: 1}), 0, 0)
	if h.AllRound() {
		t.Error("an aim means nothing to it")
	}
}

// A honeycomb is dimmer than the reflector that it sits on, a snoot no brighter than the bare source, and a box pays for its grid once.
func TestCellsOnlyTake(t *testing.T) {
	const unit = "led-point-300-daylight"
	peak := func(modifier string) float64 {
		return head(t, kit.Choice{Unit: unit, Modifier: modifier}).Source.Peak()
	}
	within(t, "honeycomb over its reflector", peak("reflector-wide + honeycomb-30")/peak("reflector-wide"), 0.92, 1e-9)
	within(t, "snoot over the bare source", peak("snoot")/peak(kit.Unmodified), 1, 1e-9)
	within(t, "grid over its box", peak("softbox-90 + grid-40")/peak("softbox-90"), 0.95, 1e-9)
	for modifier, cutOff := range map[string]float64{"reflector-wide + honeycomb-30": 30, "reflector-wide + honeycomb-60": 60, "softbox-90 + grid-40": 40, "softbox-90 + grid-50": 50, "snoot": 23} {
		h := head(t, kit.Choice{Unit: unit, Modifier: modifier})
		for _, angle := range []float64{cutOff - 2, cutOff + 0.01} {
			sin, cos := math.Sincos(angle * math.Pi / 180)
			if lit := h.Source.Intensity(r3.Vec{X: sin, Z: -cos}) > 0; lit != (angle < cutOff) {
				t.Errorf("%s at %g°: lit %v", modifier, angle, lit)
			}
		}
	}
}

// The three lengths of a stack's name: what goes on what, and what a user reads where it does not.
func TestStacks(t *testing.T) {
	h := head(t, kit.Choice{Unit: "led-point-600-daylight", Modifier: "softbox-90+grid-40"})
	within(t, "kg", h.Mass, 5.2+1.7+0.5, 1e-9)
	if h.ModifierLabel != "softbox 0.9 m + grid 40" {
		t.Errorf("it is called %q", h.ModifierLabel)
	}
	for modifier, want := range map[string][2]string{
		"honeycomb-40":               {`"honeycomb-40" does not fit on "led-point-600-daylight"`, "it goes on another modifier; write reflector-narrow + honeycomb-40"},
		"reflector-wide + grid-40":   {`"grid-40" does not fit on "reflector-wide"`, "it takes honeycomb-30, honeycomb-40, honeycomb-50, honeycomb-60"},
		"snoot + grid-40":            {`"grid-40" does not fit on "snoot"`, "nothing goes on it"},
		"softbox-90 + gird-40":       {`there is no modifier "gird-40" in the catalogue`, `did you mean "grid-40"?`},
		"softbox-90 + grid-40 + bar": {`there is no modifier "bar" in the catalogue`, "`scrimshaw kit modifiers` lists them"},
	} {
		log := &source.Log{}
		_, ok := shipped(t).Head(kit.Choice{Unit: "led-point-600-daylight", Modifier: modifier}, log)
		if all := log.All(); ok || len(all) != 1 || all[0].Message != want[0] || all[0].Hint != want[1] {
			t.Errorf("%s: ok %v, %v", modifier, ok, all)
		}
	}
}

// Where nothing is said of focus a zoom is flooded; on the way beam, field and flux go by equal factors, and a snoot takes the light of the focus.
func TestFocus(t *testing.T) {
	const unit = "fresnel-tungsten-650"
	lux := func(modifier string, focus *float64) float64 {
		return head(t, kit.Choice{Unit: unit, Modifier: modifier, Focus: focus}).Source.Peak() / 9
	}
	within(t, "flood", lux("", nil), 640, 1e-6)
	within(t, "spot", lux("", at(0)), 5000, 1e-6)
	within(t, "snoot at spot", lux("snoot", at(0)), 5000, 1e-6)
	half := head(t, kit.Choice{Unit: unit, Focus: at(0.5)})
	beam, _ := photometry.BeamAngle(half.Source.Distribution)
	within(t, "beam half way", beam, math.Sqrt(11*50), 1e-6)
	flux := math.Sqrt(head(t, kit.Choice{Unit: unit, Focus: at(0)}).Source.Flux * head(t, kit.Choice{Unit: unit}).Source.Flux)
	within(t, "flux half way", half.Source.Flux, flux, 1e-6)
	lens := head(t, kit.Choice{Unit: "led-point-300-daylight", Modifier: "fresnel-lens", Focus: at(0)})
	within(t, "lens at spot", lens.Source.Flux, 0.22*30000, 1e-6)
}

// A level that a unit cannot be set to is an error, with the nearest that it can.
func TestLevels(t *testing.T) {
	for _, c := range []struct {
		unit          string
		level         float64
		message, hint string
	}{
		{"discharge-575", 0.5, "", ""}, {"discharge-575", 0, "", ""}, {"led-tube-60", 0.37, "", ""}, {"fresnel-tungsten-650", 0.003, "", ""},
		{"discharge-575", 0.3, `"discharge-575" dims to 50 %, not to 30 %`, "set it to 50 %, the nearest, or leave it up and take light away with scrims, nets or ND gels"},
		{"discharge-575-magnetic", 0.8, `"discharge-575-magnetic" does not dim, and 80 % is asked for`, "leave it at 100 % and take light away with scrims, nets or ND gels"},
		{"led-tube-60", 0.125, `"led-tube-60" dims in steps of 1 %, and 12.5 % lies between two`, "set it to 12 % or 13 %, the nearest"},
		{"led-point-150-daylight", 0.005, `"led-point-150-daylight" dims to 1 %, not to 0.5 %`, "set it to 1 %, the nearest, or leave it up and take light away with scrims, nets or ND gels"},
	} {
		log := &source.Log{}
		_, ok := shipped(t).Head(kit.Choice{Unit: c.unit, Level: at(c.level)}, log)
		all := log.All()
		if c.message == "" {
			if !ok || len(all) > 0 {
				t.Errorf("%s at %g: %v", c.unit, c.level, all)
			}
			continue
		}
		if ok || len(all) != 1 || all[0].Code != kit.CodeLevelRange || all[0].Message != c.message || all[0].Hint != c.hint {
			t.Errorf("%s at %g:\n got %v\nwant %s | %s", c.unit, c.level, all, c.message, c.hint)
		}
	}
}

// A lamp on a ballast gets bluer as it is dimmed, evenly in mireds, and its gels with it.
func TestBallastShiftsWhite(t *testing.T) {
	h := head(t, kit.Choice{Unit: "discharge-575"})
	within(t, "K at full", h.WhiteAt(1).Kelvin, 5600, 0)
	within(t, "K at half", h.WhiteAt(0.5).Kelvin, 6100, 1e-6)
	within(t, "K between", h.WhiteAt(0.75).Kelvin, 2/(1/5600.0+1/6100.0), 1e-6)
	kelvin, _ := colour.CCT(colour.XY(h.RelativeOutput(0.5)))
	within(t, "K of the light at half", kelvin, 6100, 0.5)
	within(t, "light at half", h.RelativeOutput(0.5).Y(), 0.5, 1e-12)
	gelled := head(t, kit.Choice{Unit: "discharge-575", Gels: gels("full CTO")})
	within(t, "K at half behind CTO", gelled.WhiteAt(0.5).Kelvin, 1e6/(1e6/6100+1e6/3200-1e6/5600), 1e-3)
}

// A lamp of two whites gives less at the ends of its range; between those that are known it goes evenly in mireds.
func TestOutputByWhite(t *testing.T) {
	const unit = "led-point-300-bicolour"
	flux := func(kelvin float64) float64 {
		return head(t, kit.Choice{Unit: unit, White: &colour.White{Kelvin: kelvin}}).Source.Flux
	}
	native := head(t, kit.Choice{Unit: unit}).Source.Flux
	for kelvin, want := range map[float64]float64{2700: 0.80, 3200: 0.87, 5600: 1, 6500: 0.92} {
		within(t, "share at a white", flux(kelvin)/native, want, 1e-9)
	}
	within(t, "between", flux(2/(1/2700.0+1/3200.0))/native, (0.80+0.87)/2, 1e-9)
	h := head(t, kit.Choice{Unit: unit, White: &colour.White{Kelvin: 3200}})
	last := h.Steps[0]
	for _, s := range h.Steps {
		if s.Unit == "lm" {
			last = s
		}
	}
	if last.What != "set to 3200 K" || last.Out != h.Source.Flux {
		t.Errorf("the last step to the flux is %+v", last)
	}
}
