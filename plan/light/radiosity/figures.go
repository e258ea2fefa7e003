package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Figures are convex polygons, parts of a patch that lie in the air.

// split cuts element k of a patch on the face into figures: what of it lies in the air, some parts each way.
func (p *patch) split(f *face, k, across int) (figures [][]r3.Vec) {
	du, dv := f.du/float64(2*across), f.dv/float64(2*across)
	x, y := p.x+f.du/2*float64(k&1), p.y+f.dv/2*float64(k>>1&1)
	for _, part := range p.inAir(f, k) {
		for _, column := range strips(part, f.u, r3.Dot(f.u, f.origin)+x, du, across) {
			figures = append(figures, strips(column, f.v, r3.Dot(f.v, f.origin)+y, dv, across)...)
		}
	}
	return figures
}

// strips cuts a convex figure into some strips of a width, m, along a direction, from an offset on.
func strips(figure []r3.Vec, along r3.Vec, offset, width float64, count int) (all [][]r3.Vec) {
	for k := range count {
		low := offset + width*float64(k)
		if strip := strip(figure, along, low, low+width); strip != nil {
			all = append(all, strip)
		}
	}
	return all
}

// placeOn is a place of a patch in the air, by a point of the unit square: as likely as any other.
func placeOn(f *face, p *patch, x, y float64) r3.Vec {
	if p.parts != nil {
		return placeIn(p.whole(), p.parts[:], x, y)
	}
	return f.at(p.x+x*f.du, p.y+y*f.dv)
}

// placeIn is a place on convex figures that have an area, all, by a point of the unit square: as likely as any other.
func placeIn(all float64, groups [][][]r3.Vec, x, y float64) (at r3.Vec) {
	left := x * all
	for _, figures := range groups {
		for _, f := range figures {
			for i := 1; i+1 < len(f); i++ {
				a := areaOf([]r3.Vec{f[0], f[i], f[i+1]})
				side := r3.Add(r3.Scale(1-y, f[i]), r3.Scale(y, f[i+1]))
				along := 1.0 // what is left of x is more than all only by rounding
				if left < a {
					along = math.Sqrt(left / a)
				}
				at = r3.Add(r3.Scale(1-along, f[0]), r3.Scale(along, side))
				if left < a {
					return at
				}
				left -= a
			}
		}
	}
	return at
}

// areaOf is the area of a convex figure, m².
func areaOf(f []r3.Vec) (area float64) {
	for i := 1; i+1 < len(f); i++ {
		area += r3.Norm(r3.Cross(r3.Sub(f[i], f[0]), r3.Sub(f[i+1], f[0]))) / 2
	}
	return area
}
