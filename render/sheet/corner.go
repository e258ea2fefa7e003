package sheet

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Sizes of a corner of the plan's panel that is given to text, mm.
const (
	cornerClear = 14.0 // between it and what stands on the plan, which wants its tags there
	cornerLeast = 22.0 // it is no lower than this
)

// withCorners is the layout with blocks that have no room in the collar in the empty corners of the
// plan's panel, as maps lay boxes into open sea: those that must stand beside the plan first. It
// stays as it is where no corner holds any.
func (l layout) withCorners(v view, stands []r2.Box) layout {
	var taken []r2.Box
	for _, s := range stands {
		taken = append(taken, inset(r2.Box{Min: v.mm(s.Min), Max: v.mm(s.Max)}, -cornerClear, -cornerClear))
	}
	for ok := true; ok && len(l.left) > 0; {
		if l, ok = l.withCorner(v.panel, taken); ok {
			taken = append(taken, l.corners[len(l.corners)-1])
		}
	}
	return l
}

// withCorner is the layout with blocks in the highest corner that holds any.
func (l layout) withCorner(panel r2.Box, taken []r2.Box) (layout, bool) {
	for _, b := range freeCorners(panel, taken) {
		own := slot{x: b.Min.X + pads, top: b.Max.Y - pads, bottom: b.Min.Y + pads}
		pieces, left := pourWhole(rankedRests(l.left), []slot{own})
		if len(pieces) == 0 {
			continue
		}
		used := 2 * pads
		for i := range pieces {
			used += pieces[i].gap + pieces[i].height
			pieces[i].slot = len(l.slots)
		}
		if b.Max.Y == panel.Max.Y { // it hangs from the top, else it stands on the foot
			b.Min.Y = b.Max.Y - used
		} else {
			b.Max.Y = b.Min.Y + used
		}
		own.top, own.bottom = b.Max.Y-pads, b.Min.Y+pads
		l.corners = append(slices.Clone(l.corners), b)
		l.slots = append(slices.Clone(l.slots), own)
		l.pieces = append(slices.Clone(l.pieces), pieces...)
		l.left = left
		return l, true
	}
	return l, false
}

// rankedRests are what is left of blocks, in the order of their ranks.
func rankedRests(left []rest) []rest {
	left = slices.Clone(left)
	slices.SortStableFunc(left, func(a, b rest) int { return int(a.block.rank) - int(b.block.rank) })
	return left
}

// open is the layout without the corners that hold nothing that must stand beside the plan: the
// room is the plan's again.
func (l layout) open() layout {
	m := l
	first := len(l.slots) - len(l.corners) // the slot of the first corner
	held := make([]bool, len(l.corners))
	for _, q := range l.pieces {
		if q.slot >= first && q.block.rank == must {
			held[q.slot-first] = true
		}
	}
	m.slots, m.corners, m.pieces = slices.Clone(l.slots[:first]), nil, nil
	to := map[int]int{}
	for i, b := range l.corners {
		if held[i] {
			to[first+i] = len(m.slots)
			m.slots, m.corners = append(m.slots, l.slots[first+i]), append(m.corners, b)
		}
	}
	var freed []rest
	for _, q := range l.pieces {
		switch at, moved := to[q.slot]; {
		case q.slot < first:
			m.pieces = append(m.pieces, q)
		case moved:
			q.slot = at
			m.pieces = append(m.pieces, q)
		default:
			freed = append(freed, rest{q.block, q.from})
		}
	}
	m.left = append(freed, l.left...)
	return m
}

// freeCorners are boxes in the corners of a panel, as wide as a column of text with its pads and
// clear of what is taken, highest first.
func freeCorners(panel r2.Box, taken []r2.Box) []r2.Box {
	const wide = measure + 2*pads
	var free []r2.Box
	for _, left := range [...]float64{panel.Max.X - wide, panel.Min.X} {
		low, high := panel.Min.Y, panel.Max.Y // of what stands below and above it
		for _, b := range taken {
			if b.Max.X > left && b.Min.X < left+wide {
				low, high = math.Max(low, b.Max.Y), math.Min(high, b.Min.Y)
			}
		}
		for _, b := range [...]r2.Box{box(left, low, left+wide, panel.Max.Y), box(left, panel.Min.Y, left+wide, high)} {
			if height(b) >= cornerLeast {
				free = append(free, b)
			}
		}
	}
	slices.SortStableFunc(free, func(a, b r2.Box) int { return cmp.Compare(height(b), height(a)) })
	return free
}
