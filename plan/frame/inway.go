package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/solid"
)

// free says whether a thing can be moved: nothing keeps it from that, and it does not come to stand where a camera rolls.
func (v *viewing) free(t *thing, by r3.Vec) bool {
	rolls := t.kind != Camera && v.onRails(r2.Add(t.foot, plan.InPlan(by))) && !v.onRails(t.foot)
	return !rolls && v.obstacle(t, by) == "" && !v.inLensWay(t, by)
}

// inLensWay says whether something of a thing that is moved lies where the lens of a camera comes by on its track: the rails may be clear of its stand while
// its head hangs over them.
func (v *viewing) inLensWay(t *thing, by r3.Vec) bool {
	if t.kind == Camera {
		return false // cameras take turns on rails
	}
	for i := range v.setup.Cameras {
		c := &v.setup.Cameras[i]
		if c.Track == nil {
			continue
		}
		for k := range c.Track.Corners[1:] {
			if way := lensWay(c, k); meetsAny(&way, t.at(by)) {
				return true
			}
		}
	}
	return false
}

// lensWay is the room about a lens along one leg of its track.
func lensWay(c *plan.Camera, leg int) body.Hull {
	a, b := c.Track.Corners[leg], c.Track.Corners[leg+1]
	ahead := r2.Scale(besideRails, r2.Unit(r2.Sub(b, a)))
	return body.HullOf(body.Prism(body.Whole, plane.Strip(r2.Sub(a, ahead), r2.Add(b, ahead), 2*besideRails), c.Frame.At.Z-besideRails, c.Frame.At.Z+besideRails))
}

// meetsAny says whether a body meets one of some pieces.
func meetsAny(way *body.Hull, stances [][]body.Piece) bool {
	for _, pieces := range stances {
		for i := range pieces {
			if h := body.HullOf(pieces[i]); !h.Apart(way, 0) && h.Meet(way).Deep > 0 {
				return true
			}
		}
	}
	return false
}

// obstacle says what keeps a thing from being moved: a wall or a thing in the way of its head or, level with the floor, of what holds
// that; the height of its stand; its room. "" where nothing does.
func (v *viewing) obstacle(t *thing, by r3.Vec) string {
	for _, one := range []struct {
		places []r3.Vec
		way    r3.Vec
	}{{t.carried(), by}, {t.holding(), r3.Vec{X: by.X, Y: by.Y}}} {
		for _, place := range one.places {
			if r3.Norm(one.way) > 0 && v.blocked(place, one.way) {
				return v.firstInWay(place, one.way) + " is in its way"
			}
		}
	}
	switch {
	case by.Z > 0 && t.most > 0 && t.ownHeight+by.Z > t.most:
		return "its stand goes no higher"
	case v.roomOf(t.foot) != v.roomOf(r2.Add(t.foot, plan.InPlan(by))):
		return "it leaves its room there"
	}
	return ""
}

// firstInWay is the name of what a place meets first that is moved.
func (v *viewing) firstInWay(place, by r3.Vec) string {
	var skip []solid.ID
	if id, in := v.set.Inside(place); in {
		skip = append(skip, id)
	}
	h, met := v.set.First(place, r3.Unit(by), skip)
	if name := v.setup.Names[h.ID]; met && name != "" {
		return name
	}
	return "something"
}

// onRails says whether something that stands at a place is in the way of a camera on its track.
func (v *viewing) onRails(at r2.Vec) bool {
	for i := range v.setup.Cameras {
		if t := v.setup.Cameras[i].Track; t != nil {
			if away, _ := t.Nearest(at); away < plan.RailGauge/2+besideRails {
				return true
			}
		}
	}
	return false
}

// besideRails is how far from the rails a thing stands clear of a camera that rolls by, m (common practice).
const besideRails = 0.2

// roomOf is the room that holds a place; "" outside.
func (v *viewing) roomOf(p r2.Vec) string {
	if room := v.setup.RoomUnder(p, ""); room != nil {
		return room.Name
	}
	return ""
}

// overFloor is how high the lower end of a stand counts as, m: over a carpet or a threshold.
const overFloor = 0.05

// carried are the places of a thing that have to come through when it is moved, of what is held: the corners and middles of that.
func (t *thing) carried() (all []r3.Vec) {
	for _, pieces := range t.stances {
		for i := range pieces {
			if q := &pieces[i]; q.Part == body.Head || q.Part == body.Sheet || q.Part == body.Whole {
				all = append(append(all, q.Middle), q.Corners()...)
			}
		}
	}
	return all
}

// holding are those of what holds it, level with the floor: the middles of all but its legs, and where it stands.
func (t *thing) holding() (all []r3.Vec) {
	for _, pieces := range t.stances {
		for i := range pieces {
			if q := &pieces[i]; q.Part != body.Head && q.Part != body.Sheet && q.Part != body.Whole && q.Part != body.Legs {
				all = append(all, q.Middle)
			}
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
