package body

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/rig"
	"scrimshaw/plan/term"
)

// The measures of what holds things up: common practice.
const (
	postRadius = 0.018 // m, of the tube of a stand, an arm or a pole
	legRadius  = 0.012 // m
	legCount   = 3
	collar     = 0.35 // how high the legs meet, as a share of the ground they take
	mostCollar = 0.8  // of the height of what the stand holds
	shortest   = 0.01 // m: nothing shorter is a tube

	weightRadius = 0.15 // m, of the bags that balance a boom

	liftHigh = 0.4 // m, of the base of a lift
)

// MastRadius is that of the mast of a lift, m: common practice.
const MastRadius = 0.08

// The ground of a stand is in the way of what lies between these heights over it, m (common practice): its legs pass under what is higher,
// and stand on what is lower, a carpet or a threshold.
const (
	LegStep      = 0.03
	LegClearance = 0.30
)

// groundSides is how many sides the circle of the legs has.
const groundSides = 12

// GroundOf is the outline of the ground that the legs of a mount take.
func GroundOf(m *plan.Mount) []r2.Vec {
	if m.Kind == term.Lift {
		return liftGround(m)
	}
	ring := make([]r2.Vec, groundSides)
	for i, p := range Circle(plan.AtHeight(m.Base, 0), r3.Vec{X: 1}, r3.Vec{Y: 1}, m.Foot/2, groundSides) {
		ring[i] = plan.InPlan(p)
	}
	return ring
}

// GroundPiece is the ground that the legs of a mount take, over what it stands on: what stands up from there stands between them.
func GroundPiece(m *plan.Mount, base float64) Piece {
	return Prism(Ground, GroundOf(m), base+LegStep, base+LegClearance)
}

// MovedMount is a mount that is moved with what it holds. What it stands on stays as high as it is.
func MovedMount(m *plan.Mount, by r3.Vec) plan.Mount {
	out := *m
	out.Base = r2.Add(m.Base, plan.InPlan(by))
	out.PoleEnds = slices.Clone(m.PoleEnds)
	for i := range out.PoleEnds {
		out.PoleEnds[i] = r2.Add(out.PoleEnds[i], plan.InPlan(by))
	}
	return out
}

// HoldersOf are the pieces of what holds a thing up, by its frame and the z of what that stands on.
func HoldersOf(m *plan.Mount, f plan.Frame, base float64) []Piece {
	switch m.Kind {
	case term.Lift:
		return liftOf(m, base, f.At.Z)
	case term.Stand:
		return standOf(m.Base, base, f.At.Z, m.Foot, plane.Bearing(plan.InPlan(f.Axis)))
	case term.Boom:
		return boomOf(m, f, base)
	case term.Pole:
		if len(m.PoleEnds) == 2 {
			return tube(nil, Pole, plan.AtHeight(m.PoleEnds[0], f.At.Z), plan.AtHeight(m.PoleEnds[1], f.At.Z), postRadius)
		}
	}
	return nil
}

// standOf is a stand from the ground up to a height, one leg of which lies under the aim, as it is put to bear the load.
func standOf(at r2.Vec, base, top, foot, bearing float64) []Piece {
	if top <= base {
		return nil // a fault of its own
	}
	all := tube(nil, Stand, plan.AtHeight(at, base), plan.AtHeight(at, top), postRadius)
	up := plan.AtHeight(at, base+min(collar*foot, mostCollar*(top-base)))
	for i := range legCount {
		if foot <= 2*legRadius {
			break
		}
		out := plane.Direction(bearing + 360*float64(i)/legCount)
		all = tube(all, Legs, plan.AtHeight(r2.Add(at, r2.Scale(foot/2-legRadius, out)), base+legRadius), up, legRadius)
	}
	return all
}

// liftGround is the rectangle that a lift stands on.
func liftGround(m *plan.Mount) []r2.Vec {
	wide, long := m.Ground[0]/2, m.Ground[1]/2
	ring := plane.AxesAt(m.Turn).Rectangle(m.Base, -wide, wide, -long, long)
	return ring[:]
}

// liftOf is the base of a lift, and its mast up to what it holds.
func liftOf(m *plan.Mount, base, top float64) []Piece {
	if top <= base {
		return nil // a fault of its own
	}
	all := []Piece{Prism(Legs, liftGround(m), base, min(base+liftHigh, top))}
	return tube(all, Stand, plan.AtHeight(m.Base, base), plan.AtHeight(m.Base, top), MastRadius)
}

// boomOf is a stand with an arm to the thing: level, or from below where the arm is longer than that. Behind the stand the arm goes on
// to its counterweight.
func boomOf(m *plan.Mount, f plan.Frame, base float64) []Piece {
	to := r2.Sub(plan.InPlan(f.At), m.Base)
	rise := math.Sqrt(max(0, m.Arm*m.Arm-r2.Norm2(to)))
	pivot := plan.AtHeight(m.Base, max(base, f.At.Z-rise))
	bearing := 0.0
	if r2.Norm(to) > 0 {
		bearing = plane.Bearing(to)
	}
	all := tube(standOf(m.Base, base, pivot.Z, m.Foot, bearing), Boom, pivot, f.At, postRadius)
	arm := r3.Sub(f.At, pivot)
	if r3.Norm(arm) < shortest {
		return all
	}
	tail := r3.Sub(pivot, r3.Scale(rig.CounterArm/r3.Norm(arm), arm))
	return append(tube(all, Boom, pivot, tail, postRadius), Ball(Weight, tail, weightRadius))
}

// tube adds a tube where it is long enough to be one.
func tube(all []Piece, part Part, from, to r3.Vec, radius float64) []Piece {
	if r3.Norm(r3.Sub(to, from)) < shortest {
		return all
	}
	return append(all, Rod(part, from, to, radius))
}
