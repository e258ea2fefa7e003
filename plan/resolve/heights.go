package resolve

import (
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// lensHeight is the z of a camera's lens: where it is not given, the eyes of the person that it
// looks at.
func (r *aimer) lensHeight(c *scene.Camera, s plan.Spot) (float64, bool) {
	if before := r.keptCamera(c.Name); before != nil && !r.writtenHere(c.Node, "height") {
		return before.Frame.At.Z, true
	}
	if c.Height.Set {
		return s.Floor + c.Height.Value, true
	}
	name := r.looksAt(c)
	if name == "" {
		return s.Floor + scene.DefaultEyeLevel, true
	}
	if _, _, ok := r.markOf(scene.Ref{Name: name}); ok {
		f, ok := r.markFace(name)
		return f.At.Z, ok
	}
	return r.eyesAbove(name)
}

// looksAt is the person that a camera looks at, or the first where it looks at something else.
func (r *aimer) looksAt(c *scene.Camera) string {
	if name := r.personAt(c.Looks); name != "" {
		return name
	}
	return r.firstFor(c.Name)
}

// gripHeight is the z of the middle of a piece of grip: where it is not given, the eyes of the
// person that it stands by.
func (r *aimer) gripHeight(g *scene.Grip, s plan.Spot) (float64, bool) {
	if before := r.keptGrip(g.Name); before != nil && !r.writtenHere(g.Node, "height") {
		return before.Frame.At.Z, true
	}
	if g.Height.Set {
		return s.Floor + g.Height.Value, true
	}
	if name := r.gripBy(g); name != "" {
		return r.eyesAbove(name)
	}
	return s.Floor + scene.DefaultEyeLevel, true
}

// gripBy is the person that a piece of grip stands by, or the first.
func (r *aimer) gripBy(g *scene.Grip) string {
	if by := g.At.Value.Thing; r.isKind(by, personKind) {
		name, _, _ := strings.Cut(by.Name, ".")
		return name
	}
	return r.firstFor(g.Name)
}

// lampHeight is the z of a lamp's emitting face. A practical that does not say how high shines from
// three quarters of its body, on what is under it; another lamp hangs at a usual height.
func (r *aimer) lampHeight(l *scene.Light, s plan.Spot) float64 {
	if before := r.keptLight(l.Name); before != nil && !r.writtenHere(l.Node, "height") {
		return before.Frame.At.Z
	}
	if l.Height.Set {
		return s.Floor + l.Height.Value
	}
	if u := r.kit.Unit(l.Unit.Value); u != nil && u.Class == term.Practical && l.Output == nil {
		base, _ := r.supportUnder(s)
		return base + 0.75*u.Body[2]
	}
	return s.Floor + scene.DefaultLampHeight
}

// supportUnder is the z of what is under a spot, and its name: what it was placed on, else the highest
// piece of furniture there, else the floor.
func (r *aimer) supportUnder(s plan.Spot) (z float64, on string) {
	if s.On != "" {
		return s.Base, s.On
	}
	z = s.Base
	for i := range r.s.Furniture {
		f, ok := r.shape(r.s.Furniture[i].Name)
		if !ok {
			continue
		}
		if top, over := topAt(f, s.At); over && top > z {
			z, on = top, f.Name
		}
	}
	return z, on
}

// markFace is the face of somebody at a mark.
func (r *aimer) markFace(name string) (plan.Frame, bool) {
	p, m, _ := r.markOf(scene.Ref{Name: name})
	s, ok := r.spotOf(name)
	bearing, known := r.facingOf(name)
	if !ok || !known {
		return plan.Frame{}, false
	}
	at := atMark(p, m)
	return faceFrame(at, s.At, r.bodyHeightsOf(at, s).eyes, bearing), true
}

// bodyHeights is how high someone is, z: the floor that the feet are on, what one sits on, and the eyes.
type bodyHeights struct{ feet, seat, eyes float64 }

// bodyHeightsOf is how high someone at a spot is. One who sits on a thing has the feet on the floor before it; a
// deck is a floor, on which there is a chair that nobody draws, as there is on any floor.
func (r *aimer) bodyHeightsOf(p *scene.Person, s plan.Spot) bodyHeights {
	at := bodyHeights{feet: s.Base, seat: s.Base + report.Either(p.Pose.Value == term.Propped, scene.BedHeight, scene.SeatHeight)}
	if f, ok := r.seatOf(p, s); ok {
		at.feet, at.seat = f.Base, s.Base
	}
	at.eyes = at.feet + p.Eyes.Value
	if !p.Eyes.Set {
		at.eyes = eyesOf(p, at)
	}
	return at
}

// seatOf is the thing that someone seated or propped sits on.
func (r *aimer) seatOf(p *scene.Person, s plan.Spot) (*plan.Furniture, bool) {
	if s.On == "" || p.Pose.Value != term.Seated && p.Pose.Value != term.Propped {
		return nil, false
	}
	f, ok := r.shape(s.On)
	return f, ok && f.Kind != term.Deck
}

// faceOf is the face of a person.
func (r *aimer) faceOf(name string) (plan.Frame, bool) {
	p := &r.s.People[r.things[name].index]
	s, ok := r.spotOf(name)
	bearing, known := r.facingOf(name)
	if !ok || !known {
		return plan.Frame{}, false
	}
	return faceFrame(p, s.At, r.bodyHeightsOf(p, s).eyes, bearing), true
}

// eyesAbove is the z of a person's eyes; ok is false where there is no such person, or a fault.
func (r *aimer) eyesAbove(name string) (z float64, ok bool) {
	t, known := r.things[name]
	if !known || t.kind != personKind {
		return 0, false
	}
	p := &r.s.People[t.index]
	s, ok := r.spotOf(name)
	if !ok {
		return 0, false
	}
	return r.bodyHeightsOf(p, s).eyes, true
}

// eyesOf is the z of a person's eyes where the scene does not give it.
func eyesOf(p *scene.Person, at bodyHeights) float64 {
	switch p.Pose.Value {
	case term.Seated:
		return at.seat + scene.EyesOverSeat
	case term.Propped:
		return at.seat + scene.EyesOverBed
	case term.Crouching:
		return at.feet + scene.EyesCrouching
	case term.Lying:
		return at.feet + scene.EyesLying
	}
	return at.feet + p.Height.Or(scene.DefaultPersonHeight) - scene.EyesToCrown
}
