package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// tracks draws where cameras go, and the line of action that they keep to one side of.
type tracks struct{ *Drawing }

// draw draws all tracks, with the camera at the end of each, and the line of action, and returns the cameras there, that lettering keeps off,
// and the labels that go beside the tracks.
func (c tracks) draw(p Pad, v layout.View) (ends []carto.Obstacle, labels []placeable) {
	c.line(p, v)
	for i := range c.In.Setup.Cameras {
		m := &c.In.Setup.Cameras[i]
		if m.Track == nil {
			continue
		}
		labels = append(labels, c.track(p, v, m))
		end := m.OnTrack(m.Track.Length())
		if at := v.Flat(end.Frame.At); box.Contains(v.Panel, at) {
			q := p.of("track:"+m.Name, "")
			d := symbols.DrawCamera(q.canvas, q.symbols(), symbols.Camera{At: at, Bearing: frameBearing(end.Frame), Scale: v.Scale, Ghost: true})
			ends = append(ends, hard(d.Box()))
		}
	}
	return ends, labels
}

// track draws the rails of a camera with their length.
func (c tracks) track(p Pad, v layout.View, m *plan.Camera) placeable {
	t := m.Track
	long := t.Length()
	c.used("track")
	q := p.of("track:"+m.Name, "Track of camera "+m.Name+", "+c.Length(long)+".")
	half := plan.RailGauge / 2 * v.Scale
	var sleepers []symbols.WalkTick
	for along := 0.0; along < long+plane.Grain; along += plan.SleeperGap {
		at, way := plane.OnPath(t.Corners, along)
		if box.Contains(v.Panel, v.Paper(at)) {
			sleepers = append(sleepers, symbols.WalkTick{At: v.Paper(at), Way: way})
		}
	}
	symbols.DrawTrack(q.canvas, q.symbols(), c.rails(v, t), sleepers, half)
	middle, way := plane.OnPath(t.Corners, long/2)
	side := r2.Scale(half, r2.Vec{X: way.Y, Y: -way.X})
	around := box.Bounds{}
	around.All([]r2.Vec{r2.Add(v.Paper(middle), side), r2.Sub(v.Paper(middle), side)}, 0)
	words := "track " + c.Length(long)
	return &note{object: "track:" + m.Name, layer: ink.People, style: c.Pad.plan(), forms: noteForms(words, c.Length(long)), anchor: v.Paper(middle), body: around.Box(), priority: 1.5, leader: 24}
}

// rails are the pieces of the rails of a track that are drawn.
func (c *Drawing) rails(v layout.View, t *plan.Track) (pieces [][]r2.Vec) {
	for _, rail := range symbols.Rails(v.All(t.Corners), plan.RailGauge/2*v.Scale) {
		pieces = append(pieces, ink.ClipPolyline(rail, box.Corners(v.Panel))...)
	}
	return pieces
}

// trackObstacles are the rails of all tracks and the line of action, which lettering avoids.
func (c *Drawing) trackObstacles(v layout.View) (all []carto.Obstacle) {
	var pieces [][]r2.Vec
	for i := range c.In.Setup.Cameras {
		if t := c.In.Setup.Cameras[i].Track; t != nil {
			pieces = append(pieces, c.rails(v, t)...)
		}
	}
	for _, piece := range append(pieces, c.lineOfAction(v)...) {
		for k := 1; k < len(piece); k++ {
			all = append(all, carto.Obstacle{Outline: piece[k-1 : k+1]})
		}
	}
	return all
}

// pastHeads is how far the line of action is drawn past both heads, m.
const pastHeads = 0.8

// pastBoth are the ends of the line of action as it is drawn, m.
func pastBoth(line *plan.Line) (from, to r2.Vec) {
	past := r2.Scale(pastHeads, r2.Unit(r2.Sub(line.Ends[1], line.Ends[0])))
	return r2.Sub(line.Ends[0], past), r2.Add(line.Ends[1], past)
}

// lineOfAction are the pieces of it that are drawn.
func (c *Drawing) lineOfAction(v layout.View) [][]r2.Vec {
	line := c.In.Setup.Line
	if line == nil {
		return nil
	}
	from, to := pastBoth(line)
	return ink.ClipPolyline(v.All([]r2.Vec{from, to}), box.Corners(v.Panel))
}

// line draws the line of action, but not over people.
func (c tracks) line(p Pad, v layout.View) {
	for _, seen := range c.lineOfAction(v) {
		c.used("line")
		from, to := pastBoth(c.In.Setup.Line)
		q := p.of("line", "Line of action, "+c.In.Setup.Line.Words()+".")
		for _, piece := range beams(c).besidePeople(v, seen) {
			for k := 1; k < len(piece); k++ {
				a, b := piece[k-1], piece[k]
				symbols.DrawLine(q.canvas, q.symbols(), a, b, near(v.Metres(a), from), near(v.Metres(b), to))
			}
		}
	}
}
