package layout

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/box"
)

// Sizes of a corner of the plan's panel that is given to text, mm.
const (
	cornerClear = 14.0 // between it and what stands on the plan, which wants its tags there
	cornerLeast = 22.0 // it is no lower than this
)

// withCorners is the layout with blocks that have no room in the collar in the empty corners of the
// plan's panel, as maps lay boxes into open sea: those that must stand beside the plan first. It
// stays as it is where no corner holds any.
func (l Layout) withCorners(v View, stands []r2.Box) Layout {
	taken := taken(v, stands)
	for ok := true; ok && len(l.Left) > 0; {
		if l, ok = l.withCorner(v.Panel, taken); ok {
			taken = append(taken, l.Corners[len(l.Corners)-1])
		}
	}
	return l
}

// taken is what of the panel's paper corners keep clear of: what stands on the plan, and the room round it.
func taken(v View, stands []r2.Box) (all []r2.Box) {
	for _, s := range stands {
		all = append(all, box.Inset(r2.Box{Min: v.Paper(s.Min), Max: v.Paper(s.Max)}, -cornerClear, -cornerClear))
	}
	return all
}

// withCorner is the layout with blocks in the highest corner that holds any.
func (l Layout) withCorner(panel r2.Box, taken []r2.Box) (Layout, bool) {
	for _, b := range freeCorners(panel, taken) {
		own := Slot{X: b.Min.X + Pads, Top: b.Max.Y - Pads, Bottom: b.Min.Y + Pads}
		whole, begun := unbegun(l.Left)
		pieces, left := pourWhole(ranked(whole), []Slot{own})
		left = append(begun, left...)
		if len(pieces) == 0 {
			continue
		}
		used := 2 * Pads
		for i := range pieces {
			used += pieces[i].Gap + pieces[i].Height
			pieces[i].slot = len(l.Slots)
		}
		if b.Max.Y == panel.Max.Y { // it hangs from the top, else it stands on the foot
			b.Min.Y = b.Max.Y - used
		} else {
			b.Max.Y = b.Min.Y + used
		}
		own.Top, own.Bottom = b.Max.Y-Pads, b.Min.Y+Pads
		l.Corners = append(slices.Clone(l.Corners), b)
		l.Slots = append(slices.Clone(l.Slots), own)
		l.Pieces = append(slices.Clone(l.Pieces), pieces...)
		l.Left = left
		return l, true
	}
	return l, false
}

// unbegun are the blocks that a corner may hold, and those that it may not: nobody looks for the rest of a block above or beside its
// beginning. A list of lights goes on there rather than on another page.
func unbegun(left []Remainder) (whole, begun []Remainder) {
	for _, r := range left {
		if r.from == 0 || r.block.Rank == Listed {
			whole = append(whole, r)
		} else {
			begun = append(begun, r)
		}
	}
	return whole, begun
}

// Open is the layout without the corners that hold nothing that must stand beside the plan: the
// room is the plan's again.
func (l Layout) Open() Layout {
	m := l
	first := len(l.Slots) - len(l.Corners) // the slot of the first corner
	held := make([]bool, len(l.Corners))
	for _, q := range l.Pieces {
		if q.slot >= first && q.Block.Rank == must {
			held[q.slot-first] = true
		}
	}
	m.Slots, m.Corners, m.Pieces = slices.Clone(l.Slots[:first]), nil, nil
	to := map[int]int{}
	for i, b := range l.Corners {
		if held[i] {
			to[first+i] = len(m.Slots)
			m.Slots, m.Corners = append(m.Slots, l.Slots[first+i]), append(m.Corners, b)
		}
	}
	var freed []Remainder
	for _, q := range l.Pieces {
		switch at, moved := to[q.slot]; {
		case q.slot < first:
			m.Pieces = append(m.Pieces, q)
		case moved:
			q.slot = at
			m.Pieces = append(m.Pieces, q)
		default:
			freed = append(freed, Remainder{q.Block, q.From})
		}
	}
	m.Left = append(freed, l.Left...)
	return m
}

// freeCorners are boxes in the corners of a panel, as wide as a column of text with its pads and
// clear of what is taken, highest first.
func freeCorners(panel r2.Box, taken []r2.Box) []r2.Box {
	const wide = Measure + 2*Pads
	var free []r2.Box
	for _, left := range [...]float64{panel.Max.X - wide, panel.Min.X} {
		low, high := panel.Min.Y, panel.Max.Y // of what stands below and above it
		for _, b := range taken {
			if b.Max.X > left && b.Min.X < left+wide {
				low, high = math.Max(low, b.Max.Y), math.Min(high, b.Min.Y)
			}
		}
		for _, b := range [...]r2.Box{box.Of(left, low, left+wide, panel.Max.Y), box.Of(left, panel.Min.Y, left+wide, high)} {
			if box.Height(b) >= cornerLeast {
				free = append(free, b)
			}
		}
	}
	slices.SortStableFunc(free, func(a, b r2.Box) int { return cmp.Compare(box.Height(b), box.Height(a)) })
	return free
}
