package sheet

import (
	"cmp"
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

// tallest is the blocks in the order of their ranks, the tallest of a rank first, which packs best.
func tallest(blocks []*block) []*block {
	tall := func(b *block) float64 { return rest{block: b}.taking(len(b.rows)) }
	out := slices.Clone(blocks)
	slices.SortStableFunc(out, func(a, b *block) int {
		return cmp.Or(cmp.Compare(a.rank, b.rank), cmp.Compare(tall(b), tall(a)))
	})
	return out
}

// holding is the layout with the blocks in the collar and in the corners of the plan's panel: in the
// order of reading and whole where that holds all, else by rank, and split over columns only where
// more can stand on the sheet that way.
func (l layout) holding(blocks []*block, v view, stands []r2.Box) (best layout) {
	ways := [...]func([]rest, []slot) ([]piece, []rest){pourWhole, pour}
	for i, pouring := range ways {
		for j, order := range [...][]*block{blocks, ranked(blocks), tallest(blocks)} {
			if i+j > 0 && best.all() {
				return best
			}
			m := l
			m.pieces, m.left = pouring(whole(order), m.slots)
			if m = m.withCorners(v, stands); i+j == 0 || m.over(&best) {
				best = m
			}
		}
	}
	return best
}

// fitter tries layouts for one plan.
type fitter struct {
	stands []r2.Box // what stands, m
	extent r2.Box   // round all of it
	blocks []*block
	head   func(grand bool) float64 // height of the head, mm
	feet   bool
	asked  *Paper  // nil: any
	scale  float64 // that was asked for, 0: any
	way    Orientation
	scales []float64 // to choose from, the largest first
	keys   []*block  // what stands on every part of a plan in parts
	// cut counts the labels of a layout that would say less on the plan than they could.
	cut func(l *layout) int
}

// best is the best layout on a paper. ok is false where nothing fits.
func (f *fitter) best(p Paper) (best layout, ok bool) {
	for _, l := range f.layouts(p) {
		if !ok || f.better(&l, &best) {
			best, ok = l, true
		}
	}
	return best, ok
}

// layouts are the ways to fill a paper, each at its largest scale.
func (f *fitter) layouts(p Paper) []layout {
	var all []layout
	for _, upright := range [...]bool{false, true} {
		if f.way == Portrait && !upright || f.way == Landscape && upright {
			continue
		}
		page := sheetOf(p, upright)
		for n := 1; n <= 3; n++ {
			if l, ok := f.beside(page, n); ok {
				all = append(all, l)
			}
		}
		if l, ok := f.under(page); ok {
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
	floor := math.Max(head+2*pads, blockHigh+barHeight+2*barGap)
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
		return l.holding(f.blocks, f.view(&l), f.stands)
	}
	best := try(0)
	for strip := from; strip <= to && !best.all(); strip += step {
		if l := try(strip); l.over(&best) {
			best = l
		}
	}
	return best
}

// over says whether l holds more than m: of what must stand beside the plan, then of what is needed
// there; then whether it splits fewer blocks, and holds more of what is wanted, and of the rest.
func (l *layout) over(m *layout) bool {
	return slices.Compare(l.merits(), m.merits()) > 0
}

func (l *layout) merits() []int {
	return []int{l.rows(must), l.rows(needed), -l.splits(), l.rows(wanted), l.rows(other)}
}

// better says whether l is a better sheet than m: it is at a scale that is read with ease; it holds
// what must stand beside the plan; its plan fills the page; it holds all blocks; it is drawn larger;
// it holds more.
func (f *fitter) better(l, m *layout) bool {
	for _, is := range [...]func(l *layout) bool{
		func(l *layout) bool { return l.times <= good },
		(*layout).placed,
		f.fills,
		(*layout).all,
	} {
		if is(l) != is(m) {
			return is(l)
		}
	}
	if l.times != m.times {
		return l.times < m.times
	}
	return l.over(m)
}

// view is how the plan lies in the panel of a layout.
func (f *fitter) view(l *layout) view {
	v := viewOf(f.extent, l.plan, l.times)
	v.shift.Y += lifted
	return v
}

// fills says whether the plan itself, with its margins, takes its share of the page.
func (f *fitter) fills(l *layout) bool {
	w, h := needs(f.extent, l.times)
	return w*h >= share*l.wide*l.high
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

// choose picks paper, way and scale. Without a paper asked for, it is the smallest that most have
// where the plan fits at a good scale with what must stand beside it, says all that it has to say and
// fills its share of the page, else the next; larger ones only for a scale that was asked for.
func (f *fitter) choose() (layout, bool) {
	sizes := papersOf(f.feet)[:2]
	switch {
	case f.asked != nil:
		sizes = []Paper{*f.asked}
	case f.scale > 0:
		sizes = papersOf(f.feet)
	}
	var best offer
	found := false
	for _, p := range sizes {
		l, ok := f.best(p)
		if !ok {
			continue
		}
		o := offer{layout: l}
		if len(sizes) > 1 {
			o.cut = f.cut(&l)
		}
		if !found || f.preferred(&o, &best) {
			best, found = o, true
		}
		if best.placed() && best.cut == 0 && (best.times <= good && f.fills(&best.layout) || f.scale > 0) {
			break
		}
	}
	return best.layout, found
}

// offer is the best layout on one paper.
type offer struct {
	layout
	cut int // labels that say less on the plan than they could
}

// preferred says whether a is worth its paper over b, which is smaller: a list that spills to another
// page and a tag without its unit or level cost the reader more than a large sheet does.
func (f *fitter) preferred(a, b *offer) bool {
	if read := a.times <= good; read != (b.times <= good) {
		return read
	}
	if a.placed() != b.placed() {
		return a.placed()
	}
	if a.cut != b.cut {
		return a.cut < b.cut
	}
	return f.better(&a.layout, &b.layout)
}

// inParts is the layout of a plan that no page holds at the scale asked for, or else at the
// smallest that is drawn.
func (f *fitter) inParts() (layout, bool) { return f.split(f.usual(), f.scales[len(f.scales)-1]) }

// tooLarge says that the plan does not fit, with what would do.
func (f *fitter) tooLarge() source.Diagnostic {
	feet := f.feet
	smallest := f.scales[len(f.scales)-1]
	d := source.Diagnostic{Severity: source.Error, Code: "plan-too-large",
		Message: fmt.Sprintf("the plan is %s by %s and does not fit on %s at %s", unit.FormatLength(width(f.extent), feet),
			unit.FormatLength(height(f.extent), feet), f.usual().Name, unit.FormatScale(smallest, feet)),
		Hint: "bring the things that stand far off nearer"}
	if f.scale > 0 {
		f.scales = unit.Scales(feet)
		if l, ok := f.best(f.usual()); ok {
			d.Hint = "it fits at " + unit.FormatScale(l.times, feet)
		} else if times, ok := f.inPartsAt(f.usual()); ok {
			d.Hint = "it comes in parts at " + unit.FormatScale(times, feet)
		}
		f.scales = []float64{f.scale}
	}
	for _, p := range papersOf(feet) {
		if l, ok := f.best(p); ok {
			d.Hint += ", or on " + p.Name + " at " + unit.FormatScale(l.times, feet)
			break
		}
	}
	return d
}

// usual is the paper that was asked for, or else the larger of those that most have.
func (f *fitter) usual() Paper {
	if f.asked != nil {
		return *f.asked
	}
	return papersOf(f.feet)[1]
}
