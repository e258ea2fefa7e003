// Package frame says what cameras see of the equipment: which lights, stands, flags, rails and other cameras, and which people that
// should not be seen, show in a picture past the set, where and how much of it, and what takes them out of it. Of a camera that moves it
// says the worst of its track. It says which show in mirrors and
// panes, too, and whose light falls onto a lens.
package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/source"
)

// Sight is one thing as one camera sees it, of what is not meant to be seen of it. Of a camera that moves it is from where most
// of it shows, or where it comes nearest to the frame.
type Sight struct {
	Camera  string
	Kind    Kind
	Name    string
	Mark    string // at which somebody shows, "ruth.sit"; "" where they are
	Path    string // "lights.fill"
	Span    source.Span
	Parts   []body.Part // that show in the frame, or where none does come nearest to it
	Share   float64     // share of the frame that it takes
	Where   string      // there: "at the left edge"; "" where it is nowhere near
	Outside float64     // share of the frame's width by which it misses the frame; 0 where it shows; infinite behind the lens, and far off
	Degrees float64     // by which a pan or a tilt would have to go wrong to show it; 0 where it shows, or is nowhere near
	Hidden  bool        // it lies in the frame, and the set hides it
	Move    *Move       // that takes it out of the frame and the margin; nil where it is out, or none does
	Pan     *Pan        // likewise
	Meant   bool        // something of it is meant to be seen,
	Shown   float64     // and that takes such a share of the frame
	ShownAt string      // there: "on the right"
	Track   *Stretch
}

// Stretch is where on a track a camera sees a thing, m from the start. Between From and To it may be out of the frame, too.
type Stretch struct {
	Worst    float64 // that the sight is from
	From, To float64 // of the places that it shows from; equal to Worst where it shows nowhere
}

// Way is which way something is moved, as the camera sees it.
type Way string

// The ways.
const (
	Left  Way = "left"
	Right Way = "right"
	Back  Way = "back" // out of the picture, toward the camera
	Up    Way = "up"
)

// Move is the least move of a thing after which the camera sees nothing of it.
type Move struct {
	Way   Way
	By    r3.Vec  // in space, m, as far as Metres says
	Least float64 // m
	// Metres is that, rounded up to what a tape shows in the units of the file: nothing shows after it either.
	Metres float64
	Brings []string // cameras that would see the thing there and do not where it is
}

// Clean says whether a move brings a thing into no other picture.
func (m *Move) Clean() bool { return len(m.Brings) == 0 }

// better is the one of two moves that is made: one that brings the thing into no other picture, else the least. The first may be nil.
func better(a, b *Move) *Move {
	if a == nil || b.Clean() && !a.Clean() || b.Clean() == a.Clean() && b.Least < a.Least {
		return b
	}
	return a
}

// Pan is the least pan of a camera after which it does not see a thing, of those that bring in nothing else and keep the subject; where
// there is none, the least of the others. A camera that moves is panned all along its track.
type Pan struct {
	Least   float64   // degrees, either way
	Degrees float64   // that, rounded up to half a degree, to the right; negative to the left
	Brings  []Brought // what it would bring into the frame, or into the margin, that is not there
	Loses   string    // whom it would lose that the camera is focused on; "" nobody
}

// Brought is a thing that a pan would bring in.
type Brought struct {
	Kind Kind
	Name string
}

// Clean says whether a pan brings nothing in and loses nobody.
func (p *Pan) Clean() bool { return len(p.Brings) == 0 && p.Loses == "" }

// Shows says whether something shows that should not.
func (s *Sight) Shows() bool { return s.Outside == 0 }

// Near says whether nothing shows, and something lies in the margin about the frame.
func (s *Sight) Near(c *plan.Camera) bool { return s.Outside > 0 && s.Outside <= c.Room }

// rank orders sights by how bad they are: by the share that shows, else by how near the frame a thing comes, below nought.
func (s *Sight) rank() float64 {
	if s.Shows() {
		return max(s.Share, leastShare)
	}
	return -s.Outside
}

// justPast is how much wider than to what comes nearest a picture is that shows what that is, as a share of its width.
const justPast = 0.005

// nearest finds what of a thing comes nearest to a picture, and to which edge of it.
func (s *Sight) nearest(seen []seenPart, p picture) {
	if !math.IsInf(s.Outside, 1) {
		at := spreadOf(seen, p.grown(s.Outside+justPast))
		s.Where, s.Parts = at.where(), at.shown()
		s.Degrees = p.degreesOutside(s.Outside, at.aside())
	}
}

// degreesOutside is the angle past the edge of a picture that a share of its width comes to: past the left or right one, or past the
// top or bottom one.
func (p picture) degreesOutside(share float64, aside bool) float64 {
	half := p.high
	if aside {
		half = p.wide
	}
	return (math.Atan(half+2*share*p.wide) - math.Atan(half)) * 180 / math.Pi
}
