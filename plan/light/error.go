package light

import "math"

// doubt is what a stated error is made of, beside what the rays themselves tell.
type doubt struct {
	direct  float64 // share of the direct light: round openings are polygons, measured light is interpolated
	patches float64 // share of the reflected light: patches are flat in brightness
	rays    float64 // times what the spread of the rays tells
}

// doubt gives the parts of the error of a quality. They were chosen so that the truth lies within two of the stated
// error in 95 of 100 readings of random scenes (plan/study, TestStatedErrorsAreHonest).
func (q Quality) doubt() doubt {
	switch q {
	case Draft:
		return doubt{5e-4, 0.01, 1}
	case Fine:
		return doubt{2e-4, 0.002, 1}
	}
	return doubt{2e-4, 0.003, 1}
}

// allowed is the share of a receptor's light that rays may leave it off by before more are sent.
func (q Quality) allowed() float64 { return [...]float64{Normal: 0.01, Draft: 0.05, Fine: 0.005}[q] }

// Error is the standard error of the light at receptor i, lx, or cd/m² for a Radiance: what the engine itself
// takes its figure to be off by.
func (b *Basis) Error(i int, d Drive) float64 {
	var direct, reflected, square float64
	for t := range b.Terms {
		term := &b.Terms[t]
		if y := d[term.Light].Times(b.Points[t][i]).Y(); term.Path == Direct {
			direct += y
		} else {
			reflected += y
		}
	}
	for k := range b.columns {
		if c := &b.columns[k]; i < len(c.spread) {
			off := b.doubt.rays * c.spread[i] * d[b.Lights[k]].Y()
			square += off * off
		}
	}
	direct, reflected = direct*b.doubt.direct, reflected*b.doubt.patches
	return math.Sqrt(square+direct*direct+reflected*reflected) * b.Gains[i].Y()
}
