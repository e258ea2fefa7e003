package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// tubePoints is how many points stand for a tube where the edge of a shadow is looked at closely.
const tubePoints = 8

// Flux implements radiosity.Lamp. Closely looked at, a tube is some points, and what each keeps of the figure has sharp
// edges that are found exactly: along a tube its shadows have sharp edges, and where one runs straight along a row of
// figures it would put each of them off alike.
func (b *surfaceLamp) Flux(worker int, figure []r3.Vec, closely bool) (sum colour.RGB) {
	a := &b.patches[worker]
	if b.l.before != nil {
		return b.surface(a, figure, closely, a.places.mirrored)
	}
	if b.l.shade != nil {
		return b.surface(a, figure, closely, a.places.fromShade)
	}
	switch form := b.l.opening.Form; {
	case len(a.occluders) > 0 && form == photometry.Point:
		return b.cutFlux(a, b.l.at, figure)
	case len(a.occluders) == 0 || !closely || form != photometry.Tube:
		return b.sumFlux(a, figure, closely)
	}
	for i := range b.close {
		n := &b.close[i]
		sum = sum.Add(b.cutFlux(a, n.at, figure).Scale(n.weight))
	}
	return sum
}

// Light implements radiosity.Lamp.
func (b *surfaceLamp) Light(worker int, at, normal r3.Vec) colour.RGB {
	return b.patches[worker].total(b.l, &Receptor{At: at, Axis: normal})
}

// cutFlux is the flux from a point past what stands between: what the figure keeps of its light has sharp edges, and is
// found exactly.
func (b *surfaceLamp) cutFlux(a *patchLight, from r3.Vec, figure []r3.Vec) (sum colour.RGB) {
	for _, g := range a.Visible(from, figure, a.occluders, false) {
		factor := colour.RGB{1, 1, 1}
		if g.Filtered {
			factor = a.transmittance(from, solid.Centre(g.Corners))
		}
		a.from = from
		value := b.surface(a, g.Corners, false, a.places.fromPoint)
		sum = sum.Add(factor.Times(value))
	}
	return sum
}

// sumFlux is the flux on a figure by what is seen of the opening from some of its places.
func (b *surfaceLamp) sumFlux(a *patchLight, figure []r3.Vec, closely bool) colour.RGB {
	if len(a.occluders) == 0 {
		return b.surface(a, figure, false, a.places.unhidden)
	}
	return b.surface(a, figure, closely, a.places.seen)
}

// placeLights are what a place on a patch gets of a lamp, lx. They are made once, for the sums of many patches.
type placeLights struct {
	mirrored  func(r *Receptor) colour.RGB // as a mirror shows the lamp
	fromShade func(r *Receptor) colour.RGB
	fromPoint func(r *Receptor) colour.RGB // of which all is at one point, with nothing in the way
	unhidden  func(r *Receptor) colour.RGB // with nothing in the way
	seen      func(r *Receptor) colour.RGB // of the parts of the opening that it sees
}

func (b *surfaceLamp) placeLights(a *patchLight) placeLights {
	return placeLights{
		mirrored: func(r *Receptor) colour.RGB { return a.total(b.l, r) },
		fromShade: func(r *Receptor) colour.RGB {
			a.shares = a.shares[:0]
			a.shadePast(b.l, r, a.occluders)
			return a.sum()
		},
		fromPoint: func(r *Receptor) colour.RGB {
			e := b.l.fromPoint(a.from, r)
			return colour.RGB{e, e, e}
		},
		unhidden: func(r *Receptor) colour.RGB {
			e := b.whole(r)
			return colour.RGB{e, e, e}
		},
		seen: func(r *Receptor) colour.RGB { return b.seen(a, r) },
	}
}

// seen is what a place on the patch gets of the parts of the opening that it sees.
func (b *surfaceLamp) seen(a *patchLight, r *Receptor) (sum colour.RGB) {
	l := b.l
	figure := l.outline(r.At, fewSides)
	if figure == nil || l.onesided && r3.Dot(r3.Sub(r.At, l.at), l.axis) <= 0 {
		return sum
	}
	all := a.Visible(r.At, figure, a.occluders, true)
	for i := range all {
		g := &all[i]
		value := 0.0
		if g.Cut {
			value = a.rough(l, r, g.Corners, fewPlacesOfSurface)
		} else {
			value = b.whole(r)
		}
		e := colour.RGB{value, value, value}
		if g.Filtered {
			e = e.Times(a.transmittance(a.wayFrom(g.Corners, r), r.At))
		}
		sum = sum.Add(e)
	}
	return sum
}

// whole is what a surface gets where nothing hides the lamp: close to it by closed form or piece by piece, and
// else by a short rule.
func (b *surfaceLamp) whole(r *Receptor) float64 {
	l := b.l
	size := l.opening.Largest()
	square := r3.Norm2(r3.Sub(r.At, l.at))
	if near := size * size; square < near || l.lambertian && square < 4*near || l.creases != nil && square < 9*near {
		return l.unoccluded(r, coarsely())
	}
	sum, rule := 0.0, b.coarse
	if square > 9*size*size {
		rule = b.distant
	}
	for i := range rule {
		n := &rule[i]
		sum += n.weight * l.fromPoint(n.at, r)
	}
	return sum
}

// mostRough is how often, at most, a side of a triangle of an opening is divided for the short rule: one that serves at
// the triangle's own size from it.
const mostRough = 4

// fewPlaces is how long, at most, by its distance from what it lights, a triangle of an opening is that three places stand for.
// Most points that see little of an opening see it from far off; by all seven places fields, straight or reflected, are no nearer to the
// truth. A surface passes on what it gets together with that of hundreds of others, and takes three up to fewPlacesOfSurface.
const (
	fewPlaces          = 0.5
	fewPlacesOfSurface = 1.0
)

// rough is part for what falls on surfaces and lattices: without a closed form, by one short rule, and of triangles up to a share, few, of
// their distance long by a shorter one. Of a sphere that is not Lambertian it is as much of the light as is seen of the disc.
func (v *visibleSums) rough(l *lamp, r *Receptor, corners []r3.Vec, few float64) float64 {
	if l.opening.Form == photometry.Sphere && !l.lambertian {
		seen, all := v.part(l, r, corners, coarseSum), v.part(l, r, l.outline(r.At, fewSides), coarseSum)
		if !(all > 0) {
			return 0
		}
		return min(seen/all, 1) * l.fromPoint(l.at, r)
	}
	if l.lambertian || len(corners) == 2 {
		return v.part(l, r, corners, coarseSum)
	}
	if corners = v.counting(corners, r); corners == nil {
		return 0
	}
	c := cubature{l: l, r: r}
	sum := 0.0
	near := math.Sqrt(l.distance2(r.At))
	for i := 1; i+1 < len(corners); i++ {
		t := triangle{corners[0], corners[i], corners[i+1]}
		if t.longest() <= few*near {
			sum += c.short(&t)
			continue
		}
		t.split(min(max(1, int(math.Ceil(t.longest()/near))), mostRough), func(part triangle) { sum += c.sum(&part) })
	}
	return sum / l.opening.Surface()
}

// transmittance is what clear sheets leave on the way between two points.
func (a *patchLight) transmittance(from, to r3.Vec) colour.RGB {
	factor := colour.RGB{1, 1, 1}
	a.panes, _ = a.BVH.Segment(from, to, nil, a.panes[:0])
	for i := range a.panes {
		factor = factor.Times(a.panes[i].Factor())
	}
	return factor
}

// surface sums light over a convex figure, by places that lie closer together than its grain.
func (b *surfaceLamp) surface(a *patchLight, figure []r3.Vec, closely bool, light func(r *Receptor) colour.RGB) (sum colour.RGB) {
	middle := solid.Centre(figure)
	near := math.Sqrt(b.l.distance2(middle))
	a.sums = surfaceSum{r: Receptor{Axis: a.normal}, grain: b.grainPerMetre*near + b.l.opening.Largest()/8, near: near, closely: closely, light: light}
	a.sums.figure(figure)
	return a.sums.sum
}
