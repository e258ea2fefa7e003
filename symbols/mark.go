package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// MeterKind is a way of reading light.
type MeterKind string

// The kinds of reading.
const (
	Flat MeterKind = "flat" // on a plane
	Dome MeterKind = "dome" // the incident dome
	Spot MeterKind = "spot" // the luminance that the camera sees
)

// MeterKinds lists them in the order of a legend.
func MeterKinds() []MeterKind { return []MeterKind{Flat, Dome, Spot} }

// MarkSize is the width and height of a reading's mark, mm.
const MarkSize = 1.8

// DrawMeter draws the mark of a reading, as a map marks a spot height: a triangle for a plane, half a
// disc for the dome, a ring for what is looked at.
func DrawMeter(c ink.Canvas, k Look, kind MeterKind, at r2.Vec) Drawn {
	b := brush{c, k}.on(ink.Readings).at(at, 0)
	const r = MarkSize / 2
	switch kind {
	case Dome:
		b.Draw(b.solid(), ink.Sector(vec(0, -0.45*r), r, -90, 90))
		b.Polyline(b.pen(Hair), vec(-r-0.35, -0.45*r), vec(r+0.35, -0.45*r))
	case Spot:
		b.Circle(b.open(Line), vec(0, 0), r-Line/2)
		b.Circle(b.solid(), vec(0, 0), 0.3)
	default:
		b.Polygon(b.solid(), vec(-r, -0.8*r), vec(r, -0.8*r), vec(0, 0.95*r))
	}
	return Drawn{Body: b.outline(-r, -r, r, r)}
}

// DrawFaceSide marks one side of a face that is measured, which no meter stands at: a stroke out from the
// edge of the head about a point, the way that side faces. Scale is that of the person.
func DrawFaceSide(c ink.Canvas, k Look, head r2.Vec, bearing, scale float64) Drawn {
	b := brush{c, k}.on(ink.Readings).at(head, bearing)
	r := headRadius(max(scale, minScale))
	from, to := r+Line, r+Line+sideLong
	b.Polyline(b.pen(Bold), vec(0, from), vec(0, to))
	return Drawn{Body: b.outline(-Bold/2, from, Bold/2, to)}
}

// sides is a head with both sides of its face measured.
func sides(c ink.Canvas, k Look, s float64) Drawn {
	f := figure{brush{c, k}.on(ink.People), max(s, minScale)}
	f.head(true)
	DrawFaceSide(c, k, vec(0, 0), -45, s)
	DrawFaceSide(c, k, vec(0, 0), 45, s)
	far := headRadius(f.s) + Line + sideLong
	return Drawn{Body: f.outline(-far, -far, far, far)}
}

// sideLong is the length of the stroke at a side of a face, mm.
const sideLong = 1.9

// DrawThrow draws a dimension line from a lamp to what it is aimed at, with a head at each end, broken
// from one share of its length to another for its lettering; equal shares leave it whole.
func DrawThrow(c ink.Canvas, k Look, from, to r2.Vec, gapFrom, gapTo float64) {
	b := brush{c, k}.on(ink.Throws)
	const head = 1.9 // mm
	if gapTo <= gapFrom {
		b.DoubleArrow(b.pen(Hair), head, from, to)
		return
	}
	b.Arrow(b.pen(Hair), head, between(from, to, gapFrom), from)
	b.Arrow(b.pen(Hair), head, between(from, to, gapTo), to)
}

// DrawNorth draws a needle of a length, mm, about at, that points north: its right half dark.
func DrawNorth(c ink.Canvas, k Look, at r2.Vec, bearing, length float64) Drawn {
	b := brush{c, k}.on(ink.Collar).at(at, bearing)
	h, w := length/2, length/5.5
	tail := -0.72 * h
	b.Polygon(b.open(Fine), vec(0, h), vec(0, tail), vec(-w, -h))
	b.Polygon(b.pen(Fine).Filled(b.look.Ink), vec(0, h), vec(w, -h), vec(0, tail))
	return Drawn{Body: b.outline(-w, -h, w, h)}
}

// DrawScaleBar draws a bar of n blocks, light and dark in turn, each step mm long, from its lower left
// corner on.
func DrawScaleBar(c ink.Canvas, k Look, at r2.Vec, step float64, n int) Drawn {
	b := brush{c, k}.on(ink.Collar).at(at, 0)
	const h = 1.6
	length := step * float64(n)
	b.Rect(b.open(Fine), vec(0, 0), vec(length, h))
	for i := 0; i < n; i += 2 {
		b.Rect(b.solid(), vec(step*float64(i), 0), vec(step*float64(i+1), h))
	}
	return Drawn{Body: b.outline(0, 0, length, h)}
}
