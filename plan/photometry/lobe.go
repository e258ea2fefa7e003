package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Axial is a Distribution that is the same all round the axis.
type Axial interface {
	Distribution
	// At gives the intensity, cd/lm, at an angle from the axis in radians, 0 to pi.
	At(t float64) float64
}

// Lobe is the light of a unit that is known by its beam and field angles:
// I(t) = I0 * 2^-(t/tb)^n, with tb half the beam angle, where the intensity has fallen to 50 %,
// and n = ln(log2 10)/ln(tf/tb), which puts 10 % at half the field angle.
type Lobe struct {
	beam, field float64 // full angles, degrees
	half        float64 // tb, radians
	power       float64 // n
	peak        float64 // cd/lm on the axis
	edge        float64 // the greatest angle from the axis at which there is light, radians
}

// tenth is the stops to 10 %, log2 10.
var tenth = math.Log2(10)

// DefaultField gives the field angle that is taken where only a beam angle is known: that of a
// lobe with n = 2, which a narrow power of the cosine tends to. It is 1.8226 times the beam.
func DefaultField(beam float64) float64 { return beam * math.Sqrt(tenth) }

// NewLobe makes the lobe with the full angles beam and field, degrees. beam must be positive; a
// field that is no wider than the beam, as 0, means DefaultField.
func NewLobe(beam, field float64) *Lobe { return lobe(beam, field, math.Pi) }

// NewFaceLobe makes the lobe of a face, which shines from one side: a wide lobe ends at the plane square to
// the axis, and all of the flux goes out before it.
func NewFaceLobe(beam, field float64) *Lobe { return lobe(beam, field, math.Pi/2) }

func lobe(beam, field, edge float64) *Lobe {
	if !(field > beam) {
		field = DefaultField(beam)
	}
	l := &Lobe{
		beam: beam, field: field,
		half:  beam / 2 * math.Pi / 180,
		power: math.Log(tenth) / math.Log(field/beam),
		peak:  1,
		edge:  edge,
	}
	l.peak = 1 / (2 * math.Pi * l.integral())
	return l
}

// integral is the integral of At(t) sin t, in pieces that follow the lobe so that neither a
// pencil nor a cliff between beam and field is missed.
func (l *Lobe) integral() float64 {
	ring := func(t float64) float64 { return l.At(t) * math.Sin(t) }
	edges := [...]float64{0, l.half / 2, l.half, l.half * l.field / l.beam, 2 * l.half * l.field / l.beam, l.edge}
	for i := range edges {
		edges[i] = math.Min(edges[i], l.edge)
	}
	return integrateAcross(ring, edges[:])
}

// At gives the intensity, cd/lm, at an angle from the axis in radians.
func (l *Lobe) At(t float64) float64 {
	if t > l.edge {
		return 0
	}
	// A power by logarithms takes half the time of math.Pow and is off by 1e-15: maps ask for it at every point.
	return l.peak * math.Exp(-math.Ln2*math.Exp(l.power*math.Log(t/l.half)))
}

// Candela gives the intensity, cd/lm.
func (l *Lobe) Candela(dir r3.Vec) float64 { return l.At(angleFromAxis(dir)) }

// steepLobe is the power from which on a lobe has an edge, as the beam of a projection lens does.
const steepLobe = 4

// Detail gives the width of the edge by the distance, from nine tenths of the light to one; infinite where it falls off slowly.
func (l *Lobe) Detail() float64 {
	if l.power < steepLobe {
		return math.Inf(1)
	}
	at := func(share float64) float64 { return math.Tan(l.half * math.Pow(-math.Log2(share), 1/l.power)) }
	return at(0.1) - at(0.9)
}

// Peak gives the intensity on the axis, cd/lm.
func (l *Lobe) Peak() float64 { return l.peak }

// Figures gives what the lobe is computed by: I = peak x 2^-(t/half)^power, peak in cd/lm, t and half in degrees.
func (l *Lobe) Figures() (peak, half, power float64) {
	return l.peak, l.half * 180 / math.Pi, l.power
}

// angleFromAxis is the angle of a direction from the lamp's axis -Z, radians.
func angleFromAxis(dir r3.Vec) float64 { return math.Atan2(math.Hypot(dir.X, dir.Y), -dir.Z) }
