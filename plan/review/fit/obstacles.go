package fit

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
)

// obstacle is something in the way of who walks, over an outline from one z to another, m.
type obstacle struct {
	outline   []r2.Vec
	low, high float64
	of        string // what can be moved: a thing as the sheet calls it; "" of walls and windows
	hangs     bool   // it stands on no floor
	ceiling   bool   // it is one that comes down so far
}

// obstacles are what is in the way of who walks, in the making.
type obstacles struct {
	setup *plan.Setup
	all   []obstacle
	of    string // what is added is part of
}

func (o *obstacles) add(ring []r2.Vec, low, high float64) {
	for _, part := range plane.ConvexParts(plane.CounterClockwise(ring)) {
		o.all = append(o.all, obstacle{outline: plane.CounterClockwise(part), low: low, high: high, of: o.of})
	}
}

// legs adds the ground that legs take.
func (o *obstacles) legs(m *plan.Mount, base float64) {
	if m.Kind.OnLegs() && m.On == "" {
		o.add(body.GroundOf(m), base, base+body.LegClearance)
	}
}
