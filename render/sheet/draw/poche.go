package draw

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// cutAway draws what a plan or a section cuts: pieces in a mid grey with one line of a width about all of
// them. Where pieces meet there is no line.
func (p Pad) cutAway(width float64, pieces ...[]r2.Vec) {
	for _, q := range pieces {
		p.cutGround(q)
	}
	p.cutOutline(width, pieces)
}

// cutGround draws the ground of one piece.
func (p Pad) cutGround(piece []r2.Vec) {
	p.outline(0, p.Look.Wall, &p.Look.Wall, piece...)
	if p.Look.Plain {
		p.canvas.Hatch(ink.Pen{Colour: p.Look.Ink, Width: Hair}, hatchPitch, 45, piece)
	}
}

// hatchPitch is from line to line of a hatched wall, mm.
const hatchPitch = 1.5

// cutOutline draws the line about pieces. A hairline of their ground closes the seams between them first.
func (p Pad) cutOutline(width float64, pieces [][]r2.Vec) {
	if !p.Look.Plain {
		for _, q := range pieces {
			p.outline(Hair, p.Look.Wall, nil, q...)
		}
	}
	for _, line := range outlineOf(pieces) {
		p.canvas.Polyline(ink.Pen{Colour: p.Look.Ink, Width: width, Round: true}, line...)
	}
}

// seam is how close to an edge another piece counts as lying beyond it, mm.
const seam = 0.02

// outlineOf are the parts of the edges of some convex pieces beyond which there is no other piece.
func outlineOf(pieces [][]r2.Vec) [][]r2.Vec {
	boxes := make([]r2.Box, len(pieces))
	for i, q := range pieces {
		boxes[i] = plane.Bounds(q)
	}
	var lines [][]r2.Vec
	for i, q := range pieces {
		for j := range q {
			lines = append(lines, openParts(q[j], q[(j+1)%len(q)], i, pieces, boxes)...)
		}
	}
	return lines
}

// openParts are the parts of an edge of piece i, which runs from a to b, that no other piece lies beyond.
func openParts(a, b r2.Vec, i int, pieces [][]r2.Vec, boxes []r2.Box) [][]r2.Vec {
	length := r2.Norm(r2.Sub(b, a))
	if length == 0 {
		return nil
	}
	out := r2.Scale(seam/length, r2.Vec{X: b.Y - a.Y, Y: a.X - b.X})
	if plane.Area(pieces[i]) < 0 {
		out = r2.Scale(-1, out)
	}
	beyond := []r2.Vec{r2.Add(a, out), r2.Add(b, out)}
	bounds := plane.Bounds(beyond)
	var covered [][2]float64
	for j, q := range pieces {
		if j == i || !carto.Overlap(box.Corners(bounds), box.Corners(boxes[j])) {
			continue
		}
		for _, part := range ink.ClipPolyline(beyond, q) {
			covered = append(covered, [2]float64{r2.Norm(r2.Sub(part[0], beyond[0])) / length, r2.Norm(r2.Sub(part[len(part)-1], beyond[0])) / length})
		}
	}
	slices.SortFunc(covered, func(p, q [2]float64) int { return cmp.Compare(p[0], q[0]) })
	var lines [][]r2.Vec
	from := 0.0
	for _, c := range append(covered, [2]float64{1, 1}) {
		if (c[0]-from)*length > 2*seam {
			lines = append(lines, []r2.Vec{box.Interpolate(a, b, from), box.Interpolate(a, b, c[0])})
		}
		from = max(from, c[1])
	}
	return lines
}

// wallPieces are the pieces of the walls that a plan cuts, on paper.
func wallPieces(s *plan.Setup, v layout.View) [][]r2.Vec {
	var pieces [][]r2.Vec
	for i := range s.Walls {
		if w := &s.Walls[i]; w.Opening == "" {
			pieces = append(pieces, v.All(w.Outline))
		}
	}
	return pieces
}
