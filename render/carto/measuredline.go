package carto

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r2"
)

// measuredLine is a line with its length up to each point, by which places along it are found (linear referencing).
type measuredLine struct {
	Line
	upTo []float64 // length up to each point; of a ring, the whole length last
}

func measureLine(l Line) measuredLine {
	c := measuredLine{Line: l, upTo: make([]float64, l.spans()+1)}
	for i := range l.spans() {
		a, b := l.span(i)
		c.upTo[i+1] = c.upTo[i] + r2.Norm(r2.Sub(b, a))
	}
	return c
}

func (c measuredLine) length() float64 { return c.upTo[len(c.upTo)-1] }

// wrap brings s into the ring, or to the ends of an open line.
func (c measuredLine) wrap(s float64) float64 {
	all := c.length()
	if !c.Closed {
		return math.Min(math.Max(s, 0), all)
	}
	if s = math.Mod(s, all); s < 0 {
		s += all
	}
	return s
}

// piece returns the index of the straight piece that s lies on.
func (c measuredLine) piece(s float64) int {
	i := sort.SearchFloat64s(c.upTo, s)
	return min(max(i-1, 0), c.spans()-1)
}

// at returns the point at s and the unit direction there.
func (c measuredLine) at(s float64) (p, d r2.Vec) {
	s = c.wrap(s)
	i := c.piece(s)
	a, b := c.span(i)
	length := c.upTo[i+1] - c.upTo[i]
	if length == 0 {
		return a, r2.Vec{X: 1}
	}
	d = r2.Scale(1/length, r2.Sub(b, a))
	return r2.Add(a, r2.Scale(s-c.upTo[i], d)), d
}

// cut returns the points from s to t > s; on a ring t may lie past its end.
func (c measuredLine) cut(s, t float64) Line {
	out := Line{Level: c.Level, Index: c.Index}
	p, _ := c.at(s)
	out.add(p, false)
	for i := c.piece(c.wrap(s)) + 1; ; i++ {
		turns, n := 0.0, i
		if c.Closed {
			turns, n = float64(i/len(c.Points)), i%len(c.Points)
		}
		if n >= len(c.Points) || c.upTo[n]+turns*c.length() >= c.wrap(s)+(t-s) {
			break
		}
		out.add(c.Points[n], c.isHard(n))
	}
	p, _ = c.at(t)
	out.add(p, false)
	return out
}

// without returns what is left of the line when the gaps are taken out. Gaps are given in
// ascending order, do not overlap, and on a ring only the last may run past its end.
func (c measuredLine) without(gaps [][2]float64) []Line {
	if len(gaps) == 0 {
		return []Line{c.Line}
	}
	var left []Line
	keep := func(s, t float64) {
		if t-s > 1e-6 {
			if l := c.cut(s, t); len(l.Points) >= 2 {
				left = append(left, l)
			}
		}
	}
	if c.Closed {
		for i, g := range gaps {
			next := gaps[(i+1)%len(gaps)][0]
			if i == len(gaps)-1 {
				next += c.length()
			}
			keep(g[1], next)
		}
		return left
	}
	from := 0.0
	for _, g := range gaps {
		keep(from, g[0])
		from = g[1]
	}
	keep(from, c.length())
	return left
}
