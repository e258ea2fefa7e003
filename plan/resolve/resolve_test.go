package resolve

import (
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/samples"
)

// Every sample resolves without an error, in each of its set-ups.
func TestSamplesResolve(t *testing.T) {
	for _, name := range samples.Names() {
		text, err := samples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		log := &source.Log{}
		doc := opened(t, "", log)
		doc = scene.Open(scene.Env{Kit: doc.Kit}, &source.File{Name: name, Text: []byte(text)}, log)
		for _, setup := range append([]string{""}, doc.Setups...) {
			s := Resolve(doc, doc.Scene(setup, log), log)
			if s == nil {
				t.Errorf("%s %s does not resolve", name, setup)
				continue
			}
			noOverlaps(t, s)
			sane(t, name, s)
		}
		for _, d := range log.All() {
			if d.Severity == source.Error {
				t.Errorf("%s: %s", name, tell(d))
			}
		}
	}
}

func TestResolveWithoutAScene(t *testing.T) {
	if Resolve(nil, nil, &source.Log{}) != nil {
		t.Error("nothing resolves to something")
	}
	if s := Resolve(nil, &scene.Scene{}, &source.Log{}); s == nil || len(s.Set.Prisms) != 0 {
		t.Error("an empty scene is open ground")
	}
}

// A file that is empty of anything but mistakes never makes Resolve panic or leave broken solids.
func FuzzResolve(f *testing.F) {
	if text, err := os.ReadFile("testdata/faults.txt"); err == nil {
		for _, part := range strings.Split(string(text), "== ")[1:] {
			_, rest, _ := strings.Cut(part, "\n")
			body, _, _ := strings.Cut(rest, "--\n")
			f.Add(body)
		}
	}
	f.Add(day)
	f.Add(stage)
	f.Add(furnished(rand.New(rand.NewPCG(1, 2)), motion{turn: 20}))
	f.Fuzz(func(t *testing.T, text string) {
		log := &source.Log{}
		doc := opened(t, text, log)
		for _, setup := range append([]string{""}, doc.Setups...) {
			if s := Resolve(doc, doc.Scene(setup, log), log); s != nil {
				sane(t, "fuzzed", s)
			}
		}
	})
}

func BenchmarkResolve(b *testing.B) {
	log := &source.Log{}
	doc := opened(b, furnished(rand.New(rand.NewPCG(1, 2)), motion{}), log)
	s := doc.Scene("", log)
	b.ReportAllocs()
	for b.Loop() {
		Resolve(doc, s, log)
	}
}

// A scene is resolved from text in three steps.
func ExampleResolve() {
	text := `
scrimshaw: 1
rooms:    {kitchen: {size: [3.6, 3.1]}}
openings: {street: {window: kitchen.left, along: centre, width: 1.4}}
people:   {ruth: {at: [1.2, 2.0], pose: seated}}
cameras:  {A: {at: [3.3, 0.5], lens: 32 mm}}
lights:   {day: {unit: led-point-600-bicolour, at: {opening: street, out: 2.4}, height: 2.5}}
`
	catalogue, err := kit.Shipped()
	if err != nil {
		fmt.Println(err)
		return
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: catalogue}, &source.File{Name: "-", Text: []byte(text)}, log)
	setup := Resolve(doc, doc.Scene("", log), log)
	day := setup.Lights[0]
	fmt.Printf("lamp %s stands at [%.2f, %.2f], %.2f m from ruth's face\n", day.Tag, day.Frame.At.X, day.Frame.At.Y, day.Throw)
	for _, d := range day.Placing {
		fmt.Printf("%.2f m: %s\n", d.Metres, d.From)
	}
	// Output:
	// lamp 1 stands at [-2.55, 1.55], 4.06 m from ruth's face
	// 2.40 m: kitchen.left, outside face
	// 0.70 m: street, right jamb from outside
}
