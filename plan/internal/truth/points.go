package truth

import "math/bits"

// PCG is a small generator of random numbers with 64 bits of state, the same on every machine (M. O'Neill,
// PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random Number Generation, 2014).
type PCG struct{ state uint64 }

// NewPCG is a generator that gives other numbers for every seed.
func NewPCG(seed uint64) *PCG { return &PCG{mix(seed)} }

// Bits gives 32 random bits.
func (p *PCG) Bits() uint32 {
	old := p.state
	p.state = old*6364136223846793005 + 1442695040888963407
	return bits.RotateLeft32(uint32((old>>18^old)>>27), -int(old>>59))
}

// Float gives a number from 0 up to 1.
func (p *PCG) Float() float64 { return float64(p.Bits()) * unitBit }

// unitBit is the weight of the last of 32 bits of a number from 0 to 1.
const unitBit = 1.0 / (1 << 32)

// mix spreads the bits of a number over all of it (the finisher of SplitMix64).
func mix(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// points are the numbers that one sample is made of, four at a time: a scrambled Sobol point for the first
// groups, each group with its own order of the points (B. Burley, Practical Hash-based Owen Scrambling, 2020), and plain
// random numbers after those.
type points struct {
	index uint32
	seed  uint64
	group uint64
	plain PCG
}

// evenGroups is how many groups of four numbers are spread evenly.
const evenGroups = 6

func newPoints(seed uint64, index uint32) points {
	return points{index: index, seed: seed, plain: PCG{mix(mix(seed) + uint64(index))}}
}

// next gives four numbers from 0 up to 1.
func (p *points) next() (four [4]float64) {
	if p.group >= evenGroups {
		for i := range four {
			four[i] = p.plain.Float()
		}
		return four
	}
	key := mix(p.seed + p.group*0x9e3779b97f4a7c15)
	index := owen(p.index, uint32(key))
	for i := range four {
		key = mix(key)
		x := owen(sobol(i, index), uint32(key)) ^ uint32(key>>32)
		four[i] = float64(x) * unitBit
	}
	p.group++
	return four
}

// owen scrambles the bits of x from the first to the last, each by those before it.
func owen(x, seed uint32) uint32 {
	x = bits.Reverse32(x)
	x ^= x * 0x3d20adea
	x += seed
	x *= seed>>16 | 1
	x ^= x * 0x05526c56
	x ^= x * 0x53a22864
	return bits.Reverse32(x)
}

// sobol gives dimension d, 0 to 3, of a point of Sobol's sequence.
func sobol(d int, index uint32) uint32 {
	t := &sobolTables[d]
	return t[0][index&255] ^ t[1][index>>8&255] ^ t[2][index>>16&255] ^ t[3][index>>24]
}

// sobolTables hold what every byte of an index gives, by dimension.
var sobolTables = makeSobol()

// primitive are the polynomials over GF(2) of the dimensions after the first, as the degree, the inner
// coefficients, and the first direction numbers (S. Joe and F. Kuo, 2008).
var primitive = [...]struct {
	degree, inner uint32
	first         []uint32
}{{1, 0, []uint32{1}}, {2, 1, []uint32{1, 3}}, {3, 1, []uint32{1, 3, 1}}}

func makeSobol() (tables [4][4][256]uint32) {
	for d := range tables {
		directions := sobolDirections(d)
		for b := range 4 {
			for v := range 256 {
				for k := range 8 {
					if v>>k&1 != 0 {
						tables[d][b][v] ^= directions[8*b+k]
					}
				}
			}
		}
	}
	return tables
}

// sobolDirections are the direction numbers of a dimension.
func sobolDirections(d int) (v [32]uint32) {
	if d == 0 {
		for i := range v {
			v[i] = 1 << (31 - i)
		}
		return v
	}
	p := primitive[d-1]
	s := int(p.degree)
	for i := range v {
		if i < s {
			v[i] = p.first[i] << (31 - i)
			continue
		}
		v[i] = v[i-s] ^ v[i-s]>>s
		for k := 1; k < s; k++ {
			if p.inner>>(s-1-k)&1 != 0 {
				v[i] ^= v[i-k]
			}
		}
	}
	return v
}
