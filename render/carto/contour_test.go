package carto

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// radius is where a lamp of 1000 cd at height h gives e on the floor: E = I h / (h² + r²)^(3/2).
func radius(e, h float64) float64 {
	return math.Sqrt(math.Pow(1000*h/e, 2.0/3) - h*h)
}

func TestContoursOfALampAreCircles(t *testing.T) {
	const h, step = 2.0, 0.05
	g := sampled(201, 201, step, floor(5, 5, h))
	lines := contours(g, []float64{20, 40, 80, 160}, Options{})
	if len(lines) != 4 {
		t.Fatalf("%d lines, want one ring a level", len(lines))
	}
	for _, l := range lines {
		if !l.Closed || plane.Area(l.Points) <= 0 {
			t.Errorf("%g lx: want a ring around the light, counter-clockwise", l.Level)
		}
		want := radius(l.Level, h)
		for _, p := range l.Points {
			// The error of interpolating log E over a step: step²/8 · |f''/f'|, which is under 2/r here.
			if got := math.Hypot(p.X-5, p.Y-5); !(math.Abs(got-want) <= step*step/8*2/want) {
				t.Fatalf("%g lx: radius %.5f m, want %.5f m", l.Level, got, want)
			}
		}
	}
}

func TestTheLogarithmIsTruerForLight(t *testing.T) {
	worst := func(m Measure) float64 {
		g := sampled(81, 81, 0.1, func(p r2.Vec) float64 { return 1000 / (math.Pow(p.X, 2) + math.Pow(p.Y, 2) + 1e-9) })
		most := 0.0
		for _, l := range contours(g, []float64{20, 40, 80, 160, 320}, Options{Measure: m}) {
			for _, p := range l.Points {
				most = math.Max(most, math.Abs(math.Hypot(p.X, p.Y)-math.Sqrt(1000/l.Level)))
			}
		}
		return most
	}
	// (h²/8)(1/d) against (h²/8)(3/d): see Measure.
	straight, logarithmic := worst(Linear), worst(Logarithmic)
	if ratio := straight / logarithmic; ratio < 2.5 || ratio > 3.6 {
		t.Errorf("linear is %.5f m out, logarithmic %.5f m: ratio %.2f, want about 3", straight, logarithmic, ratio)
	}
}

func TestEveryVertexHasTheLevelsValue(t *testing.T) {
	g := studio(1, 100, 80, 0.2)
	for _, m := range []Measure{Logarithmic, Linear} {
		rule := newRuler(m, stops12)
		for _, l := range contours(g, stops12, Options{Measure: m}) {
			for _, p := range l.Points {
				x, y := p.X/g.Step, p.Y/g.Step
				i, j := int(x+1e-9), int(y+1e-9)
				di, dj := x-float64(i), y-float64(j)
				if math.Min(di, dj) > 1e-6 {
					t.Fatalf("vertex %v lies on no edge of the lattice", p)
				}
				s, far := di, (j*g.NX + min(i+1, g.NX-1))
				if dj > di {
					s, far = dj, min(j+1, g.NY-1)*g.NX+i
				}
				here := rule.of(float64(g.Value[j*g.NX+i]))
				got := here + s*(rule.of(float64(g.Value[far]))-here)
				if !(math.Abs(got-rule.of(l.Level)) <= 1e-5*math.Max(1, math.Abs(got))) {
					t.Fatalf("at %v the field is %g in the measure, the level %g", p, got, rule.of(l.Level))
				}
			}
		}
	}
}

func TestSaddlesFollowTheBilinearSurface(t *testing.T) {
	// Corners in the order lower left, lower right, upper left, upper right. The saddle of the
	// bilinear surface is (ad − bc)/(a + d − b − c); the mean of the corners would say otherwise.
	for _, c := range []struct {
		values [4]float32
		level  float64
		joined bool
	}{
		{[4]float32{10, 0, 0, 10}, 4, true},          // saddle 5
		{[4]float32{10, 0, 0, 10}, 6, false},         // saddle 5
		{[4]float32{9, 4, 1, 100}, 7, true},          // saddle 8.6, mean 28.5
		{[4]float32{9, 4, 1, 100}, 8.7, false},       // saddle 8.6, mean 28.5
		{[4]float32{0, 10, 10, 0}, 4, true},          // the other diagonal
		{[4]float32{4, 9, 100, 1}, 8.7, false},       // the other diagonal
		{[4]float32{-10, -20, -20, -10}, -14, false}, // saddle −15
	} {
		g := Grid{Step: 1, NX: 2, NY: 2, Value: c.values[:]}
		lines := contours(g, []float64{c.level}, Options{Measure: Linear})
		if len(lines) != 2 {
			t.Fatalf("%v at %g: %d lines, want 2", c.values, c.level, len(lines))
		}
		// A line cuts one corner off. The high corner lies on its left: cut off if they are apart.
		for _, l := range lines {
			a, b := l.Points[0], l.Points[1]
			centreOnLeft := r2.Cross(r2.Sub(b, a), r2.Sub(r2.Vec{X: 0.5, Y: 0.5}, a)) > 0
			if centreOnLeft != c.joined {
				t.Errorf("%v at %g: high corners joined %v, want %v", c.values, c.level, centreOnLeft, c.joined)
			}
		}
	}
}

func TestLinesEndOnlyAtTheRimOfTheData(t *testing.T) {
	for seed := range rng(20) {
		g := studio(seed, 60, 48, 0.5)
		relief := Trace(g, stops12, Options{})
		relief.makeRim()
		ends := 0
		for i, l := range relief.Lines {
			if l.Closed {
				if len(l.Points) < 3 {
					t.Errorf("seed %d: a ring of %d points", seed, len(l.Points))
				}
				continue
			}
			ends += 2
			for _, e := range []edge{relief.chain[i].edges[0], relief.chain[i].edges[len(relief.chain[i].edges)-1]} {
				if _, ok := relief.rim.at[place{e, l.Index}]; !ok {
					t.Errorf("seed %d: a line of %g ends inside the data", seed, l.Level)
				}
			}
		}
		if ends != len(relief.rim.nodes) {
			t.Errorf("seed %d: %d ends of lines, %d crossings of the rim", seed, ends, len(relief.rim.nodes))
		}
	}
}

func TestNoLineRunsBesideAMask(t *testing.T) {
	// What is masked reads 0 in the field; a contour around it would be an artefact.
	g := sampled(41, 41, 0.1, func(p r2.Vec) float64 { return 100 })
	for n := range g.Value {
		if p := g.place(n); p.X > 1 && p.X < 3 && p.Y > 1 && p.Y < 3 {
			g.Value[n] = 0
			g.hide(n)
		}
	}
	if lines := contours(g, []float64{10, 20, 40, 80}, Options{}); len(lines) != 0 {
		t.Errorf("%d lines in an even field around a solid, want none", len(lines))
	}
}

func TestTheHigherSideIsOnTheLeft(t *testing.T) {
	f := floor(3, 2, 1.5)
	g := sampled(100, 80, 0.05, f)
	for _, l := range contours(g, stops12, Options{}) {
		for i := range l.spans() {
			a, b := l.span(i)
			d := r2.Sub(b, a)
			left := r2.Add(r2.Scale(0.5, r2.Add(a, b)), r2.Scale(0.02/r2.Norm(d), r2.Vec{X: -d.Y, Y: d.X}))
			if f(left) < l.Level {
				t.Fatalf("left of the line of %g at %v it is %g", l.Level, a, f(left))
			}
		}
	}
}

func TestSmoothingStaysWithinItsBound(t *testing.T) {
	g := studio(7, 120, 96, 0.05)
	const scale = 20.0
	raw := contours(g, stops12, Options{})
	opts := Options{Scale: scale, Smoothing: 0.15, Tolerance: 0.02}
	bound := (opts.Smoothing+opts.Tolerance+roundedDepth)/scale + 1e-9
	for _, l := range contours(g, stops12, opts) {
		for _, p := range l.Points {
			if d := distanceToLevel(raw, l.Level, p); d > bound {
				t.Fatalf("a point of %g lies %.2f mm from the true line, bound %.2f mm", l.Level, d*scale, bound*scale)
			}
		}
	}
}

func distanceToLevel(lines []Line, level float64, p r2.Vec) float64 {
	d := math.Inf(1)
	for _, l := range lines {
		for i := range l.spans() {
			if l.Level == level {
				a, b := l.span(i)
				d = math.Min(d, Distance(p, a, b))
			}
		}
	}
	return d
}

func TestSmoothingTakesTheNoise(t *testing.T) {
	// Noise of 1 %, as 256 samples leave it: the turning of all lines must fall by far.
	g := studio(3, 200, 160, 0.01)
	turning := func(lines []Line) (sum float64) {
		for _, l := range lines {
			for i := 1; i+1 < len(l.Points); i++ {
				sum += turn(l.Points[i-1], l.Points[i], l.Points[i+1])
			}
		}
		return sum
	}
	raw, calm := turning(contours(g, stops12, Options{})), turning(contours(Denoise(g, 0.03), stops12, Paper(20)))
	if calm > raw/4 {
		t.Errorf("lines turn by %.0f rad in all, %.0f before smoothing", calm, raw)
	}
}

func turn(a, b, c r2.Vec) float64 {
	u, v := r2.Sub(b, a), r2.Sub(c, b)
	return math.Abs(math.Atan2(r2.Cross(u, v), r2.Dot(u, v)))
}

func TestNoLongPiecesMeetAtASharpTurn(t *testing.T) {
	const scale = 20.0
	_, light := board()
	probed := Paper(scale)
	probed.Probe = light
	lines := contours(sampled(101, 101, 0.05, light), stops12, probed)
	for seed := range rng(10) {
		lines = append(lines, contours(Denoise(studio(seed, 200, 160, 0.01), 0.03), stops12, Paper(scale))...)
	}
	for _, l := range lines {
		for i := 1; i+1 < len(l.Points); i++ {
			a, b, c := l.Points[i-1], l.Points[i], l.Points[i+1]
			short := min(r2.Norm(r2.Sub(b, a)), r2.Norm(r2.Sub(c, b))) * scale
			if deg := turn(a, b, c) * 180 / math.Pi; short > 2 && deg > 30 {
				t.Errorf("%g lx turns by %.0f° between pieces of %.1f mm and more at %v", l.Level, deg, short, b)
			}
		}
	}
}

func TestProbedBandsCoverTheData(t *testing.T) {
	_, light := board()
	g := sampled(101, 101, 0.05, light)
	opts := Paper(20)
	opts.Probe = light
	total := 0.0
	for _, b := range bands(g, stops12, opts) {
		total += b.area()
	}
	if !(math.Abs(total-25) <= 1e-6) {
		t.Errorf("bands cover %.6f m² of 25", total)
	}
}

func TestSpecksAreLeftOut(t *testing.T) {
	g := sampled(60, 60, 0.05, func(p r2.Vec) float64 { return 10 })
	g.Value[30*60+30] = 100 // a ring of a lattice step, 1 mm across on paper
	if n := len(contours(g, []float64{20}, Options{})); n != 1 {
		t.Fatalf("%d bare lines, want the ring", n)
	}
	if n := len(contours(g, []float64{20}, Paper(20))); n != 0 {
		t.Errorf("%d lines on paper, want none", n)
	}
	// A cross of five points, 2.4 mm wide, stays where the box round it holds a point without data.
	for _, n := range []int{29*60 + 30, 31*60 + 30, 30*60 + 29, 30*60 + 31} {
		g.Value[n] = 100
	}
	if n := len(contours(g, []float64{80}, Paper(20))); n != 0 {
		t.Errorf("%d lines round a cross, want none", n)
	}
	for _, c := range []struct{ at, want int }{{28*60 + 28, 1}, {32*60 + 32, 1}, {28*60 + 32, 1}, {26*60 + 30, 0}, {30*60 + 34, 0}} {
		holed := g
		holed.Mask = slices.Clone(g.Mask)
		holed.hide(c.at)
		if n := len(contours(holed, []float64{80}, Paper(20))); n != c.want {
			t.Errorf("beside a hole at point %d there are %d lines, want %d", c.at, n, c.want)
		}
	}
}

// TestSliversAreLeftOut: a ring that is long enough to be drawn and has hardly any width is a bead of a strip of light that
// slips through the lattice. One as long and as wide stays.
func TestSliversAreLeftOut(t *testing.T) {
	ridge := func(width float64) Grid {
		return sampled(60, 60, 0.05, func(p r2.Vec) float64 {
			return 100 * math.Exp2(-math.Pow((p.X-1.5)/0.08, 2)-math.Pow((p.Y-1.5)/width, 2))
		})
	}
	for _, c := range []struct {
		width float64
		want  int
	}{{0.012, 0}, {0.08, 1}} {
		if n := len(contours(ridge(c.width), []float64{50}, Paper(20))); n != c.want {
			t.Errorf("a ring of 3.2 by %.1f mm is drawn by %d lines, want %d", 2*20*c.width, n, c.want)
		}
	}
}

func TestContoursAreTheSameEachTime(t *testing.T) {
	g := studio(5, 120, 96, 0.05)
	first := contours(g, stops12, Paper(20))
	for range 3 {
		if !reflect.DeepEqual(first, contours(g, stops12, Paper(20))) {
			t.Fatal("two runs differ")
		}
	}
}

func TestOddInputGivesNoLinesAndNoPanic(t *testing.T) {
	even := sampled(4, 4, 1, func(r2.Vec) float64 { return 5 })
	nan := sampled(4, 4, 1, func(p r2.Vec) float64 { return math.NaN() })
	for name, g := range map[string]Grid{
		"empty": {}, "one row": {Step: 1, NX: 4, NY: 1, Value: make([]float32, 4)},
		"short": {Step: 1, NX: 4, NY: 4, Value: make([]float32, 3)}, "even": even, "not numbers": nan,
		"no step": {NX: 2, NY: 2, Value: []float32{0, 1, 2, 3}},
	} {
		for _, levels := range [][]float64{nil, {5}, {math.NaN(), math.Inf(1)}, {0}, {-1, 0, 1}} {
			relief := Trace(g, levels, Paper(20))
			if len(relief.Lines) != 0 {
				t.Errorf("%s %v: %d lines", name, levels, len(relief.Lines))
			}
			relief.bands()
			Denoise(Extrapolate(g, 1), 0.1)
		}
	}
}

func FuzzTrace(f *testing.F) {
	f.Add([]byte("\x00\x01\x02\x03\x04\x05\x06\x07\x08"), uint8(3))
	f.Add([]byte("\x00\xff\x00\xff\x00\xff\x00\xff\x00\xff\x00\xff\x00\xff\x00\xff"), uint8(4))
	f.Fuzz(func(t *testing.T, values []byte, width uint8) {
		nx := int(width)
		if nx == 0 || len(values)/nx < 2 {
			return
		}
		g := Grid{Step: 1, NX: nx, NY: len(values) / nx, Mask: make([]uint64, len(values)/64+1)}
		for n, v := range values {
			g.Value = append(g.Value, float32(v))
			if v == 0x7f {
				g.hide(n)
			}
		}
		for _, opts := range []Options{{}, Paper(1), {Measure: Linear}} {
			relief := Trace(g, []float64{0, 1, 10, 64, 65, 200}, opts)
			total := 0.0
			for _, b := range relief.bands() {
				total += b.area()
			}
			if cells := float64(cells(g)); !(math.Abs(total-cells) <= 1e-6*(1+cells)) {
				t.Errorf("bands cover %g, the data %g", total, cells)
			}
		}
	})
}

func ExampleTrace() {
	// Illuminance on a floor of 4 m by 4 m under a lamp of 1000 cd, 2 m up.
	g := Grid{Step: 0.1, NX: 41, NY: 41}
	for n := range g.NX * g.NY {
		p := g.At(n%g.NX, n/g.NX)
		d2 := (p.X-2)*(p.X-2) + (p.Y-2)*(p.Y-2) + 4
		g.Value = append(g.Value, float32(2000/(d2*math.Sqrt(d2))))
	}
	for _, l := range Trace(g, []float64{118, 235}, Options{}).Lines {
		x := plane.Bounds(l.Points)
		fmt.Printf("%g lx: ring %v, %.2f m across\n", l.Level, l.Closed, x.Max.X-x.Min.X)
	}
	// Output:
	// 118 lx: ring true, 3.22 m across
	// 235 lx: ring true, 0.82 m across
}

func BenchmarkContours(b *testing.B) {
	g := studio(2, 200, 160, 0) // 32,000 points
	b.ReportAllocs()
	for b.Loop() {
		contours(g, stops12, Options{})
	}
}

func BenchmarkPaper(b *testing.B) {
	g := studio(2, 200, 160, 0.01)
	b.ReportAllocs()
	for b.Loop() {
		contours(Denoise(g, 0.03), stops12, Paper(20))
	}
}
