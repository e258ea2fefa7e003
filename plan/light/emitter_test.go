package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/row"
	"scrimshaw/plan/solid"
)

// leaning is a distribution that no other package knows: brighter to its right, nothing behind.
type leaning struct{}

func (leaning) Candela(d r3.Vec) float64 { return max(0, -d.Z) * (1 + d.X) / math.Pi }

// leaningByRow is the same with a kernel of its own, which counts how often it is asked.
type leaningByRow struct {
	leaning
	asked *int
}

func (l leaningByRow) RowKernel(flux float64, _ photometry.Opening, oneSided bool) row.Kernel {
	return counted{row.General(l.Candela, flux, oneSided), l.asked}
}

type counted struct {
	row.Kernel
	asked *int
}

func (c counted) Add(lux *[row.Word]float64, mask uint64, w int, v *row.View, scale float64) {
	*c.asked++
	c.Kernel.Add(lux, mask, w, v, scale)
}

// An emitter of a new kind lights receptors and lattices alike, by its intensities alone or by a kernel that it brings.
func TestANewKindOfEmitter(t *testing.T) {
	asked := 0
	face := photometry.Opening{Form: photometry.Rectangle, Width: 0.4, Height: 0.3}
	floor := floorAt(-1, -1, 0, 2, 9)
	to := Targets{Lattices: []Lattice{floor}}
	for n := range floor.NU * floor.NV {
		to.Points = append(to.Points, floor.Receptor(n%floor.NU, n/floor.NU))
	}
	w := build(t, &solid.Set{}, Options{Workers: 1})
	for _, opening := range []photometry.Opening{{}, face} {
		for name, d := range map[string]photometry.Distribution{"intensities": leaning{}, "own kernel": leaningByRow{leaning{}, &asked}} {
			e := Emitter{Name: "a", Frame: down(1.5), Source: photometry.Source{Flux: 1000, Distribution: d, Opening: opening}}
			b := basis(t, w, []Emitter{e}, to)
			field := make([]float32, floor.NU*floor.NV)
			b.Field(0, Levels{"a": {1, 1, 1}}, field)
			for n, lux := range field {
				total, _ := b.Point(n, Levels{"a": {1, 1, 1}})
				if want := total.Y(); !(math.Abs(float64(lux)-want) <= 1e-3*want) || want <= 0 {
					t.Errorf("%s, opening %v, point %d: %g lx on the lattice, %g at a receptor", name, opening, n, lux, want)
				}
			}
		}
	}
	if asked == 0 {
		t.Error("the lattice did not ask the kernel that the distribution brings")
	}
}
