package layout

import (
	"math"
	"slices"
)

// Slot is room on a page that blocks flow into: a column, Measure wide, from top to bottom in y, mm.
type Slot struct{ X, Top, Bottom float64 }

// Height is that of the room, mm.
func (s Slot) Height() float64 { return s.Top - s.Bottom }

// Piece is a part of a block in a slot: its rows from From up to To.
type Piece struct {
	slot     int
	Block    *Block
	From, To int
	Gap      float64 // above it, mm
	Height   float64 // mm
}

// isPart says whether the block has more rows elsewhere.
func (q *Piece) isPart() bool { return q.From > 0 || q.To < len(q.Block.Rows) }

// Remainder is what is left of a block: its rows from from on.
type Remainder struct {
	block *Block
	from  int
}

// Of is the block that it is left of.
func (r Remainder) Of() *Block { return r.block }

// IsBegun says whether the rest of the block stands elsewhere.
func (r Remainder) IsBegun() bool { return r.from > 0 }

// Whole are blocks of which nothing is placed.
func Whole(blocks []*Block) []Remainder {
	var all []Remainder
	for _, b := range blocks {
		all = append(all, Remainder{block: b})
	}
	return all
}

// Divided are the blocks up to a rank, and those beyond it.
func Divided(blocks []Remainder, last Rank) (first, later []Remainder) {
	for _, b := range blocks {
		if b.block.Rank <= last {
			first = append(first, b)
		} else {
			later = append(later, b)
		}
	}
	return first, later
}

// flow fills slots. A block goes whole into the first slot that has room for it, so that short
// ones fill what long ones leave; only a block too long for that is split, over slots that follow
// each other.
type flow struct {
	slots  []Slot
	used   []float64
	pieces []Piece
}

// Pour puts blocks into slots in order, and returns what went where and what found no place.
func Pour(blocks []Remainder, slots []Slot) (pieces []Piece, left []Remainder) {
	return pour(blocks, slots, func(Remainder) bool { return true })
}

// pourWhole puts blocks into slots in order, those that need not be split.
func pourWhole(blocks []Remainder, slots []Slot) (pieces []Piece, left []Remainder) {
	return pour(blocks, slots, func(Remainder) bool { return false })
}

// pour puts blocks into slots in order. It splits those alone that may be.
func pour(blocks []Remainder, slots []Slot, mayBeSplit func(Remainder) bool) (pieces []Piece, left []Remainder) {
	f := &flow{slots: slots, used: make([]float64, len(slots))}
	for _, b := range blocks {
		if f.whole(b) {
			continue
		}
		if mayBeSplit(b) {
			b.from = f.split(b)
		}
		if b.from < len(b.block.Rows) {
			left = append(left, b)
		}
	}
	return f.pieces, left
}

// PourBalanced pours blocks into slots that are cut to one height, the least that holds as much as they
// do whole, so that columns end together. It returns the slots as they are cut.
func PourBalanced(blocks []Remainder, slots []Slot) (pieces []Piece, left []Remainder, cut []Slot) {
	const step = 4.0
	_, most := Pour(blocks, slots)
	tallest := 0.0
	for _, s := range slots {
		tallest = math.Max(tallest, s.Height())
	}
	for high := step; ; high += step {
		cut = slices.Clone(slots)
		for i := range cut {
			cut[i].Bottom = math.Max(cut[i].Bottom, cut[i].Top-high)
		}
		if pieces, left = pourWhole(blocks, cut); len(left) == 0 {
			return pieces, left, cut
		}
		if pieces, left = Pour(blocks, cut); high >= tallest || slices.Equal(left, most) && len(most) > 0 {
			return pieces, left, cut
		}
	}
}

// gap is the space above the next block in slot i: none at its top.
func (f *flow) gap(i int) float64 {
	if f.used[i] == 0 {
		return 0
	}
	return BlockGap
}

// room is the height that is left for a block in slot i.
func (f *flow) room(i int) float64 { return f.slots[i].Height() - f.used[i] - f.gap(i) }

// whole places what is left of a block in one slot, if one has the room.
func (f *flow) whole(b Remainder) bool {
	for i := range f.slots {
		if take := b.fitting(f.room(i)); b.from+take == len(b.block.Rows) {
			f.put(i, b, take)
			return true
		}
	}
	return false
}

// short is how many rows a block may have, and how high it may be, mm, to be kept whole.
const (
	short     = 9
	shortHigh = 60.0
)

// split places what is left of a long block over slots, and returns the first row without a place.
// The slots lie beside each other where any that do hold it. No slot begins or ends with one row alone. A short block is not begun that would stay whole on
// the next page, unless it has to stand on this one.
func (f *flow) split(b Remainder) int {
	isShort := len(b.block.Rows) <= short && b.taking(len(b.block.Rows)-b.from) <= shortHigh
	if isShort && b.block.Rank != must && !f.tallerThanAny(b) {
		return b.from
	}
	var best []portion
	for i := range f.slots {
		if some := f.chain(b, i, f.next); rowsOf(some) > rowsOf(best) || rowsOf(some) == rowsOf(best) && lonely(best) && !lonely(some) {
			best = some
		}
	}
	if any := f.chain(b, 0, f.after); b.from+rowsOf(best) < len(b.block.Rows) && rowsOf(any) > rowsOf(best) {
		best = any
	}
	for _, q := range f.closeUp(best) {
		f.put(q.slot, b, q.rows)
		b.from += q.rows
	}
	return b.from
}

// portion is how many rows of a block go into a slot.
type portion struct{ slot, rows int }

func rowsOf(all []portion) (n int) {
	for _, q := range all {
		n += q.rows
	}
	return n
}

// lonely says whether the first row of a block would stand alone, with the rest in other columns.
func lonely(all []portion) bool { return len(all) > 1 && all[0].rows == 1 }

// chain divides what is left of a block over a slot and those that come after it by an order, which says -1 where none does.
func (f *flow) chain(b Remainder, i int, after func(int) int) (all []portion) {
	for ; i >= 0 && i < len(f.slots); i = after(i) {
		take := b.fitting(f.room(i))
		last := b.from+take == len(b.block.Rows)
		if !last && b.from+take == len(b.block.Rows)-1 {
			take--
		}
		if last || take >= 2 || take == 1 && f.used[i] == 0 {
			all = append(all, portion{i, take})
			b.from += take
		}
		if last {
			break
		}
	}
	return all
}

// closeUp brings the slots of a block beside each other: what stands in the columns between two of them moves one to the right, past the later
// one. They stay where a column is too low for what would come into it, or holds a part of another block, whose parts that would take from each other.
func (f *flow) closeUp(all []portion) []portion {
	all = slices.Clone(all)
	for i := 1; i < len(all); i++ {
		to, from := all[i-1].slot+1, all[i].slot
		if f.mayTurn(to, from) {
			f.turn(to, from)
			all[i].slot = to
		}
	}
	return all
}

// mayTurn says whether what stands in a column, the last, may come into the first, and what stands in that and all between one to the right.
// What comes first fills no more than the last column holds.
func (f *flow) mayTurn(first, last int) bool {
	for i := first; i <= last; i++ {
		lower := i > first && f.slots[i].Height() < f.used[i-1]
		if f.next(i-1) != i || lower || slices.ContainsFunc(f.pieces, func(q Piece) bool { return q.slot == i && q.isPart() }) {
			return false
		}
	}
	return f.slots[first].Height() >= f.slots[last].Height()
}

// turn moves what stands in a column, the last, into the first, and what stands in that and all between one to the right.
func (f *flow) turn(first, last int) {
	for i := range f.pieces {
		switch q := &f.pieces[i]; {
		case q.slot == last:
			q.slot = first
		case first <= q.slot && q.slot < last:
			q.slot++
		}
	}
	used := f.used[last]
	copy(f.used[first+1:last+1], f.used[first:last])
	f.used[first] = used
}

// next is the column right beside a slot, where a reader looks for what runs on; -1 where there is none.
func (f *flow) next(i int) int {
	if i+1 < len(f.slots) && f.slots[i+1].X > f.slots[i].X {
		return i + 1
	}
	return -1
}

// after is the slot that comes next in any place: of a block that fits no columns beside each other.
func (f *flow) after(i int) int { return i + 1 }

// tallerThanAny says whether a block is too tall for any slot even where that is empty.
func (f *flow) tallerThanAny(b Remainder) bool {
	for _, s := range f.slots {
		if take := b.fitting(s.Height()); b.from+take == len(b.block.Rows) {
			return false
		}
	}
	return true
}

func (f *flow) put(i int, b Remainder, take int) {
	h := b.taking(take)
	f.pieces = append(f.pieces, Piece{i, b.block, b.from, b.from + take, f.gap(i), h})
	f.used[i] += f.gap(i) + h
}

// fitting counts the rows that a height holds below the heading.
func (b Remainder) fitting(room float64) (take int) {
	h := b.block.Head
	for _, r := range b.block.Rows[b.from:] {
		if h+r > room+1e-9 {
			break
		}
		h += r
		take++
	}
	return take
}

// taking is the height of some rows with the heading.
func (b Remainder) taking(take int) float64 {
	h := b.block.Head
	for _, r := range b.block.Rows[b.from : b.from+take] {
		h += r
	}
	return h
}

// InSlot are the pieces in a slot.
func InSlot(pieces []Piece, slot int) []Piece {
	var own []Piece
	for _, q := range pieces {
		if q.slot == slot {
			own = append(own, q)
		}
	}
	return own
}

// Pieces is a block as a whole in the first slot.
func Pieces(b *Block) []Piece {
	whole := Remainder{block: b}
	return []Piece{{Block: b, To: len(b.Rows), Height: whole.taking(len(b.Rows))}}
}

// Spared is how much lower pages of one slot each may end than the slot does, mm, without one more of them and without splitting more blocks: so they hold
// about as much each, and the last is no page of a few rows.
func Spared(blocks []Remainder, slot Slot) (mm float64) {
	const step = 4.0
	pages, splits := overPages(blocks, slot)
	if pages == 1 {
		return 0
	}
	for lower := step; lower < slot.Height(); lower += step {
		s := slot
		s.Bottom += lower
		if n, parts := overPages(blocks, s); n != pages || parts > splits {
			break
		}
		mm = lower
	}
	return mm
}

// overPages counts the pages that blocks take in a slot on each, and the parts that these are split into. One taller than any page ends the count.
func overPages(blocks []Remainder, slot Slot) (pages, parts int) {
	for len(blocks) > 0 {
		pieces, left := Pour(blocks, []Slot{slot})
		if pages++; slices.Equal(left, blocks) {
			return pages, math.MaxInt
		}
		parts += len(pieces)
		blocks = left
	}
	return pages, parts
}
