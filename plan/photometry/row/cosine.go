package row

import (
	"math"
	"math/bits"
)

// Cosine is the kernel of a small Lambertian face, by its intensity on the axis, cd.
func Cosine(candela float64, oneSided bool) Kernel {
	return &cosine{candela, plain{cosineOfAxis, candela, oneSided}}
}

// Uniform is the kernel of a source with the same intensity everywhere, cd.
func Uniform(candela float64, oneSided bool) Kernel { return &plain{everywhere, candela, oneSided} }

// Line is the kernel of a thin tube with dark ends that lies along the lamp's right, by its intensity square to it, cd.
func Line(candela float64, oneSided bool) Kernel { return &plain{sineOfRight, candela, oneSided} }

type cosine struct {
	candela float64
	dome    plain
}

func (k *cosine) Add(row *[Word]float64, mask uint64, w int, v *View, scale float64) {
	if v.Even != 0 {
		k.dome.Add(row, mask, w, v, scale)
		return
	}
	k.onPlanes(row, mask, w, v, scale*k.candela)
}

// onPlanes needs no square root: E = I0 cos t cos i / d².
func (k *cosine) onPlanes(row *[Word]float64, mask uint64, w int, v *View, gain float64) {
	x0 := float64(w * Word)
	a0, a1, f0, f1 := v.Ahead[0], v.Ahead[1], v.Fall[0], v.Fall[1]
	s0, s1, s2 := v.Square[0], v.Square[1], v.Square[2]
	for ; mask != 0; mask &= mask - 1 {
		i := bits.TrailingZeros64(mask) & (Word - 1)
		x := x0 + float64(i)
		ahead, fall := a0+x*a1, f0+x*f1
		if ahead <= 0 || fall <= 0 {
			continue
		}
		square := s0 + x*(s1+x*s2)
		row[i] += gain * ahead * fall / (square * square)
	}
}

// plain is a kernel of an intensity that takes a factor or none.
type plain struct {
	angle    angle
	candela  float64
	oneSided bool
}

// angle is the factor of an intensity.
type angle uint8

const (
	everywhere angle = iota
	cosineOfAxis
	sineOfRight
)

func (k *plain) Add(row *[Word]float64, mask uint64, w int, v *View, scale float64) {
	gain := scale * k.candela
	x0 := float64(w * Word)
	a0, a1 := v.Ahead[0], v.Ahead[1]
	f0, f1, f2, lean := v.falls(w)
	s0, s1, s2 := v.Square[0], v.Square[1], v.Square[2]
	even, cos, oneSided := v.Even, v.Cos, k.oneSided
	for ; mask != 0; mask &= mask - 1 {
		i := bits.TrailingZeros64(mask) & (Word - 1)
		x := x0 + float64(i)
		ahead := a0 + x*a1
		square := s0 + x*(s1+x*s2)
		inverse := 1 / math.Sqrt(square)
		response := even + cos*(f0+x*(f1+x*f2))*lean[i]*inverse
		if !(response > 0) || oneSided && ahead <= 0 { // in the point itself the response is no number
			continue
		}
		row[i] += gain * k.factor(ahead, v.Right[0]+x*v.Right[1], inverse) * response / square
	}
}

// factor is that of the intensity in a direction, by its parts along the axis and the right times inverse.
func (k *plain) factor(ahead, right, inverse float64) float64 {
	switch k.angle {
	case cosineOfAxis:
		return max(0, ahead*inverse)
	case sineOfRight:
		across := right * inverse
		return math.Sqrt(max(0, 1-across*across))
	}
	return 1
}
