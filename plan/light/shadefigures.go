package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/solid"
)

// brightFigure is a flat convex figure and its luminance, cd/m²; one of less than nought takes away from what lies
// under it.
type brightFigure struct {
	corners   []r3.Vec
	luminance float64
}

// shadeView finds the figures as which a shade is seen from a place. It keeps its memory from one to the next.
type shadeView struct {
	clipper solid.Viewer
	figures []brightFigure
	turned  []r3.Vec
}

// from finds the figures that are seen from a place. They hold until the next call.
func (v *shadeView) from(s *shadeLamp, f *shadeFacets, place r3.Vec) []brightFigure {
	v.clipper.Reset()
	v.figures, v.turned = v.figures[:0], v.turned[:0]
	if s.holds(place) {
		v.fromWithin(s, f, place)
		return v.figures
	}
	v.side(f, place)
	switch over := s.over(place); {
	case over > s.half:
		v.through(s, f, place, true)
	case over < -s.half:
		v.through(s, f, place, false)
	}
	return v.figures
}

func (v *shadeView) add(corners []r3.Vec, luminance float64) {
	if luminance != 0 {
		v.figures = append(v.figures, brightFigure{corners, luminance})
	}
}

// facet is facet i between two rings, counter-clockwise seen from outside.
func (v *shadeView) facet(low, high []r3.Vec, i int) []r3.Vec {
	k := (i + 1) % len(low)
	first := len(v.turned)
	v.turned = append(v.turned, low[i], low[k], high[k], high[i])
	return v.turned[first:]
}

// side adds the facets that face the place.
func (v *shadeView) side(f *shadeFacets, place r3.Vec) {
	for b := range f.bands {
		low, high := f.rings[b], f.rings[b+1]
		for i := range low {
			k := (i + 1) % len(low)
			outward := r3.Cross(r3.Sub(low[k], low[i]), r3.Sub(high[i], low[i]))
			if r3.Dot(outward, r3.Sub(place, low[i])) > 0 {
				v.add(v.facet(low, high, i), f.bands[b].outside)
			}
		}
	}
}

// through adds what is seen through the nearer opening. As much of each ring as is seen through it lies, drawn to the
// place, in the plane of that opening, one in the other; between two of them a band is seen, and within the last nothing.
func (v *shadeView) through(s *shadeLamp, f *shadeFacets, place r3.Vec, above bool) {
	opening := v.ring(f, 0, above)
	v.insides(f, opening, place, above)
	rim, ok := sphereRim(s.at, s.bulb, place, s.axis, r3.Sub(f.rings[0][0], f.rings[0][1]))
	if !ok {
		return
	}
	if seen := v.within(rim.polygon(len(opening)), opening, place); seen != nil {
		v.add(seen, s.luminance)
	}
}

// insides adds the bands that are seen through an opening.
func (v *shadeView) insides(f *shadeFacets, opening []r3.Vec, place r3.Vec, above bool) {
	last := len(f.bands)
	before := 0.0
	for n := range f.rings {
		inside := 0.0
		if n < last {
			inside = f.inside(n, above)
		}
		seen := opening
		if n > 0 {
			seen = v.within(seen, v.ring(f, n, above), place)
		}
		if seen == nil {
			return
		}
		v.add(seen, inside-before)
		before = inside
	}
}

// inside is the luminance inside of the band n from the opening on.
func (f *shadeFacets) inside(n int, above bool) float64 {
	if above {
		n = len(f.bands) - 1 - n
	}
	return f.bands[n].inside
}

// ring is the ring n from the opening on, counter-clockwise seen from outside of that.
func (v *shadeView) ring(f *shadeFacets, n int, above bool) []r3.Vec {
	if above {
		return f.rings[len(f.rings)-1-n]
	}
	first := len(v.turned)
	v.turned = append(v.turned, f.rings[n]...)
	turned := v.turned[first:]
	slices.Reverse(turned)
	return turned
}

// within is what a place sees of a figure through a ring that is counter-clockwise from there; nil for nothing.
func (v *shadeView) within(figure, ring []r3.Vec, place r3.Vec) []r3.Vec {
	last := r3.Sub(ring[len(ring)-1], place)
	for _, corner := range ring {
		next := r3.Sub(corner, place)
		out := r3.Cross(last, next)
		out = r3.Scale(1/math.Sqrt(r3.Norm2(out)), out)
		edge := solid.Plane{N: out, C: r3.Dot(out, place)}
		if cuts(&edge, figure) {
			if figure = v.clipper.Clip(figure, &edge, -1); figure == nil {
				return nil
			}
		}
		last = next
	}
	return figure
}

// cuts says whether any corner of a figure lies over a plane.
func cuts(h *solid.Plane, figure []r3.Vec) bool {
	return slices.ContainsFunc(figure, func(p r3.Vec) bool { return h.Over(p) > 0 })
}

// fromWithin adds the inside all round, and the bulb.
func (v *shadeView) fromWithin(s *shadeLamp, f *shadeFacets, place r3.Vec) {
	for b := range f.bands {
		for i := range f.rings[b] {
			facet := v.facet(f.rings[b], f.rings[b+1], i)
			slices.Reverse(facet)
			v.add(facet, f.bands[b].inside)
		}
	}
	if rim, ok := sphereRim(s.at, s.bulb, place, s.axis, r3.Sub(f.rings[0][0], f.rings[0][1])); ok {
		v.add(rim.polygon(len(f.rings[0])), s.luminance)
	}
}

// light is what a receptor gets of a figure, lx.
func (g *brightFigure) light(corners []r3.Vec, r *Receptor) float64 {
	if r.Response == Dome {
		return g.luminance * formfactor.PolygonDome(corners, r.At, r.Axis)
	}
	return g.luminance * formfactor.Polygon(corners, r.At, r.Axis)
}
