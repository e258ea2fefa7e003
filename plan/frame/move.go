package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/solid"
)

// Way is which way something is moved, as the camera sees it.
type Way string

// The ways.
const (
	Left  Way = "left"
	Right Way = "right"
	Back  Way = "back" // out of the picture, toward the camera
	Up    Way = "up"
)

// Move is the least move of a thing after which the camera sees nothing of it.
type Move struct {
	Way   Way
	By    r3.Vec  // in space, m, as far as Metres says
	Least float64 // m
	// Metres is that, rounded up to what a tape shows in the units of the file: nothing shows after it either.
	Metres float64
}

// The farthest that things are moved, and how near to the lens, m: what would go farther is another set-up.
const (
	mostAside = 5.0
	mostBack  = 2.5
	mostUp    = 1.5
	nearLens  = 0.3
)

// leastMove is the least move of a thing that takes what should not be seen of it out of a picture; nil where none does that
// leaves it in the room that it is in.
func (v *viewing) leastMove(t *thing, camera string, p picture) (best *Move) {
	round := (&report.Reporter{Feet: v.setup.Feet}).RoundUp
	for _, to := range v.ways(t, p) {
		most := to.most
		if best != nil {
			most = min(most, best.Least)
		}
		least, rounded, ok := clearing(most, round, func(change float64) bool {
			return v.shows(t.unmeant(camera, t.at(r3.Scale(change, to.direction))), p)
		})
		by := r3.Scale(rounded, to.direction)
		if ok && (to.way != Back || beside(t, by, p)) && v.free(t, by) && (best == nil || least < best.Least) {
			best = &Move{Way: to.way, By: by, Least: least, Metres: rounded}
		}
	}
	return best
}

// direction is one way to move a thing, and how far at most.
type direction struct {
	way       Way
	direction r3.Vec
	most      float64 // m
}

// ways are the ways to move a thing out of a picture: aside, as far as it lies from that side of the picture, back beside the
// camera, and up.
func (v *viewing) ways(t *thing, p picture) (all []direction) {
	d := r3.Sub(t.middle, p.At)
	deep, across := r3.Dot(d, p.Axis)+t.radius, r3.Dot(d, p.Right)
	out := max(0, deep)*p.wide + t.radius
	all = append(all, direction{Left, r3.Scale(-1, p.Right), min(mostAside, out+across+slack)},
		direction{Right, p.Right, min(mostAside, out-across+slack)})
	if flat := plan.InPlan(p.Axis); r2.Norm(flat) > upright {
		all = append(all, direction{Back, plan.AtHeight(r2.Scale(-1, r2.Unit(flat)), 0), mostBack})
	}
	if t.kind != Camera {
		all = append(all, direction{Up, r3.Vec{Z: 1}, mostUp})
	}
	return all
}

// slack is how much farther than a rigid thing one may have to go that turns as it is moved, m.
const slack = 0.3

// beside says whether a thing that is brought back ends beside the camera, and not on its lens.
func beside(t *thing, by r3.Vec, p picture) bool {
	return r3.Norm(r3.Sub(r3.Add(t.middle, by), p.At)) > t.radius+nearLens
}

// free says whether a thing can be moved: through no wall and no furniture, not out of its room, and not higher than its stand
// goes.
func (v *viewing) free(t *thing, by r3.Vec) bool {
	if by.Z > 0 && t.most > 0 && t.ownHeight+by.Z > t.most {
		return false
	}
	if v.roomOf(t.foot) != v.roomOf(r2.Add(t.foot, plan.InPlan(by))) {
		return false
	}
	for _, place := range t.bearing() {
		if v.blocked(place, by) {
			return false
		}
	}
	return true
}

// roomOf is the room that holds a place; "" outside.
func (v *viewing) roomOf(p r2.Vec) string {
	if room := v.setup.RoomUnder(p, ""); room != nil {
		return room.Name
	}
	return ""
}

// overFloor is how high the lower end of a stand counts as, m: over a carpet or a threshold.
const overFloor = 0.05

// bearing are the places of a thing that have to come through when it is moved: the corners and middles of all but its legs, and
// where it stands.
func (t *thing) bearing() []r3.Vec { return append(t.carried(), t.holding()...) }

// carried are those of what is held.
func (t *thing) carried() (all []r3.Vec) {
	for i := range t.pieces {
		if q := &t.pieces[i]; q.part == Head || q.part == Sheet {
			all = append(append(all, q.middle), q.corners()...)
		}
	}
	return all
}

// holding are those of what holds it.
func (t *thing) holding() (all []r3.Vec) {
	for i := range t.pieces {
		if q := &t.pieces[i]; q.part != Head && q.part != Sheet && q.part != Legs {
			all = append(all, q.middle)
		}
	}
	if t.standsOnIt {
		all = append(all, plan.AtHeight(t.foot, math.Min(t.base+overFloor, t.ownHeight)))
	}
	return all
}

// blocked says whether something stands in the way of a place that is moved. What holds the place already does not.
func (v *viewing) blocked(place, by r3.Vec) bool {
	var skip []solid.ID
	if id, in := v.set.Inside(place); in {
		skip = append(skip, id)
	}
	return v.set.Blocked(place, r3.Add(place, by), skip)
}
