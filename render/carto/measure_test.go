package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// pair is a lattice of one cell, the same along y, from a value on the left to one on the right.
func pair(left, right float32) Grid {
	return Grid{Step: 1, NX: 2, NY: 2, Value: []float32{left, right, left, right}}
}

// crossingOf is where along x the only line of a level runs.
func crossingOf(t *testing.T, g Grid, levels []float64, m Measure, index int) float64 {
	t.Helper()
	for _, l := range contours(g, levels, Options{Measure: m}) {
		if l.Index == index {
			return l.Points[0].X
		}
	}
	t.Fatalf("no line of level %d", index)
	return 0
}

// No light lies six stops under the lowest level that is light: from there on the logarithm is straight, so that a
// contour between darkness and light has a place.
func TestDarknessIsSixStopsUnderTheLowestLevel(t *testing.T) {
	for _, c := range []struct {
		levels    []float64
		index     int
		from, to  float32
		dark, has float64
	}{
		{[]float64{10}, 0, 0, 20, 10.0 / 64, 10},
		{[]float64{10, 40}, 1, 0, 100, 10.0 / 64, 40},
		{[]float64{40, 10}, 0, 0, 100, 10.0 / 64, 10}, // in whatever order
		{[]float64{-5, 0, 10}, 2, 0, 20, 10.0 / 64, 10},
		{[]float64{10}, 0, 5, 20, 10.0 / 64, 10},
		{[]float64{10}, 0, -7, 20, 10.0 / 64, 10}, // less than no light counts as no light
	} {
		at := func(v float64) float64 { return math.Log2(math.Max(v, 0) + c.dark) }
		want := (at(c.has) - at(float64(c.from))) / (at(float64(c.to)) - at(float64(c.from)))
		if got := crossingOf(t, pair(c.from, c.to), c.levels, Logarithmic, c.index); !(math.Abs(got-want) <= 1e-6) {
			t.Errorf("levels %v from %g to %g: crossed at %.6f, want %.6f", c.levels, c.from, c.to, got, want)
		}
	}
	// From half the lowest level to twice it is very nearly two stops, and the level nearly half way.
	if got := crossingOf(t, pair(5, 20), []float64{10}, Logarithmic, 0); !(math.Abs(got-0.5) <= 0.005) {
		t.Errorf("crossed at %g between half and twice the level", got)
	}
}

// What is not light is straight between its points, as is a field without a level of light.
func TestOtherFieldsAreStraight(t *testing.T) {
	for _, c := range []struct {
		m        Measure
		levels   []float64
		from, to float32
		want     float64
	}{
		{Linear, []float64{10}, 0, 20, 0.5},
		{Linear, []float64{-1}, -4, 8, 0.25},
		{Logarithmic, []float64{-1}, -4, 8, 0.25},
		{Logarithmic, []float64{0}, -1, 3, 0.25},
	} {
		if got := crossingOf(t, pair(c.from, c.to), c.levels, c.m, 0); !(math.Abs(got-c.want) <= 1e-9) {
			t.Errorf("measure %d, level %v from %g to %g: crossed at %g, want %g", c.m, c.levels, c.from, c.to, got, c.want)
		}
	}
}

// Stops are doublings of light, counted from the dark end; of anything else they are its own unit. Which of two comes
// first does not matter.
func TestStopsOfAMeasure(t *testing.T) {
	light, other := newRuler(Logarithmic, []float64{64}), newRuler(Linear, []float64{64})
	for _, c := range []struct {
		rule    ruler
		a, b, d float64
	}{
		{light, 0, 1, 1}, {light, 0, 3, 2}, {light, 0, 63, 6}, {light, 31, 63, 1}, {light, 7, 7, 0}, {light, -9, 1, 1},
		{other, 0, 1, 1}, {other, -2, 1, 3}, {other, 5, 5, 0},
	} {
		if got, back := c.rule.stops(c.a, c.b), c.rule.stops(c.b, c.a); !(math.Abs(got-c.d) <= 1e-12) || got != back {
			t.Errorf("from %g to %g are %g stops and back %g, want %g", c.a, c.b, got, back, c.d)
		}
	}
}

// A point lacks data where its bit is set, its value is no number, or it is outside; a short mask hides nothing more.
func TestWhatLacksData(t *testing.T) {
	const nx, ny = 13, 11
	g := sampled(nx, ny, 0.5, func(r2.Vec) float64 { return 1 })
	g.Origin = r2.Vec{X: 2, Y: -1}
	hidden := map[int]bool{0: true, 63: true, 64: true, nx*ny - 1: true, 77: true}
	for n := range hidden {
		g.hide(n)
	}
	g.Value[70], hidden[70] = float32(math.NaN()), true
	for j := -1; j <= ny; j++ {
		for i := -1; i <= nx; i++ {
			outside := i < 0 || j < 0 || i == nx || j == ny
			if got := g.Masked(i, j); got != (outside || hidden[j*nx+i]) {
				t.Errorf("point %d, %d is masked: %v", i, j, got)
			}
		}
	}
	if at := g.At(3, 4); at != (r2.Vec{X: 3.5, Y: 1}) || g.place(4*nx+3) != at {
		t.Errorf("point 3, 4 lies at %v and by index at %v", at, g.place(4*nx+3))
	}
	g.Mask = g.Mask[:1]
	if !g.Masked(0, 0) || g.Masked(nx-1, ny-1) || g.Masked(77%nx, 77/nx) {
		t.Error("a mask of one word hides more than its 64 points, or less")
	}
	for name, bad := range map[string]Grid{
		"one column":     {Step: 1, NX: 1, NY: 2, Value: make([]float32, 2)},
		"one row":        {Step: 1, NX: 2, NY: 1, Value: make([]float32, 2)},
		"no step":        {NX: 2, NY: 2, Value: make([]float32, 4)},
		"a value short":  {Step: 1, NX: 2, NY: 2, Value: make([]float32, 3)},
		"a step of less": {Step: -1, NX: 2, NY: 2, Value: make([]float32, 4)},
	} {
		if bad.usable() || len(contours(bad, []float64{1}, Options{})) != 0 {
			t.Errorf("%s makes a field", name)
		}
	}
	if !pair(1, 2).usable() {
		t.Error("one cell makes no field")
	}
}
