package radiosity

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/raster"
	"scrimshaw/plan/solid"
)

// depthBuffer draws what the points of a view see along one direction. It keeps its memory from one
// to the next.
type depthBuffer struct {
	m           *mesh
	tracer      *tracer
	skip        []solid.ID
	faces       []int32  // that are there
	inView      []facing // those of them that the points of a view may see
	panes       []int
	number      int // of the direction, by which rays pass a cloth or end there
	depth       []float32
	seen        []int32 // face, -1 for none
	corners     []vertex
	cut         []vertex
	outlined    []r2.Vec // corners, without how far they lie
	spans       raster.Spans
	passed      []bool // by point: whether its ray may pass a pane
	crossing    []solid.Pane
	hits        []uint32     // of one direction
	elementMaps []elementMap // by face
	round       int          // of directions: an element map of an earlier one is out of date
	index       elementIndex
	beyond      uint32 // what the points see along one direction where nothing is
	most        int    // elements of an item buffer, to make room for
}

// vertex is a corner on the lattice, and how far along the ray it lies.
type vertex struct{ x, y, t float64 }

// touchingDepth is the distance, m, up to which a face is touched, not seen.
const touchingDepth = 1e-7

// depthMargin is how much before its end, m, a ray is asked what it has passed: depths are single
// precision.
const depthMargin = 1e-4

func newDepthBuffer(m *mesh, skip []solid.ID) *depthBuffer {
	p := &depthBuffer{m: m, tracer: newTracer(m), skip: skip, elementMaps: make([]elementMap, len(m.faces)), index: elementIndex{make([]int32, 4*m.count), map[uint32]int32{}}}
	for i := range m.faces {
		if !slices.Contains(skip, m.faces[i].id) {
			p.faces = append(p.faces, int32(i))
		}
	}
	for i := range m.panes {
		if !slices.Contains(skip, m.panes[i].id) {
			p.panes = append(p.panes, i)
		}
	}
	return p
}

// render fills in the elements that the points see along d.
func (p *depthBuffer) render(v *view, d r3.Vec, hits []uint32) {
	c, ok := v.project(d)
	if !ok {
		clear(hits)
		return
	}
	p.reset(v)
	p.beyond = p.m.beyond.element(d)
	for k := range p.inView {
		f := &p.inView[k]
		if f.n.X*d.X+f.n.Y*d.Y+f.n.Z*d.Z < -1e-9 && !(f.cloth && p.m.veils[p.m.faces[f.number].id].passes(onFirst(p.number))) && p.outline(&c, f.corners) {
			p.drawFace(v, f.number)
		}
	}
	through := false
	for _, i := range p.panes {
		if v, is := p.m.veils[p.m.panes[i].id]; is && !v.passes(onFirst(p.number)) {
			continue
		}
		if p.outline(&c, p.m.panes[i].corners) && p.drawPane(v) {
			through = true
		}
	}
	p.elements(v, d, hits)
	if len(p.m.mirrors) > 0 {
		p.tracer.number = p.number
		p.tracer.reflect(v, d, p.seen, p.skip, hits)
	}
	if through {
		p.filter(v, d, hits)
	}
}

func (p *depthBuffer) reset(v *view) {
	n := v.nu * v.nv
	p.depth, p.seen = slices.Grow(p.depth[:0], n)[:n], slices.Grow(p.seen[:0], n)[:n]
	for i := range p.depth {
		p.depth[i] = math.MaxFloat32
		p.seen[i] = -1
	}
	p.spans.Resize(v.nu, v.nv)
	if len(p.panes) > 0 {
		p.passed = slices.Grow(p.passed[:0], n)[:n]
		clear(p.passed)
	}
}

// outline sets p.corners to a polygon on the lattice, as far as it lies before the points.
func (p *depthBuffer) outline(c *projection, corners []r3.Vec) bool {
	p.corners = p.corners[:0]
	near, far := math.Inf(1), math.Inf(-1)
	for _, q := range corners {
		s := vertex{c.x.at(q), c.y.at(q), c.t.at(q)}
		near, far = min(near, s.t), max(far, s.t)
		p.corners = append(p.corners, s)
	}
	if far <= touchingDepth {
		return false
	}
	if near < touchingDepth {
		p.clip()
	}
	return len(p.corners) >= 3
}

// clip cuts off what lies behind the points.
func (p *depthBuffer) clip() {
	p.cut = p.cut[:0]
	last := p.corners[len(p.corners)-1]
	for _, s := range p.corners {
		if (s.t >= touchingDepth) != (last.t >= touchingDepth) {
			k := (touchingDepth - last.t) / (s.t - last.t)
			p.cut = append(p.cut, vertex{last.x + k*(s.x-last.x), last.y + k*(s.y-last.y), touchingDepth})
		}
		if s.t >= touchingDepth {
			p.cut = append(p.cut, s)
		}
		last = s
	}
	p.corners, p.cut = p.cut, p.corners
}

// scanConvert finds the spans of p.corners.
func (p *depthBuffer) scanConvert(v *view) (first, last int) {
	p.outlined = p.outlined[:0]
	for _, s := range p.corners {
		p.outlined = append(p.outlined, r2.Vec{X: s.x, Y: s.y})
	}
	return p.spans.Scan(p.outlined, 0, v.nv)
}

// depthPlane is the distance over a polygon as it runs over the lattice.
func (p *depthBuffer) depthPlane() (t, dx, dy float64) {
	o := p.corners[0]
	most := 0.0
	for i := 2; i < len(p.corners); i++ {
		a, b := p.corners[i-1], p.corners[i]
		det := (a.x-o.x)*(b.y-o.y) - (a.y-o.y)*(b.x-o.x)
		if math.Abs(det) <= most {
			continue
		}
		most = math.Abs(det)
		dx = ((a.t-o.t)*(b.y-o.y) - (a.y-o.y)*(b.t-o.t)) / det
		dy = ((a.x-o.x)*(b.t-o.t) - (a.t-o.t)*(b.x-o.x)) / det
	}
	return o.t - dx*o.x - dy*o.y, dx, dy
}

// drawFace draws p.corners, a part of face i, where nothing nearer is.
func (p *depthBuffer) drawFace(v *view, i int32) {
	first, last := p.scanConvert(v)
	if first >= last {
		return
	}
	t, dx, dy := p.depthPlane()
	step := float32(dx)
	for j := first; j < last; j++ {
		from, to := int(p.spans.Left[j]), int(p.spans.Right[j])
		if from >= to {
			continue
		}
		depth, seen := p.depth[j*v.nu+from:j*v.nu+to], p.seen[j*v.nu+from:j*v.nu+to]
		at := float32(t + dy*float64(j) + dx*float64(from))
		for n := range depth {
			if d := at + step*float32(n); d < depth[n] {
				depth[n], seen[n] = d, i
			}
		}
	}
}

// drawPane notes the points whose rays pass p.corners, a pane, before what they see.
func (p *depthBuffer) drawPane(v *view) (any bool) {
	first, last := p.scanConvert(v)
	if first >= last {
		return false
	}
	t, dx, dy := p.depthPlane()
	for j := first; j < last; j++ {
		for i := int(p.spans.Left[j]); i < int(p.spans.Right[j]); i++ {
			n := j*v.nu + i
			if (p.seen[n] >= 0 || p.beyond != black) && float32(t+dy*float64(j)+dx*float64(i)) < p.depth[n] {
				p.passed[n] = true
				any = true
			}
		}
	}
	return any
}

// elements finds the elements where the rays end, run by run of points that see one face.
func (p *depthBuffer) elements(v *view, d r3.Vec, hits []uint32) {
	p.round++
	for j := range v.nv {
		row, ends := p.seen[j*v.nu:(j+1)*v.nu], hits[j*v.nu:(j+1)*v.nu]
		for i := 0; i < len(row); {
			k, from := row[i], i
			for i++; i < len(row) && row[i] == k; i++ {
			}
			if k < 0 {
				for n := from; n < i; n++ {
					ends[n] = p.beyond
				}
				continue
			}
			q := &p.elementMaps[k]
			if q.round != p.round {
				*q = newElementMap(&p.m.faces[k], v, d, p.round)
			}
			q.elements(ends[from:i], from, j)
		}
	}
}

// filter renames the elements that are seen through panes.
func (p *depthBuffer) filter(v *view, d r3.Vec, hits []uint32) {
	for n, may := range p.passed {
		if !may || p.seen[n] >= 0 && p.m.faces[p.seen[n]].specular.goesOn(onFirst(p.number)) {
			continue
		}
		o := v.at(n)
		far := horizon
		if p.seen[n] >= 0 {
			far = float64(p.depth[n]) - depthMargin
		}
		end := r3.Add(o, r3.Scale(far, d))
		p.crossing, _ = p.m.bvh.Segment(o, end, p.skip, p.crossing[:0])
		if len(p.crossing) > 0 {
			settle(p.crossing, p.m.veils, p.m.glass, onFirst(p.number))
			hits[n] = p.m.seen.behind(hits[n], p.crossing, false)
		}
	}
}
