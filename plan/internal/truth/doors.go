package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
)

// leavesOf are the leaves of barn doors: each is a flat piece with two parallel sides, hinged on a side of the frame
// before the lens and turned about its hinge. At 0 it lies over the frame, at 90 it points ahead. Behind the hinge the
// frame reaches back to the plane of the lens. All is black.
func leavesOf(l *lamp, d *kit.HungDoors) (leaves []face) {
	if d == nil {
		return nil
	}
	wide, high := d.Frame[0], d.Frame[1]
	for _, h := range []hinge{
		{d.Top, 0, wide, high / 2, d.Long}, {d.Bottom, 180, wide, high / 2, d.Long},
		{d.Right, 90, high, wide / 2, d.Short}, {d.Left, 270, high, wide / 2, d.Short},
	} {
		if h.angle == 180 {
			continue
		}
		for _, corners := range h.pieces(l, d) {
			if f, ok := newFace(0, corners); ok {
				leaves = append(leaves, f)
			}
		}
	}
	return leaves
}

// hinge is one side of the frame with its leaf: opened by an angle, at an hour of a clock seen from behind, both in
// degrees, so wide and so far from the middle, m.
type hinge struct {
	angle, clock, width, offset float64
	leaf                        kit.Leaf
}

// pieces are the leaf and the frame behind it. The lamp's right is at three.
func (h *hinge) pieces(l *lamp, d *kit.HungDoors) [2][]r3.Vec {
	s, c := math.Sincos((h.clock + d.Turn) / 180 * math.Pi)
	outward := r3.Add(r3.Scale(s, l.right), r3.Scale(c, l.up))
	along := r3.Add(r3.Scale(c, l.right), r3.Scale(-s, l.up))
	behind := r3.Add(l.at, r3.Scale(h.offset, outward))
	middle := r3.Add(behind, r3.Scale(d.Gap, l.axis))
	s, c = math.Sincos(h.angle / 180 * math.Pi)
	edge := r3.Add(middle, r3.Add(r3.Scale(-h.leaf.Length*c, outward), r3.Scale(h.leaf.Length*s, l.axis)))
	aside := func(p r3.Vec, far float64) r3.Vec { return r3.Add(p, r3.Scale(far, along)) }
	return [2][]r3.Vec{
		{aside(middle, -h.width/2), aside(middle, h.width/2), aside(edge, h.leaf.Edge/2), aside(edge, -h.leaf.Edge/2)},
		{aside(behind, -h.width/2), aside(behind, h.width/2), aside(middle, h.width/2), aside(middle, -h.width/2)},
	}
}

// stopped says whether a leaf lies between two points.
func (l *lamp) stopped(from, to r3.Vec) bool {
	way := r3.Sub(to, from)
	for i := range l.leaves {
		if _, _, ok := l.leaves[i].meets(from, way, 1); ok {
			return true
		}
	}
	return false
}

// caught says whether a ray of the lamp meets a leaf.
func (l *lamp) caught(o, d r3.Vec) bool { return l.stopped(o, r3.Add(o, r3.Scale(longestWay, d))) }

// longestWay is farther than any leaf lies from its lamp, m.
const longestWay = 100
