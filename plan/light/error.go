package light

import "math"

// Error is the standard error of the light at receptor i, lx, or cd/m² for a Radiance: what the engine itself
// takes its figure to be off by.
func (b *Basis) Error(i int, d Levels) float64 {
	var direct, reflected, square float64
	for t := range b.Terms {
		term := &b.Terms[t]
		if y := d[term.Light].Times(b.Points[t][i]).Y(); term.Path.Straight() {
			direct += y
		} else {
			reflected += y
		}
	}
	for k := range b.columns {
		if c := &b.columns[k]; i < len(c.rayError) {
			off := b.errorModel.rays * c.rayError[i] * d[b.Lights[k]].Y()
			square += off * off
		}
	}
	direct, reflected = direct*b.errorModel.direct, reflected*b.errorModel.reflected
	return math.Sqrt(square+direct*direct+reflected*reflected) * b.Gains[i].Y()
}
