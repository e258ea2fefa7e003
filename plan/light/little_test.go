package light

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Of the points that see a part of an opening those are traced that see up to the share of it that the quality says, and those that see a part of it
// past the edge of cloth, not of clear glass; the light of the whole serves those that see half: counted by rays from each point of the opening.
func TestWhoSeesLittle(t *testing.T) {
	e := Emitter{Frame: down(2.5), Source: photometry.Source{Flux: 4000, Distribution: photometry.Cosine{}, Opening: face(1.2, 0.8)}}
	floor := floorAt(-2, -2, 0, 4, 33)
	floor.NV = 7
	floor.V.Y = 0.6
	for _, c := range []struct {
		pass float64 // of a sheet
		q    Quality
	}{{0.9, Normal}, {0.2, Normal}, {0.9, Fine}, {0.9, Draft}} {
		sheet := sheetAt(1, r3.Vec{X: -0.513, Y: 0.07, Z: 1.3}, 0.3, 1.4, 0.9, 0.7)
		sheet.Front.Direct = colour.RGB{c.pass, c.pass, c.pass}
		sheet.Back = sheet.Front
		set := &solid.Set{Sheets: []solid.Sheet{sheet}, Prisms: []solid.Prism{{ID: 2, Base: box(0.9, 0.2, 0.7, 1.5, 0.2), Z0: 1.6, Z1: 1.65}}}
		w := build(t, set, Options{Quality: c.q, Workers: 1})
		f, d := firstBand(t, w, &floor, &e)
		little, half, partly := 0, 0, 0
		for n := range floor.NU * floor.NV {
			i, j := n%floor.NU, n/floor.NU
			seen, through := seenByRays(f, floor.At(i, j))
			all := len(f.points)
			mixed := through > 0 && through < seen
			part := seen > 0 && (seen < all || mixed)
			wantLittle := part && (float64(seen) <= w.little*float64(all) || mixed && c.pass < 0.5)
			wantHalf := part && 2*seen >= all
			if got := d.littleSeen[j]>>i&1 != 0; got != wantLittle {
				t.Errorf("%+v: point %d, %d, that sees %d of %d, %d through the sheet, is traced: %v", c, i, j, seen, all, through, got)
			}
			if got := d.halfSeen[j]>>i&1 != 0; got != wantHalf {
				t.Errorf("%+v: point %d, %d, that sees %d of %d, sees half: %v", c, i, j, seen, all, got)
			}
			if got, want := d.mostlySeen[j]>>i&1 != 0, wantHalf && !mixed; got != want {
				t.Errorf("%+v: point %d, %d, that sees %d of %d, %d through the sheet, sees half through the same: %v", c, i, j, seen, all, through, got)
			}
			for _, count := range []struct {
				of *int
				is bool
			}{{&little, wantLittle}, {&half, wantHalf}, {&partly, part}} {
				if count.is {
					*count.of++
				}
			}
		}
		if c.q != Draft && little < 3 || half < 5 || partly < little+3 {
			t.Errorf("%+v: %d points see little, %d half, %d a part", c, little, half, partly)
		}
	}
}

// firstBand is a field of a lamp on a lattice of one band of rows, sorted by how much of the lamp each point sees.
func firstBand(t *testing.T, w *World, lattice *Lattice, e *Emitter) (*field, *bandSummer) {
	l := w.newLamp(e)
	l.kernel = photometry.RowKernel(e.Source, l.onesided)
	f := w.newField(newGrid(lattice, w.bvh.Epsilon()), l, nil)
	if err := f.shadows(t.Context(), 1); err != nil {
		t.Fatal(err)
	}
	d := newBandSummer(f, 1)
	for j := range lattice.NV {
		d.sumWhole(j, 0)
	}
	d.findHowMuchIsSeen(0, lattice.NV)
	return f, d
}

// seenByRays counts the points of an opening that a place sees, and those of them through panes.
func seenByRays(f *field, at r3.Vec) (seen, through int) {
	for k := range f.points {
		if panes, blocked := f.w.bvh.Segment(f.points[k].at, at, nil, nil); !blocked {
			seen++
			through += min(1, len(panes))
		}
	}
	return seen, through
}

// Past the edges of two panes, one of them tinted, that overlap before a part of an opening each point of a lattice gets what a receptor does.
func TestPartsThroughTwoPanes(t *testing.T) {
	e := Emitter{Name: "a", Frame: down(2.5), Source: photometry.Source{Flux: 4000, Distribution: photometry.NewLobe(80, 120), Opening: face(1.2, 0.8)}}
	pane := func(id solid.ID, x, z, turn float64, pass colour.RGB) solid.Sheet {
		s := sheetAt(id, r3.Vec{X: x, Y: 0.07, Z: z}, turn, 1.5, 0.8, 1.1)
		s.Front.Direct, s.Back.Direct = pass, pass
		return s
	}
	set := &solid.Set{Sheets: []solid.Sheet{pane(1, -0.4, 1.3, 0.3, colour.RGB{0.9, 0.6, 0.7}), pane(2, 0.1, 1.5, 0.9, colour.RGB{0.8, 0.8, 0.8}), pane(3, 1.4, 1.1, 0.1, colour.RGB{0.55, 0.55, 0.9})}}
	floor := floorAt(-2, -2, 0, 4, 23)
	to := Targets{Lattices: []Lattice{floor}}
	for n := range floor.NU * floor.NV {
		to.Points = append(to.Points, floor.Receptor(n%floor.NU, n/floor.NU))
	}
	b := basis(t, build(t, set, Options{Direct: true, Workers: 1}), []Emitter{e}, to)
	for c := range 3 {
		level := colour.RGB{}
		level[c] = 1
		values := b.Fields[0][0][c*len(to.Points):]
		var got, want []float64
		for n := range to.Points {
			total, _ := b.Point(n, Levels{"a": level})
			got, want = append(got, float64(values[n])), append(want, total[c])
		}
		if mean, p95 := errorsOf(got, want); mean > 0.0025 || p95 > 0.01 {
			t.Errorf("channel %d: mean %.3f %%, 95th percentile %.2f %%", c, 100*mean, 100*p95)
		}
		for n := range got {
			if d := got[n] - want[n]; d > 0.05*want[n]+0.5 || d < -0.05*want[n]-0.5 {
				t.Errorf("channel %d, point %d: %.4g lx, want %.4g", c, n, got[n], want[n])
			}
		}
	}
}

// What a point sees of an opening by its shares is no more than the whole; what comes through panes is less by what passes them from aside, and each
// channel by what the panes pass.
func TestSharesOfAPointOfABand(t *testing.T) {
	for _, c := range []struct{ whole, straight, paned float64 }{{math.Inf(1), 3, 5}, {8, 3, 5}, {4, 1.5, 2.5}} {
		d := &bandSummer{channels: 2, shares: []partial{{colour.RGB{1, 1, 1}, []float64{0, 3}}, {colour.RGB{0.5, 0.25, 1}, []float64{7, 5}}}}
		d.sums[0], d.sums[1] = []float64{0, 100}, []float64{0, 200}
		d.total(1, c.whole, colour.RGB{0.9, 0.8, 1}, 0.6)
		for k, had := range []float64{100, 200} {
			outer, pane := []float64{0.9, 0.8}[k], []float64{0.5, 0.25}[k]
			close(t, "sum", d.sums[k][1]-had, outer*(c.straight+0.6*pane*c.paned), 1e-12)
			close(t, "the other point", d.sums[k][0], 0, 0)
		}
	}
}
