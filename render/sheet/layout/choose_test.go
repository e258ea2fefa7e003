package layout

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// TestOneSplitWhereOneWillDo lays out a sheet whose cautions are too tall for every column. The legend, which is not, must
// stay in one piece: it goes whole into the corner that two lists would share if each were split.
func TestOneSplitWhereOneWillDo(t *testing.T) {
	rows := func(n int, high float64) (all []float64) {
		for range n {
			all = append(all, high)
		}
		return all
	}
	key := &Block{Rank: must, Head: 5.4, Rows: rows(2, 8.85)}
	face := &Block{Rank: must, Head: 5.4, Rows: rows(7, 4.6)}
	cautions := &Block{Rank: must, Head: 5.4, Rows: rows(6, 8)}
	legend := &Block{Rank: Needed, Head: 5.4, Rows: rows(8, 5.15)}
	l := Layout{Plan: box.Of(0, 0, 300, 60), Slots: []Slot{{Top: -5, Bottom: -25}, {X: 80, Top: -5, Bottom: -51.3}, {X: 160, Top: -5, Bottom: -51.3}, {X: 240, Top: -5, Bottom: -51.3}}}
	v := ViewOf(box.Of(0, 0, 10, 2), l.Plan, 40)
	corner := box.Of(4, 0, 10, 2) // what stands on the plan leaves its left side free
	got := l.holding(Whole([]*Block{key, face, cautions, legend}), v, []r2.Box{corner})
	if !got.All() {
		t.Fatalf("%d blocks found no place", len(got.Left))
	}
	for _, q := range got.Pieces {
		if q.Block == legend && (q.From > 0 || q.To < len(legend.Rows)) {
			t.Errorf("the legend is split: rows %d to %d in slot %d", q.From, q.To, q.slot)
		}
	}
	if n := got.splits(); n != 1 {
		t.Errorf("%d blocks are split, and one would do", n)
	}
}

// TestNoRestGoesIntoACorner: a block that is begun in a column runs on in the one right of it, or stands in the corner of the plan as a whole. "Not
// checked" began at the foot of a page and ran on above, in a corner.
func TestNoRestGoesIntoACorner(t *testing.T) {
	for _, c := range []struct {
		second float64 // the height of the second column, mm
		corner bool    // the block stands in the corner of the plan, which has room there
	}{{10, true}, {60, false}} {
		said := &Block{Rank: Other, Head: 5.4, Rows: []float64{12, 14, 12, 6, 6, 6, 6, 6, 6, 6}}
		l := Layout{Plan: box.Of(0, 0, 300, 120), Slots: []Slot{{Top: -5, Bottom: -45}, {X: 80, Top: -5, Bottom: -5 - c.second}}}
		stands := box.Of(0, 0, 10, 2)
		if c.corner {
			stands.Min.X = 4
		}
		got := l.holding(Whole([]*Block{said}), ViewOf(box.Of(0, 0, 10, 2), l.Plan, 40), []r2.Box{stands})
		if !got.All() {
			t.Fatalf("%+v: %d blocks found no place", c, len(got.Left))
		}
		if in := len(got.Corners) > 0; in != c.corner {
			t.Errorf("%+v: in a corner: %t", c, in)
		}
		for i, q := range got.Pieces {
			if q.From > 0 && (q.slot >= len(l.Slots) || l.Slots[q.slot].X <= l.Slots[got.Pieces[i-1].slot].X) {
				t.Errorf("%+v: rows from %d on stand in slot %d", c, q.From, q.slot)
			}
		}
	}
}

// TestWhatRunsOnStandsBeside: the cautions of the map room began below its head and ran on three columns further, past the key and the readings at
// the face. These make room: a column that is too low for what would come into it does not, nor one that holds a part of another list.
func TestWhatRunsOnStandsBeside(t *testing.T) {
	column := func(n, high int) Slot { return Slot{X: 80 * float64(n), Top: -5, Bottom: -5 - float64(high)} }
	rows := func(n int) *Block { return &Block{Rank: must, Head: 5, Rows: slices.Repeat([]float64{9}, n)} }
	for _, c := range []struct {
		name   string
		slots  []Slot
		blocks []*Block
		beside bool
	}{
		{"columns of one height", []Slot{column(0, 20), column(1, 50), column(2, 50), column(3, 50)}, []*Block{rows(4), rows(4), rows(6)}, true},
		{"a low last column", []Slot{column(0, 20), column(1, 50), column(2, 50), column(3, 47)}, []*Block{rows(4), rows(4), rows(5)}, true},
		{"too low for what would come", []Slot{column(0, 24), column(1, 50), column(2, 50), column(3, 40)}, []*Block{rows(5), rows(5), rows(5)}, false},
	} {
		pieces, left := Pour(Whole(c.blocks), c.slots)
		if len(left) > 0 {
			t.Fatalf("%s: %d blocks found no place", c.name, len(left))
		}
		last := c.blocks[len(c.blocks)-1]
		used, held := make([]float64, len(c.slots)), map[*Block]int{}
		var in []int
		for _, q := range pieces {
			used[q.slot] += q.Gap + q.Height
			held[q.Block] += q.To - q.From
			if q.Block == last {
				in = append(in, q.slot)
			}
		}
		for i, s := range c.slots {
			if used[i] > s.Height() {
				t.Errorf("%s: slot %d holds %g mm, and is %g mm high", c.name, i, used[i], s.Height())
			}
		}
		for i, b := range c.blocks {
			if held[b] != len(b.Rows) {
				t.Errorf("%s: block %d has %d of %d rows", c.name, i, held[b], len(b.Rows))
			}
		}
		if len(in) != 2 || (in[1] == in[0]+1) != c.beside {
			t.Errorf("%s: what is split stands in slots %v", c.name, in)
		}
	}
}

// TestPagesOfListsShareTheirRows: three lists of equal height, of which a page holds two, stand two and one; six, of which a page holds five, three and
// three. The lamps of a day came on three pages, the last with one set-up.
func TestPagesOfListsShareTheirRows(t *testing.T) {
	for _, c := range []struct{ lists, onEach int }{{6, 5}, {6, 4}, {9, 4}, {4, 4}, {1, 4}} {
		var blocks []*Block
		for range c.lists {
			blocks = append(blocks, &Block{Head: 5, Rows: []float64{10, 10}})
		}
		slot := Slot{Top: 100, Bottom: 100 - float64(c.onEach)*(25+BlockGap)}
		pages, _ := overPages(Whole(blocks), slot)
		slot.Bottom += Spared(Whole(blocks), slot)
		got, parts := overPages(Whole(blocks), slot)
		if got != pages || parts != c.lists {
			t.Errorf("%+v: %d pages and %d parts, want %d and %d", c, got, parts, pages, c.lists)
		}
		first, _ := Pour(Whole(blocks), []Slot{slot})
		if want := (c.lists + pages - 1) / pages; len(first) != want {
			t.Errorf("%+v: the first page has %d lists, want %d", c, len(first), want)
		}
	}
}
