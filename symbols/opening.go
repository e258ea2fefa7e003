package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// OpeningKind is a hole in a wall.
type OpeningKind string

// The kinds of opening.
const (
	Window OpeningKind = "window"
	Door   OpeningKind = "door"
	Gap    OpeningKind = "gap"
)

// Opening is a hole in a wall as it is drawn. Points are mm on paper; left and right are as seen
// from inside the room that it belongs to.
type Opening struct {
	Kind        OpeningKind
	Left, Right r2.Vec // its ends on the inside face
	Out         r2.Vec // from the inside face through the wall to the far one
	Panes       int    // across, of glass
	Glazed      bool   // a door of glass; a window is
	HingeLeft   bool
	SwingIn     bool
	Ajar        float64  // degrees that the leaf stands open
	Leaf        []r2.Vec // its outline where it stands; nil: of the least thickness
	Escape      bool     // it is a way out in an emergency
}

// DrawOpening draws an opening over its wall: the hole in paper white, the edges of the wall above or
// below it, the glass or the leaf and the ground that it swings over. The body it returns is the
// hole.
func DrawOpening(c ink.Canvas, k Look, o Opening) Drawn {
	b := brush{c, k}.on(ink.Walls)
	hole := []r2.Vec{o.Left, o.Right, r2.Add(o.Right, o.Out), r2.Add(o.Left, o.Out)}
	b.Polygon(ink.Solid(k.Paper), hole...)
	edge := b.pen(Hair)
	if o.Kind == Gap {
		edge = edge.Dashed(1.2, 0.8)
	}
	b.Segments(edge, [2]r2.Vec{hole[0], hole[1]}, [2]r2.Vec{hole[3], hole[2]})
	d := Drawn{Body: b.placedAll(hole)}
	switch {
	case o.Kind == Window && o.Ajar == 0:
		b.glass(o)
	case o.Kind != Gap:
		d.Rest = append(d.Rest, b.leaf(o))
	}
	b.Segments(b.pen(Line), [2]r2.Vec{hole[0], hole[3]}, [2]r2.Vec{hole[1], hole[2]})
	if o.Escape {
		d.Rest = append(d.Rest, b.escape(o))
	}
	return d
}

// placedAll returns points of the frame on paper.
func (b brush) placedAll(points []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = b.Frame().Place(p)
	}
	return out
}

// glass is two lines along the middle of the wall, with a mullion between panes.
func (b brush) glass(o Opening) {
	across := unit(o.Out)
	middle := func(share, off float64) r2.Vec {
		return r2.Add(between(o.Left, o.Right, share), r2.Add(r2.Scale(0.5, o.Out), r2.Scale(off, across)))
	}
	const half = 0.3 // of the space between the lines, mm
	for _, off := range []float64{-half, half} {
		b.Polyline(b.pen(Fine), middle(0, off), middle(1, off))
	}
	along := r2.Scale(0.4, unit(r2.Sub(o.Right, o.Left)))
	for i := 1; i < o.Panes; i++ {
		at := middle(float64(i)/float64(o.Panes), 0)
		up := r2.Scale(0.75, across)
		b.Polygon(b.solid(), r2.Sub(r2.Sub(at, along), up), r2.Sub(r2.Add(at, along), up), r2.Add(r2.Add(at, along), up), r2.Add(r2.Sub(at, along), up))
	}
}

// leaf is a door's or a casement's leaf where it stands, and the quarter circle that it may swing
// over, which it returns.
func (b brush) leaf(o Opening) []r2.Vec {
	hinge, latch, into := o.Left, o.Right, r2.Scale(-1, unit(o.Out))
	if !o.HingeLeft {
		hinge, latch = latch, hinge
	}
	if !o.SwingIn {
		hinge, latch = r2.Add(hinge, o.Out), r2.Add(latch, o.Out)
		into = r2.Scale(-1, into)
	}
	shut := r2.Sub(latch, hinge)
	width := r2.Norm(shut)
	from, to := ink.Bearing(hinge, latch), ink.Bearing(vec(0, 0), into)
	if turn := turned(from, to); turn > 0 {
		to = from + 90
	} else {
		to = from - 90
	}
	wide := r2.Add(hinge, r2.Scale(width, into))
	b.Arc(b.pen(Hair).Dashed(1.2, 0.8), hinge, width, from, to)
	b.Polyline(b.pen(Hair).Dashed(1.2, 0.8), hinge, wide)
	pen := b.solid()
	if o.Kind == Window || o.Glazed {
		pen = b.open(Fine)
	}
	if len(o.Leaf) > 0 {
		b.Polygon(pen, o.Leaf...)
	} else {
		at := from + (to-from)*min(o.Ajar, 180)/90
		b.slab(hinge, r2.Add(hinge, r2.Scale(width, ink.Direction(at))), pen)
	}
	middle := r2.Add(hinge, r2.Scale(width, ink.Direction((from+to)/2)))
	return b.placedAll([]r2.Vec{hinge, latch, middle, wide})
}

// slab is a leaf's thickness along a line, on both sides of it.
func (b brush) slab(from, to r2.Vec, pen ink.Pen) {
	d := unit(r2.Sub(to, from))
	up := r2.Scale(0.4, vec(-d.Y, d.X))
	b.Polygon(pen, r2.Sub(from, up), r2.Sub(to, up), r2.Add(to, up), r2.Add(from, up))
}

// escape is a pair of chevrons that point through the opening, from inside.
func (b brush) escape(o Opening) []r2.Vec {
	out := unit(o.Out)
	along := r2.Scale(1.6, unit(r2.Sub(o.Right, o.Left)))
	tip := r2.Sub(between(o.Left, o.Right, 0.5), r2.Scale(1.2, out))
	for range 2 {
		tail := r2.Sub(tip, r2.Scale(1.5, out))
		b.Polyline(b.pen(Heavy), r2.Sub(tail, along), tip, r2.Add(tail, along))
		tip = r2.Sub(tip, r2.Scale(1.7, out))
	}
	low := r2.Sub(tip, r2.Scale(0.4, out))
	high := r2.Add(tip, r2.Scale(3.6, out))
	return b.placedAll([]r2.Vec{r2.Sub(low, along), r2.Add(low, along), r2.Add(high, along), r2.Sub(high, along)})
}

// unit returns the direction of d; of no length, up.
func unit(d r2.Vec) r2.Vec {
	if length := r2.Norm(d); length > 0 {
		return r2.Scale(1/length, d)
	}
	return vec(0, 1)
}

// turned is the turn from one bearing to another, over -180 up to 180 degrees.
func turned(from, to float64) float64 {
	turn := to - from
	for turn > 180 {
		turn -= 360
	}
	for turn <= -180 {
		turn += 360
	}
	return turn
}
