package draw

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols"
)

// personOf is somebody as a symbol.
func personOf(v layout.View, who *plan.Person) symbols.Person {
	return symbols.Person{Pose: symbols.Pose(who.Pose), At: v.Paper(who.At), Faces: bodyBearing(who), Scale: v.Scale, Height: who.Height}
}

// bodyBearing is the way a body is drawn: the nose's, or of someone lying the way from the head to
// the middle of the rest of them.
func bodyBearing(p *plan.Person) float64 {
	if p.Pose != term.Lying {
		return p.Faces
	}
	g := box.Bounds{}
	for _, q := range p.Parts {
		if q.Kind != plan.HeadPart {
			g.All(q.Outline, 0)
		}
	}
	if d := r2.Sub(box.Middle(g.Box().Min, g.Box().Max), p.At); g.Any && r2.Norm(d) > 1e-6 {
		return box.Bearing(d)
	}
	return p.Faces
}

// frameBearing is the bearing of a frame's axis in plan; of an upright axis, that of its up.
func frameBearing(f plan.Frame) float64 {
	d := plan.InPlan(f.Axis)
	if r2.Norm(d) < 1e-6 {
		d = plan.InPlan(f.Up())
	}
	return box.Bearing(d)
}
