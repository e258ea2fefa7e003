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
	half, reach := halfPeak(l)
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

// halfPeak is half the most that a lamp shines in any direction, cd, and how far off its axis it shines as much, degrees.
func halfPeak(l *plan.Light) (half, reach float64) {
	const fine, turns = 0.5, 24 // degrees; round the axis
	rings := make([]float64, int(180/fine)+1)
	for i := range rings {
		sin, cos := plane.Sincos(float64(i) * fine)
		for k := range turns {
			across, up := plane.Sincos(float64(k) / turns * 360)
			rings[i] = max(rings[i], l.Head.Source.Intensity(r3.Vec{X: sin * across, Y: sin * up, Z: -cos}))
		}
		half = max(half, rings[i]/2)
	}
	for i, most := range rings {
		if most >= half {
			reach = math.Min(180, float64(i+1)*fine)
		}
	}
	return half, reach
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
