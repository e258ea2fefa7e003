package fit

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// A lamp, a sheet of grip or a body has a size: what of it lies in a wall or past one throws light,
// or shade, where none can be. Reach is tested along straight ways from the middle of a thing to the
// points of its outline: a way that runs through a solid, floor, ceiling or pane ends in it or on its
// far side.

// contactTolerance is how deep something lies in a solid before it counts, m: no tape and no wall is truer.
const contactTolerance = 1e-3

// outlineRay leads from the middle of a thing to a point of its outline.
type outlineRay struct{ from, to r3.Vec }

// raysFrom leads from one middle to all points.
func raysFrom(middle r3.Vec, points []r3.Vec) []outlineRay {
	ways := make([]outlineRay, len(points))
	for i, p := range points {
		ways[i] = outlineRay{middle, p}
	}
	return ways
}

// contact is a solid or a sheet that a thing reaches into or through.
type contact struct {
	name     string
	escape   r3.Vec // unit: the direction of the least move out of it
	depth    float64
	vertical bool // away is upright
}

// extent is a thing with the ways of its outline where it stands moved by some vector, and what
// of the set it may meet.
type extent struct {
	name  string
	of    string    // the thing, as the scene names it
	part  body.Part // of it
	rays  func(moved r3.Vec) []outlineRay
	meets func(name string, id solid.ID) bool
	feet  bool // it stands on the floor: it is not moved up or down
}

// contacts lists what a thing reaches into, the deepest of each name. Level asks for moves in plan
// wherever there is one.
func (r *contactFinder) contacts(t *extent, moved r3.Vec, level bool) []contact {
	var all []contact
	ways := t.rays(moved)
	about := boxOfRays(ways)
	add := func(c contact) { all = withContact(all, c, ofOneName) }
	for i := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[i]
		if boxesDisjoint(about, r.box(i)) || !t.meets(p.Name, p.ID) {
			continue
		}
		if slices.ContainsFunc(ways, func(w outlineRay) bool { return w.entersPrism(p) }) {
			add(outOfPrism(p, ways, level))
		}
	}
	for i := range r.out.Set.Sheets {
		s := &r.out.Set.Sheets[i]
		if boxesDisjoint(about, r.box(len(r.out.Set.Prisms)+i)) || !t.meets(s.Name, s.ID) {
			continue
		}
		if slices.ContainsFunc(ways, func(w outlineRay) bool { return w.passesSheet(s) }) {
			add(outOfSheet(s, ways))
		}
	}
	return all
}

// ofOneName says that two contacts are with one thing, of which the deeper counts.
func ofOneName(a, b contact) bool { return a.name == b.name }

// withContact adds a contact to those there are; of those that are alike it keeps the deepest.
func withContact(all []contact, c contact, alike func(other, c contact) bool) []contact {
	for i := range all {
		if alike(all[i], c) {
			if c.depth > all[i].depth {
				all[i] = c
			}
			return all
		}
	}
	return append(all, c)
}

// boxOfRays is the box of all points of some ways.
func boxOfRays(ways []outlineRay) r3.Box {
	var points []r3.Vec
	for _, w := range ways {
		points = append(points, w.from, w.to)
	}
	return boxOf(points)
}

func boxOf(points []r3.Vec) r3.Box {
	inf := math.Inf(1)
	b := r3.Box{Min: r3.Vec{X: inf, Y: inf, Z: inf}, Max: r3.Vec{X: -inf, Y: -inf, Z: -inf}}
	for _, p := range points {
		b.Min = r3.Vec{X: min(b.Min.X, p.X), Y: min(b.Min.Y, p.Y), Z: min(b.Min.Z, p.Z)}
		b.Max = r3.Vec{X: max(b.Max.X, p.X), Y: max(b.Max.Y, p.Y), Z: max(b.Max.Z, p.Z)}
	}
	return b
}

// boxesDisjoint reports whether two boxes share no point.
func boxesDisjoint(a, b r3.Box) bool {
	return a.Max.X < b.Min.X || b.Max.X < a.Min.X || a.Max.Y < b.Min.Y || b.Max.Y < a.Min.Y || a.Max.Z < b.Min.Z || b.Max.Z < a.Min.Z
}

// box is the box of a prism of the set, or after the last of them of a sheet.
func (r *contactFinder) box(i int) r3.Box {
	if r.boxes == nil {
		for k := range r.out.Set.Prisms {
			p := &r.out.Set.Prisms[k]
			outline := plane.Bounds(p.Base)
			r.boxes = append(r.boxes, r3.Box{Min: plan.AtHeight(outline.Min, p.Z0), Max: plan.AtHeight(outline.Max, p.Z1)})
		}
		for k := range r.out.Set.Sheets {
			r.boxes = append(r.boxes, boxOf(r.out.Set.Sheets[k].Corners))
		}
	}
	return r.boxes[i]
}

// entersPrism reports whether a way runs in a prism, deeper than a bite.
func (w outlineRay) entersPrism(p *solid.Prism) bool {
	_, enters := w.entry(p)
	return enters
}

// entry is where a way enters a prism, as a share of its length.
func (w outlineRay) entry(p *solid.Prism) (at float64, enters bool) {
	in := interval{0, 1}
	in.keep(w.from.Z-p.Z0-contactTolerance, w.to.Z-p.Z0-contactTolerance)
	in.keep(p.Z1-contactTolerance-w.from.Z, p.Z1-contactTolerance-w.to.Z)
	a, b := plan.InPlan(w.from), plan.InPlan(w.to)
	plane.Edges(p.Base, func(l plane.Line) bool {
		in.keep(l.Distance(a)-contactTolerance, l.Distance(b)-contactTolerance)
		return in.least < in.most
	})
	return in.least, in.least < in.most
}

// keep narrows the stretch of a way to where a height that goes evenly from a to b is above nought.
func (s *interval) keep(a, b float64) {
	switch {
	case a <= 0 && b <= 0:
		s.most = s.least
	case a < 0:
		s.least = max(s.least, a/(a-b))
	case b < 0:
		s.most = min(s.most, a/(a-b))
	}
}

// passesSheet reports whether a way ends more than a bite beyond a sheet.
func (w outlineRay) passesSheet(s *solid.Sheet) bool {
	n, at := normalOf(s), s.Corners[0]
	from, to := r3.Dot(n, r3.Sub(w.from, at)), r3.Dot(n, r3.Sub(w.to, at))
	if math.Abs(from) <= plane.Grain || math.Abs(to) <= contactTolerance || from*to > 0 {
		return false
	}
	hit := r3.Add(w.from, r3.Scale(from/(from-to), r3.Sub(w.to, w.from)))
	for i, a := range s.Corners {
		b := s.Corners[(i+1)%len(s.Corners)]
		if r3.Dot(n, r3.Cross(r3.Sub(b, a), r3.Sub(hit, a))) < 0 {
			return false
		}
	}
	return true
}

// normalOf is the unit normal of a sheet's front.
func normalOf(s *solid.Sheet) r3.Vec {
	return r3.Unit(r3.Cross(r3.Sub(s.Corners[1], s.Corners[0]), r3.Sub(s.Corners[2], s.Corners[0])))
}

// outOfPrism is the least move that takes all points of an outline to a side of a prism that its
// middle lies on.
func outOfPrism(p *solid.Prism, ways []outlineRay, level bool) contact {
	best := contact{name: p.Name, depth: math.Inf(1)}
	try := func(away r3.Vec, rise bool, height func(r3.Vec) float64) {
		deep := math.Inf(-1)
		for _, w := range ways {
			if height(w.from) > contactTolerance {
				return
			}
			deep = max(deep, height(w.to))
		}
		if deep < best.depth {
			best.escape, best.depth, best.vertical = away, deep, rise
		}
	}
	plane.Edges(p.Base, func(l plane.Line) bool {
		try(plan.AtHeight(r2.Scale(-1, l.Normal), 0), false, func(v r3.Vec) float64 { return l.Distance(plan.InPlan(v)) })
		return true
	})
	if !level || math.IsInf(best.depth, 1) {
		try(r3.Vec{Z: -1}, true, func(v r3.Vec) float64 { return v.Z - p.Z0 })
		try(r3.Vec{Z: 1}, true, func(v r3.Vec) float64 { return p.Z1 - v.Z })
	}
	return best
}

// outOfSheet is the move that takes all points of an outline to the side of a sheet that its middle
// lies on.
func outOfSheet(s *solid.Sheet, ways []outlineRay) contact {
	n := normalOf(s)
	if r3.Dot(n, r3.Sub(ways[0].from, s.Corners[0])) < 0 {
		n = r3.Scale(-1, n)
	}
	c := contact{name: s.Name, escape: n, vertical: math.Abs(n.Z) > 0.5}
	for _, w := range ways {
		c.depth = max(c.depth, -r3.Dot(n, r3.Sub(w.to, s.Corners[0])))
	}
	return c
}
