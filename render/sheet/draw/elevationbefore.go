package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// What stands in the room is shown before a wall. What touches it, m, hides it.
const (
	touching = 0.005
	embedded = 0.05 // m into the wall: what reaches farther is behind it
)

// silhouette is a part of a thing as it stands before a wall.
type silhouette struct {
	ring  []r2.Vec // on paper
	hides bool     // whether it touches the wall
}

// drawBefore draws what stands near the wall: whole where it touches the wall, else in fine dashes, for the
// map goes on behind it. Names keep clear of what is taken.
func (c Wall) drawBefore(p Pad, v layout.View, f WallFace, taken []carto.Obstacle) []carto.Obstacle {
	things := make([][]silhouette, len(c.In.Setup.Furniture))
	var edges, bodies []carto.Obstacle
	for i := range things {
		for _, part := range c.In.Setup.Furniture[i].Parts {
			s, ok := f.silhouette(v, part)
			if !ok {
				continue
			}
			things[i] = append(things[i], s)
			for k, a := range s.ring {
				edges = append(edges, carto.Obstacle{Outline: []r2.Vec{a, s.ring[(k+1)%len(s.ring)]}})
			}
			if s.hides {
				bodies = append(bodies, carto.Obstacle{Outline: s.ring})
			}
		}
	}
	for _, hides := range [...]bool{true, false} { // what is nearer to who looks comes last
		for i, parts := range things {
			q := p.On(ink.Furniture).of("furniture:"+c.In.Setup.Furniture[i].Name, "")
			for _, s := range parts {
				switch {
				case s.hides != hides:
				case hides:
					q.outline(Thin, p.Look.Ink, &p.Look.Paper, s.ring...)
				default:
					q.dashed(Hair, p.Look.Ink, fieldDash, append(s.ring, s.ring[0])...)
				}
			}
		}
	}
	names := c.nameBefore(p, things, append(append([]carto.Obstacle(nil), taken...), edges...))
	return append(append(edges, bodies...), names...)
}

// nameBefore letters what stands before the wall with its name and height, where there is room.
func (c Wall) nameBefore(p Pad, things [][]silhouette, taken []carto.Obstacle) []carto.Obstacle {
	st := p.place()
	var own []carto.Obstacle
	for i, parts := range things {
		if len(parts) == 0 {
			continue
		}
		thing, g := &c.In.Setup.Furniture[i], box.Bounds{}
		for _, s := range parts {
			g.All(s.ring, 0)
		}
		for _, w := range c.furnitureNames(g.Box(), thing) {
			o := carto.Obstacle{Outline: ink.TurnedBox(w.at, st.boxOf(w.s), w.angle)}
			if meets(o, taken) || meets(o, own) {
				continue
			}
			p.On(ink.Notes).of("furniture:"+thing.Name, "").turned(underMiddle(w.at, st.Cap, w.angle), w.s, st, ink.Centre, w.angle, &p.Look.Paper)
			own = append(own, o)
			break
		}
	}
	return own
}

// silhouette is a part of a thing before the wall; ok is false where it does not stand there, or stands further
// off.
func (f *WallFace) silhouette(v layout.View, part plan.Part) (s silhouette, ok bool) {
	g, nearest := box.Bounds{}, math.Inf(1)
	for _, q := range part.Outline {
		g.Point(f.at(r3.Vec{X: q.X, Y: q.Y, Z: part.Z0}), 0)
		g.Point(f.at(r3.Vec{X: q.X, Y: q.Y, Z: part.Z1}), 0)
		nearest = math.Min(nearest, f.off(q))
	}
	shape, within := box.Intersection(g.Box(), f.box())
	if !g.Any || !within || nearest < -embedded || !f.inRoom(plane.Centroid(part.Outline)) {
		return s, false
	}
	ring := ink.ClipPolygon(box.Corners(shape), f.ring())
	return silhouette{v.All(ring), nearest <= touching}, len(ring) >= 3
}
