// Package symbols draws the signs of a lighting plan: lights, what holds them, grip, people,
// cameras, openings, furniture and the marks of a map. It knows no scene: sizes are millimetres on
// paper, and all it needs of a thing is a few numbers.
//
// One rule makes the set. A light's body tells how light leaves it; its emitting edge is drawn at
// its true width and in the light's own colour; what carries it shows the ground that it takes.
// What a meter of the scene reads is a mark at its place; a side of a face is a stroke on the head.
// What stops light is black, what sends it back is white, what people touch is drawn in outline.
// Bodies are never smaller than they can be read at 1:100, and then only the body grows.
//
// All lines have one of five widths, each the next by about the square root of two (ISO 128-2).
package symbols

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// The widths of lines, mm: what is measured, what divides, what bounds, what carries, what cuts.
const (
	Hair  = 0.18
	Fine  = 0.25
	Line  = 0.35
	Bold  = 0.5
	Heavy = 0.7
)

// Look is what a theme gives to the symbols.
type Look struct {
	Ink   ink.Colour // lines and solid bodies
	Paper ink.Colour // what open bodies are filled with

	// Sample is the light of the catalogue's examples; the zero colour stands for a warm one.
	Sample ink.Colour
}

// Drawn tells what a symbol covers on paper, for whoever has to letter around it. Outlines are
// convex, in millimetres on paper.
type Drawn struct {
	Body []r2.Vec   // what must not be hidden
	Rest [][]r2.Vec // what had better not be: legs, arms, swings
}

// Box returns the upright box around the body.
func (d Drawn) Box() r2.Box { return boxOf(d.Body) }

// boxOf returns the box around points; of none it is zero.
func boxOf(points []r2.Vec) r2.Box {
	var e ink.Extent
	e.Add(points...)
	return e.Box
}

// brush is a canvas with the inks to hand.
type brush struct {
	ink.Canvas
	look Look
}

// at is the brush in the frame of a thing: y along the bearing, degrees clockwise.
func (b brush) at(p r2.Vec, bearing float64) brush {
	b.Canvas = b.Canvas.At(p, bearing, 1)
	return b
}

func (b brush) on(l ink.Layer) brush { b.Canvas = b.Canvas.On(l); return b }

// pen draws lines of a width.
func (b brush) pen(width float64) ink.Pen { return ink.Pen{Colour: b.look.Ink, Width: width} }

// bound draws the outline of a body, with round corners.
func (b brush) bound(width float64, fill ink.Colour) ink.Pen {
	pen := b.pen(width).Filled(fill)
	pen.Round = true
	return pen
}

// open bounds what is filled with paper, solid what is filled with ink.
func (b brush) open(width float64) ink.Pen { return b.bound(width, b.look.Paper) }
func (b brush) solid() ink.Pen             { return ink.Solid(b.look.Ink) }

// lit bounds what is filled with the colour of light, so that it shows on any ground.
func (b brush) lit(c ink.Colour) ink.Pen { return b.bound(Fine, c) }

// box draws a box about the y axis, w wide, from y0 to y1.
func (b brush) box(pen ink.Pen, w, y0, y1 float64) { b.Rect(pen, vec(-w/2, y0), vec(w/2, y1)) }

// outline returns a box of the frame as it lies on paper.
func (b brush) outline(x0, y0, x1, y1 float64) []r2.Vec {
	out := ink.Corners(vec(x0, y0), vec(x1, y1))
	for i, p := range out {
		out[i] = b.Frame().Place(p)
	}
	return out
}

func vec(x, y float64) r2.Vec { return r2.Vec{X: x, Y: y} }

// between returns the point at a share of the way from a to b.
func between(a, b r2.Vec, share float64) r2.Vec { return r2.Add(a, r2.Scale(share, r2.Sub(b, a))) }
