package carto

import (
	"math/bits"

	"gonum.org/v1/gonum/spatial/r2"
)

// conflicts knows which places of labels are in each other's way, as sets of bits. What a place is in the way of is worked
// out for a neighbour when that first looks for a place while somebody stands there: most places are never taken, and those
// that are, often.
type conflicts struct {
	choices [][]candidate
	gap     float64       // between boxes, mm
	near    [][]neighbour // by label: the labels whose places may meet its own, in their order
	words   []int         // by label: of a set of its places
	rows    [][]row       // by label and place; nil until one is asked for
	extents []r2.Box      // by label: of all its places
	limits  [][]r2.Box    // by label and place: of box and leader, side by side, for most places end at that
}

// neighbour is a label near another.
type neighbour struct {
	label int
	at    int // the word at which its places begin in a row of the other
	back  int // its place among the neighbours of the neighbour: near[label][back] is the label itself
}

// row is the places that one place is in the way of.
type row struct {
	known []bool   // by neighbour: whether it is worked out
	set   []uint64 // neighbour by neighbour, the set of its places
}

func newConflicts(choices [][]candidate, opts PlaceOptions) *conflicts {
	c := &conflicts{choices: choices, gap: opts.Gap, near: make([][]neighbour, len(choices)), rows: make([][]row, len(choices))}
	for _, places := range choices {
		c.words = append(c.words, (len(places)+63)/64)
		c.extents = append(c.extents, extent(places))
		limits := make([]r2.Box, len(places))
		for m := range places {
			limits[m] = places[m].limits
		}
		c.limits = append(c.limits, limits)
	}
	for i := range choices {
		c.meet(i)
	}
	c.lay()
	return c
}

// extent is the box of all places of a label but the last, which is off the map.
func extent(places []candidate) r2.Box {
	all := places[0].limits
	for i := range places[:len(places)-1] {
		all = union(all, places[i].limits)
	}
	return all
}

// meet finds the neighbours of label i. In a crowd all places of a label reach over most of the map, so that to look at every
// other label once is quicker than to look them up by where they are.
func (c *conflicts) meet(i int) {
	if len(c.choices[i]) < 2 {
		return
	}
	for j, places := range c.choices {
		if j != i && len(places) > 1 && boxesOverlap(c.extents[i], c.extents[j]) {
			c.near[i] = append(c.near[i], neighbour{label: j})
		}
	}
}

// lay gives each neighbour its words in the rows of the other.
func (c *conflicts) lay() {
	for i := range c.near {
		width := 0
		for k := range c.near[i] {
			c.near[i][k].at = width
			width += c.words[c.near[i][k].label]
		}
	}
	next := make([]int, len(c.near)) // by label: which of its neighbours is met next, as labels are gone through in order
	for i := range c.near {
		for k := range c.near[i] {
			other := c.near[i][k].label
			c.near[other][next[other]].back = k
			next[other]++
		}
	}
}

// part is the set of those places of neighbour k of label i that its place n is in the way of.
func (c *conflicts) part(i, n, k int) []uint64 {
	if c.rows[i] == nil {
		c.rows[i] = make([]row, len(c.choices[i]))
	}
	r, near := &c.rows[i][n], c.near[i]
	if r.set == nil {
		last := near[len(near)-1]
		r.known, r.set = make([]bool, len(near)), make([]uint64, last.at+c.words[last.label])
	}
	other := near[k]
	part := r.set[other.at : other.at+c.words[other.label]]
	if !r.known[k] {
		r.known[k] = true
		c.fill(part, &c.choices[i][n], other.label)
	}
	return part
}

// fill finds the places of a label that one of another is in the way of.
func (c *conflicts) fill(set []uint64, place *candidate, label int) {
	if !boxesOverlap(place.limits, c.extents[label]) {
		return
	}
	places, limits := c.choices[label], place.limits
	for m, other := range c.limits[label] {
		if boxesOverlap(limits, other) && inConflict(place, &places[m], c.gap) {
			set[m/64] |= 1 << (m % 64)
		}
	}
}

// firstClear is the first place of label i that those where the others stand are not in the way of; set is memory to use.
func (c *conflicts) firstClear(i int, at []int, set []uint64) (n int, used []uint64) {
	blocked := append(set[:0], make([]uint64, c.words[i])...)
	for _, other := range c.near[i] {
		if j := other.label; c.choices[j][at[j]].On {
			for w, b := range c.part(j, at[j], other.back) {
				blocked[w] |= b
			}
		}
	}
	for w, b := range blocked {
		if b != ^uint64(0) {
			return w*64 + bits.TrailingZeros64(^b), blocked
		}
	}
	return len(c.choices[i]) - 1, blocked
}

// conflicting are the labels that stand in the way of the place where label i stands, in their order.
func (c *conflicts) conflicting(i int, at []int) (found []int) {
	place, limits := &c.choices[i][at[i]], c.limits[i][at[i]]
	for _, other := range c.near[i] {
		j := other.label
		if boxesOverlap(limits, c.limits[j][at[j]]) && inConflict(place, &c.choices[j][at[j]], c.gap) {
			found = append(found, j)
		}
	}
	return found
}

// inConflict says whether two labels cannot both stand in these places, with a gap between boxes.
func inConflict(a, b *candidate, gap float64) bool {
	if !a.On || !b.On || !boxesOverlap(a.limits, b.limits) {
		return false
	}
	if boxesOverlap(grown(a.Box, gap), b.Box) {
		return true
	}
	if a.Leads() && crossesBox(a.Leader[0], a.Leader[1], grown(b.Box, gap/2)) ||
		b.Leads() && crossesBox(b.Leader[0], b.Leader[1], grown(a.Box, gap/2)) {
		return true
	}
	return a.Leads() && b.Leads() && cross(a.Leader[0], a.Leader[1], b.Leader[0], b.Leader[1])
}
