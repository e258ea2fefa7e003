package light

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// A memory holds what the last two Worlds asked for and no more, however many there were: lamps that moved, receptors and
// lattices that are not asked for again. Another set, or another quality, finds it empty. All that it gives is the same bits as without it.
func TestMemoryLetsGo(t *testing.T) {
	t.Parallel()
	set := room(rand.New(rand.NewPCG(3, 3)))
	m := &Memory{}
	lattice := func(n int) Lattice {
		return Lattice{Origin: r3.Vec{X: 1, Y: 1, Z: float64(n) / 10}, U: r3.Vec{X: 0.5}, V: r3.Vec{Y: 0.5}, Normal: r3.Vec{Z: 1}, NU: 4, NV: 4}
	}
	round := func(s *solid.Set, q Quality, n int) {
		w := build(t, s, Options{Quality: q, Workers: 1, Memory: m})
		moved := Emitter{Name: "moved", Frame: looking(r3.Vec{X: 1 + float64(n)/10, Y: 1, Z: 2}, r3.Vec{X: 2, Y: 2}), Source: photometry.Source{Flux: 100, Distribution: photometry.Uniform{}}}
		stays := moved
		stays.Name, stays.Frame = "stays", looking(r3.Vec{X: 1, Y: 2, Z: 2}, r3.Vec{X: 2, Y: 2})
		lights := []Emitter{moved, stays}
		to := Targets{Points: []Receptor{{At: r3.Vec{X: 2, Y: 2, Z: float64(n) / 5}, Axis: r3.Vec{Z: 1}}, {At: r3.Vec{X: 1, Y: 1, Z: 1}, Axis: r3.Vec{Z: 1}}},
			Lattices: []Lattice{lattice(n), lattice(8)}}
		got, want := basis(t, w, lights, to), basis(t, build(t, s, Options{Quality: q, Workers: 1}), lights, to)
		if !reflect.DeepEqual(got.Fields, want.Fields) || !reflect.DeepEqual(got.Reflected, want.Reflected) || !reflect.DeepEqual(got.Points, want.Points) {
			t.Errorf("round %d gives other light than without a memory", n)
		}
	}
	for n := range 8 {
		round(set, Draft, n)
	}
	first := m.lamps[0]
	if len(m.lamps) != 3 || first.emitter.Name != "stays" {
		t.Errorf("%d lamps are held, want the one that stays and two that it moved beside", len(m.lamps))
	}
	if len(first.points) != 3 || len(first.fields) != 3 || m.fields != 7*4*4 {
		t.Errorf("of the lamp that stays %d receptors and %d fields are held, %d values in all, want the last two of each and what all ask for", len(first.points), len(first.fields), m.fields)
	}
	round(set, Normal, 0)
	if len(m.lamps) != 2 || m.lamps[0].emitter.Name != "moved" {
		t.Error("another quality finds lamps of the last")
	}
	other := &solid.Set{Prisms: append([]solid.Prism{}, set.Prisms...), Sheets: set.Sheets}
	other.Prisms[0].Skin.Reflect = colour.RGB{0.3, 0.2, 0.1}
	before := m.world
	if round(other, Normal, 0); m.world == before {
		t.Error("a set of another colour counts as the same")
	}
}
