package sheet

import (
	"context"
	"os"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/samples"
)

// lit are scenes with their light, by name, and laid their sheets as they come unasked. Each is worked out once, for the
// first test that asks for it: tests look at them and change nothing.
var (
	lit  = map[string][]Input{}
	laid = map[string][]*sheet{}
)

// sampleInputs are the set-ups of a sample with their light.
func sampleInputs(t *testing.T, name string) []Input {
	t.Helper()
	text, err := samples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return inputsOf(t, name, text)
}

// inputsOf runs a scene through all stations, as draw does.
func inputsOf(t *testing.T, name string, text []byte) []Input {
	t.Helper()
	if lit[name] != nil {
		return lit[name]
	}
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: name + ".yaml", Text: text}, log)
	for _, setup := range resolve.ResolveAll(doc, nil, log) {
		lights, err := study.Run(context.Background(), setup, study.Options{Fixed: true})
		if err != nil {
			t.Fatal(err)
		}
		lit[name] = append(lit[name], Of(lights, Options{}))
	}
	if log.Failed() {
		t.Fatalf("%s: %v", name, log.All())
	}
	return lit[name]
}

// sampleSheets are the sheets of a sample.
func sampleSheets(t *testing.T, name string) []*sheet {
	t.Helper()
	if laid[name] == nil {
		for _, in := range sampleInputs(t, name) {
			laid[name] = append(laid[name], sheetFor(t, in, Options{Font: fixture.Family(t)}))
		}
	}
	return laid[name]
}

// eachSample looks at every set-up of every sample.
func eachSample(t *testing.T, check func(t *testing.T, in Input, s *sheet)) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			for i, s := range sampleSheets(t, name) {
				check(t, sampleInputs(t, name)[i], s)
			}
		})
	}
}

// hardCases are an L-shaped flat of three rooms, a stage of 20 by 14 m, and names in long words and other scripts.
func hardCases() []string { return []string{"flat", "stage", "scripts"} }

// hardCase is a scene of testdata on a coarse lattice: what is looked at is where things stand on paper.
func hardCase(t *testing.T, name string) (Input, *sheet) {
	t.Helper()
	if lit[name] == nil {
		text, err := os.ReadFile("testdata/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		setup, _ := fixture.SetupOf(t, string(text))
		lights, err := study.Run(context.Background(), setup, study.Options{Step: 0.5, Quality: light.Draft})
		if err != nil {
			t.Fatal(err)
		}
		lit[name] = []Input{Of(lights, Options{})}
		laid[name] = []*sheet{sheetFor(t, lit[name][0], Options{Font: fixture.Family(t)})}
	}
	return lit[name][0], laid[name][0]
}
