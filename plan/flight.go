package plan

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// Flight is stairs of a scene as somebody goes them, up or down: the middles of their first and their last edge, and the floors that they
// lead from and to.
type Flight struct {
	Name       string
	Foot, Head r2.Vec  // m
	Low, High  float64 // z of the floor at the foot and at the head of the way, m
	Wide       float64 // m
	Steps      int
}

// Flights are the stairs of a set-up, each up and down.
func (s *Setup) Flights() (all []Flight) {
	for i := range s.Furniture {
		f := &s.Furniture[i]
		if f.Kind != term.Stairs {
			continue
		}
		back := r2.Scale(f.Size[1]/2, plane.Direction(f.Turn))
		up := Flight{Name: f.Name, Foot: r2.Sub(f.At, back), Head: r2.Add(f.At, back), Low: f.Z0, High: f.Z1, Wide: f.Size[0], Steps: len(f.Parts)}
		all = append(all, up, Flight{Name: f.Name, Foot: up.Head, Head: up.Foot, Low: up.High, High: up.Low, Wide: up.Wide, Steps: up.Steps})
	}
	return all
}

// oneStep is how much higher or lower than another a floor is, m, and who walks still steps from one to the other without stairs: two
// risers (common practice).
const oneStep = 0.4

// Joined says whether flights lead from one floor to another, by their z, whatever stands there.
func Joined(flights []Flight, from, to float64) bool {
	floors := []float64{from}
	for i := 0; i < len(floors); i++ {
		if SameFloor(floors[i], to) {
			return true
		}
		for _, f := range flights {
			known := func(z float64) bool { return SameFloor(z, f.High) }
			if SameFloor(f.Low, floors[i]) && !slices.ContainsFunc(floors, known) {
				floors = append(floors, f.High)
			}
		}
	}
	return false
}

// SameFloor says whether who walks steps from one z to another without stairs.
func SameFloor(a, b float64) bool { return math.Abs(a-b) <= oneStep }
