package plan

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/source"
)

// MeterKind is what a meter measures.
type MeterKind uint8

// The kinds of a meter. The zero value is a flat one.
const (
	FlatMeter MeterKind = iota // illuminance on a plane
	DomeMeter                  // the incident dome
	SpotMeter                  // luminance of the first surface along a ray
)

// meterKinds are the words of a scene for the kinds, in their order.
var meterKinds = [...]string{FlatMeter: "flat", DomeMeter: "dome", SpotMeter: "spot"}

// String is the word of a scene for the kind.
func (k MeterKind) String() string {
	if int(k) < len(meterKinds) {
		return meterKinds[k]
	}
	return "unknown"
}

// Meter is one reading to take. At is where a flat or dome meter is held, and the point that a
// spot meter is pointed at from the lens of its camera.
type Meter struct {
	Name   string
	Kind   MeterKind
	At     r3.Vec // the point that is read, m
	Facing r3.Vec // unit vector; of a spot, from the lens to the point
	From   string // of a spot: the camera
	Lens   r3.Vec // of a spot: where the camera's lens is, from which it looks, m
	Span   source.Span
}
