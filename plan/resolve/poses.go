package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// Sizes of a person, m: rounded from common tables of adult bodies (from memory). They shape no
// number but the shadow that a person throws on others.
const (
	faceBefore = 0.10 // the face before the head's axis

	headWidth, headDepth, headHeight = 0.16, 0.18, 0.23
	bodyWidth, bodyDepth             = plan.BodyWidth, 0.26
	legsWidth, legsDepth             = 0.34, 0.22
	thighLength, thighHeight         = 0.55, 0.16
	calfDepth                        = 0.12 // of the lower legs of someone who sits
	legReach                         = 1.0  // of the feet of someone propped, before the hip
	lyingHip                         = 0.75 // of someone lying, from the middle of the head
	crouchingHip                     = 0.35 // above what the feet are on
	crouchingLean                    = 0.20 // by how much a body is deeper that crouches
	hipShare                         = 0.47 // of the height
)

// eyesAssumed reports whether a default decided how high a person's eyes are.
func eyesAssumed(p *scene.Person) bool {
	return !p.Eyes.Set && !(p.Height.Set && p.Pose.Or(term.Standing) == term.Standing)
}

// faceFrame is a person's face: the point faceBefore before the head's axis, which stands at a place, at eye
// height z, and the nose. Someone lying looks up, feet to the bearing that they would face sitting up.
func faceFrame(p *scene.Person, at r2.Vec, z, bearing float64) plan.Frame {
	if p.Pose.Value == term.Lying {
		return plan.FrameAlong(plan.AtHeight(at, z), r3.Vec{Z: 1}, bearing, 0)
	}
	nose := plan.Pointing(bearing, 0)
	if a := p.Faces.Value; p.Faces.Set && (a.Form == scene.AimPanTilt || a.Form == scene.AimUp || a.Form == scene.AimDown) {
		nose = tilted(&a)
	}
	return plan.FrameAlong(r3.Add(plan.AtHeight(at, z), r3.Scale(faceBefore, nose)), nose, bearing, 0)
}

// tilted is a nose that does not point level.
func tilted(a *scene.Aim) r3.Vec {
	switch a.Form {
	case scene.AimUp:
		return r3.Vec{Z: 1}
	case scene.AimDown:
		return r3.Vec{Z: -1}
	}
	return plan.Pointing(a.Pan, a.Tilt)
}

// pose is a person's body as prisms, from what the feet are on to the crown. seat is the z of what one sits on.
func pose(p *plan.Person, seat float64) []plan.Part {
	b := body{a: plane.AxesAt(p.Faces + 180), at: p.At}
	switch p.Pose {
	case term.Lying:
		b.lying(p)
	case term.Seated:
		b.sitting(p, seat)
		b.add(plan.LegsPart, -legsWidth/2, legsWidth/2, -thighLength, -thighLength+calfDepth, p.Base, seat)
	case term.Propped:
		b.sitting(p, seat)
		b.add(plan.LegsPart, -legsWidth/2, legsWidth/2, -legReach, -thighLength, seat, seat+thighHeight)
	case term.Crouching:
		b.upright(p, p.Base+crouchingHip, bodyDepth+crouchingLean)
	default:
		b.upright(p, p.Base+hipShare*(p.Crown-p.Base), bodyDepth)
	}
	return b.parts
}

// body collects the parts of a person, whose back is where its axes say.
type body struct {
	a     plane.Axes
	at    r2.Vec
	parts []plan.Part
}

// add adds a part with its corners cut: across from x0 to x1, back from y0 to y1.
func (b *body) add(kind plan.PartKind, x0, x1, y0, y1, z0, z1 float64) {
	c := min(x1-x0, y1-y0) / 4
	var ring []r2.Vec
	for _, p := range [][2]float64{{x0 + c, y0}, {x1 - c, y0}, {x1, y0 + c}, {x1, y1 - c}, {x1 - c, y1}, {x0 + c, y1}, {x0, y1 - c}, {x0, y0 + c}} {
		ring = append(ring, b.a.At(b.at, p[0], p[1]))
	}
	if z1-z0 > plane.Grain {
		b.parts = append(b.parts, plan.Part{Kind: kind, Outline: ring, Z0: z0, Z1: z1})
	}
}

func (b *body) head(p *plan.Person) float64 {
	chin := max(p.Crown-headHeight, p.Base)
	b.add(plan.HeadPart, -headWidth/2, headWidth/2, -headDepth/2, headDepth/2, chin, p.Crown)
	return chin
}

// upright stands on legs up to the hip.
func (b *body) upright(p *plan.Person, hip, depth float64) {
	chin := b.head(p)
	hip = min(hip, chin)
	b.add(plan.TorsoPart, -bodyWidth/2, bodyWidth/2, -depth/2, depth/2, hip, chin)
	b.add(plan.LegsPart, -legsWidth/2, legsWidth/2, -legsDepth/2, legsDepth/2, p.Base, hip)
}

// sitting sits on something whose top is at z = seat, thighs forward.
func (b *body) sitting(p *plan.Person, seat float64) {
	chin := b.head(p)
	z := min(seat, chin)
	b.add(plan.TorsoPart, -bodyWidth/2, bodyWidth/2, -bodyDepth/2, bodyDepth/2, z, chin)
	b.add(plan.LegsPart, -legsWidth/2, legsWidth/2, -thighLength, -bodyDepth/2, z, min(z+thighHeight, chin))
}

// lying lies on the back: the head about the place, the feet toward the bearing.
func (b *body) lying(p *plan.Person) {
	top := p.Eyes
	b.add(plan.HeadPart, -headWidth/2, headWidth/2, -headHeight/2, headHeight/2, p.Base, top)
	b.add(plan.TorsoPart, -bodyWidth/2, bodyWidth/2, -lyingHip, -headHeight/2, p.Base, top)
	b.add(plan.LegsPart, -legsWidth/2, legsWidth/2, -(p.Height - headHeight/2), -lyingHip, p.Base, top)
}
