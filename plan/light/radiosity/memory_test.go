package radiosity

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// A memory that is full keeps no more than its room, and what it has no room for goes with the set-up; what is read is the same bits.
func TestAFullMemoryKeepsItsRoom(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	q := Quality{Patch: 0.4, Links: 64, More: 256, Point: 256, Near: 0.5, Cell: 16, HotSamples: 2, Edge: 3e-3, Matters: 0.02, Noise: 3e-3, Lattice: 32}
	set := furnished(r)
	bvh := solid.NewBVH(set)
	lamp := &bulb{bvh: bvh, at: free(r, set, bvh), flux: grey(3000), cos: -1}
	points := []receptor.Receptor{{At: free(r, set, bvh), Axis: r3.Vec{Z: 1}, Response: receptor.Dome}}
	lattices := []receptor.Lattice{{Origin: r3.Vec{X: 0.5, Y: 0.5, Z: 1}, U: r3.Vec{X: 0.3}, V: r3.Vec{Y: 0.3}, Toward: &points[0].At, NU: 6, NV: 6, Response: receptor.Dome}}
	alone, _ := trace(t, set, q, points, lattices)
	want := readOf(t, solve(t, alone, lamp))
	for _, room := range []int{mostKept, 5000, 0} {
		m := &Memory{size: mostKept - room}
		for range 3 {
			m.Next()
			known, err := m.Trace(t.Context(), set, bvh, q, 1, points, lattices)
			if err != nil {
				t.Fatal(err)
			}
			if got := readOf(t, solve(t, known, lamp)); !reflect.DeepEqual(got, want) {
				t.Errorf("with room for %d bytes it reads otherwise", room)
			}
			if kept := m.size - (mostKept - room); kept > room || room > 0 && kept == 0 || room == mostKept && len(m.frames) == 0 {
				t.Errorf("with room for %d bytes it holds %d, and %d lattices", room, kept, len(m.frames))
			}
		}
	}
}

// Patches that there was no room for are not held by those that were kept beside them: what is kept is no part of the list that it was found in.
func TestAFullMemoryLetsPatchesGo(t *testing.T) {
	m := &Memory{linked: make([]*linked, 3), size: mostKept - patchBytes - 4}
	some := []linked{{patch{number: 1}, make([]uint32, 1)}, {patch{number: 2}, make([]uint32, 1000)}}
	m.keepLinks(some)
	if m.linked[1] == nil || m.linked[1] == &some[0] || m.linked[1].number != 1 || m.linked[2] != nil || m.size != mostKept {
		t.Errorf("it holds %v and %v in %d bytes", m.linked[1], m.linked[2], m.size)
	}
}

// readOf is all that is read of a solution with one receptor, one lamp and one lattice.
func readOf(t *testing.T, s *Solution) (all []any) {
	t.Helper()
	lattice, err := s.Lattice(t.Context(), 0)
	if err != nil {
		t.Fatal(err)
	}
	return []any{lattice, s.Point(0, 0), s.Spread(0, 0)}
}
