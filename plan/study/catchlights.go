package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// The front of an eye, m: the radius of the cornea, which mirrors (as in A. Gullstrand's simplified schematic eye), and half
// the width of the iris that is seen through it (11.7 mm across in the mean of adults; from memory of ophthalmic tables).
const (
	corneaRadius = 7.8e-3
	irisRadius   = 5.85e-3
)

// middleOfPupil is how far, of the iris's radius, an image may lie off its middle and have no hour.
const middleOfPupil = 0.1

// eyes look for lamps that show in eyes.
type eyes struct {
	setup  *plan.Setup
	bvh    *solid.BVH
	levels light.Levels
}

// look finds for every camera that sees them which lamps show in the eyes of the people whose sides are metered; a camera that
// does not see a face has no view of it. Eyes look where the nose points. A lamp shows where its middle is seen from the eyes
// and its image lies over the iris; lit cloth and walls are not looked at.
func (s eyes) look(readings *meter.Set) {
	for i := range readings.Faces {
		f := &readings.Faces[i]
		if p := s.setup.Post(f.Person); p != nil {
			f.Views = s.inEyes(p, f.Views)
		}
	}
}

// inEyes are the views of the cameras that see somebody's eyes, with the lamps that show in these.
func (s eyes) inEyes(p *plan.Person, views []meter.View) (seen []meter.View) {
	for _, v := range views {
		if c := s.setup.CameraPost(v.Camera); c != nil && s.sees(c.Frame.At, p) {
			v.Catchlights = s.seenInEyes(p, c)
			seen = append(seen, v)
		}
	}
	return seen
}

// sees says whether nothing opaque stands between a place and somebody's eyes.
func (s eyes) sees(from r3.Vec, p *plan.Person) bool {
	_, blocked := s.bvh.Segment(from, p.Face.At, p.Own, nil)
	return !blocked
}

// seenInEyes are the lamps that a camera sees in somebody's eyes, in the order of the scene; not nil where it sees none.
func (s eyes) seenInEyes(p *plan.Person, c *plan.Camera) []meter.Catchlight {
	all := []meter.Catchlight{}
	for i := range s.setup.Lights {
		l := &s.setup.Lights[i]
		if !(s.levels[l.Name].Y() > 0) || !shinesOn(l, p.Face.At) || hidByDoors(l, p.Face.At) {
			continue
		}
		hour, ok := clockOf(&p.Face, c.Frame.At, l.Frame.At)
		if !ok || !s.sees(l.Frame.At, p) {
			continue
		}
		all = append(all, meter.Catchlight{Light: l.Name, Numbered: l.Numbered(), Hour: hour,
			Size: imageSize(l.Head.Source.Opening, r3.Norm(r3.Sub(l.Frame.At, p.Face.At)))})
	}
	return all
}

// shinesOn says whether a lamp sends any light toward a place.
func shinesOn(l *plan.Light, at r3.Vec) bool {
	way := r3.Sub(at, l.Frame.At)
	if r3.Norm(way) == 0 || l.Head.Source.Distribution == nil {
		return false
	}
	return l.Head.Source.Intensity(l.Frame.Local(r3.Unit(way))) > 0
}

// hidByDoors says whether a leaf of the barn doors of a lamp hides its middle from a place.
func hidByDoors(l *plan.Light, from r3.Vec) bool {
	leaves := solid.Set{}
	for _, corners := range l.Leaves() {
		leaves.Sheets = append(leaves.Sheets, solid.Sheet{Name: "leaf", Corners: corners})
	}
	return len(leaves.Sheets) > 0 && solid.NewBVH(&leaves).Blocked(from, l.Frame.At, nil)
}

// imageSize is how wide the image of an opening is in the cornea, by the width of the iris: a mirror of that radius makes an
// image at half of it, as wide as the opening is seen from there.
func imageSize(o photometry.Opening, distance float64) float64 {
	if !(distance > 0) {
		return 0
	}
	return o.Largest() / distance * (corneaRadius / 2) / (2 * irisRadius)
}

// clockOf is where a camera sees the image of a lamp about the pupil, as the hour of a clock; ok is false where it does not
// lie over the iris.
func clockOf(face *plan.Frame, camera, lamp r3.Vec) (hour int, ok bool) {
	toCamera, toLamp := r3.Sub(camera, face.At), r3.Sub(lamp, face.At)
	if r3.Norm(toCamera) == 0 || r3.Norm(toLamp) == 0 {
		return 0, false
	}
	toCamera, toLamp = r3.Unit(toCamera), r3.Unit(toLamp)
	mirror := r3.Add(toCamera, toLamp)
	if r3.Norm(mirror) < 1e-9 {
		return 0, false
	}
	mirror = r3.Unit(mirror) // which way the cornea faces where it sends the lamp's light to the camera
	if r3.Norm(r3.Cross(mirror, face.Axis)) > irisRadius/corneaRadius || r3.Dot(mirror, face.Axis) <= 0 {
		return 0, false
	}
	picture := plan.FrameAlong(camera, r3.Scale(-1, toCamera), 0, 0)
	off := r3.Scale(corneaRadius/irisRadius, r3.Sub(mirror, face.Axis))
	x, y := r3.Dot(off, picture.Right), r3.Dot(off, picture.Up())
	if math.Hypot(x, y) < middleOfPupil {
		return 0, true
	}
	const hours = 12
	hour = int(math.Round(math.Atan2(x, y)*hours/(2*math.Pi))+hours) % hours
	if hour == 0 {
		hour = hours
	}
	return hour, true
}
