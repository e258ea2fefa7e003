package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
)

// Approach is how near to its aim a light can come along its axis.
type Approach struct {
	By     r3.Vec // in space, m, as far as Metres says
	Metres float64
	Camera string // that would see it next; "" where something else ends its way
	Why    string // what ends it then: "desk is in its way"; "" of a camera
}

// nearFace is how near to its aim a light is brought at most, m: room for a head, and no glare (common practice).
const nearFace = 0.3

// approachSteps are those in which the way is walked before it is narrowed down by halving.
const approachSteps = 96

// Nearest finds how far a light can be brought along its axis toward its aim, down to a centimetre: before a camera sees something of it that is not
// meant to be in its picture or in the margin about that, before something stands in its way, and as far as its stand goes. It is not ok of
// a light that aims at no point or that stands within nearFace of it.
func Nearest(s *plan.Setup, l *plan.Light) (a Approach, ok bool) {
	most := l.Throw - nearFace
	if l.Throw == 0 || most <= 0 {
		return a, false
	}
	n := newNearing(s, l)
	ends := func(metres float64) (ended bool) {
		a.Camera, a.Why, ended = n.ending(r3.Scale(metres, l.Frame.Axis))
		return ended
	}
	low, high := 0.0, most
	for i := 0; i <= approachSteps; i++ {
		if high = most * float64(i) / approachSteps; ends(high) {
			break
		}
		low = high
	}
	for i := 0; i < halvings && low < high; i++ {
		if middle := (low + high) / 2; ends(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	if !ends(high) {
		a.Why = "no nearer to what it is aimed at"
	}
	const centimetre = 0.01
	a.Metres = math.Floor(low/centimetre+1e-9) * centimetre
	a.By = r3.Scale(a.Metres, l.Frame.Axis)
	return a, true
}

// nearing is a light on its way to its aim: as the set has it, and as each camera sees it, all along its track.
type nearing struct {
	*viewing
	lamp thing
	eyes []*eye
}

func newNearing(s *plan.Setup, l *plan.Light) *nearing {
	n := &nearing{viewing: newViewing(s, "")}
	n.lamp = *lampAmong(n.things(""), l)
	for i := range s.Cameras {
		c := &s.Cameras[i]
		n.eyes = append(n.eyes, newEye(newViewing(s, c.Name), c))
	}
	return n
}

// lampAmong is the thing that a light is.
func lampAmong(all []thing, l *plan.Light) *thing {
	for i := range all {
		if t := &all[i]; t.kind == Light && t.name == l.Name {
			return t
		}
	}
	return &thing{}
}

// ending says what ends the way once the light is moved: the first camera of the scene that sees it, or what stands in its way.
func (n *nearing) ending(by r3.Vec) (camera, why string, ended bool) {
	for _, e := range n.eyes {
		t := lampAmong(e.things, &plan.Light{Name: n.lamp.name})
		if e.anywhere(func(p *post) bool { return e.showsMoved(t, by, p) }) {
			return e.camera.Name, "", true
		}
	}
	if by == (r3.Vec{}) {
		return "", "", false
	}
	why = n.obstacle(&n.lamp, by)
	return "", why, why != ""
}
