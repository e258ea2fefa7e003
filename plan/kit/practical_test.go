package kit_test

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

func TestPracticalTakesItsBulb(t *testing.T) {
	h := head(t, kit.Choice{Unit: "practical-table"})
	within(t, "W", h.Watts, 60, 0)
	within(t, "W that its shade stands", h.MostWatts, 60, 0)
	within(t, "K", h.White.Kelvin, 2700, 0)
	if !h.WarmsWhenDimmed || h.Class != term.Practical || h.Source.Opening != (photometry.Opening{Form: photometry.Lampshade, Width: 0.3, Height: 0.22}) {
		t.Errorf("warms %v, class %q, opening %v", h.WarmsWhenDimmed, h.Class, h.Source.Opening)
	}
	if !h.Upright() || h.AllRound() {
		t.Error("a lamp in a shade stands upright, and is not the same all round")
	}
}

// What leaves a shade above, below and by its side is the bulb's light less what the shade takes, to 0.5 %, for every
// bulb in every shade of the catalogue; and the flux of the head is that sum.
func TestShadesKeepTheBulbsLight(t *testing.T) {
	c := shipped(t)
	shades := 0
	for _, m := range c.Modifiers {
		if m.Shade == nil {
			continue
		}
		shades++
		for _, bulb := range c.Bulbs {
			h := head(t, kit.Choice{Unit: "practical-bulb", Modifier: m.Name, Bulb: &kit.BulbChoice{Name: bulb.Name}})
			p := h.Source.Distribution.(*photometry.Shade).Parts()
			left := (p.Above + p.Side + p.Below) * bulb.Lumens
			within(t, m.Name+": lm with "+bulb.Name, left, (1-p.Absorbed)*bulb.Lumens, 5e-3*bulb.Lumens)
			within(t, m.Name+": lm of the head", h.Source.Flux, left, 1e-9*left)
			if !(p.Above > 0 && p.Below > 0 && p.Absorbed > 0) || (p.Side > 0) != (m.Shade.Transmittance > 0) {
				t.Errorf("%s: %+v", m.Name, p)
			}
		}
	}
	if shades < 4 {
		t.Errorf("%d shades in the catalogue", shades)
	}
}

// A bulb by its figures: what is not said follows from the practical's own, of a filament by the law of household bulbs.
func TestBulbByFigures(t *testing.T) {
	for name, c := range map[string]struct {
		bulb                 kit.BulbChoice
		watts, lumens, white float64
	}{
		"power":  {kit.BulbChoice{Watts: 100}, 100, 710 * math.Pow(100.0/60, 1.28), 2700},
		"flux":   {kit.BulbChoice{Lumens: 1340}, 60 * math.Pow(1340.0/710, 1/1.28), 1340, 2700},
		"both":   {kit.BulbChoice{Watts: 9, Lumens: 806, Kelvin: 4000}, 9, 806, 4000},
		"name":   {kit.BulbChoice{Name: "led-470"}, 4.9, 470, 2700},
		"120 V":  {kit.BulbChoice{Name: "tungsten-60-120v"}, 60, 850, 2800},
		"nought": {kit.BulbChoice{}, 60, 710, 2700},
	} {
		h := head(t, kit.Choice{Unit: "practical-bulb", Bulb: &c.bulb})
		within(t, name+": W", h.Watts, c.watts, 1e-9*c.watts)
		within(t, name+": lm", h.Source.Flux, c.lumens, 1e-9*c.lumens)
		within(t, name+": K", h.White.Kelvin, c.white, 0)
	}
	// The law of household bulbs gives what the larger ones of the catalogue do.
	h := head(t, kit.Choice{Unit: "practical-bulb", Bulb: &kit.BulbChoice{Watts: 100}})
	within(t, "lm at 100 W", h.Source.Flux, 1340, 0.03*1340)
}

// A shade by its figures lies over the lamp's own, and a cloth brings what it passes and throws back.
func TestShadeByFigures(t *testing.T) {
	form := func(c kit.Choice) photometry.ShadeForm {
		h := head(t, c)
		f, ok := h.ShadeForm()
		if !ok {
			t.Fatalf("%+v has no shade", c)
		}
		return f
	}
	f := form(kit.Choice{Unit: "practical-table", Shade: &kit.ShadeChoice{Transmittance: 0.2, Height: 0.3}})
	if f != (photometry.ShadeForm{Top: 0.2, Bottom: 0.3, Height: 0.3, Bulb: 0.06, Transmittance: 0.2, Reflectance: 0.5}) {
		t.Errorf("%+v", f)
	}
	f = form(kit.Choice{Unit: "practical-bulb", Shade: &kit.ShadeChoice{Cloth: "silk"}})
	silk := shipped(t).ClothOf("silk")
	within(t, "passes", f.Transmittance, silk.Direct+silk.Diffuse, 1e-12)
	within(t, "throws back", f.Reflectance, silk.Reflect, 1e-12)
	if f = form(kit.Choice{Unit: "practical-ceiling", Shade: &kit.ShadeChoice{Transmittance: 0.9}}); f.Reflectance > 0.1+1e-12 {
		t.Errorf("a shade that passes 0.9 throws back %g", f.Reflectance)
	}
}

// A shade that turns with the aim shines that way wherever it points, and hardly the other.
func TestMetalShadeTurnsWithTheAim(t *testing.T) {
	for _, axis := range []r3.Vec{{Z: -1}, {Z: 1}, {X: 1}} {
		h := head(t, kit.Choice{Unit: "practical-desk"})
		if h.Upright() {
			t.Error("it is aimed, and has no up of its own")
		}
		h.ApplyTilt(r3.Vec{Y: 1}, r3.Cross(r3.Vec{Y: 1}, axis), axis)
		ahead, behind := h.Source.Intensity(r3.Vec{Z: -1}), h.Source.Intensity(r3.Vec{Z: 1})
		if side := h.Source.Intensity(r3.Vec{X: 1}); ahead < 3*behind || side > 1e-9*ahead {
			t.Errorf("aimed along %v: %.3g cd ahead, %.3g behind, %.3g aside", axis, ahead, behind, side)
		}
	}
}

// A shade hangs with its top above, whichever way its light is aimed.
func TestShadeHangsUpright(t *testing.T) {
	down, across := r3.Vec{Z: -1}, r3.Vec{X: 1}
	h := head(t, kit.Choice{Unit: "practical-table"})
	if up, _ := h.ShadeForm(); up.Top != 0.2 || up.Bottom != 0.3 {
		t.Errorf("as it is made: %+v", up)
	}
	before := h.Source.Intensity(r3.Vec{Z: 1})
	h.ApplyTilt(across, r3.Vec{Y: 1}, down)
	if turned, _ := h.ShadeForm(); turned.Top != 0.3 || turned.Bottom != 0.2 {
		t.Errorf("aimed down: %+v", turned)
	}
	within(t, "cd below", h.Source.Intensity(r3.Vec{Z: -1}), before, 1e-9*before)
}

// What no bulb and no shade can be is refused with what to write instead.
func TestBulbsAndShadesThatCannotBe(t *testing.T) {
	for want, c := range map[string]kit.Choice{
		`"fresnel-tungsten-650" has no bulb to change`:                       {Unit: "fresnel-tungsten-650", Bulb: &kit.BulbChoice{Watts: 60}},
		`"fresnel-tungsten-650" has no bulb to hang a shade around`:          {Unit: "fresnel-tungsten-650", Shade: &kit.ShadeChoice{Transmittance: 0.3}},
		`there is no bulb "led-8"`:                                           {Unit: "practical-table", Bulb: &kit.BulbChoice{Name: "led-8"}},
		"a bulb of 2 W and 806 lm would make 403 lm of each watt":            {Unit: "practical-table", Bulb: &kit.BulbChoice{Watts: 2, Lumens: 806}},
		"the shade lets through and throws back more light than falls on it": {Unit: "practical-table", Shade: &kit.ShadeChoice{Transmittance: 0.6, Reflectance: 0.6}},
	} {
		log := &source.Log{}
		if _, ok := shipped(t).Head(c, log); ok || len(log.All()) != 1 || !strings.Contains(log.All()[0].Message, want) {
			t.Errorf("%v, want %q", log.All(), want)
		}
	}
}

// A kit file's shade: what makes light, or says twice how it leaves, is refused.
func TestShadeEntries(t *testing.T) {
	for text, want := range map[string]string{
		"{shade: {top: 0.2, bottom: 0.3, height: 0.2, transmittance: 60 %, reflectance: 60 %}}":                   "more light than falls on it",
		"{efficiency: 50 %, shade: {top: 0.2, bottom: 0.3, height: 0.2, transmittance: 30 %, reflectance: 50 %}}": "takes \"efficiency\", \"zoom\", \"skirt\" or \"shade\"",
		"{beam: 40, shade: {top: 0.2, bottom: 0.3, height: 0.2, transmittance: 30 %, reflectance: 50 %}}":         "needs nothing else",
		"{sphere: 0.3}":       "needs one of \"efficiency\", \"zoom\", \"skirt\" or \"shade\"",
		"{shade: {top: 0.2}}": "bottom",
		"{shade: 0.3}":        "a shade belongs here",
	} {
		log := &source.Log{}
		text = "modifiers: {m: {doc: d, label: l, fits: [lampholder], " + strings.TrimPrefix(text, "{") + "}"
		kit.Load([]*source.File{{Name: "own.yaml", Text: []byte(text)}}, log)
		if !log.Failed() || !strings.Contains(log.All()[0].Message, want) {
			t.Errorf("%s: %v, want %q", text, log.All(), want)
		}
	}
}
