package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
)

// A ball is seen as its rim, of ballSides sides; where something cuts it, as rings of facets from the rim to what of it is nearest.
const (
	ballSides = 96
	ballRings = 12
)

// Ball is a ball.
func Ball(part Part, middle r3.Vec, radius float64) Piece {
	return Piece{Part: part, Middle: middle, Radius: radius}
}

// cube is the cube about a ball.
func cube(middle r3.Vec, radius float64) Piece {
	f := plan.Frame{At: middle, Axis: r3.Vec{Y: 1}, Right: r3.Vec{X: 1}}
	return Box(f, 2*radius, 2*radius, radius, -radius)
}

// outline is the rim of a ball as it is seen from a place; nil within it.
func (p *Piece) outline(from r3.Vec) []r3.Vec {
	way := r3.Sub(p.Middle, from)
	far2 := r3.Norm2(way)
	if far2 <= p.Radius*p.Radius {
		return nil
	}
	share := p.Radius * p.Radius / far2 // how much nearer the rim is than the middle
	at := r3.Sub(p.Middle, r3.Scale(share, way))
	across, up := squareTo(r3.Unit(way))
	return Circle(at, across, up, p.Radius*math.Sqrt(1-share), ballSides)
}

// Facets calls show with flat figures side by side that lie on the half of a ball that a place sees, until it returns false: they take as much of a
// picture as its rim, and lie where the ball does, so that what cuts the ball hides what of it is behind the cut.
func (p *Piece) Facets(from r3.Vec, show func(figure []r3.Vec) bool) bool {
	toward := r3.Sub(from, p.Middle)
	far := r3.Norm(toward)
	if far <= p.Radius {
		return p.Figures(from, show)
	}
	axis := r3.Scale(1/far, toward)
	across, up := squareTo(r3.Scale(-1, axis))
	step := math.Acos(p.Radius/far) / ballRings
	ring := func(i int) []r3.Vec {
		radius := p.Radius
		if i < ballRings {
			radius *= 1 + step*step/12 // so that facets lie as much outside of the ball as inside
		}
		sin, cos := math.Sincos(step * float64(i))
		return Circle(r3.Add(p.Middle, r3.Scale(radius*cos, axis)), across, up, radius*sin, ballSides)
	}
	inner := ring(1)
	if !show(inner) {
		return false
	}
	for i := 2; i <= ballRings; i++ {
		outer := ring(i)
		for k := range outer {
			n := (k + 1) % len(outer)
			if !show([]r3.Vec{outer[k], outer[n], inner[n], inner[k]}) {
				return false
			}
		}
		inner = outer
	}
	return true
}
