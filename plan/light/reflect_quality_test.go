package light

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/solid"
)

// furnishedReference is the reference scene with a floor, a ceiling and colours. The points of the floor that lie in a
// solid have no data.
func furnishedReference() (*solid.Set, Lattice) {
	s, floor := reference(0)
	cream, wood := colour.RGB{0.52, 0.5, 0.44}, colour.RGB{0.42, 0.36, 0.28}
	for i := range s.Prisms {
		s.Prisms[i].Name, s.Prisms[i].Skin.Reflect = fmt.Sprintf("wall%d", i), cream
		if i >= len(referenceWalls()) {
			s.Prisms[i].Name, s.Prisms[i].Skin.Reflect = fmt.Sprintf("thing%d", i), wood
		}
	}
	for i := range s.Sheets {
		s.Sheets[i].Front.Reflect, s.Sheets[i].Back.Reflect = colour.RGB{0.8, 0.8, 0.8}, colour.RGB{0.04, 0.04, 0.04}
	}
	sheet := func(id solid.ID, name string, z float64, up bool, reflect colour.RGB) {
		c := []r3.Vec{{Z: z}, {X: 10, Z: z}, {X: 10, Y: 8, Z: z}, {Y: 8, Z: z}}
		if !up {
			slices.Reverse(c)
		}
		s.Sheets = append(s.Sheets, solid.Sheet{ID: id, Name: name, Corners: c, Front: solid.Skin{Reflect: reflect}})
	}
	sheet(2000000, "floor", 0, true, colour.RGB{0.28, 0.25, 0.2})
	sheet(2000001, "ceiling", 2.8, false, colour.RGB{0.7, 0.7, 0.7})
	floor.Origin.X, floor.Origin.Y = 0.0137, 0.0137
	bvh := solid.NewBVH(s)
	floor.Mask = make([]uint64, (floor.NU*floor.NV+63)/64)
	for n := range floor.NU * floor.NV {
		p := floor.At(n%floor.NU, n/floor.NU)
		p.Z = 1e-4
		if _, in := bvh.Inside(p); in {
			floor.Mask[n>>6] |= 1 << (n & 63)
		}
	}
	return s, floor
}

// The errors that Quality promises of reflected light, on the floor of the furnished reference scene against patches and
// rays many times as many: relative, over all points above 1 lx. A short run holds a draft to normal quality.
func TestErrorOfReflectedLight(t *testing.T) {
	t.Parallel()
	s, floor := furnishedReference()
	lights := referenceLamps()
	d := Levels{}
	for _, e := range lights {
		d[e.Name] = colour.RGB{1, 1, 1}
	}
	field := func(w *World) []float32 {
		b := basis(t, w, lights, Targets{Lattices: []Lattice{floor}})
		out := make([]float32, floor.NU*floor.NV)
		b.ReflectedField(0, d, out)
		return out
	}
	best := build(t, s, Options{Quality: Draft})
	best.radiosity = radiosity.Quality{Patch: 0.15, Links: 128, Point: 64, Lattice: 1024}
	if testing.Short() {
		best.radiosity = Normal.radiosity()
	}
	want := field(best)
	promises := []struct {
		quality   Quality
		mean, p95 float64
	}{{Draft, 0.05, 0.15}, {Normal, 0.015, 0.05}, {Fine, 0.01, 0.03}}
	for _, c := range promises[:cases(len(promises), 1)] {
		w := build(t, s, Options{Quality: Draft})
		w.radiosity = c.quality.radiosity()
		got := field(w)
		var errors []float64
		sum := 0.0
		for n := range got {
			if want[n] > 1 {
				e := math.Abs(float64(got[n])/float64(want[n]) - 1)
				errors, sum = append(errors, e), sum+e
			}
		}
		slices.Sort(errors)
		mean, p95 := sum/float64(len(errors)), errors[len(errors)*95/100]
		t.Logf("%s: mean %.3f %%, 95th percentile %.2f %%, largest %.1f %%, %d points", c.quality, 100*mean, 100*p95, 100*errors[len(errors)-1], len(errors))
		if mean > c.mean || p95 > c.p95 {
			t.Errorf("%s: mean %.3f %%, 95th percentile %.2f %%, promised %g and %g %%", c.quality, 100*mean, 100*p95, 100*c.mean, 100*c.p95)
		}
	}
}

// BenchmarkReflected is the reflected light of twelve lamps in colour on the floor of the furnished reference scene,
// from links to fields.
func BenchmarkReflected(b *testing.B) {
	s, floor := furnishedReference()
	for _, q := range []Quality{Draft, Normal, Fine} {
		for _, workers := range []int{1, 2} {
			b.Run(fmt.Sprintf("quality=%s/workers=%d", q, workers), func(b *testing.B) {
				b.ReportAllocs()
				w := build(b, s, Options{Quality: q, Workers: workers})
				var lamps []*readyLamp
				var all []int
				lights := referenceLamps()
				for i := range lights {
					lamps, all = append(lamps, &readyLamp{lamp: newLamp(&lights[i], w.faces, w.tubes, w.bundle)}), append(all, i)
				}
				to := Targets{Lattices: []Lattice{floor}}
				for b.Loop() {
					basis := &Basis{targets: to, columns: make([]column, len(lights)), Lights: make([]string, len(lights))}
					if err := w.reflect(b.Context(), basis, lamps, all, &progress{total: 1}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
