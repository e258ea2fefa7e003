package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

type triangle [3]r3.Vec

// longest is the longest side.
func (t *triangle) longest() float64 {
	return math.Sqrt(max(r3.Norm2(r3.Sub(t[1], t[0])), r3.Norm2(r3.Sub(t[2], t[1])), r3.Norm2(r3.Sub(t[0], t[2]))))
}

func (t *triangle) area() float64 {
	return math.Sqrt(r3.Norm2(r3.Cross(r3.Sub(t[1], t[0]), r3.Sub(t[2], t[0])))) / 2
}

// three are the places of a rule of three points that weigh alike, exact for the second degree (G. Strang and G. Fix, An Analysis of the
// Finite Element Method, 1973).
func (t *triangle) three() (at [3]r3.Vec) {
	all := r3.Add(r3.Add(t[0], t[1]), t[2])
	for i, p := range t {
		at[i] = r3.Add(r3.Scale(1.0/6, all), r3.Scale(0.5, p))
	}
	return at
}

// split cuts a triangle into n by n equal ones.
func (t *triangle) split(n int, each func(triangle)) {
	u, v := r3.Scale(1/float64(n), r3.Sub(t[1], t[0])), r3.Scale(1/float64(n), r3.Sub(t[2], t[0]))
	at := func(i, j int) r3.Vec { return r3.Add(t[0], r3.Add(r3.Scale(float64(i), u), r3.Scale(float64(j), v))) }
	for i := range n {
		for j := range n - i {
			each(triangle{at(i, j), at(i+1, j), at(i, j+1)})
			if i+j+1 < n {
				each(triangle{at(i+1, j), at(i+1, j+1), at(i, j+1)})
			}
		}
	}
}
