package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light"
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
	Outline []r2.Vec
}

// outside is how far a ray that leaves the set is drawn beyond everything that stands, m.
const outside = 3.0

// trace finds the beams and views.
func (s *Study) trace() {
	limits := s.limits()
	for _, e := range light.Emitters(s.Setup) {
		s.Beams = append(s.Beams, Beam{Light: e.Name,
			Half: s.World.Wedge(&e, 0.5, limits), Tenth: s.World.Wedge(&e, 0.1, limits)})
	}
	for i := range s.Setup.Cameras {
		c := &s.Setup.Cameras[i]
		s.Views = append(s.Views, View{Camera: c.Name, Outline: s.World.Sight(c.Frame, c.HAOV, limits)})
	}
}

func (s *Study) limits() light.Limits {
	size := r2.Sub(s.Setup.Bounds.Max, s.Setup.Bounds.Min)
	l := light.Limits{Floor: s.Setup.Ground, Reach: math.Hypot(size.X, size.Y) + outside}
	for i := range s.Setup.Rooms {
		if i == 0 || s.Setup.Rooms[i].Base < l.Floor {
			l.Floor = s.Setup.Rooms[i].Base
		}
	}
	return l
}
