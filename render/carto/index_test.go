package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// Boxes and outlines count as apart until they lie more than a touch in one another, from whichever side.
func TestHowDeepATouchIs(t *testing.T) {
	box := r2.Box{Max: r2.Vec{X: 10, Y: 4}}
	for _, way := range []r2.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		for depth, want := range map[float64]bool{-1e-3: false, 0: false, 0.5 * touch: false, 2 * touch: true, 0.1: true, 3: true} {
			// A box of one size moved out of the first along the way, until it lies in it by the depth.
			by := r2.Vec{X: way.X * (10 - depth), Y: way.Y * (4 - depth)}
			other := r2.Box{Min: r2.Add(box.Min, by), Max: r2.Add(box.Max, by)}
			for name, got := range map[string]bool{
				"boxes": boxesOverlap(box, other), "boxes the other way": boxesOverlap(other, box),
				"outlines": Overlap(BoxOutline(box), BoxOutline(other)), "outlines the other way": Overlap(BoxOutline(other), BoxOutline(box)),
			} {
				if got != want {
					t.Errorf("%s %g deep toward %v overlap: %v", name, depth, way, got)
				}
			}
			if meet := depth >= 0; boxesMeet(box, other) != meet || boxesMeet(other, box) != meet {
				t.Errorf("boxes %g deep toward %v share a point: %v", depth, way, !meet)
			}
		}
	}
}

// A piece crosses a box where more than a touch of it lies inside: not along a side, not through a corner, not up to it.
func TestWhatCrossesABox(t *testing.T) {
	box := r2.Box{Min: r2.Vec{X: 2, Y: 1}, Max: r2.Vec{X: 10, Y: 4}}
	for name, c := range map[string]struct {
		a, b r2.Vec
		want bool
	}{
		"through":                   {r2.Vec{X: 0, Y: 2}, r2.Vec{X: 20, Y: 2}, true},
		"upright through":           {r2.Vec{X: 5, Y: 0}, r2.Vec{X: 5, Y: 9}, true},
		"inside":                    {r2.Vec{X: 4, Y: 2}, r2.Vec{X: 5, Y: 3}, true},
		"out of it":                 {r2.Vec{X: 4, Y: 2}, r2.Vec{X: 4, Y: 30}, true},
		"up to its left side":       {r2.Vec{X: 0, Y: 2}, r2.Vec{X: 2, Y: 2}, false},
		"up to its right side":      {r2.Vec{X: 12, Y: 2}, r2.Vec{X: 10, Y: 2}, false},
		"up to its lower side":      {r2.Vec{X: 5, Y: -3}, r2.Vec{X: 5, Y: 1}, false},
		"up to its upper side":      {r2.Vec{X: 5, Y: 8}, r2.Vec{X: 5, Y: 4}, false},
		"along its left side":       {r2.Vec{X: 2, Y: 0}, r2.Vec{X: 2, Y: 9}, false},
		"along its right side":      {r2.Vec{X: 10, Y: 0}, r2.Vec{X: 10, Y: 9}, false},
		"along its lower side":      {r2.Vec{X: 0, Y: 1}, r2.Vec{X: 19, Y: 1}, false},
		"along its upper side":      {r2.Vec{X: 0, Y: 4}, r2.Vec{X: 19, Y: 4}, false},
		"just inside its left side": {r2.Vec{X: 2 + 3*touch, Y: 0}, r2.Vec{X: 2 + 3*touch, Y: 9}, true},
		"through its corner":        {r2.Vec{X: 1, Y: 2}, r2.Vec{X: 3, Y: 0}, false},
		"a corner cut off":          {r2.Vec{X: 1, Y: 2.1}, r2.Vec{X: 3, Y: 0.1}, true},
		"past it":                   {r2.Vec{X: 0, Y: 3}, r2.Vec{X: 4, Y: 9}, false},
		"short of it":               {r2.Vec{X: -8, Y: 2}, r2.Vec{X: 1.9, Y: 2}, false},
		"a point of it":             {r2.Vec{X: 4, Y: 2}, r2.Vec{X: 4, Y: 2}, false},
	} {
		if got, back := crossesBox(c.a, c.b, box), crossesBox(c.b, c.a, box); got != c.want || back != c.want {
			t.Errorf("%s: crosses %v, and the other way %v", name, got, back)
		}
	}
}

// Pieces between whole numbers cross or touch where exact arithmetic says so: where one has ends on both sides of the
// other's line and the other of its, or where an end lies on the other.
func TestCrossingIsExact(t *testing.T) {
	r := rng(17)
	side := func(p, q, s [2]int) int { return (q[0]-p[0])*(s[1]-p[1]) - (q[1]-p[1])*(s[0]-p[0]) }
	on := func(p, q, s [2]int) bool {
		return side(p, q, s) == 0 && min(p[0], q[0]) <= s[0] && s[0] <= max(p[0], q[0]) && min(p[1], q[1]) <= s[1] && s[1] <= max(p[1], q[1])
	}
	opposite := func(a, b int) bool { return a < 0 && b > 0 || a > 0 && b < 0 }
	vec := func(p [2]int) r2.Vec { return r2.Vec{X: float64(p[0]), Y: float64(p[1])} }
	for range 20000 {
		var p [4][2]int
		for i := range p {
			p[i] = [2]int{int(r.between(0, 5)), int(r.between(0, 5))}
		}
		if p[0] == p[1] || p[2] == p[3] {
			continue
		}
		a, b, c, d := p[0], p[1], p[2], p[3]
		want := opposite(side(a, b, c), side(a, b, d)) && opposite(side(c, d, a), side(c, d, b)) ||
			on(a, b, c) || on(a, b, d) || on(c, d, a) || on(c, d, b)
		if got := cross(vec(a), vec(b), vec(c), vec(d)); got != want {
			t.Fatalf("%v to %v and %v to %v cross: %v, want %v", a, b, c, d, got, want)
		}
	}
}

// Bins find at least what meets a box, whether it lies in their area, over its rim or far out, and stop when told.
func TestBinsFindAll(t *testing.T) {
	r := rng(5)
	some := func() r2.Box {
		at := r2.Vec{X: r.between(-30, 130), Y: r.between(-30, 90)}
		return r2.Box{Min: at, Max: r2.Add(at, r2.Vec{X: r.between(0, 25), Y: r.between(0, 25)})}
	}
	b := newBins(r2.Box{Max: r2.Vec{X: 100, Y: 60}}, 7)
	if b.nx != 15 || b.ny != 9 {
		t.Errorf("%d by %d bins of 7 on 100 by 60, want 15 by 9", b.nx, b.ny)
	}
	var boxes []r2.Box
	for id := range 200 {
		boxes = append(boxes, some())
		b.put(id, boxes[id])
	}
	nan := math.NaN()
	for i, box := range []r2.Box{{Min: r2.Vec{X: nan}}, {Min: r2.Vec{Y: nan}}, {Max: r2.Vec{X: nan}}, {Max: r2.Vec{Y: nan}}} {
		b.put(1000+i, box)
	}
	seen := 0
	for range 300 {
		box, found := some(), map[int]bool{}
		b.near(box, func(id int) bool { found[id] = true; return true })
		for id := range boxes {
			if boxesMeet(box, boxes[id]) && !found[id] {
				t.Fatalf("%v is not found near %v", boxes[id], box)
			}
		}
		seen += len(found)
		asked := 0
		b.near(box, func(int) bool { asked++; return asked < 3 })
		if asked > 3 {
			t.Fatalf("asked %d times after the third was the last", asked)
		}
		for id := range found {
			if id >= 1000 {
				t.Fatal("a box without a place was found")
			}
		}
	}
	if seen > 300*100 {
		t.Errorf("%d of 200 boxes are near one: the bins divide nothing", seen/300)
	}
	if one := newBins(r2.Box{}, 5); one.nx != 1 || one.ny != 1 {
		t.Errorf("%d by %d bins on a point, want one", one.nx, one.ny)
	}
	if most := newBins(r2.Box{Max: r2.Vec{X: 1e9, Y: 1e9}}, 1); most.nx != 2048 || most.ny != 2048 {
		t.Errorf("%d by %d bins at most", most.nx, most.ny)
	}
}

// Pieces of lines are found where the box of a piece meets a box, and none else: an index gives each once a bin.
func TestSpansNearABox(t *testing.T) {
	r := rng(6)
	var lines []Line
	for i := range 30 {
		l := Line{Index: i, Closed: i%3 == 0}
		for range 5 {
			l.Points = append(l.Points, r2.Vec{X: r.between(0, 80), Y: r.between(0, 80)})
		}
		lines = append(lines, l)
	}
	lines = append(lines, Line{}, Line{Points: []r2.Vec{{X: 1, Y: 1}}})
	x := indexSpans(lines, 4)
	if len(x.refs) != 10*5+20*4 {
		t.Errorf("%d pieces, want those of 10 rings and 20 open lines", len(x.refs))
	}
	for range 200 {
		at := r2.Vec{X: r.between(-10, 85), Y: r.between(-10, 85)}
		box := r2.Box{Min: at, Max: r2.Add(at, r2.Vec{X: r.between(0, 9), Y: r.between(0, 9)})}
		found := map[[2]int]bool{}
		x.near(box, func(line, piece int, a, b r2.Vec) bool {
			if p, q := lines[line].span(piece); p != a || q != b {
				t.Errorf("piece %d of line %d runs from %v to %v", piece, line, a, b)
			}
			found[[2]int{line, piece}] = true
			return true
		})
		for i, l := range lines {
			for n := range l.spans() {
				a, b := l.span(n)
				if want := boxesMeet(box, plane.Bounds([]r2.Vec{a, b})); found[[2]int{i, n}] != want {
					t.Errorf("piece %d of line %d is near: %v, want %v", n, i, !want, want)
				}
			}
		}
		asked := 0
		x.near(box, func(int, int, r2.Vec, r2.Vec) bool { asked++; return false })
		if asked > 1 {
			t.Errorf("asked %d times after the last", asked)
		}
	}
}

// What an outline covers costs the sum of what is covered, each once however many bins it is in; a leader minds only
// what leaders must mind; one obstacle without a price closes the way.
func TestTheCostOfObstacles(t *testing.T) {
	long := func(y float64) []r2.Vec { return []r2.Vec{{X: 0, Y: y}, {X: 100, Y: y}} }
	all := []Obstacle{{Outline: long(10), Cost: 5, Leaders: true}, {Outline: long(20), Cost: 3}, {Outline: long(30)}, {Outline: long(40), Leaders: true}, {}}
	x := indexObstacles(all, r2.Box{Max: r2.Vec{X: 100, Y: 60}})
	for _, c := range []struct {
		y0, y1 float64
		leader bool
		cost   float64
		free   bool
	}{
		{11, 19, false, 0, true}, {9, 11, false, 5, true}, {9, 21, false, 8, true}, {19, 21, false, 3, true}, {9, 31, false, 8, false}, {45, 50, false, 0, true},
		{9, 21, true, 5, true}, {19, 31, true, 0, true}, {29, 41, true, 0, false}, {10, 20, false, 0, true},
	} {
		box := r2.Box{Min: r2.Vec{X: 5, Y: c.y0}, Max: r2.Vec{X: 95, Y: c.y1}}
		outline := BoxOutline(box)
		if c.leader {
			outline = []r2.Vec{{X: 50, Y: c.y0}, {X: 55, Y: c.y1}}
		}
		cost, free := x.over(outline, c.leader)
		if free != c.free || c.free && cost != c.cost {
			t.Errorf("from %g to %g, leader %v: cost %g, free %v", c.y0, c.y1, c.leader, cost, free)
		}
		if cost, free = x.overBox(box); !c.leader && (free != c.free || c.free && cost != c.cost) {
			t.Errorf("the box from %g to %g: cost %g, free %v", c.y0, c.y1, cost, free)
		}
	}
}
