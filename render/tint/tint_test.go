package tint

import (
	"bytes"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/colour"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

var ramps = []carto.Ramp{carto.Day(), carto.Ink(), carto.Night()}

// doubling are n levels a stop apart from 10 lx up, the third of them the working stop.
func doubling(n int) []carto.Level {
	var levels []carto.Level
	for i := range n {
		levels = append(levels, carto.Level{Lux: math.Ldexp(10, i), Stop: i - 2, Working: i == 2})
	}
	return levels
}

func lightness(c ink.Colour) float64 { return colour.Pixel{R: c.R, G: c.G, B: c.B}.LCH().L }

// The middle of a band, half a stop over its lower level, has the band's very tint.
func TestTheBandsTintsInTheirMiddles(t *testing.T) {
	for _, ramp := range ramps {
		for n := 1; n <= 14; n++ {
			s := NewScale(doubling(n), ramp)
			for i, want := range ramp.Bands(doubling(n)) {
				if got := s.of(10 * math.Exp2(float64(i)-0.5)); got != want {
					t.Errorf("%s, %d levels: the middle of band %d is %v, want %v", ramp.Name, n, i, got, want)
				}
			}
		}
	}
}

// Between the middles of two bands lightness rises evenly, as far as 8 bits allow: half a step of them is up to
// 0.2 in the greys of the day, and 0.6 near black where L is steepest in the code.
func TestLightnessIsEvenWithinAStop(t *testing.T) {
	for _, ramp := range ramps {
		const n = 6
		s := NewScale(doubling(n), ramp)
		for q := 0; q < 16*n; q++ {
			stop := float64(q) / 16
			low, high := math.Floor(stop), math.Floor(stop)+1
			dark, light := lightness(s.of(10*math.Exp2(low-0.5))), lightness(s.of(10*math.Exp2(high-0.5)))
			want := dark + (light-dark)*(stop-low)
			if got := lightness(s.of(10 * math.Exp2(stop-0.5))); !(math.Abs(got-want) <= 0.7) {
				t.Errorf("%s: %.3f stops up the lightness is %.2f, want %.2f", ramp.Name, stop, got, want)
			}
		}
	}
}

// As much light has one tint, whatever other light there is.
func TestATintBelongsToItsLight(t *testing.T) {
	all, some := NewScale(doubling(8), carto.Day()), NewScale(doubling(8)[2:5], carto.Day())
	for _, lux := range []float64{30, 45, 60, 99, 140} {
		if a, b := all.of(lux), some.of(lux); !(math.Abs(lightness(a)-lightness(b)) <= 0.5) {
			t.Errorf("%v lx are %v among eight levels and %v among three", lux, a, b)
		}
	}
}

func TestBeyondTheEnds(t *testing.T) {
	s := NewScale(doubling(4), carto.Day())
	dark, light := s.tints[0], s.tints[len(s.tints)-1]
	for lux, want := range map[float64]ink.Colour{0: dark, 1e-9: dark, -1: dark, math.NaN(): dark, 1e9: light, math.Inf(1): light} {
		if got := s.of(lux); got != want {
			t.Errorf("%v lx is %v, want %v", lux, got, want)
		}
	}
	if got := NewScale(nil, carto.Day()).of(5); got != carto.Day().At(0) {
		t.Errorf("without levels the tint is %v, want that of the working stop", got)
	}
}

// field is a lattice of a metre by a metre, 2 cm apart.
func field(f func(r2.Vec) float64) carto.Grid {
	g := carto.Grid{Step: 0.02, NX: 51, NY: 51, Value: make([]float32, 51*51), Mask: make([]uint64, 51*51/64+1)}
	for n := range g.Value {
		g.Value[n] = float32(f(g.At(n%51, n/51)))
	}
	return g
}

// paper is a frame at 1:10, with the metre from (20, 30) to (120, 130) mm.
var paper = Frame{Scale: 100, Shift: r2.Vec{X: 20, Y: 30}, Panel: r2.Box{Max: r2.Vec{X: 200, Y: 200}}, PerMM: 4, Paper: ink.Colour{B: 9}}

// painted traces and paints one field.
func painted(t *testing.T, g carto.Grid, levels []carto.Level, o carto.Options, f Frame) ink.Image {
	t.Helper()
	m, ok := Smooth([]Map{{Grid: g, Steps: carto.Trace(g, carto.Values(levels), o).Steps()}}, NewScale(levels, carto.Day()), f)
	if !ok {
		t.Fatal("nothing is painted")
	}
	return m
}

// pixel is the colour that a picture has at a point of the plan.
func pixel(m *ink.Image, f Frame, plan r2.Vec) ink.Colour {
	p := r2.Add(f.Shift, r2.Scale(f.Scale, plan))
	x := int((p.X - m.Min.X) / (m.Max.X - m.Min.X) * float64(m.Width))
	y := int((m.Max.Y - p.Y) / (m.Max.Y - m.Min.Y) * float64(m.Height))
	c := m.RGB[3*(y*m.Width+x):]
	return ink.Colour{R: c[0], G: c[1], B: c[2]}
}

// A field that rises by eight stops along a slant: every pixel has the tint of the light there.
func TestEveryPixelIsTheLightThere(t *testing.T) {
	along := r2.Unit(r2.Vec{X: 2, Y: 1})
	lux := func(p r2.Vec) float64 { return 5 * math.Exp2(6*r2.Dot(p, along)) }
	levels := doubling(7)
	m := painted(t, field(lux), levels, carto.Options{}, paper)
	if m.Width != 400 || m.Height != 400 || m.Min != (r2.Vec{X: 20, Y: 30}) || m.Max != (r2.Vec{X: 120, Y: 130}) {
		t.Fatalf("%d by %d pixels from %v to %v", m.Width, m.Height, m.Min, m.Max)
	}
	s := NewScale(levels, carto.Day())
	for j := range 40 {
		for i := range 40 {
			p := r2.Vec{X: (float64(i) + 0.5) / 40, Y: (float64(j) + 0.5) / 40}
			if got, want := lightness(pixel(&m, paper, p)), lightness(s.of(lux(p))); !(math.Abs(got-want) <= 0.8) {
				t.Errorf("at %v the lightness is %.2f, want %.2f", p, got, want)
			}
		}
	}
}

// At an edge of shadow the tint jumps where the light does, to a third of a millimetre on paper
// and a tenth of the lattice, on both sides.
func TestAnEdgeOfShadowStaysSharp(t *testing.T) {
	across := r2.Unit(r2.Vec{X: 3, Y: 2})
	lux := func(p r2.Vec) float64 {
		if r2.Dot(p, across) > 0.6 {
			return 300
		}
		return 15
	}
	levels := doubling(7)
	m := painted(t, field(lux), levels, carto.Options{Probe: lux, Edge: 0.002}, paper)
	s := NewScale(levels, carto.Day())
	for i := range 9 {
		along := r2.Vec{X: -across.Y, Y: across.X}
		edge := r2.Add(r2.Scale(0.6, across), r2.Scale(float64(i-4)/20, along))
		for _, side := range []float64{-0.006, 0.006} {
			p := r2.Add(edge, r2.Scale(side, across))
			if got, want := pixel(&m, paper, p), s.of(lux(p)); !(math.Abs(lightness(got)-lightness(want)) <= 0.8) {
				t.Errorf("%.0f mm from the edge the tint is %v, want %v", side*1000, got, want)
			}
		}
	}
}

func TestNoDataShowsPaper(t *testing.T) {
	g := field(func(r2.Vec) float64 { return 40 })
	for n := range g.Value {
		if p := g.At(n%51, n/51); p.X > 0.4 && p.X < 0.6 && p.Y > 0.4 {
			g.Mask[n>>6] |= 1 << (n & 63)
		}
	}
	m := painted(t, g, doubling(5), carto.Options{}, paper)
	if got := pixel(&m, paper, r2.Vec{X: 0.5, Y: 0.7}); got != paper.Paper {
		t.Errorf("what is masked is %v, want the paper", got)
	}
	if got := pixel(&m, paper, r2.Vec{X: 0.5, Y: 0.2}); got == paper.Paper {
		t.Error("what has data is paper")
	}
}

func TestNothingOutsideThePanel(t *testing.T) {
	f := paper
	f.Panel = r2.Box{Min: r2.Vec{X: 50, Y: 40}, Max: r2.Vec{X: 80, Y: 90}}
	m := painted(t, field(func(r2.Vec) float64 { return 40 }), doubling(5), carto.Options{}, f)
	if m.Min != f.Panel.Min || m.Max != f.Panel.Max {
		t.Errorf("from %v to %v, want the panel", m.Min, m.Max)
	}
	f.Panel = r2.Box{Min: r2.Vec{X: 150, Y: 150}, Max: r2.Vec{X: 180, Y: 190}}
	g := field(func(r2.Vec) float64 { return 40 })
	if _, ok := Smooth([]Map{{Grid: g, Steps: carto.Trace(g, carto.Values(doubling(5)), carto.Options{}).Steps()}}, NewScale(doubling(5), carto.Day()), f); ok {
		t.Error("a map beside the panel is painted")
	}
}

func TestOddMaps(t *testing.T) {
	s := NewScale(doubling(5), carto.Day())
	for name, g := range map[string]carto.Grid{"none": {}, "a point": {NX: 1, NY: 1, Step: 1, Value: []float32{4}}, "short": {NX: 9, NY: 9, Step: 1}} {
		if _, ok := Smooth([]Map{{Grid: g, Steps: carto.Trace(g, carto.Values(doubling(5)), carto.Options{}).Steps()}}, s, paper); ok {
			t.Errorf("%s: something is painted", name)
		}
	}
}

// What is too large for memory is painted more coarsely.
func TestAHugePanelIsPaintedCoarsely(t *testing.T) {
	f := paper
	f.Scale, f.PerMM = 10000, 40
	f.Panel = r2.Box{Max: r2.Vec{X: 5000, Y: 5000}}
	m := painted(t, field(func(p r2.Vec) float64 { return 10 + 900*p.X }), doubling(5), carto.Options{}, f)
	if n := m.Width * m.Height; n > maxPixels || n < maxPixels/8 {
		t.Errorf("%d pixels", n)
	}
}

func TestAPaletteHoldsThePicture(t *testing.T) {
	m := painted(t, field(func(p r2.Vec) float64 { return 5 * math.Exp2(8*p.X) }), doubling(8), carto.Options{}, paper)
	seen := map[[3]byte]bool{}
	for i := 0; i < len(m.RGB); i += 3 {
		seen[[3]byte(m.RGB[i:])] = true
	}
	if len(seen) > 256 || len(seen) < 40 {
		t.Errorf("%d colours", len(seen))
	}
}

func TestTheKeyHasTheBandsInTheirMiddles(t *testing.T) {
	s := NewScale(doubling(6), carto.Day())
	key := s.Key(r2.Box{Max: r2.Vec{X: 70, Y: 4}}, 0, len(s.levels)+1)
	for i, want := range carto.Day().Bands(doubling(6)) {
		n := 3 * (32*i + 16)
		if got := (ink.Colour{R: key.RGB[n], G: key.RGB[n+1], B: key.RGB[n+2]}); !(math.Abs(lightness(got)-lightness(want)) <= 0.5) {
			t.Errorf("band %d is %v in the key, want %v", i, got, want)
		}
	}
	if part := s.Key(r2.Box{Max: r2.Vec{X: 20, Y: 4}}, 2, 4); !bytes.Equal(part.RGB, key.RGB[3*64:3*128]) {
		t.Error("a part of the key is not that part of the whole")
	}
}

func BenchmarkSmooth(b *testing.B) {
	g := field(func(p r2.Vec) float64 { return 5 * math.Exp2(8*p.X*p.Y) })
	steps := carto.Trace(g, carto.Values(doubling(8)), carto.Options{}).Steps()
	s := NewScale(doubling(8), carto.Day())
	f := paper
	f.PerMM, f.Scale = Fine, 250
	f.Panel.Max = r2.Vec{X: 400, Y: 400}
	b.ReportAllocs()
	for b.Loop() {
		Smooth([]Map{{Grid: g, Steps: steps}}, s, f)
	}
}

// of is the colour of an illuminance, lx.
func (s Scale) of(lux float64) ink.Colour { return s.tint(s.place(lux)) }
