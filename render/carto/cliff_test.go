package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// straight is a line of a level along x from 0 to 100 mm at a height y; the light is over it.
func straight(index int, y float64) Line {
	l := Line{Level: math.Exp2(float64(index)), Index: index}
	for x := 0.0; x <= 100; x += 5 {
		l.Points = append(l.Points, r2.Vec{X: x, Y: y})
	}
	return l
}

func TestThreeLevelsWithinHalfAMillimetreAreACliff(t *testing.T) {
	for _, c := range []struct {
		heights []float64
		cliffs  int
		kept    int
		levels  int
	}{
		{[]float64{0, 0.2, 0.4}, 1, 0, 3},
		{[]float64{0, 0.3, 0.6}, 0, 3, 0}, // 0.6 mm
		{[]float64{0, 0.4}, 0, 2, 0},      // two levels are no cliff
		{[]float64{0, 0.1, 0.2, 0.3, 5}, 1, 1, 4},
		{[]float64{0, 3, 3.2, 3.4}, 1, 1, 3},
		{[]float64{0, 0.1, 0.2, 5, 5.1, 5.2}, 2, 0, 3},
	} {
		var lines []Line
		for i, y := range c.heights {
			lines = append(lines, straight(i, y))
		}
		kept, cliffs := Cliffs(lines, CliffOptions{})
		if len(cliffs) != c.cliffs || len(kept) != c.kept {
			t.Errorf("%v: %d cliffs and %d lines, want %d and %d", c.heights, len(cliffs), len(kept), c.cliffs, c.kept)
			continue
		}
		for _, f := range cliffs {
			if f.Levels != c.levels || f.Top != f.Index+c.levels-1 {
				t.Errorf("%v: cliff from level %d to %d of %d levels", c.heights, f.Index, f.Top, f.Levels)
			}
			for _, tick := range f.Ticks {
				if d := r2.Sub(tick[1], tick[0]); !(math.Abs(d.X) <= 1e-9) || !(math.Abs(d.Y+0.8) <= 1e-9) {
					t.Errorf("%v: a tick runs %v, want 0.8 mm down to the dark", c.heights, d)
				}
			}
			if n := len(f.Ticks); n < 82 || n > 84 {
				t.Errorf("%d ticks on 100 mm, want one each 1.2 mm", n)
			}
		}
	}
}

func TestLinesRunIntoACliff(t *testing.T) {
	// Three lines come together at x = 40 and part at x = 60.
	var lines []Line
	for i := range 3 {
		l := Line{Level: math.Exp2(float64(i)), Index: i}
		for _, p := range []r2.Vec{{X: 0, Y: 10}, {X: 40, Y: 0.1}, {X: 60, Y: 0.1}, {X: 100, Y: 10}} {
			l.Points = append(l.Points, r2.Vec{X: p.X, Y: p.Y * float64(i)})
		}
		lines = append(lines, l)
	}
	kept, cliffs := Cliffs(lines, CliffOptions{})
	if len(cliffs) != 1 || len(kept) != 6 {
		t.Fatalf("%d cliffs and %d pieces, want 1 and 6", len(cliffs), len(kept))
	}
	a, b := cliffs[0].Points[0].X, cliffs[0].Points[len(cliffs[0].Points)-1].X
	if a < 38 || a > 40.5 || b < 59.5 || b > 62 {
		t.Errorf("the cliff runs from %.1f to %.1f mm, want 40 to 60", a, b)
	}
	for _, l := range kept {
		first, last := l.Points[0], l.Points[len(l.Points)-1]
		gap := math.Min(Distance(first, cliffs[0].Points[0], r2.Vec{X: b}), Distance(last, cliffs[0].Points[0], r2.Vec{X: b}))
		if gap > 0.5 {
			t.Errorf("a line of level %d ends %.2f mm from the cliff", l.Index, gap)
		}
	}
}

func TestAShadowIsACliff(t *testing.T) {
	shadow, light := board()
	opts := Paper(20)
	opts.Probe = light
	lines := contours(sampled(101, 101, 0.05, light), []float64{6, 12, 18}, opts)
	paper := func(p r2.Vec) r2.Vec { return r2.Scale(20, p) }
	_, cliffs := Cliffs(OnPaper(lines, paper), CliffOptions{})
	drawn := 0.0
	for _, c := range cliffs {
		drawn += c.Length()
		if c.Index != 0 || c.Top != 2 {
			t.Errorf("a cliff from level %d to %d, want 0 to 2", c.Index, c.Top)
		}
		for _, tick := range c.Ticks {
			if p := r2.Scale(1/20.0, tick[1]); winding([][]r2.Vec{shadow}, p) == 0 && !narrow(shadow, p, 0.1) {
				t.Errorf("a tick points at the light at %v", p)
			}
		}
	}
	around := Line{Points: through(shadow, paper), Closed: true}.Length()
	if drawn < 0.9*around || drawn > 1.1*around {
		t.Errorf("%.1f mm of cliff around a shadow of %.1f mm", drawn, around)
	}
}

func TestNothingIsLostInACliff(t *testing.T) {
	// Whatever is not drawn as a line has a cliff within half a millimetre of it.
	_, light := board()
	second := floor(4.2, 0.7, 0.9)
	both := func(p r2.Vec) float64 { return light(p) + second(p)/20 }
	opts := Paper(20)
	opts.Probe = both
	lines := OnPaper(contours(sampled(101, 101, 0.05, both), Values(StopLevels(40, 1, 2000, 12)), opts), func(p r2.Vec) r2.Vec { return r2.Scale(20, p) })
	kept, cliffs := Cliffs(lines, CliffOptions{})
	if len(cliffs) == 0 {
		t.Fatal("no cliffs to test with")
	}
	for _, l := range lines {
		line := measureLine(l)
		for s := 0.0; s < line.length(); s += 0.2 {
			p, _ := line.at(s)
			d := distanceToLevel(kept, l.Level, p)
			for _, c := range cliffs {
				d = min(d, distanceToLevel([]Line{c.Line}, c.Level, p))
			}
			if d > 0.5+1e-6 {
				t.Errorf("the line of %g at %v is %.2f mm from all that is drawn", l.Level, p, d)
			}
		}
	}
}

func TestCoursesAreCutWhole(t *testing.T) {
	ring := Line{Closed: true, Points: []r2.Vec{{X: 0}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}}
	open := Line{Points: []r2.Vec{{X: 0}, {X: 10}, {X: 10, Y: 10}}}
	for _, c := range []struct {
		line Line
		gaps [][2]float64
		want []float64
	}{
		{ring, nil, []float64{40}},
		{ring, [][2]float64{{5, 8}}, []float64{37}},
		{ring, [][2]float64{{5, 8}, {18, 22}}, []float64{10, 23}},
		{ring, [][2]float64{{12, 14}, {38, 43}}, []float64{24, 9}},
		{ring, [][2]float64{{0, 40}}, nil},
		{open, [][2]float64{{0, 3}, {9, 12}}, []float64{6, 8}},
		{open, [][2]float64{{0, 20}}, nil},
	} {
		pieces := measureLine(c.line).without(c.gaps)
		if len(pieces) != len(c.want) {
			t.Errorf("gaps %v leave %d pieces, want %v", c.gaps, len(pieces), c.want)
			continue
		}
		for i, l := range pieces {
			if got := l.Length(); !(math.Abs(got-c.want[i]) <= 1e-9) {
				t.Errorf("gaps %v: piece %d is %g long, want %g", c.gaps, i, got, c.want[i])
			}
		}
	}
}

func BenchmarkCliffs(b *testing.B) {
	_, light := board()
	opts := Paper(20)
	opts.Probe = light
	lines := OnPaper(contours(sampled(200, 160, 0.05, light), stops12, opts), func(p r2.Vec) r2.Vec { return r2.Scale(20, p) })
	b.ReportAllocs()
	for b.Loop() {
		Cliffs(lines, CliffOptions{})
	}
}
