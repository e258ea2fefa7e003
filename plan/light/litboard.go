package light

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// litBoard is a board that a lamp lights.
type litBoard struct {
	*board
	points  []node              // of the lamp's opening, as the board sees it
	past    *solid.BVH          // the set
	between []int32             // of that: what may stand between the two
	near    float64             // m from the lamp to the nearest of the board
	tables  []func() []litPlace // each is made when it is first asked for
}

// litPlace is a place of a board that stands for an area, and how it is lit.
type litPlace struct {
	at     r3.Vec
	area   float64    // m²
	filter colour.RGB // what sheets before it leave of the light
	rays   []litRay
}

// litRay is light that comes to a place: the direction in which it goes on sharply, and how much it is, lx.
type litRay struct {
	on   r3.Vec
	e    float64
	fall float64 // the cosine at which it falls on the board
}
