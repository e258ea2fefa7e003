package plan

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Meter is one reading to take. At is where a flat or dome meter is held, and the point that a
// spot meter is pointed at from the lens of its camera.
type Meter struct {
	Name   string
	Kind   term.Meter
	At     r3.Vec // the point that is read, m
	Facing r3.Vec // unit vector; of a spot, from the lens to the point
	From   string // of a spot: the camera
	Lens   r3.Vec // of a spot: where the camera's lens is, from which it looks, m
	Span   source.Span
}
