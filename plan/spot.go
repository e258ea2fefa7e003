package plan

import "gonum.org/v1/gonum/spatial/r2"

// Spot is where something stands.
type Spot struct {
	At      r2.Vec  // m
	Room    string  // that holds it; "" outside
	Floor   float64 // z that heights are counted from, m
	Base    float64 // z of what it stands on, m
	On      string  // the thing that it stands on, "" the floor
	Opening string  // the opening it was placed by
	Stays   bool    // it stands as it did in the set-up before, because it is said to stay
	Outside bool    // outside of that opening
}
