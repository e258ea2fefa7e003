package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// FastCandela is Candela for sums over many directions: of the direction (right, up, -ahead) times inverse, which
// makes it a unit vector. Its angles are right to 2e-6 degrees.
func (t *Table) FastCandela(right, up, ahead, inverse float64) float64 {
	if t.system != TypeC {
		return t.Candela(r3.Scale(inverse, r3.Vec{X: right, Y: up, Z: -ahead}))
	}
	i, u, held := t.azimuth.quick(t.wrapAzimuth(degrees(fastArctangent(up, right))))
	j, v, ok := t.polar.quick(degrees(fastArccosine(ahead * inverse)))
	if !held || !ok {
		return 0
	}
	n := len(t.polar.angles)
	low, high := t.candela[i*n+j:][:2], t.candela[(i+1)*n+j:][:2]
	near, far := low[0]+v*(low[1]-low[0]), high[0]+v*(high[1]-high[0])
	return near + u*(far-near)
}

// fastArccosine is that of x, to 2e-8 (Abramowitz and Stegun, Handbook of Mathematical Functions, 4.4.46).
func fastArccosine(x float64) float64 {
	c := min(math.Abs(x), 1)
	a := 1.5707963050 + c*(-0.2145988016+c*(0.0889789874+c*(-0.0501743046+c*(0.0308918810+c*(-0.0170881256+c*(0.0066700901-c*0.0012624911))))))
	a *= math.Sqrt(1 - c)
	if x < 0 {
		return math.Pi - a
	}
	return a
}

// fastArctangent is the angle of the point (x, y), -pi to pi, to 2e-8 (Abramowitz and Stegun, 4.4.49).
func fastArctangent(y, x float64) float64 {
	low, high := math.Abs(x), math.Abs(y)
	steep := low < high
	if !steep {
		low, high = high, low
	}
	if high == 0 {
		return 0
	}
	r := low / high
	s := r * r
	a := r * (1 + s*(-0.3333314528+s*(0.1999355085+s*(-0.1420889944+s*(0.1065626393+s*(-0.0752896400+s*(0.0429096138+s*(-0.0161657367+s*0.0028662257))))))))
	if steep {
		a = math.Pi/2 - a
	}
	if x < 0 {
		a = math.Pi - a
	}
	return math.Copysign(a, y)
}
