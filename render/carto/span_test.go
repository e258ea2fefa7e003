package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// A span leaves out a share at either end, of the points that have data, but never more than half; without data it is
// nothing.
func TestSpanOfPartOfAField(t *testing.T) {
	g := sampled(11, 1, 1, func(p r2.Vec) float64 { return 10 + p.X })
	g.NY = 2
	g.Value = append(g.Value, g.Value...)
	for i := range 11 {
		g.hide(11 + i)
		g.Value[11+i] = 1e6
	}
	for share, want := range map[float64][2]float64{-1: {10, 20}, 0: {10, 20}, 0.1: {11, 19}, 0.29: {12, 18}, 0.5: {15, 15}, 3: {15, 15}} {
		if low, high := Span(g, share); low != want[0] || high != want[1] {
			t.Errorf("without %g at either end %g..%g, want %v", share, low, high, want)
		}
	}
	for i := range 11 {
		g.hide(i)
	}
	if low, high := Span(g, 0); low != 0 || high != 0 {
		t.Errorf("what is all masked spans %g..%g", low, high)
	}
}

// Levels stand at the very ends of what they are asked for; one that a hundredth of a stop keeps out is not there.
func TestStopLevelsReachTheirEnds(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		from, to  int
	}{{50, 200, -1, 1}, {50.4, 198, 0, 0}, {49.9, 200.1, -1, 1}, {100, 100, 0, 0}, {101, 199, 1, 0}, {200, 200, 1, 1}, {25, 99.9, -2, -1}} {
		if dim := StopLevels(0.25, c.low/400, c.high/400, 20); len(dim) != c.to-c.from+1 || len(dim) > 0 && dim[0].Stop != c.from {
			t.Errorf("%g to %g, all 400 times darker: %v", c.low, c.high, dim)
		}
		got := StopLevels(100, c.low, c.high, 20)
		if len(got) != c.to-c.from+1 || len(got) > 0 && (got[0].Stop != c.from || got[len(got)-1].Stop != c.to) {
			t.Errorf("%g to %g: %v, want stops %d to %d", c.low, c.high, got, c.from, c.to)
		}
	}
	if got := StopLevels(100, 100, 100, 0); got != nil {
		t.Errorf("no level at most, %v", got)
	}
	// Thirty stops under the brightest and thirty over the working stop is all that is told apart.
	if got := StopLevels(100, 1, math.Ldexp(100, 33), 100); len(got) != 28 || got[0].Stop != 3 || got[27].Stop != 30 {
		t.Errorf("over 33 stops: %v", got)
	}
}

// A figure lies in the middle of a straight line, in a gap of its width and a margin, and turns with the line.
func TestAFigureOnAStraightLine(t *testing.T) {
	size := func(Line) r2.Vec { return r2.Vec{X: 6, Y: 2} }
	for _, degrees := range []float64{0, 30, 89, -60, 120, 181} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		l := Line{Points: []r2.Vec{{X: 50, Y: 50}, {X: 50 + 60*cos, Y: 50 + 60*sin}}}
		letters := Letter([]Line{l}, LetterOptions{Size: size})
		if len(letters) != 1 {
			t.Fatalf("%g degrees: %d figures", degrees, len(letters))
		}
		got := letters[0]
		want := degrees
		if want > 90 {
			want -= 180
		}
		if r2.Norm(r2.Sub(got.At, r2.Vec{X: 50 + 30*cos, Y: 50 + 30*sin})) > 1 || !(math.Abs(got.Angle-want) <= 1e-9) || !(math.Abs(got.To-got.From-7.4) <= 1e-9) {
			t.Errorf("%g degrees: %+v", degrees, got)
		}
		corners := got.Outline()
		for i, p := range corners {
			next := corners[(i+1)%4]
			if side := r2.Norm(r2.Sub(next, p)); !(math.Abs(side-[...]float64{6, 2, 6, 2}[i]) <= 1e-9) {
				t.Errorf("a side of %g", side)
			}
		}
		if up := r2.Unit(r2.Sub(corners[1], corners[0])); !(math.Abs(up.X-math.Cos(want*math.Pi/180)) <= 1e-9) || r2.Cross(up, r2.Sub(corners[2], corners[1])) < 0 {
			t.Errorf("%g degrees: the box %v is turned", degrees, corners)
		}
	}
}

// How many figures a line gets: one for each spacing to the nearest, one at least where there is room for two gaps,
// those of one level apart by as much as is asked, also on two lines.
func TestHowManyFigures(t *testing.T) {
	line := func(y, length float64, index int) Line {
		return Line{Index: index, Points: []r2.Vec{{X: 0, Y: y}, {X: length, Y: y}}}
	}
	size := func(Line) r2.Vec { return r2.Vec{X: 6, Y: 2} }
	for _, c := range []struct {
		lines []Line
		opts  LetterOptions
		want  int
	}{
		{[]Line{line(0, 14.7, 0)}, LetterOptions{}, 0}, {[]Line{line(0, 14.9, 0)}, LetterOptions{}, 1},
		{[]Line{line(0, 164, 0)}, LetterOptions{}, 1}, {[]Line{line(0, 166, 0)}, LetterOptions{}, 2},
		{[]Line{line(0, 100, 0)}, LetterOptions{Spacing: 20, Apart: 10}, 5}, {[]Line{line(0, 100, 0)}, LetterOptions{Spacing: 20, Apart: 45}, 3},
		{[]Line{line(0, 50, 0), line(10, 50, 0)}, LetterOptions{}, 1}, {[]Line{line(0, 50, 0), line(31, 50, 0)}, LetterOptions{}, 2},
		{[]Line{line(0, 50, 0), line(10, 50, 1)}, LetterOptions{}, 2}, {[]Line{line(0, 20, 0)}, LetterOptions{Pad: 5}, 0},
		{[]Line{line(0, 50, 0), line(1.1, 50, 1)}, LetterOptions{}, 0}, {[]Line{line(0, 50, 0), line(1.3, 50, 1)}, LetterOptions{}, 2},
		{[]Line{line(0, 50, 0)}, LetterOptions{Area: &r2.Box{Min: r2.Vec{X: -9, Y: -1}, Max: r2.Vec{X: 99, Y: 1}}}, 1},
		{[]Line{line(0, 50, 0)}, LetterOptions{Area: &r2.Box{Min: r2.Vec{X: -9, Y: -0.9}, Max: r2.Vec{X: 99, Y: 9}}}, 0},
		{[]Line{line(0, 50, 0)}, LetterOptions{Area: &r2.Box{Min: r2.Vec{X: -9, Y: -9}, Max: r2.Vec{X: 99, Y: 0.9}}}, 0},
		{[]Line{line(0, 50, 0)}, LetterOptions{Area: &r2.Box{Min: r2.Vec{X: -9, Y: -9}, Max: r2.Vec{X: 6, Y: 9}}}, 0},
		{[]Line{line(0, 50, 0)}, LetterOptions{Area: &r2.Box{Min: r2.Vec{X: 44, Y: -9}, Max: r2.Vec{X: 99, Y: 9}}}, 0},
		{[]Line{line(0, 50, 0)}, LetterOptions{Obstacles: []Obstacle{{Outline: BoxOutline(r2.Box{Min: r2.Vec{X: -1, Y: -1}, Max: r2.Vec{X: 51, Y: 1}})}}}, 0},
	} {
		c.opts.Size = size
		if got := Letter(c.lines, c.opts); len(got) != c.want {
			t.Errorf("%v with %+v: %d figures, want %d", c.lines, c.opts, len(got), c.want)
		}
	}
	// Covering something at a price is worth a way to where nothing is.
	half := Obstacle{Outline: BoxOutline(r2.Box{Min: r2.Vec{X: 20, Y: -1}, Max: r2.Vec{X: 50, Y: 1}}), Cost: 5}
	if got := Letter([]Line{line(0, 50, 0)}, LetterOptions{Size: size, Obstacles: []Obstacle{half}}); len(got) != 1 || got[0].At.X > 17 || got[0].At.X < 15 {
		t.Errorf("beside what costs: %+v", got)
	}
	// A bend of more than is allowed keeps a figure off; a ring has no ends to keep off.
	for radius, want := range map[float64]int{10: 0, 25: 1} { // it strays by about 3.7²/2r: 0.68 and 0.27
		if got := Letter([]Line{polygon(100, radius)}, LetterOptions{Size: size}); len(got) != want {
			t.Errorf("on a ring of %g mm %d figures, want %d", radius, len(got), want)
		}
	}
}

// A ramp has its tones where they are written.
func TestARampHasItsTones(t *testing.T) {
	for _, r := range []Ramp{Day(), Ink(), Night()} {
		for _, tone := range r.Tones {
			if got := r.At(tone.Stop); !(math.Abs(lightness(got)-tone.Colour.L) <= 0.5) {
				t.Errorf("%s: %+g stops have a lightness of %.1f, want %.1f", r.Name, tone.Stop, lightness(got), tone.Colour.L)
			}
		}
	}
}

// Levels that are no numbers have no lines, those given twice have one.
func TestTidyLevels(t *testing.T) {
	got := tidyLevels([]float64{5, math.Inf(1), 3, math.NaN(), 5, math.Inf(-1), -2})
	if len(got) != 3 || got[0] != -2 || got[1] != 3 || got[2] != 5 {
		t.Errorf("%v", got)
	}
}

// Short interruptions of a cliff are bridged, those longer than the least cliff are not, and then each part is one.
func TestInterruptedCliffs(t *testing.T) {
	for gap, want := range map[float64]int{1: 1, 1.8: 1, 4: 2, 9: 2} {
		lines := []Line{straight(0, 0)}
		for i := 1; i < 3; i++ {
			y := 0.2 * float64(i)
			lines = append(lines, Line{Level: math.Exp2(float64(i)), Index: i, Points: []r2.Vec{
				{X: 0, Y: y}, {X: 50 - gap/2, Y: y}, {X: 50 - gap/2, Y: 4 * float64(i)}, {X: 50 + gap/2, Y: 4 * float64(i)}, {X: 50 + gap/2, Y: y}, {X: 100, Y: y}}})
		}
		if _, cliffs := Cliffs(lines, CliffOptions{}); len(cliffs) != want {
			t.Errorf("interrupted for %g mm: %d cliffs, want %d", gap, len(cliffs), want)
		}
	}
}

// No class of a level means that there is no data: there are fewer of them than the class that means none.
func TestLevelsLeaveRoomForNoData(t *testing.T) {
	many := make([]float64, noData+10)
	for i := range many {
		many[i] = float64(i)
	}
	if got := len(tidyLevels(many)); got != noData-1 {
		t.Errorf("%d levels of %d are kept, want %d", got, len(many), noData-1)
	}
}
