package sheet

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
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
	case "seated":
		return 0.6
	case "propped":
		return 1.1
	case "lying":
		return math.Max(p.Height, 1)
	}
	return personRoom
}

// standing are boxes round what stands in a set-up, m.
func standing(s *plan.Setup) []r2.Box {
	var all []r2.Box
	add := func(grow func(g *gatherer)) {
		g := gatherer{}
		if grow(&g); g.any {
			all = append(all, g.b)
		}
	}
	for i := range s.Walls {
		add(func(g *gatherer) { g.all(s.Walls[i].Outline, 0) })
	}
	for i := range s.Rooms {
		add(func(g *gatherer) { g.all(s.Rooms[i].Inside, 0) })
	}
	for i := range s.Furniture {
		add(func(g *gatherer) { g.furniture(&s.Furniture[i]) })
	}
	for i := range s.People {
		add(func(g *gatherer) { g.person(&s.People[i]) })
	}
	for i := range s.Cameras {
		add(func(g *gatherer) { g.point(plain(s.Cameras[i].Frame.At), bodyRoom) })
	}
	for i := range s.Lights {
		add(func(g *gatherer) { g.light(&s.Lights[i]) })
	}
	for i := range s.Grip {
		add(func(g *gatherer) { g.grip(&s.Grip[i]) })
	}
	for _, m := range s.Meters {
		add(func(g *gatherer) { g.point(plain(m.At), 0.1) })
	}
	return all
}

func (g *gatherer) person(p *plan.Person) {
	g.point(p.At, personRoom)
	g.point(r2.Add(p.At, r2.Scale(reach(p)-personRoom, ink.Direction(bodyBearing(p)))), personRoom)
	for _, q := range p.Parts {
		g.all(q.Outline, 0)
	}
}

func (g *gatherer) furniture(f *plan.Furniture) {
	for _, q := range f.Parts {
		g.all(q.Outline, 0)
	}
}

func (g *gatherer) light(l *plan.Light) {
	g.point(plain(l.Frame.At), math.Max(bodyRoom, l.Head.Source.Opening.Width/2))
	g.mount(&l.Mount)
}

func (g *gatherer) grip(k *plan.Grip) {
	g.point(plain(k.Frame.At), k.Size[0]/2)
	g.mount(&k.Mount)
}

// mount takes the ground of a stand.
func (g *gatherer) mount(m *plan.Mount) {
	if m.Base != (r2.Vec{}) {
		g.point(m.Base, m.Foot/2)
	}
	g.all(m.Ends, 0)
}
