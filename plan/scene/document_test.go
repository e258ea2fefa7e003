package scene

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// opened reads a scene without faults; notes about later keys are let pass.
func opened(t testing.TB, text string) *Document {
	t.Helper()
	log := &source.Log{}
	d := Open(testEnv(t), &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	d.Base(log)
	for _, setup := range d.Setups {
		d.Scene(setup, log)
	}
	for _, f := range log.All() {
		if f.Severity != source.Info && f.Code != source.CodeLater {
			t.Fatalf("%d:%d %s (%s)", f.Span.Line, f.Span.Col, f.Message, f.Hint)
		}
	}
	return d
}

func everything(t testing.TB) string {
	t.Helper()
	text, err := os.ReadFile("testdata/everything.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

const twoSetups = `scrimshaw: 1
people: {ruth: {at: [1, 1]}}
cameras: {A: {at: [3, 1], lens: 35 mm}, B: {at: [0, 3], lens: 35 mm}}
lights:
  soft:
    unit: led-point-300-bicolour
    modifier: softbox-90
    at: {by: ruth, toward: A, turn: 40 camera-left, distance: 2}
    gels: [1/2 CTO]
    level: 30 %
    colour: 4300 K
    role: {ruth: key}
  back: {unit: led-point-150-bicolour, at: [2, 3]}
setups:
  wide: {camera: [A, B]}
  close:
    camera: A
    after: wide
    stays: soft
    change:
      strike: [back]
      cameras: {A: {lens: 75 mm}}
      lights:
        soft: {level: 14 %, at: [2, 2], +gels: [1/4 CTO], role: {ruth: fill}}
        hair: {unit: led-tube-60, at: [1, 2]}
  other:
    after: close
    change: {lights: {soft: {unit: led-point-600-bicolour, level: 5 %}}}
`

func TestSetupsAreMerged(t *testing.T) {
	log := &source.Log{}
	d := opened(t, twoSetups)
	if !slices.Equal(d.Setups, []string{"wide", "close", "other"}) {
		t.Fatalf("set-ups: %v", d.Setups)
	}
	wide, closer, other := d.Scene("wide", log), d.Scene("close", log), d.Scene("other", log)
	if len(wide.Shown) != 2 || closer.Shown[0].Name != "A" || closer.Stays[0].Name != "soft" {
		t.Errorf("shown %v, %v; stays %v", wide.Shown, closer.Shown, closer.Stays)
	}
	var names []string
	for _, l := range closer.Lights {
		names = append(names, l.Name)
	}
	if !slices.Equal(names, []string{"soft", "hair"}) {
		t.Errorf("lights of close: %v", names)
	}
	soft := closer.Lights[0]
	if soft.Level.Value != 0.14 || soft.At.Value.Form != AtPoint || len(soft.Gels) != 2 || soft.Modifier.Value != "softbox-90" || soft.Role[0].Role != "fill" {
		t.Errorf("soft: %+v", soft)
	}
	if at := soft.Level.Span; at.Line != 24 || at.Text() != "14 %" {
		t.Errorf("the level was written at %d: %q", at.Line, at.Text())
	}
	if n := soft.Node.Get("level"); n.Layer != "close" || soft.Node.Get("unit").Layer != "" {
		t.Errorf("layers: %q, %q", n.Layer, soft.Node.Get("unit").Layer)
	}
	// Another unit takes with it what was set for the one before.
	if soft := other.Lights[0]; soft.Modifier.Set || soft.Gels != nil || soft.Colour.Set || soft.Level.Value != 0.05 || soft.At.Value.Form != AtPoint {
		t.Errorf("soft of other: %+v", soft)
	}
	if closer.Cameras[0].Lens.Value != 75 || wide.Cameras[0].Lens.Value != 35 || d.Base(log).Cameras[0].Lens.Value != 35 {
		t.Error("a change reached another set-up")
	}
}

func TestUnknownSetup(t *testing.T) {
	for name, want := range map[string]string{"clsoe": `did you mean "close"?`, "master": "write wide, close or other"} {
		log := &source.Log{}
		if s := opened(t, twoSetups).Scene(name, log); s != nil {
			t.Errorf("%s: a scene", name)
		}
		all := log.All()
		if len(all) != 1 || all[0].Code != CodeUnknownSetup || all[0].Hint != want || all[0].Span.Line != 14 {
			t.Errorf("%s: %+v", name, all)
		}
	}
	log := &source.Log{}
	if s := opened(t, "scrimshaw: 1\n").Scene("wide", log); s != nil || !log.Failed() {
		t.Errorf("a scene without set-ups: %v, %v", s, log.All())
	}
}

func TestWhatIsNoSceneOpens(t *testing.T) {
	for _, text := range []string{"", "42", "- a\n", "a: [", "scrimshaw: 2\n", "\x00", "setups: [a]\n", "setups: {a: b}\n", "kit: [{}]\n", "units: {}\n"} {
		log := &source.Log{}
		d := Open(Env{}, &source.File{Name: "-", Text: []byte(text)}, log)
		d.Base(log)
		d.Scene("a", log)
		if !log.Failed() {
			t.Errorf("%q is accepted", text)
		}
	}
}

// However often a scene is asked for, the answer is the same.
func TestAskingTwiceTellsTheSame(t *testing.T) {
	text := strings.Replace(twoSetups, "level: 14 %", "level: 14", 1)
	d := Open(testEnv(t), &source.File{Name: "s.yaml", Text: []byte(text)}, &source.Log{})
	first, second := &source.Log{}, &source.Log{}
	if d.Scene("close", first) != d.Scene("close", second) {
		t.Error("two scenes")
	}
	if a, b := fmt.Sprint(first.All()), fmt.Sprint(second.All()); a != b || !first.Failed() {
		t.Errorf("%s\n%s", a, b)
	}
}

func TestTooManyThings(t *testing.T) {
	var b strings.Builder
	b.WriteString("scrimshaw: 1\npeople:\n")
	for i := range maxThings + 1 {
		fmt.Fprintf(&b, "  p%d: {at: [%d, 0]}\n", i, i)
	}
	log := &source.Log{}
	Open(Env{}, &source.File{Name: "-", Text: []byte(b.String())}, log).Base(log)
	all := log.All()
	if len(all) != 1 || all[0].Code != CodeTooMany || all[0].Span.Line != maxThings+3 {
		t.Errorf("%+v", all)
	}
}

func ExampleOpen() {
	text := "scrimshaw: 1\nrooms: {kitchen: {size: [3.6, 3.1], heigth: 2.4}}\n"
	log := &source.Log{}
	doc := Open(Env{}, &source.File{Name: "den.yaml", Text: []byte(text)}, log)
	s := doc.Base(log)
	fmt.Println(s.Rooms[0].Name, s.Rooms[0].Size)
	source.Short(os.Stdout, log.All())
	// Output:
	// kitchen [3.6 3.1]
	// den.yaml:2:37: error: a room has no key "heigth" [unknown-key] (fix: did you mean "height"?)
}

func BenchmarkOpen(b *testing.B) {
	env, file := testEnv(b), &source.File{Name: "s.yaml", Text: []byte(everything(b))}
	b.ReportAllocs()
	for b.Loop() {
		log := &source.Log{}
		d := Open(env, file, log)
		for _, setup := range d.Setups {
			d.Scene(setup, log)
		}
	}
}
