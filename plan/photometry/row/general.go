package row

import (
	"math"
	"math/bits"

	"gonum.org/v1/gonum/spatial/r3"
)

// general is the kernel of any distribution.
type general struct {
	perLumen func(direction r3.Vec) float64
	flux     float64 // lm
	oneSided bool
}

// General is the kernel of any distribution, by its intensity in a direction of the lamp frame, cd/lm: it asks for every
// receptor.
func General(perLumen func(direction r3.Vec) float64, flux float64, oneSided bool) Kernel {
	return &general{perLumen, flux, oneSided}
}

func (k *general) Add(row *[Word]float64, mask uint64, w int, v *View, scale float64) {
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
		d := r3.Vec{
			X: (v.Right[0] + x*v.Right[1]) * inverse,
			Y: (v.Up[0] + x*v.Up[1]) * inverse,
			Z: -ahead * inverse,
		}
		row[i] += scale * k.flux * k.perLumen(d) * response / square
	}
}
