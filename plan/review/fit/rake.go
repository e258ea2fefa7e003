package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
)

// In how many steps a beam is gone through: out from its axis, and round it.
const (
	beamSteps = 180
	beamTurns = 144
)

// leastRaking is the least share of a beam that goes through an opening which its axis misses: with less the lamp is as good as walled off.
const leastRaking = 0.01

// beamThrough is how much of the beam of a lamp, out to half its peak, goes through both faces of an opening, 0 to 1. The lamp counts as a
// point.
func beamThrough(l *plan.Light, o *plan.Opening) float64 {
	if l.Head.Source.Distribution == nil {
		return 0
	}
	half := l.Head.Source.Peak() / 2
	reach := beamReach(l, half)
	through, all := 0.0, 0.0
	for i := range beamSteps {
		angle := (float64(i) + 0.5) / beamSteps * reach
		sin, cos := plane.Sincos(angle)
		for k := range beamTurns {
			across, up := plane.Sincos((float64(k) + 0.5) / beamTurns * 360)
			intensity := l.Head.Source.Intensity(r3.Vec{X: sin * across, Y: sin * up, Z: -cos})
			if intensity < half || !(intensity > 0) {
				continue
			}
			all += intensity * sin
			if goesThrough(l.Frame, r3.Vec{X: sin * across, Y: sin * up, Z: cos}, o) {
				through += intensity * sin
			}
		}
	}
	if !(all > 0) {
		return 0
	}
	return through / all
}

// beamReach is how far off its axis a lamp shines at least so many cd in some direction, degrees.
func beamReach(l *plan.Light, half float64) (reach float64) {
	const fine, turns = 0.5, 24 // degrees; round the axis
	for angle := 0.0; angle <= 180; angle += fine {
		sin, cos := plane.Sincos(angle)
		for k := range turns {
			across, up := plane.Sincos(float64(k) / turns * 360)
			if l.Head.Source.Intensity(r3.Vec{X: sin * across, Y: sin * up, Z: -cos}) >= half {
				reach = math.Min(180, angle+fine)
				break
			}
		}
	}
	return reach
}

// goesThrough says whether a ray from a lamp, by its own axes, passes the hole in both faces of the wall.
func goesThrough(f plan.Frame, local r3.Vec, o *plan.Opening) bool {
	way := r3.Sub(f.Place(local), f.At)
	speed := -r2.Dot(plan.InPlan(way), o.Outward)
	if !(speed > 0) {
		return false
	}
	for _, depth := range [...]float64{o.Depth, 0} {
		t := (r2.Dot(r2.Sub(plan.InPlan(f.At), o.Middle()), o.Outward) - depth) / speed
		at := r3.Add(f.At, r3.Scale(t, way))
		if math.Abs(r2.Dot(r2.Sub(plan.InPlan(at), o.Middle()), o.Rightward())) > o.Width()/2 || at.Z < o.Sill || at.Z > o.Head {
			return false
		}
	}
	return true
}
