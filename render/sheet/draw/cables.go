package draw

import (
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
			c.run(p, v, &load, &load.Draws[i])
		}
		if at := v.Paper(*circuit.Outlet); box.Contains(v.Panel, at) {
			q := p.of("circuit:"+circuit.Name, "Outlet of "+circuit.Name+", "+unit.FormatAmps(circuit.Breaker)+".")
			d := symbols.DrawOutlet(q.canvas, q.symbols(), at)
			labels = append(labels, &note{object: "circuit:" + circuit.Name, layer: ink.Cables, style: c.Pad.plan(), anchor: at, body: d.Box(),
				forms: noteForms(circuit.Name+" "+unit.FormatAmps(circuit.Breaker), circuit.Name), priority: 1.5, leader: 24})
		}
	}
	return labels
}

// run draws the cable to a light.
func (c cables) run(p Pad, v layout.View, load *supply.Load, d *supply.Draw) {
	if d.Run == nil {
		return
	}
	q := p.of("cable:"+d.Light.Name, "Cable from "+load.Circuit.Name+" to "+d.Light.Numbered()+", "+c.Length(d.Run.Length)+".")
	for _, piece := range seenRun(v, d.Run) {
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
			if d.Run == nil {
				continue
			}
			for _, piece := range seenRun(v, d.Run) {
				for k := 1; k < len(piece); k++ {
					all = append(all, soft(costTable, piece[k-1], piece[k]))
				}
			}
		}
	}
	return all
}
