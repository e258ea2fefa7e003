package light

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/photometry"
)

// Where solids are drawn only where the corners of an opening say that they count, each point of it hides what it does where all are
// drawn everywhere: in random rooms, of lamps of every sort, on lattices at all tilts. What is left out is a good part.
func TestSolidsCountWhereCornersSay(t *testing.T) {
	r := rand.New(rand.NewPCG(61, 62))
	drawn, everywhere := 0.0, 0.0
	for scene := range cases(40, 8) {
		w, lat := build(t, room(r), Options{Quality: Draft}), latticeOf(scene)
		if !drawable(&lat) {
			continue
		}
		g := newGrid(&lat, w.bvh.Epsilon())
		for _, e := range lamps(r) {
			f := w.newField(g, newLamp(&e, 20, 8, 4), nil)
			if err := f.shadows(t.Context(), 1); err != nil {
				t.Fatal(err)
			}
			b, all := newRasteriser(g), everyShape(f)
			for k := range f.points {
				p := &f.points[k]
				want := make([]uint64, len(g.blank))
				copy(want, g.blank)
				g.hideUnlit(want, f.l)
				for i := range all[p.side] {
					f.castShadow(b, want, &all[p.side][i], p)
				}
				for n := range g.bands() {
					first := n * band * g.words
					for at, hidden := range want[first:min(first+band*g.words, len(want))] {
						if got := f.bandMask(n, k)[at] | f.blank[first+at]; got != hidden {
							t.Fatalf("scene %d, lamp %s, point %d of the opening: band %d, word %d is %x, want %x", scene, e.Name, k, n, at, got, hidden)
						}
					}
				}
			}
			if f.l.opening.Form == photometry.Rectangle || f.l.opening.Form == photometry.Disc {
				for side := range f.occluders {
					everywhere += float64(len(all[side]) * g.nu * g.nv)
					for _, s := range f.occluders[side].opaque {
						size := r2.Sub(s.hi, s.lo)
						drawn += size.X * size.Y
					}
				}
			}
		}
	}
	if drawn > 0.3*everywhere {
		t.Errorf("solids are drawn on %.2f of the lattices", drawn/everywhere)
	}
}

// everyShape is what can shade on the sides of a lattice that a lamp has points on, anywhere on it, and the panes that pass nothing.
func everyShape(f *field) map[*side][]shading {
	f.lit = rows{0, f.g.nv}
	all := map[*side][]shading{}
	for s := range f.occluders {
		for i := range s.shapes {
			all[s] = append(all[s], f.g.anywhere(&s.shapes[i]))
		}
	}
	return all
}
