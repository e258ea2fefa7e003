package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// clouds are those of a wall: round what of it, on it and before it is not as on the sheet before. What is gone or stood elsewhere has its outline of then.
func (c Wall) clouds(v layout.View, f WallFace) (all []cloud) {
	lines := revisions(c).lines()
	for i := range lines {
		l := &lines[i]
		was, is := c.standing(c.In.Since.Setup, l, v, f), c.standing(c.In.Setup, l, v, f)
		here := cloud{object: "revision:" + string(l.Sort) + ":" + l.Name, alt: c.In.Setup.Numbered(l.Name) + " is not as on the sheet before.", round: is}
		switch {
		case l.Sort == change.Room:
			all = append(all, c.wallClouds(v, f, l)...)
			continue
		case l.Part(change.Goes) != nil:
			here.alt, here.round, here.gone = c.In.Since.Setup.Numbered(l.Name)+" was here on the sheet before.", was, was
		case l.Part(change.Place) != nil:
			here.gone = was
		}
		all = append(all, here)
	}
	return slices.DeleteFunc(all, func(q cloud) bool { return len(q.round) == 0 && len(q.gone) == 0 })
}

// standing is the outline of a thing as it stands before the wall or lies in it, on paper; nil where it does not, or is not there.
func (c Wall) standing(s *plan.Setup, l *change.Line, v layout.View, f WallFace) []r2.Vec {
	switch l.Sort {
	case change.Light:
		if one := s.LightNamed(l.Name); one != nil && f.inRoom(plan.InPlan(one.Frame.At)) {
			wide, high := headSize(s, one)
			at, half := f.at(one.Frame.At), r2.Vec{X: wide / 2, Y: high / 2}
			return v.All(box.Corners(r2.Box{Min: r2.Sub(at, half), Max: r2.Add(at, half)}))
		}
	case change.Grip:
		if one := s.GripNamed(l.Name); one != nil && f.inRoom(plan.InPlan(one.Frame.At)) {
			return f.points(one.Corners(), v)
		}
	case change.Person:
		if who := s.Post(l.Name); who != nil && f.inRoom(who.At) {
			return f.parts(who.Parts, v)
		}
	}
	return f.partOfSet(s, l, v)
}

// partOfSet is the outline of what belongs to the set: furniture, openings, and what a meter reads of the wall.
func (f *WallFace) partOfSet(s *plan.Setup, l *change.Line, v layout.View) []r2.Vec {
	switch l.Sort {
	case change.Furniture:
		if piece := s.PieceNamed(l.Name); piece != nil {
			return f.before(piece.Parts, v)
		}
	case change.Opening:
		if o := s.OpeningNamed(l.Name); o != nil {
			if hole, ok := f.hole(o); ok {
				return v.All(box.Corners(hole))
			}
		}
	case change.Meter:
		return f.metered(s, l.Name, v)
	}
	return nil
}

// points are places before the wall, on paper.
func (f *WallFace) points(all []r3.Vec, v layout.View) (out []r2.Vec) {
	for _, q := range all {
		out = append(out, v.Paper(f.at(q)))
	}
	return out
}

// parts are the corners of parts of a thing, on paper.
func (f *WallFace) parts(all []plan.Part, v layout.View) (out []r2.Vec) {
	for _, part := range all {
		if b, ok := f.shape(part); ok {
			out = append(out, v.All(box.Corners(b))...)
		}
	}
	return out
}

// before are likewise those of parts that stand before the wall.
func (f *WallFace) before(all []plan.Part, v layout.View) (out []r2.Vec) {
	for _, part := range all {
		if q, ok := f.silhouette(v, part); ok {
			out = append(out, q.ring...)
		}
	}
	return out
}

// metered is where a meter of that name reads the wall, on paper; nil where it reads something else.
func (f *WallFace) metered(s *plan.Setup, name string, v layout.View) []r2.Vec {
	for i := range s.Meters {
		m := &s.Meters[i]
		if m.Name == name && f.metersAt(m.At) {
			return []r2.Vec{v.Paper(f.at(m.At))}
		}
	}
	return nil
}

// wallClouds are those round what of the wall itself is not as before: where it is longer or shorter, and along the ceiling where that is higher or lower.
func (c Wall) wallClouds(v layout.View, f WallFace, l *change.Line) (all []cloud) {
	if l.Name != f.room.Name || l.Part(change.Goes) != nil || l.Part(change.Comes) != nil {
		return nil
	}
	mark := func(ring []r2.Vec) {
		all = append(all, cloud{object: "revision:wall:" + f.Name, alt: "The wall " + f.Name + " is not as on the sheet before.", round: v.All(ring)})
	}
	was := c.In.Since.Setup.WallNamed(f.Name)
	if l.Part(change.Shape) != nil || l.Part(change.Thick) != nil {
		for _, s := range stretchesNew(f.wall, was) {
			mark([]r2.Vec{box.At(s[0], f.room.Base), box.At(s[1], f.room.Base), box.At(s[1], f.ceiling(s[1])), box.At(s[0], f.ceiling(s[0]))})
		}
	}
	if before := c.In.Since.Setup.RoomNamed(f.room.Name); l.Part(change.Ceiling) != nil && was != nil {
		height := func(r *plan.Room, at r2.Vec) float64 { return r.CeilingAt(at) - r.Base }
		if math.Abs(height(f.room, f.wall.Left)-height(before, was.Left)) >= change.Unmoved || math.Abs(height(f.room, f.wall.Right)-height(before, was.Right)) >= change.Unmoved {
			mark([]r2.Vec{box.At(0, f.left), box.At(f.wall.Length(), f.right)})
		}
	}
	return all
}

// drawRevisions draws the clouds of a wall. It returns their lines, which labels avoid where they can.
func (c Wall) drawRevisions(p Pad, v layout.View, f WallFace) (soft []carto.Obstacle) {
	p = p.On(ink.Revisions)
	p.canvas = p.canvas.Within(box.Corners(v.Panel)...)
	for _, q := range c.clouds(v, f) {
		on := p.of(q.object, q.alt)
		if len(q.gone) > 0 {
			on.canvas.Draw(ghostDashed(p.Look.revisionPen()), ink.Polygon(plane.Hull(q.gone)...))
			c.used("gone")
		}
		if len(q.round) == 0 {
			continue
		}
		feet, around := cloudRings(q.round)
		on.canvas.Draw(p.Look.revisionPen(), cloudPath(feet))
		c.used("revised")
		soft = append(soft, cloudLines(around)...)
	}
	return soft
}
