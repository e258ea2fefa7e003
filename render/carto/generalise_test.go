package carto

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// polygon is a regular ring of n points.
func polygon(n int, radius float64) Line {
	l := Line{Closed: true}
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		l.Points = append(l.Points, r2.Vec{X: radius * cos, Y: radius * sin})
	}
	return l
}

// A regular ring keeps its shape under the filter, and its radius goes with the filter's transfer function: each of
// twenty rounds multiplies it by (1 - 0.5 k)(1 + 0.53 k), where k = 1 - cos(2 pi/n) (Taubin 1995).
func TestSmoothingByItsTransferFunction(t *testing.T) {
	for _, n := range []int{5, 6, 12, 40} {
		l := polygon(n, 10)
		smooth(&l, 100)
		k := 1 - math.Cos(2*math.Pi/float64(n))
		want := 10 * math.Pow(math.Abs((1-0.5*k)*(1+0.53*k)), 20)
		for _, p := range l.Points {
			if got := r2.Norm(p); !(math.Abs(got-want) <= 1e-9*want) {
				t.Errorf("a ring of %d points has a radius of %.6f, want %.6f", n, got, want)
			}
		}
	}
}

// Ends and points of hard edges stay; a straight line stays as it is; no point leaves its bound.
func TestWhatSmoothingLeaves(t *testing.T) {
	zigzag := Line{Hard: make([]bool, 30)}
	for i := range 30 {
		zigzag.Points = append(zigzag.Points, r2.Vec{X: float64(i), Y: float64(i % 2)})
	}
	zigzag.Hard[7], zigzag.Hard[8] = true, true
	for _, bound := range []float64{0.1, 100} {
		l := zigzag
		l.Points = append([]r2.Vec(nil), zigzag.Points...)
		smooth(&l, bound)
		for i, p := range l.Points {
			moved := r2.Norm(r2.Sub(p, zigzag.Points[i]))
			if still := i == 0 || i == 29 || i == 7 || i == 8; still != (moved == 0) {
				t.Errorf("point %d moved by %g", i, moved)
			}
			if moved > bound+1e-12 {
				t.Errorf("point %d moved by %g, bound %g", i, moved, bound)
			}
		}
		if far := r2.Norm(r2.Sub(l.Points[15], zigzag.Points[15])); bound == 0.1 && !(math.Abs(far-bound) <= 1e-9) || bound == 100 && !(math.Abs(far-0.5) <= 0.05) {
			t.Errorf("in the middle of a zigzag a point moved by %g, bound %g", far, bound)
		}
	}
}

// A point stays where it lies within the bound, and else comes to lie at the bound on the way back.
func TestWithin(t *testing.T) {
	c := r2.Vec{X: 1, Y: 2}
	for _, p := range []struct{ p, want r2.Vec }{
		{r2.Vec{X: 1, Y: 2}, r2.Vec{X: 1, Y: 2}}, {r2.Vec{X: 2.5, Y: 4}, r2.Vec{X: 2.5, Y: 4}},
		{r2.Vec{X: 4, Y: 6}, r2.Vec{X: 2.5, Y: 4}}, {r2.Vec{X: 1, Y: -9}, r2.Vec{X: 1, Y: -0.5}},
	} {
		if got := within(c, p.p, 2.5); r2.Norm(r2.Sub(got, p.want)) > 1e-12 {
			t.Errorf("%v within 2.5 of %v is %v, want %v", p.p, c, got, p.want)
		}
	}
}

// A point is dropped where it lies within the tolerance of the chord, and kept where it lies further: on open lines
// and on rings, at any place of them; the ends of an open line are kept. On a hard edge the narrower bound counts.
func TestThinning(t *testing.T) {
	bump := func(height float64, at int) Line {
		l := Line{Level: 5, Index: 2}
		for i := range 11 {
			l.Points = append(l.Points, r2.Vec{X: float64(i)})
		}
		l.Points[at].Y = height
		return l
	}
	const tolerance, edge = 0.5, 0.1
	for at := 1; at < 10; at++ {
		for height, want := range map[float64]int{0: 2, 0.49: 2, -0.49: 2} {
			if got := thin(bump(height, at), tolerance, edge); len(got.Points) != want || got.Level != 5 || got.Index != 2 || got.Closed {
				t.Errorf("a bump of %g at %d leaves %v", height, at, got)
			}
		}
		got := thin(bump(3, at), tolerance, edge)
		kept := false
		for _, p := range got.Points {
			kept = kept || p == (r2.Vec{X: float64(at), Y: 3})
		}
		if n := len(got.Points); !kept || n > 5 || got.Points[0] != (r2.Vec{}) || got.Points[n-1] != (r2.Vec{X: 10}) {
			t.Errorf("a bump of 3 at %d leaves %v", at, got.Points)
		}
		for height, want := range map[float64]bool{0.09: false, 0.11: true, 0.4: true} {
			l := bump(height, at)
			l.Hard = make([]bool, 11)
			l.Hard[at] = true
			got := thin(l, tolerance, edge)
			kept := false
			for i, p := range got.Points {
				kept = kept || p.Y == height && got.isHard(i)
			}
			if kept != want {
				t.Errorf("a hard point %g off at %d is kept: %v", height, at, kept)
			}
		}
	}
}

// A ring stays one, within the tolerance of what it was, and loses the points on its straight sides.
func TestThinningOfRings(t *testing.T) {
	const edge = 0.1
	ring := polygon(400, 10)
	got := thin(ring, 0.05, edge)
	// A chord over an angle a strays by R (1 - cos(a/2)): 0.05 allows pieces of 0.2 rad.
	if n := len(got.Points); !got.Closed || n < 31 || n > 64 {
		t.Errorf("a ring of 400 points leaves %d", n)
	}
	for _, p := range ring.Points {
		if d := distanceToLevel([]Line{got}, 0, p); d > 0.05 {
			t.Errorf("%v lies %g off the thinned ring", p, d)
		}
	}
	square := Line{Closed: true, Points: []r2.Vec{{}, {X: 1}, {X: 2}, {X: 2, Y: 1}, {X: 2, Y: 2}, {X: 1, Y: 2}, {Y: 2}, {Y: 1}}}
	if got := thin(square, 0.01, edge); len(got.Points) != 4 || plane.Area(got.Points) != 4 {
		t.Errorf("a square with points on its sides leaves %v", got.Points)
	}
	if two := thin(Line{Points: square.Points[:2]}, 9, edge); len(two.Points) != 2 {
		t.Errorf("two points leave %v", two.Points)
	}
}

// A sharp corner between long pieces becomes a curve that comes within 0.04 mm of it, no further, at any scale and for
// any turn from 25 degrees on; blunt corners and those between short pieces stay. The curve begins and ends on the pieces.
func TestTheNib(t *testing.T) {
	for _, scale := range []float64{1, 20} {
		for _, c := range []struct {
			turn, in, on float64 // degrees, mm
			curve        bool
		}{
			{24, 5, 5, false}, {26, 5, 5, true}, {90, 5, 5, true}, {-90, 5, 5, true}, {150, 5, 5, true},
			{90, 0.59, 5, false}, {90, 5, 0.59, false}, {90, 0.61, 5, true}, {90, 5, 0.61, true}, {26, 0.61, 0.61, true}, {0, 5, 5, false},
		} {
			sin, cos := math.Sincos(c.turn * math.Pi / 180)
			p := r2.Vec{X: 3, Y: 4}
			a, b := r2.Sub(p, r2.Vec{X: c.in / scale}), r2.Add(p, r2.Scale(c.on/scale, r2.Vec{X: cos, Y: sin}))
			got := corner(a, p, b, scale)
			if !c.curve {
				if len(got) != 1 || got[0] != p {
					t.Errorf("turn %g between %g and %g mm: %v, want the corner", c.turn, c.in, c.on, got)
				}
				continue
			}
			first, last := got[0], got[len(got)-1]
			if Distance(first, a, p) > 1e-9 || Distance(last, p, b) > 1e-9 || !(math.Abs(r2.Norm(r2.Sub(first, p))-r2.Norm(r2.Sub(last, p))) <= 1e-9) {
				t.Errorf("turn %g: the curve runs from %v to %v", c.turn, first, last)
			}
			if part := scale * r2.Norm(r2.Sub(first, p)); part > math.Min(c.in, c.on)/3+1e-9 {
				t.Errorf("turn %g between %g and %g mm: the curve takes %g mm of them, a third at most", c.turn, c.in, c.on, part)
			}
			d := math.Inf(1)
			for i := 1; i < len(got); i++ {
				d = math.Min(d, scale*Distance(p, got[i-1], got[i]))
			}
			if cut := math.Min(c.in, c.on) >= 5; d > 0.04+1e-9 || cut && !(math.Abs(d-0.04) <= 1e-9) {
				t.Errorf("turn %g between %g and %g mm: the curve passes %.4f mm from the corner, want 0.04", c.turn, c.in, c.on, d)
			}
			for i := 2; i < len(got); i++ {
				if bend := turn(got[i-2], got[i-1], got[i]); bend > math.Abs(c.turn)*math.Pi/180*0.6 {
					t.Errorf("turn %g: the curve turns by %g rad at once", c.turn, bend)
				}
			}
		}
	}
}

// The ends of an open line are no corners; all of a ring may be. What lay on a hard edge still does.
func TestEasingKeepsEnds(t *testing.T) {
	l := Line{Level: 3, Index: 1, Points: []r2.Vec{{}, {X: 9}, {X: 9, Y: 9}}, Hard: []bool{false, true, false}}
	open := roundCorners(l, 1)
	if n := len(open.Points); n != 7 || open.Points[0] != l.Points[0] || open.Points[n-1] != l.Points[2] || open.Closed || open.Index != 1 || open.Level != 3 {
		t.Errorf("eased to %+v", open)
	}
	for i := range open.Points {
		if want := i > 0 && i < 6; open.isHard(i) != want {
			t.Errorf("point %d is hard: %v", i, !want)
		}
	}
	l.Closed = true
	if ring := roundCorners(l, 1); len(ring.Points) != 15 || !ring.Closed {
		t.Errorf("a triangle is eased to %d points, want five a corner", len(ring.Points))
	}
}

// A line without a point, or with one, has no pieces and no length; a ring has a piece back to its first point.
func TestPiecesOfALine(t *testing.T) {
	points := []r2.Vec{{}, {X: 3}, {X: 3, Y: 4}}
	for _, c := range []struct {
		line   Line
		spans  int
		length float64
	}{{Line{}, 0, 0}, {Line{Points: points[:1]}, 0, 0}, {Line{Points: points}, 2, 7}, {Line{Points: points, Closed: true}, 3, 12}} {
		if c.line.spans() != c.spans || c.line.Length() != c.length || measureLine(c.line).length() != c.length {
			t.Errorf("%+v has %d pieces of %g", c.line, c.line.spans(), c.line.Length())
		}
	}
}

// A measured line tells the place and the way at any length of it, round and round a ring and no further than the ends of
// an open line.
func TestAlongACourse(t *testing.T) {
	points := []r2.Vec{{}, {X: 4}, {X: 4, Y: 4}, {Y: 4}}
	ring, open := measureLine(Line{Points: points, Closed: true}), measureLine(Line{Points: points})
	for _, c := range []struct {
		line measuredLine
		s    float64
		p, d r2.Vec
	}{
		{ring, 1, r2.Vec{X: 1}, r2.Vec{X: 1}}, {ring, 5, r2.Vec{X: 4, Y: 1}, r2.Vec{Y: 1}}, {ring, 13, r2.Vec{Y: 3}, r2.Vec{Y: -1}},
		{ring, 17, r2.Vec{X: 1}, r2.Vec{X: 1}}, {ring, -1, r2.Vec{Y: 1}, r2.Vec{Y: -1}}, {ring, -33, r2.Vec{Y: 1}, r2.Vec{Y: -1}},
		{open, 11, r2.Vec{X: 1, Y: 4}, r2.Vec{X: -1}}, {open, 99, r2.Vec{Y: 4}, r2.Vec{X: -1}}, {open, -3, r2.Vec{}, r2.Vec{X: 1}},
		{open, 4, r2.Vec{X: 4}, r2.Vec{X: 1}},
	} {
		if p, d := c.line.at(c.s); r2.Norm(r2.Sub(p, c.p)) > 1e-12 || r2.Norm(r2.Sub(d, c.d)) > 1e-12 {
			t.Errorf("at %g: %v toward %v, want %v toward %v", c.s, p, d, c.p, c.d)
		}
	}
	for s, want := range map[float64]int{-1: 0, 0: 0, 4: 0, 4.1: 1, 12: 2, 99: 2} {
		if got := open.piece(s); got != want {
			t.Errorf("%g lies on piece %d, want %d", s, got, want)
		}
	}
	still := measureLine(Line{Points: []r2.Vec{{X: 2, Y: 2}, {X: 2, Y: 2}}})
	if p, d := still.at(0); p != (r2.Vec{X: 2, Y: 2}) || d != (r2.Vec{X: 1}) {
		t.Errorf("on a line without length %v toward %v", p, d)
	}
	for _, c := range []struct {
		line measuredLine
		s, t float64
		want []r2.Vec
	}{
		{open, 1, 3, []r2.Vec{{X: 1}, {X: 3}}}, {open, 2, 6, []r2.Vec{{X: 2}, {X: 4}, {X: 4, Y: 2}}}, {open, 4, 8, []r2.Vec{{X: 4}, {X: 4, Y: 4}}},
		{ring, 14, 18, []r2.Vec{{Y: 2}, {}, {X: 2}}}, {ring, 2, 18, []r2.Vec{{X: 2}, {X: 4}, {X: 4, Y: 4}, {Y: 4}, {}, {X: 2}}},
		{ring, 15, 21, []r2.Vec{{Y: 1}, {}, {X: 4}, {X: 4, Y: 1}}},
	} {
		got := c.line.cut(c.s, c.t).Points
		same := len(got) == len(c.want)
		for i := 0; same && i < len(got); i++ {
			same = r2.Norm(r2.Sub(got[i], c.want[i])) < 1e-12
		}
		if !same {
			t.Errorf("from %g to %g: %v, want %v", c.s, c.t, got, c.want)
		}
	}
}
