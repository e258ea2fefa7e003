package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// smooth calms a line by Taubin's two-step filter (Taubin 1995, "A signal processing approach to
// fair surface design", Proc. SIGGRAPH, p. 351), which does not shrink rings as plain averaging
// does. No point moves by more than bound; ends and points on hard edges stay where they are.
// Since a point of a chord moves by a mean of what its ends move by, no part of the line moves
// further either.
func smooth(l *Line, bound float64) {
	const rounds, in, out = 20, 0.5, -0.53
	from := append([]r2.Vec(nil), l.Points...)
	next := make([]r2.Vec, len(from))
	for range rounds {
		for _, share := range [...]float64{in, out} {
			relax(l, next, share)
			for i := range next {
				next[i] = within(from[i], next[i], bound)
			}
			l.Points, next = next, l.Points
		}
	}
}

// relax writes to next each point moved by a share of the way to the middle of its neighbours.
func relax(l *Line, next []r2.Vec, share float64) {
	n := len(l.Points)
	for i, p := range l.Points {
		next[i] = p
		if !l.Closed && (i == 0 || i == n-1) || l.isHard(i) {
			continue
		}
		a, b := l.Points[(i+n-1)%n], l.Points[(i+1)%n]
		m := r2.Vec{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
		next[i] = r2.Add(p, r2.Scale(share, r2.Sub(m, p)))
	}
}

// within returns p, drawn back to no further than bound from c.
func within(c, p r2.Vec, bound float64) r2.Vec {
	d := r2.Sub(p, c)
	if length := r2.Norm(d); length > bound {
		return r2.Add(c, r2.Scale(bound/length, d))
	}
	return p
}

// thin drops the points that lie within tolerance of the line without them (Douglas & Peucker
// 1973, "Algorithms for the reduction of the number of points", Cartographica 10(2), p. 112).
// Points of hard edges must lie within edge too.
func thin(l Line, tolerance, edge float64) Line {
	n := len(l.Points)
	if n < 3 {
		return l
	}
	allow := func(i int) float64 {
		if l.isHard(i) {
			return math.Min(tolerance, edge)
		}
		return tolerance
	}
	keep := make([]bool, n+1)
	keep[0] = true
	if l.Closed {
		far := farthest(l.Points)
		keep[far] = true
		l.split(keep, 0, far, allow)
		l.split(keep, far, n, allow)
	} else {
		keep[n-1] = true
		l.split(keep, 0, n-1, allow)
	}
	out := Line{Level: l.Level, Index: l.Index, Closed: l.Closed, Points: make([]r2.Vec, 0, n/2)}
	for i, p := range l.Points {
		if keep[i] {
			out.add(p, l.isHard(i))
		}
	}
	return out
}

// farthest returns the index of the point farthest from the first.
func farthest(points []r2.Vec) int {
	best, most := 0, -1.0
	for i, p := range points {
		if d := r2.Norm2(r2.Sub(p, points[0])); d > most {
			best, most = i, d
		}
	}
	return best
}

// split keeps the point between a and b that lies furthest off the chord for what it is allowed,
// if it lies too far, and goes on with both halves. Index n is the first point again.
func (l Line) split(keep []bool, a, b int, allow func(int) float64) {
	n := len(l.Points)
	for b-a > 1 {
		from, to := l.Points[a], l.Points[b%n]
		at, most := 0, 1.0
		for i := a + 1; i < b; i++ {
			if d := Distance(l.Points[i], from, to) / allow(i); d > most {
				at, most = i, d
			}
		}
		if at == 0 {
			return
		}
		keep[at] = true
		l.split(keep, a, at, allow)
		a = at
	}
}

// Distance returns how far p lies from the segment from a to b.
func Distance(p, a, b r2.Vec) float64 {
	at, _ := plane.NearestOnSegment(p, a, b)
	return r2.Norm(r2.Sub(p, at))
}

// The nib that rounds corners: those sharper than roundedTurn between pieces longer than roundedPiece are
// cut by at most roundedDepth.
const (
	roundedTurn  = 25 * math.Pi / 180
	roundedPiece = 0.6  // mm
	roundedDepth = 0.04 // mm
)

// roundCorners rounds sharp corners as a nib does, with a short curve that stays within roundedDepth of them;
// scale is mm for one unit of the line.
func roundCorners(l Line, scale float64) Line {
	n := len(l.Points)
	out := Line{Level: l.Level, Index: l.Index, Closed: l.Closed, Points: make([]r2.Vec, 0, n+8)}
	for i, p := range l.Points {
		hard := l.isHard(i)
		if !l.Closed && (i == 0 || i == n-1) {
			out.add(p, hard)
			continue
		}
		for _, q := range corner(l.Points[(i+n-1)%n], p, l.Points[(i+1)%n], scale) {
			out.add(q, hard)
		}
	}
	return out
}

// corner returns p, or the curve that stands for it between a and b.
func corner(a, p, b r2.Vec, scale float64) []r2.Vec {
	in, on := r2.Sub(p, a), r2.Sub(b, p)
	li, lo := r2.Norm(in), r2.Norm(on)
	turn := math.Abs(math.Atan2(r2.Cross(in, on), r2.Dot(in, on)))
	if turn < roundedTurn || math.Min(li, lo)*scale < roundedPiece {
		return []r2.Vec{p}
	}
	// A parabola from d before the corner to d after it passes d sin(turn/2)/2 from it.
	d := math.Min(2*roundedDepth/math.Sin(turn/2)/scale, math.Min(li, lo)/3)
	from, to := r2.Sub(p, r2.Scale(d/li, in)), r2.Add(p, r2.Scale(d/lo, on))
	const pieces = 4
	curve := make([]r2.Vec, 0, pieces+1)
	for i := range pieces + 1 {
		s := float64(i) / pieces
		q := r2.Add(r2.Scale((1-s)*(1-s), from), r2.Add(r2.Scale(2*s*(1-s), p), r2.Scale(s*s, to)))
		curve = append(curve, q)
	}
	return curve
}
