package radiosity

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// boardFace is an upright or level rectangle from a corner on, along two sides, of so many patches each way.
func boardFace(t testing.TB, from, along, up r3.Vec, nu, nv int, rho float64) face {
	t.Helper()
	f, ok := newFace([]r3.Vec{from, r3.Add(from, along), r3.Add(r3.Add(from, along), up), r3.Add(from, up)})
	if !ok {
		t.Fatal("no face")
	}
	f.reflect, f.met, f.nu, f.nv = grey(rho), 1, nu, nv
	f.du, f.dv = f.width/float64(nu), f.height/float64(nv)
	return f
}

// handmade is a transport of some faces, all patches of which are followed and lie in the air.
func handmade(channels int, faces ...face) *Transport {
	m := &mesh{channels: channels, of: map[solid.ID]span{}, count: 1, beyond: darkness{}, veils: veils{}, mirrors: mirrors{}, reflects: true,
		bvh: solid.NewBVH(&solid.Set{}), stretches: []float64{1}, glass: glassTurns{{}}}
	tr := &Transport{mesh: m, workers: 1, slots: []uint32{0}, patches: []patch{{}}}
	for k, f := range faces {
		f.first = m.count
		f.group = int32(k)
		f.id = solid.ID(k + 1)
		m.of[f.id] = span{int32(k), int32(k) + 1}
		m.groups = append(m.groups, f.id)
		m.faces = append(m.faces, f)
		for range f.nu * f.nv {
			p := m.patch(k, m.count)
			for e := range p.area {
				p.area[e] = f.du * f.dv / 4
			}
			p.kept = colour.RGB{1, 1, 1}
			tr.slots, tr.patches = append(tr.slots, m.count), append(tr.patches, p)
			m.count++
		}
	}
	return tr
}

// sees gives a slot its links, by elements.
func (t *Transport) sees(slot int, elements ...uint32) {
	p := &t.patches[slot]
	p.from = int32(len(t.links))
	t.links = append(t.links, elements...)
	p.to = int32(len(t.links))
}

// clothOf makes two faces, of those with these numbers, the sides of a cloth.
func (t *Transport) clothOf(a, b int, throughA, throughB float64) {
	fa, fb := &t.mesh.faces[a], &t.mesh.faces[b]
	fa.otherSide, fb.otherSide, fa.through, fb.through = int32(b)+1, int32(a)+1, grey(throughA), grey(throughB)
	fa.id, fb.id = 90, 90
	t.mesh.veils[90] = veil{passing: 0.3, turn: 0.1}
	t.cloth = findTwins(t.mesh, t.patches, t.slots)
}

// outlineOf is the outline of a face that fills its rectangle.
func outlineOf(f *face) []r2.Vec {
	return []r2.Vec{{}, {X: f.width}, {X: f.width, Y: f.height}, {Y: f.height}}
}
