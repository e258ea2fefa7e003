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

// board is a side of a sheet that mirrors in a lobe.
type board struct {
	solid.Mirror
	least float64 // the cosine at which the lobe ends
	faint float64 // and at which it does for fields and surfaces
}

// newBoard makes a board ready.
func newBoard(m solid.Mirror) board {
	return board{m, math.Pow(lobeEnd, 1/m.Power), math.Pow(faintLobe, 1/m.Power)}
}

// litBoard is a board that a lamp lights.
type litBoard struct {
	*board
	points  []node     // of the lamp's opening, as the board sees it
	past    *solid.BVH // the set
	between []int32    // of that: what may stand between the two
	near    float64    // m from the lamp to the nearest of the board
	tables  [][]litPlace
}

// How far apart the points of a rule lie, by the half width of a lobe: for single receptors, and for fields and surfaces. How
// many more points than that the shortest has. The share of the middle of a lobe below which nothing is followed.
const (
	fineLobe   = 0.8
	quickLobe  = 1.6
	extraNodes = 2
	lobeEnd    = 1e-6
	faintLobe  = 1e-4
	roundNodes = 64 // points that stand for a round lamp
)

// gain is what the lobe is multiplied by, so that no more leaves than falls on the board.
func (b *board) gain() float64 { return (b.Power + 1) / (2 * math.Pi) }

// halfWidth is the standard deviation of the lobe, radians.
func (b *board) halfWidth() float64 { return 1 / math.Sqrt(b.Power) }

// addBoards finds the boards that a lamp lights.
func (w *World) addBoards(l *lamp) {
	for i := range w.boards {
		b := &w.boards[i]
		if !b.isLit(l) {
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
		lit.makeTables(l)
		l.boards = append(l.boards, lit)
	}
}

// isLit says whether light of a lamp can come to the board.
func (b *board) isLit(l *lamp) bool {
	shining := facing(l.at, l.axis)
	if l.flux == 0 || l.onesided && outside(&shining, b.Corners) {
		return false
	}
	high := b.Plane.Over(l.at)
	if l.isRound() {
		high += l.roundRadius()
	}
	for _, p := range l.bound(l.at) {
		high = max(high, b.Plane.Over(p))
	}
	return high > 0
}

// shaftOver holds all ways between the opening and a figure.
func (l *lamp) shaftOver(figure []r3.Vec) solid.Shaft {
	switch {
	case l.isRound():
		box := boxAbout(l.at, l.roundRadius())
		return solid.NewBoxShaft(figure, box[:])
	case l.opening.Form == photometry.Point:
		return solid.NewShaft([]r3.Vec{l.at}, figure)
	}
	return solid.NewShaft(figure, l.bound(l.at))
}

// boardRule is a rule over the opening whose points lie so far apart at most, m.
func (l *lamp) boardRule(apart float64) (all []node) {
	order := func(side float64) int { return min(int(math.Ceil(side/apart))+extraNodes, largest) }
	w, h := l.opening.Width, l.opening.Height
	switch l.opening.Form {
	case photometry.Rectangle:
		return l.profiled(l.productRule(order(w), order(h)))
	case photometry.Disc:
		return l.profiled(l.discRule(order(w / 2)))
	case photometry.Tube:
		return l.profiled(l.productRule(order(w), 1))
	case photometry.Sphere:
		points := shuffled(l.points)
		points = points[:min(len(points), roundNodes)]
		for _, p := range points {
			all = append(all, node{p, 1 / float64(len(points))})
		}
		return all
	}
	return []node{{l.at, 1}}
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

// apart is how far apart the points of a rule over the board may lie, m, for a receptor, by half widths of the lobe.
func (b *litBoard) apart(at r3.Vec, by float64) float64 {
	near := b.distance(at)
	return by * b.halfWidth() / (1/near + 1/b.near)
}

// distance is how far a place is from a board, m.
func (b *board) distance(at r3.Vec) float64 {
	square := b.Plane.Over(at) * b.Plane.Over(at)
	for _, k := range [...]int{1, 3} {
		side := r3.Sub(b.Corners[k], b.Corners[0])
		length := r3.Norm(side)
		along := r3.Dot(r3.Sub(at, b.Corners[0]), side) / length
		beyond := max(0, -along, along-length)
		square += beyond * beyond
	}
	return math.Sqrt(square)
}

// reaches says whether anything within a distance of a place may lie in the lobe of any place of the board.
func (b *litBoard) reaches(l *lamp, at r3.Vec, within float64) bool {
	image := b.Image(l.at)
	middle := solid.Centre(b.Corners)
	size := r3.Norm(r3.Sub(b.Corners[0], middle))
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

// rule is a rule over a convex figure whose points lie so far apart at most, m.
func rule(figure []r3.Vec, apart float64) (all []node) {
	if isParallelogram(figure) {
		return parallelogramRule(figure, apart)
	}
	for i := 1; i+1 < len(figure); i++ {
		t := triangle{figure[0], figure[i], figure[i+1]}
		// A rule of the fifth degree on a triangle has three points or so each way.
		t.split(min(max(1, int(math.Ceil(t.longest()/(2*apart)))), mostBoardStrips), func(part *triangle) { all = part.radonRule(all) })
	}
	return all
}

// mostBoardStrips is how often, at most, a side of a part of a board is divided.
const mostBoardStrips = 24

// parallelogramRule is the product of two rules whose points lie so far apart at most, m.
func parallelogramRule(f []r3.Vec, apart float64) []node {
	x, y := stripRule(r3.Norm(r3.Sub(f[1], f[0]))/apart), stripRule(r3.Norm(r3.Sub(f[3], f[0]))/apart)
	return productOver(f, &x, &y)
}

// parallelogramOf is the product of two rules of an order.
func parallelogramOf(f []r3.Vec, order int) []node {
	of := &rulesUpTo()[order]
	return productOver(f, of, of)
}

// productOver is the product of two rules over a parallelogram.
func productOver(f []r3.Vec, x, y *gauss) (all []node) {
	u, v := r3.Sub(f[1], f[0]), r3.Sub(f[3], f[0])
	area := r3.Norm(r3.Cross(u, v))
	all = make([]node, 0, len(x.x)*len(y.x))
	for i := range x.x {
		for k := range y.x {
			all = append(all, node{r3.Add(f[0], r3.Add(r3.Scale(x.x[i], u), r3.Scale(y.x[k], v))), x.w[i] * y.w[k] * area})
		}
	}
	return all
}

// stripRule is a rule on 0..1 of so many points, and a few more: in strips where they are many.
func stripRule(points float64) (all gauss) {
	strips := max(1, int(math.Ceil(min(points, mostBoardPoints)/(largest-extraNodes))))
	of := &rulesUpTo()[int(math.Ceil(min(points, mostBoardPoints)/float64(strips)))+extraNodes]
	for k := range strips {
		for i := range of.x {
			all.x, all.w = append(all.x, (float64(k)+of.x[i])/float64(strips)), append(all.w, of.w[i]/float64(strips))
		}
	}
	return all
}

// mostBoardPoints bounds the points of a rule along a side of a board.
const mostBoardPoints = 96

// radonRule appends the rule of seven points on a triangle.
func (t *triangle) radonRule(to []node) []node {
	area := t.area()
	all := r3.Add(r3.Add(t[0], t[1]), t[2])
	to = append(to, node{r3.Scale(1.0/3, all), radonMiddle * area})
	for i := range radon {
		n := &radon[i]
		for _, p := range t {
			to = append(to, node{r3.Add(r3.Scale(n.other, all), r3.Scale(n.own-n.other, p)), n.weight * area})
		}
	}
	return to
}
