// Package days makes random days of set-ups, as text in the language of the tool, for tests: a scene of one to three rooms
// with two people, and set-ups that start from it and from each other. A seed always gives the same day.
package days

import (
	"fmt"
	"strings"

	"scrimshaw/plan/internal/truth"
)

// writer writes a day.
type writer struct {
	rng    *truth.PCG
	text   strings.Builder
	setups []string        // names so far
	struck map[string]bool // of what a set-up before may have struck
}

// Make is the day of a seed.
func Make(seed uint64) string {
	w := &writer{rng: truth.NewPCG(seed), struck: map[string]bool{}}
	w.base(seed)
	w.line("setups:")
	w.line("  first: {camera: A}")
	w.setups = []string{"first"}
	for i := range 1 + w.below(7) {
		w.setup(fmt.Sprintf("s%d", i+2))
	}
	return w.text.String()
}

func (w *writer) line(format string, args ...any) { fmt.Fprintf(&w.text, format+"\n", args...) }

// below is a whole number from 0 to less than n.
func (w *writer) below(n int) int { return int(w.rng.Float() * float64(n)) }

// between is a number between two, in whole centimetres or hundredths.
func (w *writer) between(low, high float64) float64 {
	return float64(int((low+w.rng.Float()*(high-low))*100)) / 100
}

func (w *writer) one(words ...string) string { return words[w.below(len(words))] }

// base writes the scene that all set-ups start from.
func (w *writer) base(seed uint64) {
	w.line("scrimshaw: 1\ntitle: a day of seed %d\nexposure: {iso: 800, fps: 25, white: 4300 K}", seed)
	w.line("rooms:\n  den: {size: [%g, %g], height: 2.8}", w.between(5.5, 8), w.between(5, 7))
	for i := range w.below(3) {
		w.line("  r%d: {at: [%g, 0], size: [3, 3]}", i, 8.5+4*float64(i))
	}
	w.line("openings: {pane: {window: den.left, along: 1.5, width: 1.4}}")
	w.line("furniture: {desk: {table: [1, 0.6, 0.75], at: [%g, 4.2]}}", w.between(2, 4))
	w.line("people:\n  ada: {at: [%g, %g], faces: noor}", w.between(1.6, 2.2), w.between(2, 3))
	w.line("  noor: {at: [%g, %g], faces: ada, height: 1.62}", w.between(3.4, 4), w.between(2, 3))
	w.line("line: [ada, noor]")
	w.line("cameras:\n  A: {at: {by: ada, toward: noor, turn: %g, distance: 1.6}, lens: 40 mm, looks: ada}", w.between(10, 30))
	w.line("  B: {at: [2.8, 0.5], lens: 28 mm, looks: noor}")
	w.line("lights:\n  key: {unit: led-point-300-bicolour, modifier: softbox-60, at: {by: ada, toward: B, turn: %g camera-left, distance: 1.3}, height: 2, aim: ada, level: %d %%, role: {ada: key}}",
		w.between(30, 60), 10+w.below(60))
	w.line("  hair: {unit: fresnel-tungsten-300, at: {by: ada, turn: %g own-right, distance: 1.2}, height: 2.3, aim: ada, roll: 20}", w.between(120, 150))
	w.line("  day: {unit: led-point-600-daylight, at: {opening: pane, out: 2}, height: 2.2, aim: {opening: pane}, level: 40 %%}")
	w.line("  lamp: {unit: practical-table, at: {top: desk}, level: 30 %%}")
	w.line("grip:\n  board: {card: [1, 1], at: {by: noor, toward: ada, turn: 60, distance: 1}, height: 1.4, faces: noor}")
	w.line("meters: {desk-top: {flat: [2.8, 3.4, 0.8], facing: up}}")
}

// setup writes one set-up: from the scene, after another, or the reverse of one.
func (w *writer) setup(name string) {
	keys, from := []string{}, w.setups[w.below(len(w.setups))]
	camera := "camera: " + w.one("A", "B", "[A, B]")
	switch w.below(4) {
	case 0:
		keys = append(keys, "reverse: {of: "+from+w.one("", ", swap: [[noor, ada]]", ", swap: [[ada, noor], [A, B]]")+"}")
	case 1:
		keys, from = append(keys, camera), ""
	default:
		keys = append(keys, camera, "after: "+from)
		if w.below(3) == 0 {
			keys = append(keys, "stays: [key]")
		}
	}
	w.line("  %s: {%s, change: {%s}}", name, strings.Join(keys, ", "), strings.Join(w.changes(name, from), ", "))
	w.setups = append(w.setups, name)
}

// changes are those of one set-up: a level always, for that makes it another, and what else a day brings.
func (w *writer) changes(name, from string) (all []string) {
	lights := []string{fmt.Sprintf("key: {level: %d.%d %%, %s}", 5+w.below(90), len(w.setups), w.one("colour: 5000 K", "gels: [1/4 CTO]", "colour: 3400 K, gels: [1/4 CTB]", "+gels: 1/8 CTO"))}
	switch w.below(3) {
	case 0:
		lights = append(lights, "day: {unit: led-point-300-daylight, level: 50 %}")
	case 1:
		lights = append(lights, "day: {gels: [full CTO]}")
	}
	w.struck[name] = w.struck[from]
	if !w.struck[name] && w.below(4) == 0 {
		w.struck[name] = true
		all = append(all, "strike: [hair]")
	}
	all = append(all, "lights: {"+strings.Join(lights, ", ")+"}")
	if w.below(2) == 0 {
		all = append(all, fmt.Sprintf("people: {ada: {at: [%g, %g]}}", w.between(1.6, 2.2), w.between(2, 3)))
	}
	return all
}
