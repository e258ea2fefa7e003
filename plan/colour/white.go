package colour

import "math"

// XY gives the CIE 1931 chromaticity of w.
func (w White) XY() [2]float64 {
	if w.Daylight {
		xy := Daylight(w.Kelvin)
		if w.Duv == 0 {
			return xy
		}
		kelvin, duv := CCT(xy)
		return offLocus(kelvin, duv+w.Duv)
	}
	return offLocus(w.Kelvin, w.Duv)
}

// offLocus goes duv off the Planckian locus at kelvin, square to it in CIE 1960 u, v.
func offLocus(kelvin, duv float64) [2]float64 {
	xy := Planck(kelvin)
	if duv == 0 {
		return xy
	}
	at, hotter := UV(xy), UV(Planck(kelvin*1.0001))
	du, dv := hotter[0]-at[0], hotter[1]-at[1]
	length := math.Hypot(du, dv)
	// The locus runs to smaller u as it gets hotter, so this normal points to larger v: to green.
	return FromUV([2]float64{at[0] + duv*dv/length, at[1] - duv*du/length})
}

// RGB gives light of this white with Y = 1.
func (w White) RGB() RGB { return FromXY(w.XY(), 1) }

// OnPlanck gives the same white by its distance from the Planckian locus.
func (w White) OnPlanck() White {
	if !w.Daylight {
		return w
	}
	kelvin, duv := CCT(w.XY())
	return White{Kelvin: kelvin, Duv: duv}
}

// WhiteOf gives the nearest white of a chromaticity.
func WhiteOf(xy [2]float64) White {
	kelvin, duv := CCT(xy)
	return White{Kelvin: kelvin, Duv: duv}
}

// Mired gives micro reciprocal degrees, 10^6/K, of a colour temperature, and the other way
// round: it is its own inverse.
func Mired(kelvin float64) float64 { return 1e6 / kelvin }
