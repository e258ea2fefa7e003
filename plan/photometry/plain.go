package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Cosine is the light of a small Lambertian face: I(t) = cos t / pi, nothing behind.
type Cosine struct{}

// Candela gives the intensity, cd/lm.
func (Cosine) Candela(dir r3.Vec) float64 { return math.Max(0, -dir.Z) / math.Pi }

// At gives the intensity, cd/lm, at an angle from the axis in radians.
func (Cosine) At(t float64) float64 { return math.Max(0, math.Cos(t)) / math.Pi }

// Peak gives the intensity on the axis, cd/lm.
func (Cosine) Peak() float64 { return 1 / math.Pi }

// Uniform is the same light in every direction.
type Uniform struct{}

// Candela gives the intensity, cd/lm.
func (Uniform) Candela(r3.Vec) float64 { return 1 / (4 * math.Pi) }

// At gives the intensity, cd/lm.
func (Uniform) At(float64) float64 { return 1 / (4 * math.Pi) }

// Peak gives the intensity, cd/lm.
func (Uniform) Peak() float64 { return 1 / (4 * math.Pi) }

// TubeCosine is the light of a thin tube with dark ends that lies along the lamp's right:
// Lambertian about it, I = sin p / pi² with p the angle from the tube.
type TubeCosine struct{}

// Candela gives the intensity, cd/lm.
func (TubeCosine) Candela(dir r3.Vec) float64 {
	return math.Hypot(dir.Y, dir.Z) / (math.Pi * math.Pi)
}

// Peak gives the intensity square to the tube, cd/lm.
func (TubeCosine) Peak() float64 { return 1 / (math.Pi * math.Pi) }
