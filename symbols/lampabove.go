package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// What points down or up is drawn as one sees it from above. Pointing down, its head lies before its
// light, which shows at the rim; pointing up, one looks into its light, which comes toward the reader: a
// dot in the middle, as arrows that come out of the paper have it, and rays.

// hardFace is a hard light from above, and what it covers.
func (l lamp) hardFace() (x0, y0, x1, y1 float64) {
	head, _ := l.head()
	r := max(head/2+edgeDepth, l.edge()/2)
	switch {
	case l.Off:
		l.Circle(l.open(Fine), vec(0, 0), r)
		return -r, -r, r, r
	case l.Tilt < 0:
		l.Circle(l.lit(l.Colour), vec(0, 0), r)
		l.Circle(l.solid(), vec(0, 0), r-edgeDepth)
		return -r, -r, r, r
	}
	l.Circle(l.solid(), vec(0, 0), r)
	l.Circle(l.lit(l.Colour), vec(0, 0), r-edgeDepth)
	return l.rises(r*math.Sqrt2/2, r*math.Sqrt2/2, r)
}

// roundFace is a soft light with a round face from above, and what it covers: down, its ribs run from
// the head to the rim.
func (l lamp) roundFace() (x0, y0, x1, y1 float64) {
	const ribs = 8
	r := max(l.edge(), minWidth+4*edgeDepth) / 2
	if l.Tilt > 0 {
		l.Circle(l.bound(Bold, l.Colour), vec(0, 0), r)
		return l.rises(r*math.Sqrt2/2, r*math.Sqrt2/2, r)
	}
	l.Circle(l.lit(l.Colour), vec(0, 0), r)
	l.Circle(l.open(Fine), vec(0, 0), r-edgeDepth)
	for i := range ribs {
		l.Polyline(l.pen(Hair), vec(0, 0), r2.Scale(r-edgeDepth, ink.Direction(360*float64(i)/ribs)))
	}
	l.Circle(l.dark(), vec(0, 0), minWidth/2)
	return -r, -r, r, r
}

// squareFace is a soft box or a panel from above, and what it covers: down, the edges of a box run from
// the head to its corners, and a panel shows the fins of its back and its yoke.
func (l lamp) squareFace() (x0, y0, x1, y1 float64) {
	w, h := max(l.edge(), minWidth+2*edgeDepth), max(l.Face.Y, minEdge, minWidth+2*edgeDepth)
	if l.Tilt > 0 {
		if l.Class == Panel {
			l.box(l.lit(l.Colour), w, -h/2, h/2)
			l.fins(Fine, w, h)
		} else {
			l.box(l.bound(Heavy, l.Colour), w, -h/2, h/2)
		}
		return l.rises(w/2, h/2, w/2)
	}
	l.box(l.lit(l.Colour), w, -h/2, h/2)
	l.box(l.open(Fine), w-2*edgeDepth, -h/2+edgeDepth, h/2-edgeDepth)
	if l.Class == Panel {
		l.fins(Fine, w-2*edgeDepth, h-2*edgeDepth)
		l.box(l.dark(), w-2*edgeDepth, -minWidth/4, minWidth/4)
		return -w / 2, -h / 2, w / 2, h / 2
	}
	l.Segments(l.pen(Hair), [2]r2.Vec{vec(-w/2, -h/2), vec(w/2, h/2)}, [2]r2.Vec{vec(-w/2, h/2), vec(w/2, -h/2)})
	l.box(l.dark(), minWidth, -minWidth/2, minWidth/2)
	return -w / 2, -h / 2, w / 2, h / 2
}

// fins are lines across a panel.
func (l lamp) fins(width, w, h float64) {
	const pitch = 1.25
	n := max(int(math.Round(w/pitch)), 2)
	for i := 1; i < n; i++ {
		x := -w/2 + w*float64(i)/float64(n)
		l.Polyline(l.pen(width), vec(x, -h/2), vec(x, h/2))
	}
}

// rises marks light that comes up: a dot in the middle and a ray from each corner. It returns what a
// light with these corners covers that reaches x far.
func (l lamp) rises(x, y, far float64) (x0, y0, x1, y1 float64) {
	if l.Off {
		return -far, -max(y, far*y/x), far, max(y, far*y/x)
	}
	const ray, clear, dot = 1.3, 0.5, 0.55
	l.Circle(ink.Solid(l.look.Paper), vec(0, 0), 2*dot)
	l.Circle(l.solid(), vec(0, 0), dot)
	k := math.Sqrt2 / 2
	for _, sx := range []float64{-1, 1} {
		for _, sy := range []float64{-1, 1} {
			at := func(off float64) r2.Vec { return vec(sx*(x+k*off), sy*(y+k*off)) }
			l.Polyline(l.pen(Line), at(clear), at(clear+ray))
		}
	}
	x, y = max(far, x+k*(clear+ray)), max(y+k*(clear+ray), far*y/x)
	return -x, -y, x, y
}
