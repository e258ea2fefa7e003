package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// Room that a body takes about the point it stands at, m: what an extent is grown by.
const (
	bodyRoom   = 0.35
	personRoom = 0.30
)

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
	for i := range s.Furniture {
		add(func(g *box.Bounds) { growFurniture(g, &s.Furniture[i]) })
	}
	for i := range s.People {
		add(func(g *box.Bounds) { growPerson(g, &s.People[i]) })
	}
	for i := range s.Cameras {
		add(func(g *box.Bounds) { g.Point(plan.InPlan(s.Cameras[i].Frame.At), bodyRoom) })
	}
	for i := range s.Lights {
		add(func(g *box.Bounds) { growLight(g, &s.Lights[i]) })
	}
	for i := range s.Grip {
		add(func(g *box.Bounds) { growGrip(g, &s.Grip[i]) })
	}
	for _, m := range s.Meters {
		add(func(g *box.Bounds) { g.Point(plan.InPlan(m.At), 0.1) })
	}
	return all
}

// growPerson takes in the ground of one.
func growPerson(g *box.Bounds, p *plan.Person) {
	g.Point(p.At, personRoom)
	g.Point(r2.Add(p.At, r2.Scale(reach(p)-personRoom, ink.Direction(bodyBearing(p)))), personRoom)
	for _, q := range p.Parts {
		g.All(q.Outline, 0)
	}
}

// growFurniture takes in the ground of one.
func growFurniture(g *box.Bounds, f *plan.Furniture) {
	for _, q := range f.Parts {
		g.All(q.Outline, 0)
	}
}

// growLight takes in the ground of one.
func growLight(g *box.Bounds, l *plan.Light) {
	g.Point(plan.InPlan(l.Frame.At), math.Max(bodyRoom, l.Head.Source.Opening.Width/2))
	growMount(g, &l.Mount)
}

// growGrip takes in the ground of one.
func growGrip(g *box.Bounds, k *plan.Grip) {
	g.Point(plan.InPlan(k.Frame.At), k.Size[0]/2)
	growMount(g, &k.Mount)
}

// growMount takes in the ground of a stand.
func growMount(g *box.Bounds, m *plan.Mount) {
	if m.Base != (r2.Vec{}) {
		g.Point(m.Base, m.Foot/2)
	}
	g.All(m.PoleEnds, 0)
}

// onFloor says whether a point in plan lies in a room.
func onFloor(s *plan.Setup, p r2.Vec) bool {
	return slices.ContainsFunc(s.Rooms, func(r plan.Room) bool { return box.InRing(r.Inside, p) })
}

// things draws what stands by its symbols.
type things struct{ *Drawing }
