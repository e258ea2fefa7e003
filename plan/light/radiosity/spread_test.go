package radiosity

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// What no ray has met gets evenly what surfaces return: so much that what it does not keep is all of that; where any has, nothing is added.
func TestUnseenSurfacesShareEvenly(t *testing.T) {
	w := &solver{t: &Transport{mesh: &mesh{faces: []face{{met: 1}, {met: 0.5}}}, patches: make([]patch, 4)}, incident: make([]columns, 4), reflect: make([]columns, 2)}
	for s, p := range []patch{1: {face: 0, area: [4]float64{1, 2, 3, 4}}, 2: {face: 1, area: [4]float64{0.5, 0.5, 0.5, 0.5}}, 3: {face: 1, area: [4]float64{0, 7, 0, 0}}} {
		w.t.patches[s].face, w.t.patches[s].area = p.face, p.area
		for c := range w.t.patches[s].kept {
			w.t.patches[s].kept[c] = 0.25 * float64(s)
		}
	}
	for c := range width {
		w.reflect[0][c], w.reflect[1][c] = 0.6, 0.4
		w.returned[c] = 20 + float64(c)
	}
	w.incident[2][0], w.returned[1] = 3, 0 // one has light already, of another nothing is returned
	w.spreadUnseen()
	if w.incident[1][0] != 0 || w.incident[2][0] != 3 || w.incident[1][1] != 0 {
		t.Errorf("light is spread where it is not wanted: %v", w.incident)
	}
	for c := 2; c < width; c++ {
		sum := 0.0
		for s := 1; s < 4; s++ {
			p := &w.t.patches[s]
			all := p.area[0] + p.area[1] + p.area[2] + p.area[3]
			keeps := []float64{0.6 * 1, 0.4 * 0.5}[p.face] * 0.25 * float64(s)
			sum += w.incident[s][c] * all * (1 - keeps)
			if w.incident[s][c] != w.incident[1][c] {
				t.Errorf("patch %d gets %g lx, and the first %g", s, w.incident[s][c], w.incident[1][c])
			}
		}
		if !(math.Abs(sum-w.returned[c]) <= 1e-9) {
			t.Errorf("%g lm are spread, want %g", sum, w.returned[c])
		}
	}
}

// Half the difference of the means of every other element, of as many of both.
func TestHalfDifferences(t *testing.T) {
	bright := []float32{9, 1, 4, 2, 8, 100}
	for _, c := range []struct {
		elements []uint32
		want     float32
	}{{nil, 0}, {[]uint32{5}, 0}, {[]uint32{0, 1}, 4}, {[]uint32{1, 0}, -4}, {[]uint32{0, 1, 2, 3}, 2.5}, {[]uint32{4, 4, 4, 4}, 0}} {
		if got := halfDifference(c.elements, bright); got != c.want {
			t.Errorf("%v differ by %g, want %g", c.elements, got, c.want)
		}
	}
}

// Strips of a figure lie between their sides, and those that cover it have its area in all.
func TestStripsCoverTheirFigure(t *testing.T) {
	figure := []r3.Vec{{X: 0.1, Y: 0.2}, {X: 1.4, Y: 0}, {X: 1.7, Y: 0.9}, {X: 0.6, Y: 1.3}}
	along := r3.Vec{X: 1}
	for _, c := range []struct {
		offset, width float64
		count, want   int
		share         float64
	}{{0, 0.5, 4, 4, 1}, {0.1, 1.6, 1, 1, 1}, {-1, 0.5, 8, 4, 1}, {0, 0.5, 1, 1, 0}, {2, 0.5, 3, 0, 0}} {
		all := strips(figure, along, c.offset, c.width, c.count)
		if len(all) != c.want {
			t.Errorf("%+v gives %d strips", c, len(all))
		}
		sum := 0.0
		for k, s := range all {
			low, high := math.Inf(1), math.Inf(-1)
			for _, p := range s {
				low, high = min(low, p.X), max(high, p.X)
			}
			if high-low > c.width+1e-9 {
				t.Errorf("%+v: strip %d is %g m wide", c, k, high-low)
			}
			sum += areaOf(s)
		}
		if c.share == 1 && math.Abs(sum-areaOf(figure)) > 1e-12 {
			t.Errorf("%+v: %g m², want %g", c, sum, areaOf(figure))
		}
	}
}

// A closed set is done with a pass that moves nothing, an open one only with such a pass after the first few.
func TestWhenALampIsDone(t *testing.T) {
	w := newSolver(handmade(3, boardFace(t, r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5)))
	w.closed[0], w.closed[2] = true, true
	for c := range width {
		w.flux[c] = 1
		w.incident[1][c], w.before[1][c], w.returned[c] = 2, 2, 1 // lx on a square metre, which keeps half of it and lets half go
	}
	for pass, learn := range []bool{false, true} {
		all := w.normalise(learn)
		for c := range width {
			if w.incident[1][c] != 2 || w.reflected[1][c] != 1 {
				t.Errorf("pass %d: %g lx come and %g lm/m² are passed on", pass, w.incident[1][c], w.reflected[1][c])
			}
			if want := learn || c == 0 || c == 2; w.done[c] != want || all != learn {
				t.Errorf("pass %d: light %d is done: %v, all are: %v", pass, c, w.done[c], all)
			}
		}
	}
}

// What half of its rays put a patch off by is half the difference of the two halves' means, by what it returns, beside what its looks do.
func TestHalvesOfTheRaysOfAPatch(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 1}, 2, 1, 0.25))
	tr.sees(1, 4, 5, 6, 7)
	s := &Solution{t: tr, lamps: 1, rest: [][]float32{{0, 0, 0, 0, 10, 1, 8, 3, 0, 0, 0, 0}}, halfDifferences: [][]float32{{0, 0.5, 0.125}}}
	if err := s.addHalfDifferences(t.Context()); err != nil {
		t.Fatal(err)
	}
	if got := s.halfDifferences[0]; got[1] != 0.5+0.25*(9-2)/2 || got[2] != 0.125 {
		t.Errorf("halves of the rays put patches off by %v", got)
	}
}
