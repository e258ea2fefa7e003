package draw

import (
	"cmp"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/colour"
	"scrimshaw/render/font"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// The widths of lines, ISO 128-2, mm.
const (
	Hair      = 0.18
	Thin      = 0.25
	Medium    = 0.35
	Thick     = 0.5
	FrameLine = 0.7
)

// Pad is a canvas with the look and the typeface of the sheet. Points are mm on paper. Like a
// canvas it is passed by value.
type Pad struct {
	page   *ink.Page
	canvas ink.Canvas
	Look   *Theme
	White  [2]float64 // the chromaticity that colours of light are seen against, CIE x, y
	Face   *font.Family
	Ranks  Ranks   // of lettering on the plan
	Lists  float64 // mm, the height of lettering of lists; 0: the smallest
}

// lamp is the ink of light of a colour, as the camera sees it; beam that of the lines of its beam.
func (p Pad) lamp(c colour.RGB) ink.Colour { return p.Look.lamp(c, p.White) }

func (p Pad) beam(c colour.RGB) ink.Colour { return p.Look.beam(c, p.White) }

// band is the ink beside a line of light, glow that of a wedge of it.
func (p Pad) band(c colour.RGB) ink.Colour { return p.Look.band(c, p.White) }

func (p Pad) glow(c colour.RGB) ink.Colour { return p.Look.glow(c, p.White) }

// With is the pad drawing on a page.
func (p Pad) With(page *ink.Page) Pad {
	p.page, p.canvas = page, ink.NewCanvas(page, ink.Collar)
	return p
}

// On is the pad on another layer.
func (p Pad) On(l ink.Layer) Pad { p.canvas = p.canvas.On(l); return p }

// of is the pad drawing a thing: its first mark carries the sentence alt.
func (p Pad) of(object, alt string) Pad { p.canvas = p.canvas.Of(object, alt); return p }

// Line draws an open polyline.
func (p Pad) Line(width float64, c ink.Colour, points ...r2.Vec) {
	p.canvas.Polyline(ink.Pen{Colour: c, Width: width}, points...)
}

// dashed draws an open polyline in dashes, mm.
func (p Pad) dashed(width float64, c ink.Colour, dash []float64, points ...r2.Vec) {
	p.canvas.Polyline(ink.Pen{Colour: c, Width: width, Dash: dash}, points...)
}

// outline draws a closed polygon; fill may be nil, a width of 0 draws no line.
func (p Pad) outline(width float64, c ink.Colour, fill *ink.Colour, points ...r2.Vec) {
	p.canvas.Polygon(ink.Pen{Colour: c, Width: width, Fill: fill}, points...)
}

// Rect draws a box as outline does.
func (p Pad) Rect(b r2.Box, width float64, c ink.Colour, fill *ink.Colour) {
	p.canvas.Rect(ink.Pen{Colour: c, Width: width, Fill: fill}, b.Min, b.Max)
}

// linkTo makes a box of the page lead to another page of its document, by its name; "" leads nowhere.
func linkTo(p Pad, b r2.Box, to string) {
	if to != "" {
		p.page.Links = append(p.page.Links, ink.Link{Min: b.Min, Max: b.Max, To: to})
	}
}

// Text letters s with its baseline at at.
func (p Pad) Text(at r2.Vec, s string, st style, a ink.Align) { p.turned(at, s, st, a, 0, nil) }

// turned letters s at an angle, degrees counter-clockwise, with a rim where halo is not nil.
func (p Pad) turned(at r2.Vec, s string, st style, a ink.Align, angle float64, halo *ink.Colour) {
	p.canvas.Text(ink.Text{At: at, S: s, Size: st.em(), Angle: angle, Bold: st.bold, Align: a, Colour: st.colour, Halo: halo})
}

// Style is lettering of a height and a colour. Small, Quiet and Name are the ranks of the sheet: what is read first,
// what is second to it, and names.
func (p Pad) Style(cap float64, c ink.Colour) style { return style{face: p.Face, Cap: cap, colour: c} }

// plan is lettering of the plan, place that of names of places on it, reading that of what is read at a face.
func (p Pad) plan() style { return p.sturdy(p.Style(p.Ranks.Other, p.Look.Ink)) }

func (p Pad) place() style { return p.sturdy(p.Style(p.Ranks.Other, p.Look.Place)) }

func (p Pad) reading() style { return p.Style(p.Ranks.Face, p.Look.Ink).Strong() }

func (p Pad) Small() style { return p.Style(CapSmall, p.Look.Ink) }

func (p Pad) Quiet() style { return p.Style(CapSmall, p.Look.Quiet) }

// listed is lettering of lists, head of what stands over them.
func (p Pad) listed(c ink.Colour) style {
	st := p.Style(cmp.Or(p.Lists, CapSmall), c)
	if p.Lists > CapSmall {
		return p.sturdy(st)
	}
	return st
}

func (p Pad) head() style { return p.listed(p.Look.Ink).Strong() }

func (p Pad) Name() style { return p.sturdy(p.Style(capName, p.Look.Ink)) }

// sturdy is lettering whose strokes a copier keeps, where the look is one for a copier.
func (p Pad) sturdy(st style) style {
	st.bold = st.bold || p.Look.Plain
	return st
}

// symbols is what the theme gives to the symbols, furnishings what it gives to furniture.
func (p Pad) symbols() symbols.Look { return symbols.Look{Ink: p.Look.Ink, Paper: p.Look.Paper} }

func (p Pad) furnishings() symbols.Look { return symbols.Look{Ink: p.Look.Ink, Paper: p.Look.Solid} }
