package carto

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// An edge of the lattice is named by twice the index of its lower or left point, plus one if it
// runs up. A contour crosses an edge at one point, and its vertices are such crossings.
type edge = int32

// noData is the class of a point without data.
const noData = math.MaxUint16

// segment is one step of a contour through a cell, from edge to edge, higher side on the left.
type segment struct{ from, to edge }

// tracer holds what one run of Trace needs: the field, its classes and the scratch of linking.
type tracer struct {
	g       Grid
	levels  []float64 // ascending, finite, no doubles
	rule    ruler
	level   []float64 // levels in the measure
	opts    Options
	class   []uint16          // how many levels lie at or under each point's value
	hard    map[edge][]sample // what was probed along hard edges
	next    []edge            // to+1 by from; zero between levels
	arrives []bool            // by edge: a segment ends here; false between levels
}

func newTracer(g Grid, levels []float64, opts Options) *tracer {
	t := &tracer{g: g, levels: tidyLevels(levels), opts: opts}
	t.rule = newRuler(opts.Measure, t.levels)
	for _, l := range t.levels {
		t.level = append(t.level, t.rule.of(l))
	}
	t.classify()
	if opts.Probe != nil {
		t.hard = map[edge][]sample{}
	}
	return t
}

// tidyLevels sorts, and drops doubles and what is not finite.
func tidyLevels(levels []float64) []float64 {
	out := make([]float64, 0, len(levels))
	for _, l := range levels {
		if !math.IsNaN(l) && !math.IsInf(l, 0) {
			out = append(out, l)
		}
	}
	slices.Sort(out)
	out = slices.Compact(out)
	return out[:min(len(out), noData-1)]
}

// classify finds each point's class. Neighbours are alike, so the search starts at the class of
// the point before.
func (t *tracer) classify() {
	t.class = make([]uint16, t.g.NX*t.g.NY)
	c, levels := 0, t.levels
	for n := range t.class {
		if t.g.masked(n) {
			t.class[n] = noData
			continue
		}
		v := float64(t.g.Value[n])
		for c < len(levels) && levels[c] <= v {
			c++
		}
		for c > 0 && levels[c-1] > v {
			c--
		}
		t.class[n] = uint16(c)
	}
}

// march walks the cells and returns the segments of each level, in the order of the cells.
func (t *tracer) march() [][]segment {
	segments := make([][]segment, len(t.levels))
	nx := t.g.NX
	for j := range t.g.NY - 1 {
		low, high := t.class[j*nx:(j+1)*nx], t.class[(j+1)*nx:(j+2)*nx]
		for i := range nx - 1 {
			bl, br, tl, tr := low[i], low[i+1], high[i], high[i+1]
			if bl == br && bl == tl && bl == tr {
				continue
			}
			top := max(bl, br, tl, tr)
			if top == noData {
				continue
			}
			for k := min(bl, br, tl, tr); k < top; k++ {
				segments[k] = t.cell(segments[k], j*nx+i, corners(k, bl, br, tr, tl), int(k))
			}
		}
	}
	return segments
}

// corners says which corners lie at or over the level that divides class k from k+1: 1 lower
// left, 2 lower right, 4 upper right, 8 upper left.
func corners(k, bl, br, tr, tl uint16) (code uint8) {
	if bl > k {
		code = 1
	}
	if br > k {
		code |= 2
	}
	if tr > k {
		code |= 4
	}
	if tl > k {
		code |= 8
	}
	return code
}

// side is a side of a cell.
type side uint8

const (
	bottom side = iota
	right
	top
	left
)

// steps lists, by corners, the sides that a contour enters and leaves by, higher side on its
// left. The two saddles, 5 and 10, have their high corners apart here.
var steps = [16][]([2]side){
	1: {{bottom, left}}, 2: {{right, bottom}}, 3: {{right, left}}, 4: {{top, right}},
	5: {{bottom, left}, {top, right}}, 6: {{top, bottom}}, 7: {{top, left}}, 8: {{left, top}},
	9: {{bottom, top}}, 10: {{right, bottom}, {left, top}}, 11: {{right, top}}, 12: {{left, right}},
	13: {{bottom, right}}, 14: {{left, bottom}},
}

// joined is steps of the saddles whose high corners hang together.
var joined = [16][]([2]side){
	5:  {{bottom, right}, {top, left}},
	10: {{left, bottom}, {right, top}},
}

// cell appends the segments of level k in the cell whose lower left point is n.
func (t *tracer) cell(to []segment, n int, code uint8, k int) []segment {
	ways := steps[code]
	if (code == 5 || code == 10) && t.saddle(n) >= t.level[k] {
		ways = joined[code]
	}
	nx := t.g.NX
	sides := [4]edge{bottom: edge(2 * n), right: edge(2*(n+1) + 1), top: edge(2 * (n + nx)), left: edge(2*n + 1)}
	for _, w := range ways {
		to = append(to, segment{sides[w[0]], sides[w[1]]})
	}
	return to
}

// saddle returns the value, in the measure, where the two asymptotes of the bilinear surface over
// a saddle cell cross: what decides which corners hang together (Nielson & Hamann 1991, "The
// asymptotic decider", Proc. IEEE Visualization, p. 83).
func (t *tracer) saddle(n int) float64 {
	f := func(n int) float64 { return t.rule.of(float64(t.g.Value[n])) }
	bl, br, tl, tr := f(n), f(n+1), f(n+t.g.NX), f(n+t.g.NX+1)
	return (bl*tr - br*tl) / (bl + tr - br - tl)
}

// chain is a contour as the edges it crosses.
type chain struct {
	edges  []edge
	closed bool
}

// link joins the segments of one level to chains: first those that start at the rim of the data,
// then the rings, each in the order of its first segment.
func (t *tracer) link(segments []segment) []chain {
	if t.next == nil {
		t.next = make([]edge, 2*len(t.class))
		t.arrives = make([]bool, 2*len(t.class))
	}
	for _, s := range segments {
		t.next[s.from] = s.to + 1
		t.arrives[s.to] = true
	}
	var chains []chain
	room := make([]edge, 0, 2*len(segments)) // of all chains of the level: an open one has one edge more than segments
	for _, rings := range []bool{false, true} {
		for _, s := range segments {
			if t.next[s.from] == 0 || !rings && t.arrives[s.from] {
				continue
			}
			start := len(room)
			room = t.follow(room, s.from)
			chains = append(chains, chain{room[start:len(room):len(room)], rings})
		}
	}
	for _, s := range segments {
		t.arrives[s.to] = false
	}
	return chains
}

// follow appends the edges from e on, and takes their segments away. A ring does not repeat its
// first edge.
func (t *tracer) follow(to []edge, e edge) []edge {
	for first := e; ; {
		to = append(to, e)
		n := t.next[e]
		t.next[e] = 0
		if n == 0 || n-1 == first {
			return to
		}
		e = n - 1
	}
}

// ends returns the indices of an edge's two points.
func (t *tracer) ends(e edge) (a, b int) {
	a = int(e >> 1)
	if e&1 == 1 {
		return a, a + t.g.NX
	}
	return a, a + 1
}

// crossing returns where level k crosses edge e, and whether a hard edge of light lies there.
func (t *tracer) crossing(e edge, k int) (p r2.Vec, hard bool) {
	a, b := t.ends(e)
	va, vb := float64(t.g.Value[a]), float64(t.g.Value[b])
	s := 0.5
	if t.hard != nil && t.rule.stops(va, vb) >= t.opts.Jump {
		s, hard = t.probed(e, k)
	} else if fa, fb := t.rule.of(va), t.rule.of(vb); fa != fb {
		s = math.Min(math.Max((t.level[k]-fa)/(fb-fa), 0), 1)
	}
	p = t.g.place(a)
	if e&1 == 1 {
		p.Y += s * t.g.Step
	} else {
		p.X += s * t.g.Step
	}
	return p, hard
}
