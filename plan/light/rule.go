package light

import (
	"math"
	"sync"

	"gonum.org/v1/gonum/integrate/quad"
)

// gauss is a Gauss-Legendre rule on 0..1.
type gauss struct{ x, w []float64 }

// largest is the highest order of a rule.
const largest = 32

// rulesUpTo holds the rules by their order.
var rulesUpTo = sync.OnceValue(func() []gauss {
	all := make([]gauss, largest+1)
	for n := 1; n <= largest; n++ {
		all[n].x, all[n].w = legendre(n, 0, 1)
	}
	return all
})

// miscomputed is an order whose weights are wrong in the library (gonum 0.17): they add up to 0.989.
const miscomputed = 26

// legendre gives the places and weights of the rule of order n over a length, or of one more where that of n is wrong.
func legendre(n int, low, high float64) (x, w []float64) {
	if n == miscomputed {
		n++
	}
	x, w = make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(x, w, low, high)
	return x, w
}

// precision chooses the orders of rules. The Gauss-Legendre rule of order n over a length 2a is wrong by about
// rho^(-2n) with rho = d/a + sqrt(1 + (d/a)²) at a distance d, the ellipse that the nearest pole lies on
// (Trefethen, Approximation Theory and Approximation Practice, theorem 19.3).
type precision struct {
	reach [largest + 1]float64 // by order: the least 2d/length at which it serves
}

// newPrecision is for an error of about e^-digits.
func newPrecision(digits float64) *precision {
	p := &precision{}
	for n := 1; n <= largest; n++ {
		p.reach[n] = math.Sinh(digits / (2 * float64(n)))
	}
	return p
}

// The precisions in use. The sources have poles of the fourth order, which costs some of it.
var (
	coarsely = sync.OnceValue(func() *precision { return newPrecision(5) })  // what falls on surfaces
	closely  = sync.OnceValue(func() *precision { return newPrecision(14) }) // fields: 1e-4
	exactly  = sync.OnceValue(func() *precision { return newPrecision(28) }) // single receptors
)

// order is that of the rule for a length at a distance.
func (p *precision) order(distance, length float64) int {
	ratio := 2 * distance / length * (1 + 1e-9)
	n := 2
	for n < largest && !(ratio >= p.reach[n]) {
		n++
	}
	return n
}
