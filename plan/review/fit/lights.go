package fit

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/term"
)

// checkLampFree refuses a lamp in a solid, over the ceiling of its room, or under its floor.
func (r *checker) checkLampFree(l *plan.Light) bool {
	r.tell(l.Name, body.Head, "")
	if name := r.solidAt(l.Frame.At); name != "" {
		r.Errorf(r.things[l.Name].at, CodeLightInSolid, "move it, or change its height",
			"%s is inside %s", l.Name, name)
		return false
	}
	return r.inStorey(l.Name, l.Name, l.Frame.At, l.Height, l.Span)
}

// lightFree warns of a lamp whose face or body reaches into something, or through it.
func (r *checker) lightFree(l *plan.Light) bool {
	delete(r.told, toldClash{l.Name, body.Head, ""}) // its place is sound
	if found, mend := r.reachInto(r.reachOfLight(l)); found != "" {
		r.Warnf(r.things[l.Name].at, CodeLightInSolid, mend, "%s", found)
	}
	return true
}

// gripFree warns of a piece of grip in a solid, or that reaches into something or through it, and refuses one over the ceiling
// or under the floor; it is false where its very middle is in a solid or in no storey.
func (r *checker) gripFree(g *plan.Grip) bool {
	span := r.things[g.Name].at
	if name := r.solidAt(g.Frame.At, g.IDs...); name != "" {
		r.tell(g.Name, body.Sheet, "")
		r.Warnf(span, CodeInSolid, "move it, or change its height", "the middle of %s is inside %s", g.Name, name)
		return false
	}
	if !r.inStorey(g.Name, g.Name, g.Frame.At, g.Height, g.Span) {
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
	r.tell(name, body.Stand, in)
	hint := "move it, or say what it stands on: {top: NAME}, or mount: {stand: NAME}"
	if m.Kind == term.Boom {
		hint = "put the base of its boom elsewhere, or leave base: out, and it finds a place"
	}
	r.Warnf(r.things[name].at, CodeInSolid, hint,
		"the stand of %s goes through %s", r.out.Numbered(name), in)
	return false
}

// reaches warns of a lamp outside all rooms that lights no opening: none lies before it on the
// outside, or all that do lie where it sends less than a hundredth of its peak.
func (r *checker) reaches(l *plan.Light) bool {
	if len(r.out.Rooms) == 0 || r.out.RoomUnder(plan.InPlan(l.Frame.At), "") != nil {
		return true
	}
	for i := range r.out.Openings {
		if r.lights(l, &r.out.Openings[i]) {
			return true
		}
	}
	l.Misplaced = true
	r.Warnf(l.Span, CodeNoOpeningReached, "aim it through an opening", "%s stands outside and sends no light through an opening", l.Name)
	return true
}

// lights reports whether a lamp outside sends light toward an opening: to one of nine points of it.
func (r *checker) lights(l *plan.Light, o *plan.Opening) bool {
	before := r2.Dot(r2.Sub(plan.InPlan(l.Frame.At), o.Middle()), o.Outward) > o.Depth
	if o.FarRoom != "" || !before || l.Head.Source.Distribution == nil {
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
