package radiosity

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// glowing is an environment that looks like one element of the set from everywhere over the horizon.
type glowing uint32

func (g glowing) element(d r3.Vec) uint32 {
	if d.Z > 0 {
		return uint32(g)
	}
	return black
}

// A white sheet under a lamp, and over it receptors, spot meters and points of lattices that look up, where there is
// nothing; some of them through a pane that passes half.
func TestRaysThatMeetNothingAskTheEnvironment(t *testing.T) {
	half := colour.RGB{0.5, 0.5, 0.5}
	square := func(side, z float64) []r3.Vec {
		return []r3.Vec{{X: -side, Y: -side, Z: z}, {X: side, Y: -side, Z: z}, {X: side, Y: side, Z: z}, {X: -side, Y: side, Z: z}}
	}
	set := &solid.Set{Sheets: []solid.Sheet{
		{ID: 1, Corners: square(0.1, 0), Front: solid.Skin{Reflect: grey(0.8)}},
		{ID: 2, Corners: square(500, 80), Front: solid.Skin{Direct: half}, Back: solid.Skin{Direct: half}},
	}}
	bvh := solid.NewBVH(set)
	points := []receptor.Receptor{
		{At: r3.Vec{Z: 90}, Axis: r3.Vec{Z: 1}}, {At: r3.Vec{Z: 90}, Axis: r3.Vec{X: 1}}, {At: r3.Vec{Z: 78}, Axis: r3.Vec{Z: 1}},
		{At: r3.Vec{Z: 90}, Axis: r3.Unit(r3.Vec{X: 2, Z: 1}), Response: receptor.Radiance},
		{At: r3.Vec{Z: 78}, Axis: r3.Vec{Z: 1}, Response: receptor.Radiance},
		{At: r3.Vec{Z: 90}, Axis: r3.Unit(r3.Vec{X: 2, Z: -1}), Response: receptor.Radiance},
	}
	over := receptor.Lattice{Origin: r3.Vec{Z: 90}, U: r3.Vec{X: 0.5}, V: r3.Vec{Y: 0.5}, Normal: r3.Vec{Z: 1}, NU: 4, NV: 4}
	under := over
	under.Origin.Z = 78
	lattices := []receptor.Lattice{over, under}
	read := func(beyond environment) ([6]float64, [2]float32, float64) {
		m := newMesh(set, bvh, 1)
		m.beyond = beyond
		return readMesh(t, m, points, lattices)
	}
	if lux, fields, _ := read(darkness{}); lux != [6]float64{} || fields != [2]float32{} {
		t.Errorf("%v and %v lx from nothing", lux, fields)
	}
	const patch = 1 // of the sheet's front
	lux, fields, exitance := read(glowing(4 * patch))
	if !(exitance > 40) {
		t.Fatalf("the sheet returns %g lm/m², want 0.8 times about 80 lx", exitance)
	}
	for i, share := range [...]float64{1, 0.5, 0.5, 1, 0.5, 0} {
		if want := share * exitance; !(math.Abs(lux[i]-want) <= 0.01*want) {
			t.Errorf("receptor %d: %g lx, want %g", i, lux[i], want)
		}
	}
	for i, share := range [...]float64{1, 0.5} {
		if want := share * exitance; !(math.Abs(float64(fields[i])-want) <= 0.01*want) {
			t.Errorf("on lattice %d %g lx, want %g", i, fields[i], want)
		}
	}
}

// readMesh reads six points and two lattices, lx, and what the first patch returns, lm/m², with a lamp of 1000 lm over it.
func readMesh(t *testing.T, m *mesh, points []receptor.Receptor, lattices []receptor.Lattice) (lux [6]float64, fields [2]float32, exitance float64) {
	t.Helper()
	q := Quality{Patch: 1, Links: 16, Point: 4096, Lattice: 64}
	tr, err := traceMesh(context.Background(), &Transport{mesh: m, workers: 1, quality: q, receptors: points}, lattices)
	if err != nil {
		t.Fatal(err)
	}
	s := solve(t, tr, &bulb{bvh: m.bvh, at: r3.Vec{Z: 1}, flux: grey(1000), cos: -1})
	for i := range lux {
		for _, e := range s.Point(i, 0) {
			lux[i] += e.Y()
		}
	}
	for i := range fields {
		planes, err := s.Lattice(context.Background(), i)
		if err != nil {
			t.Fatal(err)
		}
		if planes[0] != nil {
			fields[i] = planes[0][5]
		}
	}
	if slot := tr.slots[1]; slot > 0 {
		exitance = s.exitance(4*slot, 0).Y()
	}
	return lux, fields, exitance
}
