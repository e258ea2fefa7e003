package scenes

import (
	"errors"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// The least distances of a scene, m: of a meter and a lamp's opening from what is solid, and of a meter from an
// opening.
const (
	touching = 1e-6 // m: things that share less space only touch
	offSolid = 0.02
	offLamp  = 0.10
)

// usable says what is wrong with a scene that loads: a lamp or a reading that touches something solid.
func usable(s *plan.Setup) error {
	for i := range s.Lights {
		for _, p := range opening(&s.Lights[i]) {
			if near(&s.Set, p, offSolid, nil) {
				return errors.New("an opening touches something")
			}
			for k := range s.Meters {
				if r3.Norm(r3.Sub(s.Meters[k].At, p)) < offLamp {
					return errors.New("a meter touches a lamp")
				}
			}
		}
	}
	if piece := crossing(s); piece != "" {
		return errors.New(piece + " stands in something")
	}
	for i := range s.People {
		if near(&s.Set, s.People[i].Face.At, offSolid, s.People[i].Own) {
			return errors.New("a face touches something")
		}
	}
	for i := range s.Meters {
		if near(&s.Set, s.Meters[i].At, offSolid, nil) {
			return errors.New("a meter touches something")
		}
	}
	return nil
}

// opening are points spread over the opening of a lamp.
func opening(l *plan.Light) (all []r3.Vec) {
	o := l.Head.Source.Opening
	width, height := o.Width/2, o.Height/2
	switch o.Form {
	case photometry.Disc, photometry.Sphere:
		height = width
	case photometry.Tube:
		height = 0
	case photometry.Point:
		return []r3.Vec{l.Frame.At}
	}
	const grain = 6
	up := l.Frame.Up()
	for i := -grain; i <= grain; i++ {
		for k := -grain; k <= grain; k++ {
			x, y := width*float64(i)/grain, height*float64(k)/grain
			all = append(all, r3.Add(l.Frame.At, r3.Add(r3.Scale(x, l.Frame.Right), r3.Scale(y, up))))
			if o.Form == photometry.Sphere {
				all = append(all, r3.Add(l.Frame.At, r3.Add(r3.Scale(x, l.Frame.Right), r3.Scale(y, l.Frame.Axis))))
			}
		}
	}
	return all
}

// near says whether a point is closer to something solid than a distance, but for what it owns.
func near(s *solid.Set, p r3.Vec, distance float64, own []solid.ID) bool {
	for i := range s.Prisms {
		q := &s.Prisms[i]
		if !owned(own, q.ID) && p.Z > q.Z0-distance && p.Z < q.Z1+distance && over(q.Base, r2.Vec{X: p.X, Y: p.Y}) < distance {
			return true
		}
	}
	for i := range s.Sheets {
		q := &s.Sheets[i]
		if !owned(own, q.ID) && fromSheet(q, p) < distance {
			return true
		}
	}
	return false
}

func owned(own []solid.ID, id solid.ID) bool {
	for _, o := range own {
		if o == id {
			return true
		}
	}
	return false
}

// over is how far a place in plan lies outside a convex ring; less than 0 inside.
func over(ring []r2.Vec, p r2.Vec) float64 {
	worst := -1e9
	for i, a := range ring {
		along := r2.Unit(r2.Sub(ring[(i+1)%len(ring)], a))
		worst = max(worst, -r2.Cross(along, r2.Sub(p, a)))
	}
	return worst
}

// fromSheet is about how far a point is from a sheet: over its plane, or beyond its sides.
func fromSheet(s *solid.Sheet, p r3.Vec) float64 {
	c := s.Corners
	normal := r3.Unit(r3.Cross(r3.Sub(c[1], c[0]), r3.Sub(c[2], c[0])))
	height := r3.Dot(normal, r3.Sub(p, c[0]))
	worst := max(height, -height)
	for i, a := range c {
		out := r3.Unit(r3.Cross(r3.Sub(c[(i+1)%len(c)], a), normal))
		worst = max(worst, r3.Dot(out, r3.Sub(p, a)))
	}
	return worst
}

// crossing names a piece of furniture that reaches into another or into a wall.
func crossing(s *plan.Setup) string {
	pieces := map[string]bool{}
	for i := range s.Furniture {
		pieces[s.Furniture[i].Name] = true
	}
	for i := range s.Set.Prisms {
		for k := range s.Set.Prisms {
			a, b := &s.Set.Prisms[i], &s.Set.Prisms[k]
			if pieces[a.Name] && a.Name != b.Name && !isPerson(s, b.Name) && cross(a, b) {
				return a.Name
			}
		}
	}
	return ""
}

func isPerson(s *plan.Setup, name string) bool {
	for i := range s.People {
		if s.People[i].Name == name {
			return true
		}
	}
	return false
}

// cross says whether two prisms share space: neither has a side that all of the other lies beyond.
func cross(a, b *solid.Prism) bool {
	return a.Z0 < b.Z1-touching && b.Z0 < a.Z1-touching && !beyond(a.Base, b.Base) && !beyond(b.Base, a.Base)
}

func beyond(ring, other []r2.Vec) bool {
	for i, a := range ring {
		along := r2.Sub(ring[(i+1)%len(ring)], a)
		out := true
		for _, p := range other {
			out = out && r2.Cross(along, r2.Sub(p, a)) <= touching*r2.Norm(along)
		}
		if out {
			return true
		}
	}
	return false
}
