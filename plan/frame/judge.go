package frame

import (
	"math"

	"scrimshaw/plan"
)

// Judge looks through each camera of a set-up at each light, piece of grip, other camera, track and person that it should not see, in the
// order of the scene.
func Judge(s *plan.Setup) (all []Sight) {
	eyes := eyesOf(s)
	for _, e := range eyes {
		e.others = eyes
		all = append(all, e.judge()...)
	}
	return all
}

// eyesOf are the cameras of a set-up.
func eyesOf(s *plan.Setup) (eyes []*eye) {
	var v *viewing
	for i := range s.Cameras {
		c := &s.Cameras[i]
		if v == nil || anyoneOut(s) {
			v = newViewing(s, c.Name)
		}
		eyes = append(eyes, newEye(v, c))
	}
	return eyes
}

// anyoneOut says whether somebody should not be seen by some camera.
func anyoneOut(s *plan.Setup) bool {
	for i := range s.People {
		if s.People[i].Seen.Written {
			return true
		}
	}
	return false
}

// judge looks at all things, and then for what takes those out that should not be in the picture.
func (e *eye) judge() []Sight {
	for i := range e.things {
		e.sights = append(e.sights, e.worst(&e.things[i]))
	}
	for i := range e.things {
		if s := &e.sights[i]; s.Shows() || s.Near(e.camera) {
			e.mend(s, &e.things[i])
		}
	}
	return e.sights
}

// mend finds what takes a thing out of the pictures of a camera and the margin about them.
func (e *eye) mend(s *Sight, t *thing) {
	if t.movable(e.camera) {
		s.Move = e.leastMove(t, e.postOf(s))
	}
	s.Pan = e.leastPan(t)
}

// Lamps looks through each camera of a set-up, where it stands, at each light that is meant to be in its picture: how much of it is Shown,
// and where.
func Lamps(s *plan.Setup) (all []Sight) {
	for i := range s.Cameras {
		c := &s.Cameras[i]
		v := newViewing(s, c.Name)
		p := &post{camera: c, picture: pictureOf(c)}
		for _, t := range v.things(c.Name) {
			if !t.seen.For(c.Name) { // of lights alone a scene says so
				continue
			}
			one := Sight{Camera: c.Name, Kind: t.kind, Name: t.name, Path: t.path, Span: t.span, Outside: math.Inf(1), Meant: true}
			if p.mayShow(t.middle, t.radius) {
				v.meant(&t, p, &one)
			}
			if one.Shown > 0 {
				all = append(all, one)
			}
		}
	}
	return all
}
