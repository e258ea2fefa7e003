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
	"scrimshaw/plan/unit"
)

// A lamp, a sheet of grip or a body has a size: what of it lies in a wall or past one throws light,
// or shade, where none can be. Reach is tested along straight ways from the middle of a thing to the
// points of its outline: a way that runs through a solid, floor, ceiling or pane ends in it or on its
// far side.

// bite is how deep something lies in a solid before it counts, m: no tape and no wall is truer.
const bite = 1e-3

// way leads from the middle of a thing to a point of its outline.
type way struct{ from, to r3.Vec }

// waysFrom leads from one middle to all points.
func waysFrom(middle r3.Vec, points []r3.Vec) []way {
	ways := make([]way, len(points))
	for i, p := range points {
		ways[i] = way{middle, p}
	}
	return ways
}

// contact is a solid or a sheet that a thing reaches into or through.
type contact struct {
	name string
	away r3.Vec // unit: the direction of the least move out of it
	deep float64
	rise bool // away is upright
}

// reaching is a thing with the ways of its outline where it stands moved by some vector, and what
// of the set it may meet.
type reaching struct {
	name  string
	ways  func(moved r3.Vec) []way
	meets func(name string, id solid.ID) bool
	feet  bool // it stands on the floor: it is not moved up or down
}

// contacts lists what a thing reaches into, the deepest of each name. Level asks for moves in plan
// wherever there is one.
func (r *reacher) contacts(t *reaching, moved r3.Vec, level bool) []contact {
	var all []contact
	ways := t.ways(moved)
	about := boxAbout(ways)
	add := func(c contact) {
		for i := range all {
			if all[i].name == c.name {
				if c.deep > all[i].deep {
					all[i] = c
				}
				return
			}
		}
		all = append(all, c)
	}
	for i := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[i]
		if apart(about, r.box(i)) || !t.meets(p.Name, p.ID) {
			continue
		}
		if slices.ContainsFunc(ways, func(w way) bool { return w.entersPrism(p) }) {
			add(outOfPrism(p, ways, level))
		}
	}
	for i := range r.out.Set.Sheets {
		s := &r.out.Set.Sheets[i]
		if apart(about, r.box(len(r.out.Set.Prisms)+i)) || !t.meets(s.Name, s.ID) {
			continue
		}
		if slices.ContainsFunc(ways, func(w way) bool { return w.passesSheet(s) }) {
			add(outOfSheet(s, ways))
		}
	}
	return all
}

// boxAbout is the box of all points of some ways.
func boxAbout(ways []way) r3.Box {
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

// apart reports whether two boxes share no point.
func apart(a, b r3.Box) bool {
	return a.Max.X < b.Min.X || b.Max.X < a.Min.X || a.Max.Y < b.Min.Y || b.Max.Y < a.Min.Y || a.Max.Z < b.Min.Z || b.Max.Z < a.Min.Z
}

// box is the box of a prism of the set, or after the last of them of a sheet.
func (r *reacher) box(i int) r3.Box {
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
func (w way) entersPrism(p *solid.Prism) bool {
	_, enters := w.entry(p)
	return enters
}

// entry is where a way enters a prism, as a share of its length.
func (w way) entry(p *solid.Prism) (at float64, enters bool) {
	in := span1{0, 1}
	in.keep(w.from.Z-p.Z0-bite, w.to.Z-p.Z0-bite)
	in.keep(p.Z1-bite-w.from.Z, p.Z1-bite-w.to.Z)
	a, b := plan.InPlan(w.from), plan.InPlan(w.to)
	plane.Edges(p.Base, func(l plane.Line) bool {
		in.keep(l.Distance(a)-bite, l.Distance(b)-bite)
		return in.least < in.most
	})
	return in.least, in.least < in.most
}

// keep narrows the stretch of a way to where a height that goes evenly from a to b is above nought.
func (s *span1) keep(a, b float64) {
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
func (w way) passesSheet(s *solid.Sheet) bool {
	n, at := normalOf(s), s.Corners[0]
	from, to := r3.Dot(n, r3.Sub(w.from, at)), r3.Dot(n, r3.Sub(w.to, at))
	if math.Abs(from) <= plane.Grain || math.Abs(to) <= bite || from*to > 0 {
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
func outOfPrism(p *solid.Prism, ways []way, level bool) contact {
	best := contact{name: p.Name, deep: math.Inf(1)}
	try := func(away r3.Vec, rise bool, height func(r3.Vec) float64) {
		deep := math.Inf(-1)
		for _, w := range ways {
			if height(w.from) > bite {
				return
			}
			deep = max(deep, height(w.to))
		}
		if deep < best.deep {
			best.away, best.deep, best.rise = away, deep, rise
		}
	}
	plane.Edges(p.Base, func(l plane.Line) bool {
		try(plan.AtHeight(r2.Scale(-1, l.Normal), 0), false, func(v r3.Vec) float64 { return l.Distance(plan.InPlan(v)) })
		return true
	})
	if !level || math.IsInf(best.deep, 1) {
		try(r3.Vec{Z: -1}, true, func(v r3.Vec) float64 { return v.Z - p.Z0 })
		try(r3.Vec{Z: 1}, true, func(v r3.Vec) float64 { return p.Z1 - v.Z })
	}
	return best
}

// outOfSheet is the move that takes all points of an outline to the side of a sheet that its middle
// lies on.
func outOfSheet(s *solid.Sheet, ways []way) contact {
	n := normalOf(s)
	if r3.Dot(n, r3.Sub(ways[0].from, s.Corners[0])) < 0 {
		n = r3.Scale(-1, n)
	}
	c := contact{name: s.Name, away: n, rise: math.Abs(n.Z) > 0.5}
	for _, w := range ways {
		c.deep = max(c.deep, -r3.Dot(n, r3.Sub(w.to, s.Corners[0])))
	}
	return c
}

// mostPushes is how often a thing is moved out of what it reaches into before nothing is offered.
const mostPushes = 6

// freed looks for a move that frees a thing of all it reaches into, one push after another; pushes
// are what it takes, each rounded up to what a tape shows.
func (r *reacher) freed(t *reaching, level bool) (pushes []contact, ok bool) {
	var moved r3.Vec
	for range mostPushes {
		met := r.contacts(t, moved, level)
		if len(met) == 0 {
			return pushes, true
		}
		push := slices.MaxFunc(met, func(a, b contact) int { return int(math.Copysign(1, a.deep-b.deep)) })
		if math.IsInf(push.deep, 0) {
			return nil, false
		}
		push.deep = r.RoundUp(push.deep + bite)
		moved = r3.Add(moved, r3.Scale(push.deep, push.away))
		pushes = withPush(pushes, push)
	}
	return nil, false
}

// withPush adds a push to the one along the same direction, if there is one.
func withPush(pushes []contact, push contact) []contact {
	for i := range pushes {
		if r3.Dot(pushes[i].away, push.away) > 1-1e-9 {
			pushes[i].deep += push.deep
			return pushes
		}
	}
	return append(pushes, push)
}

func distance(pushes []contact) (sum float64) {
	for _, p := range pushes {
		sum += p.deep
	}
	return sum
}

// reachInto says what a thing reaches into or through and how deep, and the least move out of it;
// "" where it is free.
func (r *reacher) reachInto(t *reaching) (found, mend string) {
	met := r.contacts(t, r3.Vec{}, false)
	if len(met) == 0 {
		return "", ""
	}
	var names []string
	deepest := 0.0
	for _, c := range met {
		names = append(names, c.name)
		if !math.IsInf(c.deep, 0) {
			deepest = max(deepest, c.deep)
		}
	}
	found = t.name + " reaches into or through " + strings.Join(names, " and ")
	if deepest > 0 {
		found += ", by " + r.Length(deepest)
	}
	pushes, ok := r.freed(t, true)
	if other, can := r.freed(t, false); can && !t.feet && (!ok || distance(other) < distance(pushes)) {
		pushes, ok = other, true
	}
	upright := slices.ContainsFunc(pushes, func(c contact) bool { return c.rise })
	switch {
	case t.feet && (!ok || upright):
		return found, "there is not room for " + t.name + " here"
	case !ok:
		return found, "there is not room for " + t.name + " here: move it, turn it, or take a smaller one"
	}
	var moves []string
	for _, p := range pushes {
		moves = append(moves, r.worded(p))
	}
	return found, "move " + t.name + " " + strings.Join(moves, " and ")
}

// worded is a push in words: "0.32 m away from den.top (down the sheet)".
func (r *reacher) worded(p contact) string {
	if p.rise {
		return r.Length(p.deep) + report.Either(p.away.Z > 0, " up", " down")
	}
	return r.Length(p.deep) + " away from " + p.name + " (" + onSheet(plan.InPlan(p.away)) + ")"
}

// onSheet is a direction of the plan in words.
func onSheet(d r2.Vec) string {
	const straight = 0.9998 // within a degree
	switch d = r2.Unit(d); {
	case d.X > straight:
		return "right on the sheet"
	case d.X < -straight:
		return "left on the sheet"
	case d.Y > straight:
		return "up the sheet"
	case d.Y < -straight:
		return "down the sheet"
	}
	return "bearing " + unit.FormatAngle(plane.Bearing(d))
}
