package raster_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light/internal/raster"
)

func TestCeil(t *testing.T) {
	for _, c := range []struct {
		x    float64
		want int
	}{{-3, 0}, {0, 0}, {0.001, 1}, {1, 1}, {1.5, 2}, {8.9, 9}, {9, 9}, {1e300, 9}, {math.Inf(1), 9}, {math.NaN(), 0}} {
		if got := raster.Ceil(c.x, 9); got != c.want {
			t.Errorf("%g: %d, want %d", c.x, got, c.want)
		}
	}
}

// A triangle with its left edge from (1, 0.5) up to (4, 3): it crosses the rows 1 and 2; row 3 belongs to
// what lies above.
func TestScan(t *testing.T) {
	var r raster.Spans
	r.Resize(9, 5)
	first, last := r.Scan([]r2.Vec{{X: 1, Y: 0.5}, {X: 12, Y: 3}, {X: 4, Y: 3}}, 0, 5)
	if first != 1 || last != 3 {
		t.Fatalf("rows %d to %d, want 1 to 3", first, last)
	}
	if !slices.Equal(r.Left[1:3], []int32{2, 3}) || !slices.Equal(r.Right[1:3], []int32{4, 8}) {
		t.Errorf("left %v, right %v", r.Left[1:3], r.Right[1:3])
	}
}

// Edges followed row by row are where the straight line is, on lattices near and far.
func TestScanAgainstLines(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	var r raster.Spans
	r.Resize(300, 500)
	for n := range 2000 {
		far := math.Pow(10, 2+float64(n%12))
		at := func() float64 { return far * (random.Float64() - 0.5) }
		o := []r2.Vec{{X: at(), Y: at()}, {X: at(), Y: at()}, {X: at(), Y: at()}}
		first, last := r.Scan(o, 0, 500)
		for j := first; j < last; j++ {
			left, right := crossings(o, float64(j))
			if off(left, r.Left[j]) || off(right, r.Right[j]) {
				t.Fatalf("%v, row %d: %d to %d, want %g to %g", o, j, r.Left[j], r.Right[j], left, right)
			}
		}
	}
}

// off says whether a run does not begin at the least whole number from x on, give and take the last
// digits of a far point.
func off(x float64, begin int32) bool {
	slack := 1e-6 + math.Abs(x)*1e-9
	return int(begin) < raster.Ceil(x-slack, 300) || int(begin) > raster.Ceil(x+slack, 300)
}

// crossings is where the line of a row cuts a triangle.
func crossings(o []r2.Vec, y float64) (left, right float64) {
	left, right = math.Inf(1), math.Inf(-1)
	for i, a := range o {
		b := o[(i+1)%3]
		if (a.Y <= y) != (b.Y <= y) {
			x := a.X + (y-a.Y)/(b.Y-a.Y)*(b.X-a.X)
			left, right = min(left, x), max(right, x)
		}
	}
	return left, right
}

// Bands of rows get the spans that the whole lattice gets, and two polygons share no point of the edge
// between them.
func TestScanInBands(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	var all, band raster.Spans
	all.Resize(200, 160)
	band.Resize(200, 160)
	for range 500 {
		at := func() r2.Vec { return r2.Vec{X: 400*random.Float64() - 100, Y: 400*random.Float64() - 100} }
		a, b, c, d := at(), at(), at(), at()
		first, last := all.Scan([]r2.Vec{a, b, c}, 0, 160)
		for from := 0; from < 160; from += 8 {
			low, high := band.Scan([]r2.Vec{a, b, c}, from, from+8)
			for j := max(from, first); j < min(from+8, last); j++ {
				if j < low || j >= high || band.Left[j] != all.Left[j] || band.Right[j] != all.Right[j] {
					t.Fatalf("row %d differs in its band", j)
				}
			}
		}
		if r2.Cross(r2.Sub(b, a), r2.Sub(c, a))*r2.Cross(r2.Sub(b, a), r2.Sub(d, a)) > 0 {
			continue // the neighbour lies on the same side
		}
		low, high := band.Scan([]r2.Vec{a, b, d}, 0, 160)
		for j := max(first, low); j < min(last, high); j++ {
			if max(all.Left[j], band.Left[j]) < min(all.Right[j], band.Right[j]) {
				t.Fatalf("row %d: %d to %d and %d to %d share points", j, all.Left[j], all.Right[j], band.Left[j], band.Right[j])
			}
		}
	}
}

// All points lie in their hull, which turns left at each corner, and its corners are among them.
func TestHull(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 3))
	for n := range 300 {
		var points []r2.Vec
		for range n % 12 {
			points = append(points, r2.Vec{X: float64(random.IntN(8)), Y: float64(random.IntN(8))})
		}
		given := slices.Clone(points)
		hull := raster.Hull([]r2.Vec{{X: -1}}, points)[1:]
		for i, a := range hull {
			b := hull[(i+1)%len(hull)]
			if !slices.Contains(given, a) {
				t.Fatalf("%v: corner %v is new", given, a)
			}
			for _, p := range given {
				if turn := r2.Cross(r2.Sub(b, a), r2.Sub(p, a)); turn < 0 || turn == 0 && !between(p, a, b) {
					t.Fatalf("%v: %v lies outside of %v to %v", given, p, a, b)
				}
			}
		}
		if spread := slices.ContainsFunc(given, func(p r2.Vec) bool { return p != given[0] }); spread != (len(hull) > 0) {
			t.Fatalf("%v have the hull %v", given, hull)
		}
	}
}

// between says whether a point of the line through a and b lies between them.
func between(p, a, b r2.Vec) bool { return r2.Dot(r2.Sub(p, a), r2.Sub(p, b)) <= 0 }
