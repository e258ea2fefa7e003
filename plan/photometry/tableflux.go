package photometry

import "math"

// flux is the integral of the table over the sphere, exact for intensities that are linear between
// the nodes: along the polar angle p in I(p) sin p dp, along the azimuth the rule of the trapezium.
func (t *Table) flux() (lumens float64) {
	weights := ringWeights(t.polar.angles)
	n := len(weights)
	around := arcWeights(t.azimuth.angles)
	for i, arc := range around {
		ring := 0.0
		for j, w := range weights {
			ring += w * t.candela[i*n+j]
		}
		lumens += arc * ring
	}
	return lumens
}

// arcWeights are the shares of the way round, radians, that each azimuth stands for.
func arcWeights(angles []float64) []float64 {
	if len(angles) == 1 {
		return []float64{2 * math.Pi}
	}
	weights := make([]float64, len(angles))
	for i := 1; i < len(angles); i++ {
		half := radians(angles[i]-angles[i-1]) / 2
		weights[i-1] += half
		weights[i] += half
	}
	return weights
}

// ringWeights are the integrals of sin p dp times what is 1 at one node and falls evenly to 0 at its
// neighbours. Over a step of 2d about m the two ends get sin m sin d -+ cos m (sin d - d cos d)/d,
// which keeps its figures for small steps.
func ringWeights(angles []float64) []float64 {
	weights := make([]float64, len(angles))
	for i := 1; i < len(angles); i++ {
		m, d := radians(angles[i]+angles[i-1])/2, radians(angles[i]-angles[i-1])/2
		even := math.Sin(m) * math.Sin(d)
		slope := math.Cos(m) * firstMoment(d)
		weights[i-1] += even - slope
		weights[i] += even + slope
	}
	return weights
}

// firstMoment is (sin d - d cos d)/d, d times the spherical Bessel function of order 1, by its series where the difference would lose figures.
func firstMoment(d float64) float64 {
	if d < 0.02 {
		return d * d / 3 * (1 - d*d/10*(1-d*d/28))
	}
	return (math.Sin(d) - d*math.Cos(d)) / d
}
