package section

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/unit"
)

// hungOn is the side of an opening that half a curtain hangs on, as seen from inside; "" of what covers all of it.
func hungOn(o *plan.Opening, d *plan.Dressing) string {
	const lap = 0.01 // m
	from, to := r2.Dot(r2.Sub(d.A, o.Left), o.Rightward()), r2.Dot(r2.Sub(d.B, o.Left), o.Rightward())
	switch {
	case from <= lap && to >= o.Width()-lap:
		return ""
	case from <= lap:
		return "left half"
	}
	return "right half"
}

// DressingWords says a curtain or a blind.
func DressingWords(d *plan.Dressing) string {
	if d.Slat > 0 {
		return "blind, slats of " + unit.FormatLength(d.Slat, false) + " at " + unit.FormatAngle(d.Tilt)
	}
	return "curtain, " + d.Cloth
}
