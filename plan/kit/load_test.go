package kit_test

import (
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

func file(text string) []*source.File {
	return []*source.File{{Name: "own.yaml", Text: []byte(text)}}
}

const ownKit = `
scrimshaw: 1
units:
  my-lamp:
    doc: A lamp of our own
    label: my lamp
    class: bare
    technology: led
    power: 90 W
    kelvin: [3000 K, 5000 K]
    native: 4000 K
    lumens: 8000
    spread: cosine
    front: bayonet
    curve: [0, 20 %, 1]
  pocket-led-10:
    doc: Ours is dimmer
    label: our pocket lamp
    class: panel
    technology: led
    power: 5 W
    kelvin: 5600 K
    outputs: {bare: {lumens: 300, face: [0.1, 0.1]}}
gels:
  half straw: {kind: colour, xy: [0.37, 0.37], transmittance: 0.85}
`

// A kit file adds entries and replaces those of its names whole; the shipped catalogue it is
// laid over stays as it was.
func TestWithLaysOver(t *testing.T) {
	base := shipped(t)
	log := &source.Log{}
	own := base.With(file(ownKit), log)
	if len(log.All()) > 0 {
		t.Fatal(log.All())
	}
	if len(own.Units) != len(base.Units)+1 || base.Unit("my-lamp") != nil {
		t.Errorf("%d units over %d", len(own.Units), len(base.Units))
	}
	pocket := own.Unit("pocket-led-10")
	if pocket.Label != "our pocket lamp" || pocket.Mass != 0 || pocket.Native != 5600 {
		t.Errorf("not replaced whole: %+v", pocket)
	}
	if base.Unit("pocket-led-10").Mass != 0.3 {
		t.Error("the shipped entry was changed")
	}
	h, ok := own.Head(kit.Choice{Unit: "my-lamp", Modifier: "softbox-90", Gels: gels("half straw")}, log)
	if !ok || !(math.Abs(h.Source.Flux-0.55*8000) <= 1e-9) {
		t.Errorf("ok %v, %g lm: %v", ok, h.Source.Flux, log.All())
	}
	within(t, "curve", h.RelativeOutput(0.5).Y(), 0.2*0.85, 1e-12)
}

// A bulb that a kit file replaces goes into the shipped practicals that take it too, and into
// none of the catalogue below.
func TestReplacedBulbIsScrewedIn(t *testing.T) {
	base := shipped(t)
	log := &source.Log{}
	own := base.With(file("bulbs: {led-806: {doc: d, technology: discharge, power: 80 W, lumens: 8060, kelvin: 5000 K}}"), log)
	before, _ := base.Head(kit.Choice{Unit: "practical-desk"}, log)
	after, ok := own.Head(kit.Choice{Unit: "practical-desk"}, log)
	if !ok || len(log.All()) > 0 {
		t.Fatal(log.All())
	}
	within(t, "flux", after.Source.Flux, 10*before.Source.Flux, 1e-9)
	if after.White.Kelvin != 5000 || after.Watts != 80 || after.PowerFactor != 1 || after.Technology != "discharge" {
		t.Errorf("the desk lamp kept its old bulb: %v, %g W, %g, %s", after.White, after.Watts, after.PowerFactor, after.Technology)
	}
	if u := base.Unit("practical-desk"); u.Lumens != 806 || u.Native != 2700 {
		t.Errorf("the shipped entry was changed: %+v", u)
	}
}

func TestKitFaults(t *testing.T) {
	unit := func(lines string) string {
		return "units:\n  lamp:\n    doc: A lamp\n    label: lamp\n    class: bare\n    technology: led\n" + lines
	}
	for text, want := range map[string]string{
		"lamps: {}":                  `a kit file has no key "lamps"`,
		"scrimshaw: 2\nunits: {}":    "the version is from 1 to 1, and 2 is not",
		unit("    lumens: 800\n"):    `the unit "lamp" does not say what white it makes`,
		unit("    kelvin: 3200 K\n"): `the unit "lamp" does not say how much light it makes`,
		unit("    kelvin: 3200 K\n    spread: cosine\n    outputs: {bare: {lumens: 5, shape: cosine}}\n"): `the unit "lamp" says how its bare flux is spread, but not how much it is`,
		unit("    kelvin: [2700 K, 3200 K]\n    native: 5600 K\n    lumens: 800\n"):                       `the unit "lamp" has its native white outside its own range`,
		unit("    kelvin: [6500 K, 3200 K]\n    lumens: 800\n"):                                           "a range of whites goes from the lower to the higher",
		unit("    kelvin: 3200 K\n    lumens: 800\n    stand: combo-stnd\n"):                              `the unit "lamp" names the stand "combo-stnd", which the catalogue does not hold`,
		unit("    kelvin: 3200 K\n    lumens: 800\n    bulb: led-807\n"):                                  `the unit "lamp" names the bulb "led-807", which the catalogue does not hold`,
		unit("    kelvin: 3200 K\n    lumens: 800\n    modifier: hood\n"):                                 `the unit "lamp" names the modifier "hood", which the catalogue does not hold`,
		unit("    kelvin: 3200 K\n    lumens: 800\n    curve: [0, 0.9]\n"):                                "a curve starts at 0 and ends at 1",
		unit("    kelvin: 3200 K\n    outputs: {hood: {lumens: 5, shape: cosine}}\n"):                     `the unit "lamp" names the modifier "hood", which the catalogue does not hold`,
		"gels: {a: {kind: colour, transmittance: 0.5}}":                                                   `the gel "a" does not say what colour it is`,
		"gels: {a: {kind: cto, mired: 10, transmittance: 0}}":                                             `the gel "a" lets no light through`,
		"gels: {a: {kind: colour, xy: [0.7, 0.6], transmittance: 0.5}}":                                   "x and y of a chromaticity add up to 1 at most",
		"cloth: {a: {doc: d, label: l, stops: 0.1, reflectance: 0.5}}":                                    `the cloth "a" lets through and throws back more light than falls on it`,
		"cloth: {a: {doc: d, label: l}}":                                                                  `a cloth needs one of "stops" or "opaque"`,
		"materials: {a: {doc: d, reflectance: 0.5, transmittance: 0.9}}":                                  `the material "a" lets through and throws back more light than falls on it`,
		"stands: {a: {doc: d, label: l, footprint: 1, lowest: 2, highest: 1, load: 1 kg, mass: 1 kg}}":    `the stand "a" has its highest height below its lowest`,
		"grip: {a: {doc: d, label: l, kind: flag, width: 0.2, height: 0.1, round: true}}":                 `the piece of grip "a" is round, and must be as wide as it is high`,
		"modifiers: {a: {doc: d, label: l, fits: [x], skirt: 0.4, disc: 0.5}}":                            `the modifier "a" is a skirt, and needs nothing else to say how its light leaves`,
		"modifiers: {a: {doc: d, label: l, fits: [x], efficiency: 1, beam: 20, field: 10}}":               `the modifier "a" must have a field angle wider than its beam angle`,
		"modifiers: {a: {doc: d, label: l, fits: [x], efficiency: 1, face: [1, 1], disc: 1}}":             "a modifier has one opening: a face, a disc or a sphere",
		"items: {a: {doc: d, label: l, group: lift, mass: 90 kg, load: 100 kg, length: 4}}":               `the item "a" is a lift, and says not all of its ground, its length and its load`,
		"items: {a: {doc: d, label: l, group: box, mass: 5 kg, ground: [0.5, 0.3]}}":                      `the item "a" has a ground, and is no lift`,
		"items: {a: {doc: d, label: l, group: distribution, mass: 1 kg, amps: 32, phases: 2}}":            `the item "a" has two phases, and circuits have one or three`,
		"sensors: {a: 35}": "a sensor is a map of keys, not a value",
	} {
		log := &source.Log{}
		shipped(t).With(file(text), log)
		all := log.All()
		if len(all) != 1 || all[0].Message != want {
			t.Errorf("%s\n got %v\nwant %s", text, all, want)
		}
		if len(all) > 0 && !all[0].Span.Valid() {
			t.Errorf("%s: the fault has no place", text)
		}
	}
}

// FuzzKit: whatever a kit file says, reading it does not panic, and what can be used of it is
// finite light.
func FuzzKit(f *testing.F) {
	f.Add(ownKit)
	f.Add("bulbs: {b: {doc: d, technology: led, power: 5 W, lumens: 400, kelvin: 2700 K}}\nunits: {u: {doc: d, label: l, class: practical, bulb: b}}")
	f.Add("modifiers: {m: {doc: d, label: l, fits: [bayonet], efficiency: 1, face: [1, 2], grid: [5, 170]}}")
	f.Add("modifiers: {m: {doc: d, label: l, fits: [bayonet], honeycomb: 5, zoom: {spot: {efficiency: 1 %, beam: 2}, 40 %: {efficiency: 90 %, beam: 170, field: 300}}}}\nunits: {u: {doc: d, label: l, class: bare, technology: led, kelvin: [2000 K, 9000 K], lumens: 5, spread: cosine, front: bayonet, least: 1, kelvin-at-least: 7000 K, by-white: {3000 K: 5 %}}}")
	base, err := kit.Shipped()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, text string) {
		log := &source.Log{}
		c := base.With(file(text), log)
		for _, u := range c.Units {
			if !strings.HasPrefix(u.Origin.File.Name, "own") {
				continue
			}
			for _, m := range c.Fitting(u) {
				h, ok := c.Head(kit.Choice{Unit: u.Name, Modifier: m}, &source.Log{})
				if output := h.RelativeOutput(0.5); ok && !finite(h.Source.AxisLux(3), h.Source.Flux, h.Source.Peak(), output.Y()) {
					t.Errorf("%s with %s: %g lm, %g cd, output %v", u.Name, m, h.Source.Flux, h.Source.Peak(), output)
				}
			}
		}
		for _, g := range c.Gels {
			through := colour.ThroughGels(colour.White{Kelvin: 5600}, []colour.Filter{g.Filter()})
			if !finite(through.RGB.Y(), through.White.Kelvin) {
				t.Errorf("%s: %+v", g.Name, through)
			}
		}
	})
}

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// A kit file with figures that no lamp has is reported, and nothing of the catalogue that comes with the program.
func TestImplausibleKit(t *testing.T) {
	unit := func(lines string) string {
		return "units:\n  lamp:\n    doc: A lamp\n    label: lamp\n    class: bare\n    technology: led\n    kelvin: 5600 K\n    power: 100 W\n" + lines
	}
	for text, want := range map[string]string{
		unit("    lumens: 30000\n    spread: cosine\n"):                                                         `the unit "lamp" makes 300 lm for each watt, and no lamp makes over 220`,
		unit("    outputs: {bare: {lux: 40000, distance: 3 m, beam: 60}}\n"):                                    `the unit "lamp" makes 4190 lm for each watt, and no lamp makes over 220`,
		unit("    lumens: 8000\n    spread: cosine\n    outputs: {snoot: {lumens: 9000, beam: 20}}\n"):          `the unit "lamp" gives 9000 lm with snoot, more than the 8000 lm that leave it bare`,
		unit("    outputs: {bare: {spot: {lumens: 500, beam: 60}, flood: {lumens: 900, beam: 50}}}\n"):          `the zoom of the unit "lamp" is brighter at flood than at spot`,
		unit("    lumens: 8000\n    spread: cosine\n    mass: 12 kg\n    stand: light-stand\n"):                 `the unit "lamp" weighs 12 kg, and its stand "light-stand" carries 8 kg`,
		"bulbs: {b: {doc: d, technology: led, power: 1 W, lumens: 400, kelvin: 2700 K}}":                        `the bulb "b" makes 400 lm for each watt, and no lamp makes over 220`,
		unit("    lumens: 9000\n    spread: cosine\n    outputs: {reflector-wide: {lumens: 8000, beam: 55}}\n"): "",
	} {
		log := &source.Log{}
		shipped(t).With(file(text), log)
		all := log.All()
		switch {
		case want == "" && len(all) > 0, want != "" && (len(all) != 1 || all[0].Message != want || all[0].Severity != source.Warning || all[0].Code != kit.CodeImplausible):
			t.Errorf("%s\n got %v\nwant %s", text, all, want)
		}
	}
}
