package study_test

import (
	"context"
	"math"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/study"
)

// The channels of a field add up to its light, and where one lamp shines alone they have its colour.
func TestColoursOfAField(t *testing.T) {
	s, err := study.Run(context.Background(), laidOut(t, `{scrimshaw: 1,
	  lights: {
	    warm: {output: {candela: 900, shape: uniform}, at: [0, 0], height: 2, aim: down, colour: 2700 K},
	    cool: {output: {candela: 900, shape: uniform}, at: [60, 0], height: 2, aim: down, colour: 6500 K}}}`), study.Options{Step: 2})
	if err != nil {
		t.Fatal(err)
	}
	f := s.Floor()
	all := s.Colours(f)
	seen := map[bool]int{}
	for n, c := range all {
		if f.Lattice.Masked(n%f.Lattice.NU, n/f.Lattice.NU) {
			continue
		}
		if y := float64(f.Lux[n]); !(math.Abs(c.Y()-y) <= 1e-5*y+1e-9) {
			t.Fatalf("point %d has %g lx by its channels, %g in all", n, c.Y(), y)
		}
		x := f.Lattice.At(n%f.Lattice.NU, n/f.Lattice.NU).X
		if math.Abs(x-30) < 26 {
			continue
		}
		kelvin, _ := colour.CCT(colour.XY(c))
		want := 2700.0
		if x > 30 {
			want = 6500
		}
		seen[x > 30]++
		if !(math.Abs(colour.Mired(kelvin)-colour.Mired(want)) <= 3) {
			t.Errorf("at x %.1f the light is %.0f K, want about %.0f", x, kelvin, want)
		}
	}
	if seen[true] < 3 || seen[false] < 3 {
		t.Errorf("points under the lamps: %v", seen)
	}
}
