package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// patch is one that is seen.
type patch struct {
	number     uint32 // in the mesh
	face       int32
	x, y       float64 // of its corner, from the face's origin
	from, to   int32   // of its links
	importance float64 // share of what single receptors read that hangs on its light
	area       [4]float64
	kept       colour.RGB     // share of its light that comes to a surface
	swallowed  colour.RGB     // share of its light that comes to a surface that returns nothing
	parts      *[4][][]r3.Vec // by element: what lies on the face and in the air; nil where all does
}

// whole is the area of a patch that lies in the air, m².
func (p *patch) whole() float64 { return p.area[0] + p.area[1] + p.area[2] + p.area[3] }

// elementWithArea is an element of the patch, or where it has no area to speak of the one that has the most.
func (p *patch) elementWithArea(k int) int {
	if p.area[k] > 0 {
		return k
	}
	for i := range p.area {
		if p.area[i] > p.area[k] {
			k = i
		}
	}
	return k
}

// range4 is how far the elements in the air are apart, lx.
func (p *patch) range4(e *[4]colour.RGB) float64 {
	low, high := math.Inf(1), 0.0
	for k, v := range e {
		if p.area[k] > 0 {
			low, high = min(low, v[1]), max(high, v[1])
		}
	}
	return max(0, high-low)
}

// inAir are the parts of element k of a patch on the face that lie in the air.
func (p *patch) inAir(f *face, k int) [][]r3.Vec {
	if p.parts != nil {
		return p.parts[k]
	}
	whole := f.element4(p.x, p.y, k)
	return [][]r3.Vec{whole[:]}
}

// Up to mostRow patches of a row are asked about together, and fewer than leastRow one by one.
const (
	mostRow  = 8
	leastRow = 3
)

// endOfRow is the place after the last of those patches, from one on and before end, that lie side by side in a row.
func endOfRow(patches []patch, from, end int) int {
	end = min(end, from+mostRow)
	first := &patches[from]
	for next := from + 1; next < end; next++ {
		if p := &patches[next]; p.face != first.face || p.y != first.y || p.number != first.number+uint32(next-from) {
			return next
		}
	}
	return end
}

// row is the rectangle of so many patches side by side, from this one on.
func (p *patch) row(f *face, n int) [4]r3.Vec { return f.rectangle(p.x, p.y, float64(n)*f.du, f.dv) }
