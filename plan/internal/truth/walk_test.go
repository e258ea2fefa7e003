package truth

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// tinted is a closed box of coloured walls with a block in it and a lamp near the block.
func tinted(source photometry.Source) *plan.Setup {
	wall := solid.Skin{Reflect: colour.RGB{0.7, 0.5, 0.3}}
	block := func(id solid.ID, x0, y0, x1, y1, z0, z1 float64, skin solid.Skin) solid.Prism {
		return solid.Prism{ID: id, Base: []r2.Vec{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}}, Z0: z0, Z1: z1, Skin: skin}
	}
	s := &plan.Setup{}
	s.Set.Prisms = []solid.Prism{
		block(1, -1, -1, 0, 4, -1, 4, wall), block(2, 3, -1, 4, 4, -1, 4, wall),
		block(3, 0, -1, 3, 0, -1, 4, wall), block(4, 0, 3, 3, 4, -1, 4, wall),
		block(5, 0, 0, 3, 3, -1, 0, wall), block(6, 0, 0, 3, 3, 2.5, 3, wall),
		block(7, 1.2, 0.3, 1.8, 2.2, 0, 1.5, solid.Skin{Reflect: colour.RGB{0.8, 0.8, 0.8}}),
	}
	l := plan.Light{Name: "l", RelativeOutput: colour.RGB{1, 0.9, 0.7}, Frame: plan.Frame{At: r3.Vec{X: 0.6, Y: 1.1, Z: 0.9}, Axis: r3.Vec{X: 0.8, Z: -0.6}, Right: r3.Vec{Y: -1}}}
	l.Head.Source = source
	s.Lights = []plan.Light{l}
	return s
}

// However many surfaces a walk from a lamp goes over, the light is the same.
func TestWalksAgree(t *testing.T) {
	far := Receptor{At: r3.Vec{X: 2.4, Y: 1.5, Z: 0.7}, Axis: r3.Vec{X: 1}}
	dome := Receptor{At: r3.Vec{X: 0.3, Y: 2.7, Z: 1.8}, Axis: r3.Vec{Z: -1}, Response: Dome}
	for name, source := range map[string]photometry.Source{
		"point": {Flux: 1000, Distribution: photometry.Uniform{}},
		"spot":  {Flux: 1000, Distribution: photometry.NewLobe(20, 34)},
		"face":  {Flux: 1000, Distribution: photometry.Cosine{}, Opening: photometry.Opening{Form: photometry.Rectangle, Width: 0.5, Height: 0.3}},
		"lobe":  {Flux: 1000, Distribution: photometry.NewFaceLobe(60, 95), Opening: photometry.Opening{Form: photometry.Disc, Width: 0.4}},
		"tube":  {Flux: 1000, Distribution: photometry.TubeCosine{}, Opening: photometry.Opening{Form: photometry.Tube, Width: 0.7}},
		"globe": {Flux: 1000, Distribution: photometry.Uniform{}, Opening: photometry.Opening{Form: photometry.Sphere, Width: 0.3}},
		"odd":   {Flux: 1000, Distribution: photometry.Cosine{}, Opening: photometry.Opening{Form: photometry.Sphere, Width: 0.3}},
	} {
		s := newSet(tinted(source))
		for _, r := range []Receptor{far, dome} {
			all := map[int]Value{}
			for _, reach := range []int{0, 1, maxLanded} {
				s.reach = reach
				all[reach] = s.read(r, Options{Error: 1e-2, Most: 1 << 14}, uint64(reach))
			}
			for reach, v := range all {
				best := all[maxLanded].Reflected
				off, se := math.Abs(v.Reflected.Y-best.Y), math.Hypot(v.Reflected.YSE, best.YSE)
				t.Logf("%s, %d surfaces: %.4f ± %.4f (%d)", name, reach, v.Reflected.Y, v.Reflected.YSE, v.Paths)
				if off > 4*se || best.YSE > 0.03*best.Y {
					t.Errorf("%s: %.4f ± %.4f over %d surfaces, %.4f ± %.4f over %d", name, v.Reflected.Y, v.Reflected.YSE, reach, best.Y, best.YSE, maxLanded)
				}
			}
		}
	}
}

// Lobes and grids as written out here send out one lumen a lumen, and are those of the catalogue.
func TestSpreads(t *testing.T) {
	grid, _ := photometry.NewGrid(photometry.Cosine{}, 90, 60)
	for name, d := range map[string]photometry.Distribution{
		"spot": photometry.NewLobe(12, 20), "wide": photometry.NewLobe(100, 180), "face": photometry.NewFaceLobe(110, 180), "grid": grid,
		"cosine": photometry.Cosine{}, "uniform": photometry.Uniform{}, "line": photometry.TubeCosine{},
	} {
		own := spreadOf(d)
		if got := flux(own, math.Pi); !(math.Abs(got-1) <= 2e-3) {
			t.Errorf("%s sends out %g", name, got)
		}
		for i := range 200 {
			p := newPoints(1, uint32(i))
			n := p.next()
			v := tiltedFrom(r3.Vec{Z: -1}, 1-2*n[0]*n[0], n[1])
			got, want := own(v.X, v.Y, -v.Z), d.Candela(v)
			if !(math.Abs(got-want) <= 1e-5*want+1e-9) {
				t.Errorf("%s towards %v: %g, want %g", name, v, got, want)
			}
		}
	}
}

// Every number of a group is spread evenly: each of 2^n equal parts of its range has one of the first 2^n points
// of every aligned run.
func TestPointsAreEven(t *testing.T) {
	const n = 256
	for seed := range uint64(5) {
		var seen [evenGroups][4][n]int
		for i := range uint32(n) {
			p := newPoints(seed, i)
			for g := range evenGroups {
				for d, x := range p.next() {
					seen[g][d][int(x*n)]++
				}
			}
		}
		for g := range seen {
			for d := range seen[g] {
				for _, count := range seen[g][d] {
					if count != 1 {
						t.Fatalf("seed %d, group %d, number %d: %d points in one part", seed, g, d, count)
					}
				}
			}
		}
	}
}
