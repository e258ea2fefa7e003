package row

import (
	"math"
	"math/bits"
	"slices"
)

// axial is the kernel of an intensity that is the same all round the axis.
type axial struct {
	table    []float64 // cd against s = sin(t/2), at even steps from 0 to 1, the last one twice
	oneSided bool
}

// Axial is the kernel of an intensity that is the same all round the axis: at gives it in cd by the angle from the axis,
// radians, and peak is the greatest.
func Axial(at func(angle float64) float64, peak float64, oneSided bool) Kernel {
	return &axial{axialTable(at, peak), oneSided}
}

// The sizes of an axial table, and the error that ends its growth: relative, and below a
// thousandth of the peak relative to that.
const (
	leastTable = 512
	mostTable  = 16384
	tableError = 2e-4
)

// axialTable tabulates an intensity against s = sin(t/2), which spreads a beam's middle out and
// needs no arc cosine. It is refined until straight lines between its entries serve.
func axialTable(at func(angle float64) float64, peak float64) []float64 {
	bySine := func(s float64) float64 { return at(2 * math.Asin(s)) }
	floor := 1e-3 * peak
	table, bent := []float64{bySine(0), bySine(1)}, []bool{true}
	for n := 2; n <= mostTable && slices.Contains(bent, true); n *= 2 {
		table, bent = refined(table, bent, bySine, floor)
	}
	return append(table, table[len(table)-1])
}

// refined halves the steps of a table of f over 0..1, where bent says that straight lines do not serve.
func refined(table []float64, bent []bool, f func(float64) float64, floor float64) (fine []float64, still []bool) {
	n := 2 * len(bent)
	fine, still = make([]float64, n+1, n+2), make([]bool, n)
	for k, is := range bent {
		low, high := table[k], table[k+1]
		middle := (low + high) / 2
		if is {
			value := f(float64(2*k+1) / float64(n))
			off := math.Abs(value-middle) / max(value, floor)
			middle = value
			// Halving the step quarters the error.
			still[2*k] = n < leastTable || off > 4*tableError
			still[2*k+1] = still[2*k]
		}
		fine[2*k], fine[2*k+1] = low, middle
	}
	fine[n] = table[len(table)-1]
	return fine, still
}

func (k *axial) Add(row *[Word]float64, mask uint64, w int, v *View, scale float64) {
	table := k.table
	n := float64(len(table) - 2)
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
		s := n * math.Sqrt(max(0, min(1, 0.5-0.5*ahead*inverse)))
		at := int(s)
		low, high := table[at], table[at+1]
		row[i] += scale * (low + (s-float64(at))*(high-low)) * response / square
	}
}
