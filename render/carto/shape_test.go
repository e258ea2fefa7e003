package carto

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/symbols/ink"
)

func TestOverlap(t *testing.T) {
	box := BoxOutline(r2.Box{Max: r2.Vec{X: 10, Y: 4}})
	for name, c := range map[string]struct {
		other []r2.Vec
		want  bool
	}{
		"beside, touching":          {BoxOutline(r2.Box{Min: r2.Vec{X: 10}, Max: r2.Vec{X: 12, Y: 4}}), false},
		"in by a rounding":          {BoxOutline(r2.Box{Min: r2.Vec{X: 10 - touch/2}, Max: r2.Vec{X: 12, Y: 4}}), false},
		"in by two":                 {BoxOutline(r2.Box{Min: r2.Vec{X: 10 - 2*touch}, Max: r2.Vec{X: 12, Y: 4}}), true},
		"before it by a rounding":   {BoxOutline(r2.Box{Min: r2.Vec{X: -3}, Max: r2.Vec{X: touch / 2, Y: 4}}), false},
		"overlapping":               {BoxOutline(r2.Box{Min: r2.Vec{X: 9, Y: 3}, Max: r2.Vec{X: 12, Y: 6}}), true},
		"inside":                    {BoxOutline(r2.Box{Min: r2.Vec{X: 4, Y: 1}, Max: r2.Vec{X: 5, Y: 2}}), true},
		"around":                    {BoxOutline(r2.Box{Min: r2.Vec{X: -4, Y: -1}, Max: r2.Vec{X: 15, Y: 12}}), true},
		"triangle by the corner":    {[]r2.Vec{{X: 9, Y: 6}, {X: 12, Y: 3.1}, {X: 12, Y: 6}}, false},
		"triangle over the corner":  {[]r2.Vec{{X: 8, Y: 5}, {X: 11, Y: 2}, {X: 12, Y: 6}}, true},
		"clockwise triangle":        {[]r2.Vec{{X: 12, Y: 6}, {X: 11, Y: 2}, {X: 8, Y: 5}}, true},
		"line through":              {[]r2.Vec{{X: -1, Y: -1}, {X: 11, Y: 5}}, true},
		"line past the corner":      {[]r2.Vec{{X: 8, Y: 6}, {X: 13, Y: 2}}, false},
		"line short of it":          {[]r2.Vec{{X: 11, Y: 2}, {X: 20, Y: 2}}, false},
		"line along a side":         {[]r2.Vec{{X: 0, Y: 4}, {X: 10, Y: 4}}, false},
		"point inside":              {[]r2.Vec{{X: 5, Y: 2}}, true},
		"point outside":             {[]r2.Vec{{X: 5, Y: 5}}, false},
		"two equal points outside":  {[]r2.Vec{{X: 15, Y: 2}, {X: 15, Y: 2}}, false},
		"nothing":                   {nil, false},
		"turned box in the opening": {ink.TurnedBox(r2.Vec{X: 5, Y: 6}, r2.Vec{X: 4, Y: 1}, 45), false},
		"turned box dipping in":     {ink.TurnedBox(r2.Vec{X: 5, Y: 5}, r2.Vec{X: 4, Y: 1}, 45), true},
	} {
		if Overlap(box, c.other) != c.want || Overlap(c.other, box) != c.want {
			t.Errorf("%s: overlap %v and %v, want %v", name, Overlap(box, c.other), Overlap(c.other, box), c.want)
		}
	}
}

func TestBoxAndLine(t *testing.T) {
	box := r2.Box{Max: r2.Vec{X: 10, Y: 4}}
	r := rng(1)
	for range 2000 {
		a := r2.Vec{X: r.between(-5, 15), Y: r.between(-5, 9)}
		b := r2.Vec{X: r.between(-5, 15), Y: r.between(-5, 9)}
		if got, want := crossesBox(a, b, box), Overlap(BoxOutline(box), []r2.Vec{a, b}); got != want {
			t.Errorf("%v to %v crosses the box: %v, want %v", a, b, got, want)
		}
	}
}

func TestCross(t *testing.T) {
	a, b := r2.Vec{}, r2.Vec{X: 10}
	for _, c := range []struct {
		c, d r2.Vec
		want bool
	}{
		{r2.Vec{X: 5, Y: -1}, r2.Vec{X: 5, Y: 1}, true},
		{r2.Vec{X: 11, Y: -1}, r2.Vec{X: 11, Y: 1}, false},
		{r2.Vec{X: 5, Y: 1}, r2.Vec{X: 5, Y: 2}, false},
		{r2.Vec{X: 5}, r2.Vec{X: 5, Y: 2}, true},
		{r2.Vec{X: 8}, r2.Vec{X: 14}, true},
		{r2.Vec{X: 11}, r2.Vec{X: 14}, false},
	} {
		if got := cross(a, b, c.c, c.d); got != c.want {
			t.Errorf("%v to %v: %v, want %v", c.c, c.d, got, c.want)
		}
	}
}

// What boxes rule out is apart: an index of obstacles finds what a walk over all of them finds.
func TestObstacleIndexFindsAll(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 13))
	shape := func() []r2.Vec {
		at, turn := r2.Vec{X: 100 * r.Float64(), Y: 60 * r.Float64()}, 2*math.Pi*r.Float64()
		if r.IntN(2) == 0 {
			at, turn = r2.Vec{X: float64(r.IntN(25)) * 4, Y: float64(r.IntN(15)) * 4}, 0 // rims that meet
		}
		a, b := 2*float64(1+r.IntN(3)), 2*float64(1+r.IntN(3))
		s, c := math.Sincos(turn)
		var out []r2.Vec
		for _, q := range [][2]float64{{0, 0}, {a, 0}, {a, b}, {0, b}}[:2+2*r.IntN(2)] {
			out = append(out, r2.Vec{X: at.X + c*q[0] - s*q[1], Y: at.Y + s*q[0] + c*q[1]})
		}
		return out
	}
	var all []Obstacle
	for range 120 {
		all = append(all, Obstacle{Outline: shape()})
	}
	x := indexObstacles(all, r2.Box{Max: r2.Vec{X: 100, Y: 60}})
	hits := 0
	for range 2000 {
		outline := shape()
		want := !slices.ContainsFunc(all, func(o Obstacle) bool { return Overlap(outline, o.Outline) })
		if _, free := x.over(outline, false); free != want {
			t.Fatalf("%v is free: %v, want %v", outline, free, want)
		}
		if !want {
			hits++
		}
		box := plane.Bounds(outline)
		want = !slices.ContainsFunc(all, func(o Obstacle) bool { return Overlap(BoxOutline(box), o.Outline) })
		if _, free := x.overBox(box); free != want {
			t.Fatalf("the box %v is free: %v, want %v", box, free, want)
		}
	}
	if hits < 200 || hits > 1800 {
		t.Errorf("%d of 2000 hit something: the test says little", hits)
	}
}

// A line crosses a box where it runs through it for more than a touch: not along its rim, nor over a corner.
func TestLinesCrossBoxes(t *testing.T) {
	box := r2.Box{Min: r2.Vec{X: 2, Y: 1}, Max: r2.Vec{X: 5, Y: 3}}
	const sliver = touch / 2
	for _, c := range []struct {
		name           string
		x0, y0, x1, y1 float64
		want           bool
	}{
		{"through the middle", 0, 2, 9, 2, true},
		{"from within", 3, 2, 4, 2.5, true},
		{"aslant over a corner", 1, 2, 3, 0.5, true},
		{"past a corner", 1, 1.5, 2.5, 0, false},
		{"upright within the left rim", 2 + sliver, 0, 2 + sliver, 9, false},
		{"upright within the right rim", 5 - sliver, 0, 5 - sliver, 9, false},
		{"level within the lower rim", 0, 1 + sliver, 9, 1 + sliver, false},
		{"level within the upper rim", 0, 3 - sliver, 9, 3 - sliver, false},
		{"upright inside the rim", 2 + 3*touch, 0, 2 + 3*touch, 9, true},
		{"upright inside the right rim", 5 - 3*touch, 0, 5 - 3*touch, 9, true},
		{"short of it", 0, 2, 1.9, 2, false},
		{"beyond it", 5.1, 2, 9, 2, false},
	} {
		a, b := r2.Vec{X: c.x0, Y: c.y0}, r2.Vec{X: c.x1, Y: c.y1}
		if got, back := crossesBox(a, b, box), crossesBox(b, a, box); got != c.want || back != c.want {
			t.Errorf("%s: it crosses: %v, and backward %v, want %v", c.name, got, back, c.want)
		}
	}
}

// A corner that lies on a slanting side, which alone parts the two, and dips in by less than a rounding does not overlap, whichever way the outlines run.
func TestOverlapBeginsPastARounding(t *testing.T) {
	for _, c := range []struct {
		deep float64
		want bool
	}{{-touch, false}, {touch / 2, false}, {2 * touch, true}} {
		at := 5 - c.deep/math.Sqrt2
		outlines := [][]r2.Vec{{{}, {X: 10}, {Y: 10}}, {{X: at, Y: at}, {X: 12, Y: 7}, {X: 6, Y: 12}}}
		for turn := range 4 {
			a, b := slices.Clone(outlines[0]), slices.Clone(outlines[1])
			if turn&1 != 0 {
				slices.Reverse(a)
			}
			if turn&2 != 0 {
				slices.Reverse(b)
			}
			if Overlap(a, b) != c.want || Overlap(b, a) != c.want {
				t.Errorf("%g deep, turn %d: overlap %v and %v, want %v", c.deep, turn, Overlap(a, b), Overlap(b, a), c.want)
			}
		}
	}
}
