package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// board is the shadow, on the floor, of an upright board 1.2 m long that reaches from 0.4 m to
// 1.0 m, turned by 27°, under a lamp at (1, 1, 2.2): each of its corners carried on to the floor.
func board() (shadow []r2.Vec, light func(r2.Vec) float64) {
	lamp := r2.Vec{X: 1, Y: 1}
	sin, cos := math.Sincos(27 * math.Pi / 180)
	along, middle := r2.Vec{X: cos * 0.6, Y: sin * 0.6}, r2.Vec{X: 1.9, Y: 2.1}
	for _, c := range []struct{ end, z float64 }{{-1, 0.4}, {1, 0.4}, {1, 1.0}, {-1, 1.0}} {
		top := r2.Add(middle, r2.Scale(c.end, along))
		shadow = append(shadow, r2.Add(lamp, r2.Scale(2.2/(2.2-c.z), r2.Sub(top, lamp))))
	}
	e := floor(lamp.X, lamp.Y, 2.2)
	return shadow, func(p r2.Vec) float64 {
		if winding([][]r2.Vec{shadow}, p) != 0 {
			return 4 // lx, what the room gives back
		}
		return 4 + e(p)
	}
}

// narrow says whether p lies so near to a corner of the shadow that it is narrower there than a
// step of the lattice, which may pass it by.
func narrow(shadow []r2.Vec, p r2.Vec, step float64) bool {
	n := len(shadow)
	for i, c := range shadow {
		a, b := r2.Sub(shadow[(i+1)%n], c), r2.Sub(shadow[(i+n-1)%n], c)
		inner := math.Atan2(r2.Cross(a, b), r2.Dot(a, b))
		if inner < math.Pi/6 && 2*r2.Norm(r2.Sub(p, c))*math.Tan(inner/2) < step {
			return true
		}
	}
	return false
}

func TestShadowEdgesLieWithinFiveMillimetres(t *testing.T) {
	const allowed = 0.005
	shadow, light := board()
	outline := Line{Points: shadow, Closed: true}
	g := sampled(101, 101, 0.05, light)
	probes := 0
	for name, opts := range map[string]Options{"bare": {}, "paper": Paper(20)} {
		opts.Probe = func(p r2.Vec) float64 { probes++; return light(p) }
		for _, level := range []float64{8, 16, 24} {
			lines := contours(g, []float64{level}, opts)
			// Every part of a line that is called hard lies on the shadow's outline ...
			for _, l := range lines {
				for i := range l.spans() {
					a, b := l.span(i)
					if !l.isHard(i) || !l.isHard((i+1)%len(l.Points)) {
						continue
					}
					for _, s := range []float64{0, 0.25, 0.5, 0.75} {
						p := r2.Add(a, r2.Scale(s, r2.Sub(b, a)))
						if d := distanceToLevel([]Line{outline}, 0, p); d > allowed && !narrow(shadow, p, g.Step) {
							t.Errorf("%s: %g lx is %.1f mm off the shadow at %v", name, level, d*1000, p)
						}
					}
				}
			}
			// ... and every part of the outline, corners too, is drawn.
			for i := range outline.spans() {
				a, b := outline.span(i)
				for s := 0.0; s < 1; s += 0.01 {
					p := r2.Add(a, r2.Scale(s, r2.Sub(b, a)))
					if d := distanceToLevel(lines, level, p); d > allowed && !narrow(shadow, p, g.Step) {
						t.Errorf("%s: the shadow at %v is %.1f mm from the line of %g lx", name, p, d*1000, level)
					}
				}
			}
		}
	}
	// The outline passes through some 120 cells. Each takes a dozen probes for each level.
	if limit := 2 * 3 * 12 * 120; probes > limit {
		t.Errorf("%d probes, want %d at most", probes, limit)
	}
}

func TestWithoutAProbeEdgesAreStairs(t *testing.T) {
	// What the probe is for: without it the same edge is out by more than 5 mm.
	shadow, light := board()
	worst := 0.0
	for _, l := range contours(sampled(101, 101, 0.05, light), []float64{16}, Options{}) {
		for _, p := range l.Points {
			if light(p) < 40 && math.Abs(p.X-1.9) < 0.5 {
				worst = math.Max(worst, distanceToLevel([]Line{{Points: shadow, Closed: true}}, 0, p))
			}
		}
	}
	if worst < 0.005 {
		t.Errorf("stairs of %.1f mm only: the test above proves nothing", worst*1000)
	}
}

func TestASlopeIsNotTakenForAnEdge(t *testing.T) {
	// Close under a lamp the light changes by more than a stop a step, evenly.
	f := floor(1, 1, 0.06)
	g := sampled(41, 41, 0.05, f)
	for _, l := range contours(g, stops12, Options{Probe: f}) {
		for i := range l.Points {
			if l.isHard(i) {
				t.Fatalf("the line of %g is called hard at %v", l.Level, l.Points[i])
			}
		}
	}
}

func TestProbesThatAreNotNumbersDoNoHarm(t *testing.T) {
	_, light := board()
	g := sampled(101, 101, 0.05, light)
	want := len(contours(g, stops12, Options{}))
	if got := len(contours(g, stops12, Options{Probe: func(r2.Vec) float64 { return math.NaN() }})); got != want {
		t.Errorf("%d lines, %d without the probe", got, want)
	}
}

func BenchmarkProbed(b *testing.B) {
	_, light := board()
	g := sampled(200, 160, 0.05, light)
	opts := Paper(20)
	opts.Probe = light
	b.ReportAllocs()
	for b.Loop() {
		contours(g, stops12, opts)
	}
}

func TestRoundShadowsAreRound(t *testing.T) {
	// A disc's shadow 0.36 m across: chords from cell to cell would be out by up to 3.5 mm more.
	const r = 0.18
	centre := r2.Vec{X: 1.013, Y: 0.987}
	light := func(p r2.Vec) float64 {
		if r2.Norm(r2.Sub(p, centre)) < r {
			return 2
		}
		return 100
	}
	g := sampled(41, 41, 0.05, light)
	lines := contours(g, []float64{20}, Options{Probe: light, Edge: 0.001})
	if len(lines) != 1 || !lines[0].Closed {
		t.Fatalf("want one ring, got %d lines", len(lines))
	}
	for i := range lines[0].spans() {
		a, b := lines[0].span(i)
		for _, p := range []r2.Vec{a, r2.Scale(0.5, r2.Add(a, b))} {
			if d := math.Abs(r2.Norm(r2.Sub(p, centre)) - r); d > 0.002 {
				t.Errorf("%.1f mm off the circle at %v", d*1000, p)
			}
		}
	}
}
