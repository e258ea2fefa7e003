package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// drawOpenings draws windows, doors and gaps by their symbols, and returns what lettering must not
// hide and what it avoids where it can.
func (c things) drawOpenings(p Pad, v layout.View) (hide, rests []carto.Obstacle) {
	for i := range c.In.Setup.Openings {
		o := &c.In.Setup.Openings[i]
		c.used(openingKind(o))
		if o.Escape {
			c.used("opening:escape")
		}
		d := symbols.DrawOpening(p.of("opening:"+o.Name, c.OpeningAlt(o)).canvas, p.symbols(), symbols.Opening{
			Kind: symbols.OpeningKind(o.Kind), Left: v.Paper(o.Left), Right: v.Paper(o.Right), Out: r2.Scale(o.Depth*v.Scale, o.Outward),
			Panes: o.Panes[0], Glazed: o.Kind == term.Door && o.Glass != "", HingeLeft: o.HingeLeft, SwingIn: o.SwingIn, Ajar: o.Ajar, Leaf: v.All(o.Leaf), Escape: o.Escape,
		})
		hide = append(hide, carto.Obstacle{Outline: d.Body})
		rests = append(rests, c.drawDressing(p, v, o)...)
		for _, r := range d.Rest {
			rests = append(rests, carto.Obstacle{Outline: r, Cost: costRest})
		}
	}
	return hide, rests
}

// drawDressing draws the curtains and blinds of an opening, and returns what lettering avoids.
func (c things) drawDressing(p Pad, v layout.View, o *plan.Opening) (rests []carto.Obstacle) {
	for i := range o.Dressing {
		d := &o.Dressing[i]
		c.used(dressingKind(d))
		hung := symbols.Dressing{A: v.Paper(d.A), B: v.Paper(d.B), Blind: d.Slat > 0}
		symbols.DrawDressing(p.of("dressing:"+o.Name, section.DressingWords(d)).canvas, p.symbols(), hung)
		rests = append(rests, carto.Obstacle{Outline: []r2.Vec{hung.A, hung.B}, Cost: costRest})
	}
	return rests
}

// drawWalls draws the walls as the plan cuts them, but for where an opening passes over or under.
func (c things) drawWalls(p Pad, v layout.View) {
	p = p.On(ink.Walls)
	for i := range c.In.Setup.Walls {
		if w := &c.In.Setup.Walls[i]; w.Opening == "" {
			p.of("wall:"+section.Joined(".", w.Room, w.Wall), "").cutGround(v.All(w.Outline))
		}
	}
	p.of("walls", "").cutOutline(Thick, wallPieces(c.In.Setup, v))
}
