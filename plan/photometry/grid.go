package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Grid is light behind a grid of thin dark cells: a share 1 - |tan a|/tan A of it gets through
// at an angle a in a plane square to the cells, where A is the cut-off, and the two planes multiply.
// It follows from the geometry of a straight cell as wide as tan A times its depth.
type Grid struct {
	base          Distribution
	across, along float64 // tangents of the cut-off half angles toward C0 and C90
	gain          float64
}

// NewGrid puts a grid with the full cut-off angles across (toward C0) and along (toward C90),
// degrees, above 0 and below 180, before a distribution, and gives the share of the flux that
// passes.
func NewGrid(base Distribution, across, along float64) (Grid, float64) {
	g := Grid{base, math.Tan(across / 2 * math.Pi / 180), math.Tan(along / 2 * math.Pi / 180), 1}
	share := g.passedShare()
	g.gain = 1 / share
	return g, share
}

// Candela gives the intensity, cd/lm of what has passed.
func (g Grid) Candela(dir r3.Vec) float64 {
	if dir.Z >= 0 {
		return 0
	}
	across, along := 1-math.Abs(dir.X/dir.Z)/g.across, 1-math.Abs(dir.Y/dir.Z)/g.along
	if across <= 0 || along <= 0 {
		return 0
	}
	return g.gain * g.base.Candela(dir) * (across * along)
}

// Peak gives the greatest intensity, cd/lm: that on the axis where the base peaks there, which no
// grid hides.
func (g Grid) Peak() float64 {
	axis := g.Candela(r3.Vec{Z: -1})
	if g.gain*Peak(g.base) <= axis*(1+1e-12) {
		return axis
	}
	return scanPeak(g)
}

// Parts gives what a grid is made of, for those who sum over many directions: the distribution
// behind it, the tangents of its cut-off half angles toward C0 and C90, and what the base's intensity is
// multiplied by where the grid hides nothing.
func (g Grid) Parts() (base Distribution, across, along, gain float64) {
	return g.base, g.across, g.along, g.gain
}

// passedShare is the share of the base's flux that passes, on the plane z = -1, where the openness
// is a product and the solid angle of dx dy is (1 + x² + y²)^(-3/2).
func (g Grid) passedShare() float64 {
	integral := integrate
	if tabulated(g.base) {
		integral = integrateEvenly // at each kink of a table integrate would halve to the end
	}
	quarter := func(sx, sy float64) float64 {
		return integral(func(x float64) float64 {
			return integral(func(y float64) float64 {
				r2 := 1 + x*x + y*y
				r := math.Sqrt(r2)
				return g.Candela(r3.Vec{X: sx * x / r, Y: sy * y / r, Z: -1 / r}) / (r2 * r)
			}, 0, g.along)
		}, 0, g.across)
	}
	return quarter(1, 1) + quarter(-1, 1) + quarter(-1, -1) + quarter(1, -1)
}
