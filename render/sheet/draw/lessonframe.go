package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// Lesson draws what a lesson says of where lights stand about a head: the camera is always below, so that camera left is left on
// paper. Angles are true; what is too far for its place stands nearer, with its line broken.
type Lesson struct {
	*Drawing
	*meter.Lesson
	centre r2.Vec  // of the head, mm
	scale  float64 // mm for a metre
	reach  float64 // how far from the head a light may stand, mm
	ranks  Ranks
}

// Sizes of the drawing of a lesson, mm.
const (
	lessonNear    = 17.0 // the least from the head to a light
	lessonBeside  = 46.0 // for tags to either side
	lessonAbove   = 13.0 // for tags above and below
	lessonLeast   = 22.0 // the least scale, mm for a metre: a head is seen
	lessonMost    = 46.0 // and the most
	straightAbove = 0.05 // m in plan, within which a camera counts as over the head
	shortLeader   = 6.0  // a shorter one is left out
	breakWide     = 1.6  // of the mark in a line that is broken
	lessonArc     = 5.2  // from one arc to the next
	lessonArcFrom = 9.0  // from the middle of the head to the first arc
)

// lessonRanks are the heights of lettering of a lesson.
var lessonRanks = Ranks{capGrand, CapTitle, capName}

// NewLesson is the drawing of the lesson of a report in a box.
func NewLesson(d *Drawing, area r2.Box) *Lesson {
	l := &Lesson{Drawing: d, Lesson: d.In.Lesson, centre: box.Centre(area), ranks: lessonRanks}
	l.reach = math.Min(box.Width(area)/2-lessonBeside, box.Height(area)/2-lessonAbove)
	farthest := 0.0
	for i := range l.Lights {
		t := &l.Lights[i]
		far := inPlan(t)
		if t.At == nil && t.By != "" {
			_, far = l.lampFrom(l.In.Setup.LightNamed(t.Light))
		}
		farthest = math.Max(farthest, far)
	}
	l.scale = math.Max(lessonLeast, math.Min(lessonMost, l.reach/math.Max(farthest, 1e-6)))
	return l
}

// toward is the way on paper to what stands at an angle from the line to the camera, which runs down.
func toward(turn float64) r2.Vec { return ink.Direction(180 - turn) }

// aheadBearing is the bearing in the set of what runs down the paper.
func (l *Lesson) aheadBearing(who *plan.Person) float64 {
	if c := l.In.Setup.CameraPost(l.Camera); c != nil {
		if d := r2.Sub(plan.InPlan(c.Frame.At), plan.InPlan(who.Face.At)); r2.Norm(d) > straightAbove {
			return box.Bearing(d)
		}
	}
	return who.Faces
}

// onPaper turns a bearing of the set.
func (l *Lesson) onPaper(bearing float64, who *plan.Person) float64 {
	return bearing - l.aheadBearing(who) + 180
}

// line is a stroke that lettering must not cover.
func line(a, b r2.Vec) carto.Obstacle { return carto.Obstacle{Outline: []r2.Vec{a, b}} }

// stand is where on paper something stands so many mm off the head; broken says that it is farther in truth.
func (l *Lesson) stand(turn, far float64) (at r2.Vec, broken bool) {
	if far > l.reach {
		far, broken = l.reach, true
	}
	return r2.Add(l.centre, r2.Scale(math.Max(far, lessonNear), toward(turn))), broken
}

// inPlan is how far a light stands from the face in plan, m; 0 of one without a place.
func inPlan(t *meter.LessonLight) float64 {
	if t.At == nil {
		return 0
	}
	return t.Distance * math.Cos(t.Height*math.Pi/180)
}

// lampFrom is where a lamp stands from the face: its angle from the line to the camera, degrees, plus to camera right, and how far in plan, m.
func (l *Lesson) lampFrom(light *plan.Light) (turn, far float64) {
	who := l.In.Setup.Post(l.Person)
	way := r2.Sub(plan.InPlan(light.Frame.At), plan.InPlan(who.Face.At))
	return l.aheadBearing(who) - box.Bearing(way), r2.Norm(way)
}
