package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

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
func (c Wall) standing(s *plan.Setup, l *change.Line, v layout.View, f WallFace) (round []r2.Vec) {
	around := func(b r2.Box, ok bool) {
		if ok {
			round = append(round, v.All(box.Corners(b))...)
		}
	}
	switch l.Sort {
	case change.Light:
		if one := s.LightNamed(l.Name); one != nil && f.inRoom(plan.InPlan(one.Frame.At)) {
			wide, high := headSize(s, one)
			at, half := f.at(one.Frame.At), r2.Vec{X: wide / 2, Y: high / 2}
			around(r2.Box{Min: r2.Sub(at, half), Max: r2.Add(at, half)}, true)
		}
	case change.Grip:
		if one := s.GripNamed(l.Name); one != nil && f.inRoom(plan.InPlan(one.Frame.At)) {
			for _, q := range one.Corners() {
				round = append(round, v.Paper(f.at(q)))
			}
		}
	case change.Person:
		if who := s.Post(l.Name); who != nil && f.inRoom(who.At) {
			for _, part := range who.Parts {
				around(f.shape(part))
			}
		}
	case change.Furniture:
		if piece := s.PieceNamed(l.Name); piece != nil {
			for _, part := range piece.Parts {
				if q, ok := f.silhouette(v, part); ok {
					round = append(round, q.ring...)
				}
			}
		}
	case change.Opening:
		if o := s.OpeningNamed(l.Name); o != nil {
			around(f.hole(o))
		}
	case change.Meter:
		round = f.metered(s, l.Name, v)
	}
	return round
}

// metered is where a meter of that name reads the wall, on paper; nil where it reads something else.
func (f *WallFace) metered(s *plan.Setup, name string, v layout.View) []r2.Vec {
	for i := range s.Meters {
		m := &s.Meters[i]
		if at := f.at(m.At); m.Name == name && math.Abs(f.off(plan.InPlan(m.At))) < 5*onFace && box.Contains(f.box(), at) {
			return []r2.Vec{v.Paper(at)}
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
