package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Class says how light leaves a body.
type Class string

// The classes of body.
const (
	Bare      Class = "bare"      // an open-faced or bare source: a bowl
	Lensed    Class = "lensed"    // a barrel with a convex lens
	Projected Class = "projected" // a long tube with its gate
	Boxed     Class = "boxed"     // a soft face on a box that opens toward it
	Linear    Class = "linear"    // a tube
	Panel     Class = "panel"     // a flat array of emitters
	Lantern   Class = "lantern"   // a soft sphere
	Practical Class = "practical" // a lamp that belongs to the set
)

// Classes lists them in the order of a legend.
func Classes() []Class {
	return []Class{Bare, Lensed, Projected, Boxed, Linear, Panel, Lantern, Practical}
}

// Lamp is a light as it is drawn. Lengths are mm on paper.
type Lamp struct {
	Class   Class
	At      r2.Vec     // the middle of the emitting face
	Bearing float64    // of the aim in plan, degrees clockwise from up the paper
	Tilt    float64    // of the aim, degrees above the horizontal
	Face    r2.Vec     // true width and height of the emitting face; a disc or a sphere: both the diameter
	Body    r2.Vec     // true width and depth of the head behind it; drawn no smaller than can be read
	Colour  ink.Colour // of its light
	Off     bool       // it is off: the edge stays open
	Mount   Mount
}

// The least sizes at which a body can be read.
const (
	minWidth  = 2.4 // of a head
	minDepth  = 2.6
	minEdge   = 0.8 // of an emitting edge
	edgeDepth = 0.9 // its thickness as drawn
)

// Overhead is the tilt, degrees, from which a light is drawn as it looks from above.
const Overhead = 75

// DrawLight draws a light and what carries it.
func DrawLight(c ink.Canvas, k Look, l Lamp) Drawn {
	if l.Off {
		l.Colour = k.Paper
	}
	if l.Class == Practical && l.Mount.Hold == Floor {
		l.Mount.Hold = "" // it stands on its own foot
	}
	b := brush{c, k}.on(ink.Symbols)
	rest := b.mount(l.Mount, l.At, l.Bearing)
	b = b.at(l.At, l.Bearing)
	drawn := lamp{b, l}
	draw := drawn.body
	if math.Abs(l.Tilt) >= Overhead && !l.round() {
		draw = drawn.fromAbove
	}
	x0, y0, x1, y1 := draw()
	if l.Off {
		y1 = max(y1, b.strike())
	}
	if l.Mount.Hold == InHand {
		rest = append(rest, b.hand(y0))
	}
	return Drawn{Body: b.outline(x0, y0, x1, y1), Rest: rest}
}

// strike crosses out the emitting edge of a light that is off, and returns how far that reaches.
func (b brush) strike() float64 {
	const r = 1.1
	cross := ink.Path{}.MoveTo(vec(-r, -r)).LineTo(vec(r, r)).MoveTo(vec(-r, r)).LineTo(vec(r, -r))
	b.Draw(ink.Pen{Colour: b.look.Paper, Width: Heavy}, cross)
	b.Draw(b.pen(Line), cross)
	return r
}

// round says whether a light looks the same at any tilt.
func (l Lamp) round() bool { return l.Class == Lantern || l.Class == Practical || l.Class == Linear }

// edge is the drawn width of the emitting edge: its true one.
func (l Lamp) edge() float64 { return max(l.Face.X, minEdge) }

// head is the drawn size of the head.
func (l Lamp) head() (w, d float64) { return max(l.Body.X, minWidth), max(l.Body.Y, minDepth) }

// lamp is a light with the brush that draws it, in its own frame.
type lamp struct {
	brush
	Lamp
}

// body draws a light that points sideways, and returns what it covers: the face at y = 0, the aim
// up the y axis.
func (l lamp) body() (x0, y0, x1, y1 float64) {
	switch l.Class {
	case Lensed:
		return l.lensed()
	case Projected:
		return l.projected()
	case Boxed:
		return l.boxed()
	case Linear:
		return l.linear()
	case Panel:
		return l.panel()
	case Lantern:
		return l.lantern()
	case Practical:
		return l.practical()
	}
	return l.bare()
}

// bare is a bowl that opens forward; its light swells out of it.
func (l lamp) bare() (x0, y0, x1, y1 float64) {
	w, d := l.head()
	e := l.edge()
	rim, deep := max(1.35*w, e)/2, 0.72*d
	l.Draw(l.solid(), ink.Path{}.MoveTo(vec(-rim, 0)).
		CurveTo(vec(-0.95*rim, -0.7*deep), vec(-0.5*rim, -deep), vec(0, -deep)).
		CurveTo(vec(0.5*rim, -deep), vec(0.95*rim, -0.7*deep), vec(rim, 0)).Close())
	l.box(l.solid(), min(1.4, w), -d, -0.9*deep)
	swell := edgeDepth + e/8
	l.Draw(l.lit(l.Colour), ink.Path{}.MoveTo(vec(-e/2, 0)).
		CurveTo(vec(-e/2, 1.2*swell), vec(e/2, 1.2*swell), vec(e/2, 0)).Close())
	return -rim, -d, rim, swell
}

// lensed is a barrel with a plano-convex lens in a collar.
func (l lamp) lensed() (x0, y0, x1, y1 float64) {
	w, d := l.head()
	e := l.edge()
	collar := max(w, e)
	l.box(l.solid(), w, -d, -0.9)
	l.box(l.open(Line), collar, -1, 0)
	swell := edgeDepth + e/10
	l.Draw(l.lit(l.Colour), ink.Path{}.MoveTo(vec(-e/2, 0)).
		CurveTo(vec(-e/3, 1.35*swell), vec(e/3, 1.35*swell), vec(e/2, 0)).Close())
	return -collar / 2, -d, collar / 2, swell
}

// projected is a lamp house, a gate and a tube.
func (l lamp) projected() (x0, y0, x1, y1 float64) {
	w, d := l.head()
	e := l.edge()
	d = max(d, 1.9*w)
	tube := max(0.62*w, e)
	l.box(l.solid(), w, -d, -0.62*d)
	l.box(l.open(Line), tube, -0.62*d, 0)
	gate := -0.5 * d
	l.Segments(l.pen(Fine), [2]r2.Vec{vec(-w/2-0.5, gate), vec(w/2+0.5, gate)}, [2]r2.Vec{vec(-w/2-0.5, gate+0.55), vec(w/2+0.5, gate+0.55)})
	l.box(l.lit(l.Colour), e, 0, edgeDepth)
	return -max(w/2+0.5, tube/2), -d, max(w/2+0.5, tube/2), edgeDepth
}

// boxed is a box that opens from the head to its soft face.
func (l lamp) boxed() (x0, y0, x1, y1 float64) {
	e := l.edge()
	_, depth := l.head()
	depth = max(depth, 0.32*e)
	back := min(max(0.3*e, 1.8), 6)
	wide := max(e, back+0.6)
	l.box(l.solid(), min(back, minWidth), -depth-1.7, -depth)
	l.Polygon(l.open(Line), vec(-wide/2, 0), vec(-back/2, -depth), vec(back/2, -depth), vec(wide/2, 0))
	l.box(l.lit(l.Colour), e, -edgeDepth/2, edgeDepth/2)
	return -wide / 2, -depth - 1.7, wide / 2, edgeDepth / 2
}

// linear is a tube with its caps, in a clip.
func (l lamp) linear() (x0, y0, x1, y1 float64) {
	w, r := max(l.Face.X, 3), 0.62
	l.box(l.solid(), 1.3, -r-1.1, 0)
	l.Draw(l.lit(l.Colour), ink.Capsule(vec(-w/2+r, 0), vec(w/2-r, 0), r))
	for _, side := range []float64{-1, 1} {
		l.Rect(l.solid(), vec(side*(w/2+0.1), -r-0.12), vec(side*(w/2-0.9), r+0.12))
	}
	return -w / 2, -r - 1.1, w / 2, r + 0.12
}

// panel is a plate of emitters in a row.
func (l lamp) panel() (x0, y0, x1, y1 float64) {
	e := max(l.Face.X, 1.6)
	const plate, deep = 0.7, 1.25
	l.box(l.solid(), min(1.6, e), -plate-1.1, -plate)
	l.box(l.lit(l.Colour), e, 0, deep)
	cells := max(int(math.Round(e/1.25)), 2)
	for i := 1; i < cells; i++ {
		x := -e/2 + e*float64(i)/float64(cells)
		l.Polyline(l.pen(Hair), vec(x, 0), vec(x, deep))
	}
	l.box(l.solid(), e+0.5, -plate, 0)
	return -e/2 - 0.25, -plate - 1.1, e/2 + 0.25, deep
}

// lantern is a sphere with its ribs; light leaves it all round.
func (l lamp) lantern() (x0, y0, x1, y1 float64) {
	r := max(l.Face.X/2, 1.6)
	l.Circle(l.open(Line), vec(0, 0), r)
	l.Draw(l.lit(l.Colour), ink.Ring(vec(0, 0), r, r-min(edgeDepth, r/2)))
	for _, share := range []float64{0.34, 0.72} {
		k := (r - min(edgeDepth, r/2)) * share
		for _, side := range []float64{-1, 1} {
			l.Draw(l.pen(Hair), rib(r-min(edgeDepth, r/2), side*k))
		}
	}
	l.Circle(l.solid(), vec(0, 0), min(0.55, r/3))
	return -r, -r, r, r
}

// rib is half an ellipse from pole to pole of a sphere, that bulges to x.
func rib(r, x float64) ink.Path {
	const k = 4.0 / 3 // of a cubic from pole to pole whose middle is at x
	return ink.Path{}.MoveTo(vec(0, -r)).CurveTo(vec(k*x, -r*0.55), vec(k*x, r*0.55), vec(0, r))
}

// practical is the lamp of circuit diagrams, a ring with a cross (IEC 60617), lit, under the true
// width of its shade.
func (l lamp) practical() (x0, y0, x1, y1 float64) {
	r := max(min(l.Face.X/2, 2.2), 1.5)
	shade := max(l.Face.X/2, r)
	if shade > r+0.4 {
		l.Circle(l.open(Fine), vec(0, 0), shade)
	}
	l.Circle(l.pen(Line).Filled(l.Colour), vec(0, 0), r)
	k := r * math.Sqrt2 / 2
	l.Segments(l.pen(Line), [2]r2.Vec{vec(-k, -k), vec(k, k)}, [2]r2.Vec{vec(-k, k), vec(k, -k)})
	return -shade, -shade, shade, shade
}

// fromAbove draws a light that points down or up: its face as the ground that it covers, the head
// in the middle of it.
func (l lamp) fromAbove() (x0, y0, x1, y1 float64) {
	w, h := max(l.Face.X, minEdge), max(l.Face.Y, minEdge)
	if l.Class == Boxed || l.Class == Panel {
		w, h = max(w, minWidth+2*edgeDepth), max(h, minWidth+2*edgeDepth)
		l.box(l.lit(l.Colour), w, -h/2, h/2)
		l.box(l.open(Fine), w-2*edgeDepth, -h/2+edgeDepth, h/2-edgeDepth)
		l.Segments(l.pen(Hair), [2]r2.Vec{vec(-w/2, -h/2), vec(w/2, h/2)}, [2]r2.Vec{vec(-w/2, h/2), vec(w/2, -h/2)})
		l.box(l.solid(), min(minWidth, w), -min(minWidth, h)/2, min(minWidth, h)/2)
		return -w / 2, -h / 2, w / 2, h / 2
	}
	head, _ := l.head()
	r := max(head/2+edgeDepth, w/2)
	l.Circle(l.lit(l.Colour), vec(0, 0), r)
	l.Circle(l.solid(), vec(0, 0), r-edgeDepth)
	l.Circle(ink.Solid(l.look.Paper), vec(0, 0), min(0.45, r/4))
	return -r, -r, r, r
}
