package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// How far apart the points of a rule lie, by the half width of a lobe: for single receptors, and for fields and surfaces. How
// many more points than that the shortest has.
const (
	fineLobe   = 0.8
	quickLobe  = 1.6
	extraNodes = 2
	roundNodes = 64 // points that stand for a round lamp
)

// gain is what the lobe is multiplied by, so that no more leaves than falls on the board.
func (b *board) gain() float64 { return (b.Power + 1) / (2 * math.Pi) }

// halfWidth is the standard deviation of the lobe, radians.
func (b *board) halfWidth() float64 { return 1 / math.Sqrt(b.Power) }

// apart is how far apart the points of a rule over the board may lie, m, for a receptor, by half widths of the lobe.
func (b *litBoard) apart(at r3.Vec, by float64) float64 {
	near := b.distance(at)
	return by * b.halfWidth() / (1/near + 1/b.near)
}

// distance is how far a place is from a board, m.
func (b *board) distance(at r3.Vec) float64 {
	over := b.Plane.Over(at)
	beside := math.Inf(1) // the square of how far it is from the nearest side, where it does not lie over the board
	for i, from := range b.Corners {
		side, way := r3.Sub(b.Corners[(i+1)%len(b.Corners)], from), r3.Sub(at, from)
		if r3.Dot(way, r3.Cross(side, b.Plane.N)) <= 0 {
			continue
		}
		along := max(0, min(1, r3.Dot(way, side)/r3.Norm2(side)))
		beside = min(beside, r3.Norm2(r3.Sub(way, r3.Scale(along, side))))
	}
	if math.IsInf(beside, 1) {
		return math.Abs(over)
	}
	return math.Sqrt(beside)
}

// side is the longer side of the board, m, or how wide one is that is no parallelogram.
func (b *board) side() (longest float64) {
	if isParallelogram(b.Corners) {
		return max(r3.Norm(r3.Sub(b.Corners[1], b.Corners[0])), r3.Norm(r3.Sub(b.Corners[3], b.Corners[0])))
	}
	for i, p := range b.Corners {
		for _, q := range b.Corners[:i] {
			longest = max(longest, r3.Norm(r3.Sub(q, p)))
		}
	}
	return longest
}

// rule is a rule over a convex figure whose points lie so far apart at most, m.
func rule(figure []r3.Vec, apart float64) (all []node) {
	if isParallelogram(figure) {
		return parallelogramRule(figure, apart)
	}
	for i := 1; i+1 < len(figure); i++ {
		t := triangle{figure[0], figure[i], figure[i+1]}
		// A rule of the fifth degree on a triangle has three points or so each way.
		t.split(min(max(1, int(math.Ceil(t.longest()/(2*apart)))), mostBoardStrips), func(part triangle) { all = part.radonRule(all) })
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

// boardRule is a rule over the opening whose points lie so far apart at most, m.
func (l *lamp) boardRule(apart float64) (all []node) {
	order := func(side float64) int { return int(math.Ceil(min(side/apart, largest-extraNodes))) + extraNodes }
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
