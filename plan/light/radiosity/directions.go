package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
)

// basis is a frame about an axis.
type basis struct{ u, v, n r3.Vec }

// basisOf makes a frame of a unit vector (Duff et al. 2017, Building an orthonormal basis,
// revisited).
func basisOf(n r3.Vec) basis {
	s := math.Copysign(1, n.Z)
	a := -1 / (s + n.Z)
	b := n.X * n.Y * a
	return basis{
		u: r3.Vec{X: 1 + s*n.X*n.X*a, Y: s * b, Z: -s * n.X},
		v: r3.Vec{X: b, Y: s + n.Y*n.Y*a, Z: -n.Y},
		n: n,
	}
}

// direction turns a point of the unit square into a direction, by a response: as many go each way as
// it weighs them. A spot meter looks along its axis alone.
func (a *basis) direction(p receptor.Response, x, y float64) r3.Vec {
	up, round := 0.0, 0.0
	switch p {
	case receptor.Radiance:
		return a.n
	case receptor.Dome: // half of (1 + cos)²/2 lies below sqrt(x)
		up = 2*math.Sqrt(x) - 1
		round = math.Sqrt(1 - up*up)
	default:
		up, round = math.Sqrt(x), math.Sqrt(1-x)
	}
	sin, cos := math.Sincos(2 * math.Pi * y)
	sin, cos = sin*round, cos*round
	return r3.Vec{
		X: cos*a.u.X + sin*a.v.X + up*a.n.X,
		Y: cos*a.u.Y + sin*a.v.Y + up*a.n.Y,
		Z: cos*a.u.Z + sin*a.v.Z + up*a.n.Z,
	}
}

// uniformDirection turns a point of the unit square into a direction; all are as likely.
func uniformDirection(x, y float64) r3.Vec {
	up := 2*x - 1
	sin, cos := math.Sincos(2 * math.Pi * y)
	level := math.Sqrt(max(0, 1-up*up))
	return r3.Vec{X: cos * level, Y: sin * level, Z: up}
}

// oppositePair is direction k of those that are spread evenly in pairs.
func oppositePair(k int) r3.Vec {
	x, y := receptorSample(k / 2)
	sin, cos := math.Sincos(2 * math.Pi * y)
	round := math.Sqrt(1 - x*x)
	way := r3.Vec{X: round * cos, Y: round * sin, Z: x}
	if k&1 != 0 {
		return r3.Scale(-1, way)
	}
	return way
}

// receptorSample is point k of those for receptors, shifted so that no direction runs along an axis.
func receptorSample(k int) (x, y float64) { return sobol.Point(uint32(k), 0x6c8e9cf5, 0x2f0b4c47) }
