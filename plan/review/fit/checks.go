package fit

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// check looks for what cannot stand where it is said to.
func (r *checker) check() {
	for i := range r.out.Lights {
		l := &r.out.Lights[i]
		leave := r.About(l.Path)
		if r.inAir(l) {
			r.lightFree(l)
			r.throughOpening(l)
			r.reaches(l)
			if r.standsFree(l.Name, l.Mount, l.Base, l.Frame.At.Z) {
				r.legsFree(l.Name, &l.Mount, l.Base, l.Head.Class)
			}
		}
		leave()
	}
	for i := range r.out.Grip {
		g := &r.out.Grip[i]
		leave := r.About(r.things[g.Name].path)
		if r.gripFree(g) && r.standsFree(g.Name, g.Mount, g.Base, g.Frame.At.Z) {
			r.legsFree(g.Name, &g.Mount, g.Base, "")
		}
		leave()
	}
	r.checkFurniture()
	r.checkPeople()
	r.checkCameras()
	r.checkMeters()
	r.checkSheet()
	r.anyLit()
}

// solidAt is the name of the solid that holds a point with some of it all around; "" in the air.
// Solids of the thing itself are left out.
func (r *reacher) solidAt(p r3.Vec, own ...solid.ID) string {
	return r.solidAlong(plan.InPlan(p), p.Z, p.Z, own)
}

// solidAlong is the name of the first solid that an upright line meets, but for those in own.
func (r *reacher) solidAlong(p r2.Vec, z0, z1 float64, own []solid.ID) string {
	const skin = 1e-4 // m: on a face is not inside
	for i := range r.out.Set.Prisms {
		s := &r.out.Set.Prisms[i]
		if z1 > s.Z0+skin && z0 < s.Z1-skin && plane.Contains(p, s.Base, skin) && !slices.Contains(own, s.ID) {
			return s.Name
		}
	}
	return ""
}

// heightSpan is where a light's height was written, else its place, else its name.
func (r *checker) heightSpan(l *plan.Light) source.Span {
	written := r.light(l.Name)
	switch {
	case written.Height.Set:
		return written.Height.Span
	case written.At.Set:
		return written.At.Span
	}
	return l.Span
}

// inAir refuses a lamp in a solid, over the ceiling of its room, or under its floor.
func (r *checker) inAir(l *plan.Light) bool {
	at, z := plan.InPlan(l.Frame.At), l.Frame.At.Z
	if name := r.solidAt(l.Frame.At); name != "" {
		r.Errorf(r.things[l.Name].at, CodeLightInSolid, "move it, or change its height",
			"%s is inside a solid: %s", l.Name, name)
		return false
	}
	if r.out.RoomAt(l.Frame.At) != nil {
		return true
	}
	s := r.out.Spots[l.Name]
	if room := r.out.RoomHolding(at, s.Room); room != nil {
		if over := z - room.CeilingAt(at); over > plane.Grain {
			r.Errorf(r.heightSpan(l), CodeOverCeiling, "height may be at most "+r.Length(l.Height-over),
				"%s is %s over the ceiling of %s", l.Name, r.Length(over), room.Name)
			return false
		}
	}
	if below := min(s.Base, s.Floor) - z; below > plane.Grain {
		r.Errorf(r.heightSpan(l), CodeLightBelowFloor, "a height counts from the floor", "%s is %s under %s", l.Name, r.Length(below), report.Either(s.Room != "", "the floor of "+s.Room, "the ground"))
		return false
	}
	return true
}

// lightFree warns of a lamp whose face or body reaches into something, or through it.
func (r *checker) lightFree(l *plan.Light) {
	if found, mend := r.reachInto(r.reachOfLight(l)); found != "" {
		r.Warnf(r.things[l.Name].at, CodeLightInSolid, mend, "%s", found)
	}
}

// gripFree warns of a piece of grip in a solid, or that reaches into something or through it; it is
// false where its very middle is in one.
func (r *checker) gripFree(g *plan.Grip) bool {
	span := r.things[g.Name].at
	if name := r.solidAt(g.Frame.At, g.IDs...); name != "" {
		r.Warnf(span, CodeInSolid, "move it, or change its height", "the middle of %s is inside a solid: %s", g.Name, name)
		return false
	}
	if found, mend := r.reachInto(r.reachOfGrip(g)); found != "" {
		r.Warnf(span, CodeInSolid, mend, "%s", found)
	}
	return true
}

// standsFree warns of a stand that goes through something; it is false where one does.
func (r *checker) standsFree(name string, m plan.Mount, base, top float64) bool {
	if m.Kind != term.Stand && m.Kind != term.Lift && m.Kind != term.Boom {
		return true
	}
	const free = 1e-3 // m: above what it stands on, and below what it holds
	if base+free >= top-free {
		return true
	}
	in := r.solidAlong(m.Base, base+free, top-free, nil)
	if in == "" {
		return true
	}
	r.Warnf(r.things[name].at, CodeInSolid, "move it, or say what it stands on: {top: NAME}, or mount: {stand: NAME}",
		"the stand of %s goes through %s", r.out.Numbered(name), in)
	return false
}

// checkFurniture warns of furniture that does not fit its room.
func (r *checker) checkFurniture() {
	for i := range r.out.Furniture {
		f := &r.out.Furniture[i]
		leave := r.About(r.things[f.Name].path)
		r.fitsBetweenWalls(f)
		if room := r.out.RoomHolding(f.At, r.out.Spots[f.Name].Room); room != nil {
			ceiling := room.CeilingAt(f.At)
			if over := f.Z1 - ceiling; over > plane.Grain {
				r.Warnf(f.Span, CodeOverCeiling, "its top may be at most "+r.Length(ceiling-room.Base)+" over the floor", "%s is %s too tall for %s", f.Name, r.Length(over), room.Name)
			}
		}
		leave()
	}
}

// fitsBetweenWalls warns of furniture that stands in a wall by more than a centimetre.
func (r *checker) fitsBetweenWalls(f *plan.Furniture) {
	const slack = 0.01
	var all []r2.Vec
	for _, p := range f.Parts {
		all = append(all, p.Outline...)
	}
	for i := range r.out.Walls {
		w := &r.out.Walls[i]
		if !plane.BoxesOverlap(all, w.Outline) {
			continue
		}
		for _, p := range f.Parts {
			if shared := plane.Intersection(p.Outline, w.Outline); shared != nil && plane.Overlap(p.Z0, p.Z1, w.Z0, w.Z1) && plane.Width(shared) > slack {
				r.Warnf(f.Span, CodeInSolid, "move it "+r.Length(plane.Width(shared))+" away from the wall", "%s stands %s deep in %s.%s", f.Name, r.Length(plane.Width(shared)), w.Room, w.Wall)
				return
			}
		}
	}
}

// checkPeople refuses a face inside a solid, and warns of a body in one.
func (r *checker) checkPeople() {
	for i := range r.out.People {
		p := &r.out.People[i]
		leave := r.About(r.things[p.Name].path)
		span := r.things[p.Name].at
		r.standsInside(p.Name, p.At, span)
		if name := r.solidAt(p.Face.At, p.Own...); name != "" {
			r.Errorf(span, CodeInSolid, "move "+p.Name+", or what is there", "the face of %s is inside a solid: %s", p.Name, name)
		} else if name := r.bodyIn(p); name != "" {
			r.Warnf(span, CodeInSolid, "move "+p.Name+", or what is there", "%s stands in %s", p.Name, name)
		} else if found, mend := r.reachInto(r.reachOfPerson(p)); found != "" {
			r.Warnf(span, CodeInSolid, mend, "%s", found)
		}
		leave()
	}
}

// bodyIn is what the middle of a person's body stands in, "" nothing: from the seat up for someone
// who sits, from knee height for someone who stands.
func (r *checker) bodyIn(p *plan.Person) string {
	low := 0.3
	if p.Pose != term.Standing && p.Pose != term.Crouching {
		low = plan.SeatHeight + 0.15
	}
	return r.solidAlong(p.At, min(p.Base+low, p.Crown), p.Crown, p.Own)
}

// checkCameras refuses a lens inside a solid.
func (r *checker) checkCameras() {
	for i := range r.out.Cameras {
		c := &r.out.Cameras[i]
		leave := r.About(r.things[c.Name].path)
		if name := r.solidAt(c.Frame.At); name != "" {
			r.Errorf(r.things[c.Name].at, CodeInSolid, "move the camera, or change its height", "the lens of %s is inside a solid: %s", c.Name, name)
		} else {
			r.standsInside(c.Name, plan.InPlan(c.Frame.At), r.things[c.Name].at)
			r.seesSomeone(c)
		}
		leave()
	}
}

// seesSomeone warns of a camera that has a wall before everybody it could look at.
func (r *checker) seesSomeone(c *plan.Camera) {
	var walls []string
	for i := range r.out.People {
		wall := r.wallBetween(c.Frame.At, r.out.People[i].Face.At)
		if wall == "" {
			return
		}
		if !slices.Contains(walls, wall) {
			walls = append(walls, wall)
		}
	}
	if len(walls) == 0 {
		return
	}
	whom := report.Either(len(r.out.People) == 1, r.out.People[0].Name, "anybody")
	r.Warnf(r.things[c.Name].at, CodeCameraBlocked, "move it to where it has them in sight, or open a door or a gap on the way",
		"%s cannot see %s: %s between", c.Name, whom, strings.Join(walls, " and ")+report.Either(len(walls) == 1, " stands", " stand"))
}

// wallBetween is the first wall, or shut leaf, on the straight way from one point to another; "" where
// it is free. Furniture and people do not count: they are moved.
func (r *reacher) wallBetween(from, to r3.Vec) string {
	name, first := "", math.Inf(1)
	for i := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[i]
		if r.things[p.Name].moves() {
			continue
		}
		if at, enters := (way{from, to}).entry(p); enters && at < first {
			name, first = p.Name, at
		}
	}
	return name
}

// checkMeters warns of a meter inside a solid, where it is dark.
func (r *checker) checkMeters() {
	for i := range r.out.Meters {
		m := &r.out.Meters[i]
		leave := r.About(r.things[m.Name].path)
		if name := r.solidAt(m.At); name != "" && m.Kind != plan.SpotMeter {
			r.Warnf(m.Span, CodeInSolid, "move it out of "+name, "%s reads inside a solid: %s", m.Name, name)
		} else {
			r.readsSomewhere(m)
		}
		leave()
	}
}

// reaches warns of a lamp outside all rooms that lights no opening: none lies before it on the
// outside, or all that do lie where it sends less than a hundredth of its peak.
func (r *checker) reaches(l *plan.Light) {
	if len(r.out.Rooms) == 0 || r.out.RoomUnder(plan.InPlan(l.Frame.At), "") != nil {
		return
	}
	for i := range r.out.Openings {
		if r.lights(l, &r.out.Openings[i]) {
			return
		}
	}
	l.Astray = true
	r.Warnf(l.Span, CodeNoOpeningReached, "aim it through an opening", "%s stands outside, and lights no opening", l.Name)
}

// lights reports whether a lamp outside sends light toward an opening: to one of nine points of it.
func (r *checker) lights(l *plan.Light, o *plan.Opening) bool {
	before := r2.Dot(r2.Sub(plan.InPlan(l.Frame.At), o.Middle()), o.Outward) > o.Depth
	if o.Other != "" || !before || l.Head.Source.Distribution == nil {
		return false
	}
	peak := l.Head.Source.Peak()
	for _, u := range []float64{0.02, 0.5, 0.98} {
		for _, v := range []float64{0.02, 0.5, 0.98} {
			p := r2.Add(r2.Add(o.Left, r2.Scale(u, r2.Sub(o.Right, o.Left))), r2.Scale(o.Depth, o.Outward))
			d := r3.Unit(r3.Sub(plan.AtHeight(p, o.Sill+v*(o.Head-o.Sill)), l.Frame.At))
			if l.Head.Source.Intensity(l.Frame.Local(d)) > peak/100 {
				return true
			}
		}
	}
	return false
}
