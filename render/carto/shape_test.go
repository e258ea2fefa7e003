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
