package sheet

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Distances of a page, mm.
const (
	pads    = 6.0  // from a line to the text beside it
	gutter  = 8.0  // the least between two columns of text
	widest  = 36.0 // the most
	headGap = 5.8  // below the head
	barGap  = 4.6  // above and below the scale bar
	lowest  = 30.0 // a band of text below the plan is no lower
	share   = 0.35 // of the page, that the plan's panel has at least
	marginX = 5.0  // clear beside the plan, for what sticks out of it
	marginY = 3.0  // clear above and below it
	lifted  = 1.2  // it stands higher than the middle: a dimension line runs below it
)

// layout is where everything of a sheet goes.
type layout struct {
	paper      Paper
	wide, high float64 // of the page as it lies
	frame      r2.Box
	plan       r2.Box // the panel of the plan
	block      r2.Box // the title block
	head       slot
	bar        slot // where the scale bar stands
	slots      []slot
	rules      [][2]r2.Vec // lines between the panels
	times      float64     // the scale
	pieces     []piece     // what stands on the sheet
	left       []rest      // what does not
	corners    []r2.Box    // of the panel, given to text
	tiles      tiles       // the parts of a plan that is too large for one page
}

// all says whether every block stands on the sheet.
func (l *layout) all() bool { return len(l.left) == 0 }

// placed says whether every block does that has to stand beside the plan, or that the plan is hard
// to use without.
func (l *layout) placed() bool {
	return !slices.ContainsFunc(l.left, func(r rest) bool { return r.block.rank <= needed })
}

// splits is how many blocks run on from one column to another.
func (l *layout) splits() int {
	n := 0
	for _, q := range l.pieces {
		if q.from > 0 {
			n++
		}
	}
	return n
}

// rows is how many rows of blocks of a rank stand on the sheet.
func (l *layout) rows(of rank) int {
	n := 0
	for _, q := range l.pieces {
		if q.block.rank == of {
			n += q.to - q.from
		}
	}
	return n
}

// sheetOf is a page with its frame after ISO 5457.
func sheetOf(p Paper, upright bool) layout {
	l := layout{paper: p, wide: p.Height, high: p.Width}
	if upright {
		l.wide, l.high = p.Width, p.Height
	}
	l.frame = frameOf(l.wide, l.high)
	return l
}

// frameOf is the frame of a page.
func frameOf(wide, high float64) r2.Box { return box(binding, margin, wide-margin, high-margin) }

// titleBlock is where the title block stands.
func (l *layout) titleBlock() r2.Box {
	return box(l.frame.Max.X-measure-2*pads, l.frame.Min.Y, l.frame.Max.X, l.frame.Min.Y+blockHigh)
}

// grand says whether the sheet is read from further away.
func (l *layout) grand() bool { return l.paper.Width > 400 }

// needs is the size of the panel that an extent wants at a scale.
func needs(extent r2.Box, times float64) (w, h float64) {
	return width(extent)*1000/times + 2*marginX, height(extent)*1000/times + 2*marginY
}

// collar lays the parts of the collar into its columns: the head on top of the first, the title
// block and above it the scale bar at the foot of the last. The columns all run from top to bottom.
func (l *layout) collar(xs []float64, top, bottom, head float64) {
	last := len(xs) - 1
	l.block = l.titleBlock()
	l.bar = slot{x: xs[last], top: l.block.Max.Y + barGap + barHeight, bottom: l.block.Max.Y + barGap}
	l.head = slot{x: xs[0], top: top - pads, bottom: top - pads - head}
	l.rules = append(l.rules, [2]r2.Vec{at(l.block.Min.X, l.block.Max.Y), l.block.Max})
	for i, x := range xs {
		s := slot{x: x, top: top - pads, bottom: bottom + pads}
		if i == 0 {
			s.top = l.head.bottom - headGap
		}
		if i == last {
			s.bottom = l.bar.top + barGap
		}
		l.slots = append(l.slots, s)
	}
}

// side is a sheet with the collar at the right, n columns wide, and under the plan a band of text
// that is band mm high.
func (l layout) side(n int, band, head float64) layout {
	wide := float64(n)*measure + float64(n-1)*gutter + 2*pads
	edge := l.frame.Max.X - wide
	l.plan = box(l.frame.Min.X, l.frame.Min.Y+band, edge, l.frame.Max.Y)
	l.rules = append([][2]r2.Vec(nil), [2]r2.Vec{at(edge, l.frame.Min.Y), at(edge, l.frame.Max.Y)})
	l.slots = nil
	var xs []float64
	for i := range n {
		xs = append(xs, edge+pads+float64(i)*(measure+gutter))
	}
	l.collar(xs, l.frame.Max.Y, l.frame.Min.Y, head)
	if n > 1 {
		l.rules = append(l.rules, [2]r2.Vec{at(l.block.Min.X, l.frame.Min.Y), at(l.block.Min.X, l.block.Max.Y)})
	}
	if band > 0 {
		l.rules = append(l.rules, [2]r2.Vec{l.plan.Min, at(l.plan.Max.X, l.plan.Min.Y)})
		for _, x := range columnsIn(l.plan.Min.X, l.plan.Max.X) {
			l.slots = append(l.slots, slot{x: x, top: l.plan.Min.Y - pads, bottom: l.frame.Min.Y + pads})
		}
	}
	return l
}

// below is a sheet with the collar along its foot, high mm high.
func (l layout) below(high, head float64) layout {
	edge := l.frame.Min.Y + high
	l.plan = box(l.frame.Min.X, edge, l.frame.Max.X, l.frame.Max.Y)
	l.rules = append([][2]r2.Vec(nil), [2]r2.Vec{at(l.frame.Min.X, edge), at(l.frame.Max.X, edge)})
	l.slots = nil
	l.collar(columnsIn(l.frame.Min.X, l.frame.Max.X), edge, l.frame.Min.Y, head)
	l.rules = append(l.rules, [2]r2.Vec{at(l.block.Min.X, l.frame.Min.Y), at(l.block.Min.X, l.block.Max.Y)})
	return l
}

// columnsIn returns the left edges of as many columns of text as go between two lines, evenly
// spread unless that leaves them far apart.
func columnsIn(left, right float64) []float64 {
	room := right - left - 2*pads
	n := max(1, int(math.Floor((room+gutter)/(measure+gutter))))
	pitch := 0.0
	if n > 1 {
		pitch = math.Min((room-measure)/float64(n-1), measure+widest)
	}
	var xs []float64
	for i := range n {
		xs = append(xs, left+pads+pitch*float64(i))
	}
	return xs
}
