package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// beside are the prisms that a face may run into.
func (m *mesh) beside(f *face) (near []box) {
	own := boxRound(f.corners)
	for i := range m.prismBoxes {
		if m.prismBoxes[i].meets(&own) {
			near = append(near, m.prismBoxes[i])
		}
	}
	return near
}

// keeps is the share of light that comes to the end of a ray.
func (m *mesh) keeps(hit uint32) colour.RGB {
	switch {
	case hit == black:
		return colour.RGB{}
	case hit&filteredBit != 0:
		m.seen.Lock()
		defer m.seen.Unlock()
		return m.seen.list[hit&^filteredBit].factor
	}
	return colour.RGB{1, 1, 1}
}

// boxOf is the box round some solids; an empty one round none.
func (m *mesh) boxOf(ids []solid.ID) (b box) {
	inf := math.Inf(1)
	b = box{r3.Vec{X: inf, Y: inf, Z: inf}, r3.Vec{X: -inf, Y: -inf, Z: -inf}}
	for _, id := range ids {
		s := m.of[id]
		for i := s.from; i < s.to; i++ {
			f := boxRound(m.faces[i].corners)
			b.low = r3.Vec{X: min(b.low.X, f.low.X), Y: min(b.low.Y, f.low.Y), Z: min(b.low.Z, f.low.Z)}
			b.high = r3.Vec{X: max(b.high.X, f.high.X), Y: max(b.high.Y, f.high.Y), Z: max(b.high.Z, f.high.Z)}
		}
	}
	return b
}
