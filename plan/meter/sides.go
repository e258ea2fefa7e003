package meter

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/term"
)

// View is how a camera sees the two sides of a face.
type View struct {
	Camera    string  // "A", or "A.end" at the end of its track
	Key       Side    // of its picture that the key side of the face is on
	From      Lean    // which side of the face it looks from
	Outside   bool    // the face lies outside of its frame: it shows neither the eyes nor what is behind the head
	White     float64 // the camera's, K
	KeyShift  *Shift  // of the key side's colour from the camera's white; nil where that has no temperature
	FillShift *Shift  // and of the fill side's

	Behind      []Behind     // the head, to its left and right in the picture; nil until a study looks
	Catchlights []Catchlight // in the eyes, as it sees them; nil until a study looks for them
}

// Behind is what a camera sees beside a head.
type Behind struct {
	Picture   Side     // the side of the head that it shows on: PictureLeft or PictureRight
	Surface   string   // its name; "" where nothing stands behind
	Luminance float64  // of that, cd/m²
	Over      *float64 // stops from grey, by the camera's exposure; nil where it is dark
	Cheek     *float64 // stops from what a grey card at the cheek on that side reads; nil too where the head is in profile
}

// Side says where in a picture the key side of a face is.
type Side string

// The sides of a picture; a face in profile turns its side to the camera, or away.
const (
	PictureLeft  Side = "camera left"
	PictureRight Side = "camera right"
	TurnedTo     Side = "turned to"
	TurnedAway   Side = "turned away from"
)

// Other is where the other side of the face is then.
func (s Side) Other() Side {
	switch s {
	case PictureLeft:
		return PictureRight
	case PictureRight:
		return PictureLeft
	case TurnedTo:
		return TurnedAway
	case TurnedAway:
		return TurnedTo
	}
	return s
}

// Lean says from which side a camera looks at a face.
type Lean string

// The sides that a camera looks from. From before the nose and from behind the head it sees both alike.
const (
	FromLit    Lean = "lit"
	FromShadow Lean = "shadow"
	FromFront  Lean = "front"
	FromBehind Lean = "behind"
)

// Other is the side that a camera looks from where the other side of the face is the key side.
func (l Lean) Other() Lean {
	switch l {
	case FromLit:
		return FromShadow
	case FromShadow:
		return FromLit
	}
	return l
}

// What counts as straight, degrees: a camera that looks along the nose, and a cheek that is turned to the camera.
const (
	alongNose = 5
	profile   = 10
)

// Shift is how a light lies from a camera's white.
type Shift struct {
	Mired float64 // plus is warmer
	Duv   float64 // from the white's own; plus is green
	Green string  // the gel of the catalogue that is as green or as magenta: "1/4 plus green"; "" where none is so near
}

// viewsOf are how the cameras of a set-up before whose lens a face lies see the two sides of it.
func viewsOf(s *plan.Setup, person, side string, key, fill *Reading) (views []View) {
	p := s.Post(person)
	if p == nil {
		return nil
	}
	posts := s.CameraPosts()
	for k := range posts {
		c := &posts[k]
		if r3.Dot(r3.Sub(p.Face.At, c.Frame.At), c.Frame.Axis) <= 0 {
			continue
		}
		v := View{Camera: c.Name, Outside: !shot.Frames(c, p), White: c.Exposure.White.OnPlanck().Kelvin}
		v.Key, v.From = seenFrom(&p.Face, side, &c.Frame)
		v.KeyShift, v.FillShift = shiftOf(key, &c.Exposure, s.Kit), shiftOf(fill, &c.Exposure, s.Kit)
		views = append(views, v)
	}
	return views
}

// seenFrom says where a camera sees the own left or right side of a face, and which side it looks from.
func seenFrom(face *plan.Frame, side string, camera *plan.Frame) (Side, Lean) {
	way := r3.Unit(r3.Sub(camera.At, face.At))
	cheek := face.Right
	if side == "left" {
		cheek = r3.Scale(-1, cheek)
	}
	picture := PictureRight
	if r3.Dot(cheek, camera.Right) < 0 {
		picture = PictureLeft
	}
	sin, _ := plane.Sincos(profile)
	if toward := r3.Dot(cheek, way); math.Abs(r3.Dot(cheek, camera.Right)) < sin {
		picture = TurnedAway
		if toward > 0 {
			picture = TurnedTo
		}
	}
	return picture, leanOf(r3.Dot(way, cheek), r3.Dot(way, face.Axis))
}

// leanOf says from which side a camera looks by how far it lies toward the key cheek, and ahead.
func leanOf(toward, ahead float64) Lean {
	angle := math.Atan2(toward, ahead) * 180 / math.Pi
	switch off := math.Abs(angle); {
	case off < alongNose:
		return FromFront
	case off > 180-alongNose:
		return FromBehind
	case angle > 0:
		return FromLit
	}
	return FromShadow
}

// shiftOf is how a reading's colour lies from a camera's white; nil where that means nothing.
func shiftOf(r *Reading, x *plan.Exposure, catalogue *kit.Catalogue) *Shift {
	white := x.White.OnPlanck()
	if r.CCT == nil || r.Duv == nil || !(white.Kelvin > 0) {
		return nil
	}
	s := &Shift{Mired: 1e6 / *r.CCT - 1e6/white.Kelvin, Duv: *r.Duv - white.Duv}
	s.Green = nearestGreen(s.Duv, catalogue)
	return s
}

// nearestGreen is the plus or minus green of a catalogue whose shift is nearest; "" where none is nearer than no gel.
func nearestGreen(duv float64, catalogue *kit.Catalogue) (name string) {
	if catalogue == nil {
		return ""
	}
	least := math.Abs(duv)
	for _, g := range catalogue.Gels {
		if g.Kind != term.PlusGreen && g.Kind != term.MinusGreen {
			continue
		}
		if off := math.Abs(duv - g.Duv); off < least {
			name, least = g.Name, off
		}
	}
	return name
}

// inWords words the view of a camera: "own left is camera right for A, which looks from the shadow side".
func (v *View) inWords(own string, equal bool) string {
	words := own + " is " + string(v.Key) + " for " + plan.CameraWords(v.Camera)
	if v.Key == TurnedTo || v.Key == TurnedAway {
		words = own + " is " + string(v.Key) + " " + plan.CameraWords(v.Camera)
	}
	switch {
	case v.From == FromFront:
		return words + ", which looks straight at the nose"
	case v.From == FromBehind:
		return words + ", which looks from behind"
	case equal:
		return words
	}
	return words + ", which looks from the " + string(v.From) + " side"
}

// words words a shift: "36 mired warmer, as through 1/8 plus green".
func (s *Shift) words() string {
	switch {
	case s == nil:
		return "of no colour temperature"
	case s.Green == "":
		return s.miredInWords()
	}
	return s.miredInWords() + ", as through " + s.Green
}

func (s *Shift) miredInWords() string {
	switch m := math.Round(s.Mired); {
	case m > 0:
		return fmt.Sprintf("%.0f mired warmer", m)
	case m < 0:
		return fmt.Sprintf("%.0f mired cooler", -m)
	}
	return "the same"
}
