package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols"
)

// drawOpenings draws windows, doors and gaps by their symbols, and returns what lettering must not
// hide and what it had better not.
func (c things) drawOpenings(p Pad, v layout.View) (hide, rests []carto.Obstacle) {
	for i := range c.In.Setup.Openings {
		o := &c.In.Setup.Openings[i]
		c.used(openingKind(o))
		if o.Escape {
			c.used("opening:escape")
		}
		d := symbols.Pierce(p.of("opening:"+o.Name, c.OpeningAlt(o)).canvas, p.symbols(), symbols.Opening{
			Kind: symbols.OpeningKind(o.Kind), Left: v.Paper(o.Left), Right: v.Paper(o.Right), Out: r2.Scale(o.Depth*v.Scale, o.Outward),
			Panes: o.Panes[0], Glazed: o.Kind == "door" && o.Glass != "", HingeLeft: o.HingeLeft, SwingIn: o.SwingIn, Ajar: o.Ajar, Escape: o.Escape,
		})
		hide = append(hide, carto.Obstacle{Outline: d.Body})
		for _, r := range d.Rest {
			rests = append(rests, carto.Obstacle{Outline: r, Cost: costRest})
		}
	}
	return hide, rests
}

// openingKind is the symbol of an opening.
func openingKind(o *plan.Opening) string {
	if o.Kind == "window" && o.Ajar > 0 {
		return "opening:casement"
	}
	return "opening:" + o.Kind
}
