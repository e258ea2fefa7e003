package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// standingAt is somebody as written at a spot.
func (r *peoplePass) standingAt(written *scene.Person, s plan.Spot, bearing float64) plan.Person {
	rest := r.bodyHeightsOf(written, s)
	p := plan.Person{
		Name: written.Name, At: s.At, Base: rest.feet, Pose: written.Pose.Or(term.Standing),
		Height: written.Height.Or(scene.DefaultPersonHeight), Eyes: rest.eyes, Faces: bearing,
		Face: faceFrame(written, s.At, rest.eyes, bearing), Span: written.Span,
	}
	p.Crown = crownOf(&p, written.Eyes.Set)
	p.Parts = pose(&p, rest.seat)
	return p
}

// crownOf is how high the crown is in a pose, z; told says whether the scene gives the height of the eyes.
func crownOf(p *plan.Person, told bool) float64 {
	switch {
	case p.Pose == term.Lying:
		return p.Eyes
	case p.Pose == term.Standing && !told:
		return p.Base + p.Height
	case p.Pose == term.Standing:
		return max(p.Base+p.Height, p.Eyes+scene.EyesToCrown)
	}
	return p.Eyes + scene.EyesToCrown
}
