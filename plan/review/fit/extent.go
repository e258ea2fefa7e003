package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// reachOfLight is a light by the rim of its emitting face and by the back of its head. A lamp that
// is moved goes on aiming where it aims.
func (r *contactFinder) reachOfLight(l *plan.Light) *extent {
	written := r.light(l.Name)
	frozen := r.out.Spots[l.Name].Stays
	return &extent{
		name: l.Numbered(), of: l.Name, part: body.Head,
		rays: func(moved r3.Vec) []outlineRay {
			f := l.Frame
			f.At = r3.Add(f.At, moved)
			if axis := r3.Sub(l.AimPoint, f.At); l.Throw > 0 && !frozen && math.Hypot(axis.X, axis.Y) > plane.Grain {
				f = plan.FrameAlong(f.At, axis, 0, written.Roll.Value)
			}
			f = LaidOnWall(r.out, written, l, f)
			return raysFrom(f.At, append(rimOf(f, l.Head.Source.Opening), r.backOf(written, l, f)...))
		},
		meets: func(name string, id solid.ID) bool {
			return !r.isGrip(id) && !(l.Mount.Kind == term.Clamp && name == l.Mount.On)
		},
	}
}

// rimOf is points all round the rim of an emitting face.
func rimOf(f plan.Frame, o photometry.Opening) []r3.Vec {
	w, h := o.Width/2, o.Height/2
	at := func(x, y, z float64) r3.Vec {
		return r3.Add(f.At, r3.Add(r3.Add(r3.Scale(x, f.Right), r3.Scale(y, f.Up())), r3.Scale(z, f.Axis)))
	}
	switch o.Form {
	case photometry.Rectangle:
		return []r3.Vec{at(w, h, 0), at(-w, h, 0), at(-w, -h, 0), at(w, -h, 0)}
	case photometry.Tube:
		return []r3.Vec{at(w, 0, 0), at(-w, 0, 0)}
	case photometry.Disc:
		var rim []r3.Vec
		for i := range 8 {
			sin, cos := plane.Sincos(45 * float64(i))
			rim = append(rim, at(w*cos, w*sin, 0))
		}
		return rim
	case photometry.Sphere:
		return []r3.Vec{
			r3.Add(f.At, r3.Vec{X: w}), r3.Add(f.At, r3.Vec{X: -w}), r3.Add(f.At, r3.Vec{Y: w}), r3.Add(f.At, r3.Vec{Y: -w}),
			r3.Add(f.At, r3.Vec{Z: w}), r3.Add(f.At, r3.Vec{Z: -w}),
		}
	}
	return nil
}

// backOf is the back of a head behind its face. A tube and a lantern have none; how the body of a
// practical lies about its light, nothing says.
func (r *contactFinder) backOf(written *scene.Light, l *plan.Light, f plan.Frame) []r3.Vec {
	u := r.out.Kit.Unit(written.Unit.Value)
	form := l.Head.Source.Opening.Form
	if u == nil || written.Output != nil || u.Class == term.Practical || form == photometry.Tube || form == photometry.Sphere {
		return nil
	}
	return []r3.Vec{r3.Sub(f.At, r3.Scale(u.Body[1], f.Axis))}
}

// isGrip reports whether a solid is a piece of grip: it may touch what it shades.
func (r *contactFinder) isGrip(id solid.ID) bool {
	for i := range r.out.Grip {
		if slices.Contains(r.out.Grip[i].IDs, id) {
			return true
		}
	}
	return false
}

// reachOfGrip is a piece of grip by the corners of its sheet.
func (r *contactFinder) reachOfGrip(g *plan.Grip) *extent {
	return &extent{
		name: g.Numbered(), of: g.Name, part: body.Sheet,
		rays: func(moved r3.Vec) []outlineRay { return movedBy(moved, raysFrom(g.Frame.At, g.Corners())) },
		meets: func(name string, id solid.ID) bool {
			return !r.isGrip(id) && !(g.Mount.Kind == term.Clamp && name == g.Mount.On)
		},
	}
}

// reachOfPerson is a person by the outlines of all parts of the body, which walls stop. Furniture
// is sat on and leaned on: only someone who stands is kept clear of it, from the hip up.
func (r *contactFinder) reachOfPerson(p *plan.Person) *extent {
	var ways, upper []outlineRay
	for _, part := range p.Parts {
		middle := plan.AtHeight(p.At, (part.Z0+part.Z1)/2)
		var rim []r3.Vec
		for _, c := range part.Outline {
			rim = append(rim, plan.AtHeight(c, part.Z0), plan.AtHeight(c, part.Z1))
		}
		ways = append(ways, raysFrom(middle, rim)...)
		if part.Kind != plan.LegsPart {
			upper = append(upper, raysFrom(middle, rim)...)
		}
	}
	stands := p.Pose == term.Standing
	return &extent{
		name: p.Name, of: p.Name, part: body.Whole,
		feet: true,
		rays: func(moved r3.Vec) []outlineRay { return movedBy(moved, ways) },
		meets: func(name string, id solid.ID) bool {
			if slices.Contains(p.Own, id) || r.isGrip(id) {
				return false
			}
			switch t := r.things[name]; {
			case t.person:
				return false
			case t.furniture:
				return stands && r.anyEnters(upper, id)
			}
			return true
		},
	}
}

func (r *contactFinder) anyEnters(ways []outlineRay, id solid.ID) bool {
	for i := range r.out.Set.Prisms {
		if p := &r.out.Set.Prisms[i]; p.ID == id {
			for _, w := range ways {
				if w.entersPrism(p) {
					return true
				}
			}
		}
	}
	return false
}

func movedBy(by r3.Vec, ways []outlineRay) []outlineRay {
	moved := make([]outlineRay, len(ways))
	for i, w := range ways {
		moved[i] = outlineRay{r3.Add(w.from, by), r3.Add(w.to, by)}
	}
	return moved
}

// LaidOnWall lays a tube on a wall along it, unless its roll is written: across its aim, one end would
// stand out of the wall and the other end in it. Its axis is then the aim, turned square to the tube.
func LaidOnWall(s *plan.Setup, written *scene.Light, l *plan.Light, f plan.Frame) plan.Frame {
	if l.Mount.Kind != term.Wall || l.Head.Class != term.Linear || written.Roll.Set {
		return f
	}
	wall := s.WallNamed(written.Mount.Value.Walls[0].Name)
	if wall == nil {
		return f
	}
	along := plan.AtHeight(r2.Unit(r2.Sub(wall.Right, wall.Left)), 0)
	axis := r3.Sub(f.Axis, r3.Scale(r3.Dot(f.Axis, along), along))
	if r3.Norm(axis) < 1e-6 {
		axis = plan.AtHeight(r2.Scale(-1, wall.Outward), 0)
	}
	axis = r3.Unit(axis)
	if r3.Dot(f.Right, along) < 0 {
		along = r3.Scale(-1, along)
	}
	return plan.Frame{At: f.At, Axis: axis, Right: along}
}
