package symbols

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// GripKind is a thing that shapes light.
type GripKind string

// The kinds of grip.
const (
	Flag   GripKind = "flag"   // stops light
	Card   GripKind = "card"   // sends it back, softly
	Frame  GripKind = "frame"  // lets it through a cloth
	Net    GripKind = "net"    // lets a part of it through
	Silver GripKind = "silver" // sends it back, as a mirror does
)

// GripKinds lists them in the order of a legend.
func GripKinds() []GripKind { return []GripKind{Flag, Card, Frame, Net, Silver} }

// Grip is a flat thing as it is drawn. Lengths are mm on paper.
type Grip struct {
	Kind    GripKind
	At      r2.Vec  // its centre
	Bearing float64 // of its face in plan, degrees clockwise from up the paper
	Tilt    float64 // of the face's normal, degrees above the horizontal
	Size    r2.Vec  // true width and height
	Black   bool    // a card's dark side is out
	Round   bool    // it is a disc: a dot
	Mount   Mount
}

// DrawGrip draws a flag, card, frame, net or silver at its true width, seen from above: upright it is
// an edge, tilted it covers ground.
func DrawGrip(c ink.Canvas, k Look, g Grip) Drawn {
	b := brush{c, k}.on(ink.Symbols)
	rest := b.mount(g.Mount, g.At, g.Bearing)
	b = b.at(g.At, g.Bearing)
	if g.Mount.Hold == InHand {
		rest = append(rest, b.hand(-1))
	}
	w := max(g.Size.X, 2)
	d := g.Size.Y * math.Abs(math.Sin(g.Tilt*math.Pi/180))
	if d < 1.6 {
		d = 0
	}
	if g.Round && d > 0 {
		b.disc(w, d, g.Kind == Net)
		return Drawn{Body: b.outline(-w/2-0.3, -d/2-0.3, w/2+0.3, d/2+0.3), Rest: rest}
	}
	switch g.Kind {
	case Card:
		b.card(w, d, g.Black)
	case Frame:
		b.frame(w, d)
	case Net:
		b.net(w, d)
	case Silver:
		b.silver(w, d)
	default:
		b.flag(w, d)
	}
	half := max(d/2+1.7, 1.8)
	return Drawn{Body: b.outline(-w/2-0.3, -half, w/2+0.3, half), Rest: rest}
}

// ground is what a tilted thing covers, in a light dashed line without a ground of its own: it hangs
// over the floor, and must not look like furniture that stands there.
func (b brush) ground(w, d float64) {
	if d > 0 {
		b.box(b.pen(Hair).Dashed(1.2, 0.8), w, -d/2, d/2)
	}
}

// disc is a round flag or net that is tilted: an ellipse. The half of its edge that a flag has as a bar is heavy.
func (b brush) disc(w, d float64, net bool) {
	const sides = 32
	var ring []r2.Vec
	for i := range sides {
		turn := 2 * math.Pi * float64(i) / sides
		ring = append(ring, vec(w/2*math.Cos(turn), d/2*math.Sin(turn)))
	}
	if net {
		b.Polygon(ink.Solid(b.look.Paper), ring...)
		for _, turn := range []float64{45, 135} {
			b.Hatch(b.pen(Hair), 0.75, b.Frame().Bearing+turn, ring)
		}
		b.Polygon(b.pen(Fine), ring...)
		return
	}
	b.Polygon(b.pen(Hair).Dashed(1.2, 0.8), ring...)
	b.Polyline(b.pen(Bold), ring[:sides/2+1]...)
}

// flag is a black cloth between the tubes of its frame.
func (b brush) flag(w, d float64) {
	const thick, tube = 0.9, 2.2
	b.ground(w, d)
	edge := d / 2
	b.box(b.solid(), w, edge-thick/2, edge+thick/2)
	for _, side := range []float64{-1, 1} {
		b.Rect(b.solid(), vec(side*w/2, edge-tube/2), vec(side*(w/2-thick), edge+tube/2))
	}
}

// card is a board with its ends turned to what it sends light to, white on a dark spine; one whose black
// side is out sends none, and is black.
func (b brush) card(w, d float64, black bool) {
	const thick, turned, spine = 1.2, 1.1, 0.4
	b.ground(w, d)
	back := d/2 - thick/2
	pen := b.open(Line)
	if black {
		pen = b.bound(Line, b.look.Ink)
	}
	in := w/2 - min(thick, w/4)
	b.Polygon(pen, vec(-w/2, back), vec(w/2, back), vec(w/2, back+thick+turned), vec(in, back+thick),
		vec(-in, back+thick), vec(-w/2, back+thick+turned))
	b.box(b.solid(), w, back, back+spine)
	b.box(b.solid(), min(1.4, w/2), back-0.7, back)
}

// frame is two tubes with a cloth between them.
func (b brush) frame(w, d float64) {
	if d > 0 {
		b.ground(w, d)
		b.Segments(b.pen(Hair), [2]r2.Vec{vec(-w/2, -d/2), vec(w/2, d/2)}, [2]r2.Vec{vec(-w/2, d/2), vec(w/2, -d/2)})
	}
	b.Polyline(b.pen(Line).Dashed(1.6, 0.7), vec(-w/2+0.7, -d/2), vec(w/2-0.7, -d/2))
	if d > 0 {
		b.Polyline(b.pen(Line).Dashed(1.6, 0.7), vec(-w/2+0.7, d/2), vec(w/2-0.7, d/2))
	}
	for _, x := range []float64{-w/2 + 0.35, w/2 - 0.35} {
		b.Rect(b.open(Line), vec(x-0.55, -d/2-0.55), vec(x+0.55, -d/2+0.55))
		if d > 0 {
			b.Rect(b.open(Line), vec(x-0.55, d/2-0.55), vec(x+0.55, d/2+0.55))
		}
	}
}

// net is a mesh.
func (b brush) net(w, d float64) {
	h := max(d, 1.5)
	ring := ink.Corners(vec(-w/2, -h/2), vec(w/2, h/2))
	b.Polygon(ink.Solid(b.look.Paper), ring...)
	for _, turn := range []float64{45, 135} {
		b.Hatch(b.pen(Hair), 0.75, b.Frame().Bearing+turn, ring)
	}
	if d > 0 {
		b.Polygon(b.pen(Fine), ring...)
		return
	}
	b.Segments(b.pen(Fine), [2]r2.Vec{ring[0], ring[1]}, [2]r2.Vec{ring[3], ring[2]})
}

// silver is a mirror's facets on a spine.
func (b brush) silver(w, d float64) {
	const tooth, high = 1.3, 1.2
	n := max(int(math.Round(w/tooth)), 2)
	low := -max(d, high) / 2
	b.ground(w, d)
	ring := []r2.Vec{vec(-w/2, low)}
	for i := range n {
		x := -w/2 + w*(float64(i)+0.5)/float64(n)
		ring = append(ring, vec(x, low+high), vec(x+w/float64(2*n), low+0.3))
	}
	ring[len(ring)-1] = vec(w/2, low)
	b.Polygon(b.open(Fine), ring...)
	b.box(b.solid(), w, low-0.3, low+0.25)
}
