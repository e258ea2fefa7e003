package radiosity

import (
	"cmp"
	"slices"
)

// rankVeils puts what is seen through clear sheets in an order that does not tell which ray met it first, and gives the
// place of each in it.
func (t *Transport) rankVeils() (rank []uint32) {
	list := t.mesh.seen.list
	order := make([]uint32, len(list))
	for i := range order {
		order[i] = uint32(i)
	}
	slices.SortFunc(order, func(a, b uint32) int {
		return cmp.Or(cmp.Compare(list[a].element, list[b].element), slices.Compare(list[a].via, list[b].via))
	})
	rank, t.veils = make([]uint32, len(list)), make([]veiled, len(list))
	for place, i := range order {
		rank[i], t.veils[place] = uint32(place), list[i]
	}
	return rank
}

// number replaces the numbers of elements in the mesh by their places among those seen: element k of
// slot s is 4s+k, and what is seen through clear sheets follows after, as if each were a patch with one element.
func (t *Transport) number() {
	// In the order of the mesh, so that it leaves no trace which receptor saw a patch first.
	slices.SortFunc(t.patches, func(a, b patch) int { return cmp.Compare(a.number, b.number) })
	for s := 1; s < len(t.patches); s++ {
		t.slots[t.patches[s].number] = uint32(s)
	}
	end := uint32(4 * len(t.patches))
	rank := t.rankVeils()
	place := func(elements []uint32) {
		for i, e := range elements {
			if e&veil != 0 {
				elements[i] = end + 4*rank[e&^veil]
			} else {
				elements[i] = 4*t.slots[e/4] + e&3
			}
		}
	}
	for i := range t.veils {
		e := &t.veils[i].element
		*e = 4*t.slots[*e/4] + *e&3
	}
	place(t.links)
	for i := range t.places {
		place(t.places[i].hits)
	}
	for i := range t.cells {
		place(t.cells[i].hits)
		one := [1]uint32{t.cells[i].element}
		place(one[:])
		t.cells[i].element = one[0]
	}
	for _, f := range t.lattices {
		for s := range f.pictures {
			place(f.pictures[s].seen)
		}
	}
}
