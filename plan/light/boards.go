package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// A silver board throws each ray on in a lobe about its mirrored direction. What comes by one is summed over the board, as far
// as the receptor sees it, and for each place of it over the lamp, as far as that place sees it: both by rules whose points
// lie closer together than the lobe is wide, as seen from the board.

// addBoards finds the boards that a lamp lights.
func (w *World) addBoards(l *lamp) {
	for i := range w.boards {
		b := &w.boards[i]
		if l.flux == 0 || !shinesOn(l, &b.Mirror, 0) {
			continue
		}
		lit := litBoard{board: b, past: l.past(w.bvh), near: b.distance(l.at)}
		for _, p := range b.Corners {
			lit.near = min(lit.near, math.Sqrt(l.distance2(p)))
		}
		s := l.shaftOver(b.Corners)
		s.Bound(facing(b.Corners[0], b.Plane.N))
		if l.onesided {
			s.Bound(facing(l.at, l.axis))
		}
		lit.between = lit.past.Between(&s, nil, nil)
		lit.points = l.boardRule(fineLobe * b.halfWidth() * lit.near)
		lit.tables = lit.tablesOf(l)
		l.boards = append(l.boards, lit)
	}
}

// shaftOver holds all ways between the opening and a figure.
func (l *lamp) shaftOver(figure []r3.Vec) solid.Shaft {
	switch {
	case isRound(l.opening):
		box := boxAbout(l.at, l.roundRadius())
		return solid.NewBoxShaft(figure, box[:])
	case l.opening.Form == photometry.Point:
		return solid.NewShaft([]r3.Vec{l.at}, figure)
	}
	return solid.NewShaft(figure, l.bound(l.at))
}

// byBoard is what a lamp gives to a receptor by a board, in shares that hold until the next call.
func (t *tracer) byBoard(l *lamp, b *litBoard, r *Receptor) []share {
	t.shares = t.shares[:0]
	t.Reset()
	if r.Response == Radiance || b.Plane.Over(r.At) <= t.BVH.Epsilon() {
		return nil
	}
	s := solid.NewShaft([]r3.Vec{r.At}, b.Corners)
	s.Bound(facing(b.Corners[0], b.Plane.N))
	if r.Response == Cosine {
		before := facing(r.At, r.Axis)
		if outside(&before, b.Corners) {
			return nil
		}
		s.Bound(before)
	}
	if !b.reaches(l, r.At, 0) {
		return nil
	}
	t.found = t.BVH.Between(&s, r.Skip, t.found[:0])
	if t.quick {
		if e := t.quickly(b, r, len(t.found) > 0); e != (colour.RGB{}) {
			t.shares = append(t.shares, share{filter: e, value: 1})
		}
		return t.shares
	}
	sum := boardSum{tracer: t, l: l, b: b, r: r, apart: b.apart(r.At, fineLobe)}
	t.behind.BVH = b.past
	if len(t.found) == 0 {
		sum.over(b.Corners, false)
		return t.shares
	}
	for _, g := range t.Visible(r.At, b.Corners, t.found, true) {
		sum.over(g.Corners, g.Filtered)
	}
	return t.shares
}

// reaches says whether anything within a distance of a place may lie in the lobe of any place of the board.
func (b *litBoard) reaches(l *lamp, at r3.Vec, within float64) bool {
	image := b.Image(l.at)
	middle := solid.Centre(b.Corners)
	size := 0.0
	for _, p := range b.Corners {
		size = max(size, r3.Norm(r3.Sub(p, middle)))
	}
	out, in := r3.Sub(at, middle), r3.Sub(middle, image)
	far, back := r3.Norm(out), r3.Norm(in)
	spread := math.Acos(b.least)
	if far <= size+within || back <= size+l.opening.Largest() {
		return true
	}
	turn := math.Acos(max(-1, min(1, r3.Dot(out, in)/(far*back))))
	return turn < spread+math.Asin((size+within)/far)+math.Asin((size+l.opening.Largest())/back)
}

// boardSum sums what comes by a board.
type boardSum struct {
	*tracer
	l       *lamp
	b       *litBoard
	r       *Receptor
	apart   float64      // m between the points of rules
	onwards []solid.Pane // sheets between the board and the receptor
}

// over sums over a convex part of the board that is seen, through panes or not.
func (s *boardSum) over(figure []r3.Vec, filtered bool) {
	s.onwards = s.onwards[:0]
	if filtered {
		s.onwards, _ = s.BVH.Segment(solid.Centre(figure), s.r.At, s.r.Skip, s.onwards)
	}
	if len(s.b.between) == 0 {
		s.add(s.sum(figure, s.b.points), s.onwards)
		return
	}
	for i := range s.b.points {
		p := s.b.points[i : i+1]
		for _, g := range s.behind.Visible(p[0].at, figure, s.b.between, false) {
			s.panes = s.panes[:0]
			if g.Filtered {
				s.panes, _ = s.b.past.Segment(p[0].at, solid.Centre(g.Corners), nil, s.panes)
			}
			value := s.sum(g.Corners, p)
			s.panes = append(s.panes, s.onwards...)
			s.add(value, s.panes)
		}
	}
}

// sum is what comes from some points of the lamp by a part of the board, lx, where nothing is in the way.
func (s *boardSum) sum(figure []r3.Vec, points []node) (sum float64) {
	for _, n := range rule(figure, s.apart) {
		sum += s.at(&n, points)
	}
	return sum
}

// at is what a place of the board sends on, which stands for an area.
func (s *boardSum) at(n *node, points []node) (sum float64) {
	way := r3.Sub(s.r.At, n.at)
	square := r3.Norm2(way)
	out := r3.Scale(1/math.Sqrt(square), way)
	rise := r3.Dot(out, s.b.Plane.N)
	weight := response(s.r, out) * rise / square * n.weight * s.b.gain()
	if !(weight > 0) {
		return 0
	}
	back := r3.Scale(-1, s.b.Turned(out)) // whence light goes on along out
	on := Receptor{At: n.at, Axis: s.b.Plane.N}
	for i := range points {
		p := &points[i]
		in := r3.Sub(p.at, n.at)
		length := math.Sqrt(r3.Norm2(in))
		if cos := r3.Dot(in, back) / length; cos > s.b.least {
			fall := r3.Dot(in, s.b.Plane.N) / length
			sum += math.Pow(cos, s.b.Power) * s.l.fromPoint(p.at, &on) * p.weight / max(rise, fall)
		}
	}
	return sum * weight
}
