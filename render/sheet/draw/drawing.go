package draw

import (
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
)

// Drawing is a plan or a wall in the making: what it is of, the lettering of its sheet, and what it has shown so
// far. What draws a part of it has it inside.
type Drawing struct {
	section.Report
	Typesetter
	*shown
	how   How
	whole map[string]bool // the lights whose beams and throws are drawn whole
	Terse bool            // tags are their numbers alone: the lists stand right below
	Part  int             // of a plan in parts, the one at hand

	InsetMost float64 // the height of the second map, mm
}

// How is how a map and its beams are drawn.
type How struct {
	Smooth bool // the ground of the map is a continuous tint, not bands
	Beams  section.Beams
}

// New is the drawing of a report before anything is drawn. cut receives every text that does not fit and is cut.
func New(r section.Report, p Pad, cut func(text string), how How) *Drawing {
	d := &Drawing{Report: r, Typesetter: Typesetter{Pad: p, cut: cut}, shown: &shown{}, how: how, InsetMost: InsetHeights[0],
		whole: section.WholeBeams(r.In, how.Beams)}
	d.Crowd(0)
	d.Clear()
	return d
}

// Crowd sets the lettering of the plan to one of the steps of Crowds, 0 the largest.
func (c *Drawing) Crowd(step int) { c.Pad.Ranks = wallRanks[step] }

// ForPhone makes the drawing one for a narrow screen, where the lists stand right below.
func (c *Drawing) ForPhone() { c.Terse, c.Pad.Ranks = true, phoneRanks }

// shown is what a drawing has shown so far.
type shown struct {
	uses      map[string]bool          // the symbols that the plan shows
	People    map[string]symbols.Drawn // as they stand on the plan
	Stands    []symbols.Drawn          // lights, grip, cameras and people as they stand on it
	furniture []symbols.Drawn          // in the order of the set-up
	Forms     []int                    // how many labels took each form
	Reduced   int                      // labels that say less than what they are about
	Shortened int                      // labels that say less than they could
	Lost      int                      // labels that lost whole lines of what they say
	Missed    []string                 // readings at faces that found no place
}

// Clear forgets the plan that was drawn.
func (c *shown) Clear() { *c = shown{uses: map[string]bool{}, People: map[string]symbols.Drawn{}} }

// used notes that the plan shows a symbol.
func (c *shown) used(kind string) { c.uses[kind] = kind != "" }

// form counts a label on its form.
func (c *shown) form(n int) {
	for len(c.Forms) <= n {
		c.Forms = append(c.Forms, 0)
	}
	c.Forms[n]++
}

// InsetHeights are the heights that the second map takes at most, mm: the first with which the sheet
// holds everything.
var InsetHeights = [...]float64{58, 44, 32}
