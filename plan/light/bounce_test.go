package light

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/radiosity"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// surfaceLampOf is a lamp as the surfaces of a set see it.
func surfaceLampOf(t *testing.T, s *solid.Set, e Emitter) *surfaceLamp {
	t.Helper()
	w := build(t, s, Options{Workers: 1})
	return w.newSurfaceLamp(newLamp(&e, w.faces, w.tubes, w.bundle))
}

// tile is a square of a side about a place of the floor, and which way it faces.
func tile(x, y, side, up float64) (corners []r3.Vec, normal r3.Vec) {
	h := side / 2
	return []r3.Vec{{X: x - h, Y: y - h}, {X: x + h, Y: y - h}, {X: x + h, Y: y + h}, {X: x - h, Y: y + h}}, r3.Vec{Z: up}
}

// hanging is a lamp 2 m over the floor that looks down.
func hanging(o photometry.Opening) Emitter {
	return Emitter{Name: "a", Frame: down(2), Source: photometry.Source{Flux: 1000, Distribution: photometry.Lambertian(o.Form), Opening: o}}
}

// What a patch sees of a lamp is known without a ray: all, some, or none.
func TestPatchesSeeLamps(t *testing.T) {
	board := solid.Prism{ID: 1, Base: box(3, 0, 2, 4, 0), Z0: 0.5, Z1: 0.52} // over x from 2 to 4
	for name, o := range map[string]photometry.Opening{
		"point": {}, "face": {Form: photometry.Rectangle, Width: 0.3, Height: 0.2}, "disc": {Form: photometry.Disc, Width: 0.3},
		"tube": {Form: photometry.Tube, Width: 0.4}, "sphere": {Form: photometry.Sphere, Width: 0.3},
	} {
		b := surfaceLampOf(t, &solid.Set{Prisms: []solid.Prism{board}}, hanging(o))
		for _, c := range []struct {
			x, up float64
			want  radiosity.Visibility
		}{
			{0, 1, radiosity.Unoccluded}, {0, -1, radiosity.Hidden}, {3.8, 1, radiosity.Hidden}, {2.7, 1, radiosity.PartlyOccluded}, {-5, 1, radiosity.Unoccluded},
		} {
			corners, normal := tile(c.x, 0, 0.25, c.up)
			if got := b.SetPatch(0, corners, normal); got != c.want {
				t.Errorf("%s, patch at %g m that faces %g: %d, want %d", name, c.x, c.up, got, c.want)
			}
		}
	}
}

// A lamp that sends nothing is seen by nobody; nor is a face from behind, nor a narrow beam from beside.
func TestPatchesThatNoLightComesTo(t *testing.T) {
	dark := hanging(photometry.Opening{})
	dark.Source.Flux = 0
	over := hanging(photometry.Opening{Form: photometry.Rectangle, Width: 0.3, Height: 0.2})
	over.Frame.Axis = r3.Vec{Z: 1}
	beam := hanging(photometry.Opening{})
	beam.Source.Distribution = photometry.NewLobe(10, 20)
	for name, c := range map[string]struct {
		e    Emitter
		x    float64
		want radiosity.Visibility
	}{
		"a dark lamp": {dark, 0, radiosity.Hidden}, "a face from behind": {over, 0, radiosity.Hidden},
		"a beam from beside": {beam, 4, radiosity.Hidden}, "a beam": {beam, 0, radiosity.Unoccluded}, "its rim": {beam, 0.7, radiosity.Unoccluded},
	} {
		corners, normal := tile(c.x, 0, 0.25, 1)
		if got := surfaceLampOf(t, &solid.Set{}, c.e).SetPatch(0, corners, normal); got != c.want {
			t.Errorf("%s: %d, want %d", name, got, c.want)
		}
	}
}

// In random rooms no light comes to a patch that sees nothing of a lamp, and all that the lamp sends to one that sees all.
func TestVisibilityIsTrue(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	found := map[radiosity.Visibility]int{}
	for range cases(12, 4) {
		s, lights := room(r), lamps(r)
		for i := range lights {
			b, open := surfaceLampOf(t, s, lights[i]), surfaceLampOf(t, &solid.Set{}, lights[i])
			for range 60 {
				corners, normal := tile(8*r.Float64(), 8*r.Float64(), 0.3, 1)
				sight := b.SetPatch(0, corners, normal)
				found[sight]++
				open.SetPatch(0, corners, normal)
				for range 4 {
					at := r3.Vec{X: corners[0].X + 0.3*r.Float64(), Y: corners[0].Y + 0.3*r.Float64()}
					got, all := b.Light(0, at, normal).Y(), open.Light(0, at, normal).Y()
					if sight == radiosity.Hidden && got > 1e-6*lights[i].Source.Flux || sight == radiosity.Unoccluded && math.Abs(got-all) > 1e-9*all {
						t.Fatalf("lamp %s, %v: sight %d, %g lx of %g", lights[i].Name, at, sight, got, all)
					}
				}
			}
		}
	}
	for _, sight := range []radiosity.Visibility{radiosity.Hidden, radiosity.Unoccluded, radiosity.PartlyOccluded} {
		if found[sight] < 50 {
			t.Errorf("only %d patches of sight %d", found[sight], sight)
		}
	}
}

// Patches side by side of which the whole sees all of a lamp get what each gets that is asked about by itself; where the whole
// sees none of it, none does.
func TestRowsSeeWhatTheirPatchesSee(t *testing.T) {
	r := rand.New(rand.NewPCG(43, 44))
	const side, length = 0.25, 8
	found := map[radiosity.Visibility]int{}
	for range cases(12, 4) {
		s, lights := room(r), lamps(r)
		for i := range lights {
			b := surfaceLampOf(t, s, lights[i])
			for range 60 {
				x, y := 7*r.Float64(), 8*r.Float64()
				row, normal := tile(x+side*length/2, y, side, 1)
				row[0].X, row[1].X, row[2].X, row[3].X = x, x+side*length, x+side*length, x
				sight := b.SetPatch(0, row, normal)
				found[sight]++
				for k := range length {
					corners, _ := tile(x+side*(float64(k)+0.5), y, side, 1)
					var open, alone float64
					if sight == radiosity.Unoccluded && b.SetOpenPatch(0, corners, normal) != radiosity.Hidden {
						open = b.Flux(0, corners, false).Y()
					}
					if b.SetPatch(0, corners, normal) != radiosity.Hidden {
						alone = b.Flux(0, corners, false).Y()
					}
					if sight != radiosity.PartlyOccluded && math.Abs(open-alone) > 1e-9*alone+1e-9*lights[i].Source.Flux {
						t.Fatalf("lamp %s, row of sight %d at %g, %g: patch %d gets %g lm, alone %g", lights[i].Name, sight, x, y, k, open, alone)
					}
				}
			}
		}
	}
	for _, sight := range []radiosity.Visibility{radiosity.Hidden, radiosity.Unoccluded, radiosity.PartlyOccluded} {
		if found[sight] < 50 {
			t.Errorf("only %d rows of sight %d", found[sight], sight)
		}
	}
}

// A room of few patches, across which the edge of a shadow runs, is lit alike by one worker and by more than it has runs of patches.
func TestSmallRoomsOnManyWorkers(t *testing.T) {
	s := shell(1.5, 1.2, 1.2, colour.RGB{0.5, 0.5, 0.5})
	s.Prisms = append(s.Prisms, solid.Prism{ID: 90, Base: box(0.7, 0.6, 0.3, 0.3, 0.2), Z0: 0.4, Z1: 0.5})
	e := Emitter{Name: "a", Frame: looking(r3.Vec{X: 0.6, Y: 0.5, Z: 1.1}, r3.Vec{X: 0.6, Y: 0.5}), Source: photometry.Source{Flux: 1000, Distribution: photometry.Cosine{}}}
	read := func(workers int) colour.RGB {
		at := Receptor{At: r3.Vec{X: 0.3, Y: 0.3, Z: 0.3}, Axis: r3.Vec{X: 1}}
		sum, _ := basis(t, build(t, s, Options{Workers: workers, Quality: Draft}), []Emitter{e}, Targets{Points: []Receptor{at}}).Point(0, Levels{"a": {1, 1, 1}})
		return sum
	}
	if one, many := read(1), read(64); one != many || one.Y() == 0 {
		t.Errorf("one worker reads %v, many read %v", one, many)
	}
}

// The flux on a patch that sees all of a lamp is the sum of what its places get, whatever rule is taken at its distance.
func TestFluxOnPatches(t *testing.T) {
	for name, o := range openings {
		for _, d := range []photometry.Distribution{photometry.Lambertian(o.Form), photometry.NewLobe(70, 110)} {
			e := hanging(o)
			e.Source.Distribution = d
			for _, height := range []float64{0.5, 0.8, 2, 3, 6} {
				e.Frame = down(height)
				b := surfaceLampOf(t, &solid.Set{}, e)
				corners, normal := tile(0.3, 0.2, 0.25, 1)
				if b.SetPatch(0, corners, normal) != radiosity.Unoccluded {
					t.Fatalf("%s at %g m is not seen", name, height)
				}
				const n = 12
				want := 0.0
				for i := range n * n {
					at := r3.Add(corners[0], r3.Vec{X: (float64(i%n) + 0.5) * 0.25 / n, Y: (float64(i/n) + 0.5) * 0.25 / n})
					want += b.Light(0, at, normal).Y() * 0.25 * 0.25 / (n * n)
				}
				for _, closely := range []bool{false, true} {
					close(t, fmt.Sprintf("%s, %T, %g m, closely %v", name, d, height, closely), b.Flux(0, corners, closely).Y()/want, 1, 0.01)
				}
			}
		}
	}
}

// Behind an edge a patch gets what its places see, and behind a pane its share in its colour.
func TestFluxPastEdgesAndPanes(t *testing.T) {
	edge := solid.Prism{ID: 1, Base: box(2, 0, 4, 8, 0), Z0: 1, Z1: 1.02} // over all x from 0 on
	pane := solid.Sheet{ID: 2, Corners: []r3.Vec{{X: -3, Y: -3, Z: 1.5}, {X: 3, Y: -3, Z: 1.5}, {X: 3, Y: 3, Z: 1.5}, {X: -3, Y: 3, Z: 1.5}}}
	tint := colour.RGB{0.9, 0.6, 0.3}
	pane.Front.Direct, pane.Back.Direct = tint, tint
	for form, o := range map[string]photometry.Opening{
		"point": {}, "face": {Form: photometry.Rectangle, Width: 0.3, Height: 0.2}, "disc": {Form: photometry.Disc, Width: 0.3},
		"tube": {Form: photometry.Tube, Width: 0.4}, "sphere": {Form: photometry.Sphere, Width: 0.3},
	} {
		for _, d := range []photometry.Distribution{photometry.Lambertian(o.Form), photometry.NewFaceLobe(80, 130)} {
			name, e := fmt.Sprintf("%s, %T", form, d), hanging(o)
			e.Source.Distribution = d
			corners, normal := tile(0, 0, 0.4, 1)
			b := surfaceLampOf(t, &solid.Set{Prisms: []solid.Prism{edge}}, e)
			all := surfaceLampOf(t, &solid.Set{}, e)
			b.SetPatch(0, corners, normal)
			all.SetPatch(0, corners, normal)
			half, whole := b.Flux(0, corners, true).Y(), all.Flux(0, corners, false).Y()
			close(t, name+", past the edge", half/whole, 0.5, 0.02)
			tinted := surfaceLampOf(t, &solid.Set{Sheets: []solid.Sheet{pane}}, e)
			if got := tinted.SetPatch(0, corners, normal); got != radiosity.PartlyOccluded {
				t.Errorf("%s, behind a pane: sight %d", name, got)
			}
			for _, closely := range []bool{false, true} {
				flux := tinted.Flux(0, corners, closely)
				for c := range flux {
					close(t, fmt.Sprintf("%s, behind the pane, channel %d", name, c), flux[c]/whole, tint[c], 0.01)
				}
			}
		}
	}
}

// The points of an opening are shuffled: each is there once, and a quarter of them in a row is spread over all of it.
func TestShuffledPoints(t *testing.T) {
	for _, n := range []int{1, 2, 3, 16, 64, 256, 600} {
		points := make([]r3.Vec, n)
		for i := range points {
			points[i].X = (float64(i) + 0.5) / float64(n)
		}
		out, met := shuffled(points), map[r3.Vec]bool{}
		for _, p := range out {
			met[p] = true
		}
		if len(out) != n || len(met) != n {
			t.Errorf("%d points became %d, %d of them different", n, len(out), len(met))
		}
		run := n / 4
		for from := 0; run >= 4 && from+run <= n; from++ {
			mean := 0.0
			for _, p := range out[from : from+run] {
				mean += p.X / float64(run)
			}
			if !(math.Abs(mean-0.5) <= max(0.02, 1/float64(run))) {
				t.Errorf("of %d points, %d from %d on lie about %g", n, run, from, mean)
			}
		}
	}
	if shuffled(nil) != nil {
		t.Error("a point became some")
	}
}
