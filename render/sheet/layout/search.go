package layout

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// searched is the layout with its blocks in an order that holds as much as the one with the least lettering: of those with any one of what the plan is
// hard to use without moved to the end or to the beginning, then of those with any two. Where none does, it stays as it is. Orders are tried only where
// all would find room if none were lost between blocks.
func (l Layout) searched(blocks []Remainder, v View, stands []r2.Box, least *Layout) (found Layout, ok bool) {
	enough := func(m *Layout) bool { return m.HoldsAsMuch(least, Needed) }
	needed, wanted := Divided(ranked(blocks), Needed)
	if enough(&l) || l.roomFor(v, stands) < heightOf(needed) {
		return l, enough(&l)
	}
	for _, order := range orders(needed) {
		if m := l.emptied().with(slices.Concat(order, wanted), v, stands, Pour); enough(&m) {
			return m, true
		}
	}
	return l, false
}

// emptied is the layout without its blocks.
func (l Layout) emptied() Layout {
	l.Slots = l.Slots[:len(l.Slots)-len(l.Corners)]
	l.Corners, l.Pieces, l.Left = nil, nil, nil
	return l
}

// roomFor is the height of all slots and of all corners that a layout could have, mm.
func (l Layout) roomFor(v View, stands []r2.Box) (mm float64) {
	for _, s := range l.emptied().Slots {
		mm += s.Height()
	}
	for _, c := range freeCorners(v.Panel, taken(v, stands)) {
		mm += box.Height(c) - 2*Pads
	}
	return mm
}

// heightOf is that of blocks, each with its heading, mm.
func heightOf(blocks []Remainder) (mm float64) {
	for _, b := range blocks {
		mm += b.taking(len(b.block.Rows) - b.from)
	}
	return mm
}

// orders are those of blocks with one of them moved to the end or to the beginning, and then with two.
func orders(blocks []Remainder) (all [][]Remainder) {
	var pairs [][]Remainder
	for i := range blocks {
		one, rest := blocks[i:i+1], slices.Concat(blocks[:i], blocks[i+1:])
		all = append(all, slices.Concat(rest, one), slices.Concat(one, rest))
		for j := range rest {
			pair, rest := []Remainder{blocks[i], rest[j]}, slices.Concat(rest[:j], rest[j+1:])
			pairs = append(pairs, slices.Concat(rest, pair), slices.Concat(pair, rest))
		}
	}
	return append(all, pairs...)
}
