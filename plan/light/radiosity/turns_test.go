package radiosity

import (
	"fmt"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// Whatever order cloths, boards, mirrors and glass have in a set, no two decisions of a ray go by the same turns.
func TestTurnsDiffer(t *testing.T) {
	skins := []solid.Skin{
		{Reflect: grey(0.3), Direct: grey(0.3), Diffuse: grey(0.3)},
		{Reflect: grey(0.3), Direct: grey(0.1), Diffuse: grey(0.5)},
		{Reflect: grey(0.8), Mirror: 0.9, Lobe: 20},
		{Reflect: grey(0.9), Mirror: 1},
		{Direct: grey(0.9), Glass: solid.NewGlass(1.52, 1, 0.9)},
	}
	orders(len(skins), func(order []int) {
		set := &solid.Set{}
		for n, k := range order {
			y := float64(n)
			set.Sheets = append(set.Sheets, solid.Sheet{ID: solid.ID(n + 1), Corners: []r3.Vec{{Y: y}, {X: 1, Y: y}, {X: 1, Y: y, Z: 1}, {Y: y, Z: 1}}, Front: skins[k], Back: skins[k]})
		}
		seen := map[float64]string{}
		for turn, of := range turnsOf(newMesh(set, solid.NewBVH(set), 1)) {
			if other, is := seen[of]; is {
				t.Fatalf("in the order %v %s and %s have the turn %g", order, turn, other, of)
			}
			seen[of] = turn
		}
		if len(seen) != 2+2*4+2*4+3+mostMirrors {
			t.Fatalf("%d turns: %v", len(seen), seen)
		}
	})
}

// turnsOf are the turns of a set, by what they decide.
func turnsOf(m *mesh) map[string]float64 {
	all := map[string]float64{}
	for i, v := range m.glass {
		all[fmt.Sprint("glass ", i)] = v.turn
	}
	for i, s := range m.stretches[1:] {
		all[fmt.Sprint("stretch ", i)] = s
	}
	for id, v := range m.veils {
		all[fmt.Sprint("cloth ", id)] = v.turn
	}
	for side, s := range m.mirrors {
		all[fmt.Sprint("mirror ", side)] = s.turns.turn
		for i, l := range s.lobe {
			all[fmt.Sprint("lobe ", side, i)] = l.turn
		}
	}
	return all
}

// orders gives all orders of so many things.
func orders(n int, each func(order []int)) {
	var place func(order []int)
	place = func(order []int) {
		if len(order) == n {
			each(order)
		}
		for k := range n {
			if !slices.Contains(order, k) {
				place(append(slices.Clone(order), k))
			}
		}
	}
	place(nil)
}
