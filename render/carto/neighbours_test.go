package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// rings are circles about one middle, the inner ones brighter, that begin at a turn.
func rings(turn float64, radii ...float64) []Line {
	var lines []Line
	for i, radius := range radii {
		l := polygon(120, radius)
		for n := range l.Points {
			l.Points[n] = r2.Rotate(l.Points[n], turn, r2.Vec{})
		}
		l.Index, l.Level = i, math.Exp2(float64(i))
		lines = append(lines, l)
	}
	return lines
}

// Three rings inside each other are one closed cliff along the outermost, which is the darkest, all round with ticks
// outward to the dark, wherever the rings begin; nothing is left of the lines.
func TestRingsAreACliffAllRound(t *testing.T) {
	for _, turn := range []float64{0, 1, 2.5, 4} {
		lines := rings(turn, 20, 19.8, 19.6)
		kept, cliffs := Cliffs(lines, CliffOptions{})
		if len(cliffs) != 1 || len(kept) != 0 {
			t.Fatalf("turned by %g: %d cliffs, %d lines", turn, len(cliffs), len(kept))
		}
		c := cliffs[0]
		if !c.Closed || c.Index != 0 || c.Top != 2 || c.Levels != 3 || !(math.Abs(c.Length()-lines[0].Length()) <= 1e-9) {
			t.Errorf("turned by %g: %d levels from %d to %d, closed %v", turn, c.Levels, c.Index, c.Top, c.Closed)
		}
		if want := int(lines[0].Length() / 1.2); len(c.Ticks) < want-1 || len(c.Ticks) > want+1 {
			t.Errorf("%d ticks, want one each 1.2 mm: %d", len(c.Ticks), want)
		}
		for _, tick := range c.Ticks {
			if in, out := r2.Norm(tick[0]), r2.Norm(tick[1]); !(math.Abs(in-20) <= 0.02) || !(math.Abs(out-in-0.8) <= 0.02) {
				t.Errorf("a tick runs from %.2f to %.2f mm off the middle", in, out)
			}
		}
	}
}

// Rings that come close on one side are a cliff there alone, of the same length and with as much left of the lines
// wherever the rings begin: the beginning of a ring is no end.
func TestACliffRunsOverTheBeginningOfARing(t *testing.T) {
	var lengths, left []float64
	for k := range 8 {
		lines := rings(2*math.Pi*float64(k)/8+0.013, 20, 17, 14)
		for i := range lines {
			for n := range lines[i].Points {
				lines[i].Points[n].X += 2.8 * float64(i) // 0.2 mm apart on the right, 5.8 mm on the left
			}
		}
		kept, cliffs := Cliffs(lines, CliffOptions{})
		if len(cliffs) != 1 || len(kept) != 3 {
			t.Fatalf("begun at %d eighths: %d cliffs and %d lines, want 1 and 3", k, len(cliffs), len(kept))
		}
		sum := 0.0
		for _, l := range kept {
			sum += l.Length()
		}
		lengths, left = append(lengths, cliffs[0].Length()), append(left, sum)
		if cliffs[0].Closed || cliffs[0].Levels != 3 || cliffs[0].Index != 0 {
			t.Errorf("begun at %d eighths: %+v", k, cliffs[0])
		}
	}
	for k := range lengths {
		if !(math.Abs(lengths[k]-lengths[0]) <= 0.3) || !(math.Abs(left[k]-left[0]) <= 0.6) {
			t.Errorf("begun at %d eighths a cliff of %.2f mm and %.2f mm of lines, at none %.2f and %.2f", k, lengths[k], left[k], lengths[0], left[0])
		}
	}
	// The outer two are half of 0.5 mm apart, and so all three within it, up to an angle from the right; by the law of
	// cosines the gap of two rings is near 0.2 + 2.8 (1 - cos a).
	angle := math.Acos(1 - (0.25-0.2)/2.8)
	if want := 2 * angle * 20; !(math.Abs(lengths[0]-want) <= 1.2) {
		t.Errorf("the cliff is %.2f mm long, want about %.2f", lengths[0], want)
	}
}

// A line carries a cliff with the next two levels over it, on either side, and is not its foot where a lower level is
// in it; gaps in the count of levels make none.
func TestTheFootOfACliff(t *testing.T) {
	for name, c := range map[string]struct {
		heights []float64 // by level; not a number: no line
		feet    []bool
	}{
		"three up":                {[]float64{0, 0.2, 0.4}, []bool{true, false, false}},
		"three down":              {[]float64{0, -0.2, -0.4}, []bool{true, false, false}},
		"on both sides":           {[]float64{0, 0.25, -0.25}, []bool{true, false, false}},
		"just within":             {[]float64{0, 0.2, 0.5}, []bool{true, false, false}},
		"just not":                {[]float64{0, 0.2, 0.501}, []bool{false, false, false}},
		"the middle one far":      {[]float64{0, 0.6, 0.2}, []bool{false, false, false}},
		"four":                    {[]float64{0, 0.1, 0.2, 0.3}, []bool{true, false, false, false}},
		"a level is missing":      {[]float64{0, math.NaN(), 0.1, 0.2}, []bool{false, false, false, false}},
		"two and three":           {[]float64{0, 0.4, 5, 5.1, 5.2}, []bool{false, false, true, false, false}},
		"the lowest a little off": {[]float64{-0.4, 0, 0.2, 0.4}, []bool{false, true, false, false}},
	} {
		s := cliffs{opts: CliffOptions{}.withDefaults()}
		var lines []Line
		for i, y := range c.heights {
			if !math.IsNaN(y) {
				lines = append(lines, straight(i, y))
			}
		}
		s.near = indexSpans(lines, 1)
		for n, l := range lines {
			if got := s.carriesAt(r2.Vec{X: 47, Y: l.Points[0].Y}, n); got != c.feet[l.Index] {
				t.Errorf("%s: level %d is the foot: %v", name, l.Index, got)
			}
		}
	}
}

// As many levels run in a cliff as follow each other up its stairs, each pair of steps within the width; 12 over the
// foot are looked at.
func TestTheTopOfACliff(t *testing.T) {
	for _, c := range []struct {
		step float64
		n    int
		want int
	}{{0.1, 3, 2}, {0.1, 8, 7}, {0.1, 20, 10}, {0.05, 20, 12}, {0.25, 9, 4}, {0.3, 9, 1}, {0.6, 9, 0}, {0.1, 1, 0}} {
		s := cliffs{opts: CliffOptions{}.withDefaults()}
		var lines []Line
		for i := range c.n {
			lines = append(lines, straight(i, c.step*float64(i)))
		}
		s.near = indexSpans(lines, 1)
		if got := s.top(r2.Vec{X: 50}, 0); got != c.want {
			t.Errorf("%d levels %g mm apart: %d over the foot, want %d", c.n, c.step, got, c.want)
		}
	}
}

// Stretches are found to a thirtieth of the step, at the ends of a line too, and over the beginning of a ring as one.
func TestStretches(t *testing.T) {
	open := measureLine(Line{Points: []r2.Vec{{}, {X: 40}}})
	ring := measureLine(Line{Closed: true, Points: []r2.Vec{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}})
	for name, c := range map[string]struct {
		line measuredLine
		is   func(p r2.Vec) bool
		want [][2]float64
	}{
		"none":             {open, func(p r2.Vec) bool { return false }, nil},
		"all":              {open, func(p r2.Vec) bool { return true }, [][2]float64{{0, 40}}},
		"the middle":       {open, func(p r2.Vec) bool { return p.X > 11.3 && p.X < 19.8 }, [][2]float64{{11.3, 19.8}}},
		"both ends":        {open, func(p r2.Vec) bool { return p.X < 3.4 || p.X > 37.7 }, [][2]float64{{0, 3.4}, {37.7, 40}}},
		"all of a ring":    {ring, func(p r2.Vec) bool { return true }, [][2]float64{{0, 40}}},
		"a side of a ring": {ring, func(p r2.Vec) bool { return p.X == 10 && p.Y > 2.2 && p.Y < 7.7 }, [][2]float64{{12.2, 17.7}}},
		"over the beginning": {ring, func(p r2.Vec) bool { return p.Y == 0 && p.X < 4.6 || p.X == 0 && p.Y < 3.3 },
			[][2]float64{{36.7, 44.6}}},
		"over it, and another": {ring, func(p r2.Vec) bool {
			return p.Y == 0 && p.X < 4.6 || p.X == 0 && p.Y < 3.3 || p.Y == 10 && p.X > 2 && p.X < 6
		},
			[][2]float64{{24, 28}, {36.7, 44.6}}},
		"at the beginning alone": {ring, func(p r2.Vec) bool { return p.Y == 0 && p.X < 4.6 || p.X == 0 && p.Y > 3.3 && p.Y < 8 },
			[][2]float64{{32, 36.7}, {40, 44.6}}},
	} {
		const step = 0.7
		got := stretches(c.line, step, c.is)
		same := len(got) == len(c.want)
		for i := 0; same && i < len(got); i++ {
			same = math.Abs(got[i][0]-c.want[i][0]) <= step/32+1e-9 && math.Abs(got[i][1]-c.want[i][1]) <= step/32+1e-9
		}
		if !same {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// Merged stretches hold what one of the two lists holds, in order and without an overlap, and on a ring those that run
// over its beginning are one with what lies there.
func TestMergedStretches(t *testing.T) {
	r := rng(11)
	for _, closed := range []bool{false, true} {
		line := measureLine(Line{Closed: closed, Points: []r2.Vec{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}, {Y: 1e-9}}})
		all := line.length()
		some := func() (out [][2]float64) {
			from := r.between(0, 8)
			for from < all-1 {
				to := from + r.between(0.5, 8)
				if to > all && (!closed || len(out) > 0 && to-all >= out[0][0]) {
					break
				}
				out = append(out, [2]float64{from, to})
				from = to + r.between(0.5, 12)
			}
			return out
		}
		holds := func(list [][2]float64, s float64) bool {
			for _, x := range list {
				if x[0] <= s && s <= x[1] || closed && x[0] <= s+all && s+all <= x[1] {
					return true
				}
			}
			return false
		}
		for range 400 {
			a, b := some(), some()
			got := merged(line, a, b)
			for s := 0.05; s < all; s += 0.1 {
				if want := holds(a, s) || holds(b, s); holds(got, s) != want {
					t.Fatalf("%v and %v, closed %v: %v at %g", a, b, closed, got, s)
				}
			}
			for i := 1; i < len(got); i++ {
				if got[i][0] <= got[i-1][1] {
					t.Fatalf("%v and %v: %v overlap", a, b, got)
				}
			}
			if n := len(got); closed && n > 1 && got[n-1][1]-all > got[0][0] {
				t.Fatalf("%v and %v: %v overlap over the beginning", a, b, got)
			}
		}
	}
}

// A point is past an open cliff before its beginning and behind its end, and past no ring.
func TestPastTheEndOfACliff(t *testing.T) {
	f := Cliff{Line: Line{Points: []r2.Vec{{}, {X: 10}, {X: 10, Y: 10}}}}
	for _, c := range []struct {
		piece int
		p     r2.Vec
		want  bool
	}{
		{0, r2.Vec{X: -0.1, Y: 3}, true}, {0, r2.Vec{Y: 3}, false}, {0, r2.Vec{X: 12}, false}, {1, r2.Vec{X: 9, Y: -2}, false},
		{1, r2.Vec{X: 8, Y: 10.1}, true}, {1, r2.Vec{X: 8, Y: 10}, false}, {1, r2.Vec{X: 8, Y: 5}, false},
	} {
		if got := f.beyondEnd(c.piece, c.p); got != c.want {
			t.Errorf("%v is past piece %d: %v", c.p, c.piece, got)
		}
	}
	single := Cliff{Line: Line{Points: []r2.Vec{{}, {X: 10}}}}
	if !single.beyondEnd(0, r2.Vec{X: -1}) || !single.beyondEnd(0, r2.Vec{X: 11}) || single.beyondEnd(0, r2.Vec{X: 5}) {
		t.Error("a cliff of one piece has two ends")
	}
	f.Closed = true
	if f.beyondEnd(0, r2.Vec{X: -0.1, Y: 3}) || f.beyondEnd(2, r2.Vec{X: 8, Y: 11}) {
		t.Error("a ring has no end")
	}
}

// What is shorter than the least is no cliff, and a gap of the same length in one is bridged; what is asked for counts.
func TestShortCliffs(t *testing.T) {
	touching := func(from, to float64) []Line {
		lines := []Line{straight(0, 0)}
		for i := 1; i < 3; i++ {
			lines = append(lines, Line{Level: math.Exp2(float64(i)), Index: i, Points: []r2.Vec{
				{X: 0, Y: 5 * float64(i)}, {X: from, Y: 5 * float64(i)}, {X: from, Y: 0.2 * float64(i)}, {X: to, Y: 0.2 * float64(i)},
				{X: to, Y: 5 * float64(i)}, {X: 100, Y: 5 * float64(i)}}})
		}
		return lines
	}
	for _, c := range []struct {
		length float64
		opts   CliffOptions
		want   int
	}{{1, CliffOptions{}, 0}, {3, CliffOptions{}, 1}, {3, CliffOptions{Least: 5}, 0}, {6, CliffOptions{Least: 5}, 1}, {6, CliffOptions{Within: 0.3}, 0}} {
		kept, cliffs := Cliffs(touching(50, 50+c.length), c.opts)
		if len(cliffs) != c.want {
			t.Errorf("%g mm side by side, %+v: %d cliffs", c.length, c.opts, len(cliffs))
		}
		if c.want == 0 && len(kept) != 3 {
			t.Errorf("%g mm side by side, no cliff and %d lines", c.length, len(kept))
		}
	}
	_, cliffs := Cliffs(touching(20, 80), CliffOptions{Every: 5, Tick: 2})
	if n := len(cliffs[0].Ticks); n < 11 || n > 13 {
		t.Errorf("%d ticks of 5 mm on 60", n)
	}
	if tick := cliffs[0].Ticks[3]; !(math.Abs(r2.Norm(r2.Sub(tick[1], tick[0]))-2) <= 1e-9) {
		t.Errorf("a tick of %v, want 2 mm", tick)
	}
	if kept, cliffs := Cliffs(nil, CliffOptions{}); kept != nil || cliffs != nil {
		t.Error("no lines, yet something")
	}
}
