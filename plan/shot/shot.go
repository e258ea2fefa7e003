// Package shot says what a camera makes of its subject: how wide the frame is there, what such a shot is called, and what is
// sharp.
package shot

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/lens"
)

// Shot is what a camera sees, by its lens and its working stop.
type Shot struct {
	Camera     string     // "A", or "A.end" at the end of its track
	Lens       string     // "40 mm, 2× squeeze"
	Angles     [3]float64 // of view, degrees: across, up, from corner to corner
	Number     float64    // the T-number that it works at
	Confusion  float64    // diameter of the circle that counts as a point, mm
	Hyperfocal float64    // m; 0 where the stop or the circle is not known
	Subject    *Subject   // nil: nobody is in frame
}

// Subject is someone whom a camera is focused on.
type Subject struct {
	Name          string
	Distance      float64 // of the plane through the face that is square to the axis, from the lens, m
	Width, Height float64 // of the frame in that plane, m
	Size          Size
	Head, Body    float64 // shares of the frame's height that they take; over 1: more than it
	Near, Far     float64 // what is sharp, m from the lens along its axis; Far is 0 where all beyond is, both where it is not known
}

// Of says what a set-up's cameras see, in their order, and after one that moves what it sees at the end of its track; one without a
// lens sees nothing.
func Of(s *plan.Setup) (all []Shot) {
	posts := s.CameraPosts()
	for i := range posts {
		if c := &posts[i]; c.Lens > 0 {
			all = append(all, By(s, c))
		}
	}
	return all
}

// By is what a camera sees of a set-up where it stands.
func By(s *plan.Setup, c *plan.Camera) Shot {
	width, height := seen(c)
	shot := Shot{Camera: c.Name, Lens: c.LensWords(), Number: c.Exposure.Stop.N, Confusion: c.Confusion,
		Angles: [3]float64{c.HAOV, c.VAOV, lens.AngleOfView(math.Hypot(width, height), c.Lens)}}
	focus := lens.Focus{Focal: c.Lens, Number: shot.Number, Confusion: shot.Confusion}
	known := focus.Number > 0 && focus.Confusion > 0
	if known {
		shot.Hyperfocal = focus.Hyperfocal()
	}
	p := SubjectOf(s, c)
	if p == nil {
		return shot
	}
	distance, _ := inFrame(c, p.Face.At)
	shot.Subject = &Subject{Name: p.Name, Distance: distance, Width: distance * width / c.Lens, Height: distance * height / c.Lens}
	shot.Subject.measure(p)
	if known {
		near, far, _ := focus.Sharp(distance)
		if math.IsInf(far, 1) {
			far = 0
		}
		shot.Subject.Near, shot.Subject.Far = near, far
	}
	return shot
}

// seen is how wide and how high the frame is in the gate, unsqueezed, mm.
func seen(c *plan.Camera) (width, height float64) { return max(c.Squeeze, 1) * c.Gate[0], c.Gate[1] }

// SubjectOf is whom a camera is focused on: whom it looks at, else who is nearest in its frame of those that it should see. nil: nobody.
func SubjectOf(s *plan.Setup, c *plan.Camera) (who *plan.Person) {
	distance := 0.0
	for i := range s.People {
		p := &s.People[i]
		ahead, in := inFrame(c, p.Face.At)
		if !in || !p.SeenBy(c.Name) {
			continue
		}
		if p.Name == c.Looks {
			return p
		}
		if who == nil || ahead < distance {
			who, distance = p, ahead
		}
	}
	return who
}

// Frames says whether a camera has the face of somebody in its frame.
func Frames(c *plan.Camera, p *plan.Person) bool {
	_, in := inFrame(c, p.Face.At)
	return in
}

// inFrame says how far ahead of a lens a point is, and whether it is in the frame.
func inFrame(c *plan.Camera, p r3.Vec) (ahead float64, in bool) {
	way := r3.Sub(p, c.Frame.At)
	ahead = r3.Dot(way, c.Frame.Axis)
	width, height := seen(c)
	within := func(aside r3.Vec, size float64) bool {
		return math.Abs(r3.Dot(way, aside)) <= ahead*lens.HalfTangent(size, c.Lens)
	}
	return ahead, ahead > 0 && within(c.Frame.Right, width) && within(c.Frame.Up(), height)
}
