package radiosity

import (
	"context"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/parallel"
	"scrimshaw/plan/light/receptor"
)

// On a lattice the rays of one direction are drawn together: every face that looks against them is a
// convex polygon on the lattice, and of those that hold a point the nearest is what it sees. That
// is an item buffer, and costs a fraction of as many single rays.
//
// Points look in turn in sixteen sets of directions, four by four, and lend theirs to their
// neighbours (smooth.go): so each one sees as many directions as sixteen do.

// side is how many points lie side by side before the sets of directions come round again.
const side = 4

// closest is how far apart, m, points may be to lend each other what they see. Farther apart each
// looks in all directions itself.
const closest = 0.075

// The lattices of a set keep at most so many rays together, two or four bytes each: the points of huge ones look in
// fewer directions, by so many at a time, down to the fewest.
const (
	mostSeen   = 3 << 24
	rayStep    = 8
	fewestRays = 16
)

// sets is the number of sets of directions.
const sets = side * side

// frame is a lattice with what its points see: an item buffer for each set.
type frame struct {
	receptor.Lattice
	rays    int
	shared  bool // whether neighbours lend each other what they see
	buffers [sets]itemBuffer
	cuts    cuts
}

// size is how many points of each set there are, along and across.
func (f *frame) size(set int) (nu, nv int) {
	a, b := set%side, set/side
	return (f.NU - a + side - 1) / side, (f.NV - b + side - 1) / side
}

// sharesRays says whether the points of a lattice lend each other what they see.
func sharesRays(l *receptor.Lattice) bool { return max(r3.Norm(l.U), r3.Norm(l.V)) <= closest }

// raysOn is in how many directions each point of a lattice looks.
func raysOn(t *Transport, l *receptor.Lattice) int {
	rays := t.quality.Lattice
	if l.Response == receptor.Dome {
		rays = max(rays, t.quality.AllRound)
	}
	if !sharesRays(l) {
		rays *= sets
	}
	if most := mostSeen / max(t.points, l.NU*l.NV); rays > most {
		rays = min(rays, max(most-most%rayStep, fewestRays))
	}
	return rays
}

func (t *Transport) traceFromLattice(ctx context.Context, l *receptor.Lattice) (*frame, error) {
	f := &frame{Lattice: *l, rays: raysOn(t, l), shared: sharesRays(l)}
	if f.shared {
		f.cut(t.mesh)
	}
	buffers := make([]*depthBuffer, parallel.Workers(t.workers, sets))
	err := parallel.For(ctx, t.workers, sets, func(worker, s int) {
		if buffers[worker] == nil {
			buffers[worker] = newDepthBuffer(t.mesh, l.Skip)
		}
		buffers[worker].set(f, s)
	})
	return f, err
}

// set fills in what the points of one set see.
func (p *depthBuffer) set(f *frame, s int) {
	nu, nv := f.size(s)
	if nu <= 0 || nv <= 0 {
		return
	}
	v := f.view(s, nu, nv)
	p.inView = facesInView(p.inView, p.m, p.faces, v.corners(), f.ahead())
	p.hits = slices.Grow(p.hits[:0], nu*nv)[:nu*nv]
	q := &f.buffers[s]
	q.points = f.points(s, nu, nv)
	q.turn(f, s, nu)
	q.short = make([]uint16, 0, f.rays*len(q.points))
	q.seen = make([]uint32, 0, p.most)
	for k := range f.rays {
		way := f.way(s, k)
		p.number = f.number(s, k)
		if f.Toward != nil {
			q.ways = append(q.ways, headingOf(way))
		}
		p.render(&v, way, p.hits)
		for at, n := range q.points {
			p.hits[at] = p.hits[n]
		}
		p.record(q, p.hits[:len(q.points)])
	}
	p.most = max(p.most, len(q.seen)+len(q.seen)/8)
	p.resetIndex(q)
}

// ahead is what all directions that the points look in go ahead of; nil where they go all round.
func (f *frame) ahead() *r3.Vec {
	if f.Toward != nil || f.Response != receptor.Cosine {
		return nil
	}
	return &f.Normal
}

// view is that of the points of a set.
func (f *frame) view(s, nu, nv int) view {
	a, b := float64(s%side), float64(s/side)
	return view{
		origin: r3.Add(f.Origin, r3.Add(r3.Scale(a, f.U), r3.Scale(b, f.V))),
		u:      r3.Scale(side, f.U), v: r3.Scale(side, f.V), nu: nu, nv: nv,
	}
}

// way is direction k of a set.
func (f *frame) way(s, k int) r3.Vec {
	number := f.number(s, k)
	if f.Toward != nil {
		return oppositePair(number)
	}
	axis := basisOf(f.Normal)
	x, y := receptorSample(number)
	return axis.direction(f.Response, x, y)
}

// number is that of direction k of a set among those of all sets that count together.
func (f *frame) number(s, k int) int {
	if f.shared {
		return k + bayer[s]*f.rays
	}
	return k
}

// bayer spreads the sets of directions so that neighbours look at different ones.
var bayer = [sets]int{0, 8, 2, 10, 12, 4, 14, 6, 3, 11, 1, 9, 15, 7, 13, 5}

// points are those of a set that have data, by their places in the view.
func (f *frame) points(s, nu, nv int) (all []int32) {
	for n := range nu * nv {
		if !f.Masked(n%nu*side+s%side, n/nu*side+s/side) {
			all = append(all, int32(n))
		}
	}
	return all
}

// turn finds the axes of the points of set s, nu of them in a row of its view.
func (q *itemBuffer) turn(f *frame, s, nu int) {
	if f.Toward == nil {
		return
	}
	q.turned = make([]heading, len(q.points))
	for at, n := range q.points {
		u, v := float64(int(n)%nu*side+s%side), float64(int(n)/nu*side+s/side)
		way := r3.Sub(*f.Toward, r3.Add(f.Origin, r3.Add(r3.Scale(u, f.U), r3.Scale(v, f.V))))
		if length := r3.Norm(way); length > 0 { // in the place itself all directions count the same
			q.turned[at] = headingOf(r3.Scale(1/length, way))
		}
	}
}
