// Package teach says what there is to learn from the light on one face: which light is the key and from where, what is left
// without the fill, what distance and size do, what the light behind the head adds. Every sentence is worked out from the
// result, and its figures stand in it as data.
package teach

import (
	"context"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/study"
)

// Add adds a lesson to the readings of a study: of the first person who has light at the face, for the first camera that
// sees it. It lights the key anew from farther off, and stops with the context's error when that is cancelled.
// A study that looked around the faces (study.Options.Around) tells what stands behind the head, too.
func Add(ctx context.Context, s *study.Study) error {
	l := &meter.Lesson{}
	s.Readings.Lesson = l
	face := firstFace(s)
	if face == nil {
		l.Missing = missing(s.Setup)
		return nil
	}
	t := &teacher{study: s, person: s.Setup.Post(face.Person), face: face, lesson: l, feet: s.Setup.Feet}
	t.chooseView()
	t.gather()
	if err := t.moveKey(ctx); err != nil {
		return err
	}
	t.tell()
	return nil
}

// firstFace is that of the first person whose key side has light; nil where there is none.
func firstFace(s *study.Study) *meter.Face {
	for i := range s.Setup.People {
		if f := s.Readings.FaceOf(s.Setup.People[i].Name); f != nil {
			return f
		}
	}
	return nil
}

// missing says why there is nothing to teach.
func missing(s *plan.Setup) string {
	switch {
	case len(s.People) == 0:
		return "There is nothing to teach here: nobody is in the set-up, and the notes are about light on a face."
	case !s.HasLight():
		return "There is nothing to teach here: no light is on."
	}
	return "There is nothing to teach here: no light reaches a face."
}

// teacher works out one lesson.
type teacher struct {
	study  *study.Study
	person *plan.Person
	face   *meter.Face
	view   *meter.View  // of the camera; nil where none sees the face
	camera *plan.Camera // nil then, too
	ahead  r2.Vec       // unit, in plan: what angles count from
	right  r2.Vec       // and to which side they are plus
	lesson *meter.Lesson
	feet   bool
	moved  *move // nil where moving the key says nothing
}

// chooseView takes the first camera that sees the face; angles count from the line to it. Where there is none, or it looks
// from straight above, they count from where the person faces.
func (t *teacher) chooseView() {
	t.lesson.Person, t.lesson.Side = t.person.Name, t.face.Side
	t.ahead = plane.Direction(t.person.Faces)
	if len(t.face.Views) > 0 {
		t.view = &t.face.Views[0]
		t.camera = t.study.Setup.CameraNamed(t.view.Camera)
	}
	if t.camera == nil {
		t.right = plan.InPlan(t.person.Face.Right)
		return
	}
	t.lesson.Camera = t.camera.Name
	toCamera := plan.InPlan(r3.Sub(t.camera.Frame.At, t.person.Face.At))
	if r2.Norm(toCamera) > overhead {
		t.ahead = r2.Unit(toCamera)
	}
	t.right = r2.Vec{X: -t.ahead.Y, Y: t.ahead.X} // to the right of who looks back along it
}

// overhead is how far from a face in plan something stands that has no angle to it there, m.
const overhead = 0.05
