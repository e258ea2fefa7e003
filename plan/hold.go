package plan

import (
	"math"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// Names of the catalogue by which things are held.
const (
	BoomArm     = "boom-arm"
	CeilingPole = "ceiling-pole"
	Sandbag     = "sandbag-12"
)

// How many bags a stand has: common practice.
const (
	bagsOnStand = 1
	bagsHigh    = 2   // on a boom, and on a stand from highStand up
	highStand   = 2.5 // m
)

// Bags is how many sandbags a stand takes for what it holds at a height over what it stands on, m: none where a thing does not stand
// on one.
func (m *Mount) Bags(height float64) int {
	switch {
	case m.Kind == term.Boom:
		return bagsHigh
	case m.Kind != "" && m.Kind != term.Stand:
		return 0
	case height >= highStand-plane.Grain:
		return bagsHigh
	}
	return bagsOnStand
}

// UsualLift is the width and the depth of the ground of a lift that the catalogue has not, m: common practice, through a door.
var UsualLift = [2]float64{0.75, 1.2}

// largeFrame is from where on a frame stands between two stands, m: common practice.
const largeFrame = 1.5

// OnTwoStands says whether a frame stands between two stands.
func (g *Grip) OnTwoStands() bool {
	return g.Kind == term.Frame && math.Max(g.Size[0], g.Size[1]) >= largeFrame
}
