package radiosity

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
)

// Transport is how surfaces and receptors see each other. It depends on no lamp, is not changed by use
// and may be used by many goroutines.
type Transport struct {
	mesh         *mesh
	memory       *Memory // what is known of the set; nil where nothing is kept
	workers      int
	quality      Quality
	slots        []uint32            // patch of the mesh to slot; 0: none
	cloth        []twin              // the slots of cloths and those on their other faces
	patches      []patch             // by slot, from 1; 0 is black
	links        []uint32            // elements that patches see
	samples      []sobol.Sample      // the points of the rays of a patch
	filtered     []filtered          // elements seen through clear sheets: they follow those of the patches
	throughPanes map[uint32][]uint32 // by element: as it is seen through sheets
	receptors    []receptor.Receptor
	places       []place
	placeOf      []int32 // by receptor
	cells        []cell
	queue        []uint32 // patches that have been seen and not been linked
	lattices     []*frame
	points       int     // of all lattices
	blackArea    float64 // m², of the patches that have been seen and return nothing
}

// Dark says whether no surface of the set returns any light.
func (t *Transport) Dark() bool { return !t.mesh.reflects }

// Channels is 1 where every surface and clear sheet is grey, else 3.
func (t *Transport) Channels() int { return t.mesh.channels }

// chunk is how many patches are linked in one go.
const chunk = 32

// twin is a slot on a cloth and the one on its other face.
type twin struct{ slot, behind int }

// findTwins pairs the slots of cloths.
func findTwins(m *mesh, patches []patch, slots []uint32) (all []twin) {
	for s := 1; s < len(patches) && len(m.veils) > 0; s++ {
		if b := m.behind(patches[s].number); b != 0 && slots[b] != 0 {
			all = append(all, twin{s, int(slots[b])})
		}
	}
	return all
}

// listFiltered lists by element what is seen of it straight through clear sheets.
func listFiltered(filtered []filtered, patches int) map[uint32][]uint32 {
	all := map[uint32][]uint32{}
	for i := range filtered {
		if filtered[i].mirror {
			continue // its form factor is not that of the element
		}
		of := filtered[i].element
		all[of] = append(all[of], uint32(4*(patches+i)))
	}
	return all
}

// factor is what clear sheets leave of what is seen of an element.
func (t *Transport) factor(element uint32) colour.RGB {
	if end := uint32(4 * len(t.patches)); element >= end {
		return t.filtered[(element-end)/4].factor
	}
	return colour.RGB{1, 1, 1}
}

// patchOf is the patch of an element as rays give it; 0 for the black one.
func (m *mesh) patchOf(element uint32) uint32 {
	if element&filteredBit != 0 {
		element = m.seen.list[element&^filteredBit].element
	}
	return element / 4
}

// isMirrored says whether an element is seen by a mirror.
func (t *Transport) isMirrored(element uint32) bool {
	end := uint32(4 * len(t.patches))
	return element >= end && t.filtered[(element-end)/4].mirror
}

// behind is the element itself of one that may be seen through clear sheets.
func (t *Transport) behind(element uint32) uint32 {
	if end := uint32(4 * len(t.patches)); element >= end {
		return t.filtered[(element-end)/4].element + element&3
	}
	return element
}
