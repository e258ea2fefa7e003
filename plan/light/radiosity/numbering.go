package radiosity

import (
	"cmp"
	"slices"
)

// rankFiltered puts what is seen through clear sheets in an order that does not tell which ray met it first, and gives the
// place of each in it.
func (t *Transport) rankFiltered() (rank []uint32) {
	list := t.mesh.seen.list
	order := make([]uint32, len(list))
	for i := range order {
		order[i] = uint32(i)
	}
	slices.SortFunc(order, func(a, b uint32) int {
		return cmp.Or(cmp.Compare(list[a].element, list[b].element), slices.Compare(list[a].via, list[b].via), cmp.Compare(list[a].ratio, list[b].ratio))
	})
	rank, t.filtered = make([]uint32, len(list)), make([]filtered, len(list))
	for place, i := range order {
		rank[i], t.filtered[place] = uint32(place), list[i]
	}
	return rank
}

// number replaces the numbers of elements in the mesh by their places among those seen: element k of
// slot s is 4s+k, and what is seen through clear sheets follows after, as if each were a patch with one element.
func (t *Transport) number() {
	// In the order of the mesh, so that it leaves no trace which receptor saw a patch first.
	slices.SortFunc(t.patches, func(a, b patch) int { return cmp.Compare(a.number, b.number) })
	forgetBlack(t)
	for s := 1; s < len(t.patches); s++ {
		t.slots[t.patches[s].number] = uint32(s)
	}
	setSwallowed(t)
	n := numbers{t.slots, t.rankFiltered(), uint32(4 * len(t.patches))}
	for i := range t.filtered {
		t.filtered[i].element = n.of(t.filtered[i].element)
	}
	n.replace(t.links)
	for i := range t.places {
		n.replace(t.places[i].hits)
	}
	for i := range t.cells {
		n.replace(t.cells[i].hits)
		n.replace(t.cells[i].beyond)
		t.cells[i].element = n.of(t.cells[i].element)
	}
	for _, f := range t.lattices {
		for s := range f.buffers {
			f.buffers[s].seen = slices.Clone(f.buffers[s].seen) // a memory may hold the numbers of the mesh
			n.replace(f.buffers[s].seen)
		}
	}
}

// numbers gives elements their places among those seen.
type numbers struct {
	slots []uint32 // by patch of the mesh
	rank  []uint32 // of what is seen through clear sheets
	end   uint32   // of the elements of patches
}

func (n *numbers) of(element uint32) uint32 {
	if element&filteredBit != 0 {
		return n.end + 4*n.rank[element&^filteredBit]
	}
	slot := n.slots[element/4]
	if slot == 0 {
		return black
	}
	return 4*slot + element&3
}

func (n *numbers) replace(elements []uint32) {
	for i, e := range elements {
		elements[i] = n.of(e)
	}
}
