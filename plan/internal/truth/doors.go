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
	hang := func(angle, clock, hinge, offset float64, leaf kit.Leaf) {
		if angle == 180 {
			return
		}
		// Outward and along the hinge, as a clock seen from behind: the lamp's right is at three.
		s, c := math.Sincos((clock + d.Turn) / 180 * math.Pi)
		outward := r3.Add(r3.Scale(s, l.right), r3.Scale(c, l.up))
		along := r3.Add(r3.Scale(c, l.right), r3.Scale(-s, l.up))
		middle := r3.Add(l.at, r3.Add(r3.Scale(offset, outward), r3.Scale(d.Gap, l.axis)))
		s, c = math.Sincos(angle / 180 * math.Pi)
		edge := r3.Add(middle, r3.Add(r3.Scale(-leaf.Length*c, outward), r3.Scale(leaf.Length*s, l.axis)))
		aside := func(p r3.Vec, far float64) r3.Vec { return r3.Add(p, r3.Scale(far, along)) }
		behind := r3.Add(middle, r3.Scale(-d.Gap, l.axis))
		for _, corners := range [2][]r3.Vec{
			{aside(middle, -hinge/2), aside(middle, hinge/2), aside(edge, leaf.Edge/2), aside(edge, -leaf.Edge/2)},
			{aside(behind, -hinge/2), aside(behind, hinge/2), aside(middle, hinge/2), aside(middle, -hinge/2)},
		} {
			if f, ok := newFace(0, corners); ok {
				leaves = append(leaves, f)
			}
		}
	}
	wide, high := d.Frame[0], d.Frame[1]
	hang(d.Top, 0, wide, high/2, d.Long)
	hang(d.Bottom, 180, wide, high/2, d.Long)
	hang(d.Right, 90, high, wide/2, d.Short)
	hang(d.Left, 270, high, wide/2, d.Short)
	return leaves
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
