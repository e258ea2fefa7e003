package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/crew"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// bounced is a lamp as the surfaces of the set see it.
type bounced struct {
	w       *World
	l       *lamp
	points  []r3.Vec // of the opening, in an order of which every part is spread over all of it
	coarse  []node   // the rule that the light of the whole opening is summed by
	distant []node   // and that from farther off than three times its size
	close   []node   // the points that stand for a tube where the edge of a shadow is looked at closely
	slender float64  // metres of light that changes little, per metre from the lamp
	widest  float64  // the angle from the axis, radians, beyond which nothing is followed
	aims    []aim    // by worker
}

// aim is how a lamp lights the patch that a worker looks at.
type aim struct {
	tracer
	normal r3.Vec
	past   []int32 // what may stand between
	veiled bool    // whether any of that is clear
}

// The share of the distance that a surface is looked at in, and the share of the peak intensity
// that is still followed.
const (
	wideGrain = 0.3
	faintest  = 1e-6
)

// tubePoints is how many points stand for a tube where the edge of a shadow is looked at closely.
const tubePoints = 8

// fewest is the shortest rule over the opening.
func (l *lamp) fewest() []node {
	switch l.opening.Form {
	case photometry.Rectangle:
		return l.grid(2, 2)
	case photometry.Disc:
		return l.rings(2)
	case photometry.Tube:
		return l.grid(2, 1)
	}
	return []node{{l.at, 1}}
}

func (w *World) newBounced(l *lamp) *bounced {
	b := &bounced{w: w, l: l, aims: make([]aim, crew.Size(w.workers, math.MaxInt))}
	for i := range b.aims {
		b.aims[i].BVH = w.bvh
	}
	b.points = stirred(l.points)
	if b.points == nil {
		b.points = []r3.Vec{l.at}
	}
	b.coarse = l.nodes(l.opening.Largest(), coarsely())
	b.distant = l.fewest()
	if l.opening.Form == photometry.Tube {
		b.close = l.grid(tubePoints, 1)
	}
	peak := photometry.Peak(l.shape)
	b.widest = l.widest(faintest * l.flux * peak)
	half := min(l.falls(l.right, 0.5*l.flux*peak), l.falls(l.up, 0.5*l.flux*peak))
	b.slender = min(wideGrain, math.Tan(min(half, 45)*radian)/2)
	return b
}

// stirred orders the points of a lattice so that any run of them is spread over the opening: in steps
// near the golden section of their number that meet each one once.
func stirred(points []r3.Vec) []r3.Vec {
	n := len(points)
	if n == 0 {
		return nil
	}
	step := max(1, int(golden*float64(n)))
	for common(step, n) != 1 {
		step++
	}
	out := make([]r3.Vec, n)
	for i := range out {
		out[i] = points[i*step%n]
	}
	return out
}

func common(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// Aim implements radiosity.Lamp. A shaft between patch and lamp tells what may come between: where nothing does, all
// of the patch sees all of the lamp, and where one solid hides every corner of the one from every corner of the
// other, none sees any.
func (b *bounced) Aim(worker int, corners []r3.Vec, normal r3.Vec) radiosity.Sight {
	l, a := b.l, &b.aims[worker]
	opening, round := b.opening(corners)
	before, shining := facing(corners[0], normal), facing(l.at, l.axis)
	if l.flux == 0 || outside(&before, opening) || l.onesided && outside(&shining, corners) || b.misses(corners) {
		return radiosity.Dark
	}
	var s solid.Shaft
	if round {
		s = solid.NewBoxShaft(corners, opening)
	} else {
		s = solid.NewShaft(corners, opening)
	}
	s.Bound(before)
	if l.onesided {
		s.Bound(shining)
	}
	a.normal, a.veiled = normal, false
	a.past = a.BVH.Between(&s, nil, a.past[:0])
	for _, number := range a.past {
		if !a.BVH.Opaque(number, l.at, false) {
			a.veiled = true
		} else if !round && a.Hides(number, corners, opening) {
			return radiosity.Dark
		}
	}
	if len(a.past) == 0 {
		return radiosity.Open
	}
	return radiosity.Shaded
}

// opening is a few corners that hold the lamp's opening. A sphere close by is round: no flat figure holds what is
// seen of it from all of the patch.
func (b *bounced) opening(patch []r3.Vec) (corners []r3.Vec, round bool) {
	l := b.l
	switch l.opening.Form {
	case photometry.Point:
		return []r3.Vec{l.at}, false
	case photometry.Sphere:
		middle, radius := solid.Centre(patch), l.opening.Width/2
		rim, ok := l.rim(middle)
		if size := r3.Norm(r3.Sub(patch[0], middle)); ok && r3.Norm(r3.Sub(middle, l.at))-size > nearSphere*radius {
			rim.centre, rim.radius = l.at, wideRim*radius
			return rim.square(), false
		}
		r := r3.Vec{X: radius, Y: radius, Z: radius}
		return []r3.Vec{r3.Sub(l.at, r), r3.Add(l.at, r)}, true
	}
	return l.bound(l.at), false
}

// From nearSphere radii on, the square about a sphere of wideRim times its radius holds what is seen of it from all
// of a patch: its rim lies within a radius of the middle, and the patch is seen under less than a right angle.
const (
	nearSphere = 4
	wideRim    = 1.3
)

// misses says whether a patch lies wholly beyond the angle from the axis of a point that anything is followed to.
func (b *bounced) misses(patch []r3.Vec) bool {
	l := b.l
	if l.opening.Form != photometry.Point || b.widest >= math.Pi {
		return false
	}
	way := r3.Sub(solid.Centre(patch), l.at)
	distance, size := r3.Norm(way), 0.0
	for _, p := range patch {
		size = max(size, r3.Norm(r3.Sub(p, r3.Add(l.at, way))))
	}
	if size >= distance {
		return false
	}
	angle := math.Acos(max(-1, min(1, r3.Dot(way, l.axis)/distance)))
	return angle-math.Asin(size/distance) > b.widest
}

// widest is the greatest angle from the axis, radians, at which the intensity reaches a threshold, in steps of
// which one is added.
func (l *lamp) widest(threshold float64) float64 {
	const step, round = math.Pi / 180, 16
	for n := 180; n > 0; n-- {
		sin, cos := math.Sincos(float64(n) * step)
		for k := range round {
			s, c := math.Sincos(2 * math.Pi * float64(k) / round)
			side := r3.Add(r3.Scale(c, l.right), r3.Scale(s, l.up))
			if l.intensity(r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side))) >= threshold {
				return float64(n+1) * step
			}
		}
	}
	return step
}

// outside says whether all points lie out of a half-space.
func outside(h *solid.Plane, points []r3.Vec) bool {
	for _, p := range points {
		if h.Over(p) < 0 {
			return false
		}
	}
	return true
}

// Flux implements radiosity.Lamp. Closely looked at, a tube is some points, and what each keeps of the figure has sharp
// edges that are found exactly: along a tube its shadows have sharp edges, and where one runs straight along a row of
// figures it would put each of them off alike.
func (b *bounced) Flux(worker int, figure []r3.Vec, closely bool) (sum colour.RGB) {
	a := &b.aims[worker]
	switch form := b.l.opening.Form; {
	case len(a.past) > 0 && form == photometry.Point:
		return b.cutFlux(a, b.l.at, figure)
	case len(a.past) == 0 || !closely || form != photometry.Tube:
		return b.sumFlux(a, figure, closely)
	}
	for i := range b.close {
		n := &b.close[i]
		sum = sum.Add(b.cutFlux(a, n.at, figure).Scale(n.weight))
	}
	return sum
}

// Light implements radiosity.Lamp.
func (b *bounced) Light(worker int, at, normal r3.Vec) (sum colour.RGB) {
	r := Receptor{At: at, Axis: normal}
	for _, s := range b.aims[worker].light(b.l, &r) {
		sum = sum.Add(s.filter.Scale(s.value))
	}
	return sum
}

// cutFlux is the flux from a point past what stands between: what the figure keeps of its light has sharp edges, and is
// found exactly.
func (b *bounced) cutFlux(a *aim, from r3.Vec, figure []r3.Vec) (sum colour.RGB) {
	for _, g := range a.See(from, figure, a.past, false) {
		factor := colour.RGB{1, 1, 1}
		if g.Veiled {
			factor = a.passed(from, solid.Centre(g.Corners))
		}
		value := b.surface(a, g.Corners, false, func(r *Receptor) colour.RGB {
			e := b.l.from(from, r)
			return colour.RGB{e, e, e}
		})
		sum = sum.Add(factor.Times(value))
	}
	return sum
}

// sumFlux is the flux on a figure by what is seen of the opening from some of its places.
func (b *bounced) sumFlux(a *aim, figure []r3.Vec, closely bool) colour.RGB {
	if len(a.past) == 0 {
		return b.surface(a, figure, false, func(r *Receptor) colour.RGB {
			e := b.whole(r)
			return colour.RGB{e, e, e}
		})
	}
	return b.surface(a, figure, closely, func(r *Receptor) colour.RGB { return b.seen(a, r) })
}

// seen is what a place on the patch gets of the parts of the opening that it sees.
func (b *bounced) seen(a *aim, r *Receptor) (sum colour.RGB) {
	l := b.l
	figure := l.outline(r.At, fewSides)
	if figure == nil || l.onesided && r3.Dot(r3.Sub(r.At, l.at), l.axis) <= 0 {
		return sum
	}
	all := a.See(r.At, figure, a.past, true)
	for i := range all {
		g := &all[i]
		value := 0.0
		if g.Cut {
			value = a.rough(l, r, g.Corners)
		} else {
			value = b.whole(r)
		}
		e := colour.RGB{value, value, value}
		if g.Veiled {
			e = e.Times(a.passed(a.wayFrom(g.Corners, r), r.At))
		}
		sum = sum.Add(e)
	}
	return sum
}

// whole is what a surface gets where nothing hides the lamp: close to it by closed form or piece by piece, and
// else by a short rule.
func (b *bounced) whole(r *Receptor) float64 {
	l := b.l
	size := l.opening.Largest()
	square := r3.Norm2(r3.Sub(r.At, l.at))
	if near := size * size; square < near || l.lambertian && square < 4*near || l.pieces != nil && square < 9*near {
		return l.full(r, coarsely())
	}
	sum, rule := 0.0, b.coarse
	if square > 9*size*size {
		rule = b.distant
	}
	for i := range rule {
		n := &rule[i]
		sum += n.weight * l.from(n.at, r)
	}
	return sum
}

// mostRough is how often, at most, a side of a triangle of an opening is divided for the short rule: one that serves at
// the triangle's own size from it.
const mostRough = 4

// rough is part for what falls on surfaces: without a closed form, by one short rule.
func (v *viewer) rough(l *lamp, r *Receptor, corners []r3.Vec) float64 {
	if l.lambertian || len(corners) == 2 || l.opening.Form == photometry.Sphere {
		return v.part(l, r, corners, coarseSum)
	}
	before := facing(r.At, r.Axis)
	if corners = v.Clip(corners, &before, -1); corners == nil {
		return 0
	}
	c := cubature{l: l, r: r}
	sum := 0.0
	near := math.Sqrt(l.distance2(r.At))
	for i := 1; i+1 < len(corners); i++ {
		t := triangle{corners[0], corners[i], corners[i+1]}
		t.split(min(max(1, int(math.Ceil(t.longest()/near))), mostRough), func(part *triangle) { sum += c.sum(part) })
	}
	return sum / l.opening.Surface()
}

// passed is what clear sheets leave on the way between two points.
func (a *aim) passed(from, to r3.Vec) colour.RGB {
	factor := colour.RGB{1, 1, 1}
	a.panes, _ = a.BVH.Segment(from, to, nil, a.panes[:0])
	for i := range a.panes {
		factor = factor.Times(a.panes[i].Factor)
	}
	return factor
}

// bounces is how finely reflected light is followed.
func (q Quality) bounces() radiosity.Quality {
	switch q {
	case Draft:
		return radiosity.Quality{Patch: 0.40, Links: 32, More: 4096, Point: 2048, Near: 0.5, Cell: 16, Looks: 2, Edge: 3e-3, Matters: 0.02, Noise: 3e-3, Lattice: 32}
	case Fine:
		return radiosity.Quality{Patch: 0.25, Links: 256, More: 1 << 17, Point: 32768, Near: 0.7, Cell: 512, Looks: 16, Edge: 3e-5, Matters: 1e-3, Noise: 1e-4, Lattice: 512}
	}
	return radiosity.Quality{Patch: 0.27, Links: 64, More: 1 << 14, Point: 8192, Near: 0.75, Cell: 64, Looks: 4, Edge: 5e-4, Matters: 4e-3, Noise: 1e-3, Lattice: 256}
}
