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

// Pair is whose face is taught, for which camera: a person or one at a mark, as readings name them. Empty names leave the choice.
type Pair struct{ Person, Camera string }

// Add adds a lesson to the readings of a study: of the first person who has light at the face, for the first camera that
// sees it, where the pair names no others. It lights the key anew from farther off, and stops with the context's error when
// that is cancelled. A study that looked around the faces (study.Options.Around) tells what stands behind the head, too.
func Add(ctx context.Context, s *study.Study, of Pair) error {
	l := &meter.Lesson{}
	s.Readings.Lesson = l
	face, view, why := chosen(s, of)
	if why != "" {
		l.Missing = nothing + why + "."
		return nil
	}
	t := &teacher{study: s, person: s.Setup.Post(face.Person), face: face, view: view, lesson: l, feet: s.Setup.Feet}
	t.setAngles()
	t.gather()
	if err := t.moveKey(ctx); err != nil {
		return err
	}
	t.tell()
	return nil
}

// nothing begins the sentence that says why there is no lesson.
const nothing = "There is nothing to teach here: "

// chosen is the face of a pair and the view of its camera, the first that has the face in frame, else the first that sees it, nil where none does; why says what is
// missing.
func chosen(s *study.Study, of Pair) (face *meter.Face, view *meter.View, why string) {
	if face = faceFor(s, of); face == nil {
		return nil, nil, missing(s.Setup, of)
	}
	for i := range face.Views {
		v := &face.Views[i]
		asked := of.Camera == "" || v.Camera == of.Camera || plan.CameraOf(v.Camera) == of.Camera // from the end of its track, too
		if asked && (view == nil || view.Outside && !v.Outside) {
			view = v
		}
	}
	switch {
	case view != nil:
		return face, view, ""
	case of.Camera == "":
		return face, nil, ""
	case s.Setup.CameraPost(of.Camera) == nil:
		return nil, nil, "there is no camera " + of.Camera + " in the set-up"
	}
	return nil, nil, plan.CameraWords(of.Camera) + " does not see the face of " + face.Person
}

// faceFor is the face of a pair's person, or the first that a light reaches; nil where there is none.
func faceFor(s *study.Study, of Pair) *meter.Face {
	if of.Person != "" {
		return s.Readings.FaceOf(of.Person)
	}
	for i := range s.Setup.People {
		if f := s.Readings.FaceOf(s.Setup.People[i].Name); f != nil {
			return f
		}
	}
	return nil
}

// missing says why there is no face to teach with.
func missing(s *plan.Setup, of Pair) string {
	switch {
	case len(s.People) == 0:
		return "nobody is in the set-up, and the notes are about light on a face"
	case of.Person != "" && s.Post(of.Person) == nil:
		return of.Person + " is not in the set-up"
	case !s.HasLight():
		return "no light is on"
	case of.Person != "":
		return "no light reaches the face of " + of.Person
	}
	return "no light reaches a face"
}

// teacher works out one lesson.
type teacher struct {
	study  *study.Study
	person *plan.Person
	face   *meter.Face
	view   *meter.View  // of the camera; nil where none sees the face
	camera *plan.Camera // nil then, too; one that moves where the view is from
	ahead  r2.Vec       // unit, in plan: what angles count from
	right  r2.Vec       // and to which side they are plus
	lesson *meter.Lesson
	feet   bool
	moved  *move // nil where moving the key says nothing
}

// setAngles makes angles count from the line to the camera. Where none sees the face, or it looks from straight above, they
// count from where the person faces.
func (t *teacher) setAngles() {
	t.lesson.Person, t.lesson.Side = t.person.Name, t.face.Side
	t.ahead = plane.Direction(t.person.Faces)
	if t.view != nil {
		t.camera = t.study.Setup.CameraPost(t.view.Camera)
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

// cameraWords names the camera: "A", "A at the end".
func (t *teacher) cameraWords() string { return plan.CameraWords(t.camera.Name) }

// overhead is how far from a face in plan something stands that has no angle to it there, m.
const overhead = 0.05
