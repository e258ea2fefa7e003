package truth

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// The tree finds what a look at every face finds.
func TestTreeMissesNothing(t *testing.T) {
	p := NewPCG(3)
	place := func(size float64) r3.Vec {
		return r3.Vec{X: (p.Float() - 0.5) * size, Y: (p.Float() - 0.5) * size, Z: (p.Float() - 0.5) * size}
	}
	var faces []face
	for i := range 300 {
		at, u, v := place(4), place(1), place(1)
		corners := []r3.Vec{at, r3.Add(at, u), r3.Add(at, r3.Add(u, v)), r3.Add(at, v)}
		if i%3 == 0 {
			corners = corners[:3]
		}
		f, ok := newFace(solid.ID(i), corners)
		if !ok {
			t.Fatal("a face has no area")
		}
		faces = append(faces, f)
	}
	tree := newTree(append([]face(nil), faces...))
	met := 0
	for range 5000 {
		o, d, skip := place(5), r3.Unit(place(1)), []solid.ID{solid.ID(p.Bits() % 300)}
		best, id := math.Inf(1), solid.ID(-1)
		for i := range faces {
			if s, _, ok := faces[i].meets(o, d, best); ok && faces[i].id != skip[0] {
				best, id = s, faces[i].id
			}
		}
		f, distance, _ := tree.first(o, d, math.Inf(1), skip)
		if (f == nil) != (id < 0) || f != nil && (f.id != id || distance != best) {
			t.Fatalf("the tree finds %v at %g, want %d at %g", f, distance, id, best)
		}
		if f != nil {
			met++
		}
		far := p.Float() * 4
		if got := tree.blocked(o, d, far, skip); got != (best < far) {
			t.Fatalf("blocked before %g is %v, the first face is at %g", far, got, best)
		}
	}
	if met < 1000 {
		t.Errorf("only %d rays meet anything", met)
	}
}
