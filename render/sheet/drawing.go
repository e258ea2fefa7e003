package sheet

import "scrimshaw/symbols"

// drawing is a plan or a wall in the making: what it is of, the lettering of its sheet, and what it has shown so
// far. What draws a part of it has it inside.
type drawing struct {
	Report
	typesetter
	*shown
	smooth bool // the ground of the map is a continuous tint, not bands
	terse  bool // tags are their numbers alone: the lists stand right below
	part   int  // of a plan in parts, the one at hand

	insetMost float64 // the height of the second map, mm
}

func newDrawing(r Report, p pad, log *faults, smooth bool) *drawing {
	d := &drawing{Report: r, typesetter: typesetter{p: p, log: log}, shown: &shown{}, smooth: smooth, insetMost: insetHeights[0]}
	d.clear()
	return d
}

// shown is what a drawing has shown so far.
type shown struct {
	uses      map[string]bool          // the symbols that the plan shows
	people    map[string]symbols.Drawn // as they stand on the plan
	stands    []symbols.Drawn          // lights, grip, cameras and people as they stand on it
	furniture []symbols.Drawn          // in the order of the set-up
	rungs     []int                    // how many labels fell to each rung of their ladder
	reduced   int                      // labels that say less than what they are about
	shortened int                      // labels that say less than they could
}

// clear forgets the plan that was drawn.
func (c *shown) clear() { *c = shown{uses: map[string]bool{}, people: map[string]symbols.Drawn{}} }

// used notes that the plan shows a symbol.
func (c *shown) used(kind string) { c.uses[kind] = kind != "" }

// rung counts a label on its rung.
func (c *shown) rung(n int) {
	for len(c.rungs) <= n {
		c.rungs = append(c.rungs, 0)
	}
	c.rungs[n]++
}
