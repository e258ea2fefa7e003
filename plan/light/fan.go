package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// The edge between two surfaces is found to crisp, by so many halvings of a fan's step at most.
const (
	crisp     = 0.005 // m
	deepSplit = 24
)

// fan is a family of rays that runs from s = 0 to s = 1.
type fan struct {
	w      *World
	limits Limits
	ray    func(s float64) (o, d r3.Vec)
	flat   bool // all in one plane: what one face cuts off lies on a line
}

// rayEnd is where a ray of a fan ends, and on what.
type rayEnd struct {
	s      float64
	o, d   r3.Vec
	t      float64
	id     solid.ID
	normal r3.Vec
	open   bool // on nothing
}

// at is the place.
func (e *rayEnd) at() r2.Vec { return r2.Vec{X: e.o.X + e.t*e.d.X, Y: e.o.Y + e.t*e.d.Y} }

// sameFace says whether two rays end on the same face.
func (e *rayEnd) sameFace(g *rayEnd) bool {
	return e.open == g.open && e.id == g.id && r3.Norm2(r3.Sub(e.normal, g.normal)) < 1e-18
}

// trace traces one ray.
func (f *fan) trace(s float64) rayEnd {
	o, d := f.ray(s)
	e := rayEnd{s: s, o: o, d: d, t: f.limits.Reach, open: true}
	if drop := o.Z - f.limits.Floor; d.Z < 0 && drop > 0 && drop < -d.Z*e.t {
		e.t, e.open, e.normal = drop/-d.Z, false, r3.Vec{Z: 1}
	}
	if h, ok := f.w.firstStop(o, d); ok && h.T < e.t {
		e.t, e.id, e.normal, e.open = h.T, h.ID, h.Normal, false
	}
	return e
}

// firstStop is where a ray ends that is drawn: on what is opaque, and on a cloth that scatters more than it lets straight on.
func (w *World) firstStop(o, d r3.Vec) (solid.Hit, bool) {
	if len(w.scattering) == 0 {
		return w.bvh.FirstOpaque(o, d, w.slender)
	}
	passed := slices.Clone(w.slender)
	for {
		h, ok := w.bvh.First(o, d, passed)
		if !ok || !h.Skin.Clear() || h.Skin.Diffuse.Y() > h.Skin.Direct.Y() {
			return h, ok
		}
		passed = append(passed, h.ID)
	}
}

// ends traces steps + 1 rays, and more between neighbours that end on different faces.
func (f *fan) ends(steps int) []rayEnd {
	steps = max(steps, 1)
	ends := []rayEnd{f.trace(0)}
	for i := 1; i <= steps; i++ {
		next := f.trace(float64(i) / float64(steps))
		ends = f.between(ends, next, deepSplit)
	}
	return ends
}

// outline is where the rays end in plan, without those in the middle of a straight line.
func (f *fan) outline(steps int) []r2.Vec {
	ends := f.ends(steps)
	var out []r2.Vec
	for i := range ends {
		inner := f.flat && !ends[i].open && i > 0 && i+1 < len(ends)
		if inner && ends[i].sameFace(&ends[i-1]) && ends[i].sameFace(&ends[i+1]) {
			continue
		}
		out = append(out, ends[i].at())
	}
	return out
}

// between appends next and, before it, rays between the last one and next where they end on
// different faces.
func (f *fan) between(ends []rayEnd, next rayEnd, depth int) []rayEnd {
	last := ends[len(ends)-1]
	far := math.Max(last.t, next.t)
	gap := r3.Sub(r3.Add(last.o, r3.Scale(far, last.d)), r3.Add(next.o, r3.Scale(far, next.d)))
	if depth == 0 || last.sameFace(&next) || r3.Norm(gap) <= crisp {
		return append(ends, next)
	}
	ends = f.between(ends, f.trace((last.s+next.s)/2), depth-1)
	return f.between(ends, next, depth-1)
}

func inPlan(p r3.Vec) r2.Vec { return r2.Vec{X: p.X, Y: p.Y} }

// Limits end a ray that meets nothing.
type Limits struct {
	Floor float64 // z of the lowest floor, m
	Reach float64 // m
}
