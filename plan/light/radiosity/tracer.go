package radiosity

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// tracer follows rays. It keeps its memory from one to the next.
type tracer struct {
	m      *mesh
	choice hotChoice
	panes  []solid.Pane // and mirrors that the ray has passed, with what each leaves
	view   solid.Viewer
	near   []int32
	own    box // round the solids that are not there for its rays

	stopper solid.Stopper // of the last look at what is hot

	mirrors int // that the ray has met
	number  int // of the next ray, by which it passes a cloth or ends there
	skipped []solid.ID

	at      r3.Vec // where the last ray has ended
	element uint32 // and on what, whatever it passed
}

func newTracer(m *mesh) *tracer { return &tracer{m: m, view: solid.Viewer{BVH: m.bvh}} }

// trace gives the element that a ray meets, straight or by mirrors; not ok where it starts inside a solid.
func (e *tracer) trace(o, d r3.Vec, skip []solid.ID) (element uint32, ok bool) {
	e.panes, e.mirrors = e.panes[:0], 0
	for {
		hit, met, through := e.first(o, d, skip)
		if !met {
			at := r3.Add(o, r3.Scale(horizon, d))
			return e.behind(e.m.beyond.element(d), o, at, skip, through), true
		}
		if hit.T == 0 {
			return black, false
		}
		at := r3.Vec{X: o.X + hit.T*d.X, Y: o.Y + hit.T*d.Y, Z: o.Z + hit.T*d.Z}
		if len(skip) > 0 && e.buried(at, hit.Normal) {
			return black, true
		}
		to, factor, goesOn := e.m.mirrors.meet(&hit, d, e.now())
		if !goesOn {
			return e.behind(e.m.element(&hit, at), o, at, skip, through), true
		}
		e.pass(o, at, skip, through)
		if !e.goOn(hit.ID, factor) {
			return black, true
		}
		o, d = at, to
	}
}

// now is where the ray decides what it passes.
func (e *tracer) now() moment { return moment{e.number, e.m.stretches[e.mirrors]} }

// goOn notes a mirror that leaves a part of what a ray brings; not where nothing is left, or the ray has met too many.
func (e *tracer) goOn(mirror solid.ID, factor colour.RGB) bool {
	e.mirrors++
	e.panes = append(e.panes, solid.Pane{ID: mirror, Ahead: factor, Ratio: 1})
	return e.mirrors <= mostMirrors && factor != colour.RGB{}
}

// first is what a ray meets first that it does not pass, and whether it may pass something before that.
func (e *tracer) first(o, d r3.Vec, skip []solid.ID) (hit solid.Hit, met, through bool) {
	hit, met = e.m.bvh.First(o, d, skip)
	if through = met && hit.Skin.Clear(); through {
		hit, met = e.past(o, d, skip, hit)
	}
	return hit, met, through
}

// reflect follows the rays of a drawing on that have met mirrors: those of the points of a view along a direction, by the faces
// that they have met.
func (e *tracer) reflect(v *view, d r3.Vec, seen []int32, skip []solid.ID, hits []uint32) {
	for n, k := range seen {
		if k >= 0 && e.m.faces[k].specular.goesOn(onFirst(e.number)) {
			hits[n], _ = e.trace(v.at(n), d, skip)
		}
	}
}

// past is what a ray meets that meets a clear sheet first.
func (e *tracer) past(o, d r3.Vec, skip []solid.ID, hit solid.Hit) (solid.Hit, bool) {
	m := e.m
	if len(m.veils) == 0 {
		return m.bvh.FirstOpaque(o, d, skip)
	}
	e.skipped = append(e.skipped[:0], skip...)
	for met := true; ; hit, met = m.bvh.First(o, d, e.skipped) {
		if !met || !hit.Skin.Clear() {
			return hit, met
		}
		if v, is := m.veils[hit.ID]; is && !v.passes(e.now()) {
			return hit, true
		}
		e.skipped = append(e.skipped, hit.ID)
	}
}

// behind notes where a ray has ended and on what, and gives the element as it is seen through the clear sheets on the way;
// through says whether there are any.
func (e *tracer) behind(element uint32, o, at r3.Vec, skip []solid.ID, through bool) uint32 {
	e.at, e.element = at, element
	if element == black {
		return element
	}
	e.pass(o, at, skip, through)
	if len(e.panes) > 0 {
		return e.m.seen.behind(element, e.panes, e.mirrors > 0)
	}
	return element
}

// pass notes the clear sheets on a stretch of a ray, where there are any.
func (e *tracer) pass(o, at r3.Vec, skip []solid.ID, through bool) {
	if !through {
		return
	}
	first := len(e.panes)
	e.panes, _ = e.m.bvh.Segment(o, at, skip, e.panes)
	settle(e.panes[first:], e.m.veils, e.m.glass, e.now())
}

// buried says whether a place that a ray has met lies in a solid that is not there for the ray: the floor
// under one's own feet gets no light.
func (e *tracer) buried(at, normal r3.Vec) bool {
	if at.X < e.own.low.X || at.X > e.own.high.X || at.Y < e.own.low.Y || at.Y > e.own.high.Y || at.Z < e.own.low.Z || at.Z > e.own.high.Z {
		return false
	}
	_, inside := e.m.bvh.Inside(r3.Add(at, r3.Scale(clearance, normal)))
	return inside
}

// findExposed finds the parts of the elements of a patch that lie on its face and in the air, and their areas.
func (e *tracer) findExposed(f *face, p *patch) {
	for k := range p.area {
		p.area[k] = f.du * f.dv / 4
	}
	before := r3.Scale(clearance, f.n)
	corners := f.rectangle(p.x, p.y, f.du, f.dv)
	for i := range corners {
		corners[i] = r3.Add(corners[i], before)
	}
	lifted := solid.NewBoxShaft(corners[:])
	e.near = e.m.bvh.Between(&lifted, nil, e.near[:0])
	if len(e.near) == 0 && f.outline == nil {
		return
	}
	parts, cut := new([4][][]r3.Vec), false
	var areas [4]float64
	for k := range areas {
		var some bool
		parts[k], areas[k], some = e.parts(f, p, k, before)
		cut = cut || some
	}
	if cut {
		p.parts, p.area = parts, areas
	}
}

// parts are those of one element, and whether they are less than all of it.
func (e *tracer) parts(f *face, p *patch, k int, before r3.Vec) (parts [][]r3.Vec, size float64, cut bool) {
	element := f.element4(p.x, p.y, k)
	whole, cut := e.onFace(f, element[:])
	if whole == nil {
		return nil, 0, true
	}
	for i := range whole {
		whole[i] = r3.Add(whole[i], before)
	}
	all := e.view.Exposed(whole, e.near)
	for _, g := range all {
		part := make([]r3.Vec, len(g.Corners))
		for i, c := range g.Corners {
			part[i] = r3.Sub(c, before)
		}
		if a := r3.Norm(area(part)); a > leastPart*f.du*f.dv {
			parts = append(parts, part)
			size += a
		}
	}
	return parts, size, cut || len(all) != 1 || all[0].Cut
}

// onFace cuts a figure at the outline of its face.
func (e *tracer) onFace(f *face, figure []r3.Vec) (on []r3.Vec, cut bool) {
	e.view.Reset()
	for i := range f.outline {
		a, c := f.corners[i], f.corners[(i+1)%len(f.corners)]
		n := r3.Cross(r3.Sub(c, a), f.n)
		length := r3.Norm(n)
		if length == 0 {
			continue
		}
		n = r3.Scale(1/length, n)
		h := solid.Plane{N: n, C: r3.Dot(n, a)}
		if e.view.Clip(figure, &h, 1) == nil {
			continue
		}
		cut = true
		if figure = e.view.Clip(figure, &h, -1); figure == nil {
			return nil, true
		}
	}
	return append([]r3.Vec(nil), figure...), cut
}

// leastPart is the share of a patch below which a part of it counts for nothing.
const leastPart = 1e-9
