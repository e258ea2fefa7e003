package frame_test

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
)

// brute looks at a set-up by rays through a grid of the frame, and by a homogeneous matrix: in ways that share nothing with
// the package.
type brute struct {
	setup  *plan.Setup
	matrix [4][4]float64 // from the plan to the frame, -1 to 1, and its depth
	at     r3.Vec
	camera *plan.Camera
	across r3.Vec // from the middle of the frame to its right edge, 1 m before the lens
	over   r3.Vec // and to its upper edge
}

func newBrute(s *plan.Setup, c *plan.Camera) *brute {
	b := &brute{setup: s, camera: c, at: c.Frame.At}
	a, r := c.Frame.Axis, c.Frame.Right
	u := r3.Cross(r, a)
	tan := func(degrees float64) float64 { return math.Tan(degrees * math.Pi / 360) }
	b.across, b.over = r3.Scale(tan(c.HAOV), r), r3.Scale(tan(c.VAOV), u)
	view := [4][4]float64{{r.X, r.Y, r.Z, -r3.Dot(r, b.at)}, {u.X, u.Y, u.Z, -r3.Dot(u, b.at)}, {a.X, a.Y, a.Z, -r3.Dot(a, b.at)}, {0, 0, 0, 1}}
	lens := [4][4]float64{{1 / tan(c.HAOV)}, {0, 1 / tan(c.VAOV)}, {0, 0, 1}, {0, 0, 1}}
	for i := range 4 {
		for k := range 4 {
			for m := range 4 {
				b.matrix[i][k] += lens[i][m] * view[m][k]
			}
		}
	}
	return b
}

// clip is a place in homogeneous coordinates of the frame.
func (b *brute) clip(p r3.Vec) (out [4]float64) {
	in := [4]float64{p.X, p.Y, p.Z, 1}
	for i := range 4 {
		for k := range 4 {
			out[i] += b.matrix[i][k] * in[k]
		}
	}
	return out
}

// window is a part of the frame, from -1 to 1.
type window struct{ x0, x1, y0, y1 float64 }

// windowOf is the part of the frame that holds a body; the whole where some of it lies behind the lens.
func (b *brute) windowOf(points []r3.Vec) window {
	w := window{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	for _, p := range points {
		c := b.clip(p)
		if c[3] < 0.01 {
			return window{-1, 1, -1, 1}
		}
		x, y := c[0]/c[3], c[1]/c[3]
		w.x0, w.x1, w.y0, w.y1 = min(w.x0, x), max(w.x1, x), min(w.y0, y), max(w.y1, y)
	}
	return w.and(window{-1, 1, -1, 1})
}

func (w window) and(o window) window {
	return window{max(w.x0, o.x0), min(w.x1, o.x1), max(w.y0, o.y0), min(w.y1, o.y1)}
}

func (w window) or(o window) window {
	return window{min(w.x0, o.x0), max(w.x1, o.x1), min(w.y0, o.y0), max(w.y1, o.y1)}
}

func (w window) empty() bool { return w.x0 >= w.x1 || w.y0 >= w.y1 }

// ray is the direction of the ray through a point of the frame.
func (b *brute) ray(x, y float64) r3.Vec {
	return r3.Add(b.camera.Frame.Axis, r3.Add(r3.Scale(x, b.across), r3.Scale(y, b.over)))
}

// pointsOf are the places that hold a body between them.
func pointsOf(body *frame.Body) (all []r3.Vec) {
	for _, f := range body.Faces {
		all = append(all, f...)
	}
	if r := body.Radius; r > 0 {
		for i := range 8 {
			s := func(bit int) float64 { return r * float64(1-2*(i>>bit&1)) }
			all = append(all, r3.Add(body.Middle, r3.Vec{X: s(0), Y: s(1), Z: s(2)}))
		}
	}
	return all
}

// onBall is how far along a ray it first meets a ball, in the ray's own length; infinite where it does not.
func (b *brute) onBall(body *frame.Body, d r3.Vec) float64 {
	m := r3.Sub(body.Middle, b.at)
	half, square := r3.Dot(m, d)/r3.Norm2(d), (r3.Norm2(m)-body.Radius*body.Radius)/r3.Norm2(d)
	switch left := half*half - square; {
	case left > 0 && square > 0 && half > 0:
		return half - math.Sqrt(left)
	case square <= 0: // from within
		return half + math.Sqrt(left)
	}
	return math.Inf(1)
}

// onTriangle is how far along a ray it meets a triangle (T. Möller and B. Trumbore, Fast, Minimum Storage Ray/Triangle
// Intersection, 1997).
func onTriangle(o, d, a, p, q r3.Vec) float64 {
	e1, e2 := r3.Sub(p, a), r3.Sub(q, a)
	h := r3.Cross(d, e2)
	det := r3.Dot(e1, h)
	if math.Abs(det) < 1e-14 {
		return math.Inf(1)
	}
	s := r3.Sub(o, a)
	u := r3.Dot(s, h) / det
	k := r3.Cross(s, e1)
	v := r3.Dot(d, k) / det
	t := r3.Dot(e2, k) / det
	if u < 0 || v < 0 || u+v > 1 || t <= 1e-9 {
		return math.Inf(1)
	}
	return t
}

// blind is what may stand before a thing: a prism by its sides, or a sheet.
type blind struct {
	planes [][2]r3.Vec // outward normals and points
	sheet  []r3.Vec
}

// blinds are the solids of the set that may hide something in a part of the frame. Equipment hides nothing, nor does what passes
// more light straight than scattered.
func (b *brute) blinds(w window) (all []blind) {
	for i := range b.setup.Set.Prisms {
		p := &b.setup.Set.Prisms[i]
		var points []r3.Vec
		one := blind{planes: [][2]r3.Vec{{{Z: 1}, {Z: p.Z1}}, {{Z: -1}, {Z: p.Z0}}}}
		for k, c := range p.Base {
			n := p.Base[(k+1)%len(p.Base)]
			points = append(points, r3.Vec{X: c.X, Y: c.Y, Z: p.Z0}, r3.Vec{X: c.X, Y: c.Y, Z: p.Z1})
			one.planes = append(one.planes, [2]r3.Vec{{X: n.Y - c.Y, Y: c.X - n.X}, {X: c.X, Y: c.Y}})
		}
		if !b.windowOf(points).and(w).empty() {
			all = append(all, one)
		}
	}
	for i := range b.setup.Set.Sheets {
		s := &b.setup.Set.Sheets[i]
		name, _, _ := strings.Cut(s.Name, ".")
		if b.setup.LightNamed(name) == nil && b.setup.GripNamed(name) == nil && s.Front.Direct.Y() <= s.Front.Diffuse.Y() && !b.windowOf(s.Corners).and(w).empty() {
			all = append(all, blind{sheet: s.Corners})
		}
	}
	return all
}

// before says whether a solid stops a ray before a distance along it.
func (s *blind) before(o, d r3.Vec, far float64) bool {
	if s.sheet != nil {
		for i := 1; i+1 < len(s.sheet); i++ {
			if onTriangle(o, d, s.sheet[0], s.sheet[i], s.sheet[i+1]) < far*(1-1e-9) {
				return true
			}
		}
		return false
	}
	in, out := 0.0, far*(1-1e-9)
	for _, h := range s.planes {
		height, slope := r3.Dot(h[0], r3.Sub(o, h[1])), r3.Dot(h[0], d)
		switch {
		case slope == 0 && height > 0:
			return false
		case slope > 0:
			out = min(out, -height/slope)
		case slope < 0:
			in = max(in, -height/slope)
		}
	}
	return in < out
}

// How many rays have to see a thing for its share to be known to well below a percent, how many meet it at most, and how fine
// a grid is that none of them sees it by: four of a million rays of the frame are one of its.
const (
	enoughRays = 8000
	mostRays   = 160000
	noneRays   = 640
)

// share is what a thing takes of the frame past the set, by rays: more of them where few meet it.
func (b *brute) share(bodies []frame.Body) float64 {
	all := window{math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)}
	for i := range bodies {
		if w := b.windowOf(pointsOf(&bodies[i])); !w.empty() {
			all = all.or(w)
		}
	}
	if all.empty() {
		return 0
	}
	blinds := b.blinds(all)
	share := 0.0
	for n := 160; n <= 2560; n *= 2 {
		g := &grid{brute: b, w: all, n: n, first: map[int]float64{}}
		for i := range bodies {
			g.meet(&bodies[i])
		}
		hits := 0
		for i, far := range g.first {
			if !b.hidden(blinds, g.ray(i%n, i/n), far) {
				hits++
			}
		}
		share = float64(hits) / float64(n*n) * (all.x1 - all.x0) * (all.y1 - all.y0) / 4
		if hits >= enoughRays || len(g.first) >= mostRays || hits == 0 && n >= noneRays {
			break
		}
	}
	return share
}

func (b *brute) hidden(blinds []blind, d r3.Vec, far float64) bool {
	for i := range blinds {
		if blinds[i].before(b.at, d, far) {
			return true
		}
	}
	return false
}

// grid is n by n rays through a part of the frame, and how far each goes to what it first meets.
type grid struct {
	*brute
	w     window
	n     int
	first map[int]float64
}

func (g *grid) ray(x, y int) r3.Vec {
	return g.brute.ray(g.w.x0+(g.w.x1-g.w.x0)*(float64(x)+0.5)/float64(g.n), g.w.y0+(g.w.y1-g.w.y0)*(float64(y)+0.5)/float64(g.n))
}

// cells are the first and the last cell whose middles lie between two places of the frame, and one more at each end.
func (g *grid) cells(low, high, from, to float64) (first, last int) {
	cell := func(v float64) float64 { return (v-from)/(to-from)*float64(g.n) - 0.5 }
	return int(max(0, math.Floor(cell(low))-1)), int(min(float64(g.n-1), math.Ceil(cell(high))+1))
}

// meet sends rays to a body.
func (g *grid) meet(body *frame.Body) {
	if body.Radius > 0 {
		w := g.windowOf(pointsOf(body))
		g.meetWithin(w, func(d r3.Vec) float64 { return g.onBall(body, d) })
	}
	for _, f := range body.Faces {
		for i := 1; i+1 < len(f); i++ {
			g.meetTriangle([3]r3.Vec{f[0], f[i], f[i+1]})
		}
	}
}

// meetWithin sends all rays in a part of the frame.
func (g *grid) meetWithin(w window, to func(d r3.Vec) float64) {
	if w.empty() {
		return
	}
	x0, x1 := g.cells(w.x0, w.x1, g.w.x0, g.w.x1)
	y0, y1 := g.cells(w.y0, w.y1, g.w.y0, g.w.y1)
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			g.send(x, y, to)
		}
	}
}

func (g *grid) send(x, y int, to func(d r3.Vec) float64) {
	far := to(g.ray(x, y))
	if math.IsInf(far, 1) {
		return
	}
	if was, met := g.first[y*g.n+x]; !met || far < was {
		g.first[y*g.n+x] = far
	}
}

// meetTriangle sends rays to a triangle: row by row to where the matrix puts it, or to the whole part of the frame where some of
// it lies behind the lens.
func (g *grid) meetTriangle(c [3]r3.Vec) {
	to := func(d r3.Vec) float64 { return onTriangle(g.at, d, c[0], c[1], c[2]) }
	var x, y [3]float64
	behind := 0
	for i, p := range c {
		h := g.clip(p)
		if h[3] < 0.01 {
			behind++
		}
		x[i], y[i] = h[0]/h[3], h[1]/h[3]
	}
	if behind > 0 {
		if behind < len(c) {
			g.meetWithin(g.w, to)
		}
		return
	}
	tall := (g.w.y1 - g.w.y0) / float64(g.n)
	y0, y1 := g.cells(min(y[0], y[1], y[2]), max(y[0], y[1], y[2]), g.w.y0, g.w.y1)
	for row := y0; row <= y1; row++ {
		low, high := math.Inf(1), math.Inf(-1) // where the row, and a bit to both sides of it, crosses the triangle
		from, until := g.w.y0+tall*float64(row-1), g.w.y0+tall*float64(row+2)
		for i := range c {
			k := (i + 1) % 3
			for _, at := range [2]float64{from, until} {
				if s := (at - y[i]) / (y[k] - y[i]); s >= 0 && s <= 1 {
					low, high = min(low, x[i]+s*(x[k]-x[i])), max(high, x[i]+s*(x[k]-x[i]))
				}
			}
			if y[i] >= from && y[i] <= until {
				low, high = min(low, x[i]), max(high, x[i])
			}
		}
		if low > high {
			continue
		}
		x0, x1 := g.cells(low, high, g.w.x0, g.w.x1)
		for at := x0; at <= x1; at++ {
			g.send(at, row, to)
		}
	}
}
