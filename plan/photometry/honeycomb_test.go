package photometry_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/photometry"
)

// shownThrough is the part of a round cell that is seen through at a shift of its far mouth, in diameters: counted on a
// fine lattice of the near mouth.
func shownThrough(shift float64) float64 {
	const n = 1200
	inside, both := 0, 0
	for i := range n {
		for j := range n {
			x, y := (float64(i)+0.5)/n-0.5, (float64(j)+0.5)/n-0.5
			if x*x+y*y > 0.25 {
				continue
			}
			inside++
			if (x-shift)*(x-shift)+y*y <= 0.25 {
				both++
			}
		}
	}
	return float64(both) / float64(inside)
}

// At each angle as much passes as the far mouth of a cell shows through the near one; on the axis all, beyond the cut-off
// nothing, and the share of the flux is the integral.
func TestHoneycombIsItsCell(t *testing.T) {
	for _, cutOff := range []float64{20, 60, 80, 120} {
		d, share := photometry.NewHoneycomb(photometry.Cosine{}, cutOff)
		edge := cutOff / 2 * math.Pi / 180
		within(t, "on the axis", share*d.Peak(), 1/math.Pi, 1e-12)
		for _, part := range []float64{0.1, 0.35, 0.7, 0.95} {
			angle := math.Atan(part * math.Tan(edge))
			dir := r3.Vec{X: 0.6 * math.Sin(angle), Y: 0.8 * math.Sin(angle), Z: -math.Cos(angle)}
			within(t, "through a cell", share*d.Candela(dir)/photometry.Cosine{}.Candela(dir), shownThrough(part), 1e-3)
		}
		within(t, "beyond", d.Candela(r3.Vec{X: math.Sin(edge + 1e-6), Z: -math.Cos(edge + 1e-6)}), 0, 0)
		within(t, "behind", d.Candela(r3.Vec{Z: 1}), 0, 0)
		within(t, "integral", reference.SphereIntegral(d), 1, 2e-4)
	}
}

// The same cells over a table of the same light let the same share pass, and cells of 40 leave a beam of 37.
func TestHoneycombOverATable(t *testing.T) {
	var angles, candela []float64
	for i := range 181 {
		angles = append(angles, float64(i)/2)
		candela = append(candela, math.Cos(float64(i)*math.Pi/360))
	}
	table, _, err := photometry.NewTable(photometry.Nodes{Horizontal: []float64{0, 90, 180, 270, 360}, Vertical: angles,
		Candela: [][]float64{candela, candela, candela, candela, candela}})
	if err != nil {
		t.Fatal(err)
	}
	_, measured := photometry.NewHoneycomb(table, 80)
	_, share := photometry.NewHoneycomb(photometry.Cosine{}, 80)
	within(t, "share of a table", measured, share, 5e-5)
	even, _ := photometry.NewHoneycomb(photometry.Uniform{}, 80)
	beam, _ := photometry.BeamAngle(even)
	within(t, "beam", beam, 37.5, 0.1)
}
