package sheet

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/symbols"
)

// drawOpenings draws windows, doors and gaps by their symbols, and returns what lettering must not
// hide and what it had better not.
func (c *composer) drawOpenings(p pad, v view) (hide, rests []carto.Obstacle) {
	for i := range c.in.Setup.Openings {
		o := &c.in.Setup.Openings[i]
		c.used(openingKind(o))
		if o.Escape {
			c.used("opening:escape")
		}
		d := symbols.Pierce(p.of("opening:"+o.Name, c.openingAlt(o)).canvas, p.symbols(), symbols.Opening{
			Kind: symbols.OpeningKind(o.Kind), Left: v.mm(o.Left), Right: v.mm(o.Right), Out: r2.Scale(o.Depth*v.scale, o.Outward),
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
	return "opening:" + string(o.Kind)
}

func (c *composer) openingAlt(o *plan.Opening) string {
	s := fmt.Sprintf("%s %s, %s wide", o.Kind, o.Name, c.length(r2.Norm(r2.Sub(o.Right, o.Left))))
	if o.Kind == "window" {
		s += fmt.Sprintf(", sill %s, head %s", c.length(o.Sill-c.floorOf(o.Room)), c.length(o.Head-c.floorOf(o.Room)))
	}
	if o.Ajar > 0 {
		s += ", open " + unit.FormatAngle(o.Ajar)
	}
	return s + "."
}

// floorOf is the height of a room's floor, m.
func (c *composer) floorOf(room string) float64 {
	for i := range c.in.Setup.Rooms {
		if r := &c.in.Setup.Rooms[i]; r.Name == room {
			return r.Base
		}
	}
	return 0
}
