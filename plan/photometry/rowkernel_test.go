package photometry_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/row"
)

// rowView is a row of receptors 10 cm apart, 2 m before a lamp, seen from its middle; domes turn toward (0.4, 1, 0)
// where dome is set, in the frame of right, up and ahead.
func rowView(dome bool) (v row.View, at func(i int) r3.Vec, axis r3.Vec) {
	start, step := r3.Vec{X: -1.3, Y: 0.7, Z: 2}, r3.Vec{X: 0.1, Y: 0.02, Z: 0.01}
	axis = r3.Unit(r3.Vec{X: 0.1, Y: -0.2, Z: -1})
	v = row.View{
		Ahead: [2]float64{start.Z, step.Z}, Right: [2]float64{start.X, step.X}, Up: [2]float64{start.Y, step.Y},
		Fall:   [3]float64{-r3.Dot(start, axis), -r3.Dot(step, axis)},
		Square: [3]float64{r3.Norm2(start), 2 * r3.Dot(start, step), r3.Norm2(step)},
		Cos:    1, Lean: make([]float64, row.Word),
	}
	for i := range v.Lean {
		v.Lean[i] = 1
	}
	if dome {
		v.Even, v.Cos = 0.5, 0.5
	}
	return v, func(i int) r3.Vec { return r3.Add(start, r3.Scale(float64(i), step)) }, axis
}

// sums are what a kernel gives to the even receptors of the row.
func sums(k row.Kernel, v *row.View) (lux [row.Word]float64) {
	k.Add(&lux, 0x5555_5555_5555_5555, 0, v, 0.25)
	return lux
}

// Whatever kernel a distribution brings, it gives what the intensities say.
func TestRowKernelsFollowTheIntensities(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 60, 40)
	cells, _ := photometry.NewHoneycomb(photometry.NewLobe(40, 70), 60)
	cellsOverGrid, _ := photometry.NewHoneycomb(grid, 60)
	overUniform, _ := photometry.NewGrid(photometry.Uniform{}, 90, 90)
	table, _, err := photometry.NewTable(photometry.Nodes{Horizontal: []float64{0, 90, 180, 270, 360}, Vertical: []float64{0, 30, 60, 90},
		Candela: [][]float64{{90, 80, 40, 10}, {90, 70, 30, 5}, {90, 60, 20, 0}, {90, 75, 35, 8}, {90, 80, 40, 10}}})
	if err != nil {
		t.Fatal(err)
	}
	face := photometry.Opening{Form: photometry.Rectangle, Width: 1, Height: 1}
	for name, d := range map[string]photometry.Distribution{
		"cosine": photometry.Cosine{}, "uniform": photometry.Uniform{}, "tube": photometry.TubeCosine{}, "lobe": photometry.NewLobe(40, 70),
		"grid": grid, "honeycomb": cells, "honeycomb over a grid": cellsOverGrid, "grid over uniform": overUniform, "table": table,
	} {
		for _, dome := range []bool{false, true} {
			v, at, axis := rowView(dome)
			got := sums(photometry.RowKernel(photometry.Source{Flux: 800, Distribution: d, Opening: face}, true), &v)
			for i, lux := range got {
				p := at(i)
				way := r3.Unit(p)
				response := max(0, v.Even-v.Cos*r3.Dot(way, axis))
				want := 0.25 * 800 * d.Candela(r3.Vec{X: way.X, Y: way.Y, Z: -way.Z}) * response / r3.Norm2(p)
				if i%2 != 0 {
					want = 0 // its bit is not set
				}
				if !(math.Abs(lux-want) <= 2e-3*(want+0.1)) {
					t.Errorf("%s, dome %v, receptor %d: %g lx, want %g", name, dome, i, lux, want)
				}
			}
		}
	}
}

// halves is a distribution that nobody else knows: all its light goes to its right.
type halves struct{}

func (halves) Candela(dir r3.Vec) float64 {
	if dir.X > 0 {
		return 1 / (2 * math.Pi)
	}
	return 0
}

// ownKernel is one that brings a kernel.
type ownKernel struct{ halves }

type constant float64

func (c constant) Add(lux *[row.Word]float64, _ uint64, _ int, _ *row.View, scale float64) {
	lux[0] += float64(c) * scale
}

func (ownKernel) RowKernel(flux float64, _ photometry.Opening, _ bool) row.Kernel {
	return constant(flux)
}

// A new kind of distribution needs nothing but its intensities, and may bring its kernel.
func TestANewDistributionNeedsNoKernel(t *testing.T) {
	v, _, _ := rowView(false)
	plain := sums(photometry.RowKernel(photometry.Source{Flux: 100, Distribution: halves{}}, false), &v)
	if plain[0] != 0 || !(plain[40] > 0) {
		t.Errorf("left %g lx and right %g lx, want light on the right alone", plain[0], plain[40])
	}
	own := sums(photometry.RowKernel(photometry.Source{Flux: 100, Distribution: ownKernel{}}, false), &v)
	if own[0] != 25 || own[40] != 0 {
		t.Errorf("%g and %g lx, want 25 and 0: the kernel that the distribution brings", own[0], own[40])
	}
}

// A table is summed over rows by a kernel of its own where it has an opening, and not as a point, which asks for each direction once.
func TestPointsHaveNoKernelOfATable(t *testing.T) {
	d, flux, err := photometry.NewTable(photometry.Nodes{Horizontal: []float64{0, 90, 180, 270, 360}, Vertical: []float64{0, 90}, Candela: [][]float64{{9, 1}, {8, 1}, {9, 1}, {7, 1}, {9, 1}}})
	if err != nil {
		t.Fatal(err)
	}
	table, ok := d.(*photometry.Table)
	if !ok {
		t.Fatalf("%T is made of a table", d)
	}
	for form, want := range map[photometry.Form]bool{photometry.Point: false, photometry.Rectangle: true, photometry.Disc: true} {
		if got := table.RowKernel(flux, photometry.Opening{Form: form, Width: 1, Height: 1}, true) != nil; got != want {
			t.Errorf("form %d has a kernel: %v", form, got)
		}
	}
}

// The finest detail of a flat field is the width of its edge: twice the radius of the circle of confusion.
func TestDetailOfAFlatField(t *testing.T) {
	for _, share := range []float64{0.02, 0.1, 0.4} {
		f := photometry.NewFlatField(26, share)
		within(t, "detail", f.Detail(), 2*share*math.Tan(13*math.Pi/180), 1e-12)
	}
}
