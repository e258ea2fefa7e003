package draw

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// brightest marks the place where the most light falls, with its figure: contours say only what it is
// more than.
func (c maps) brightest(p Pad, v layout.View) []placeable {
	most, where := mostLight(c.In)
	if most <= 0 {
		return nil
	}
	where = v.Paper(where)
	q := p.On(ink.Readings).of("brightest", "The most light on the wall: "+c.Lux(&most)+".")
	q.cross(where)
	c.used("brightest")
	words := c.Lux(&most)
	struck := section.When(slices.ContainsFunc(c.In.Maps()[0].Uncomputed, func(u plan.Uncomputed) bool { return u.AltersLight() }), words)
	return []placeable{&note{struck: struck, object: "brightest", layer: ink.Readings, style: c.Pad.plan().Strong(), forms: noteForms(words+" at the brightest", "most "+words),
		anchor: where, body: box.Of(where.X-crossArm, where.Y-crossArm, where.X+crossArm, where.Y+crossArm), priority: 2, leader: 60, led: true}}
}

// crossArm is half of the mark of the brightest place, mm.
const crossArm = 0.9

func (p Pad) cross(at r2.Vec) {
	p.Line(Medium, p.Look.Ink, box.At(at.X-crossArm, at.Y), box.At(at.X+crossArm, at.Y))
	p.Line(Medium, p.Look.Ink, box.At(at.X, at.Y-crossArm), box.At(at.X, at.Y+crossArm))
}

// mostLight is the most light of the map, lx, and where it falls.
func mostLight(in *section.Input) (most float64, where r2.Vec) {
	if len(in.Maps()) == 0 {
		return 0, where
	}
	g := &in.Maps()[0].Grid
	for j := range g.NY {
		for i := range g.NX {
			if lx := float64(g.Value[j*g.NX+i]); !g.Masked(i, j) && lx > most {
				most, where = lx, g.At(i, j)
			}
		}
	}
	return most, where
}
