package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
)

// spread is where in a picture something shows: rings side by side, in thousandths of half the frame, so that the grain of
// plane geometry is far below a pixel.
type spread struct {
	rings [][]r2.Vec
	parts []body.Part
}

// thousandths of half the frame are the measure of a spread.
const thousandths = 1000

// spreadOf is where the picture shows what is seen from its place. What lies before another part of the same thing counts once.
func spreadOf(seen []seenPart, p picture) (s spread) {
	sides := p.sides()
	for i := range seen {
		within := clipped(seen[i].corners, sides[:])
		if within == nil {
			continue
		}
		ring := p.onto(within)
		for k := range ring {
			ring[k] = r2.Scale(thousandths, ring[k])
		}
		s.add(seen[i].part, plane.CounterClockwise(ring))
	}
	return s
}

// add puts in what a ring has beyond those that are there.
func (s *spread) add(part body.Part, ring []r2.Vec) {
	left := [][]r2.Vec{ring}
	for i := 0; i < len(s.rings) && len(left) > 0; i++ {
		var next [][]r2.Vec
		for _, one := range left {
			if !plane.BoxesOverlap(one, s.rings[i]) {
				next = append(next, one)
				continue
			}
			rest, _ := plane.Difference(one, s.rings[i])
			next = append(next, rest...)
		}
		left = next
	}
	for _, one := range left {
		if !plane.Thin(one) {
			s.rings, s.parts = append(s.rings, one), append(s.parts, part)
		}
	}
}

// share is how much of the picture it takes.
func (s *spread) share() (sum float64) {
	for _, ring := range s.rings {
		sum += math.Abs(plane.Area(ring))
	}
	return sum / (4 * thousandths * thousandths)
}

// shown lists the parts of which something shows, in the order of the thing's pieces.
func (s *spread) shown() (all []body.Part) {
	for _, p := range s.parts {
		known := false
		for _, o := range all {
			known = known || o == p
		}
		if !known {
			all = append(all, p)
		}
	}
	return all
}

// edge is how near an edge of the frame counts as at it, in thousandths of half the frame.
const edge = 0.5

// third is where the outer thirds of the frame begin.
const third = thousandths / 3.0

// where says in words where in the picture it shows: at an edge, in a corner, or where between them.
func (s *spread) where() string {
	if len(s.rings) == 0 {
		return ""
	}
	box := s.bounds()
	x := axisOf(box.Min.X, box.Max.X, "left", "right")
	y := axisOf(box.Min.Y, box.Max.Y, "lower", "upper")
	switch {
	case x.both && y.both:
		return "across the whole frame"
	case x.both && y.edge != "":
		return "at the " + bottomOrTop[y.edge] + " edge, right across"
	case y.both && x.edge != "":
		return "at the " + x.edge + " edge, from top to bottom"
	case x.both:
		return "right across the frame" + y.within(", in the lower part", ", in the upper part")
	case y.both:
		return "from top to bottom" + x.within(", on the left", ", on the right")
	case x.edge != "" && y.edge != "":
		return "in the " + y.edge + " " + x.edge + " corner"
	case x.edge != "":
		return "at the " + x.edge + " edge" + y.within(", low", ", high")
	case y.edge != "":
		return "at the " + bottomOrTop[y.edge] + " edge" + x.within(", to the left", ", to the right")
	}
	return inside(x, y)
}

// aside says whether it reaches out of a picture past the left or the right edge, and not only past the top or the bottom one.
func (s *spread) aside() bool {
	box := s.bounds()
	x := axisOf(box.Min.X, box.Max.X, "left", "right")
	return x.edge != ""
}

// bounds is the box that holds it.
func (s *spread) bounds() r2.Box {
	box := plane.Bounds(nil)
	for _, ring := range s.rings {
		for _, p := range ring {
			box = plane.Include(box, p)
		}
	}
	return box
}

// bottomOrTop are the words for the lower and the upper edge.
var bottomOrTop = map[string]string{"lower": "bottom", "upper": "top"}

// inside says where something shows that reaches no edge.
func inside(x, y along) string {
	switch across, up := x.within("left", "right"), y.within("lower", "upper"); {
	case across == "" && up == "":
		return "in the middle"
	case across == "":
		return "in the " + up + " middle"
	case up == "":
		return "on the " + across
	default:
		return "in the " + up + " " + across
	}
}

// PlaceOf says where a point of a picture lies: -1 is its left or lower edge, 1 the right or the upper one.
func PlaceOf(x, y float64) string {
	return inside(along{middle: x * thousandths}, along{middle: y * thousandths})
}

// along is where something lies across the frame, or up it.
type along struct {
	edge   string  // that it reaches; "" none
	both   bool    // it reaches both
	middle float64 // in thousandths of half the frame
}

func axisOf(low, high float64, first, last string) along {
	a := along{middle: (low + high) / 2}
	atFirst, atLast := low <= edge-thousandths, high >= thousandths-edge
	switch {
	case atFirst && atLast:
		a.both = true
	case atFirst:
		a.edge = first
	case atLast:
		a.edge = last
	}
	return a
}

// within is a word for the outer third that the middle lies in; "" between them.
func (a along) within(low, high string) string {
	switch {
	case a.middle < -third:
		return low
	case a.middle > third:
		return high
	}
	return ""
}
