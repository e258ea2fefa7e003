package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
)

// The farthest that things are moved, and how near to the lens, m: what would go farther is another set-up.
const (
	mostAside = 5.0
	mostBack  = 2.5
	mostUp    = 1.5
	nearLens  = 0.3
)

// leastMove is the least move of a thing that takes what should not be seen of it out of all pictures of a camera, of those that bring it into no other
// camera's; where there is none, of the others. It is nil where none leaves it in the room that it is in.
func (e *eye) leastMove(t *thing, worst *post) (best *Move) {
	round := (&report.Reporter{Feet: e.setup.Feet}).RoundUp
	wide := worst.grown(e.camera.Room)
	for _, to := range e.ways(t, wide) {
		most := to.most
		if best != nil && best.Clean() {
			most = min(most, best.Least)
		}
		least, rounded, ok := e.clears(most, round,
			func(p *post, change float64) bool { return e.showsMoved(t, r3.Scale(change, to.direction), p) },
			func(p *post, change float64) float64 { return e.rankMoved(t, r3.Scale(change, to.direction), p) })
		by := r3.Scale(rounded, to.direction)
		if ok && (to.way != Back || e.beside(t, by)) && e.free(t, by) {
			best = better(best, &Move{Way: to.way, By: by, Least: least, Metres: rounded, Brings: broughtInto(e.others, e, t, by)})
		}
	}
	return best
}

// broughtInto are the cameras, but for one, that would see a thing once it is moved and do not where it is.
func broughtInto(eyes []*eye, but *eye, t *thing, by r3.Vec) (names []string) {
	for _, o := range eyes {
		if o == but || t.kind == Camera && t.name == o.camera.Name {
			continue
		}
		for i := range o.things {
			own := &o.things[i]
			sees := func(by r3.Vec) bool {
				return o.anywhere(func(p *post) bool { return o.showsMoved(own, by, p) })
			}
			if own.kind == t.kind && own.name == t.name && sees(by) && !sees(r3.Vec{}) {
				names = append(names, o.camera.Name)
			}
		}
	}
	return names
}

// showsMoved says whether something of a thing shows, once it is moved, in the picture from a place and its margin.
func (e *eye) showsMoved(t *thing, by r3.Vec, p *post) bool {
	wide := p.grown(e.camera.Room)
	for _, pieces := range e.at(t, by) {
		if e.shows(t.unmeant(e.camera.Name, pieces), wide) {
			return true
		}
	}
	return false
}

// rankMoved is how much of a thing that is moved shows there, or how near it comes.
func (e *eye) rankMoved(t *thing, by r3.Vec, p *post) float64 {
	rank := math.Inf(-1)
	for _, pieces := range e.at(t, by) {
		rank = max(rank, rankOf(e.seenOf(t.unmeant(e.camera.Name, pieces), p.At), p.grown(e.camera.Room)))
	}
	return rank
}

// direction is one way to move a thing, and how far at most.
type direction struct {
	way       Way
	direction r3.Vec
	most      float64 // m
}

// ways are the ways to move a thing out of a picture: aside, as far as it lies from that side of the picture, back beside the
// camera, and up.
func (e *eye) ways(t *thing, p picture) (all []direction) {
	d := r3.Sub(t.middle, p.At)
	deep, across := r3.Dot(d, p.Axis)+t.radius, r3.Dot(d, p.Right)
	out := max(0, deep)*p.wide + t.radius
	if e.track > 1 {
		out = mostAside + t.radius + math.Abs(across) // from elsewhere on the track it lies elsewhere
	}
	all = append(all, direction{Left, r3.Scale(-1, p.Right), min(mostAside, out+across+slack)},
		direction{Right, p.Right, min(mostAside, out-across+slack)})
	if flat := plan.InPlan(p.Axis); r2.Norm(flat) > upright {
		all = append(all, direction{Back, plan.AtHeight(r2.Scale(-1, r2.Unit(flat)), 0), mostBack})
	}
	if t.kind != Camera && t.kind != Person {
		all = append(all, direction{Up, r3.Vec{Z: 1}, mostUp})
	}
	return all
}

// slack is how much farther than a rigid thing one may have to go that turns as it is moved, m.
const slack = 0.3

// beside says whether a thing that is brought back ends beside the camera, and not on its lens.
func (e *eye) beside(t *thing, by r3.Vec) bool {
	return !e.anywhere(func(p *post) bool { return r3.Norm(r3.Sub(r3.Add(t.middle, by), p.At)) <= t.radius+nearLens })
}
