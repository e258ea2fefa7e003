package row

import (
	"math"
	"math/bits"
)

// measured is the kernel of measured intensities.
type measured struct {
	at       equalAreaMap
	flux     float64 // lm
	oneSided bool
}

// Measured is the kernel of measured intensities: perLumen gives them in cd/lm in the direction (right, up, -ahead), a unit
// vector. A map of them is made once, for the points of an opening ask for the same directions over and over.
func Measured(perLumen func(right, up, ahead float64) float64, flux float64, oneSided bool) Kernel {
	return &measured{newEqualAreaMap(perLumen, oneSided), flux, oneSided}
}

func (k *measured) Add(row *[Word]float64, mask uint64, w int, v *View, scale float64) {
	gain := scale * k.flux
	x0 := float64(w * Word)
	f0, f1, f2, lean := v.falls(w)
	for ; mask != 0; mask &= mask - 1 {
		i := bits.TrailingZeros64(mask) & (Word - 1)
		x := x0 + float64(i)
		ahead := v.Ahead[0] + x*v.Ahead[1]
		square := v.Square[0] + x*(v.Square[1]+x*v.Square[2])
		inverse := 1 / math.Sqrt(square)
		response := v.Even + v.Cos*(f0+x*(f1+x*f2))*lean[i]*inverse
		if !(response > 0) || k.oneSided && ahead <= 0 { // in the point itself the response is no number
			continue
		}
		row[i] += gain * k.at.value(v.Right[0]+x*v.Right[1], v.Up[0]+x*v.Up[1], ahead, inverse) * response / square
	}
}

// equalAreaMap is intensities on Lambert's equal-area map about the axis: a direction lies at its right and
// its up over sqrt(1 + its cosine from the axis). Sums over parts of an opening read it instead of the
// table, which takes two arcs a direction.
type equalAreaMap struct {
	reach float64 // of the map, from its middle
	scale float64 // cells to the unit
	cells []float32
}

// mapSide is how many points a map has to a side: cells are about a degree.
const mapSide = 161

func newEqualAreaMap(perLumen func(right, up, ahead float64) float64, oneSided bool) equalAreaMap {
	m := equalAreaMap{reach: math.Sqrt2, cells: make([]float32, mapSide*mapSide)}
	if oneSided {
		m.reach = 1
	}
	m.scale = (mapSide - 1) / (2 * m.reach)
	for j := range mapSide {
		for i := range mapSide {
			x, y := float64(i)/m.scale-m.reach, float64(j)/m.scale-m.reach
			if square := x*x + y*y; square > m.reach*m.reach { // the nearest there is
				out := m.reach / math.Sqrt(square)
				x, y = x*out, y*out
			}
			cos := 1 - x*x - y*y
			out := math.Sqrt(max(0, 1+cos))
			m.cells[j*mapSide+i] = float32(perLumen(x*out, y*out, cos))
		}
	}
	return m
}

// value is the intensity in the direction (right, up, -ahead) times inverse, a unit vector.
func (m *equalAreaMap) value(right, up, ahead, inverse float64) float64 {
	out := inverse * m.scale / math.Sqrt(max(1e-9, 1+ahead*inverse))
	middle := float64(mapSide-1) / 2
	x, y := middle+right*out, middle+up*out
	i, j := min(max(int(x), 0), mapSide-2), min(max(int(y), 0), mapSide-2)
	u, v := x-float64(i), y-float64(j)
	low, high := m.cells[j*mapSide+i:][:2], m.cells[(j+1)*mapSide+i:][:2]
	a, b := float64(low[0]), float64(high[0])
	a, b = a+u*(float64(low[1])-a), b+u*(float64(high[1])-b)
	return a + v*(b-a)
}
