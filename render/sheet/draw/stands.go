package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// Room that a body takes about the point it stands at, m: what an extent is grown by.
const (
	bodyRoom   = 0.35
	personRoom = 0.30
	headRoom   = 0.05
)

// boomMost is how far the weight of a boom lies behind its stand at the most, m.
const boomMost = 0.4

// reach is how far from the head's axis someone reaches the way they face, m.
func reach(p *plan.Person) float64 {
	switch p.Pose {
	case term.Seated:
		return 0.6
	case term.Propped:
		return 1.1
	case term.Lying:
		return math.Max(p.Height, 1)
	}
	return personRoom
}

// Standing are boxes round what stands in a set-up, m.
func Standing(s *plan.Setup) []r2.Box {
	var all []r2.Box
	add := func(grow func(g *box.Bounds)) {
		g := box.Bounds{}
		if grow(&g); g.Any {
			all = append(all, g.B)
		}
	}
	for i := range s.Walls {
		add(func(g *box.Bounds) { g.All(s.Walls[i].Outline, 0) })
	}
	for i := range s.Rooms {
		add(func(g *box.Bounds) { g.All(s.Rooms[i].Inside, 0) })
	}
	for i := range s.Openings {
		add(func(g *box.Bounds) { includeOpening(g, &s.Openings[i]) })
	}
	for i := range s.Furniture {
		add(func(g *box.Bounds) { includeFurniture(g, &s.Furniture[i]) })
	}
	for i := range s.People {
		add(func(g *box.Bounds) { includePerson(g, &s.People[i]) })
	}
	for i := range s.Cameras {
		add(func(g *box.Bounds) {
			g.Point(plan.InPlan(s.Cameras[i].Frame.At), bodyRoom)
			if t := s.Cameras[i].Track; t != nil {
				for _, corner := range t.Corners {
					g.Point(corner, bodyRoom)
				}
			}
		})
	}
	for i := range s.Lights {
		add(func(g *box.Bounds) { includeLight(g, s, &s.Lights[i]) })
	}
	for i := range s.Grip {
		add(func(g *box.Bounds) { includeGrip(g, &s.Grip[i]) })
	}
	for _, m := range s.Meters {
		add(func(g *box.Bounds) { g.Point(plan.InPlan(m.At), 0.1) })
	}
	return all
}

// Seams are what the match lines of a plan in parts keep clear of.
func Seams(s *plan.Setup) layout.Seams {
	loose := *s
	loose.Walls, loose.Rooms, loose.Openings, loose.Furniture, loose.Meters = nil, nil, nil, nil, nil
	return layout.Seams{Never: Standing(&loose), Rather: Standing(&plan.Setup{Furniture: s.Furniture})}
}

// includePerson takes in the ground of one.
func includePerson(g *box.Bounds, p *plan.Person) {
	g.Point(p.At, personRoom)
	g.Point(r2.Add(p.At, r2.Scale(reach(p)-personRoom, ink.Direction(bodyBearing(p)))), personRoom)
	for _, q := range p.Parts {
		g.All(q.Outline, 0)
	}
}

// includeFurniture takes in the ground of one.
func includeFurniture(g *box.Bounds, f *plan.Furniture) {
	for _, q := range f.Parts {
		g.All(q.Outline, 0)
	}
}

// includeLight takes in the ground of one, with the head behind its face.
func includeLight(g *box.Bounds, s *plan.Setup, l *plan.Light) {
	at, wide := plan.InPlan(l.Frame.At), l.Head.Source.Opening.Width
	g.Point(at, math.Max(bodyRoom, wide/2))
	if _, deep := bodyOf(s, l); math.Abs(section.Tilt(l.Frame.Axis)) < symbols.Overhead {
		deep = math.Max(deep, symbols.BoxDepth*wide)
		g.Point(r2.Sub(at, r2.Scale(deep, ink.Direction(frameBearing(l.Frame)))), headRoom)
	}
	includeMount(g, &l.Mount, at)
}

// includeGrip takes in the ground of one.
func includeGrip(g *box.Bounds, k *plan.Grip) {
	g.Point(plan.InPlan(k.Frame.At), k.Size[0]/2)
	includeMount(g, &k.Mount, plan.InPlan(k.Frame.At))
}

// includeMount takes in the ground of what carries a thing at a point.
func includeMount(g *box.Bounds, m *plan.Mount, at r2.Vec) {
	g.All(m.PoleEnds, 0)
	switch m.Kind {
	case term.Ceiling:
		return
	case term.Boom:
		if arm := r2.Sub(m.Base, at); r2.Norm(arm) > 0 {
			g.Point(r2.Add(m.Base, r2.Scale(math.Min(symbols.BoomTail*r2.Norm(arm), boomMost), r2.Unit(arm))), headRoom)
		}
	}
	if m.Foot > 0 {
		g.Point(m.Base, m.Foot/2)
	}
}

// includeOpening takes in what the leaf of an opening swings over.
func includeOpening(g *box.Bounds, o *plan.Opening) {
	if len(o.Leaf) == 0 {
		return
	}
	hinge, latch, into := o.Left, o.Right, r2.Scale(-1, o.Outward)
	if !o.HingeLeft {
		hinge, latch = latch, hinge
	}
	if !o.SwingIn {
		through := r2.Scale(o.Depth, o.Outward)
		hinge, latch, into = r2.Add(hinge, through), r2.Add(latch, through), o.Outward
	}
	g.All([]r2.Vec{hinge, latch, r2.Add(hinge, r2.Scale(o.Width(), into))}, 0)
	g.All(o.Leaf, 0)
}

// onFloor says whether a point in plan lies in a room.
func onFloor(s *plan.Setup, p r2.Vec) bool {
	return slices.ContainsFunc(s.Rooms, func(r plan.Room) bool { return box.InRing(r.Inside, p) })
}
