package radiosity

import "scrimshaw/plan/colour"

// What returns nothing is not followed: no place gets any light from it, so nobody needs to know what it sees or gets. But what surfaces
// send there does not leave the set, as what meets nothing does.

// The slots of patches that return nothing, while those that do are looked for: nobody takes them up.
const (
	blackSlot     = 1<<32 - 1
	seenBlackSlot = blackSlot - 1
)

// isBlack says whether a face returns nothing of what falls on it. One of cloth shines by what falls on the other.
func (f *face) isBlack() bool { return f.reflect == colour.RGB{} && f.otherSide == 0 }

// faceOf is the face that an element of the mesh lies on.
func (m *mesh) faceOf(element uint32) *face { return &m.faces[m.face(element/4)] }

// slotsOfBlack are the slots of all patches of the mesh before any is followed.
func (m *mesh) slotsOfBlack() (slots []uint32) {
	slots = make([]uint32, m.count)
	for i := range m.faces {
		if f := &m.faces[i]; f.isBlack() {
			of := slots[f.first : f.first+uint32(f.nu*f.nv)]
			for n := range of {
				of[n] = blackSlot
			}
		}
	}
	return slots
}

// forgetBlack empties all slots, and adds up the area of what is black and has been seen.
func forgetBlack(t *Transport) {
	for i := range t.mesh.faces {
		f := &t.mesh.faces[i]
		for _, slot := range t.slots[f.first : f.first+uint32(f.nu*f.nv)] {
			if slot == seenBlackSlot {
				t.blackArea += f.du * f.dv
			}
		}
	}
	clear(t.slots)
}

// setSwallowed finds what of the light of each patch ends on what is black, by links that still have the numbers of the mesh.
func setSwallowed(t *Transport) {
	if t.blackArea == 0 {
		return
	}
	for s := 1; s < len(t.patches); s++ {
		p := &t.patches[s]
		links := t.links[p.from:p.to]
		for _, h := range links {
			if n := t.mesh.patchOf(h); n != 0 && t.slots[n] == 0 {
				p.swallowed = p.swallowed.Add(t.mesh.keeps(h))
			}
		}
		if len(links) > 0 {
			p.swallowed = p.swallowed.Scale(1 / float64(len(links)))
		}
	}
}
