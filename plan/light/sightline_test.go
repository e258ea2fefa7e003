package light

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// The side that is met is that of the sheet which is asked for, toward where the light comes from; a prism has no sides, nor has what is no
// figure.
func TestSidesOfSheets(t *testing.T) {
	level := func(id solid.ID, z float64) solid.Sheet { // faces up
		s := solid.Sheet{ID: id, Corners: []r3.Vec{{Z: z}, {X: 1, Z: z}, {X: 1, Y: 1, Z: z}, {Y: 1, Z: z}}}
		s.Front.Reflect, s.Back.Reflect = colour.RGB{float64(id)}, colour.RGB{0, float64(id)}
		return s
	}
	upright := level(3, 0)
	upright.Corners = []r3.Vec{{}, {Y: 1}, {Y: 1, Z: 1}, {Z: 1}} // faces along +x
	set := &solid.Set{Sheets: []solid.Sheet{level(1, 0), {ID: 4, Corners: []r3.Vec{{}, {X: 1}}}, level(2, 1), upright}, Prisms: []solid.Prism{{ID: 5}}}
	for _, c := range []struct {
		id     solid.ID
		along  r3.Vec
		normal r3.Vec
		skin   colour.RGB
	}{
		{1, r3.Vec{Z: -1}, r3.Vec{Z: 1}, colour.RGB{1}}, {1, r3.Vec{X: 5, Z: 1}, r3.Vec{Z: -1}, colour.RGB{0, 1}}, {2, r3.Vec{Z: -1}, r3.Vec{Z: 1}, colour.RGB{2}},
		{1, r3.Vec{X: 1}, r3.Vec{Z: 1}, colour.RGB{1}}, {2, r3.Vec{Z: 1}, r3.Vec{Z: -1}, colour.RGB{0, 2}}, {3, r3.Vec{X: -1}, r3.Vec{X: 1}, colour.RGB{3}}, {3, r3.Vec{X: 1, Z: -4}, r3.Vec{X: -1}, colour.RGB{0, 3}},
	} {
		skin, n := sideOf(set, c.id, c.along)
		if skin == nil || skin.Reflect != c.skin || r3.Norm(r3.Sub(n, c.normal)) > 1e-12 {
			t.Errorf("sheet %d along %v: %+v, faces %v", c.id, c.along, skin, n)
		}
	}
	for _, id := range []solid.ID{4, 5, 9} {
		if skin, _ := sideOf(set, id, r3.Vec{Z: -1}); skin != nil {
			t.Errorf("solid %d has a side", id)
		}
	}
}
