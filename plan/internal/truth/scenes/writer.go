package scenes

import (
	"fmt"
	"strings"

	"scrimshaw/plan/internal/truth"
)

// writer writes a scene, section by section.
type writer struct {
	rng      *truth.PCG
	sections []*section
	rooms    []room
	people   []string
}

// section is a map of the scene: its entries in order.
type section struct {
	name    string
	entries []string
}

// room is what later sections need to know of a room: the clear box that things are put in.
type room struct {
	name             string
	x, y, wide, deep float64
	height, wall     float64
	walls            []string // by which openings are named
	lengths          []float64
}

func newWriter(rng *truth.PCG) *writer {
	for range 8 { // the first numbers of near seeds are alike
		rng.Bits()
	}
	return &writer{rng: rng}
}

// text is the whole scene.
func (w *writer) text(title string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "scrimshaw: 1\ntitle: %s\n", title)
	for _, s := range w.sections {
		fmt.Fprintf(&b, "%s:\n", s.name)
		for _, e := range s.entries {
			b.WriteString("  " + e + "\n")
		}
	}
	return b.String()
}

// add writes an entry into a section.
func (w *writer) add(name, format string, args ...any) {
	var s *section
	for _, t := range w.sections {
		if t.name == name {
			s = t
		}
	}
	if s == nil {
		s = &section{name: name}
		w.sections = append(w.sections, s)
	}
	s.entries = append(s.entries, fmt.Sprintf(format, args...))
}

// count is how many entries a section has.
func (w *writer) count(name string) int {
	for _, s := range w.sections {
		if s.name == name {
			return len(s.entries)
		}
	}
	return 0
}

// between is a number between two, in whole millimetres or thousandths.
func (w *writer) between(low, high float64) float64 {
	v := low + w.rng.Float()*(high-low)
	return float64(int(v*1000+0.5*sign(v))) / 1000
}

func sign(v float64) float64 {
	if v < 0 {
		return -1
	}
	return 1
}

// whole is a whole number from low to high.
func (w *writer) whole(low, high int) int {
	return low + int(w.rng.Float()*float64(high-low+1))
}

// chance is true so often, of one.
func (w *writer) chance(share float64) bool { return w.rng.Float() < share }

// one picks a word.
func (w *writer) one(words ...string) string { return words[w.whole(0, len(words)-1)] }
