package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// Obstacle is a mark on the paper that lettering must not hide: a convex outline, in either
// direction. Two points are a line.
type Obstacle struct {
	Outline []r2.Vec // mm
	Cost    float64  // what covering it costs, as mm of leader; 0: it must not be covered
	Leaders bool     // leaders must not cross it either, or if Cost is given, at that cost
}

// BoxOutline returns the corners of a box, counter-clockwise.
func BoxOutline(b r2.Box) []r2.Vec {
	return []r2.Vec{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
}

// touch is how deep shapes may lie in one another and still count as apart, mm.
const touch = 1e-6

// Overlap says whether two convex outlines, of two points or more, share more than their rims. No
// straight line that runs along a side of either parts them (separating axis theorem).
func Overlap(a, b []r2.Vec) bool {
	return len(a) > 0 && len(b) > 0 && !separated(a, b) && !separated(b, a)
}

// separated says whether a side of a, or for a line its own direction, parts a from b.
func separated(a, b []r2.Vec) bool {
	for i, p := range a {
		if len(a) == 2 && i == 1 {
			break // a line has one direction
		}
		side := r2.Sub(a[(i+1)%len(a)], p)
		length := r2.Norm(side)
		if length == 0 {
			side, length = r2.Vec{X: 1}, 1
		}
		side = r2.Scale(1/length, side)
		if apart(a, b, r2.Vec{X: -side.Y, Y: side.X}) {
			return true
		}
	}
	return false
}

// apart says whether the shadows of a and b on a unit axis do not overlap.
func apart(a, b []r2.Vec, axis r2.Vec) bool {
	a0, a1 := shadow(a, axis)
	b0, b1 := shadow(b, axis)
	return a1 <= b0+touch || b1 <= a0+touch
}

func shadow(points []r2.Vec, axis r2.Vec) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		d := r2.Dot(p, axis)
		low, high = min(low, d), max(high, d)
	}
	return low, high
}

// boxesOverlap is Overlap of boxes.
func boxesOverlap(a, b r2.Box) bool {
	return a.Min.X < b.Max.X-touch && b.Min.X < a.Max.X-touch && a.Min.Y < b.Max.Y-touch && b.Min.Y < a.Max.Y-touch
}

// boxesMeet says whether boxes share a point; boxes that do not hold outlines that are apart.
func boxesMeet(a, b r2.Box) bool {
	return a.Min.X <= b.Max.X && b.Min.X <= a.Max.X && a.Min.Y <= b.Max.Y && b.Min.Y <= a.Max.Y
}

// crossesBox says whether the piece from a to b passes through the inside of a box (Liang & Barsky
// 1984, "A new concept and method for line clipping", ACM TOG 3(1), p. 1).
func crossesBox(a, b r2.Vec, box r2.Box) bool {
	if max(a.X, b.X) <= box.Min.X || min(a.X, b.X) >= box.Max.X || max(a.Y, b.Y) <= box.Min.Y || min(a.Y, b.Y) >= box.Max.Y {
		return false
	}
	x0, x1 := inside(a.X, b.X-a.X, box.Min.X, box.Max.X)
	y0, y1 := inside(a.Y, b.Y-a.Y, box.Min.Y, box.Max.Y)
	s, t := max(x0, y0, 0), min(x1, y1, 1)
	return t > s && (t-s)*r2.Norm(r2.Sub(b, a)) > touch
}

// inside returns the shares of a way from a on by d between which it lies inside low and high.
func inside(a, d, low, high float64) (from, to float64) {
	if d == 0 {
		if a <= low+touch || a >= high-touch {
			return 1, 0
		}
		return 0, 1
	}
	in, out := (low-a)/d, (high-a)/d
	return min(in, out), max(in, out)
}

// cross says whether two pieces cross or touch.
func cross(a, b, c, d r2.Vec) bool {
	side := func(p, q, r r2.Vec) float64 { return r2.Cross(r2.Sub(q, p), r2.Sub(r, p)) }
	d1, d2 := side(a, b, c), side(a, b, d)
	d3, d4 := side(c, d, a), side(c, d, b)
	if d1 == 0 && d2 == 0 { // on one line
		return boxesMeet(plane.Bounds([]r2.Vec{a, b}), plane.Bounds([]r2.Vec{c, d}))
	}
	return d1*d2 <= 0 && d3*d4 <= 0
}

// clampTo returns the point of a box that is nearest to p.
func clampTo(p r2.Vec, b r2.Box) r2.Vec {
	return r2.Vec{
		X: min(max(p.X, b.Min.X), b.Max.X),
		Y: min(max(p.Y, b.Min.Y), b.Max.Y),
	}
}

// obstacleIndex finds obstacles near a box.
type obstacleIndex struct {
	all   []Obstacle
	boxes []r2.Box // of their outlines
	bins  *bins
}

func indexObstacles(all []Obstacle, area r2.Box) *obstacleIndex {
	x := &obstacleIndex{all: all, boxes: make([]r2.Box, len(all)), bins: newBins(area, 8)}
	for i, o := range all {
		if len(o.Outline) > 0 {
			x.boxes[i] = plane.Bounds(o.Outline)
			x.bins.put(i, x.boxes[i])
		}
	}
	return x
}

// over returns the cost of covering an outline, and whether it may be covered at all.
func (x *obstacleIndex) over(outline []r2.Vec, leader bool) (cost float64, free bool) {
	box := plane.Bounds(outline)
	return x.sum(box, func(id int) bool {
		o := &x.all[id]
		return (!leader || o.Leaders) && boxesMeet(box, x.boxes[id]) && Overlap(outline, o.Outline)
	})
}

// overBox is over for a box, whose own sides part it from nothing that its bounds do not.
func (x *obstacleIndex) overBox(box r2.Box) (cost float64, free bool) {
	outline := BoxOutline(box)
	return x.sum(box, func(id int) bool {
		return boxesOverlap(box, x.boxes[id]) && !separated(x.all[id].Outline, outline)
	})
}

// sum adds the costs of the obstacles near a box that are hit, until one may not be.
func (x *obstacleIndex) sum(box r2.Box, hit func(id int) bool) (cost float64, free bool) {
	free = true
	counted := -1 // an obstacle in several bins is met again; those in many are long, and met in a row
	x.bins.near(box, func(id int) bool {
		if id == counted || !hit(id) {
			return true
		}
		counted = id
		cost += x.all[id].Cost
		free = x.all[id].Cost > 0
		return free
	})
	return cost, free
}
