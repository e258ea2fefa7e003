package kit

import "scrimshaw/plan/colour"

// Colour gives what the surface does to light, linear AP1: a neutral surface has three equal
// channels. A strong colour may have a channel over 1, which no surface can; the caller judges.
func (m *Material) Colour() colour.RGB {
	if m.XY == nil {
		return colour.RGB{m.Reflectance, m.Reflectance, m.Reflectance}
	}
	factor, _ := colour.Factor(*m.XY, colour.D65(), m.Reflectance)
	return factor
}
