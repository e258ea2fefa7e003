package resolve

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// minWallSine is how far from parallel two walls must be to place a thing between them: the sine
// of 30 degrees.
const minWallSine = 0.5

// placing is the two distances that put a thing there with a tape: in a room from the inside faces
// of two walls; outside from the outside face of the wall with an opening, and along that wall from
// a jamb. On open ground there is nothing to measure from.
func (r *holder) placing(p r2.Vec, s plan.Spot) []plan.Dimension {
	if room := r.out.RoomHolding(p, s.Room); room != nil {
		return fromWalls(room, p)
	}
	if o := r.openingFor(p, s); o != nil {
		return fromJamb(o, p)
	}
	return nil
}

// fromWalls measures square to the nearest wall, and to the nearest that runs across it. Walls that
// the thing stands beside, in the sense that the tape would meet them square, come first.
func fromWalls(room *plan.Room, p r2.Vec) []plan.Dimension {
	first := nearestWall(room, p, nil)
	if first == nil {
		return nil
	}
	dims := []plan.Dimension{distanceToWall(room, first, p)}
	if second := nearestWall(room, p, first); second != nil {
		dims = append(dims, distanceToWall(room, second, p))
	}
	return dims
}

// nearestWall is the nearest wall that does not run along the one given.
func nearestWall(room *plan.Room, p r2.Vec, across *plan.Wall) *plan.Wall {
	var best *plan.Wall
	least, bestFoot := math.Inf(1), false
	for i := range room.Walls {
		w := &room.Walls[i]
		if across != nil && math.Abs(r2.Cross(w.Outward, across.Outward)) < minWallSine {
			continue
		}
		on, foot := plane.NearestOnSegment(p, w.Left, w.Right)
		d := r2.Norm(r2.Sub(on, p))
		if best == nil || foot && !bestFoot || foot == bestFoot && d < least-plane.Grain {
			best, least, bestFoot = w, d, foot
		}
	}
	return best
}

// distanceToWall is the distance from a wall's inside face, measured square to it.
func distanceToWall(room *plan.Room, w *plan.Wall, p r2.Vec) plan.Dimension {
	d := r2.Dot(r2.Sub(w.Left, p), w.Outward)
	return plan.Dimension{From: room.Name + "." + w.Name, Metres: d, A: r2.Add(p, r2.Scale(d, w.Outward)), B: p}
}

// openingFor is the opening that a thing outside is measured from: the one it was placed by, else
// the nearest that it stands before.
func (r *holder) openingFor(p r2.Vec, s plan.Spot) *plan.Opening {
	if o := r.out.OpeningNamed(s.Opening); o != nil {
		return o
	}
	var best *plan.Opening
	least := math.Inf(1)
	for i := range r.out.Openings {
		o := &r.out.Openings[i]
		away := r2.Sub(p, o.Middle())
		if d := r2.Norm(away); o.FarRoom == "" && r2.Dot(away, o.Outward) > o.Depth && d < least-plane.Grain {
			best, least = o, d
		}
	}
	return best
}

// fromJamb measures square to the outside face of an opening's wall, and along it from the nearer
// jamb, named as seen from outside.
func fromJamb(o *plan.Opening, p r2.Vec) []plan.Dimension {
	face := r2.Scale(o.Depth, o.Outward)
	jamb, name := r2.Add(o.Left, face), "right" // left as seen from inside
	if far := r2.Add(o.Right, face); math.Abs(r2.Dot(r2.Sub(p, far), o.Rightward())) < math.Abs(r2.Dot(r2.Sub(p, jamb), o.Rightward())) {
		jamb, name = far, "left"
	}
	out := r2.Dot(r2.Sub(p, jamb), o.Outward)
	if out < 0 { // it stands within the opening
		return nil
	}
	foot := r2.Sub(p, r2.Scale(out, o.Outward))
	return []plan.Dimension{
		{From: o.Room + "." + o.Wall + ", outside face", Metres: out, A: foot, B: p},
		{From: o.Name + ", " + name + " jamb from outside", Metres: r2.Norm(r2.Sub(foot, jamb)), A: jamb, B: foot},
	}
}
