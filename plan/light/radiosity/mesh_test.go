package radiosity

import (
	"context"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// A set of greys is computed as one channel; any two channels that differ anywhere make it three, and black returns nothing.
func TestColoursDecideTheChannels(t *testing.T) {
	for _, c := range []struct {
		colours  []colour.RGB
		channels int
		reflects bool
	}{
		{nil, 1, false},
		{[]colour.RGB{{}, {}}, 1, false},
		{[]colour.RGB{{0.5, 0.5, 0.5}, {0.2, 0.2, 0.2}}, 1, true},
		{[]colour.RGB{{0.5, 0.5, 0.3}}, 3, true},
		{[]colour.RGB{{0.3, 0.5, 0.5}, {0.2, 0.2, 0.2}}, 3, true},
		{[]colour.RGB{{0.2, 0.2, 0.2}, {0, 0, 0.1}, {}}, 3, true},
	} {
		m := mesh{channels: 1}
		for _, one := range c.colours {
			m.noteColour(one)
		}
		if m.channels != c.channels || m.reflects != c.reflects {
			t.Errorf("%v: %d channels, returns light: %v; want %d, %v", c.colours, m.channels, m.reflects, c.channels, c.reflects)
		}
	}
}

// Places on a patch fill it evenly from its corner, whatever its sides.
func TestPlacesFillTheirPatch(t *testing.T) {
	f, ok := newFace([]r3.Vec{{}, {X: 4}, {X: 4, Y: 1}, {Y: 1}})
	if !ok {
		t.Fatal("a rectangle is no face")
	}
	f.du, f.dv = 0.5, 0.25
	p := &patch{x: 1, y: 0.5}
	for at, want := range map[[2]float64]r3.Vec{{0, 0}: f.at(1, 0.5), {1, 0}: f.at(1.5, 0.5), {0, 1}: f.at(1, 0.75), {0.5, 0.2}: f.at(1.25, 0.55)} {
		if got := placeOn(&f, p, at[0], at[1]); r3.Norm(r3.Sub(got, want)) > 1e-12 {
			t.Errorf("the place of %v is %v, want %v", at, got, want)
		}
	}
}

// The cells of an element share it out evenly; where only a part of it lies in the air, they share that out.
func TestCellsShareTheirElement(t *testing.T) {
	f, _ := newFace([]r3.Vec{{X: 2, Y: 1}, {X: 6, Y: 1}, {X: 6, Y: 2}, {X: 2, Y: 2}})
	f.du, f.dv = 2, 0.5
	p := &patch{x: 2, y: 0.5}
	cut := *p
	cut.parts = &[4][][]r3.Vec{{}, {}, {}, {p.inAir(&f, 3)[0][:3]}}
	for name, c := range map[string]struct {
		p       *patch
		element int
		want    float64 // m², of all cells
		first   float64 // of the first
	}{
		"a whole element":    {p, 1, 0.25, 0.25 / (cellsAcross * cellsAcross)},
		"half of an element": {&cut, 3, 0.125, 0.125 / (cellsAcross * cellsAcross)},
		"nothing in the air": {&cut, 0, 0, 0},
	} {
		sum := 0.0
		for cell := range int32(cellsAcross * cellsAcross) {
			own := 0.0
			for _, figure := range f.cellInAir(c.p, c.element, cell) {
				own += areaOf(figure)
			}
			if cell == 0 && math.Abs(own-c.first) > 1e-12 {
				t.Errorf("%s: the first cell has %g m², want %g", name, own, c.first)
			}
			sum += own
		}
		if !(math.Abs(sum-c.want) <= 1e-12) {
			t.Errorf("%s: the cells have %g m², want %g", name, sum, c.want)
		}
	}
}

// Boxes meet where they are no farther apart along any axis than what lies between a face and the place before it.
func TestBoxesMeet(t *testing.T) {
	const near, far = 1.9 * clearance, 2.1 * clearance
	one := boxRound([]r3.Vec{{X: 1, Y: 2, Z: 3}, {X: 0, Y: 1, Z: 4}})
	for _, axis := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		for _, way := range []float64{1, -1} {
			for gap, want := range map[float64]bool{-0.5: true, 0: true, near: true, far: false, 1: false} {
				by := r3.Scale(way*(1+gap), axis)
				other := box{r3.Add(one.low, by), r3.Add(one.high, by)}
				if got := one.meets(&other); got != want {
					t.Errorf("%g m apart along %v: they meet: %v, want %v", gap, r3.Scale(way, axis), got, want)
				}
			}
		}
	}
}

// openBulb is a bulb that takes from others that nothing stands between, and counts both kinds of patches.
type openBulb struct {
	*bulb
	asked, told int
}

func (b *openBulb) SetPatch(worker int, corners []r3.Vec, normal r3.Vec) Visibility {
	b.asked++
	return b.bulb.SetPatch(worker, corners, normal)
}

func (b *openBulb) SetOpenPatch(worker int, corners []r3.Vec, normal r3.Vec) Visibility {
	b.told++
	return b.bulb.SetPatch(worker, corners, normal)
}

// Patches are asked about in rows, and get by that what each gets by itself.
func TestDirectLightInRows(t *testing.T) {
	s := boxOf(4, 3, 2.5, func(int) colour.RGB { return grey(0.5) })
	tr, bvh := trace(t, s, usual, []receptor.Receptor{{At: r3.Vec{X: 2, Y: 1, Z: 2}, Axis: r3.Vec{Z: -1}, Response: receptor.Dome}}, nil)
	tr.workers = 1 // a bulb is asked by one
	lamp := &bulb{bvh: bvh, at: r3.Vec{X: 1, Y: 1, Z: 1}, flux: grey(1000), cos: -1}
	rows := &openBulb{bulb: lamp}
	want, _, err := tr.directLight(context.Background(), []Lamp{lamp})
	if err != nil {
		t.Fatal(err)
	}
	got, _, err := tr.directLight(context.Background(), []Lamp{rows})
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(got[0], want[0]) {
		t.Error("what patches get in rows is not what each gets by itself")
	}
	if n := len(tr.patches) - 1; rows.told < n*3/4 || rows.asked > n/2 {
		t.Errorf("of %d patches %d were lit as open ones; the lamp was asked %d times what it sees", n, rows.told, rows.asked)
	}
}

// A sheet that is clear from one side is a pane, and none of its sides a face; one that scatters from one side is a cloth.
func TestSheetsThatAreClear(t *testing.T) {
	clear, opaque, cloth := solid.Skin{Direct: grey(0.9)}, solid.Skin{Reflect: grey(0.5)}, solid.Skin{Reflect: grey(0.3), Diffuse: grey(0.5)}
	for _, c := range []struct {
		front, back  solid.Skin
		panes, faces int
		cloths       int
	}{{clear, clear, 1, 0, 0}, {clear, opaque, 1, 0, 0}, {opaque, clear, 1, 0, 0}, {opaque, opaque, 0, 2, 0}, {cloth, cloth, 0, 2, 1}, {cloth, opaque, 0, 2, 1}, {opaque, cloth, 0, 2, 1}} {
		set := &solid.Set{Sheets: []solid.Sheet{{ID: 1, Corners: []r3.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}, Front: c.front, Back: c.back}}}
		if m := newMesh(set, solid.NewBVH(set), 1); len(m.panes) != c.panes || len(m.faces) != c.faces || len(m.veils) != c.cloths {
			t.Errorf("%+v: %d panes, %d faces and %d cloths", c, len(m.panes), len(m.faces), len(m.veils))
		}
	}
}

// A prism has a face for each side, a top and a foot, which look away from its middle, whichever way its base runs; one without height, on its head or of no
// area has none.
func TestFacesOfAPrism(t *testing.T) {
	base := []r2.Vec{{X: 1, Y: 1}, {X: 4, Y: 1}, {X: 4, Y: 3}, {X: 1, Y: 3}}
	turned := slices.Clone(base)
	slices.Reverse(turned)
	middle := r3.Vec{X: 2.5, Y: 2, Z: 1.5}
	for name, b := range map[string][]r2.Vec{"counter-clockwise": base, "clockwise": turned} {
		faces, area := prismFaces(&solid.Prism{Base: b, Z0: 0.5, Z1: 2.5}), 0.0
		for i := range faces {
			f := &faces[i]
			area += areaOf(f.corners)
			if !(r3.Dot(f.n, r3.Sub(solid.Centre(f.corners), middle)) > 0) {
				t.Errorf("%s: face %d looks along %v, inward", name, i, f.n)
			}
		}
		if len(faces) != 6 || !(math.Abs(area-2*(3*2+3*2+2*2)) <= 1e-9) {
			t.Errorf("%s: %d faces of %g m²", name, len(faces), area)
		}
	}
	for name, p := range map[string]solid.Prism{
		"no height": {Base: base, Z0: 1, Z1: 1}, "on its head": {Base: base, Z0: 2, Z1: 1}, "a line": {Base: []r2.Vec{{}, {X: 1}, {X: 2}}, Z1: 1},
	} {
		if faces := prismFaces(&p); len(faces) != 0 {
			t.Errorf("%s: %d faces", name, len(faces))
		}
	}
}
