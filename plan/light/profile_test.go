package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// slanted is an opening that is brighter toward its right: from a tenth of the mean at its left end to nearly two.
type slanted struct{ width float64 }

func (s slanted) Relative(right, _ float64) float64 { return 1 + 1.8*right/s.width }

// stripsOf is an emitter with a profile as many narrow ones, each of one brightness.
func stripsOf(e Emitter, n int) (strips []Emitter) {
	wide := e.Source.Opening.Width / float64(n)
	for i := range n {
		x := (float64(i)+0.5)*wide - e.Source.Opening.Width/2
		s := e
		s.Name, s.Profile = e.Name+string(rune('a'+i)), nil
		s.Frame.At = r3.Add(e.Frame.At, r3.Scale(x, e.Frame.Right))
		s.Source.Opening.Width = wide
		s.Source.Flux *= e.Profile.Relative(x, 0) / float64(n)
		strips = append(strips, s)
	}
	return strips
}

// profileReadings are the light of all lamps at receptors and on a lattice, direct and reflected apart.
func profileReadings(t *testing.T, w *World, lights []Emitter, to Targets) (points []float64, direct, back []float32) {
	t.Helper()
	b := basis(t, w, lights, to)
	d := Levels{}
	for _, e := range lights {
		d[e.Name] = colour.RGB{1, 1, 1}
	}
	for i := range to.Points {
		sum, _ := b.Point(i, d)
		points = append(points, sum.Y())
	}
	n := to.Lattices[0].NU * to.Lattices[0].NV
	direct, back = make([]float32, n), make([]float32, n)
	b.Field(0, d, direct)
	b.ReflectedField(0, d, back)
	for i := range direct {
		direct[i] -= back[i]
	}
	return points, direct, back
}

// An opening may vary over its face: its light is that of narrow ones side by side, at receptors and on lattices, past
// what hides a part of it, and off surfaces.
func TestAnOpeningMayVary(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 90, 90)
	set := &solid.Set{
		Prisms: []solid.Prism{{ID: 1, Base: []r2.Vec{{X: 1.2, Y: 0.9}, {X: 1.5, Y: 0.9}, {X: 1.5, Y: 1}, {X: 1.2, Y: 1}}, Z0: 0, Z1: 1.6}},
		Sheets: []solid.Sheet{{ID: 2, Corners: []r3.Vec{{X: -1, Y: 2.5}, {X: -1, Y: 2.5, Z: 2.5}, {X: 3, Y: 2.5, Z: 2.5}, {X: 3, Y: 2.5}}}},
	}
	for i := range set.Sheets {
		set.Sheets[i].Front.Reflect, set.Sheets[i].Back.Reflect = colour.RGB{0.7, 0.7, 0.7}, colour.RGB{0.7, 0.7, 0.7}
	}
	w := build(t, set, Options{})
	to := Targets{
		Points: []Receptor{
			{At: r3.Vec{X: 0.2, Y: 1.2, Z: 1}, Axis: r3.Vec{Y: -1}},
			{At: r3.Vec{X: 1.6, Y: 1.4, Z: 1}, Axis: r3.Unit(r3.Vec{X: -1, Y: -1}), Response: Dome},
			{At: r3.Vec{X: 1.2, Y: 1.6, Z: 1.1}, Axis: r3.Vec{Y: -1}},
		},
		Lattices: []Lattice{floorAt(0.1, 0.6, 0, 1.7, 24)},
	}
	for name, s := range map[string]photometry.Source{
		"cosine": {Flux: 4000, Distribution: photometry.Cosine{}, Opening: photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.6}},
		"grid":   {Flux: 4000, Distribution: grid, Opening: photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.6}},
		"lobe":   {Flux: 4000, Distribution: photometry.NewFaceLobe(60, 100), Opening: photometry.Opening{Form: photometry.Rectangle, Width: 1.2, Height: 0.6}},
		"tube":   {Flux: 3000, Distribution: photometry.TubeCosine{}, Opening: photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.03}},
	} {
		e := Emitter{Name: name, Source: s, Profile: slanted{1.2}, Frame: looking(r3.Vec{X: 1, Y: 0, Z: 1.3}, r3.Vec{X: 1, Y: 2, Z: 1})}
		points, direct, back := profileReadings(t, w, []Emitter{e}, to)
		wantPoints, wantDirect, wantBack := profileReadings(t, w, stripsOf(e, 24), to)
		even := e
		even.Profile = nil
		evenPoints, _, _ := profileReadings(t, w, []Emitter{even}, to)
		for i := range points {
			if off := math.Abs(points[i]-wantPoints[i]) / wantPoints[i]; off > 0.005 {
				t.Errorf("%s, receptor %d: %.4g lx, strips give %.4g", name, i, points[i], wantPoints[i])
			}
			if math.Abs(points[i]-evenPoints[i]) < 0.02*points[i] {
				t.Errorf("%s, receptor %d: an even opening gives %.4g lx as well", name, i, evenPoints[i])
			}
		}
		for what, pair := range map[string][2][]float32{"direct": {direct, wantDirect}, "reflected": {back, wantBack}} {
			off, all := 0.0, 0.0
			for n := range pair[0] {
				off += math.Abs(float64(pair[0][n] - pair[1][n]))
				all += float64(pair[1][n])
			}
			if off > 0.01*all {
				t.Errorf("%s: the %s light of the floor is %.2g %% off that of strips", name, what, 100*off/all)
			}
		}
	}
}
