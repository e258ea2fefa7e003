package radiosity

import (
	"context"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/crew"
	"scrimshaw/plan/solid"
)

// first is what each element gets straight from a lamp, lx, channel by channel.
type first []float32

// straight asks a lamp what it gives to every patch; and once more, closely, where the edge of a shadow runs over one
// and shows in the whole.
func (t *Transport) straight(ctx context.Context, lamp Lamp) (first, []bool, error) {
	channels := t.Channels()
	out := make(first, 4*len(t.patches)*channels)
	edges := make([]float64, len(t.patches)) // lx that elements of a patch are apart
	strike := func(worker, s int, closely bool) {
		var e [4]colour.RGB
		edges[s] = t.strike(lamp, worker, s, &e, closely)
		for k := range e {
			for c := range channels {
				out[(4*s+k)*channels+c] = float32(e[k][c])
			}
		}
	}
	chunks := (len(t.patches) + chunk - 1) / chunk
	err := crew.Each(ctx, t.workers, chunks, func(worker, c int) {
		for s := max(1, c*chunk); s < min((c+1)*chunk, len(t.patches)); s++ {
			strike(worker, s, false)
		}
	})
	if err != nil {
		return nil, nil, err
	}
	again := t.edged(out, edges)
	err = crew.Each(ctx, t.workers, len(again), func(worker, i int) { strike(worker, again[i], true) })
	if err != nil {
		return nil, nil, err
	}
	t.balance(lamp, out)
	return out, t.uneven(out, edges), nil
}

// The share of the brightest element of a patch by which another must differ for the light within them to count as uneven:
// where the edge of a shadow may run over the patch, and where nothing shades it and the light falls off by itself, as
// beside the plane of a large lamp close by.
const (
	unlike = 0.05
	steep  = 0.3
)

// uneven says of each patch whether the light within its elements is uneven: by the edge of a shadow, or by itself.
func (t *Transport) uneven(straight first, edges []float64) []bool {
	channels := t.Channels()
	out := make([]bool, len(t.patches))
	for s, apart := range edges {
		var e [4]colour.RGB
		brightest := 0.0
		for k := range e {
			e[k][1] = float64(straight[(4*s+k)*channels+channels/2])
			brightest = max(brightest, e[k][1])
		}
		out[s] = apart > unlike*brightest || brightest > 0 && t.patches[s].differ(&e) > steep*brightest
	}
	return out
}

// edged lists the patches that the edge of a shadow may put off by more than their share: of the flux that comes
// straight to all patches, or of what single receptors read of it.
func (t *Transport) edged(straight first, edges []float64) (again []int) {
	channels := t.Channels()
	flux, read := 0.0, 0.0
	means := make([]float64, len(t.patches))
	for s := 1; s < len(t.patches); s++ {
		p := &t.patches[s]
		for k, a := range p.area {
			e := float64(straight[(4*s+k)*channels+channels/2])
			flux += a * e
			means[s] += e / 4
		}
		read += p.importance * means[s]
	}
	for s := range edges {
		t.stepTo(edges, means, s)
	}
	for s, off := range edges {
		if p := &t.patches[s]; off*p.whole() > t.quality.Edge*flux || off*p.importance > t.quality.Edge*read && off > 0 {
			again = append(again, s)
		}
	}
	return again
}

// stepTo raises how far a patch may be off to how far it is from its neighbours on the face, where something shades it:
// the edge of a shadow that runs along its rim leaves its own elements alike.
func (t *Transport) stepTo(edges, means []float64, s int) {
	p := &t.patches[s]
	if s == 0 || edges[s] < 0 {
		return
	}
	f := &t.mesh.faces[p.face]
	cell := int(p.number - f.first)
	x, y := cell%f.nu, cell/f.nu
	for _, side := range [...]struct {
		there bool
		step  int
	}{{x > 0, -1}, {x < f.nu-1, 1}, {y > 0, -f.nu}, {y < f.nv-1, f.nu}} {
		if side.there {
			if n := t.slots[int(p.number)+side.step]; n != 0 {
				edges[s] = max(edges[s], math.Abs(means[n]-means[s]))
			}
		}
	}
}

// whole is the area of a patch that lies in the air, m².
func (p *patch) whole() float64 { return p.area[0] + p.area[1] + p.area[2] + p.area[3] }

// balance brings what lands up to what was sent, where all of it lands: places asked one by one
// miss a little of it. Where they miss most, the light of a beam close before a surface, what rays from
// the lamp bring stands in its place.
func (t *Transport) balance(lamp Lamp, out first) {
	channels := t.Channels()
	type landed struct {
		element int
		part    colour.RGB
	}
	var brought []landed
	var flux colour.RGB
	all := lamp.Landing(func(h solid.Hit, at r3.Vec, part colour.RGB) bool {
		e := t.mesh.element(&h, at)
		slot := int(t.slots[e/4])
		brought = append(brought, landed{4*slot + t.patches[slot].lively(int(e&3)), part})
		flux = flux.Add(part)
		return slot != 0
	})
	if !all {
		return
	}
	for c := range channels {
		sum := 0.0
		for s := 1; s < len(t.patches); s++ {
			for k, a := range t.patches[s].area {
				sum += a * float64(out[(4*s+k)*channels+c])
			}
		}
		if sum > flux[c]/2 {
			for i := c; i < len(out); i += channels {
				out[i] *= float32(flux[c] / sum)
			}
			continue
		}
		for i := c; i < len(out); i += channels {
			out[i] = 0
		}
		for _, l := range brought {
			if a := t.patches[l.element/4].area[l.element&3]; a > 0 {
				out[l.element*channels+c] += float32(l.part[c] / a)
			}
		}
	}
}

// lively is an element of the patch, or where it has no area to speak of the one that has the most.
func (p *patch) lively(k int) int {
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

// strike asks for the light of one patch, by the parts of its elements that lie in the air, and gives how far they
// are apart where a shadow may have its edge, lx; less than nought where none may.
func (t *Transport) strike(lamp Lamp, worker, slot int, e *[4]colour.RGB, closely bool) (apart float64) {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	corners := f.rectangle(p.x, p.y, f.du, f.dv)
	sight := lamp.Aim(worker, corners[:], f.n)
	if sight == Dark {
		return -1
	}
	t.illuminate(lamp, worker, p, e, closely)
	if sight == Open {
		return -1
	}
	return p.differ(e)
}

// differ is how far the elements in the air are apart, lx.
func (p *patch) differ(e *[4]colour.RGB) float64 {
	low, high := math.Inf(1), 0.0
	for k, v := range e {
		if p.area[k] > 0 {
			low, high = min(low, v[1]), max(high, v[1])
		}
	}
	return max(0, high-low)
}

// illuminate finds the light of each element of the patch aimed at, lx.
func (t *Transport) illuminate(lamp Lamp, worker int, p *patch, e *[4]colour.RGB, closely bool) {
	f := &t.mesh.faces[p.face]
	for k := range e {
		if p.area[k] == 0 {
			continue
		}
		var flux colour.RGB
		for _, part := range p.inAir(f, k) {
			flux = flux.Add(lamp.Flux(worker, part, closely))
		}
		e[k] = flux.Scale(1 / p.area[k])
	}
}

// inAir are the parts of element k of a patch on the face that lie in the air.
func (p *patch) inAir(f *face, k int) [][]r3.Vec {
	if p.parts != nil {
		return p.parts[k]
	}
	whole := f.element4(p.x, p.y, k)
	return [][]r3.Vec{whole[:]}
}

// rectangle is the part of the face's rectangle from a corner on.
func (f *face) rectangle(x, y, width, height float64) [4]r3.Vec {
	return [4]r3.Vec{f.at(x, y), f.at(x+width, y), f.at(x+width, y+height), f.at(x, y+height)}
}

// element4 is the rectangle of element k of the patch whose corner is at x, y.
func (f *face) element4(x, y float64, k int) [4]r3.Vec {
	return f.rectangle(x+f.du/2*float64(k&1), y+f.dv/2*float64(k>>1), f.du/2, f.dv/2)
}

// bare finds the parts of the elements of a patch that lie on its face and in the air, and their areas.
func (e *eye) bare(f *face, p *patch) {
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
func (e *eye) parts(f *face, p *patch, k int, before r3.Vec) (parts [][]r3.Vec, size float64, cut bool) {
	element := f.element4(p.x, p.y, k)
	whole, cut := e.onFace(f, element[:])
	if whole == nil {
		return nil, 0, true
	}
	for i := range whole {
		whole[i] = r3.Add(whole[i], before)
	}
	all := e.view.Bare(whole, e.near)
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

// leastPart is the share of a patch below which a part of it counts for nothing.
const leastPart = 1e-9

// onFace cuts a figure at the outline of its face.
func (e *eye) onFace(f *face, figure []r3.Vec) (on []r3.Vec, cut bool) {
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

// clearance is how far before a face it is asked, m, whether a place lies inside a solid.
const clearance = 1e-5

// alive says whether a place is on the face and in the air.
func (t *Transport) alive(f *face, x, y float64, at r3.Vec) bool {
	if !f.holds(x, y) {
		return false
	}
	_, inside := t.mesh.bvh.Inside(r3.Add(at, r3.Scale(clearance, f.n)))
	return !inside
}
