package layout

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sync"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/box"
)

// ranked is the blocks in the order of their ranks, those of a rank as they are read.
func ranked(blocks []Remainder) []Remainder {
	out := slices.Clone(blocks)
	slices.SortStableFunc(out, func(a, b Remainder) int { return int(a.block.Rank) - int(b.block.Rank) })
	return out
}

// tallest is the blocks in the order of their ranks, the tallest of a rank first, which packs best.
func tallest(blocks []Remainder) []Remainder {
	tall := func(b Remainder) float64 { return b.taking(len(b.block.Rows) - b.from) }
	out := slices.Clone(blocks)
	slices.SortStableFunc(out, func(a, b Remainder) int {
		return cmp.Or(cmp.Compare(a.block.Rank, b.block.Rank), cmp.Compare(tall(b), tall(a)))
	})
	return out
}

// signsFirst is the blocks in the order of their ranks, but the lists of lights last of what is needed: one that is too
// long for the sheet is not to push the legend off it.
func signsFirst(blocks []Remainder) []Remainder {
	order := func(r Rank) Rank {
		if r == Listed {
			return Needed
		}
		return r
	}
	out := slices.Clone(blocks)
	slices.SortStableFunc(out, func(a, b Remainder) int {
		return cmp.Or(cmp.Compare(order(a.block.Rank), order(b.block.Rank)), cmp.Compare(b.block.Rank, a.block.Rank))
	})
	return out
}

// holding is the layout with the blocks in the collar and in the corners of the plan's panel: in the
// order of reading and whole where that holds all, else by rank, and split over columns only where
// more can stand on the sheet that way.
func (l Layout) holding(blocks []Remainder, v View, stands []r2.Box) Layout {
	best := l.poured(blocks, v, stands)
	if best.begun(Listed) > 0 {
		best = best.orBetter(l.with(signsFirst(blocks), v, stands, Pour))
	}
	if best.splits() > 1 || slices.ContainsFunc(best.Left, func(r Remainder) bool { return r.from > 0 }) {
		// Blocks that are poured by rank can split two where one would have done, and the other gone into a corner: whole, for a corner holds no rest.
		for _, b := range blocks {
			best = best.orBetter(l.with(ranked(blocks), v, stands, func(all []Remainder, slots []Slot) ([]Piece, []Remainder) {
				return pour(all, slots, func(r Remainder) bool { return r.block == b.block })
			}))
		}
	}
	return best
}

// poured is the layout with the blocks in the order that holds the most, split only where whole ones leave some out.
func (l Layout) poured(blocks []Remainder, v View, stands []r2.Box) (best Layout) {
	for i, pouring := range [...]func([]Remainder, []Slot) ([]Piece, []Remainder){pourWhole, Pour} {
		for j, order := range [...][]Remainder{blocks, ranked(blocks), tallest(blocks)} {
			if i+j == 0 {
				best = l.with(order, v, stands, pouring)
			} else {
				best = best.orBetter(l.with(order, v, stands, pouring))
			}
			if best.All() {
				return best
			}
		}
	}
	return best
}

// with is the layout with blocks poured into its columns, and what they leave in the corners of the plan's panel.
func (l Layout) with(blocks []Remainder, v View, stands []r2.Box, pouring func([]Remainder, []Slot) ([]Piece, []Remainder)) Layout {
	l.Pieces, l.Left = pouring(blocks, l.Slots)
	return l.withCorners(v, stands)
}

// orBetter is m where that holds more.
func (l Layout) orBetter(m Layout) Layout {
	if m.over(&l) {
		return m
	}
	return l
}

// Fitter tries layouts for one plan.
type Fitter struct {
	Stands []r2.Box // what stands, m
	Seams  Seams    // what match lines keep clear of
	Extent r2.Box   // round all of it, m
	Blocks []Remainder
	Head   func(grand bool) float64 // height of the head, mm
	Feet   bool
	// Second says that a second page comes anyway: what need not stand beside the plan goes there rather than make
	// the plan smaller.
	Second bool
	Asked  *Paper  // nil: any
	Scale  float64 // that was asked for, as a ratio; 0: any
	Way    Orientation
	Scales []float64   // to choose from, as ratios, the largest first
	Least  *Layout     // with the least lettering: more orders of blocks are tried until a layout of its kind holds as much; nil: the usual orders do
	Keys   []Remainder // what stands on every part of a plan in parts
	// Lined is where dimension lines run beside the plan, as shares of a side: X is 1 at its right, -1 at its left, Y
	// is 1 above it, -1 below, 0 where nothing asks for room.
	Lined r2.Vec
	more  r2.Vec // mm that the panel has for them over its margins
	// Cut counts the labels of a layout that would say less on the plan than they could.
	Cut func(l *Layout) int
}

// Best is the best layout on a paper. ok is false where nothing fits.
func (f *Fitter) Best(p Paper) (best Layout, ok bool) {
	for _, l := range f.layouts(p) {
		if !ok || f.better(&l, &best) {
			best, ok = l, true
		}
	}
	return best, ok
}

// layouts are the ways to fill a paper, each at its largest scale.
func (f *Fitter) layouts(p Paper) []Layout {
	var all []Layout
	for _, upright := range [...]bool{false, true} {
		if f.Way == Portrait && !upright || f.Way == Landscape && upright {
			continue
		}
		page := PageOf(p, upright)
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
func (f *Fitter) beside(page Layout, n int) (Layout, bool) {
	head := f.Head(page.LargeFormat())
	l := page.side(n, 0, head)
	least := Share * page.Wide * page.High / box.Width(l.Plan)
	if box.Width(l.Plan) <= 0 || least > box.Height(l.Plan) {
		return l, false
	}
	times, ok := f.largest(box.Width(l.Plan), box.Height(l.Plan))
	if !ok {
		return l, false
	}
	_, need := f.needs(times)
	spare := box.Height(l.Plan) - math.Max(need, least)
	return f.lowest(times, lowest, spare, func(band float64) Layout { return page.side(n, band, head) }), true
}

// under fits the plan over a collar along the foot of the page.
func (f *Fitter) under(page Layout) (Layout, bool) {
	head := f.Head(page.LargeFormat())
	floor := math.Max(head+2*Pads, blockHigh+BarHeight+2*barGap)
	room := box.Height(page.Frame) - floor
	times, ok := f.largest(box.Width(page.Frame), room)
	if !ok {
		return page, false
	}
	_, need := f.needs(times)
	need = math.Max(need, Share*page.Wide*page.High/box.Width(page.Frame))
	if need > room {
		return page, false
	}
	l := f.lowest(times, floor, box.Height(page.Frame)-need, func(high float64) Layout { return page.below(math.Max(high, floor), head) })
	return l, true
}

// lowest makes the layout with the lowest strip of text that holds all blocks; where none does,
// that which holds the most, by rank.
func (f *Fitter) lowest(times, from, to float64, with func(strip float64) Layout) Layout {
	const step = 2.0
	found := false // the order of blocks that holds enough
	try := func(strip float64) Layout {
		l := with(strip)
		l.Times = times
		v := f.View(&l)
		l = l.holding(f.Blocks, v, f.Stands)
		if f.Least == nil || found || box.Width(l.Plan) != box.Width(f.Least.Plan) {
			return l
		}
		l, found = l.searched(f.Blocks, v, f.Stands, f.Least)
		return l
	}
	best := try(0)
	for strip := from; strip <= to && !best.All(); strip += step {
		if l := try(strip); l.over(&best) {
			best = l
		}
	}
	return best
}

// over says whether l holds more than m: of what must stand beside the plan, of whole lists of lights, then of what is
// needed there, and of parts of those lists; then whether it holds all, splits fewer blocks, and holds more of what is wanted, and of the rest.
func (l *Layout) over(m *Layout) bool {
	return slices.Compare(l.merits(), m.merits()) > 0
}

func (l *Layout) merits() []int {
	all := 0
	if l.All() {
		all = 1
	}
	return []int{l.rows(must), -l.begun(Listed), l.rows(Needed), l.rows(Listed), all, -l.splits(), l.rows(Wanted), l.rows(Other)}
}

// neededMerits are those of what must stand beside the plan or is needed there.
const neededMerits = 4

// wantedMerits are those without what is of the last rank.
const wantedMerits = 7

// begun is how many blocks of a rank do not stand on the sheet as a whole.
func (l *Layout) begun(of Rank) (n int) {
	for _, r := range l.Left {
		if r.block.Rank == of {
			n++
		}
	}
	return n
}

// better says whether l is a better sheet than m: it is at a scale that is read with ease; it holds
// what must stand beside the plan; its plan fills the page; it holds what is needed there; it holds all blocks, unless a second page
// comes anyway; it is drawn larger; it holds more.
func (f *Fitter) better(l, m *Layout) bool {
	for _, is := range [...]func(l *Layout) bool{
		func(l *Layout) bool { return l.Times <= readableScale },
		func(l *Layout) bool { return l.Times <= poorScale },
		(*Layout).stands,
		f.fills,
		(*Layout).placed,
		func(l *Layout) bool { return f.Second || l.All() },
	} {
		if is(l) != is(m) {
			return is(l)
		}
	}
	if l.Times != m.Times {
		return l.Times < m.Times
	}
	return l.over(m)
}

// View is how the plan lies in the panel of a layout.
func (f *Fitter) View(l *Layout) View {
	v := ViewOf(f.Extent, l.Plan, l.Times)
	aside := func(spare float64) float64 {
		return math.Max(0, math.Min(lining, spare-edge)-spare/2)
	}
	v.Shift.X -= f.Lined.X * aside(box.Width(l.Plan)-box.Width(f.Extent)*v.Scale)
	v.Shift.Y -= f.Lined.Y * aside(box.Height(l.Plan)-box.Height(f.Extent)*v.Scale)
	return v
}

// GiveRoom gives the panel of a layout room for the dimension lines: on both sides or on one, the most that the sheet is
// no worse for. Sections that nobody looks for on the first page may go to the next.
func (f *Fitter) GiveRoom(l Layout) Layout {
	wide, high := math.Abs(f.Lined.X)*(lining+edge-2*marginX), math.Abs(f.Lined.Y)*(lining+edge-2*marginY)
	for _, f.more = range [...]r2.Vec{{X: wide, Y: high}, {Y: high}, {X: wide}} {
		roomy, ok := f.Best(l.Paper)
		if ok && roomy.Times == l.Times && roomy.Wide == l.Wide && (roomy.All() || !l.All()) && slices.Compare(roomy.merits()[:wantedMerits], l.merits()[:wantedMerits]) >= 0 {
			return roomy
		}
	}
	f.more = r2.Vec{}
	return l
}

// KeepRoom keeps for the dimension lines what a layout has for them, however much text is to stand beside the plan.
func (f *Fitter) KeepRoom(l *Layout) {
	kept := func(lined, had, panel, extent, margin float64) float64 {
		wanted := math.Abs(lined) * (lining + edge - 2*margin)
		return math.Max(had, math.Min(wanted, panel-extent*1000/l.Times-2*margin))
	}
	f.more.X = kept(f.Lined.X, f.more.X, box.Width(l.Plan), box.Width(f.Extent), marginX)
	f.more.Y = kept(f.Lined.Y, f.more.Y, box.Height(l.Plan), box.Height(f.Extent), marginY)
}

// fills says whether the plan itself, with its margins, takes its share of the page.
func (f *Fitter) fills(l *Layout) bool {
	w, h := f.needs(l.Times)
	return w*h >= Share*l.Wide*l.High
}

// largest is the largest scale at which the plan fits into a panel.
func (f *Fitter) largest(w, h float64) (float64, bool) {
	for _, times := range f.Scales {
		if nw, nh := f.needs(times); nw <= w && nh <= h {
			return times, true
		}
	}
	return 0, false
}

// Choose picks paper, way and scale. Without a paper asked for, it is the smallest that most have
// where the plan fits at a good scale with what must stand beside it, says all that it has to say and
// fills its share of the page, else the next; larger ones only for a scale that was asked for.
func (f *Fitter) Choose() (Layout, bool) {
	sizes := PapersOf(f.Feet)[:2]
	switch {
	case f.Asked != nil:
		sizes = []Paper{*f.Asked}
	case f.Scale > 0:
		sizes = PapersOf(f.Feet)
	}
	var best offer
	found := false
	for _, p := range sizes {
		l, ok := f.Best(p)
		if !ok {
			continue
		}
		o := offer{l, sync.OnceValue(func() int { return f.Cut(&l) })}
		if !found || f.preferred(&o, &best) {
			best, found = o, true
		}
		if len(sizes) == 1 || best.placed() && (best.Times <= readableScale && f.fills(&best.Layout) || f.Scale > 0) && best.cut() == 0 {
			break
		}
	}
	return best.Layout, found
}

// offer is the best layout on one paper.
type offer struct {
	Layout
	cut func() int // labels that say less on the plan than they could: a plan of many lights is long to letter, and is lettered once, where it matters
}

// preferred says whether a is worth its paper over b, which is smaller: a list that spills to another
// page and a tag without its unit or level cost the reader more than a large sheet does.
func (f *Fitter) preferred(a, b *offer) bool {
	if read := a.Times <= readableScale; read != (b.Times <= readableScale) {
		return read
	}
	if a.placed() != b.placed() {
		return a.placed()
	}
	if held := slices.Compare(a.merits()[:neededMerits], b.merits()[:neededMerits]); held != 0 && !a.placed() {
		return held > 0
	}
	if more := a.cut() - b.cut(); more != 0 {
		return more < 0
	}
	return f.better(&a.Layout, &b.Layout)
}

// InParts is the layout of a plan that no page holds at the scale asked for, or else at the
// smallest that is drawn.
func (f *Fitter) InParts() (Layout, bool) { return f.split(f.usual(), f.Scales[len(f.Scales)-1]) }

// TooLarge says that the plan does not fit, with what would do.
func (f *Fitter) TooLarge() source.Diagnostic {
	feet := f.Feet
	smallest := f.Scales[len(f.Scales)-1]
	d := source.Diagnostic{Severity: source.Error, Code: "plan-too-large",
		Message: fmt.Sprintf("the plan is %s by %s and does not fit on %s at %s", unit.FormatLength(box.Width(f.Extent), feet),
			unit.FormatLength(box.Height(f.Extent), feet), f.usual().Name, unit.FormatScale(smallest, feet)),
		Hint: "bring the things that stand far off nearer"}
	if f.Scale > 0 {
		f.Scales = unit.Scales(feet)
		if l, ok := f.Best(f.usual()); ok {
			d.Hint = "it fits at " + unit.FormatScale(l.Times, feet)
		} else if times, ok := f.inPartsAt(f.usual()); ok {
			d.Hint = "it comes in parts at " + unit.FormatScale(times, feet)
		}
		f.Scales = []float64{f.Scale}
	}
	for _, p := range PapersOf(feet) {
		if l, ok := f.Best(p); ok {
			d.Hint += ", or on " + p.Name + " at " + unit.FormatScale(l.Times, feet)
			break
		}
	}
	return d
}

// usual is the paper that was asked for, or else the larger of those that most have.
func (f *Fitter) usual() Paper {
	if f.Asked != nil {
		return *f.Asked
	}
	return PapersOf(f.Feet)[1]
}
