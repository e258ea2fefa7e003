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
	Off     bool       // it is off: its body is open and struck through
	Round   bool       // its face is a disc: pointing down, a soft one covers round ground
	Naked   bool       // a practical without a shade
	Top     float64    // diameter of the upper opening of its shade; 0: not known
	Leaves  [][]r2.Vec // of barn doors, in plan: to the right of the middle of the face, and along the aim
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
	x0, y0, x1, y1 := drawn.draw()()
	x0, y0, x1, y1 = drawn.leaves(x0, y0, x1, y1)
	if l.Off {
		r := b.strike()
		x0, y0, x1, y1 = min(x0, -r), min(y0, -r), max(x1, r), max(y1, r)
	}
	if l.Mount.Hold == InHand {
		rest = append(rest, b.hand(y0))
	}
	return Drawn{Body: b.outline(x0, y0, x1, y1), Rest: rest}
}

// draw is the way that a light is drawn: as it stands, or by what one sees of it from above.
func (l lamp) draw() func() (x0, y0, x1, y1 float64) {
	switch {
	case !l.Upright():
		return l.body
	case l.Class == Boxed || l.Class == Panel:
		if l.Round {
			return l.roundFace
		}
		return l.squareFace
	}
	return l.hardFace
}

// leaves draws barn doors as they stand seen from above, and returns what the light covers with them.
func (l lamp) leaves(x0, y0, x1, y1 float64) (a0, b0, a1, b1 float64) {
	for _, leaf := range l.Leaves {
		l.Polyline(l.pen(Fine), append(leaf[:len(leaf):len(leaf)], leaf[0])...)
		for _, p := range leaf {
			x0, y0, x1, y1 = min(x0, p.X), min(y0, p.Y), max(x1, p.X), max(y1, p.Y)
		}
	}
	return x0, y0, x1, y1
}

// strike puts a stroke through the face of a light that is off, and returns how far that reaches.
func (b brush) strike() float64 {
	const r, clear = 1.9, 0.6
	k := clear * math.Sqrt2 / 2
	b.Polygon(ink.Solid(b.look.Paper), vec(-r-k, -r+k), vec(-r+k, -r-k), vec(r+k, r-k), vec(r-k, r+k))
	b.Polyline(b.pen(Heavy), vec(-r, -r), vec(r, r))
	return r + k
}

// Upright says whether a light points so steeply down or up that it is drawn as it looks from above; one
// that shines all round looks the same at any tilt.
func (l Lamp) Upright() bool {
	allRound := l.Class == Lantern || l.Class == Practical || l.Class == Linear
	return math.Abs(l.Tilt) >= Overhead && !allRound
}

// edge is the drawn width of the emitting edge: its true one.
func (l Lamp) edge() float64 { return max(l.Face.X, minEdge) }

// head is the drawn size of the head.
func (l Lamp) head() (w, d float64) { return max(l.Body.X, minWidth), max(l.Body.Y, minDepth) }

// lamp is a light with the brush that draws it, in its own frame.
type lamp struct {
	brush
	Lamp
}

// dark is the pen of a body: solid, and open where it is off.
func (l lamp) dark() ink.Pen {
	if l.Off {
		return l.open(Fine)
	}
	return l.solid()
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
	l.Draw(l.dark(), ink.Path{}.MoveTo(vec(-rim, 0)).
		CurveTo(vec(-0.95*rim, -0.7*deep), vec(-0.5*rim, -deep), vec(0, -deep)).
		CurveTo(vec(0.5*rim, -deep), vec(0.95*rim, -0.7*deep), vec(rim, 0)).Close())
	l.box(l.dark(), min(1.4, w), -d, -0.9*deep)
	if l.Off {
		return -rim, -d, rim, 0
	}
	swell := edgeDepth + e/8
	l.Draw(l.lit(l.Colour), ink.Path{}.MoveTo(vec(-e/2, 0)).
		CurveTo(vec(-e/2, 1.2*swell), vec(e/2, 1.2*swell), vec(e/2, 0)).Close())
	return -rim, -d, rim, swell
}

// lensed is a barrel with a plano-convex lens, as wide as it is, in a collar.
func (l lamp) lensed() (x0, y0, x1, y1 float64) {
	const ring = 1.1
	w, d := l.head()
	e := l.edge()
	collar := max(w, e+0.6)
	l.box(l.dark(), w, -d, -ring)
	l.box(l.open(Line), collar, -ring, 0)
	swell := edgeDepth + e/6
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
	l.box(l.dark(), w, -d, -0.62*d)
	l.box(l.open(Line), tube, -0.62*d, 0)
	gate := -0.5 * d
	l.Segments(l.pen(Fine), [2]r2.Vec{vec(-w/2-0.5, gate), vec(w/2+0.5, gate)}, [2]r2.Vec{vec(-w/2-0.5, gate+0.55), vec(w/2+0.5, gate+0.55)})
	l.box(l.lit(l.Colour), e, 0, edgeDepth)
	return -max(w/2+0.5, tube/2), -d, max(w/2+0.5, tube/2), edgeDepth
}

// BoxDepth is the least depth of a soft box by its width.
const BoxDepth = 0.32

// boxed is a box that opens from the head to its soft face.
func (l lamp) boxed() (x0, y0, x1, y1 float64) {
	e := l.edge()
	_, depth := l.head()
	depth = max(depth, BoxDepth*e)
	back := min(max(0.3*e, 1.8), 6)
	wide := max(e, back+0.6)
	l.box(l.dark(), min(back, minWidth), -depth-1.7, -depth)
	l.Polygon(l.open(Line), vec(-wide/2, 0), vec(-back/2, -depth), vec(back/2, -depth), vec(wide/2, 0))
	if !l.Off {
		l.box(l.lit(l.Colour), e, -edgeDepth/2, edgeDepth/2)
	}
	return -wide / 2, -depth - 1.7, wide / 2, edgeDepth / 2
}

// linear is a tube with its caps, in a clip.
func (l lamp) linear() (x0, y0, x1, y1 float64) {
	const r, cap, tall = 0.62, 1.2, 0.95
	w := max(l.Face.X, 3)
	l.box(l.dark(), 1.3, -r-1.1, 0)
	l.Draw(l.lit(l.Colour), ink.Capsule(vec(-w/2+r, 0), vec(w/2-r, 0), r))
	for _, side := range []float64{-1, 1} {
		l.Rect(l.dark(), vec(side*(w/2+0.1), -tall), vec(side*(w/2-cap), tall))
	}
	return -w / 2, -r - 1.1, w / 2, tall
}

// panel is a plate of emitters in a row, whose face is the emitting one.
func (l lamp) panel() (x0, y0, x1, y1 float64) {
	e := max(l.Face.X, 1.6)
	const plate, deep = 0.7, 1.25
	l.box(l.dark(), min(1.6, e), -deep-plate-1.1, -deep-plate)
	l.box(l.lit(l.Colour), e, -deep, 0)
	if !l.Off {
		cells := max(int(math.Round(e/1.25)), 2)
		for i := 1; i < cells; i++ {
			x := -e/2 + e*float64(i)/float64(cells)
			l.Polyline(l.pen(Hair), vec(x, -deep), vec(x, 0))
		}
	}
	l.box(l.dark(), e+0.5, -deep-plate, -deep)
	return -e/2 - 0.25, -deep - plate - 1.1, e/2 + 0.25, 0
}

// lantern is a sphere with its ribs; light leaves it all round.
func (l lamp) lantern() (x0, y0, x1, y1 float64) {
	r := max(l.Face.X/2, 1.6)
	l.Circle(l.open(Line), vec(0, 0), r)
	if l.Off {
		return -r, -r, r, r
	}
	l.Circle(l.lit(l.Colour), vec(0, 0), r)
	for _, share := range []float64{0, 0.34, 0.72} {
		for _, side := range []float64{-1, 1} {
			l.Draw(l.pen(Hair), rib(r, side*share*r))
		}
	}
	return -r, -r, r, r
}

// rib is half an ellipse from pole to pole of a sphere, that bulges to x.
func rib(r, x float64) ink.Path {
	const k = 4.0 / 3 // of a cubic from pole to pole whose middle is at x
	return ink.Path{}.MoveTo(vec(0, -r)).CurveTo(vec(k*x, -r*0.55), vec(k*x, r*0.55), vec(0, r))
}

// practical is the lamp of circuit diagrams, a ring with a cross (IEC 60617), lit, under the true
// width of its shade, if it has one.
func (l lamp) practical() (x0, y0, x1, y1 float64) {
	const least, most, clear = 1.4, 2.2, 0.8
	r := min(max(0.31*l.Face.X, least), most)
	shade := r
	if !l.Naked {
		shade = max(l.Face.X/2, r+clear)
		l.Circle(l.open(Line), vec(0, 0), shade)
		if upper := l.Top / 2; upper > r+clear/2 && upper < shade-clear/2 {
			l.Circle(l.pen(Hair), vec(0, 0), upper)
		}
	}
	l.Circle(l.pen(Line).Filled(l.Colour), vec(0, 0), r)
	if !l.Off {
		k := r * math.Sqrt2 / 2
		l.Segments(l.pen(Line), [2]r2.Vec{vec(-k, -k), vec(k, k)}, [2]r2.Vec{vec(-k, k), vec(k, -k)})
	}
	return -shade, -shade, shade, shade
}
