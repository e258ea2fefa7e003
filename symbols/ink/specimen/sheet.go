package specimen

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Sheet is an A3 page with as many marks as a full plan has: what the writers are timed with.
func Sheet() ink.Page {
	p := ink.Page{Title: "A full sheet", Width: 420, Height: 297}
	tint, contour := ink.NewCanvas(&p, ink.Tint), ink.NewCanvas(&p, ink.Contours)
	for i := range 12 {
		ring := blob(at(150, 150), 130-10*float64(i), float64(i))
		tint.Polygon(ink.Solid(ink.Colour{R: byte(180 + 5*i), G: byte(175 + 5*i), B: byte(160 + 5*i)}), ring...)
		contour.Polygon(ink.Pen{Colour: brown, Width: []float64{0.18, 0.35}[i%2]}, ring...)
	}
	for i := range 60 {
		x, y := 20+40*float64(i%10), 20+40*float64(i/10)
		c := ink.NewCanvas(&p, ink.Symbols).Of(fmt.Sprintf("light:%d", i), "A lamp.").At(at(x, y), 17*float64(i), 20)
		c.Circle(ink.Pen{Colour: black, Width: 0.35}.Filled(white), at(0, 0), 0.2)
		c.Arrow(ink.Pen{Colour: black, Width: 0.25}.Dashed(2, 1), 2, at(0, 0), at(0, 1.5))
		c.On(ink.Readings).Text(ink.Text{At: at(0.3, 0), S: fmt.Sprintf("%d lx T2.8", 37*i), Size: 2.6, Colour: black, Halo: &white})
	}
	for i := range 150 {
		c := ink.NewCanvas(&p, ink.Collar)
		x, y := 300+60*float64(i%2), 285-3.6*float64(i/2)
		c.Text(ink.Text{At: at(x, y), S: fmt.Sprintf("%d LED 300 W, 4300 K, %d %%, 2.58 m", i, i%100), Size: 2.6, Bold: i%5 == 0, Colour: black})
		c.Polyline(ink.Pen{Colour: sand, Width: 0.18}, at(x, y-1), at(x+55, y-1))
	}
	return p
}

// blob is a wavy ring of 600 points.
func blob(centre r2.Vec, radius, phase float64) []r2.Vec {
	ring := make([]r2.Vec, 600)
	for i := range ring {
		a := float64(i) * 360 / float64(len(ring))
		r := radius * (1 + 0.08*math.Sin(5*a*math.Pi/180+phase) + 0.02*math.Sin(31*a*math.Pi/180))
		ring[i] = r2.Add(centre, r2.Scale(r, ink.Direction(-a)))
	}
	return ring
}
