package meter

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
)

// Walk is the light along somebody's walk, without the body that walks it.
type Walk struct {
	Person  string
	Length  float64 // m
	Feet    bool    // lengths print in feet
	Points  []WalkPoint
	Courses []Course // one a camera, and one more where its track ends, in the order of the set-up; without cameras one of the key side
}

// WalkPoint is what is read at one place of a walk, by a face that looks along it.
type WalkPoint struct {
	Along    float64 // m from the start, on the plan
	At       r3.Vec  // of the face, m
	Facing   r3.Vec  // unit vector: the way on
	In       string  // what a body would be in there, and it is not judged; "" it is free
	Side     string  // of the key, the walker's own: "left" or "right"; "" where both are dark
	Contrast *Contrast
	Left     Reading // of the two planes at 45 degrees from the way
	Right    Reading
	Domes    []Reading // toward the cameras
}

// Course is how a walk keeps to the working stop, as one camera judges it.
type Course struct {
	Camera  string     // "A", or "A.end" of one at the end of its track; "": the scene's exposure judges the key side, as there is no camera
	Over    []*float64 // stops over the working stop by point; nil of no light
	Working float64    // the stop that they are counted from, N
	Best    *int       // the point that is nearest to it; nil where none is lit and free
	Worst   *int       // the point that is farthest from it; nil where none is free
	Off     []OffStop
}

// OffStop is a stretch of a walk that is more than LeaveStops over the working stop, or under it, at each of its points.
type OffStop struct {
	From, To float64  // m along the walk
	Over     *float64 // where it is farthest; nil where there is no light
}

// LeaveStops is how far from the working stop a walk has left it.
const LeaveStops = 1.0

// pointOf is a place of a walk by its readings.
func pointOf(at *plan.WalkPoint, readings []Reading) WalkPoint {
	p := WalkPoint{Along: at.Along, At: at.Face.At, Facing: at.Face.Axis, In: at.In, Left: readings[0], Right: readings[1], Domes: readings[2:]}
	key, fill := &p.Left, &p.Right
	p.Side = "left"
	if RightIsKey(*key.Lux, *fill.Lux) {
		key, fill = fill, key
		p.Side = "right"
	}
	if *key.Lux <= 0 {
		p.Side = ""
		return p
	}
	p.Contrast = contrastOf(*key.Lux, *fill.Lux)
	return p
}

// Key is the reading of the brighter side.
func (p *WalkPoint) Key() *Reading {
	if p.Side == "right" {
		return &p.Right
	}
	return &p.Left
}

// named is the reading of a name along the walk; nil where there is none.
func (w *Walk) named(name string) *Reading {
	for i := range w.Points {
		p := &w.Points[i]
		for _, r := range [...]*Reading{&p.Left, &p.Right} {
			if r.Name == name {
				return r
			}
		}
		for k := range p.Domes {
			if p.Domes[k].Name == name {
				return &p.Domes[k]
			}
		}
	}
	return nil
}

// judge follows the walk for each camera.
func (w *Walk) judge(s *plan.Setup) {
	if len(s.Cameras) == 0 {
		w.Courses = []Course{w.course("", s.Exposure.Stop.N, func(p *WalkPoint) *Reading { return p.Key() })}
	}
	posts := s.CameraPosts()
	for i := range posts {
		c := &posts[i]
		w.Courses = append(w.Courses, w.course(c.Name, c.Exposure.Stop.N, func(p *WalkPoint) *Reading { return &p.Domes[i] }))
	}
}

// course follows the walk by one reading of each place.
func (w *Walk) course(camera string, working float64, of func(p *WalkPoint) *Reading) Course {
	c := Course{Camera: camera, Working: working}
	for i := range w.Points {
		c.Over = append(c.Over, of(&w.Points[i]).Over)
	}
	for i := range w.Points {
		if w.Points[i].In != "" {
			continue
		}
		off := distanceFrom(c.Over[i])
		if c.Worst == nil || off > distanceFrom(c.Over[*c.Worst]) {
			c.Worst = &i
		}
		if !math.IsInf(off, 1) && (c.Best == nil || off < distanceFrom(c.Over[*c.Best])) {
			c.Best = &i
		}
	}
	c.Off = w.offStops(c.Over)
	return c
}

// distanceFrom is how far from the working stop a reading is, stops; no light is farther than any.
func distanceFrom(over *float64) float64 {
	if over == nil {
		return math.Inf(1)
	}
	return math.Abs(*over)
}

// offStops are the stretches that have left the working stop. What is not judged ends one, and so does a change from over
// to under.
func (w *Walk) offStops(over []*float64) (all []OffStop) {
	open := false
	for i, v := range over {
		if w.Points[i].In != "" || distanceFrom(v) <= LeaveStops {
			open = false
			continue
		}
		along := w.Points[i].Along
		if open && isOver(v) == isOver(all[len(all)-1].Over) {
			last := &all[len(all)-1]
			last.To = along
			if distanceFrom(v) > distanceFrom(last.Over) {
				last.Over = v
			}
			continue
		}
		all, open = append(all, OffStop{From: along, To: along, Over: v}), true
	}
	return all
}

func isOver(v *float64) bool { return v != nil && *v > 0 }

// judged is the reading of a place by which a course is judged.
func (w *Walk) judged(course, point int) *Reading {
	p := &w.Points[point]
	if w.Courses[course].Camera == "" {
		return p.Key()
	}
	return &p.Domes[course]
}

// uncomputedOf are the keys that could change a course and that nothing computes yet.
func (w *Walk) uncomputedOf(course int) []plan.Uncomputed {
	var keys []plan.Uncomputed
	for _, r := range w.Judged(course) {
		keys = append(keys, r.Uncomputed...)
	}
	return plan.Unique(keys)
}

// Judged are the readings that a course is judged by, place by place.
func (w *Walk) Judged(course int) (all []*Reading) {
	for i := range w.Points {
		all = append(all, w.judged(course, i))
	}
	return all
}

// Uncomputed are the keys that could change a figure of the walk and that nothing computes yet.
func (w *Walk) Uncomputed() []plan.Uncomputed {
	var keys []plan.Uncomputed
	for i := range w.Points {
		keys = append(append(keys, w.Points[i].Left.Uncomputed...), w.Points[i].Right.Uncomputed...)
	}
	for i := range w.Courses {
		keys = append(keys, w.uncomputedOf(i)...)
	}
	return plan.Unique(keys)
}

// Farthest is the course that is farthest from its working stop anywhere, and the place where; ok is false where no place is
// judged.
func (w *Walk) Farthest() (course, point int, ok bool) {
	for i := range w.Courses {
		c := &w.Courses[i]
		if c.Worst != nil && (!ok || distanceFrom(c.Over[*c.Worst]) > distanceFrom(w.Courses[course].Over[point])) {
			course, point, ok = i, *c.Worst, true
		}
	}
	return course, point, ok
}
