package carto

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

// A place for a figure costs its bend in mm, its angle by a right one, a tenth of what it covers, 0.8 where the light is at its foot, and up
// to 0.3 toward the ends of an open line.
func TestWhatAFigureCosts(t *testing.T) {
	size := r2.Vec{X: 6, Y: 2}
	const length, degrees = 40, 30.0
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	from, to := r2.Vec{X: 5, Y: 5}, r2.Vec{X: 5 + length*cos, Y: 5 + length*sin}
	bump := Obstacle{Outline: BoxOutline(boxAround(from, r2.Vec{X: 14, Y: 14})), Cost: 4}
	for name, c := range map[string]struct {
		line Line
		down float64
	}{"up": {Line{Points: []r2.Vec{from, to}}, 0}, "down": {Line{Points: []r2.Vec{to, from}}, downCost}} {
		w := letterer{opts: LetterOptions{}.withDefaults(), lines: []Line{c.line}}
		w.near = indexSpans(w.lines, 4)
		w.obstacles = indexObstacles([]Obstacle{bump}, r2.Box{Max: r2.Vec{X: 60, Y: 60}})
		choices := w.choices(measureLine(c.line), 0, size)
		if len(choices) != 33 { // a mm from the next, half a gap of 7.4 mm from either end
			t.Errorf("%s: %d places", name, len(choices))
		}
		covers := 0
		for i, ch := range choices {
			s := (ch.From + ch.To) / 2
			want := degrees/90 + c.down + 0.3*math.Abs(2*s/length-1)
			if Overlap(ch.Outline(), bump.Outline) {
				want, covers = want+0.4, covers+1
			}
			if !(math.Abs(ch.cost-want) <= 1e-9) {
				t.Errorf("%s: %g mm along a figure costs %g, want %g", name, s, ch.cost, want)
			}
			if i > 0 && ch.cost < choices[i-1].cost {
				t.Errorf("%s: place %d is cheaper than the one before it", name, i)
			}
		}
		if covers == 0 || covers == len(choices) {
			t.Errorf("%s: %d of the places cover something", name, covers)
		}
	}
}

// A figure is drawn to those of the levels next to its own, by up to 0.7 over 40 mm; the cheapest place that is free is taken with that.
func TestFiguresStandLikeRungs(t *testing.T) {
	w := letterer{opts: LetterOptions{}.withDefaults(), lines: []Line{{Index: 3}, {Index: 4}, {Index: 2}, {Index: 5}}}
	at := func(line int, x float64) Lettering {
		return Lettering{Line: line, At: r2.Vec{X: x}, Size: r2.Vec{X: 6, Y: 2}}
	}
	for _, c := range []struct {
		placed []Lettering
		want   float64
	}{
		{nil, 0}, {[]Lettering{at(3, 5)}, 0}, {[]Lettering{at(0, 5)}, 0}, {[]Lettering{at(1, 20)}, 0.35}, {[]Lettering{at(2, -10)}, 0.175},
		{[]Lettering{at(1, 20), at(2, -10), at(1, 30)}, 0.175}, {[]Lettering{at(1, 90)}, 0.7},
	} {
		w.placed = c.placed
		if got := w.ladderPenalty(at(0, 0)); !(math.Abs(got-c.want) <= 1e-12) {
			t.Errorf("beside %+v it costs %g, want %g", c.placed, got, c.want)
		}
	}
	w.placed = []Lettering{at(1, 40)} // the places lie 0, 20 and 36 mm along, the last of them beside it too near
	choices := []choice{{at(0, 0), 0.1}, {at(0, 20), 0.3}, {at(0, 36), 0.35}}
	if got := w.best(choices); got != 1 { // 0.1 + 0.7, 0.3 + 0.35
		t.Errorf("place %d is taken", got)
	}
	choices[0].cost, choices[1].cost = 0, 0.35 // 0.7 and 0.7: the first of two alike
	if got := w.best(choices[:2]); got != 0 {
		t.Errorf("of two places alike number %d is taken", got)
	}
	if got := w.best(choices[2:]); got != -1 {
		t.Errorf("place %d is taken, and none is free", got)
	}
}

// A figure that lies on the rim of the area is in it, and one that lies over it by anything is not.
func TestFiguresInAnArea(t *testing.T) {
	l := Lettering{At: r2.Vec{X: 10, Y: 10}, Size: r2.Vec{X: 6, Y: 2}}
	area := r2.Box{Min: r2.Vec{X: 7, Y: 9}, Max: r2.Vec{X: 13, Y: 11}}
	w := letterer{opts: LetterOptions{Area: &area}}
	if !w.inArea(l) || !(&letterer{}).inArea(l) {
		t.Error("a figure that fills the area is not in it")
	}
	for i, over := range []r2.Box{{Min: r2.Vec{X: 1e-9}}, {Min: r2.Vec{Y: 1e-9}}, {Max: r2.Vec{X: -1e-9}}, {Max: r2.Vec{Y: -1e-9}}} {
		small := r2.Box{Min: r2.Add(area.Min, over.Min), Max: r2.Add(area.Max, over.Max)}
		w.opts.Area = &small
		if w.inArea(l) {
			t.Errorf("over side %d it is in the area", i)
		}
	}
}

// Labels move less and less: a move that costs half a step of the ladder more is taken in one of e at the beginning, one of a mm of leader at
// the end; what costs no more is taken always.
func TestHowLabelsCoolDown(t *testing.T) {
	for share, want := range map[float64]float64{0: 65, 1: 1, 0.5: math.Sqrt(65)} {
		if got := heatAt(share); !(math.Abs(got-want) <= 1e-12*want) {
			t.Errorf("after %g of the moves the heat is %g, want %g", share, got, want)
		}
	}
	for r, want := range map[float64]int{0: 0, 0.1: 0, 0.5: 10, 0.7: 19, 0.999: 39} {
		if got := favouringFirst(r, 40); got != want {
			t.Errorf("%g picks place %d of 40, want %d", r, got, want)
		}
	}
	var s solver
	for _, change := range []float64{-3, 0, 4, 8, 24} {
		const tries, heat = 20000, 8
		taken := 0
		for range tries {
			if s.accepts(change, heat) {
				taken++
			}
		}
		want := min(1, math.Exp(-change/heat))
		if got := float64(taken) / tries; !(math.Abs(got-want) <= 4*math.Sqrt(want*(1-want)/tries)) {
			t.Errorf("a move of %g is taken in %.3f of all cases, want %.3f", change, got, want)
		}
	}
}

// The end of a straight hard piece is the sixth point from its beginning at most; what is not hard ends it, as does a bend, and the end of an
// open line, while a ring goes on.
func TestEndsOfStraightPieces(t *testing.T) {
	row := func(n int, bend func(i int) float64) (l Line) {
		for i := range n {
			l.add(r2.Vec{X: float64(i) / 20, Y: bend(i)}, true)
		}
		return l
	}
	flat := row(10, func(int) float64 { return 0 })
	bent := row(10, func(i int) float64 { return 0.1 * float64(max(0, i-3)) })
	near := row(10, func(i int) float64 { return 0.0009 * float64(i%2) }) // within the bound of a mm
	soft := row(10, func(int) float64 { return 0 })
	soft.Hard[2] = false
	ring := polygon(60, 1e3)
	ring.Hard = slices.Repeat([]bool{true}, 60)
	f := probing(func(r2.Vec) float64 { return 1 })
	for name, c := range map[string]struct {
		l         Line
		i, by, to int
	}{
		"forward": {flat, 1, 1, 7}, "backward": {flat, 8, -1, 2}, "to the end": {flat, 6, 1, 9}, "to the beginning": {flat, 2, -1, 0}, "at the end": {flat, 9, 1, 9},
		"to a bend": {bent, 0, 1, 3}, "from a bend": {bent, 3, 1, 9}, "nearly straight": {near, 1, 1, 7}, "to what is soft": {soft, 0, 1, 1}, "over the beginning of a ring": {ring, 0, -1, 59}, "and its end": {ring, 59, 1, 0},
	} {
		l := c.l
		if got := f.straightEnd(l, c.i, c.by); got != l.Points[c.to] {
			t.Errorf("%s: %v, want point %d, %v", name, got, c.to, l.Points[c.to])
		}
	}
}

// lit is a tracer over a field that is light over a wedge: right of the corner between its two sides, or what is left of them.
func lit(corner, in, out r2.Vec) *tracer {
	return probing(func(p r2.Vec) float64 {
		d := r2.Sub(p, corner)
		if r2.Cross(in, d) >= 0 && r2.Cross(out, d) >= 0 {
			return 100
		}
		return 3
	})
}

// Where two straight hard pieces meet is a corner: it lies ahead of both, within five steps of the lattice, and both ways to it are edges.
func TestCornersFromStraightPieces(t *testing.T) {
	corner, in, out := r2.Vec{X: 1, Y: 1}, r2.Vec{X: 1}, r2.Vec{Y: 1} // along +x to it, then along +y; the light is up and left
	f := lit(corner, in, out)
	path := func(before, after float64) Line { // of points before the corner and after it, the nearest so far off
		var l Line
		for i := 3; i >= 0; i-- {
			l.add(r2.Sub(corner, r2.Scale(before+0.05*float64(i), in)), true)
		}
		for i := range 4 {
			l.add(r2.Add(corner, r2.Scale(after+0.05*float64(i), out)), true)
		}
		return l
	}
	for name, c := range map[string]struct {
		before, after float64
		f             *tracer
		ok            bool
	}{
		"near": {0.02, 0.03, f, true}, "at the reach": {0.249, 0.249, f, true}, "too far before": {0.26, 0.03, f, false}, "too far after": {0.03, 0.26, f, false},
		"behind the first": {-0.02, 0.03, f, false}, "behind the second": {0.03, -0.02, f, false}, "just behind the first": {-0.005, 0.03, f, false}, "just behind the second": {0.03, -0.005, f, false},
		"the first way is no edge": {0.1, 0.03, lit(r2.Vec{X: 1, Y: 0.9}, in, out), false}, "the second way is no edge": {0.03, 0.1, lit(r2.Vec{X: 1.1, Y: 1}, in, out), false},
	} {
		x, ok := c.f.shadowCorner(path(c.before, c.after), 3, 4, 0)
		if ok != c.ok || ok && r2.Norm(r2.Sub(x, corner)) > 1e-9 {
			t.Errorf("%s: a corner at %v, %v", name, x, ok)
		}
	}
	straight := path(0.02, 0.03)
	for i := 4; i < 8; i++ {
		straight.Points[i] = r2.Vec{X: 1.03 + 0.05*float64(i-4), Y: 1}
	}
	if _, ok := f.shadowCorner(straight, 3, 4, 0); ok {
		t.Error("a straight edge has a corner")
	}
	// Between points of which one is not hard nothing is looked for.
	l := path(0.02, 0.03)
	l.Hard[3], l.Hard[6] = false, false
	if got := f.sharpen(l, 0); len(got.Points) != len(l.Points) {
		t.Errorf("beside what is soft %d points were added", len(got.Points)-len(l.Points))
	}
	l.Hard[3], l.Hard[6] = true, true
	if got := f.sharpen(l, 0); len(got.Points) != len(l.Points)+1 || r2.Norm(r2.Sub(got.Points[4], corner)) > 1e-9 || got.Closed {
		t.Errorf("sharpened it is %v", got.Points)
	}
}

// A hard edge is found by halving, so many times as it takes to come within the bound, and no more; a slope is halved until its pieces are no
// edges.
func TestHowOftenAnEdgeIsAsked(t *testing.T) {
	asked := 0
	step := func(p r2.Vec) float64 {
		asked++
		if p.X > 1.0137 {
			return 100
		}
		return 3
	}
	f := probing(step)
	asked = 0
	at := edge(2 * (20*41 + 20))
	samples := f.bisect(at)
	if asked != 6 || len(samples) != 8 { // 50 mm by 2^6 is less than a mm
		t.Errorf("asked %d times, %d samples", asked, len(samples))
	}
	for i := 1; i < len(samples); i++ {
		if samples[i].s <= samples[i-1].s || samples[i].v < samples[i-1].v {
			t.Errorf("samples %v", samples)
		}
	}
}

// The dark end of a ruler lies six stops under the lowest level that has light: a level of none has no logarithm.
func TestALevelWithoutLight(t *testing.T) {
	for want, levels := range map[float64][]float64{1: {0, 64, 128}, 2: {128}, 0.5: {-3, 0, 32}} {
		if got := newRuler(Logarithmic, levels); got.dark != want || got.linear {
			t.Errorf("of %v: %+v", levels, got)
		}
	}
	if got := newRuler(Logarithmic, []float64{0}); !got.linear {
		t.Errorf("of no light alone: %+v", got)
	}
}

// Without a tolerance a line keeps all its crossings; with one a straight line is its ends.
func TestLinesKeepTheirPoints(t *testing.T) {
	g := sampled(21, 21, 0.1, func(p r2.Vec) float64 { return 1 + p.X })
	for tolerance, want := range map[float64]int{0: 21, 0.015: 2} {
		lines := contours(g, []float64{1.234}, Options{Measure: Linear, Scale: 20, Tolerance: tolerance})
		if len(lines) != 1 || len(lines[0].Points) != want {
			t.Errorf("with a tolerance of %g it has %d points, want %d", tolerance, len(lines[0].Points), want)
		}
	}
}

// Stretches that touch are one, and what is left of a ring's beginning by as much as a step is joined to its end.
func TestStretchesThatTouch(t *testing.T) {
	open := measureLine(Line{Points: []r2.Vec{{}, {X: 40}}})
	if got := merged(open, [][2]float64{{2, 4}}, [][2]float64{{4, 7}}); !slices.Equal(got, [][2]float64{{2, 7}}) {
		t.Errorf("merged %v", got)
	}
	ring := measureLine(Line{Closed: true, Points: []r2.Vec{{}, {X: 10}, {X: 10, Y: 10}, {Y: 10}}})
	for name, c := range map[string]struct{ in, want [][2]float64 }{
		"a step from both": {[][2]float64{{1, 5}, {20, 39}}, [][2]float64{{20, 45}}}, "too far in": {[][2]float64{{1.1, 5}, {20, 40}}, [][2]float64{{1.1, 5}, {20, 40}}},
		"too far from the end": {[][2]float64{{0, 5}, {20, 38.9}}, [][2]float64{{0, 5}, {20, 38.9}}}, "one": {[][2]float64{{0, 40}}, [][2]float64{{0, 40}}},
		"three": {[][2]float64{{0, 5}, {8, 9}, {20, 40}}, [][2]float64{{8, 9}, {20, 45}}},
	} {
		if got := closeRing(ring, slices.Clone(c.in), 1); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// Labels with one place each, which both lie over the other, are in conflict; where a form has no size, the next is tried.
func TestLabelsWithOnePlace(t *testing.T) {
	at := func(x float64) candidate {
		c := candidate{Placement: Placement{On: true, Box: boxAround(r2.Vec{X: x, Y: 5}, r2.Vec{X: 10, Y: 4})}}
		c.limits = c.Box
		return c
	}
	c := newConflicts([][]candidate{{at(10), {}}, {at(14), {}}, {at(40), {}}}, PlaceOptions{Gap: 1})
	for label, want := range [][]int{{1}, {0}, nil} {
		if got := c.conflicting(label, []int{0, 0, 0}); !slices.Equal(got, want) {
			t.Errorf("label %d is in conflict with %v, want %v", label, got, want)
		}
	}
	if n, _ := c.firstClear(0, []int{1, 0, 0}, nil); n != 1 {
		t.Errorf("the first clear place is %d", n)
	}
	l := Label{Anchor: r2.Vec{X: 50, Y: 50}, Forms: []Form{{Size: r2.Vec{Y: 4}}, {Size: r2.Vec{X: 4}}, {Size: r2.Vec{X: 8, Y: 4}}}}
	if got := Place([]Label{l}, PlaceOptions{Area: r2.Box{Max: r2.Vec{X: 100, Y: 100}}})[0]; !got.On || got.Form != 2 {
		t.Errorf("it stands at %+v", got)
	}
}
