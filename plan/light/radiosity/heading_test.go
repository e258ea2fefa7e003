package radiosity

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
)

// What comes back to domes that are each turned to one place is what single domes get that are turned there: in
// furnished rooms, with neighbours that lend each other what they see and with points too far apart for that.
func TestTurnedLatticeAgreesWithPoints(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 52))
	for _, step := range []float64{0.05, 0.4} {
		var off []float64
		for range 6 {
			off = append(off, turnedRoom(t, r, step)...)
		}
		mean := 0.0
		for _, o := range off {
			mean += o / float64(len(off))
		}
		slices.Sort(off)
		p95 := off[len(off)*95/100]
		t.Logf("%g m apart: off by %.2f %% in the mean, %.1f %% at 95 of 100", step, 100*mean, 100*p95)
		if mean > 0.015 || p95 > 0.05 {
			t.Errorf("points %g m apart are off by %.2f %% in the mean, %.1f %% at 95 of 100", step, 100*mean, 100*p95)
		}
	}
}

// turnedRoom is how far fifty points of a turned lattice in a random room are off, as shares.
func turnedRoom(t *testing.T, r *rand.Rand, step float64) (off []float64) {
	s := furnished(r)
	top := s.Sheets[1].Corners[2]
	toward := r3.Vec{X: r.Float64() * top.X, Y: r.Float64() * top.Y, Z: 1.2}
	l := receptor.Lattice{Origin: r3.Vec{X: 0.013, Y: 0.017, Z: 1.2}, U: r3.Vec{X: step}, V: r3.Vec{Y: step}, Toward: &toward, Response: receptor.Dome}
	l.NU, l.NV = int((top.X-0.013)/step), int((top.Y-0.017)/step)
	_, bvh := trace(t, s, usual, nil, nil)
	at := func(n int) r3.Vec {
		return r3.Add(l.Origin, r3.Vec{X: float64(n%l.NU) * step, Y: float64(n/l.NU) * step})
	}
	l.Mask = make([]uint64, (l.NU*l.NV+63)/64)
	for n := range l.NU * l.NV {
		if _, in := bvh.Inside(at(n)); in {
			l.Mask[n>>6] |= 1 << (n & 63)
		}
	}
	var points []receptor.Receptor
	var index []int
	for len(points) < 50 {
		if n := r.IntN(l.NU * l.NV); !l.Masked(n%l.NU, n/l.NU) {
			points = append(points, receptor.Receptor{At: at(n), Axis: r3.Unit(r3.Sub(toward, at(n))), Response: receptor.Dome})
			index = append(index, n)
		}
	}
	tr, _ := trace(t, s, usual, points, []receptor.Lattice{l})
	solution := solve(t, tr, &bulb{bvh: bvh, at: free(r, s, bvh), flux: grey(2000), cos: -1})
	planes, err := solution.Lattice(context.Background(), 0)
	if err != nil {
		t.Fatal(err)
	}
	for i, n := range index {
		want := 0.0
		for _, e := range solution.Point(i, 0) {
			want += e[1]
		}
		off = append(off, math.Abs(float64(planes[0][l.NU*l.NV+n])/want-1))
	}
	return off
}

// A picture weighs what each point sees by the point's own axis, however many elements are in it.
func TestPictureWeighsByAxis(t *testing.T) {
	for _, many := range []bool{false, true} {
		q := itemBuffer{
			seen: []uint32{0, 1, 2}, short: []uint16{0, 1, 2, 0},
			turned: []heading{{x: 1}, {}}, ways: []heading{{x: -1}, {x: 0.5, z: 0.25}},
		}
		if many {
			q.long, q.short = []uint32{0, 1, 2, 0}, nil
		}
		sums, _ := q.sum(nil, nil, 2, 2, []columns32{{3}, {5, 1}, {7}})
		// The first point sees 0 against its axis and 2 at a cosine of 1/2, the other 1 and 0 and has no axis.
		if want := []columns32{{10.5}, {8, 1}}; !slices.Equal(sums, want) {
			t.Errorf("many %v: the sums are %v, want %v", many, sums, want)
		}
	}
}
