package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestExtrapolateCarriesTheFieldOn(t *testing.T) {
	f := func(p r2.Vec) float64 { return 100 * math.Exp(p.X/3) } // straight in the logarithm
	g := sampled(20, 10, 0.1, f)
	for n := range g.Value {
		if i := n % g.NX; i >= 15 {
			g.hide(n)
			g.Value[n] = 0
		}
	}
	grown := Extrapolate(g, 2)
	for i := 15; i < 20; i++ {
		if got, want := grown.Masked(i, 5), i >= 17; got != want {
			t.Errorf("column %d masked %v, want %v", i, got, want)
		}
	}
	for i := 15; i < 17; i++ {
		want := f(g.At(i, 5))
		// Diagonal neighbours lie half a step closer or further, evenly.
		if got := grown.value(i, 5); !(math.Abs(got-want) <= 0.005*want) {
			t.Errorf("column %d: %g, want %g", i, got, want)
		}
	}
	if g.Value[15] != 0 || !g.Masked(15, 0) {
		t.Error("the given grid was written to")
	}
}

func TestExtrapolateKeepsDarkDark(t *testing.T) {
	g := sampled(6, 6, 1, func(r2.Vec) float64 { return 0 })
	g.hide(14)
	if v := Extrapolate(g, 1).Value[14]; v != 0 {
		t.Errorf("%g lx beside no light at all", v)
	}
}

func TestDenoiseStaysWithinItsBound(t *testing.T) {
	const bound = 0.03
	g := studio(11, 100, 80, 0.02)
	calm := Denoise(g, bound)
	// Noise shows in what a point differs from the mean of its two neighbours.
	rough := func(g Grid, n int) float64 {
		return math.Abs(math.Log2(float64(g.Value[n] * g.Value[n] / (g.Value[n-1] * g.Value[n+1]))))
	}
	before, after := 0.0, 0.0
	for n, v := range g.Value {
		if g.masked(n) {
			if calm.Value[n] != v {
				t.Fatalf("a masked value changed")
			}
			continue
		}
		if d := math.Abs(math.Log2(float64(calm.Value[n] / v))); d > bound+1e-6 {
			t.Fatalf("a value changed by %.4f stops, bound %.4f", d, bound)
		}
		if i := n % g.NX; i > 0 && i < g.NX-1 && !g.masked(n-1) && !g.masked(n+1) {
			before += rough(g, n)
			after += rough(calm, n)
		}
	}
	if after > before/2 {
		t.Errorf("roughness %.1f stops in all, %.1f before: not calmer", after, before)
	}
}

func TestDenoiseKeepsEdges(t *testing.T) {
	step := func(p r2.Vec) float64 {
		if p.X < 1 {
			return 10
		}
		return 80
	}
	g := sampled(21, 21, 0.1, step)
	calm := Denoise(g, 0.05)
	for n := range g.Value {
		if calm.Value[n] != g.Value[n] && !(math.Abs(float64(calm.Value[n]/g.Value[n])-1) <= 1e-6) {
			t.Fatalf("beside the edge %g became %g", g.Value[n], calm.Value[n])
		}
	}
}

// Neighbours less than half a stop apart are averaged, those further apart stand on two sides of an edge and keep
// their values: whichever is the brighter, beside or over each other.
func TestLikeNeighboursAreAveraged(t *testing.T) {
	for _, stops := range []float64{0.1, 0.4, 0.49, 0.53, 0.7, 3} {
		for _, sign := range []float64{1, -1} {
			for _, upright := range []bool{false, true} {
				g := sampled(10, 10, 1, func(p r2.Vec) float64 {
					if upright && p.Y >= 5 || !upright && p.X >= 5 {
						return 100 * math.Exp2(sign*stops)
					}
					return 100
				})
				calm := Denoise(g, 0.05)
				for n := range g.Value {
					i, j := n%10, n/10
					if upright {
						i, j = j, i
					}
					beside, away := i == 4 || i == 5, i == 0 || i == 9
					moved := math.Abs(math.Log2(float64(calm.Value[n]/g.Value[n]))) > 1e-3
					if like := stops < 0.5; beside && moved != like || away && !like && moved {
						t.Errorf("%g stops, upright %v: the value at %d, %d moved: %v", sign*stops, upright, i, j, moved)
					}
				}
			}
		}
	}
}

// Twelve rounds of the mean of a point, counted twice, and its four neighbours spread what stands at one point by a
// variance of a third each way a round, four in all, and lose nothing of it.
func TestDenoiseSpreadsByItsVariance(t *testing.T) {
	const size, middle, extra = 31, 15, 0.3
	g := sampled(size, size, 1, func(r2.Vec) float64 { return 1 })
	g.Value[middle*size+middle] += extra
	calm := Denoise(g, 1)
	var sum, x2, y2, x, y float64
	for n, v := range calm.Value {
		d, i, j := float64(v-1)/extra, float64(n%size-middle), float64(n/size-middle)
		sum, x, y, x2, y2 = sum+d, x+d*i, y+d*j, x2+d*i*i, y2+d*j*j
	}
	for name, c := range map[string][2]float64{"sum": {sum, 1}, "mean x": {x, 0}, "mean y": {y, 0}, "variance x": {x2, 4}, "variance y": {y2, 4}} {
		if !(math.Abs(c[0]-c[1]) <= 0.01) {
			t.Errorf("%s is %.4f, want %g", name, c[0], c[1])
		}
	}
}

// A field and its mirror image are calmed alike, and one that is even stays so up to its rim and beside a mask.
func TestDenoiseHasNoSides(t *testing.T) {
	const nx, ny = 24, 17
	g := studio(3, nx, ny, 0.1)
	g.NX, g.NY, g.Value = nx, ny, g.Value[:nx*ny]
	mirrored := func(g Grid, n int) int { return (ny-1-n/nx)*nx + nx - 1 - n%nx }
	m := sampled(nx, ny, g.Step, func(r2.Vec) float64 { return 0 })
	for n := range g.Value {
		m.Value[mirrored(g, n)] = g.Value[n]
		if g.masked(n) {
			m.hide(mirrored(g, n))
		}
	}
	a, b := Denoise(g, 0.2), Denoise(m, 0.2)
	for n := range g.Value {
		if v, w := a.Value[n], b.Value[mirrored(g, n)]; !(math.Abs(float64(v-w)) <= 1e-5*float64(v)) {
			t.Errorf("point %d is %g, in the mirror %g", n, v, w)
		}
		if !g.masked(n) {
			g.Value[n] = 7
		}
	}
	for n, v := range Denoise(g, 0.2).Value {
		if !g.masked(n) && !(math.Abs(float64(v)-7) <= 1e-5) {
			t.Errorf("an even field of 7 became %g at point %d", v, n)
		}
	}
	for _, stops := range []float64{0, -1, math.NaN()} {
		if got := Denoise(a, stops); &got.Value[0] != &a.Value[0] {
			t.Errorf("%g stops of calm changed the field", stops)
		}
	}
}

// What is grown goes on by no more than a factor of two, and beside a single point by its own value; a straight
// neighbour weighs twice what a diagonal one does, and nothing is carried further than asked.
func TestExtrapolateOnwards(t *testing.T) {
	const nx = 70 // a mask of several words
	row := func(values ...float32) Grid {
		g := sampled(nx, 3, 1, func(r2.Vec) float64 { return 0 })
		for n := range g.Value {
			i, j := n%nx, n/nx
			if j == 1 && i < len(values) {
				g.Value[n] = values[i]
			} else {
				g.hide(n)
			}
		}
		return g
	}
	for _, c := range []struct {
		values []float32
		want   float32
	}{{[]float32{8}, 8}, {[]float32{8, 4}, 2}, {[]float32{2, 3}, 4.5}, {[]float32{1, 4}, 8}, {[]float32{40, 4}, 2}, {[]float32{0, 4}, 4}, {[]float32{4, 0}, 0}} {
		n := len(c.values)
		grown := Extrapolate(row(c.values...), 1)
		if got := grown.Value[nx+n]; !(math.Abs(float64(got-c.want)) <= 1e-5) || grown.Masked(n, 1) || !grown.Masked(n+1, 1) {
			t.Errorf("%v runs on to %g, want %g and no further", c.values, got, c.want)
		}
	}
	g := row(8)
	g.Value[2] = 1 // at (2, 0): diagonal to (1, 1), two away from (0, 1)
	g.Mask[0] &^= 1 << 2
	if got, want := float64(Extrapolate(g, 1).Value[nx+1]), math.Pow(8, 1/1.5); !(math.Abs(got-want) <= 1e-5) {
		t.Errorf("between 8 straight and 1 diagonal %g, want %g", got, want)
	}
	if again := Extrapolate(g, 0); again.Masked(0, 1) || !again.Masked(1, 1) {
		t.Error("growing by nothing changed what has data")
	}
	if far := Extrapolate(row(8), nx); far.Value[3*nx-1] != 8 && !(math.Abs(float64(far.Value[3*nx-1])-8) <= 1e-4) || far.Masked(nx-1, 2) {
		t.Errorf("8 carried to the far end is %g", far.Value[3*nx-1])
	}
}

func BenchmarkDenoise(b *testing.B) {
	g := studio(2, 200, 160, 0.01)
	b.ReportAllocs()
	for b.Loop() {
		Denoise(g, 0.03)
	}
}
