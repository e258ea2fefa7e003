// Package frame says what cameras see of the equipment: which lights, stands, flags and other cameras show in a picture past the
// set, where and how much of it, and what takes them out of it. Light leaves a thing to the lens in straight lines; what is
// seen in a mirror is not looked for.
package frame

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// Sight is one piece of equipment as one camera sees it, of what is not meant to be seen of it.
type Sight struct {
	Camera  string
	Kind    Kind
	Name    string
	Path    string // "lights.fill"
	Span    source.Span
	Parts   []Part  // that show in the frame, or where none does come nearest to it
	Share   float64 // share of the frame that it takes
	Where   string  // there: "at the left edge"; "" where it is nowhere near
	Outside float64 // share of the frame's width by which it misses the frame; 0 where it shows; infinite behind the lens, and far off
	Hidden  bool    // it lies in the frame, and the set hides it
	Move    *Move   // that takes it out of the frame and the margin; nil where it is out, or none does
	Pan     *Pan    // likewise
	Meant   bool    // something of it is meant to be seen,
	Shown   float64 // and that takes such a share of the frame
	ShownAt string  // there: "on the right"
}

// Shows says whether something shows that should not.
func (s *Sight) Shows() bool { return s.Outside == 0 }

// Near says whether nothing shows, and something lies in the margin about the frame.
func (s *Sight) Near(c *plan.Camera) bool { return s.Outside > 0 && s.Outside <= c.Room }

// Judge looks through each camera of a set-up at each light, piece of grip and other camera, in the order of the scene.
func Judge(s *plan.Setup) (all []Sight) {
	v := newViewing(s)
	things := v.things()
	for i := range s.Cameras {
		c := &s.Cameras[i]
		for k := range things {
			if t := &things[k]; t.kind != Camera || t.name != c.Name {
				all = append(all, v.judge(t, c))
			}
		}
	}
	return all
}

// Lamps looks through each camera of a set-up at each light that is meant to be in its picture: how much of it is Shown, and where.
func Lamps(s *plan.Setup) (all []Sight) {
	v := newViewing(s)
	things := v.things()
	for i := range s.Cameras {
		c := &s.Cameras[i]
		for k := range things {
			t := &things[k]
			if t.kind != Light || !t.seen.For(c.Name) {
				continue
			}
			one := Sight{Camera: c.Name, Kind: t.kind, Name: t.name, Path: t.path, Span: t.span, Outside: math.Inf(1), Meant: true}
			if p := pictureOf(c); p.mayShow(t.middle, t.radius) {
				v.meant(t, c, p, &one)
			}
			if one.Shown > 0 {
				all = append(all, one)
			}
		}
	}
	return all
}

// meant looks at what of a thing is meant to be in a picture.
func (v *viewing) meant(t *thing, c *plan.Camera, p picture, s *Sight) {
	at := spreadOf(v.seenOf(t.meantPieces(c.Name), p.At), p)
	s.Shown, s.ShownAt = at.share(), at.where()
}

// judge looks at one thing through one camera.
func (v *viewing) judge(t *thing, c *plan.Camera) Sight {
	s := Sight{Camera: c.Name, Kind: t.kind, Name: t.name, Path: t.path, Span: t.span, Outside: math.Inf(1), Meant: t.seen.For(c.Name)}
	p := pictureOf(c)
	if !p.grown(max(farthest, c.Room)).mayShow(t.middle, t.radius) {
		return s
	}
	if s.Meant {
		v.meant(t, c, p, &s)
	}
	pieces := t.unmeant(c.Name, t.pieces)
	if len(pieces) == 0 {
		return s
	}
	seen := v.seenOf(pieces, p.At)
	if showsOf(seen, p) {
		s.Outside = 0
		at := spreadOf(seen, p)
		s.Share, s.Where, s.Parts = at.share(), at.where(), at.shown()
	} else {
		s.Outside, s.Hidden = outside(seen, p), inFrame(pieces, p)
		s.nearest(seen, p)
	}
	if s.Shows() || s.Near(c) {
		v.mend(&s, t, c, seen)
	}
	return s
}

// justPast is how much wider than to what comes nearest a picture is that shows what that is, as a share of its width.
const justPast = 0.005

// nearest finds what of a thing comes nearest to a picture, and to which edge of it.
func (s *Sight) nearest(seen []seenPart, p picture) {
	if !math.IsInf(s.Outside, 1) {
		at := spreadOf(seen, p.grown(s.Outside+justPast))
		s.Where, s.Parts = at.where(), at.shown()
	}
}

// mend finds what takes a thing out of a picture and the margin about it.
func (v *viewing) mend(s *Sight, t *thing, c *plan.Camera, seen []seenPart) {
	wide := pictureOf(c).grown(c.Room)
	s.Move, s.Pan = v.leastMove(t, c.Name, wide), leastPan(c, seen, wide)
}
