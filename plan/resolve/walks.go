package resolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// walkOf is the walk of somebody; nil where there is none, or where a fault has been reported.
func (r *peoplePass) walkOf(written *scene.Person) *plan.Walk {
	if len(written.WalkPlaces) == 0 {
		return nil
	}
	spots, ok := r.walkSpots(written)
	if !ok {
		return nil
	}
	w := r.uprightWalk(written)
	for i := range spots {
		w.Corners = append(w.Corners, spots[i].At)
	}
	switch length := w.Length(); {
	case len(spots) < 2:
		r.Errorf(w.Span, CodeNoWalk, "write two places that differ, or leave the walk out", "the walk of %s goes nowhere", written.Name)
		return nil
	case length > plan.LongestWalk:
		r.Errorf(w.Span, CodeWalkLong, "leave out what is not in the shot, or make set-ups of its parts", "the walk of %s is %s long, and a walk may be %s: it is read at no more than %d places",
			written.Name, r.Length(length), r.Length(plan.LongestWalk), plan.MostWalkPoints)
		return nil
	}
	r.tread(w, spots)
	w.FindPoints()
	return w
}

// uprightWalk is a walk with the heights of somebody who stands: the eyes as written of one who stands at home, else by
// the height of the body.
func (r *peoplePass) uprightWalk(written *scene.Person) *plan.Walk {
	upright := *written
	if written.Pose.Or(term.Standing) != term.Standing {
		upright.Pose, upright.Eyes = scene.Given[term.Pose]{}, scene.Given[float64]{}
	}
	up := r.standingAt(&upright, plan.Spot{}, 0)
	if eyesAssumed(&upright) && written.Pose.Or(term.Standing) != term.Standing {
		r.assume(written.Path, "eyes along the walk", r.Length(up.Eyes))
	}
	return &plan.Walk{Eyes: up.Eyes, Crown: up.Crown, Span: walkSpan(written)}
}

// walkSpan is where a walk is written.
func walkSpan(p *scene.Person) source.Span {
	if p.Walk == nil {
		return p.Span
	}
	return p.Walk.Span
}

// walkSpots are the places of a walk, without those that are where the one before is.
func (r *peoplePass) walkSpots(written *scene.Person) (spots []plan.Spot, ok bool) {
	ok = true
	for i := range written.WalkPlaces {
		s, found := r.place(&written.WalkPlaces[i], halfBody)
		ok = ok && found
		if n := len(spots); found && (n == 0 || !plane.SamePoint(spots[n-1].At, s.At)) {
			spots = append(spots, s)
		}
	}
	return spots, ok
}

// tread finds what the feet are on all along a walk: between the edges of floors, of stairs and of what its places stand on
// that is one thing.
func (r *peoplePass) tread(w *plan.Walk, spots []plan.Spot) {
	from := 0.0
	for i := 1; i < len(spots); i++ {
		a, b := spots[i-1], spots[i]
		leg := r2.Sub(b.At, a.At)
		long := r2.Norm(leg)
		way := r2.Unit(leg)
		edges := r.edgesAlong(a, b)
		for k, near := range edges {
			far := long
			if k+1 < len(edges) {
				far = edges[k+1]
			}
			base := r.footing(r2.Add(a.At, r2.Scale((near+far)/2, way)), a, b)
			if n := len(w.Treads); n == 0 || w.Treads[n-1].Base != base {
				w.Treads = append(w.Treads, plan.Tread{From: from + near, Base: base})
			}
		}
		from += long
	}
}

// edgesAlong are the distances from a where what the feet are on may change on the straight way to b, from 0 on.
func (r *peoplePass) edgesAlong(a, b plan.Spot) []float64 {
	leg := r2.Sub(b.At, a.At)
	long, way := r2.Norm(leg), r2.Unit(leg)
	edges := []float64{0}
	add := func(ring []r2.Vec) {
		near, far, ok := plane.Chord(a.At, way, ring)
		for _, d := range [...]float64{near, far} {
			if ok && d > plane.Grain && d < long-plane.Grain {
				edges = append(edges, d)
			}
		}
	}
	for i := range r.out.Rooms {
		for _, part := range r.out.Rooms[i].Parts {
			add(part)
		}
	}
	for i := range r.out.Openings {
		add(r.out.Openings[i].Plan())
	}
	for _, f := range r.underfoot(a, b) {
		for _, part := range f.Parts {
			add(part.Outline)
		}
	}
	slices.Sort(edges)
	return slices.CompactFunc(edges, func(x, y float64) bool { return math.Abs(x-y) <= plane.Grain })
}

// underfoot is the furniture that somebody on the way from one spot to another walks on where it is under the feet: stairs,
// and what either of the spots is on.
func (r *peoplePass) underfoot(a, b plan.Spot) (all []*plan.Furniture) {
	for i := range r.out.Furniture {
		if f := &r.out.Furniture[i]; f.Kind == term.Stairs || f.Name == a.On || f.Name == b.On {
			all = append(all, f)
		}
	}
	return all
}

// footing is the z of what the feet are on at a place between two spots. Within a wall it is the floor before it.
func (r *peoplePass) footing(p r2.Vec, a, b plan.Spot) float64 {
	near := report.Either(r.out.RoomHolding(p, a.Room) != nil, a.Room, b.Room)
	s := r.standing(p, near)
	z := s.Base
	if s.Room == "" && a.Room != "" && b.Room != "" {
		z = a.Floor
	}
	if o := r.openingOver(p); o != nil {
		z = max(z, r.thresholdOf(o))
	}
	for _, f := range r.underfoot(a, b) {
		if top, over := topAt(f, p); over && top > z {
			z = top
		}
	}
	return z
}

// openingOver is the opening that a place lies in; nil where it lies in a room or in none.
func (r *peoplePass) openingOver(p r2.Vec) *plan.Opening {
	for i := range r.out.Openings {
		if o := &r.out.Openings[i]; plane.Contains(p, o.Plan(), -plane.Grain) {
			return o
		}
	}
	return nil
}

// thresholdOf is the z that somebody walks through an opening at: its sill where the floor on either side is as high, else
// the floor of its room.
func (r *peoplePass) thresholdOf(o *plan.Opening) float64 {
	floor := r.out.RoomNamed(o.Room).Base
	high := floor
	if far := r.out.RoomNamed(o.FarRoom); far != nil {
		high = max(high, far.Base)
	}
	return report.Either(o.Sill <= high+plane.Grain, max(floor, o.Sill), floor)
}
