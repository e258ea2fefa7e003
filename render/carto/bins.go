package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
)

// bins finds boxes near a place. A box is known by the number it was put in with.
type bins struct {
	min    r2.Vec
	size   float64 // of a bin
	nx, ny int
	in     [][]int32
}

// newBins makes bins of a size over an area; what lies outside goes into the outermost ones.
func newBins(area r2.Box, size float64) *bins {
	across := func(a, b float64) int {
		return int(min(max(math.Ceil((b-a)/size), 1), 2048))
	}
	b := &bins{min: area.Min, size: size, nx: across(area.Min.X, area.Max.X), ny: across(area.Min.Y, area.Max.Y)}
	b.in = make([][]int32, b.nx*b.ny)
	return b
}

// span returns the bins that a box touches.
func (b *bins) span(box r2.Box) (i0, j0, i1, j1 int) {
	bin := func(v, from float64, n int) int {
		return int(min(max((v-from)/b.size, 0), float64(n-1)))
	}
	return bin(box.Min.X, b.min.X, b.nx), bin(box.Min.Y, b.min.Y, b.ny),
		bin(box.Max.X, b.min.X, b.nx), bin(box.Max.Y, b.min.Y, b.ny)
}

// put takes a box; one without a place is not found again.
func (b *bins) put(id int, box r2.Box) {
	if hasNoPlace(box) {
		return
	}
	i0, j0, i1, j1 := b.span(box)
	for j := j0; j <= j1; j++ {
		for i := i0; i <= i1; i++ {
			b.in[j*b.nx+i] = append(b.in[j*b.nx+i], int32(id))
		}
	}
}

// hasNoPlace says whether a box has no place.
func hasNoPlace(box r2.Box) bool { return math.IsNaN(box.Min.X + box.Min.Y + box.Max.X + box.Max.Y) }

// near calls f with what may touch the box, in an order that only put decides and perhaps more than once, until f
// returns false.
func (b *bins) near(box r2.Box, f func(id int) bool) {
	i0, j0, i1, j1 := b.span(box)
	for j := j0; j <= j1; j++ {
		for i := i0; i <= i1; i++ {
			for _, id := range b.in[j*b.nx+i] {
				if !f(int(id)) {
					return
				}
			}
		}
	}
}

// grown returns the box with a margin all round.
func grown(b r2.Box, margin float64) r2.Box {
	m := r2.Vec{X: margin, Y: margin}
	return r2.Box{Min: r2.Sub(b.Min, m), Max: r2.Add(b.Max, m)}
}

// spanIndex holds the straight pieces of lines.
type spanIndex struct {
	lines []Line
	refs  [][2]int // line, piece
	bins  *bins
}

func indexSpans(lines []Line, size float64) *spanIndex {
	var all []r2.Vec
	for _, l := range lines {
		b := plane.Bounds(l.Points)
		all = append(all, b.Min, b.Max)
	}
	x := &spanIndex{lines: lines, bins: newBins(plane.Bounds(all), size)}
	for i, l := range lines {
		for n := range l.spans() {
			a, b := l.span(n)
			x.bins.put(len(x.refs), plane.Bounds([]r2.Vec{a, b}))
			x.refs = append(x.refs, [2]int{i, n})
		}
	}
	return x
}

// near calls f with the pieces whose own box touches the box: their line, their number and their ends.
func (x *spanIndex) near(box r2.Box, f func(line, piece int, a, b r2.Vec) bool) {
	box = grown(box, touch) // what lies at the very rim is f's to judge
	x.bins.near(box, func(id int) bool {
		ref := x.refs[id]
		a, b := x.lines[ref[0]].span(ref[1])
		if min(a.X, b.X) > box.Max.X || max(a.X, b.X) < box.Min.X || min(a.Y, b.Y) > box.Max.Y || max(a.Y, b.Y) < box.Min.Y {
			return true
		}
		return f(ref[0], ref[1], a, b)
	})
}
