package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The points of a lattice may each have an axis of its own, toward one place. The rays of a direction are drawn
// together all the same: they are spread evenly over all directions, and each counts at each point by that
// point's axis. The weights lie between 0 and 2. Directions come in opposite pairs, so that the weights of
// each set are 1 in the mean to the last bits, whatever the axis. Where neighbours lend each other what they see,
// what is lent was weighed by the lender's axis: that shows within a hand's breadth of the place alone.

// opposed is direction k of those that are spread evenly in pairs.
func opposed(k int) r3.Vec {
	x, y := ray(k / 2)
	sin, cos := math.Sincos(2 * math.Pi * y)
	round := math.Sqrt(1 - x*x)
	way := r3.Vec{X: round * cos, Y: round * sin, Z: x}
	if k&1 != 0 {
		return r3.Scale(-1, way)
	}
	return way
}

// heading is a direction in single precision; nought is none.
type heading struct{ x, y, z float32 }

func headingOf(v r3.Vec) heading { return heading{float32(v.X), float32(v.Y), float32(v.Z)} }

// turn finds the axes of the points of set s, nu of them in a row of its view.
func (q *picture) turn(f *frame, s, nu int) {
	if f.Toward == nil {
		return
	}
	q.turned = make([]heading, len(q.points))
	q.ways = make([]heading, 0, f.rays)
	for at, n := range q.points {
		u, v := float64(int(n)%nu*side+s%side), float64(int(n)/nu*side+s/side)
		way := r3.Sub(*f.Toward, r3.Add(f.Origin, r3.Add(r3.Scale(u, f.U), r3.Scale(v, f.V))))
		if length := r3.Norm(way); length > 0 { // in the place itself all directions count the same
			q.turned[at] = headingOf(r3.Scale(1/length, way))
		}
	}
}

// weigh is pour by the axes of the points: what is seen along way counts by 1 + cos t.
func weigh[number uint16 | uint32](sums []shining, places []number, exitance []shining, axes []heading, way *heading) {
	axes = axes[:len(places)]
	for i, h := range places {
		a := &axes[i]
		sums[i].addTimes(&exitance[h], 1+way.x*a.x+way.y*a.y+way.z*a.z)
	}
}

// addTimes adds b by a weight, written out as add is.
func (s *shining) addTimes(b *shining, weight float32) {
	s[0] += weight * b[0]
	s[1] += weight * b[1]
	s[2] += weight * b[2]
	s[3] += weight * b[3]
	s[4] += weight * b[4]
	s[5] += weight * b[5]
}
