package solid

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// The oracle shares nothing with the package: solids become polygons, a ray is cut with each
// polygon's plane, and whether the cut lies in the polygon follows from the angles it is seen under.

// faces returns the polygons of a prism.
func faces(p *Prism) [][]r3.Vec {
	n := len(p.Base)
	lower, upper := make([]r3.Vec, n), make([]r3.Vec, n)
	var all [][]r3.Vec
	for i, c := range p.Base {
		e := p.Base[(i+1)%n]
		lower[i], upper[i] = r3.Vec{X: c.X, Y: c.Y, Z: p.Z0}, r3.Vec{X: c.X, Y: c.Y, Z: p.Z1}
		all = append(all, []r3.Vec{
			{X: c.X, Y: c.Y, Z: p.Z0}, {X: e.X, Y: e.Y, Z: p.Z0},
			{X: e.X, Y: e.Y, Z: p.Z1}, {X: c.X, Y: c.Y, Z: p.Z1}})
	}
	return append(all, lower, upper)
}

// pierced returns where a ray meets a polygon.
func pierced(o, d r3.Vec, polygon []r3.Vec) (t float64, ok bool) {
	n := r3.Cross(r3.Sub(polygon[1], polygon[0]), r3.Sub(polygon[2], polygon[0]))
	t = r3.Dot(n, r3.Sub(polygon[0], o)) / r3.Dot(n, d)
	if math.IsNaN(t) || math.IsInf(t, 0) || t <= 0 {
		return 0, false
	}
	at := r3.Add(o, r3.Scale(t, d))
	var angle float64
	for i := range polygon {
		a, b := r3.Sub(polygon[i], at), r3.Sub(polygon[(i+1)%len(polygon)], at)
		angle += math.Atan2(r3.Dot(n, r3.Cross(a, b))/r3.Norm(n), r3.Dot(a, b))
	}
	return t, math.Abs(angle) > math.Pi // 2 pi inside, nought outside
}

type bruteHit struct {
	id    ID
	t     float64
	clear bool
}

// brute lists, from near to far, every face and sheet that a ray meets.
func brute(s *Set, o, d r3.Vec, skip []ID) (hits []bruteHit) {
	for i := range s.Prisms {
		for _, f := range faces(&s.Prisms[i]) {
			if t, ok := pierced(o, d, f); ok && !slices.Contains(skip, s.Prisms[i].ID) {
				hits = append(hits, bruteHit{id: s.Prisms[i].ID, t: t})
			}
		}
	}
	for i := range s.Sheets {
		h := &s.Sheets[i]
		if t, ok := pierced(o, d, h.Corners); ok && !slices.Contains(skip, h.ID) {
			n := r3.Cross(r3.Sub(h.Corners[1], h.Corners[0]), r3.Sub(h.Corners[2], h.Corners[0]))
			skin := &h.Front
			if r3.Dot(n, d) > 0 {
				skin = &h.Back
			}
			hits = append(hits, bruteHit{h.ID, t, skin.Clear()})
		}
	}
	slices.SortFunc(hits, func(a, b bruteHit) int {
		if a.t < b.t {
			return -1
		}
		return 1
	})
	return hits
}

// randomSet has n solids of every sort in a cube of side 10.
func randomSet(r *rand.Rand, n int) *Set {
	s := &Set{}
	for i := range n {
		id := ID(i + 1)
		c := r2.Vec{X: 10 * r.Float64(), Y: 10 * r.Float64()}
		if r.IntN(3) > 0 {
			z := 3 * r.Float64()
			s.Prisms = append(s.Prisms, Prism{ID: id, Base: randomRing(r, c, 0.2+r.Float64()), Z0: z, Z1: z + 0.1 + 2*r.Float64()})
			continue
		}
		h := Sheet{ID: id}
		u, v := randomAxes(r)
		for _, p := range randomRing(r, r2.Vec{}, 0.3+r.Float64()) {
			at := r3.Add(r3.Scale(p.X, u), r3.Scale(p.Y, v))
			h.Corners = append(h.Corners, r3.Add(at, r3.Vec{X: c.X, Y: c.Y, Z: 1.5}))
		}
		if r.IntN(2) == 0 {
			h.Front.Direct = colour.RGB{0.9, 0.9, 0.9}
			h.Back.Direct = colour.RGB{0.9, 0.9, 0.9}
		}
		s.Sheets = append(s.Sheets, h)
	}
	return s
}

// randomRing is a convex polygon of 3 to 9 corners on a circle, counter-clockwise.
func randomRing(r *rand.Rand, c r2.Vec, radius float64) []r2.Vec {
	n := 3 + r.IntN(7)
	turn := 2 * math.Pi * r.Float64()
	ring := make([]r2.Vec, n)
	for i := range ring {
		a := turn + 2*math.Pi*(float64(i)+0.6*r.Float64())/float64(n)
		ring[i] = r2.Vec{X: c.X + radius*math.Cos(a), Y: c.Y + radius*math.Sin(a)}
	}
	return ring
}

func randomDirection(r *rand.Rand) r3.Vec {
	for {
		v := r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()}
		if n := r3.Norm(v); n > 1e-3 {
			return r3.Scale(1/n, v)
		}
	}
}

func randomAxes(r *rand.Rand) (u, v r3.Vec) {
	n := randomDirection(r)
	u = r3.Unit(r3.Cross(n, r3.Vec{X: 0.3, Y: -0.5, Z: 0.81}))
	return u, r3.Cross(n, u)
}

func randomPoint(r *rand.Rand) r3.Vec {
	return r3.Vec{X: 10 * r.Float64(), Y: 10 * r.Float64(), Z: 5 * r.Float64()}
}

func TestQueriesAgreeWithPolygons(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var rays, stopped, panes int
	for range 2000 {
		s := randomSet(r, 1+r.IntN(40))
		b := NewBVH(s)
		for range 10 {
			skip := []ID{ID(r.IntN(20))}
			from := randomPoint(r)
			to := randomPoint(r)
			if _, in := b.Inside(from); in {
				continue
			}
			rays++
			blocked, passed := checkSegment(t, s, b, from, to, skip)
			if blocked {
				stopped++
			}
			panes += passed
			checkFirst(t, s, b, from, randomDirection(r), skip)
		}
	}
	if stopped < rays/10 || panes < rays/50 || rays < 10000 {
		t.Errorf("%d rays, %d stopped, %d panes: the scenes test too little", rays, stopped, panes)
	}
}

func checkSegment(t *testing.T, s *Set, b *BVH, from, to r3.Vec, skip []ID) (blocked bool, passed int) {
	t.Helper()
	length := r3.Norm(r3.Sub(to, from))
	var want []ID
	var stop bool
	for _, h := range brute(s, from, r3.Scale(1/length, r3.Sub(to, from)), skip) {
		switch {
		case h.t >= length:
		case h.clear:
			want = append(want, h.id)
		default:
			stop = true
		}
	}
	got, blocked := b.Segment(from, to, skip, nil)
	if blocked != stop || blocked != b.Blocked(from, to, skip) {
		t.Fatalf("from %v to %v: blocked %v, polygons say %v", from, to, blocked, stop)
	}
	if blocked {
		return true, 0
	}
	if len(got) != len(want) {
		t.Fatalf("from %v to %v: panes %v, polygons say %v", from, to, got, want)
	}
	for i := range got {
		if got[i].ID != want[i] {
			t.Fatalf("from %v to %v: panes %v, polygons say %v", from, to, got, want)
		}
	}
	return false, len(got)
}

func checkFirst(t *testing.T, s *Set, b *BVH, o, d r3.Vec, skip []ID) {
	t.Helper()
	all := brute(s, o, d, skip)
	check := func(h Hit, ok bool, want []bruteHit) {
		if ok != (len(want) > 0) {
			t.Fatalf("from %v along %v: hit %v %v, polygons say %v", o, d, h, ok, want)
		}
		if ok && (h.ID != want[0].id || math.Abs(h.T-want[0].t) > 1e-9) {
			t.Fatalf("from %v along %v: hit %v, polygons say %v", o, d, h, want[0])
		}
		if ok && (r3.Dot(h.Normal, d) >= 0 || math.Abs(r3.Norm(h.Normal)-1) > 1e-12) {
			t.Fatalf("normal %v does not face a ray along %v", h.Normal, d)
		}
	}
	h, ok := b.First(o, d, skip)
	check(h, ok, all)
	h, ok = b.FirstOpaque(o, d, skip)
	check(h, ok, slices.DeleteFunc(all, func(h bruteHit) bool { return h.clear }))
}

func TestInsideAgreesWithPolygons(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	var in int
	for range 300 {
		s := randomSet(r, 1+r.IntN(40))
		b := NewBVH(s)
		for range 50 {
			p := randomPoint(r)
			want, inside := bruteInside(s, p)
			got, ok := b.Inside(p)
			if ok != inside || got != want {
				t.Fatalf("%v: inside %d %v, polygons say %d %v", p, got, ok, want, inside)
			}
			if ok {
				in++
			}
		}
	}
	if in < 100 {
		t.Errorf("only %d points inside", in)
	}
}

// bruteInside counts how many faces of each prism a ray from p meets: an odd number from within.
func bruteInside(s *Set, p r3.Vec) (ID, bool) {
	d := r3.Unit(r3.Vec{X: 0.31, Y: 0.57, Z: 0.76})
	for i := range s.Prisms {
		var n int
		for _, f := range faces(&s.Prisms[i]) {
			if _, ok := pierced(p, d, f); ok {
				n++
			}
		}
		if n%2 == 1 {
			return s.Prisms[i].ID, true
		}
	}
	return 0, false
}
