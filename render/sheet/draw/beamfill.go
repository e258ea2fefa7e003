package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// The light side of a beam's edge has a band of its light, as maps edge a country: on the tints of the map, which
// a wedge filled with its colour would falsify, it says which side of the line is lit. It widens from the lamp.
const (
	bandWide = 1.3  // mm
	bandFrom = 12.0 // mm from its beginning, where the band is as wide as that
)

// fill fills the wedge of a beam to half its peak with its faint light, from a light that stands on no floor up to
// the first floor that it comes to: there the map says where its light goes on. It lies under the walls. One that points at
// the ground outside has none: it would end across the beam where its axis does, and most of the light goes on.
func (c beams) fill(p Pad, v layout.View, l *plan.Light, b *section.Beam) {
	from := plan.InPlan(l.Frame.At)
	onMap := func(f *section.Field) bool { return covers(f, from) }
	if p.Look.Glow == 0 || b.Spot || onFloor(c.In.Setup, from) || atGround(c.In.Setup, l.Frame) || slices.ContainsFunc(c.In.Maps(), onMap) || len(beamEdges(l, b.Half, false)) == 0 {
		return
	}
	wedge := make([]r2.Vec, len(b.Half))
	for i, p := range b.Half {
		wedge[i] = upToFloor(c.In.Setup, from, p)
	}
	if q := ink.ClipPolygon(v.All(wedge), box.Corners(v.Panel)); len(q) > 2 {
		faint := p.glow(section.LampColour(l))
		p.On(ink.Wedges).of("light:"+l.Name, "").outline(0, faint, &faint, q...)
	}
}

// atGround says whether a light outside points at the ground before it comes to the floor of a room.
func atGround(s *plan.Setup, f plan.Frame) bool {
	if f.Axis.Z >= 0 {
		return false
	}
	from := plan.InPlan(f.At)
	end := r2.Add(from, r2.Scale((f.At.Z-s.Ground)/-f.Axis.Z, plan.InPlan(f.Axis)))
	return shareToFloor(s, from, end) == 1
}

// upToFloor is where the way from a point first comes to the floor of a room, else its end.
func upToFloor(s *plan.Setup, from, to r2.Vec) r2.Vec {
	return box.Interpolate(from, to, shareToFloor(s, from, to))
}

// shareToFloor is the share of the way from a point after which it first comes to the floor of a room, else 1.
func shareToFloor(s *plan.Setup, from, to r2.Vec) float64 {
	nearest := 1.0
	for i := range s.Rooms {
		for _, part := range s.Rooms[i].Parts {
			for _, inside := range ink.ClipPolyline([]r2.Vec{from, to}, part) {
				nearest = math.Min(nearest, r2.Norm(r2.Sub(inside[0], from))/r2.Norm(r2.Sub(to, from)))
			}
		}
	}
	return nearest
}

// band edges a line of a beam on its light side. It lies on the map and under all that stands.
func (c beams) band(p Pad, v layout.View, l *plan.Light, wedge, line []r2.Vec) {
	if p.Look.Glow == 0 || len(line) != 2 {
		return
	}
	along := r2.Sub(line[1], line[0])
	if r2.Norm(along)*v.Scale < 2*bandWide {
		return
	}
	in := r2.Scale(1/r2.Norm(along), r2.Vec{X: -along.Y, Y: along.X})
	const beside = 0.03 // m
	if !box.InRing(wedge, r2.Add(box.Middle(line[0], line[1]), r2.Scale(beside, in))) {
		in = r2.Scale(-1, in)
	}
	a, b := v.Paper(line[0]), v.Paper(line[1])
	wide := box.Interpolate(a, b, math.Min(bandFrom/r2.Norm(r2.Sub(b, a)), 1))
	light := p.band(section.LampColour(l))
	band := []r2.Vec{a, b, r2.Add(b, r2.Scale(bandWide, in)), r2.Add(wide, r2.Scale(bandWide, in))}
	if q := ink.ClipPolygon(band, box.Corners(v.Panel)); len(q) > 2 {
		p.outline(0, light, &light, q...)
	}
}

// besidePeople is what of a line on paper lies beside head and shoulders: light that ends on somebody is no shard on them.
func (c beams) besidePeople(v layout.View, line []r2.Vec) [][]r2.Vec {
	lines := [][]r2.Vec{line}
	for i := range c.In.Setup.People {
		trunk := personOf(v, &c.In.Setup.People[i]).Trunk()
		var rest [][]r2.Vec
		for _, l := range lines {
			rest = append(rest, without(l, trunk)...)
		}
		lines = rest
	}
	return lines
}

// without is what of a line lies outside a convex ring.
func without(line, ring []r2.Vec) [][]r2.Vec {
	var kept runs
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		inside := ink.ClipPolyline([]r2.Vec{a, b}, ring)
		if len(inside) == 0 {
			kept.add(a, b)
			continue
		}
		if first := inside[0][0]; first != a {
			kept.add(a, first)
		}
		kept.end()
		if last := inside[0][len(inside[0])-1]; last != b {
			kept.add(last, b)
		}
	}
	return kept.all()
}

// stubLong is the line that shows the direction of a light whose beam is not drawn, from the front of its symbol, mm.
const stubLong = 10.0

// stub draws the direction of a light whose beam is not drawn; one that points up or down has none in plan.
func (c beams) stub(p Pad, v layout.View, l *plan.Light) {
	const least = 0.2 // of the axis in plan
	way := plan.InPlan(l.Frame.Axis)
	if r2.Norm(way) < least {
		return
	}
	from := v.Flat(l.Frame.At)
	to := r2.Add(from, r2.Scale(stubLong, r2.Unit(way)))
	if len(ink.ClipPolyline([]r2.Vec{from, to}, box.Corners(v.Panel))) == 0 {
		return
	}
	c.usedOf(beamStub, l)
	p.canvas.Arrow(ink.Pen{Colour: c.Pad.beam(section.LampColour(l)), Width: Medium}, throwHead, from, to)
}
