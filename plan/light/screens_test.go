package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// lens is a lamp at the origin that shines along X through a lens of 0.12 m, with doors on a frame of 0.14 m.
const (
	lensWidth = 0.12
	doorFrame = 0.14
	doorGap   = 0.02
	leafLong  = 0.14
)

func doored(opened kit.Opened) Emitter {
	doors := kit.HungDoors{Doors: kit.Doors{Frame: [2]float64{doorFrame, doorFrame}, Gap: doorGap,
		Long: kit.Leaf{Length: leafLong, Edge: 0.4}, Short: kit.Leaf{Length: 0.1, Edge: 0.4}}, Opened: opened}
	frame := looking(r3.Vec{}, r3.Vec{X: 1})
	e := Emitter{Name: "a", Frame: frame, Source: photometry.Source{
		Flux: 2000, Distribution: photometry.NewFaceLobe(60, 75), Opening: photometry.Opening{Form: photometry.Disc, Width: lensWidth},
	}}
	for _, corners := range doors.Leaves() {
		for i, p := range corners {
			corners[i] = frame.Place(p)
		}
		e.Screens = append(e.Screens, corners)
	}
	return e
}

const folded = kit.Folded

// The shadow of the upper leaf on a wall 3 m off begins where its edge first hides the foot of the lens and is whole where
// it hides the top, both to 5 mm: by similar triangles.
func TestShadowOfABarnDoor(t *testing.T) {
	const wall = 3.0
	w := build(t, &solid.Set{}, Options{})
	for _, opened := range []float64{20, 45, 70, 90} {
		bare, cut := doored(kit.Opened{Top: folded, Bottom: folded, Left: folded, Right: folded}), doored(kit.Opened{Top: opened, Bottom: folded, Left: folded, Right: folded})
		levels := Levels{"a": {1, 1, 1}}
		whole, part := w.Evaluator([]Emitter{bare}, levels), w.Evaluator([]Emitter{cut}, levels)
		seen := func(z float64) float64 {
			r := Receptor{At: r3.Vec{X: wall, Z: z}, Axis: r3.Vec{X: -1}}
			return part(r) / whole(r)
		}
		sin, cos := math.Sincos(opened * radian)
		ahead, over := doorGap+leafLong*sin, doorFrame/2-leafLong*cos
		edge := func(from float64) float64 { return from + (over-from)*wall/ahead }
		// The highest place that sees all of the lens looks past the edge at its foot; the lowest that sees none, at its top.
		begins, ends := edge(lensWidth/2), edge(-lensWidth/2)
		if begins > ends {
			t.Fatal("the geometry is wrong")
		}
		first := bisect(begins-0.5, ends, func(z float64) bool { return seen(z) > 1-1e-5 })
		last := bisect(begins, ends+0.5, func(z float64) bool { return seen(z) > 1e-5 })
		t.Logf("at %g°: the shadow begins at %.4f m (%.4f) and is whole at %.4f (%.4f)", opened, first, begins, last, ends)
		if !(math.Abs(first-begins) <= 0.005) || !(math.Abs(last-ends) <= 0.005) {
			t.Errorf("at %g° the shadow runs from %.4f to %.4f m, want from %.4f to %.4f", opened, first, last, begins, ends)
		}
		if middle := seen((begins + ends) / 2); opened >= 45 && math.Abs(middle-0.5) > 0.02 {
			t.Errorf("at %g° the middle of the shadow's edge gets %.3f of the light", opened, middle)
		}
	}
}

// bisect is where a condition that holds at low and not at high ends.
func bisect(low, high float64, holds func(float64) bool) float64 {
	for range 40 {
		if middle := (low + high) / 2; holds(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// A lattice has the shadows of the leaves as receptors do, and another lamp is not cut by them.
func TestDoorsOnALattice(t *testing.T) {
	e := doored(kit.Opened{Top: 35, Bottom: folded, Left: 60, Right: folded, Turn: 20})
	other := doored(kit.Opened{Top: folded, Bottom: folded, Left: folded, Right: folded})
	other.Name = "b"
	wall := Lattice{Origin: r3.Vec{X: 2, Y: -1.5, Z: -1.5}, U: r3.Vec{Y: 0.1}, V: r3.Vec{Z: 0.1}, Normal: r3.Vec{X: -1}, NU: 31, NV: 31}
	to := Targets{Lattices: []Lattice{wall}}
	for n := range wall.NU * wall.NV {
		to.Points = append(to.Points, wall.Receptor(n%wall.NU, n/wall.NU))
	}
	b := basis(t, build(t, &solid.Set{}, Options{}), []Emitter{e, other}, to)
	field, dark := make([]float32, wall.NU*wall.NV), 0
	b.Field(0, Levels{"a": {1, 1, 1}}, field)
	for n, lux := range field {
		cut, _ := b.Point(n, Levels{"a": {1, 1, 1}})
		whole, _ := b.Point(n, Levels{"b": {1, 1, 1}})
		if !(math.Abs(float64(lux)-cut.Y()) <= 0.02*whole.Y()+1e-3) {
			t.Errorf("point %d: %g lx on the lattice, %g at a receptor, %g without doors", n, lux, cut.Y(), whole.Y())
		}
		if cut.Y() < 0.01*whole.Y() {
			dark++
		}
	}
	if dark < len(field)/10 || dark > len(field)*9/10 {
		t.Errorf("%d of %d points are dark", dark, len(field))
	}
}

// A wedge ends where the leaves stop the ray from the middle of the lens.
func TestWedgeEndsAtTheDoors(t *testing.T) {
	w := build(t, &solid.Set{}, Options{})
	e := doored(kit.Opened{Top: folded, Bottom: folded, Left: 60, Right: folded})
	wedge := w.Wedge(&e, 0.5, Limits{Floor: -5, Reach: 10})
	sin, cos := math.Sincos(60 * radian)
	want := math.Atan2(doorFrame/2-0.1*cos, doorGap+0.1*sin) / radian
	if !(math.Abs(wedge.Left-want) <= 1e-3) || !(math.Abs(wedge.Right-30) <= 1e-3) {
		t.Errorf("the beam ends %g° to the left and %g° to the right, want %g and 30", wedge.Left, wedge.Right, want)
	}
}
