// Package match says how a face looks in one set-up beside another: what differs more than a cut would hide, and the cheapest change of the lights
// that brings it back. Of a set-up it keeps figures and what each light gives to the two sides of a face; its set and its maps may be let go.
package match

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/shot"
)

// Row is one thing that is matched.
type Row uint8

// The rows, in the order in which they are read.
const (
	Key         Row = iota // the key side, stops from the camera's working stop
	Fill                   // the fill side, likewise
	Contrast               // key side over fill side, stops
	BehindLeft             // what stands behind the head to its left in the picture, stops from grey
	BehindRight            // and to its right
	KeyColour              // of the key side from the camera's white, mired: plus is warmer
	FillColour             // of the fill side
	Steadiness             // how much the light changes about the face, stops
	Rows                   // how many there are
)

// How far two set-ups may lie apart and still be cut together: a third of a stop, as a grade evens out without being seen, which is common
// practice; and as much colour as passes for the same.
const (
	PassStops = 1.0 / 3
	PassMired = colour.PassMired
)

// InMired says whether a row is of colours, in mired, and not in stops.
func (r Row) InMired() bool { return r == KeyColour || r == FillColour }

// pass is how far a row may lie apart, stops or mired.
func (r Row) pass() float64 {
	if r.InMired() {
		return PassMired
	}
	return PassStops
}

// Lit is a set-up with its light, as far as it is read.
type Lit struct {
	Setup    *plan.Setup
	Basis    *light.Basis
	Levels   light.Levels
	Readings *meter.Set

	AroundBasis *light.Basis // of what is metered around faces; nil where nobody looked
	Around      []meter.Around
}

// place is one place at which the light of a face is known by the lights that it comes from.
type place uint8

// The places: the two sides of the face, what a camera sees on either side of the head, and the places about the face.
const (
	atKey place = iota
	atFill
	atLeft
	atRight
	atNear
	places = atNear + meter.NearPlaces
)

// lit is the light at the places, AP1: lx by its Y, behind the head cd/m².
type lit [places]colour.RGB

// place is where the light is read that a row is of; places where that is more than one.
func (r Row) place() place {
	switch r {
	case Key, KeyColour:
		return atKey
	case Fill, FillColour:
		return atFill
	case BehindLeft:
		return atLeft
	case BehindRight:
		return atRight
	}
	return places
}

// Look is how one face looks in one set-up to one camera.
type Look struct {
	Setup, Person string
	Camera        string         // "" where none sees it
	Picture       float64        // the ratio of the width of its picture to the height; 0 without a camera
	Shot          *shot.Subject  // how it is framed, where the camera is focused on it
	Side          meter.Side     // of the picture that the key side is on; "" where no camera sees it
	From          meter.Lean     // which side of the face the camera looks from
	Own           string         // side of the person's that the key side is: "left" or "right"
	Feet          bool           // its scene has lengths in feet
	Back          bool           // the camera sees the face from behind: left and right of its picture are the other way round
	Figures       [Rows]*float64 // stops or mired; nil where nothing is known
	Struck        [Rows]bool     // a key that is not computed yet could change it

	white float64 // that colours are seen from, mired
	at    lit
	lamps []lamp
	gives []given // all lights
}

// Looks are those of the faces of a set-up that have light, by the people in their order, where they are and at their marks, and the cameras that
// see them. Without any camera it is their light alone.
func (s *Lit) Looks() (all []Look) {
	for i := range s.Readings.Faces {
		f := &s.Readings.Faces[i]
		if len(s.Setup.Cameras) == 0 {
			all = append(all, s.look(f, nil))
		}
		for k := range f.Views {
			all = append(all, s.look(f, &f.Views[k]))
		}
	}
	return all
}

// look is how a face looks in a view; nil: to nobody.
func (s *Lit) look(f *meter.Face, v *meter.View) Look {
	key, fill := s.Readings.Named(f.Person+".key"), s.Readings.Named(f.Person+".fill")
	l := Look{Setup: s.Setup.Name, Person: f.Person, Own: f.Side, Feet: s.Setup.Feet}
	x := s.Setup.Exposure
	if v != nil {
		l.Camera, l.Side, l.From, l.Back = v.Camera, v.Key, v.From, s.fromBehind(f.Person, v.Camera)
		if c := s.Setup.CameraNamed(plan.CameraOf(v.Camera)); c != nil {
			x = c.Exposure
			l.Picture = math.Tan(c.HAOV*math.Pi/360) / math.Tan(c.VAOV*math.Pi/360)
		}
		l.Shot = s.framed(f.Person, v.Camera)
		l.pastHead(v)
	}
	l.white = colour.Mired(x.White.OnPlanck().Kelvin)
	read := s.receptorsOf(&l, key, fill)
	for i := range read {
		l.at[i] = read[i].light(s.Levels)
	}
	l.lampsAt(s, read)
	over := func(p place) *float64 { return meter.FiniteOrNil(x.Metered().Over(l.at[p].Y(), x.Stop.N)) }
	l.Figures[Key], l.Figures[Fill], l.Figures[Steadiness] = over(atKey), over(atFill), f.Steadiness
	l.fillIn()
	l.strike(key, fill)
	return l
}

// strike marks the figures that a key could change which is not computed yet.
func (l *Look) strike(key, fill *meter.Reading) {
	stops, lit := key.StopsStruck(), key.Struck() || fill.Struck()
	l.Struck = [Rows]bool{Key: stops, Fill: fill.StopsStruck(), Contrast: lit, BehindLeft: lit || stops, BehindRight: lit || stops,
		KeyColour: key.Struck(), FillColour: fill.Struck(), Steadiness: lit}
}

// fromBehind says whether a camera sees a face from behind.
func (s *Lit) fromBehind(person, camera string) bool {
	p, posts := s.Setup.Post(person), s.Setup.CameraPosts()
	for i := range posts {
		if c := &posts[i]; p != nil && c.Name == camera {
			return r3.Dot(r3.Sub(c.Frame.At, p.Face.At), p.Face.Axis) < 0
		}
	}
	return false
}

// receptor is one of a basis; of none there is no light.
type receptor struct {
	of *light.Basis
	i  int
}

// light is what is read there.
func (r receptor) light(d light.Levels) colour.RGB {
	if r.of == nil {
		return colour.RGB{}
	}
	sum, _ := r.of.Point(r.i, d)
	return sum
}

// receptorsOf are the receptors of the places of a look.
func (s *Lit) receptorsOf(l *Look, key, fill *meter.Reading) (all [places]receptor) {
	all[atKey], all[atFill] = receptor{s.Basis, key.Receptor}, receptor{s.Basis, fill.Receptor}
	for i := range s.Around {
		a := &s.Around[i]
		if a.Person != l.Person || a.Camera != l.Camera {
			continue
		}
		all[atLeft], all[atRight] = receptor{s.AroundBasis, a.Left}, receptor{s.AroundBasis, a.Right}
		for k, n := range a.Near {
			all[int(atNear)+k] = receptor{s.AroundBasis, n}
		}
	}
	return all
}

// pastHead writes what stands behind the head.
func (l *Look) pastHead(v *meter.View) {
	for _, b := range v.Behind {
		at := BehindLeft
		if b.Picture == meter.PictureRight {
			at = BehindRight
		}
		l.Figures[at] = b.Over
	}
}

// framed is how a camera frames a face, where it is focused on it.
func (s *Lit) framed(person, camera string) *shot.Subject {
	for i := range s.Readings.Cameras {
		if c := &s.Readings.Cameras[i]; c.Camera == camera && c.Subject != nil && c.Subject.Name == person {
			return c.Subject
		}
	}
	return nil
}

// fillIn writes the figures that follow from the light on both sides, but for their stops from the working stop.
func (l *Look) fillIn() {
	key, fill := l.at[atKey], l.at[atFill]
	l.Figures[Contrast] = meter.FiniteOrNil(lens.Stops(key.Y() / fill.Y()))
	l.Figures[KeyColour], l.Figures[FillColour] = l.mired(key), l.mired(fill)
}

// mired is how a light lies from the camera's white; nil where it has no temperature.
func (l *Look) mired(c colour.RGB) *float64 {
	if !(c.Y() > 0) || math.IsInf(l.white, 0) {
		return nil
	}
	w := colour.WhiteOf(colour.XY(c))
	if !(math.Abs(w.Duv) <= colour.MaxDuv) {
		return nil
	}
	return meter.FiniteOrNil(colour.Mired(w.Kelvin) - l.white)
}

// Differs is how far a row of a look lies from that of the one it is to match, stops or mired; nil where one of them is not known.
func (l *Look) Differs(from *Look, r Row) *float64 {
	a, b := l.Figures[r], from.Figures[r]
	if a == nil || b == nil {
		return nil
	}
	d := *a - *b
	return &d
}

// Off says whether a row lies too far from that of the look that it is to match for both to be cut together. Of a figure that a key could change which
// is not computed yet nothing is said, nor of what stands behind a head beside what stands before it, where one camera sees the face from behind.
func (l *Look) Off(from *Look, r Row) bool {
	d := l.Differs(from, r)
	if (r == BehindLeft || r == BehindRight) && l.Back != from.Back {
		return false // it is another wall
	}
	return d != nil && !l.Struck[r] && !from.Struck[r] && math.Abs(*d) > r.pass()
}

// Turned says whether the key side is on another side of the picture than in the look that it is to match.
// Where one of them has the face in profile, the other has it turned if its camera looks from the other side of the face, lit or in shadow: of one that looks
// along the nose or from behind nothing is said. Where one camera sees the face from behind, left and right of its picture are the other way round: then
// it is the person's own side that counts.
func (l *Look) Turned(from *Look) bool {
	if l.Back != from.Back {
		return l.Own != from.Own
	}
	if l.Side == "" || from.Side == "" || l.inProfile() == from.inProfile() {
		return l.Side != from.Side && l.Side != "" && from.Side != ""
	}
	sides := func(a, b meter.Lean) bool { return a == meter.FromLit && b == meter.FromShadow }
	return sides(l.From, from.From) || sides(from.From, l.From)
}

// inProfile says whether the camera has the face in profile.
func (l *Look) inProfile() bool { return l.Side == meter.TurnedTo || l.Side == meter.TurnedAway }
