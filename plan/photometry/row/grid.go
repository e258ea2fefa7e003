package row

import (
	"math"
	"math/bits"
)

// grid is the kernel of a cosine behind a grid of cells.
type grid struct {
	inverse [2]float64 // of the tangents of the cut-off angles, toward the right and toward the up
	candela float64    // on the axis
}

// CosineGrid is the kernel of a one-sided cosine behind a grid of cells, by the inverse tangents of its cut-off angles
// toward the lamp's right and up and its intensity on the axis, cd: the cosine times 1 - tan a/tan A across and along.
func CosineGrid(inverseTangents [2]float64, candela float64) Kernel {
	return &grid{inverseTangents, candela}
}

func (k *grid) Add(row *[Word]float64, mask uint64, w int, v *View, scale float64) {
	gain := scale * k.candela
	x0 := float64(w * Word)
	a0, a1 := v.Ahead[0], v.Ahead[1]
	f0, f1, f2, lean := v.falls(w)
	s0, s1, s2 := v.Square[0], v.Square[1], v.Square[2]
	r0, r1 := k.inverse[0]*v.Right[0], k.inverse[0]*v.Right[1]
	u0, u1 := k.inverse[1]*v.Up[0], k.inverse[1]*v.Up[1]
	even, cos := v.Even, v.Cos
	for ; mask != 0; mask &= mask - 1 {
		i := bits.TrailingZeros64(mask) & (Word - 1)
		x := x0 + float64(i)
		ahead := a0 + x*a1
		open, wide := ahead-math.Abs(r0+x*r1), ahead-math.Abs(u0+x*u1)
		square := s0 + x*(s1+x*s2)
		response := f0 + x*f1
		if even != 0 {
			response = cos*(response+x*x*f2)*lean[i] + even*math.Sqrt(square)
		}
		if open <= 0 || wide <= 0 || ahead <= 0 || response <= 0 {
			continue
		}
		row[i] += gain * open * wide * response / (ahead * square * square)
	}
}
