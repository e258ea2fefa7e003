package sheet

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/symbols/ink"
)

// brightest marks the place where the most light falls, with its figure: contours say only what it is
// more than.
func (c maps) brightest(p pad, v view) []placeable {
	const arm = 0.9 // mm
	most, where := mostLight(c.in)
	if most <= 0 {
		return nil
	}
	where = v.mm(where)
	q := p.on(ink.Readings).of("brightest", "The most light on the wall: "+c.lux(&most)+".")
	q.line(medium, p.look.Ink, at(where.X-arm, where.Y), at(where.X+arm, where.Y))
	q.line(medium, p.look.Ink, at(where.X, where.Y-arm), at(where.X, where.Y+arm))
	words := c.lux(&most)
	struck := some(slices.ContainsFunc(c.in.fields()[0].Uncomputed, func(u plan.Uncomputed) bool { return u.AltersLight() }), words)
	return []placeable{&note{struck: struck, object: "brightest", layer: ink.Readings, style: c.p.small().strong(), forms: []string{words + " at the brightest", "most " + words},
		anchor: where, body: box(where.X-arm, where.Y-arm, where.X+arm, where.Y+arm), weight: 2, leader: 30, led: true}}
}

// mostLight is the most light of the map, lx, and where it falls.
func mostLight(in *Input) (most float64, where r2.Vec) {
	if len(in.fields()) == 0 {
		return 0, where
	}
	g := &in.fields()[0].Grid
	for j := range g.NY {
		for i := range g.NX {
			if lx := float64(g.Value[j*g.NX+i]); !g.Masked(i, j) && lx > most {
				most, where = lx, g.At(i, j)
			}
		}
	}
	return most, where
}
