package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// inRoom says whether a point in plan lies in the room that a wall belongs to.
func (f *WallFace) inRoom(p r2.Vec) bool { return box.InRing(f.room.Inside, p) }

// drawThings draws who and what stands in the room before the wall in outline, for the map goes on behind it, and
// returns the labels that go beside it.
func (c Wall) drawThings(p Pad, v layout.View, f WallFace) (labels []placeable, edges []carto.Obstacle) {
	s := c.In.Setup
	for i := range s.People {
		if who := &s.People[i]; f.inRoom(who.At) {
			l, e := c.drawPerson(p.On(ink.People).of("person:"+who.Name, who.Name+", "+string(who.Pose)+"."), v, f, who)
			labels, edges = append(labels, l...), append(edges, e...)
		}
	}
	for i := range s.Lights {
		if l := &s.Lights[i]; f.inRoom(plan.InPlan(l.Frame.At)) {
			labels = append(labels, c.drawHead(p.On(ink.Symbols).of("light:"+l.Name, c.LightAlt(l)), v, f, l))
		}
	}
	for i := range s.Grip {
		if g := &s.Grip[i]; f.inRoom(plan.InPlan(g.Frame.At)) {
			labels = append(labels, c.drawSheet(p.On(ink.Symbols).of("grip:"+g.Name, ""), v, f, g))
		}
	}
	for _, l := range labels {
		if t, ok := l.(*tag); ok {
			edges = append(edges, sidesOf(t.drawn.Body)...)
		}
	}
	return labels, edges
}

// drawPerson draws somebody, the head rounder than the rest.
func (c Wall) drawPerson(p Pad, v layout.View, f WallFace, who *plan.Person) (labels []placeable, edges []carto.Obstacle) {
	all := box.Bounds{}
	for _, part := range who.Parts {
		b, ok := f.shape(part)
		if !ok {
			continue
		}
		on := v.Box(b)
		round := 0.25
		if part.Kind == plan.HeadPart {
			round = 0.5
		}
		p.canvas.Draw(ink.Pen{Colour: p.Look.Ink, Width: Medium}, ink.RoundRect(on.Min, on.Max, round*math.Min(box.Width(on), box.Height(on))))
		all.All([]r2.Vec{on.Min, on.Max}, 0)
		edges = append(edges, sidesOf(box.Corners(on))...)
	}
	if !all.Any {
		return nil, nil
	}
	c.used("outline")
	return []placeable{&note{object: "person:" + who.Name, layer: ink.People, style: c.Pad.Small(), forms: noteForms(who.Name), anchor: v.Paper(f.at(who.Face.At)),
		body: all.Box(), priority: 1.5, leader: 24}}, edges
}

// sidesOf are the sides of a ring as lettering keeps clear of them: it may stand within.
func sidesOf(ring []r2.Vec) (all []carto.Obstacle) {
	for i, a := range ring {
		all = append(all, carto.Obstacle{Outline: []r2.Vec{a, ring[(i+1)%len(ring)]}})
	}
	return all
}

// shape is the box of a part of a thing along the wall and in height, m; ok is false where none of it stands
// before the wall.
func (f *WallFace) shape(part plan.Part) (r2.Box, bool) {
	g := box.Bounds{}
	for _, q := range part.Outline {
		g.Point(f.at(r3.Vec{X: q.X, Y: q.Y, Z: part.Z0}), 0)
		g.Point(f.at(r3.Vec{X: q.X, Y: q.Y, Z: part.Z1}), 0)
	}
	if !g.Any {
		return r2.Box{}, false
	}
	return box.Intersection(g.Box(), f.box())
}

// drawHead draws a lamp with what holds it up: its stand down to what that stands on, or its cable up to the ceiling.
func (c Wall) drawHead(p Pad, v layout.View, f WallFace, l *plan.Light) placeable {
	wide, high := headSize(c.In.Setup, l)
	at := f.at(l.Frame.At)
	c.drawMount(p, v, f, &l.Mount, at, l.Base)
	half := r2.Vec{X: wide / 2, Y: high / 2}
	on := v.Box(r2.Box{Min: r2.Sub(at, half), Max: r2.Add(at, half)})
	p.canvas.Draw(ink.Pen{Colour: p.Look.Ink, Width: Medium}, ink.RoundRect(on.Min, on.Max, 0.6))
	c.used("outline")
	colour := c.Pad.lamp(section.LampColour(l))
	return &tag{object: "light:" + l.Name, number: l.Tag, cap: c.Pad.Ranks.Lamp, strip: &colour, anchor: v.Paper(at), drawn: symbols.Drawn{Body: box.Corners(on)}, priority: 2}
}

// headSize is the width and the height of a head with what it wears, as it is drawn before a wall, m.
func headSize(s *plan.Setup, l *plan.Light) (wide, high float64) {
	wide, _ = bodyOf(s, l)
	high = headHigh
	if u := unitOf(s, l); u != nil && u.Body[2] > 0 {
		high = u.Body[2]
	}
	open := l.Head.Source.Opening
	return math.Max(wide, open.Width), math.Max(high, math.Max(open.Height, map[bool]float64{true: open.Width}[open.Height == 0]))
}

// headHigh is the height of a head of which nothing is known, m: common practice.
const headHigh = 0.25

// drawMount draws what carries a thing at a point of the wall: z is that of what a stand stands on.
func (c Wall) drawMount(p Pad, v layout.View, f WallFace, m *plan.Mount, at r2.Vec, z float64) {
	line := func(a, b r2.Vec) { p.Line(Thin, p.Look.Ink, v.Paper(a), v.Paper(b)) }
	foot := f.at(r3.Vec{X: m.Base.X, Y: m.Base.Y, Z: z})
	switch m.Kind {
	case term.Ceiling:
		line(at, box.At(at.X, f.ceiling(at.X)))
	case term.Stand, term.Boom, term.Lift, "":
		if !(m.Foot > 0) {
			return
		}
		top := box.At(foot.X, at.Y)
		line(at, top)
		line(top, foot)
		line(box.At(foot.X-m.Foot/2, z), box.At(foot.X+m.Foot/2, z))
	}
}

// drawSheet draws a flag, a card or a frame as it stands before the wall.
func (c Wall) drawSheet(p Pad, v layout.View, f WallFace, g *plan.Grip) placeable {
	at := f.at(g.Frame.At)
	c.drawMount(p, v, f, &g.Mount, at, g.Base)
	var ring []r2.Vec
	for _, q := range g.Corners() {
		ring = append(ring, v.Paper(f.at(q)))
	}
	p.outline(Medium, p.Look.Ink, nil, ring...)
	c.used("outline")
	g0 := box.Bounds{}
	g0.All(ring, 0)
	return &tag{object: "grip:" + g.Name, number: g.Tag, cap: c.Pad.markCap(), open: true, anchor: v.Paper(at), drawn: symbols.Drawn{Body: box.Corners(g0.Box())}, priority: 1.5}
}
