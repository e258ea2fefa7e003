package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light"
	"scrimshaw/plan/term"
)

// Beam is the light of one lamp in plan, cut by what it meets.
type Beam struct {
	Light string
	Half  light.Wedge // to half the peak
	Tenth light.Wedge // to a tenth of it
}

// View is what a camera sees in plan, cut by what it meets.
type View struct {
	Camera  string
	Outline []r2.Vec // m
}

// outside is how far a ray that leaves the set is drawn beyond everything that stands, m.
const outside = 3.0

// trace finds the beams and views, and the bounces.
func (s *Study) trace() {
	for _, e := range light.Emitters(s.Setup) {
		limits := s.limits(s.outdoors(e.Name))
		limits.Reach = math.Hypot(limits.Reach-outside, max(e.Frame.At.Z-limits.Floor, 0)) + outside
		s.Beams = append(s.Beams, Beam{Light: e.Name,
			Half: s.World.Wedge(&e, 0.5, limits), Tenth: s.World.Wedge(&e, 0.1, limits)})
		if s.throwsImage(e.Name) {
			s.Rims = append(s.Rims, s.World.Rims(&e, 0.5, limits)...)
		}
	}
	s.findBounces()
	posts := s.Setup.CameraPosts()
	for i := range posts {
		c := &posts[i]
		s.Views = append(s.Views, View{Camera: c.Name, Outline: s.World.Sight(c.Frame, c.HAOV, s.limits(false))})
	}
}

// throwsImage says whether a light is one whose image has a rim that is drawn.
func (s *Study) throwsImage(name string) bool {
	l := s.Setup.LightNamed(name)
	return l != nil && (l.Head.Class == term.Projected || l.Head.Gate.Blur > 0)
}

// outdoors says whether a light stands in no room and aims into none.
func (s *Study) outdoors(name string) bool {
	l := s.Setup.LightNamed(name)
	if l == nil {
		return false
	}
	aimsIn := l.Throw > 0 && s.Setup.RoomAt(l.AimPoint) != nil
	return !aimsIn && s.Setup.RoomAt(l.Frame.At) == nil
}

// limits are where rays end that meet nothing: outdoors at the ground, else at the lowest of the ground
// and the floors, for a beam may leave its room.
func (s *Study) limits(outdoors bool) light.Limits {
	size := r2.Sub(s.Setup.Bounds.Max, s.Setup.Bounds.Min)
	l := light.Limits{Floor: s.Setup.Ground, Reach: math.Hypot(size.X, size.Y) + outside}
	if outdoors {
		return l
	}
	for i := range s.Setup.Rooms {
		l.Floor = min(l.Floor, s.Setup.Rooms[i].Base)
	}
	return l
}
