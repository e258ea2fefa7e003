package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// numberAir is clear round a number on a beam, mm: one that touches a word is read as part of it.
const numberAir = 0.9

// numberBeams letters the number of its light beside every line of a beam that has room for it, rather
// far from the lamp, where one asks whose line it is, and returns the paper that takes.
func (c beams) numberBeams(p Pad, v layout.View, taken []carto.Obstacle) []carto.Obstacle {
	const least = 14.0 // mm, of a line that is lettered
	rays := c.rays(v)
	var own []carto.Obstacle
	whole, _ := c.beamed()
	for _, b := range whole {
		l := c.In.Setup.LightNamed(b.Light)
		if l.Tag == "" {
			continue
		}
		st := p.plan().Strong().inked(c.Pad.beam(section.LampColour(l)))
		half, tenth := c.beamLines(l, b, v)
		if len(half) == 0 {
			half = tenth
		}
		for _, line := range half {
			for _, part := range v.Seen(line) {
				from, to := part[0], part[len(part)-1]
				if len(part) != 2 || r2.Norm(r2.Sub(to, from)) < least {
					continue
				}
				if at, ok := besideLine(from, to, st.boxOf(l.Tag), func(o carto.Obstacle) bool {
					g := box.Bounds{}
					g.All(o.Outline, numberAir)
					aired := carto.Obstacle{Outline: box.Corners(g.Box())}
					return box.AllIn(o.Outline, box.Inset(v.Panel, 1, 1)) && !meets(aired, taken) && !meets(aired, own) && !meets(o, rays)
				}); ok {
					own = append(own, carto.Obstacle{Outline: ink.TurnedBox(at, st.boxOf(l.Tag), 0)})
					p.On(ink.Beams).of("light:"+l.Name, "").turned(underMiddle(at, st.Cap, 0), l.Tag, st, ink.Centre, 0, &p.Look.Paper)
				}
			}
		}
	}
	return own
}

// besideLine finds the first place for a level box beside a line, on either side of it, that is clear.
func besideLine(from, to, size r2.Vec, clear func(carto.Obstacle) bool) (middle r2.Vec, ok bool) {
	const gap = 0.5 // mm between the line and the box
	along := r2.Unit(r2.Sub(to, from))
	across := r2.Vec{X: -along.Y, Y: along.X}
	off := gap + (math.Abs(across.X)*size.X+math.Abs(across.Y)*size.Y)/2
	for _, share := range []float64{0.8, 0.88, 0.72, 0.64, 0.56, 0.48, 0.4, 0.3, 0.2} {
		for _, side := range []float64{off, -off} {
			at := r2.Add(box.Interpolate(from, to, share), r2.Scale(side, across))
			if clear(carto.Obstacle{Outline: ink.TurnedBox(at, size, 0)}) {
				return at, true
			}
		}
	}
	return r2.Vec{}, false
}
