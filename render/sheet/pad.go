package sheet

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/colour"
	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// The widths of lines, ISO 128-2, mm.
const (
	hair   = 0.18
	thin   = 0.25
	medium = 0.35
	thick  = 0.5
	frame  = 0.7
)

// pad is a canvas with the look and the typeface of the sheet. Points are mm on paper. Like a
// canvas it is passed by value.
type pad struct {
	page   *ink.Page
	canvas ink.Canvas
	look   *Theme
	white  [2]float64 // the chromaticity that colours of light are seen against, CIE x, y
	face   *font.Family
}

// lamp is the ink of light of a colour, as the camera sees it; beam that of the lines of its beam.
func (p pad) lamp(c colour.RGB) ink.Colour { return p.look.lamp(c, p.white) }
func (p pad) beam(c colour.RGB) ink.Colour { return p.look.beam(c, p.white) }

// with is the pad drawing on a page.
func (p pad) with(page *ink.Page) pad {
	p.page, p.canvas = page, ink.NewCanvas(page, ink.Collar)
	return p
}

// on is the pad on another layer.
func (p pad) on(l ink.Layer) pad { p.canvas = p.canvas.On(l); return p }

// of is the pad drawing a thing: its first mark carries the sentence alt.
func (p pad) of(object, alt string) pad { p.canvas = p.canvas.Of(object, alt); return p }

// line draws an open polyline.
func (p pad) line(width float64, c ink.Colour, points ...r2.Vec) {
	p.canvas.Polyline(ink.Pen{Colour: c, Width: width}, points...)
}

// dashed draws an open polyline in dashes, mm.
func (p pad) dashed(width float64, c ink.Colour, dash []float64, points ...r2.Vec) {
	p.canvas.Polyline(ink.Pen{Colour: c, Width: width, Dash: dash}, points...)
}

// outline draws a closed polygon; fill may be nil, a width of 0 draws no line.
func (p pad) outline(width float64, c ink.Colour, fill *ink.Colour, points ...r2.Vec) {
	p.canvas.Polygon(ink.Pen{Colour: c, Width: width, Fill: fill}, points...)
}

// rect draws a box as outline does.
func (p pad) rect(b r2.Box, width float64, c ink.Colour, fill *ink.Colour) {
	p.canvas.Rect(ink.Pen{Colour: c, Width: width, Fill: fill}, b.Min, b.Max)
}

// text letters s with its baseline at at.
func (p pad) text(at r2.Vec, s string, st style, a ink.Align) { p.turned(at, s, st, a, 0, nil) }

// turned letters s at an angle, degrees counter-clockwise, with a rim where halo is not nil.
func (p pad) turned(at r2.Vec, s string, st style, a ink.Align, angle float64, halo *ink.Colour) {
	p.canvas.Text(ink.Text{At: at, S: s, Size: st.em(), Angle: angle, Bold: st.bold, Align: a, Colour: st.colour, Halo: halo})
}

// The styles of a look.
func (p pad) style(cap float64, c ink.Colour) style { return style{face: p.face, cap: cap, colour: c} }
func (p pad) small() style                          { return p.style(capSmall, p.look.Ink) }
func (p pad) quiet() style                          { return p.style(capSmall, p.look.Quiet) }
func (p pad) head() style                           { return p.small().strong() }
func (p pad) name() style                           { return p.style(capName, p.look.Ink) }
