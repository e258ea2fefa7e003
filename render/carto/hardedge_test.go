package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// probing is a tracer over a field on a lattice, with the bounds of a probe.
func probing(f func(r2.Vec) float64) *tracer {
	g := sampled(41, 41, 0.05, f)
	return newTracer(g, []float64{20}, Options{Probe: f, Edge: 0.001}.withDefaults(g.Step))
}

// The corners of a rectangle's shadow, or of a rectangle of light, turned by any angle, are drawn to within the
// bound of the probe, and the area is the rectangle's.
func TestCornersOfAShadow(t *testing.T) {
	for _, turn := range []float64{0, 0.3, math.Pi / 4, 1.1, 2} {
		for _, inside := range []float64{2, 300} {
			outline := ink.TurnedBox(r2.Vec{X: 1.013, Y: 0.987}, r2.Vec{X: 0.9, Y: 0.5}, turn*180/math.Pi)
			f := func(p r2.Vec) float64 {
				if winding([][]r2.Vec{outline}, p) != 0 {
					return inside
				}
				return 302 - inside
			}
			lines := contours(sampled(41, 41, 0.05, f), []float64{20}, Options{Probe: f, Edge: 0.001})
			if len(lines) != 1 || !lines[0].Closed {
				t.Fatalf("turned by %g: %d lines", turn, len(lines))
			}
			for _, c := range outline {
				if d := distanceToLevel(lines, 20, c); d > 0.003 {
					t.Errorf("turned by %g, %g inside: the corner %v is %.1f mm off", turn, inside, c, 1000*d)
				}
			}
			if l := lines[0].Length(); !(math.Abs(l-2.8) <= 0.02) {
				t.Errorf("turned by %g: a line of %.3f m around 2.8 m", turn, l)
			}
		}
	}
}

// An edge across the lattice is found to within the bound wherever it lies between two points, whichever side is the
// brighter, and called hard; the light of the level runs on its left.
func TestAStraightEdge(t *testing.T) {
	for _, at := range []float64{1.001, 1.0137, 1.025, 1.0493} {
		for _, bright := range []float64{1, -1} {
			for _, upright := range []bool{true, false} {
				f := func(p r2.Vec) float64 {
					x := p.X
					if !upright {
						x = p.Y
					}
					if (x-at)*bright >= 0 {
						return 100
					}
					return 3
				}
				lines := contours(sampled(41, 41, 0.05, f), []float64{20}, Options{Probe: f, Edge: 0.001})
				for i, p := range lines[0].Points {
					x := p.X
					if !upright {
						x = p.Y
					}
					if !(math.Abs(x-at) <= 0.001) || !lines[0].isHard(i) {
						t.Errorf("an edge at %g is drawn at %g, hard %v", at, x, lines[0].isHard(i))
					}
				}
			}
		}
	}
}

// The edge beside a chord is found on either side of it, within a length of the chord; one on the chord is not bent, and
// a chord all in light or all in the dark has none.
func TestTheEdgeBesideAChord(t *testing.T) {
	p, q := r2.Vec{X: 0.9, Y: 1}, r2.Vec{X: 1.1, Y: 1}
	for _, c := range []struct {
		edge float64 // it is light over this height
		bent bool
	}{{1, false}, {1.0005, false}, {0.9995, false}, {1.05, true}, {0.95, true}, {1.19, true}, {0.81, true}, {1.21, false}, {0.79, false}} {
		f := probing(func(p r2.Vec) float64 {
			if p.Y >= c.edge {
				return 100
			}
			return 3
		})
		x, bent := f.offChord(p, q, 0)
		if bent != c.bent || bent && (!(math.Abs(x.Y-c.edge) <= 0.001) || !(math.Abs(x.X-1) <= 1e-9)) {
			t.Errorf("an edge at %g: bent %v at %v", c.edge, bent, x)
		}
		if on := f.onEdge(p, q, 0); on != (math.Abs(c.edge-1) < 0.001) {
			t.Errorf("an edge at %g: on it %v", c.edge, on)
		}
	}
	f := probing(func(p r2.Vec) float64 { return 100 * math.Round(p.Y/2+0.01) })
	if _, bent := f.offChord(p, r2.Vec{X: 0.9015, Y: 1}, 0); bent {
		t.Error("a chord of two bounds is bent")
	}
}

// The steepest of some samples is the first of the largest jumps, up or down; a jump is hard where the two sides are
// within the bound and half of what counts as an edge apart.
func TestJumps(t *testing.T) {
	f := probing(func(r2.Vec) float64 { return 1 })
	for want, samples := range [][]sample{
		{{0, 100}, {0.5, 1}, {1, 2}}, {{0, 2}, {0.5, 2}, {1, 100}}, {{0, 2}, {0.2, 3}, {0.5, 4}, {1, 40}},
	} {
		if got := f.steepest(samples); got != want {
			t.Errorf("%v: %d, want %d", samples, got, want)
		}
	}
	if got := f.steepest([]sample{{0, 1}, {0.5, 9}, {1, 1}}); got != 0 {
		t.Errorf("of two jumps alike number %d", got)
	}
	near, far := 0.001/0.05, 0.003/0.05
	for _, c := range []struct {
		a, b sample
		want bool
	}{
		{sample{0, 10}, sample{0.9 * near, 100}, true}, {sample{0.9 * near, 10}, sample{0, 100}, true}, {sample{0, 10}, sample{far, 100}, false},
		{sample{0, 100}, sample{0, 100 * math.Exp2(0.062)}, false}, {sample{0, 100}, sample{0, 100 * math.Exp2(0.063)}, true},
	} {
		if got := f.jump(c.a, c.b); got != c.want {
			t.Errorf("from %v to %v: %v", c.a, c.b, got)
		}
	}
}

// The smallest box around two holds both and no more, and a way into a box ends where it first meets it.
func TestBoxesAndWays(t *testing.T) {
	a, b := r2.Box{Min: r2.Vec{X: 1, Y: 5}, Max: r2.Vec{X: 3, Y: 9}}, r2.Box{Min: r2.Vec{X: 2, Y: -4}, Max: r2.Vec{X: 8, Y: 7}}
	if got := union(a, b); got != (r2.Box{Min: r2.Vec{X: 1, Y: -4}, Max: r2.Vec{X: 8, Y: 9}}) || union(b, a) != got {
		t.Errorf("around both %v", got)
	}
	for _, c := range []struct{ from, to, want r2.Vec }{
		{r2.Vec{X: -3, Y: 7}, r2.Vec{X: 2, Y: 7}, r2.Vec{X: 1, Y: 7}}, {r2.Vec{X: 2, Y: 12}, r2.Vec{X: 2, Y: 6}, r2.Vec{X: 2, Y: 9}},
		{r2.Vec{X: 5, Y: 3}, r2.Vec{X: 2, Y: 6}, r2.Vec{X: 3, Y: 5}}, {r2.Vec{X: 7, Y: 8}, r2.Vec{X: 2, Y: 8}, r2.Vec{X: 3, Y: 8}},
		{r2.Vec{X: 2, Y: 6}, r2.Vec{X: 2.5, Y: 6.5}, r2.Vec{X: 2, Y: 6}}, {r2.Vec{X: 2, Y: 4}, r2.Vec{X: 2, Y: 5}, r2.Vec{X: 2, Y: 5}},
	} {
		if got := entry(c.from, c.to, a); r2.Norm(r2.Sub(got, c.want)) > 1e-12 {
			t.Errorf("from %v to %v the box is met at %v, want %v", c.from, c.to, got, c.want)
		}
	}
}
