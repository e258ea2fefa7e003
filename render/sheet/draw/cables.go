package draw

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// cables draws the outlets of circuits and the cable from them.
type cables struct{ *Drawing }

// draw draws all cables under what stands, and returns the labels of their outlets. The second map has them no more: what
// is on the floor is drawn once.
func (c cables) draw(p Pad, v layout.View) (labels []placeable) {
	if c.Second {
		return nil
	}
	for _, load := range supply.Of(c.In.Setup).Loads {
		circuit := load.Circuit
		if circuit.Outlet == nil {
			continue
		}
		c.used("cable")
		for i := range load.Draws {
			d := &load.Draws[i]
			c.run(p, v, d.Run, "cable:"+d.Light.Name, "Cable from "+circuit.Name+" to "+d.Light.Numbered())
		}
		for _, fed := range load.Feeds {
			c.run(p, v, fed.Feeder, "cable:"+fed.Circuit.Name, "Cable from "+circuit.Name+" to "+fed.Circuit.Name)
		}
		at := v.Paper(*circuit.Outlet)
		switch {
		case circuit.InBox:
		case box.Contains(v.Panel, at):
			q := p.of("circuit:"+circuit.Name, "Outlet of "+circuit.Name+", "+unit.FormatAmps(circuit.Breaker)+".")
			d := symbols.DrawOutlet(q.canvas, q.symbols(), at)
			labels = append(labels, &note{object: "circuit:" + circuit.Name, layer: ink.Cables, style: c.Pad.plan(), anchor: at, body: d.Box(),
				forms: noteForms(circuit.Name+" "+unit.FormatAmps(circuit.Breaker), circuit.Name), priority: 1.5, leader: 24, led: hemmed(&load)})
		default:
			if out, ok := leaves(v, &load); ok {
				labels = append(labels, &note{object: "circuit:" + circuit.Name, layer: ink.Cables, style: c.Pad.plan(), anchor: out, body: box.Of(out.X, out.Y, out.X, out.Y),
					forms: noteForms("to "+circuit.Name+" "+unit.FormatAmps(circuit.Breaker), "to "+circuit.Name), priority: 1.5, leader: 24})
			}
		}
	}
	return labels
}

// leaves is where the first cable from an outlet that is off the plan comes onto it, mm; not ok where none does.
func leaves(v layout.View, load *supply.Load) (at r2.Vec, ok bool) {
	runs := make([]*supply.Run, 0, len(load.Draws)+len(load.Feeds))
	for i := range load.Draws {
		runs = append(runs, load.Draws[i].Run)
	}
	for _, fed := range load.Feeds {
		runs = append(runs, fed.Feeder)
	}
	for _, r := range runs {
		if r == nil {
			continue
		}
		if seen := seenRun(v, r); len(seen) > 0 {
			return seen[0][0], true
		}
	}
	return at, false
}

// hemmed says whether cables leave an outlet to either side: then a place beside it lies on one of them, or on the wall.
func hemmed(load *supply.Load) bool {
	var ways []r2.Vec
	leave := func(r *supply.Run) {
		if r != nil && len(r.Path) > 1 {
			ways = append(ways, r2.Sub(r.Path[1], r.Path[0]))
		}
	}
	for i := range load.Draws {
		leave(load.Draws[i].Run)
	}
	for _, fed := range load.Feeds {
		leave(fed.Feeder)
	}
	return slices.ContainsFunc(ways, func(a r2.Vec) bool {
		return slices.ContainsFunc(ways, func(b r2.Vec) bool { return r2.Dot(a, b) < 0 })
	})
}

// run draws a cable to a light or to another circuit.
func (c cables) run(p Pad, v layout.View, r *supply.Run, object, words string) {
	if r == nil {
		return
	}
	q := p.of(object, words+", "+c.Length(r.Length)+".")
	for _, piece := range seenRun(v, r) {
		symbols.DrawCable(q.canvas, q.symbols(), piece)
	}
}

// seenRun are the pieces of a cable that are drawn.
func seenRun(v layout.View, r *supply.Run) [][]r2.Vec {
	return ink.ClipPolyline(v.All(r.Path), box.Corners(v.Panel))
}

// lines are those of all cables, which lettering avoids.
func (c cables) lines(v layout.View) (all []carto.Obstacle) {
	if c.Second {
		return nil
	}
	for _, load := range supply.Of(c.In.Setup).Loads {
		for _, d := range load.Draws {
			all = append(all, avoided(v, d.Run)...)
		}
		all = append(all, avoided(v, load.Feeder)...)
	}
	return all
}

// avoided are the lines of one cable; none where there is none.
func avoided(v layout.View, r *supply.Run) (all []carto.Obstacle) {
	if r == nil {
		return nil
	}
	for _, piece := range seenRun(v, r) {
		for k := 1; k < len(piece); k++ {
			all = append(all, soft(costCable, piece[k-1], piece[k]))
		}
	}
	return all
}
