package radiosity

import "gonum.org/v1/gonum/spatial/r3"

// environment is what lies beyond the set: a ray that meets no solid asks it what it sees.
type environment interface {
	// element is what a ray that leaves the set in a direction sees.
	element(direction r3.Vec) uint32
}

// darkness is an environment that sends no light into the set and returns none of what leaves it.
type darkness struct{}

func (darkness) element(r3.Vec) uint32 { return black }

// horizon is how far away, m, the environment counts as lying: clear sheets up to there stand before it.
const horizon float64 = 1e4
