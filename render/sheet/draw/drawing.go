package draw

import (
	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// Drawing is a plan or a wall in the making: what it is of, the lettering of its sheet, and what it has shown so
// far. What draws a part of it has it inside.
type Drawing struct {
	section.Report
	Typesetter
	*shown
	how    How
	whole  map[string]bool // the lights whose beams and throws are drawn whole
	Terse  bool            // tags are their numbers alone: the lists stand right below
	Named  bool            // a terse tag has the name beside the number
	Tiles  layout.Tiles    // the parts of a plan in parts
	Part   int             // of those, the one at hand
	also   []string        // the symbols that another map of the set-up shows
	before arrangements    // of labels
	Second bool            // the second map of a set-up: what the first has to say of beams, throws and sizes is not said again
}

// things draws what stands by its symbols.
type things struct{ *Drawing }

// beams draws the wedges of lights and cameras.
type beams struct{ *Drawing }

// How is how a map and its beams are drawn.
type How struct {
	Smooth bool // the ground of the map is a continuous tint, not bands
	Beams  section.Beams
}

// New is the drawing of a report before anything is drawn. cut receives every text that does not fit and is cut.
func New(r section.Report, p Pad, cut func(text string), how How) *Drawing {
	d := &Drawing{Report: r, Typesetter: Typesetter{Pad: p, cut: cut}, shown: &shown{}, how: how, whole: section.WholeBeams(r.In, how.Beams)}
	d.SetLettering(0)
	d.Clear()
	return d
}

// Forget lets go of the report, and of what was shown and arranged of it.
func (c *Drawing) Forget() {
	c.Report, c.before = section.Report{}, nil
	c.Clear()
}

// Other is a drawing of another map of the same set-up.
func (c *Drawing) Other(r section.Report) *Drawing {
	d := New(r, c.Pad, c.cut, c.how)
	d.Terse, d.Second = true, true
	return d
}

// Explain makes the legend hold what another map shows too, and says whether that is more than it shows itself.
func (c *Drawing) Explain(other *Drawing) bool {
	c.also = nil
	for kind := range other.uses {
		if _, known := c.uses[kind]; !known {
			c.also = append(c.also, kind)
		}
	}
	return len(c.also) > 0
}

// SetLettering sets the lettering of the plan to one of LetteringSteps, 0 the largest.
func (c *Drawing) SetLettering(step int) { c.Pad.Ranks = wallRanks[step] }

// NumbersShrunk says whether the numbers of the lights are smaller than they are where there is room.
func (c *Drawing) NumbersShrunk() bool { return c.Pad.Ranks.Lamp < wallRanks[0].Lamp }

// ForPhone makes the drawing one for a narrow screen, where the lists stand right below.
func (c *Drawing) ForPhone() { c.Terse, c.Pad.Ranks = true, phoneRanks }

// shown is what a drawing has shown so far.
type shown struct {
	uses      map[string]example       // the symbols that the plan shows, each as the first of its kind is drawn
	lightOf   map[string]*plan.Light   // by a line of the legend: the first light of which it is drawn
	People    map[string]symbols.Drawn // as they stand on the plan
	Stands    []symbols.Drawn          // lights, grip, cameras and people as they stand on it
	furniture []symbols.Drawn          // in the order of the set-up
	swings    []carto.Obstacle         // the ground that doors sweep
	grounds   []carto.Obstacle         // what stands, lifts and the legs of tables take, which names rather keep off
	Forms     []int                    // how many labels took each form
	Reduced   int                      // labels that say less than what they are about
	Shortened int                      // labels that say less than they could
	Lost      int                      // labels that lost whole lines of what they say
	Missed    []string                 // readings at faces that found no place
	ghosts    [2]int                   // how many of what moved are drawn where they stood, and how many moved
	bands     *[2]int                  // the lowest and the highest band that the maps show; nil: not known, or all one
}

// Clear forgets the plan that was drawn.
func (c *shown) Clear() {
	*c = shown{uses: map[string]example{}, lightOf: map[string]*plan.Light{}, People: map[string]symbols.Drawn{}}
}

// example draws a thing of the plan as the legend shows it: about the origin, at a scale in mm for a metre.
type example func(c ink.Canvas, k symbols.Look, scale float64) symbols.Drawn

// used notes that the plan shows a symbol which always looks the same.
func (c *shown) used(kind string) { c.usedAs(kind, nil) }

// usedAs notes that the plan shows a symbol, and how it looks there.
func (c *shown) usedAs(kind string, as example) {
	if _, known := c.uses[kind]; !known && kind != "" {
		c.uses[kind] = as
	}
}

// The lines of beams in the legend.
const (
	beamHalf  = "beam:half"
	beamTenth = "beam:tenth"
	beamStub  = "stub" // of a light whose beam is not drawn
)

// usedOf notes that the plan shows a line of the beam of a light, in its colour.
func (c *shown) usedOf(line string, l *plan.Light) {
	c.used(line)
	if _, known := c.lightOf[line]; !known {
		c.lightOf[line] = l
	}
}

// form counts a label on its form.
func (c *shown) form(n int) {
	for len(c.Forms) <= n {
		c.Forms = append(c.Forms, 0)
	}
	c.Forms[n]++
}
