package sheet

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// gatherer grows a box.
type gatherer struct {
	b   r2.Box
	any bool
}

func (g *gatherer) point(p r2.Vec, room float64) {
	if math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) {
		return
	}
	b := box(p.X-room, p.Y-room, p.X+room, p.Y+room)
	if !g.any {
		g.b, g.any = b, true
		return
	}
	g.b.Min.X, g.b.Min.Y = math.Min(g.b.Min.X, b.Min.X), math.Min(g.b.Min.Y, b.Min.Y)
	g.b.Max.X, g.b.Max.Y = math.Max(g.b.Max.X, b.Max.X), math.Max(g.b.Max.Y, b.Max.Y)
}

func (g *gatherer) all(points []r2.Vec, room float64) {
	for _, p := range points {
		g.point(p, room)
	}
}

// box is what was gathered; a scene without a thing gets a square of 2 m.
func (g *gatherer) box() r2.Box {
	if !g.any {
		return box(-1, -1, 1, 1)
	}
	return g.b
}

// around is the box round boxes.
func around(all []r2.Box) r2.Box {
	g := gatherer{}
	for _, b := range all {
		g.point(b.Min, 0)
		g.point(b.Max, 0)
	}
	return g.box()
}

func at(x, y float64) r2.Vec { return r2.Vec{X: x, Y: y} }

func box(x0, y0, x1, y1 float64) r2.Box { return r2.Box{Min: at(x0, y0), Max: at(x1, y1)} }

func width(b r2.Box) float64  { return b.Max.X - b.Min.X }
func height(b r2.Box) float64 { return b.Max.Y - b.Min.Y }

// inset is the box drawn in by dx and dy.
func inset(b r2.Box, dx, dy float64) r2.Box {
	return box(b.Min.X+dx, b.Min.Y+dy, b.Max.X-dx, b.Max.Y-dy)
}

// corners are those of a box, counter-clockwise.
func corners(b r2.Box) []r2.Vec { return ink.Corners(b.Min, b.Max) }
