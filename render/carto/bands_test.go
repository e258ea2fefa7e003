package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// cells counts the cells that have data at all four corners.
func cells(g Grid) int {
	count := 0
	for j := range g.NY - 1 {
		for i := range g.NX - 1 {
			if !g.Masked(i, j) && !g.Masked(i+1, j) && !g.Masked(i, j+1) && !g.Masked(i+1, j+1) {
				count++
			}
		}
	}
	return count
}

func TestBandsCoverTheDataOnce(t *testing.T) {
	for seed := range rng(30) {
		g := studio(seed, 60, 48, 0.4)
		want := float64(cells(g)) * g.Step * g.Step
		for name, opts := range map[string]Options{"bare": {}, "paper": Paper(20), "coarse": {Scale: 20, Smoothing: 1, Tolerance: 0.5, Speck: 10}} {
			total := 0.0
			for _, b := range bands(g, stops12, opts) {
				if name == "bare" && b.area() < -1e-9 {
					t.Errorf("seed %d: band from %g has area %g", seed, b.Low, b.area())
				}
				total += b.area()
			}
			if !(math.Abs(total-want) <= 1e-6*want) {
				t.Errorf("seed %d, %s: bands cover %.6f m², the data %.6f m²", seed, name, total, want)
			}
		}
	}
}

func TestStepsLieInsideOneAnother(t *testing.T) {
	g := studio(4, 80, 64, 0.2)
	relief := Trace(g, stops12, Paper(20))
	bands, steps := relief.bands(), relief.Steps()
	over := 0.0
	for i := len(bands) - 1; i >= 0; i-- {
		over += bands[i].area()
		if !(math.Abs(steps[i].area()-over) <= 1e-6) {
			t.Errorf("step from %g has %.4f m², the bands over it %.4f m²", steps[i].Low, steps[i].area(), over)
		}
	}
}

func TestBandsHaveTheLinesPoints(t *testing.T) {
	relief := Trace(studio(6, 80, 64, 0.1), stops12, Paper(20))
	bands := relief.bands()
	for _, l := range relief.Lines {
		for _, b := range []Band{bands[l.Index], bands[l.Index+1]} {
			has := map[r2.Vec]bool{}
			for _, ring := range b.Rings {
				for _, p := range ring {
					has[p] = true
				}
			}
			for _, p := range l.Points {
				if !has[p] {
					t.Fatalf("the band %g..%g lacks the point %v of the line %g", b.Low, b.High, p, l.Level)
				}
			}
		}
	}
}

// winding counts how often the rings run round p.
func winding(rings [][]r2.Vec, p r2.Vec) int {
	w := 0
	for _, ring := range rings {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			side := r2.Cross(r2.Sub(b, a), r2.Sub(p, a))
			switch {
			case a.Y <= p.Y && b.Y > p.Y && side > 0:
				w++
			case b.Y <= p.Y && a.Y > p.Y && side < 0:
				w--
			}
		}
	}
	return w
}

func TestAPointLiesInItsOwnBand(t *testing.T) {
	g := studio(9, 100, 80, 0.1)
	bands := bands(g, stops12, Options{})
	for j := 1; j < g.NY-1; j++ {
		for i := 1; i < g.NX-1; i++ {
			// Just beside a point of the lattice the field is that of the point.
			p := r2.Add(g.At(i, j), r2.Vec{X: 1e-7, Y: 0.7e-7})
			v := float64(g.Value[j*g.NX+i])
			if g.Masked(i, j) || g.Masked(i+1, j) || g.Masked(i, j+1) || g.Masked(i+1, j+1) {
				continue
			}
			for _, b := range bands {
				want := 0
				if b.Low <= v && v < b.High {
					want = 1
				}
				if got := winding(b.Rings, p); got != want {
					t.Fatalf("point %d, %d of %g: band %g..%g winds %d times, want %d", i, j, v, b.Low, b.High, got, want)
				}
			}
		}
	}
}

func TestAMaskIsAHole(t *testing.T) {
	g := sampled(5, 5, 1, func(r2.Vec) float64 { return 7 })
	g.hide(2*5 + 2)
	bands := bands(g, []float64{5}, Options{})
	if n := len(bands[0].Rings); n != 0 {
		t.Errorf("the empty band has %d rings", n)
	}
	rings := bands[1].Rings
	if len(rings) != 2 || plane.Area(rings[0]) != 16 || plane.Area(rings[1]) != -4 {
		t.Errorf("want a square of 16 with a hole of −4, got %v", rings)
	}
}

func BenchmarkSteps(b *testing.B) {
	g := studio(2, 200, 160, 0)
	b.ReportAllocs()
	for b.Loop() {
		Trace(g, stops12, Options{}).Steps()
	}
}
