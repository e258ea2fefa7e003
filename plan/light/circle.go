package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// roundSides is how many sides a round opening has where something hides a part of it, and fewSides where only what
// falls on surfaces is asked for. Such a polygon has the area of the round.
const (
	roundSides = 96
	fewSides   = 16
)

// circle is a circle with two directions in its plane, from whose cross product it is seen counter-clockwise.
type circle struct {
	centre, right, up r3.Vec
	radius            float64
}

// polygon is the regular polygon of the circle's area, with a corner to either side of each direction.
func (c *circle) polygon(sides int) []r3.Vec {
	n := float64(sides)
	radius := c.radius * math.Sqrt(2*math.Pi/(n*math.Sin(2*math.Pi/n)))
	corners := make([]r3.Vec, sides)
	for i := range corners {
		sin, cos := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / n)
		corners[i] = c.at(radius*cos, radius*sin)
	}
	return corners
}

// square is the square about the circle.
func (c *circle) square() []r3.Vec {
	r := c.radius
	return []r3.Vec{c.at(-r, -r), c.at(r, -r), c.at(r, r), c.at(-r, r)}
}

func (c *circle) at(x, y float64) r3.Vec {
	return r3.Add(c.centre, r3.Add(r3.Scale(x, c.right), r3.Scale(y, c.up)))
}
