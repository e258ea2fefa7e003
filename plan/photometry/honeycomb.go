package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry/row"
)

// Honeycomb is light behind black cells that are round, or a single one, as a snoot. A straight cell of width w and depth h
// shows, at an angle a from its axis, the part of its far mouth that its near mouth does not hide: two circles of
// diameter w, shifted by h tan a, overlap. With x = tan a / tan A, and tan A = w/h at the cut-off A, that is
//
//	T(x) = 2/pi (acos x - x sqrt(1 - x²)), x < 1,
//
// by the area of the lens between two circles. Half of the light passes at x = 0.404: cells that hide all beyond 40° to
// either side leave an even source a beam of 37°. Hexagons are taken as round.
type Honeycomb struct {
	base   Distribution
	cutOff float64 // tangent of the cut-off half angle
	gain   float64
}

// NewHoneycomb puts round cells with the full cut-off angle, degrees, above 0 and below 180, before a distribution, and gives the
// share of the flux that passes.
func NewHoneycomb(base Distribution, cutOff float64) (Honeycomb, float64) {
	c := Honeycomb{base, math.Tan(cutOff / 2 * math.Pi / 180), 1}
	share := c.passedShare()
	c.gain = 1 / share
	return c, share
}

// open is the share of a cell through which light at a tangent from the axis leaves.
func (c Honeycomb) open(tangent float64) float64 {
	x := tangent / c.cutOff
	if x >= 1 {
		return 0
	}
	return 2 / math.Pi * (math.Acos(x) - x*math.Sqrt(1-x*x))
}

// Candela gives the intensity, cd/lm of what has passed.
func (c Honeycomb) Candela(dir r3.Vec) float64 {
	if dir.Z >= 0 {
		return 0
	}
	return c.gain * c.base.Candela(dir) * c.open(math.Hypot(dir.X, dir.Y)/-dir.Z)
}

// Peak gives the greatest intensity, cd/lm: that on the axis where the base peaks there, which no cell hides.
func (c Honeycomb) Peak() float64 {
	axis := c.Candela(r3.Vec{Z: -1})
	if c.gain*Peak(c.base) <= axis*(1+1e-12) {
		return axis
	}
	return scanPeak(c)
}

// Parts gives what is behind the cells and the tangent of their cut-off half angle, for those who sum over many directions.
func (c Honeycomb) Parts() (base Distribution, cutOff float64) { return c.base, c.cutOff }

// passedShare is the share of the base's flux that passes: the integral over the directions within the cut-off, round
// after round.
func (c Honeycomb) passedShare() float64 {
	edge := math.Atan(c.cutOff)
	if base, ok := c.base.(Axial); ok {
		return 2 * math.Pi * integrate(func(t float64) float64 { return base.At(t) * c.open(math.Tan(t)) * math.Sin(t) }, 0, edge)
	}
	integral := integrate
	if tabulated(c.base) {
		integral = integrateEvenly // at each kink of a table integrate would halve to the end
	}
	return integral(func(t float64) float64 {
		round := integral(func(turn float64) float64 { return c.base.Candela(direction(turn, t)) }, 0, 2*math.Pi)
		return round * c.open(math.Tan(t)) * math.Sin(t)
	}, 0, edge)
}

// axialCells is light behind cells that is the same all round the axis.
type axialCells struct {
	Honeycomb
	behind Axial
}

// At gives the intensity, cd/lm, at an angle from the axis in radians.
func (c axialCells) At(t float64) float64 {
	if t >= math.Pi/2 {
		return 0
	}
	return c.gain * c.behind.At(t) * c.open(math.Tan(t))
}

// RowKernel implements RowSummed.
func (c Honeycomb) RowKernel(flux float64, _ Opening, oneSided bool) row.Kernel {
	if behind, ok := c.base.(Axial); ok {
		return axialKernel(axialCells{c, behind}, flux, oneSided)
	}
	return nil
}
