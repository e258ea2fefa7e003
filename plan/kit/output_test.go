package kit_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// readOutput reads the value of `output:` in a line of YAML.
func readOutput(t *testing.T, text string) (kit.Output, bool, *source.Log) {
	t.Helper()
	log := &source.Log{}
	root := source.Parse(&source.File{Name: "x.yaml", Text: []byte("output: " + text + "\n")}, log)
	if root == nil {
		t.Fatalf("%s: %v", text, log.All())
	}
	c := &source.Context{Log: log}
	key := root.Key("output")
	c.Enter(key)
	o, ok := kit.OutputReader().Read(key.Value, c)
	return o, ok, log
}

// Every plain output of the language: its flux, its intensity on the axis and its luminance,
// against the closed forms.
func TestPlainOutputs(t *testing.T) {
	for _, c := range []struct {
		text             string
		lumens, candelas float64 // 0: not checked
		luminance        float64
	}{
		{"{candela: 1000, shape: uniform}", 4 * math.Pi * 1000, 1000, 0},
		{"{candela: 1000, shape: cosine}", math.Pi * 1000, 1000, 0},
		{"{lumens: 10000, shape: uniform}", 10000, 10000 / (4 * math.Pi), 0},
		{"{lumens: 10000, shape: cosine}", 10000, 10000 / math.Pi, 0},
		{"{luminance: 1000, face: [1.2, 1.2]}", 1000 * math.Pi * 1.44, 1440, 1000},
		{"{luminance: 1000, disc: 1.0}", 1000 * math.Pi * math.Pi / 4, 1000 * math.Pi / 4, 1000},
		{"{luminance: 1000, sphere: 0.5}", 1000 * math.Pi * math.Pi * 0.25, 1000 * math.Pi * 0.0625, 1000},
		{"{lumens: 3000, face: [1, 1]}", 3000, 3000 / math.Pi, 3000 / math.Pi},
		{"{lumens: 3000, sphere: 0.5}", 3000, 3000 / (4 * math.Pi), 3000 / (math.Pi * math.Pi * 0.25)},
		{"{lumens: 2000, tube: 1.2}", 2000, 2000 / (math.Pi * math.Pi), 0},
		{"{lux: 8000, distance: 3 m, beam: 55, field: 80}", 0, 72000, 0},
		{"{lux: 8000, distance: 300 cm, shape: cosine}", math.Pi * 72000, 72000, 0},
		{"{candela: 5000, beam: 20}", 0, 5000, 0},
		{"{lumens: 5000, beam: 20}", 5000, 0, 0},
	} {
		o, ok, log := readOutput(t, c.text)
		if !ok {
			t.Errorf("%s: %v", c.text, log.All())
			continue
		}
		h, ok := shipped(t).HeadOf(o, kit.Choice{}, log)
		if !ok || len(log.All()) > 0 {
			t.Errorf("%s: %v", c.text, log.All())
		}
		if c.lumens > 0 {
			within(t, c.text+" lm", h.Source.Flux, c.lumens, 1e-9*c.lumens)
		}
		if c.candelas > 0 {
			within(t, c.text+" cd", h.Source.Intensity(r3.Vec{Z: -1}), c.candelas, 1e-9*c.candelas)
		}
		within(t, c.text+" cd/m2", h.Source.Luminance(), c.luminance, 1e-9*c.luminance)
		within(t, c.text+" K", h.White.Kelvin, kit.PlainWhite, 0)
		within(t, c.text+" Y", h.RelativeOutput(1).Y(), 1, 1e-12)
	}
}

func TestPlainOutputTakesWhiteTintAndGels(t *testing.T) {
	o, _, log := readOutput(t, "{candela: 1000, shape: uniform}")
	h, ok := shipped(t).HeadOf(o, kit.Choice{White: &colour.White{Kelvin: 2700}, Tint: 0.02, Gels: gels("ND .6")}, log)
	if !ok || len(log.All()) > 0 {
		t.Fatal(log.All())
	}
	kelvin, duv := colour.CCT(colour.XY(h.RGB))
	within(t, "K", kelvin, 2700, 0.5)
	within(t, "Duv", duv, 0.02, 1e-6)
	within(t, "filter", h.Filter, math.Pow(10, -0.6), 1e-9)
}

func TestPlainOutputHasNoModifier(t *testing.T) {
	o, _, log := readOutput(t, "{candela: 1000, shape: uniform}")
	if _, ok := shipped(t).HeadOf(o, kit.Choice{Modifier: "softbox-90"}, log); ok {
		t.Error("a plain source took a softbox")
	}
}

func TestOutputFaults(t *testing.T) {
	for text, want := range map[string]string{
		"{lux: 8000, beam: 55}":                             "lux says nothing without the distance it was measured at",
		"{candela: 8000, distance: 3, beam: 55}":            "distance goes with lux only",
		"{candela: 8000, field: 55}":                        "a field angle needs its beam angle",
		"{candela: 8000, beam: 55, field: 40}":              "the field angle, to 10 %, must be wider than the beam angle, to 50 %",
		"{lumens: 800, face: [1, 1], disc: 1}":              "an output has one opening, not face and disc",
		"{lumens: 800, beam: 20, shape: cosine}":            "a beam angle and a shape both say how the light is spread",
		"{lumens: 800, face: [1, 1], shape: cosine}":        "a shape is of a point; a face spreads light its own way",
		"{lumens: 800, tube: 1, beam: 20}":                  "a tube shines all round and has no beam angle",
		"{luminance: 800, tube: 1}":                         "a luminance needs a face, a disc or a sphere that has it",
		"{luminance: 800, face: [1, 1], beam: 20}":          "a luminance is the same from everywhere, and has no beam angle",
		"{ies: a.ies, beam: 20}":                            "a photometric file says everything by itself",
		"{lumens: 800}":                                     "the output does not say how its light is spread",
		"{beam: 20}":                                        `an output needs one of "lux", "candela", "lumens", "luminance", "ies" or "ldt"`,
		"{lumens: 800, candela: 20, shape: uniform}":        `an output takes "lux", "candela", "lumens", "luminance", "ies" or "ldt", and this has both "lumens" and "candela"`,
		"{lumens: .nan, shape: uniform}":                    `".nan" is not a finite number`,
		"{lumens: -5, shape: uniform}":                      `a flux is from 0.001 to 100000000, and "-5" is not`,
		"{candela: 8000, beam: 0}":                          `a beam angle is from 0.5° to 180°, and "0" is not`,
		"{lumen: 800, shape: uniform}":                      `an output has no key "lumen"`,
		"{lumens: 800, face: [1]}":                          "a face has 2 values, not 1",
		"[1, 2]":                                            "an output belongs here, not a list",
		"{lux: 8000, distance: 3 parsecs, shape: cosine}":   `"3 parsecs" is not a length: "parsecs" is not one of its units`,
		"{lumens: 800, tube: 1, sphere: 2, shape: uniform}": "an output has one opening, not tube and sphere",
	} {
		_, ok, log := readOutput(t, text)
		if ok || !log.Failed() {
			t.Errorf("%s: no fault", text)
			continue
		}
		told := slices.ContainsFunc(log.All(), func(d source.Diagnostic) bool { return d.Message == want })
		if !told {
			t.Errorf("%s:\n got %v\nwant %s", text, log.All(), want)
		}
	}
}

// An unknown shape is refused, and the message lists those that exist.
func TestUnknownShape(t *testing.T) {
	_, ok, log := readOutput(t, "{lumens: 800, shape: round}")
	all := log.All()
	if ok || len(all) != 1 {
		t.Fatalf("found %v, want one fault", all)
	}
	for _, part := range []string{"a shape is ", `"uniform"`, `"cosine"`, `, not "round"`} {
		if !strings.Contains(all[0].Message, part) {
			t.Errorf("%q does not say %q", all[0].Message, part)
		}
	}
}

// A wide beam of a face keeps its lumens: none of them go out behind, where the face does not shine.
func TestWideBeamOfAFaceKeepsItsLumens(t *testing.T) {
	for _, o := range []kit.Output{
		{Lumens: 10000, Beam: 120, Face: &[2]float64{0.3, 0.3}},
		{Lumens: 10000, Beam: 120, Disc: 0.3},
	} {
		h, ok := shipped(t).HeadOf(o, kit.Choice{}, &source.Log{})
		if !ok {
			t.Fatal("not a source")
		}
		front := 0.0
		const rings = 20000 // of the half sphere before the face, by their middles
		for i := range rings {
			a := (float64(i) + 0.5) / rings * math.Pi / 2
			front += 2 * math.Pi * math.Sin(a) * h.Source.Intensity(r3.Vec{X: math.Sin(a), Z: -math.Cos(a)}) * math.Pi / 2 / rings
		}
		within(t, "lm before the face", front, 10000, 0.1)
	}
}
