package light

import "math/bits"

// Of a lamp outside a window most of a floor sees a part, and mostly a small one, which the points of the opening tell
// too little of. There what is seen is found exactly, point by point.

// mostlyShare is into how many parts the points that see any of the opening are parted, of which one must see little of it.
const mostlyShare = 3

// mostlyHidden says whether most points of the band that see any of the opening see less than half of it.
func (d *bandSummer) mostlyHidden(from, to int) bool {
	f, g := d.f, d.f.g
	if !f.w.exact {
		return false
	}
	few, lit := 0, 0
	for j := from; j < to; j++ {
		for w := range g.words {
			at := (j-from)*g.words + w
			few += bits.OnesCount64(d.partly[at] &^ d.mostlySeen[at])
			lit += bits.OnesCount64(^(f.all[j*g.words+w] | f.blank[j*g.words+w]))
		}
	}
	return mostlyShare*few > lit
}

// traceMostlyHidden lights the points of the band that see less than half of the opening, and takes them off the others.
func (d *bandSummer) traceMostlyHidden(from, to int) {
	g := d.f.g
	lat := g.lattice
	for j := from; j < to; j++ {
		for w := range g.words {
			at := (j-from)*g.words + w
			few := d.partly[at] &^ d.mostlySeen[at]
			d.partly[at] &^= few
			for rest := few; rest != 0; rest &= rest - 1 {
				i := w<<6 + bits.TrailingZeros64(rest)
				r := lat.Receptor(i, j)
				for _, s := range d.tracer.light(d.f.l, &r) {
					for c := range d.channels {
						d.line(d.sums[c], j-from)[i] += s.filter[c] * s.value
					}
				}
			}
		}
	}
}
