package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The 15-point Kronrod rule on -1..1 with the 7-point Gauss rule inside it (QUADPACK): positive
// nodes, outermost first; odd entries are Gauss's.
var (
	kronrodNode = [...]float64{
		0.991455371120812639206854697526329, 0.949107912342758524526189684047851,
		0.864864423359769072789712788640926, 0.741531185599394439863864773280788,
		0.586087235467691130294144838258730, 0.405845151377397166906606412076961,
		0.207784955007898467600689403773245, 0,
	}
	kronrodWeight = [...]float64{
		0.022935322010529224963732008058970, 0.063092092629978553290700663189204,
		0.104790010322250183839876322541518, 0.140653259715525918745189590510238,
		0.169004726639267902826583426598550, 0.190350578064785409913256402421014,
		0.204432940075298892414161999234649, 0.209482141084727828012999174891714,
	}
	gaussWeight = [...]float64{
		0.129484966168869693270611432679082, 0.279705391489276667901467771423780,
		0.381830050505118944950369775488975, 0.417959183673469387755102040816327,
	}
)

// integrate is the integral of f from a to b, halving until each piece is good to 1e-11 of what
// the whole is about.
func integrate(f func(float64) float64, a, b float64) float64 {
	if b <= a {
		return 0
	}
	whole, _ := kronrod(f, a, b)
	return refine(f, a, b, 1e-11*math.Abs(whole)/(b-a), 30)
}

// integrateAcross is the integral of f over pieces between edges, which ascend, each good to 1e-11 of what all of them
// are about: where f is next to nothing, a piece is not halved to the end for its own sake.
func integrateAcross(f func(float64) float64, edges []float64) (sum float64) {
	all := 0.0
	for i := 1; i < len(edges); i++ {
		whole, _ := kronrod(f, edges[i-1], edges[i])
		all += math.Abs(whole)
	}
	tolerance := 1e-11 * all / (edges[len(edges)-1] - edges[0])
	for i := 1; i < len(edges); i++ {
		if edges[i] > edges[i-1] {
			sum += refine(f, edges[i-1], edges[i], tolerance, 30)
		}
	}
	return sum
}

// integrateEvenly is the integral of f, which may have kinks anywhere, by the midpoints of even
// pieces: good to about 1e-5 of the whole for measured light.
func integrateEvenly(f func(float64) float64, a, b float64) (sum float64) {
	const pieces = 200
	step := (b - a) / pieces
	for i := range pieces {
		sum += f(a + (float64(i)+0.5)*step)
	}
	return sum * step
}

// refine halves a..b until its error is under tolerance a unit of width, at most depth times.
func refine(f func(float64) float64, a, b, tolerance float64, depth int) float64 {
	sum, err := kronrod(f, a, b)
	if err <= tolerance*(b-a) || depth == 0 {
		return sum
	}
	middle := (a + b) / 2
	return refine(f, a, middle, tolerance, depth-1) + refine(f, middle, b, tolerance, depth-1)
}

// kronrod is one rule over a..b, and how far it lies from its Gauss rule.
func kronrod(f func(float64) float64, a, b float64) (sum, err float64) {
	middle, half := (a+b)/2, (b-a)/2
	centre := f(middle)
	sum = kronrodWeight[7] * centre
	gauss := gaussWeight[3] * centre
	for i := range 7 {
		pair := f(middle-half*kronrodNode[i]) + f(middle+half*kronrodNode[i])
		sum += kronrodWeight[i] * pair
		if i%2 == 1 {
			gauss += gaussWeight[i/2] * pair
		}
	}
	return sum * half, math.Abs(sum-gauss) * half
}

// Direction gives the unit vector of the lamp frame at the angles of type C, degrees: gamma from the axis,
// in the half plane c from the lamp's right toward its up.
func Direction(gamma, c float64) r3.Vec { return direction(radians(c), radians(gamma)) }

// direction is the unit vector of the lamp frame at angle t from the axis in the half plane c,
// both in radians.
func direction(c, t float64) r3.Vec {
	sinT, cosT := math.Sincos(t)
	sinC, cosC := math.Sincos(c)
	return r3.Vec{X: sinT * cosC, Y: sinT * sinC, Z: -cosT}
}
