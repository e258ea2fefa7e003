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

// bounced is a lamp as the surfaces of the set see it: what it gives straight to a place, from one
// point of its opening at a time.
type bounced struct {
	w       *World
	l       *lamp
	points  []r3.Vec // of the opening, in an order of which every part is spread over all of it
	coarse  []node   // the rule that the light of the whole opening is summed by
	distant []node   // and that from farther off than three times its size
	slender float64  // metres of light that changes little, per metre from the lamp
	faint   float64  // cd below which nothing is followed
	tracers []tracer
}

// The share of the distance that a surface is looked at in, and the share of the peak intensity
// that is still followed.
const (
	wideGrain = 0.3
	faintest  = 1e-6
)

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
	b := &bounced{w: w, l: l, tracers: make([]tracer, crew.Size(w.workers, math.MaxInt))}
	for i := range b.tracers {
		b.tracers[i].bvh = w.bvh
	}
	b.points = stirred(l.points)
	if b.points == nil {
		b.points = []r3.Vec{l.at}
	}
	b.coarse = l.nodes(l.opening.Largest(), coarsely())
	b.distant = l.fewest()
	peak := photometry.Peak(l.shape)
	b.faint = faintest * l.flux * peak
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

// Grain implements radiosity.Lamp.
func (b *bounced) Grain(at r3.Vec) float64 {
	l := b.l
	if l.flux == 0 || l.onesided && r3.Dot(r3.Sub(at, l.at), l.axis) < -1 { // 1 m: more than a patch
		return 0
	}
	return b.slender*math.Sqrt(l.distance2(at)) + l.opening.Largest()/8
}

// Light implements radiosity.Lamp.
func (b *bounced) Light(worker, sample int, at, normal r3.Vec) (e colour.RGB, hidden bool) {
	value := b.whole(&Receptor{At: at, Axis: normal})
	if value <= 0 {
		return e, false
	}
	t := &b.tracers[worker]
	panes, blocked := b.w.bvh.Segment(b.points[sample%len(b.points)], at, nil, t.panes[:0])
	t.panes = panes
	if blocked {
		return e, true
	}
	e = colour.RGB{value, value, value}
	for i := range panes {
		e = e.Times(panes[i].Factor)
	}
	return e, false
}

// whole is what a surface gets where nothing hides the lamp: close to it by closed form or piece by piece, and
// else by a short rule.
func (b *bounced) whole(r *Receptor) float64 {
	l := b.l
	size := l.opening.Largest()
	square := r3.Norm2(r3.Sub(r.At, l.at))
	if size > 0 && (l.lambertian && square < 4*size*size || l.pieces != nil && square < 9*size*size) {
		return l.full(r, coarsely())
	}
	if size == 0 && l.intensity(r3.Scale(1/math.Sqrt(square), r3.Sub(r.At, l.at))) < b.faint {
		return 0
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

// The rays by which the landing of a lamp is found: rings about its axis, closer to it by equal
// ratios, and rays in each.
const (
	landRings  = 48
	landRound  = 48
	landSmall  = 1e-3 // of a half turn: the innermost ring
	landLeak   = 2e-3 // of the flux that may miss: a ray may slip through the rim of two sheets
	landStride = 29   // of the points of the opening from ray to ray
)

// Landing implements radiosity.Lamp.
func (b *bounced) Landing(land func(h solid.Hit, at r3.Vec, flux colour.RGB) bool) (all bool) {
	l, t := b.l, &b.tracers[0]
	sent := b.rings(func(_, _ r3.Vec, weight float64) bool { return true })
	if sent == 0 {
		return false
	}
	scale := l.flux / sent
	missed := 0.0
	b.rings(func(o, d r3.Vec, weight float64) bool {
		hit, ok := b.w.bvh.FirstOpaque(o, d, nil)
		at := r3.Add(o, r3.Scale(hit.T, d))
		if !ok || !land(hit, at, b.passed(t, o, at).Scale(weight*scale)) {
			missed += weight
		}
		return missed <= landLeak*sent
	})
	return missed <= landLeak*sent
}

// rings sends rays out of the lamp, each with a weight by the intensity, until ray says no, and gives the
// sum of the weights.
func (b *bounced) rings(ray func(o, d r3.Vec, weight float64) bool) (sum float64) {
	l := b.l
	inner := 0.0
	for i := range landRings {
		outer := math.Pi * math.Pow(landSmall, 1-float64(i+1)/landRings)
		sin, cos := math.Sincos((inner + outer) / 2)
		angle := (math.Cos(inner) - math.Cos(outer)) / landRound // solid, sr
		inner = outer
		for k := range landRound {
			s, c := math.Sincos(2 * math.Pi * (float64(k) + 0.5*float64(i%2)) / landRound)
			side := r3.Add(r3.Scale(c, l.right), r3.Scale(s, l.up))
			d := r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side))
			weight := l.intensity(d) * angle
			if weight <= 0 {
				continue
			}
			sum += weight
			if !ray(b.points[(i*landRound+k)*landStride%len(b.points)], d, weight) {
				return sum
			}
		}
	}
	return sum
}

// passed is what clear sheets leave on the way between two points.
func (b *bounced) passed(t *tracer, from, to r3.Vec) colour.RGB {
	factor := colour.RGB{1, 1, 1}
	t.panes, _ = b.w.bvh.Segment(from, to, nil, t.panes[:0])
	for i := range t.panes {
		factor = factor.Times(t.panes[i].Factor)
	}
	return factor
}

// bounces is how finely reflected light is followed.
func (q Quality) bounces() radiosity.Quality {
	switch q {
	case Draft:
		return radiosity.Quality{Patch: 0.40, Links: 32, Point: 2048, Lattice: 32}
	case Fine:
		return radiosity.Quality{Patch: 0.25, Links: 256, Point: 32768, Lattice: 512, Refine: 4}
	}
	return radiosity.Quality{Patch: 0.27, Links: 64, Point: 8192, Lattice: 256, Refine: 3}
}
