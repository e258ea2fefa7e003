// Package sobol is a low-discrepancy sequence of points: Sobol's (I. M. Sobol 1967, with the first direction numbers of
// Joe and Kuo 2008). The first two coordinates are a (0,2)-sequence in base 2: of every run of 2^m
// points that starts at a multiple of 2^m, each box of 2^-a by 2^-(m-a) holds exactly one. A digital shift, which flips the
// same bits of all points, keeps that.
package sobol

import "math/bits"

// Point gives the first two coordinates of point k, shifted by two words: each 0 to 1 and never either.
func Point(k uint32, shiftX, shiftY uint32) (x, y float64) {
	return Unit(bits.Reverse32(k) ^ shiftX), Unit(secondCoordinate(k) ^ shiftY)
}

// secondCoordinate is the second coordinate of point k as a binary fraction.
func secondCoordinate(k uint32) (y uint32) {
	for v := uint32(1) << 31; k != 0; k >>= 1 {
		if k&1 != 0 {
			y ^= v
		}
		v ^= v >> 1
	}
	return y
}

// Samples are the first n points in four coordinates, as binary fractions: two for a direction, two for
// the place that a ray starts at, which must know nothing of each other.
func Samples(n int) []Sample {
	var v [4][32]uint32
	for i := range 32 {
		v[0][i] = 1 << (31 - i)
	}
	copy(v[1][:], directionNumbers(1, 0, 1))
	copy(v[2][:], directionNumbers(2, 1, 1, 3))
	copy(v[3][:], directionNumbers(3, 1, 1, 3, 1))
	points := make([]Sample, n)
	for k := range points {
		for d := range v {
			for rest, i := k, 0; rest != 0; rest, i = rest>>1, i+1 {
				if rest&1 != 0 {
					points[k][d] ^= v[d][i]
				}
			}
		}
	}
	return points
}

// directionNumbers are the direction numbers of a primitive polynomial of a degree, its inner coefficients and
// the first odd numbers.
func directionNumbers(degree int, inner uint32, first ...uint32) []uint32 {
	m := append(make([]uint32, 0, 32), first...)
	for k := degree; k < 32; k++ {
		next := m[k-degree] ^ m[k-degree]<<degree
		for j := 1; j < degree; j++ {
			if inner>>(degree-1-j)&1 != 0 {
				next ^= m[k-j] << j
			}
		}
		m = append(m, next)
	}
	for i := range m {
		m[i] <<= 31 - i
	}
	return m
}

// Unit is the middle of the 2^-32 that a binary fraction stands for.
func Unit(f uint32) float64 { return (float64(f) + 0.5) / (1 << 32) }

// hash makes a word that has nothing to do with that of neighbouring numbers (the finaliser of
// MurmurHash3, of which every bit of the result depends on every bit of the number).
func hash(n uint32) uint32 {
	n ^= n >> 16
	n *= 0x85ebca6b
	n ^= n >> 13
	n *= 0xc2b2ae35
	return n ^ n>>16
}

// Sample is a point of the sequence: two figures for a direction and two for the place that a ray starts at.
type Sample [4]uint32

// Shift are four words by which samples are shifted: other ones for each number.
func Shift(number uint32) (shift Sample) {
	word := hash(number)
	for d := range shift {
		shift[d] = hash(word + uint32(d))
	}
	return shift
}

// Shifted is a sample after a digital shift: the place and the direction, each 0 to 1.
func (s *Sample) Shifted(shift *Sample) (x, y float64, way [2]float64) {
	return Unit(s[2] ^ shift[2]), Unit(s[3] ^ shift[3]), [2]float64{Unit(s[0] ^ shift[0]), Unit(s[1] ^ shift[1])}
}
