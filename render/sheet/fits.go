package sheet

import (
	"scrimshaw/plan/source"
	"scrimshaw/render/font"
)

// Fits returns the errors of plans, and of walls, that no paper holds. It looks at what stands and not at
// light, so that one can ask before minutes are spent on that. Faults of the options are Check's.
func Fits(ins []Input, o Options) []source.Diagnostic {
	if o.Font == nil {
		family, err := font.Default()
		if err != nil {
			return nil // Compose says so
		}
		o.Font = family
	}
	var found []source.Diagnostic
	for _, in := range ins {
		c := newComposer(in, o, &faults{})
		if c.log.failed() {
			continue
		}
		c.choose(c.fitterOf(nil))
		for _, d := range c.log.all {
			if d.Severity == source.Error { // what is noted of a plan in parts comes with its sheet
				found = append(found, d)
			}
		}
	}
	return found
}

// fitterOf tries layouts of what stands, or of the wall, with blocks beside it.
func (c *composer) fitterOf(blocks []*block) *fitter {
	stands := standing(c.in.Setup)
	if f, ok := c.onWall(); ok {
		stands = f.stands()
	}
	return &fitter{extent: around(stands), stands: stands, blocks: blocks,
		head: func(grand bool) float64 { return heightOf(c.head(grand)) }}
}
