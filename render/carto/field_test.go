package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

func TestGrowCarriesTheFieldOn(t *testing.T) {
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
		if got := grown.value(i, 5); math.Abs(got-want) > 0.005*want {
			t.Errorf("column %d: %g, want %g", i, got, want)
		}
	}
	if g.Value[15] != 0 || !g.Masked(15, 0) {
		t.Error("the given grid was written to")
	}
}

func TestGrowKeepsDarkDark(t *testing.T) {
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
		if calm.Value[n] != g.Value[n] && math.Abs(float64(calm.Value[n]/g.Value[n])-1) > 1e-6 {
			t.Fatalf("beside the edge %g became %g", g.Value[n], calm.Value[n])
		}
	}
}

func BenchmarkDenoise(b *testing.B) {
	g := studio(2, 200, 160, 0.01)
	b.ReportAllocs()
	for b.Loop() {
		Denoise(g, 0.03)
	}
}
