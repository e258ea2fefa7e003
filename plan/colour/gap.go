package colour

import "math"

// Gap is how one light lies from another that it should be taken for: in mireds, plus is warmer, and in Duv, plus is greener.
type Gap struct{ Mired, Duv float64 }

// PassMired and PassDuv are how far a light may lie off, in mireds and in Duv, and still be taken for the other: common practice,
// a little over the weakest gel of either kind.
const PassMired, PassDuv = 20, 0.006

// GapBetween gives how a light lies from the one that is wanted, both by their chromaticities. It means nothing, and is not ok, where
// one of them is so far off the Planckian locus that it has no colour temperature.
func GapBetween(light, wanted [2]float64) (g Gap, ok bool) {
	a, b := WhiteOf(light), WhiteOf(wanted)
	if !(math.Abs(a.Duv) <= MaxDuv) || !(math.Abs(b.Duv) <= MaxDuv) {
		return Gap{}, false
	}
	return Gap{Mired: Mired(a.Kelvin) - Mired(b.Kelvin), Duv: a.Duv - b.Duv}, true
}

// Shifted is the gap once the light has gone through gels whose shifts add up to some mireds and Duv.
func (g Gap) Shifted(mired, duv float64) Gap { return Gap{Mired: g.Mired + mired, Duv: g.Duv + duv} }

// Size is how large the gap is, by what may not be seen: the root of the sum of the squares of mireds by PassMired and Duv by PassDuv.
// In CIE 1960 u, v these two are about as far at the whites that are lit with.
func (g Gap) Size() float64 { return math.Sqrt(g.SquaredSize()) }

// SquaredSize is the square of Size, for searches through many.
func (g Gap) SquaredSize() float64 {
	mired, duv := g.Mired/PassMired, g.Duv/PassDuv
	return mired*mired + duv*duv
}

// Passes says whether a light so far off is taken for the other.
func (g Gap) Passes() bool { return math.Abs(g.Mired) <= PassMired && math.Abs(g.Duv) <= PassDuv }
