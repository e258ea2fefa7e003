// Package specimen is a drawing that has one of everything ink can draw: what the writers are
// tested with, and compared by eye.
package specimen

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

var (
	black = ink.Colour{R: 26, G: 26, B: 30}
	white = ink.Colour{R: 255, G: 255, B: 255}
	brown = ink.Colour{R: 134, G: 84, B: 38}
	sand  = ink.Colour{R: 232, G: 226, B: 205}
	amber = ink.Colour{R: 230, G: 150, B: 70}
	wine  = ink.Colour{R: 178, G: 20, B: 82}
)

// Hostile is a label of everything that could break a format.
const Hostile = "<b>&amp; \"q\" 'a' \\ ) ( % \x00\x1b\u202E]]> é ½ m² − ≥ °"

// Document is the specimen page, and a page of another size.
func Document() ink.Document {
	return ink.Document{
		Title: "Specimen", Language: "en-GB", Author: "N. N.", Subject: "One of everything", Date: "2031-05-14",
		Pages: []ink.Page{Page(), Second()},
	}
}

// Page is the specimen, 180 mm by 120 mm.
func Page() ink.Page {
	p := ink.Page{Title: "Specimen: one of everything", Description: "Lines, fills, text, halos, clips and a raster.", Width: 180, Height: 120}
	lines(ink.NewCanvas(&p, ink.Throws))
	shapes(ink.NewCanvas(&p, ink.Furniture))
	lettering(ink.NewCanvas(&p, ink.Readings))
	clipped(ink.NewCanvas(&p, ink.Tint))
	raster(ink.NewCanvas(&p, ink.Notes))
	things(ink.NewCanvas(&p, ink.Symbols))
	return p
}

// Second is a page of another size, with a line of exactly 100 mm.
func Second() ink.Page {
	p := ink.Page{Title: "Second page", Width: 297, Height: 210}
	c := ink.NewCanvas(&p, ink.Collar)
	c.Polyline(ink.Pen{Colour: black, Width: 0.5}, at(50, 100), at(150, 100))
	c.Text(ink.Text{At: at(100, 104), S: "exactly 100 mm", Size: 5, Align: ink.Centre, Colour: black})
	return p
}

func at(x, y float64) r2.Vec { return r2.Vec{X: x, Y: y} }

// lines: the widths of a drawing office, dashes, caps, joins.
func lines(c ink.Canvas) {
	for i, w := range []float64{0.18, 0.25, 0.35, 0.5, 0.7, 2} {
		y := 112 - 3*float64(i)
		c.Polyline(ink.Pen{Colour: black, Width: w}, at(6, y), at(40, y))
		c.Polyline(ink.Pen{Colour: black, Width: w}.Dashed(3, 1), at(45, y), at(80, y))
	}
	dots := ink.Pen{Colour: wine, Width: 1, Round: true}.Dashed(0, 2)
	c.Polyline(dots, at(6, 92), at(40, 92))
	c.Polyline(ink.Pen{Colour: brown, Width: 0.5}.Dashed(6, 1.5, 1, 1.5), at(45, 92), at(60, 92), at(80, 96))
	zigzag := []r2.Vec{at(90, 96), at(95, 112), at(100, 96), at(102, 112), at(104, 96)}
	c.Polyline(ink.Pen{Colour: black, Width: 1.5}, zigzag...)
	for i := range zigzag {
		zigzag[i].X += 20
	}
	c.Polyline(ink.Pen{Colour: black, Width: 1.5, Round: true}, zigzag...)
	c.Arrow(ink.Pen{Colour: black, Width: 0.25}, 2, at(132, 96), at(150, 112))
	c.DoubleArrow(ink.Pen{Colour: black, Width: 0.25}, 2, at(140, 94), at(172, 106))
}

// shapes: fills, rings with holes, arcs, hatches, ticks.
func shapes(c ink.Canvas) {
	fine := ink.Pen{Colour: black, Width: 0.35}
	c.Rect(fine.Filled(sand), at(6, 70), at(22, 86))
	c.Circle(fine.Filled(amber), at(34, 78), 8)
	c.Draw(fine.Filled(sand), append(ink.Circle(at(54, 78), 8), ink.Arc(at(54, 78), 4, 90, 450).Close()...))
	c.Draw(fine.Filled(white), ink.Sector(at(66, 70), 14, 20, 80))
	c.Draw(fine.Filled(sand), ink.Capsule(at(88, 74), at(96, 82), 4))
	c.Draw(fine, ink.RoundRect(at(104, 70), at(120, 86), 3))
	c.Hatch(ink.Pen{Colour: brown, Width: 0.18}, 1.2, 45, ink.Corners(at(126, 70), at(142, 86)), ink.Corners(at(130, 74), at(138, 82)))
	c.Ticks(ink.Pen{Colour: black, Width: 0.25}, 1.5, 1.2, at(148, 72), at(172, 72), at(172, 86))
	c.Polyline(ink.Pen{Colour: black, Width: 0.7}, at(148, 72), at(172, 72), at(172, 86))
	var wave ink.Path
	for i := range 25 {
		x := float64(i)
		if i == 0 {
			wave = wave.MoveTo(at(148, 78))
		}
		wave = wave.CurveTo(at(148.3+x, 78+3*math.Sin(x)), at(148.6+x, 78-3*math.Sin(x)), at(149+x, 78))
	}
	c.Draw(ink.Pen{Colour: wine, Width: 0.25}, wave)
}

// lettering: sizes, weights, alignments, angles, halos over a busy ground.
func lettering(c ink.Canvas) {
	for i, size := range []float64{2.6, 3.5, 5, 7} {
		c.Text(ink.Text{At: at(6, 60-7*float64(i)), S: "Key 4300 K T2.8", Size: size, Bold: i%2 == 1, Colour: black})
	}
	for i, a := range []ink.Align{ink.Left, ink.Centre, ink.Right} {
		c.Text(ink.Text{At: at(84, 62-4*float64(i)), S: "aligned at the line", Size: 3, Align: a, Colour: black})
	}
	c.Polyline(ink.Pen{Colour: wine, Width: 0.18}, at(84, 52), at(84, 66))
	for a := 0.0; a < 360; a += 45 {
		c.Text(ink.Text{At: r2.Add(at(134, 50), r2.Scale(4, ink.Direction(90-a))), S: "turned", Size: 3, Angle: a, Colour: brown})
	}
	for i := range 20 {
		y := 34 + float64(i)*0.8
		c.On(ink.Contours).Polyline(ink.Pen{Colour: brown, Width: 0.25}, at(66, y), at(108, y-4))
	}
	c.Text(ink.Text{At: at(70, 42), S: "470 lx halo", Size: 5, Colour: black, Halo: &white})
	c.Text(ink.Text{At: at(104, 34), S: "sloped", Size: 4, Angle: -5.44, Align: ink.Right, Bold: true, Colour: wine, Halo: &white})
	c.Text(ink.Text{At: at(6, 3), S: Hostile, Size: 3, Colour: black})
	c.Text(ink.Text{At: at(100, 3), S: "  two  spaces  ", Size: 3, Colour: black})
}

// clipped: what a convex clip does to fills, strokes and text.
func clipped(c ink.Canvas) {
	diamond := []r2.Vec{at(22, 8), at(38, 20), at(22, 32), at(6, 20)}
	in := c.Within(diamond...)
	in.Rect(ink.Solid(sand), at(0, 0), at(60, 24))
	in.Circle(ink.Pen{Colour: black, Width: 2}, at(22, 20), 11)
	in.Text(ink.Text{At: at(22, 18), S: "clipped text", Size: 6, Align: ink.Centre, Colour: wine})
	c.Polygon(ink.Pen{Colour: black, Width: 0.18}, diamond...)
}

// raster: eight by four pixels.
func raster(c ink.Canvas) {
	m := ink.Image{Min: at(46, 8), Max: at(78, 24), Width: 8, Height: 4}
	for j := range 4 {
		for i := range 8 {
			m.RGB = append(m.RGB, byte(36*i), byte(85*j), byte(255-36*i))
		}
	}
	c.Image(m)
	c.Rect(ink.Pen{Colour: black, Width: 0.18}, m.Min, m.Max)
}

// things: marks that stand for objects, in frames of their own.
func things(c ink.Canvas) {
	for i, bearing := range []float64{0, 60, 135} {
		names := []string{"light:key", "light:fill", "camera:A"}
		lamp := c.Of(names[i], "A thing, turned by "+[]string{"0", "60", "135"}[i]+" degrees.").At(at(96+24*float64(i), 14), bearing, 20)
		lamp.Polygon(ink.Solid(black), at(-0.25, 0), at(0.25, 0), at(0.15, -0.3), at(-0.15, -0.3))
		lamp.Arc(ink.Pen{Colour: amber, Width: 0.7}, at(0, 0), 0.35, -50, 50)
		lamp.Text(ink.Text{At: at(0, -0.2), S: []string{"1", "2", "A"}[i], Size: 3, Bold: true, Align: ink.Centre, Colour: white})
	}
}
