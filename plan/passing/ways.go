package passing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
)

// stopsLost is how many stops less the light is that is left of some.
func stopsLost(all, left float64) float64 {
	if !(all > 0) || !(left > 0) {
		return 0
	}
	return lens.Stops(all / left)
}

// crosses says whether a straight way leads through the hole of an opening.
func crosses(o *plan.Opening, from, to r3.Vec) bool {
	way := r3.Sub(to, from)
	across := r2.Dot(plan.InPlan(way), o.Outward)
	if across == 0 {
		return false
	}
	middle := r2.Add(o.Left, r2.Scale(o.Depth/2, o.Outward))
	t := r2.Dot(r2.Sub(middle, plan.InPlan(from)), o.Outward) / across
	at := r3.Add(from, r3.Scale(t, way))
	along := r2.Dot(r2.Sub(plan.InPlan(at), o.Left), o.Rightward())
	return t > 0 && t < 1 && along > 0 && along < o.Width() && at.Z > o.Sill && at.Z < o.Head
}

// outside says whether a place lies outward of the middle of an opening's wall.
func outside(o *plan.Opening, at r3.Vec) bool {
	return r2.Dot(r2.Sub(plan.InPlan(at), o.Left), o.Outward) > o.Depth/2
}

// seenLight is what light comes from, as seen from a face: whither, a unit vector, and under which solid angle, sr.
type seenLight struct {
	toward r3.Vec
	size   float64
}

// way compares how the light and what it passes for come to the face; nil of a white alone.
func (p *passer) way() *meter.Way {
	to := p.light.StandsFor
	var from seenLight
	switch {
	case to.Light != "":
		from = p.seenLamp(p.lit.Setup.LightNamed(to.Light))
	case to.Opening != "":
		from = p.seenOpening(p.lit.Setup.OpeningNamed(to.Opening))
	default:
		return nil
	}
	is := p.seen()
	cos := r3.Dot(is.toward, from.toward)
	w := &meter.Way{Angle: degrees(math.Atan2(r3.Norm(r3.Cross(is.toward, from.toward)), cos)),
		Wide: photometry.ApparentWidth(is.size), For: photometry.ApparentWidth(from.size),
		Toward: [2]r3.Vec{is.toward, from.toward}, Size: [2]float64{is.size, from.size}}
	w.Higher = elevation(is.toward) - elevation(from.toward)
	if steep := max(math.Abs(elevation(is.toward)), math.Abs(elevation(from.toward))); steep < nearZenith {
		right := p.toRight(is.toward, from.toward)
		w.Right = &right
	}
	return w
}

// nearZenith is how high light comes from, degrees, over which it comes from no side.
const nearZenith = 75

func degrees(radians float64) float64 { return radians * 180 / math.Pi }

// elevation is how high over the horizon a unit vector points, degrees.
func elevation(v r3.Vec) float64 { return degrees(math.Asin(min(1, max(-1, v.Z)))) }

// toRight is how far from one bearing to another, degrees, to the person's own right: of somebody whose head is down that is the other
// way about.
func (p *passer) toRight(is, from r3.Vec) float64 {
	a, b := plan.InPlan(is), plan.InPlan(from)
	clockwise := degrees(math.Atan2(-r2.Cross(b, a), r2.Dot(b, a)))
	if p.post.Face.Up().Z < 0 {
		return -clockwise
	}
	return clockwise
}

// seenOpening is an opening as light comes in by all of it, by its inside face.
func (p *passer) seenOpening(o *plan.Opening) seenLight {
	corners := []r3.Vec{plan.AtHeight(o.Left, o.Sill), plan.AtHeight(o.Right, o.Sill), plan.AtHeight(o.Right, o.Head), plan.AtHeight(o.Left, o.Head)}
	return p.seenFigure(corners)
}

// seenFigure is a flat figure, toward its middle.
func (p *passer) seenFigure(corners []r3.Vec) seenLight {
	return seenLight{p.toward(middleOf(corners)), photometry.SolidAngle(p.post.Face.At, corners)}
}

func middleOf(corners []r3.Vec) (sum r3.Vec) {
	for _, c := range corners {
		sum = r3.Add(sum, r3.Scale(1/float64(len(corners)), c))
	}
	return sum
}

// toward is the direction of a place from the face; straight up of the face's own place.
func (p *passer) toward(at r3.Vec) r3.Vec {
	way := r3.Sub(at, p.post.Face.At)
	if r3.Norm(way) == 0 {
		return r3.Vec{Z: 1}
	}
	return r3.Unit(way)
}
