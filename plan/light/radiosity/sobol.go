package radiosity

import "math/bits"

// The points that rays are made of are Sobol's (I. M. Sobol 1967, with the first direction numbers of
// Joe and Kuo 2008). The first two coordinates are a (0,2)-sequence in base 2: of every run of 2^m
// points that starts at a multiple of 2^m, each box of 2^-a by 2^-(m-a) holds exactly one. Turning the
// same bits of all points keeps that.

// sobol gives point k, turned by two words, each coordinate 0 to 1 and never either.
func sobol(k uint32, turnX, turnY uint32) (x, y float64) {
	return unit(bits.Reverse32(k) ^ turnX), unit(secondCoordinate(k) ^ turnY)
}

// receptorSample is point k of those for receptors, turned so that no direction runs along an axis.
func receptorSample(k int) (x, y float64) { return sobol(uint32(k), 0x6c8e9cf5, 0x2f0b4c47) }

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

// sobol4 is the first n points in four coordinates, as binary fractions: two for a direction, two for
// the place that a ray starts at, which must know nothing of each other.
func sobol4(n int) []samplePoint {
	var v [4][32]uint32
	for i := range 32 {
		v[0][i] = 1 << (31 - i)
	}
	copy(v[1][:], directionNumbers(1, 0, 1))
	copy(v[2][:], directionNumbers(2, 1, 1, 3))
	copy(v[3][:], directionNumbers(3, 1, 1, 3, 1))
	points := make([]samplePoint, n)
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

// unit is the middle of the 2^-32 that a binary fraction stands for.
func unit(f uint32) float64 { return (float64(f) + 0.5) / (1 << 32) }

// hash makes a word that has nothing to do with that of neighbouring numbers (the finaliser of
// MurmurHash3, of which every bit of the result depends on every bit of the number).
func hash(n uint32) uint32 {
	n ^= n >> 16
	n *= 0x85ebca6b
	n ^= n >> 13
	n *= 0xc2b2ae35
	return n ^ n>>16
}

// samplePoint is a point of the sequence: two figures for a direction and two for the place that a ray starts at.
type samplePoint [4]uint32

// digitalShift are four words by which the sample points of a patch, or of patches that look alike, are shifted.
func digitalShift(number uint32) (turn samplePoint) {
	word := hash(number)
	for d := range turn {
		turn[d] = hash(word + uint32(d))
	}
	return turn
}

// shifted is a sample point after a digital shift: the place and the direction, each 0 to 1.
func (s *samplePoint) shifted(turn *samplePoint) (x, y float64, way [2]float64) {
	return unit(s[2] ^ turn[2]), unit(s[3] ^ turn[3]), [2]float64{unit(s[0] ^ turn[0]), unit(s[1] ^ turn[1])}
}
