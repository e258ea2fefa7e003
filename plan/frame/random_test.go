package frame_test

import (
	"fmt"
	"math/rand"
	"slices"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// item is a piece of equipment of a random scene: how it is written where it stands moved by a vector.
type item struct {
	name  string
	at    r3.Vec
	base  *r3.Vec // of a boom; nil: it has none
	pan   float64 // of a camera, degrees
	write func(i *item) string
}

// place writes where it stands.
func (i *item) place() string {
	return fmt.Sprintf("at: [%.6f, %.6f], height: %.6f", i.at.X, i.at.Y, i.at.Z)
}

// mount writes its boom.
func (i *item) mount() string {
	if i.base == nil {
		return ""
	}
	return fmt.Sprintf(", mount: {boom: 2, base: [%.6f, %.6f]}", i.base.X, i.base.Y)
}

// moved is a copy that stands elsewhere.
func (i *item) moved(by r3.Vec) *item {
	out := *i
	out.at = r3.Add(i.at, by)
	if i.base != nil {
		base := r3.Add(*i.base, by)
		out.base = &base
	}
	return &out
}

// staged is a random scene: its set as text, and its equipment by section.
type staged struct {
	set   string
	items map[string][]*item // "lights", "grip", "cameras"
}

// with is the scene with one thing in the place of that of its name.
func (s *staged) with(section string, other *item) *staged {
	out := &staged{set: s.set, items: map[string][]*item{}}
	for name, all := range s.items {
		for _, i := range all {
			if name == section && i.name == other.name {
				i = other
			}
			out.items[name] = append(out.items[name], i)
		}
	}
	return out
}

func (s *staged) text() string {
	var b strings.Builder
	b.WriteString("scrimshaw: 1\n" + s.set)
	for _, section := range []string{"cameras", "lights", "grip"} {
		if len(s.items[section]) > 0 {
			b.WriteString(section + ":\n")
		}
		for _, i := range s.items[section] {
			fmt.Fprintf(&b, "  %s: {%s}\n", i.name, i.write(i))
		}
	}
	return b.String()
}

// draw is a source of random figures for a scene.
type draw struct{ *rand.Rand }

func (d draw) between(low, high float64) float64 { return low + (high-low)*d.Float64() }
func (d draw) one(words ...string) string        { return words[d.Intn(len(words))] }

// stage makes a scene of a seed: two rooms with a doorway and a window, things in them, people, cameras and equipment, some of it
// past the doorway and some outside.
func stage(seed int64) *staged {
	d := draw{rand.New(rand.NewSource(seed))}
	wide, deep := d.between(5, 8), d.between(4, 7)
	var b strings.Builder
	fmt.Fprintf(&b, "rooms: {main: {size: [%.2f, %.2f], height: 2.8}, next: {at: [%.2f, 0], size: [3, %.2f], height: 2.8}}\n", wide, deep, wide+0.2, deep)
	fmt.Fprintf(&b, "openings: {way: {gap: main.right, along: %.2f, width: 1.2, head: 2.1}, street: {window: main.left, along: centre, width: 1.8, panes: [2, 2]}", d.between(0.3, deep-1.6))
	if d.Intn(2) == 0 {
		b.WriteString(", yard: {window: main.top, width: 1.6, dressing: [{cloth: silk, drawn: [0.4, 0.3]}]}")
	}
	b.WriteString("}\nfurniture:\n")
	for i := range 2 + d.Intn(4) {
		form := d.one("box: [1.0, 0.5, 1.4]", "box: [0.6, 0.6, 2.0]", "table: [1.4, 0.8, 0.75]", "cylinder: [0.6, 1.2]", "sofa: [1.8, 0.9, 0.9]")
		fmt.Fprintf(&b, "  f%d: {%s, at: [%.2f, %.2f], turn: %.0f}\n", i, form, d.between(0.8, wide-0.8), d.between(0.8, deep-0.8), d.between(0, 180))
	}
	b.WriteString("people:\n")
	for i := range 1 + d.Intn(3) {
		fmt.Fprintf(&b, "  p%d: {at: [%.2f, %.2f], faces: %.0f, pose: %s}\n", i, d.between(0.8, wide-0.8), d.between(0.8, deep-0.8), d.between(0, 360), d.one("standing", "seated"))
	}
	s := &staged{set: b.String(), items: map[string][]*item{}}
	s.cameras(d, wide, deep)
	s.lights(d, wide, deep)
	s.grip(d, wide, deep)
	return s
}

func (s *staged) cameras(d draw, wide, deep float64) {
	for i := range 1 + d.Intn(2) {
		tail := fmt.Sprintf("lens: %s mm, sensor: %s", d.one("18", "25", "35", "50", "85"), d.one("super-35", "full-frame"))
		tilt := d.between(-12, 8)
		s.items["cameras"] = append(s.items["cameras"], &item{name: string(rune('A' + i)), at: r3.Vec{X: d.between(0.5, wide-0.5), Y: d.between(0.5, deep-0.5), Z: d.between(0.6, 2)},
			pan: d.between(0, 360), write: func(i *item) string {
				return fmt.Sprintf("%s, looks: {pan: %.6f, tilt: %.3f}, %s", i.place(), i.pan, tilt, tail)
			}})
	}
}

func (s *staged) lights(d draw, wide, deep float64) {
	for i := range 2 + d.Intn(4) {
		unit := d.one("fresnel-tungsten-650, barndoors: {top: 80, bottom: 90, left: 100, right: 60}", "led-point-300-bicolour, modifier: softbox-90", "led-point-300-bicolour, modifier: octabox-120",
			"led-point-600-bicolour, modifier: lantern-60", "led-panel-100, diffusion: half-diffusion", "led-tube-120", "discharge-575", "practical-table, seen: false", "practical-floor")
		aim := d.one("p0", "down", fmt.Sprintf("%.0f", d.between(0, 360)), fmt.Sprintf("[%.2f, %.2f, 1.2]", d.between(0, wide), d.between(0, deep)))
		l := &item{name: fmt.Sprintf("l%d", i), at: r3.Vec{X: d.between(0.4, wide-0.4), Y: d.between(0.4, deep-0.4), Z: d.between(0.6, 2.4)}}
		switch d.Intn(6) {
		case 0: // in the next room
			l.at.X = wide + d.between(0.8, 2.8)
		case 1: // before the window
			l.at.X = -d.between(0.8, 3)
		case 2:
			l.base = &r3.Vec{X: min(l.at.X+d.between(0.3, 1.2), wide-0.2), Y: min(l.at.Y+d.between(0.2, 1), deep-0.2)}
		}
		l.write = func(i *item) string { return "unit: " + unit + ", aim: " + aim + ", " + i.place() + i.mount() }
		s.items["lights"] = append(s.items["lights"], l)
	}
}

func (s *staged) grip(d draw, wide, deep float64) {
	for i := range d.Intn(4) {
		form := d.one("flag: [1.2, 0.9]", "frame: [1.2, 1.2], cloth: half-diffusion", "frame: [0.9, 0.9]", "card: [1, 0.7]", "silver: [1, 1]", "flag: dot-25")
		faces := d.one("p0", fmt.Sprintf("%.0f", d.between(0, 360)), fmt.Sprintf("p0, tilt: %.0f", d.between(-40, 40)), fmt.Sprintf("p0, roll: %.0f", d.between(-40, 40)))
		s.items["grip"] = append(s.items["grip"], &item{name: fmt.Sprintf("g%d", i), at: r3.Vec{X: d.between(0.4, wide-0.4), Y: d.between(0.4, deep-0.4), Z: d.between(0.8, 2.1)},
			write: func(i *item) string { return form + ", faces: " + faces + ", " + i.place() + i.mount() }})
	}
}

// shipped is the catalogue, read once.
var shipped = sync.OnceValues(kit.Shipped)

// laidOut resolves a scene; nil where it has an error, but for a camera that has everybody behind it, or that rolls through a wall: the cameras here look
// and roll wherever chance has it.
func laidOut(t testing.TB, s *staged) *plan.Setup {
	t.Helper()
	shipped, err := shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "random.yaml", Text: []byte(s.text())}, log)
	setup := resolve.Resolve(doc, doc.Base(log), log)
	if slices.ContainsFunc(log.All(), func(d source.Diagnostic) bool {
		return d.Severity == source.Error && d.Code != fit.CodeCameraTurned && d.Code != fit.CodeTrackThrough
	}) {
		return nil
	}
	return setup
}
