package sheet

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// ranked is the blocks in the order of their ranks, those of a rank as they are read.
func ranked(blocks []*block) []*block {
	out := slices.Clone(blocks)
	slices.SortStableFunc(out, func(a, b *block) int { return int(a.rank) - int(b.rank) })
	return out
}

// filled is the layout with the blocks poured in, in the order of reading where that holds all, else
// by rank.
func (l layout) filled(blocks []*block) layout {
	if l.pieces, l.left = pour(whole(blocks), l.slots); !l.all() {
		l.pieces, l.left = pour(whole(ranked(blocks)), l.slots)
	}
	return l
}

// fitter tries layouts for one plan.
type fitter struct {
	stands []r2.Box // what stands, m
	extent r2.Box   // round all of it
	blocks []*block
	head   func(grand bool) float64 // height of the head
	scales []float64
	way    Orientation
}

// best is the best layout on a paper: the largest scale, then the one that holds every block, then
// the widest plan. ok is false where nothing fits.
func (f *fitter) best(p Paper) (best layout, ok bool) {
	for _, l := range f.layouts(p) {
		if !ok || l.times < best.times || l.times == best.times && l.holdsMore(&best) {
			best, ok = l, true
		}
	}
	return best, ok
}

// layouts are the ways to fill a paper, each at its largest scale.
func (f *fitter) layouts(p Paper) []layout {
	var all []layout
	if f.way != Portrait {
		for n := 1; n <= 3; n++ {
			if l, ok := f.beside(sheetOf(p, false), n); ok {
				all = append(all, l)
			}
		}
	}
	if f.way != Landscape {
		if l, ok := f.under(sheetOf(p, true)); ok {
			all = append(all, l)
		}
	}
	return all
}

// beside fits the plan beside a collar of n columns.
func (f *fitter) beside(page layout, n int) (layout, bool) {
	head := f.head(page.grand())
	l := page.side(n, 0, head)
	least := share * page.wide * page.high / width(l.plan)
	if width(l.plan) <= 0 || least > height(l.plan) {
		return l, false
	}
	times, ok := f.largest(width(l.plan), height(l.plan))
	if !ok {
		return l, false
	}
	_, need := needs(f.extent, times)
	spare := height(l.plan) - math.Max(need, least)
	return f.lowest(times, lowest, spare, func(band float64) layout { return page.side(n, band, head) }), true
}

// under fits the plan over a collar along the foot of the page.
func (f *fitter) under(page layout) (layout, bool) {
	head := f.head(page.grand())
	floor := math.Max(head+2*pads, blockHigh+barHeight+2*pads) + 2*pads
	room := height(page.frame) - floor
	times, ok := f.largest(width(page.frame), room)
	if !ok {
		return page, false
	}
	_, need := needs(f.extent, times)
	need = math.Max(need, share*page.wide*page.high/width(page.frame))
	if need > room {
		return page, false
	}
	l := f.lowest(times, floor, height(page.frame)-need, func(high float64) layout { return page.below(math.Max(high, floor), head) })
	return l, true
}

// lowest makes the layout with the lowest strip of text that holds all blocks; where none does,
// that which holds the most, by rank.
func (f *fitter) lowest(times, from, to float64, with func(strip float64) layout) layout {
	const step = 2.0
	try := func(strip float64) layout {
		l := with(strip)
		l.times = times
		return l.filled(f.blocks).withCorner(viewOf(f.extent, l.plan, times), f.stands)
	}
	best := try(0)
	for strip := from; strip <= to && !best.all(); strip += step {
		if l := try(strip); l.over(&best) {
			best = l
		}
	}
	return best
}

// holdsMore says whether l is worth turning the paper for, or a wider collar: it holds all, or more
// of what belongs beside the plan.
func (l *layout) holdsMore(m *layout) bool {
	if l.all() || m.all() {
		return !m.all()
	}
	return l.rows(must)+l.rows(wanted) > m.rows(must)+m.rows(wanted)
}

// over says whether l holds more than m: of what must stand beside the plan, else of what is wanted
// there, else of the rest.
func (l *layout) over(m *layout) bool {
	for r := must; r <= other; r++ {
		if a, b := l.rows(r), m.rows(r); a != b {
			return a > b
		}
	}
	return false
}

// largest is the largest scale at which the plan fits into a panel.
func (f *fitter) largest(w, h float64) (float64, bool) {
	for _, times := range f.scales {
		if nw, nh := needs(f.extent, times); nw <= w && nh <= h {
			return times, true
		}
	}
	return 0, false
}

// choose picks paper, way and scale. Without a paper asked for, it is A4 where the plan fits at a
// good scale with what must stand beside it, else A3, and larger only for a scale that was asked
// for.
func (c *composer) choose(f *fitter) (layout, bool) {
	f.scales, f.way = series(c.in.Setup.Feet), c.wish.way
	if c.wish.scale > 0 {
		f.scales = []float64{c.wish.scale}
	}
	sizes := papers()[:2]
	switch {
	case c.wish.paper != nil:
		sizes = []Paper{*c.wish.paper}
	case c.wish.scale > 0:
		sizes = papers()[:4]
	}
	var best layout
	found := false
	for _, p := range sizes {
		l, ok := f.best(p)
		if ok && (!found || l.times < best.times || l.times == best.times && l.placed() && !best.placed()) {
			best, found = l, true
		}
		if found && best.placed() && (best.times <= good || c.wish.scale > 0) {
			break
		}
	}
	if !found {
		c.tooLarge(f)
	}
	return best, found
}

// tooLarge records that the plan does not fit, with what would do.
func (c *composer) tooLarge(f *fitter) {
	feet := c.in.Setup.Feet
	where := "A3"
	if c.wish.paper != nil {
		where = c.wish.paper.Name
	}
	smallest := f.scales[len(f.scales)-1]
	d := source.Diagnostic{Severity: source.Error, Code: "plan-too-large", Setup: c.in.Setup.Name,
		Message: fmt.Sprintf("the plan is %s by %s and does not fit on %s at %s", c.length(width(f.extent)), c.length(height(f.extent)),
			where, unit.FormatScale(smallest, feet)),
		Hint: "bring the things that stand far off nearer"}
	if s := c.in.Setup.Scene; s != nil {
		d.Span = s.Sheet.Scale.Span
	}
	if asked := c.wish.scale; asked > 0 {
		f.scales = series(feet)
		if l, ok := f.best(c.paperOr(papers()[1])); ok {
			d.Hint = "it fits at " + unit.FormatScale(l.times, feet)
		}
		f.scales = []float64{asked}
	}
	for _, p := range papers()[:4] {
		if l, ok := f.best(p); ok {
			d.Hint += ", or on " + p.Name + " at " + unit.FormatScale(l.times, feet)
			break
		}
	}
	c.log.add(d)
}

func (c *composer) paperOr(p Paper) Paper {
	if c.wish.paper != nil {
		return *c.wish.paper
	}
	return p
}
