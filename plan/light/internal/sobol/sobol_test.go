package sobol_test

import (
	"testing"

	"scrimshaw/plan/light/internal/sobol"
)

// Of every run of 2^m points that starts at a multiple of 2^m, each box of 2^-a by 2^-(m-a) holds exactly one, whatever
// the shift.
func TestPointsAreANet(t *testing.T) {
	const m = 6
	for _, shift := range []sobol.Sample{{}, sobol.Shift(1), sobol.Shift(2)} {
		for _, start := range []uint32{0, 1 << m, 37 << m} {
			for a := range m + 1 {
				held := map[[2]int]int{}
				for k := range uint32(1 << m) {
					x, y := sobol.Point(start+k, shift[0], shift[1])
					held[[2]int{int(x * float64(int(1)<<a)), int(y * float64(int(1)<<(m-a)))}]++
				}
				if len(held) != 1<<m {
					t.Errorf("shift %v, points from %d, boxes of 2^-%d: %d of %d boxes hold a point", shift, start, a, len(held), 1<<m)
				}
			}
		}
	}
}

// Each coordinate of the first 2^m samples falls once into each part of 2^-m; two coordinates never agree.
func TestSamplesAreSpreadInEveryCoordinate(t *testing.T) {
	const m = 8
	all := sobol.Samples(1 << m)
	for d := range 4 {
		held := map[uint32]bool{}
		for k := range all {
			held[all[k][d]>>(32-m)] = true
		}
		if len(held) != 1<<m {
			t.Errorf("coordinate %d: %d of %d parts hold a sample", d, len(held), 1<<m)
		}
		for e := range d {
			same := 0
			for k := range all {
				if all[k][d] == all[k][e] {
					same++
				}
			}
			if same > 1<<m/8 {
				t.Errorf("coordinates %d and %d agree in %d samples", e, d, same)
			}
		}
	}
}

func TestShiftedSamplesStayInTheUnitSquare(t *testing.T) {
	all, shift := sobol.Samples(512), sobol.Shift(77)
	for k := range all {
		x, y, way := all[k].Shifted(&shift)
		for _, v := range [...]float64{x, y, way[0], way[1]} {
			if !(v > 0 && v < 1) {
				t.Fatalf("sample %d has a coordinate %g", k, v)
			}
		}
	}
}
