package radiosity

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
)

// ball is a transport of patches of different sizes and shades that all see all, each by its area, as they do in a ball.
func ball(t *testing.T, channels int, leak int) (tr *Transport, sizes, rho []float64) {
	sizes, rho = []float64{1, 2, 3, 2}, []float64{0.8, 0.5, 0.2, 0.9}
	var faces []face
	for i, s := range sizes {
		f := boardFace(t, r3.Vec{Z: float64(i)}, r3.Vec{X: s}, r3.Vec{Y: 1}, 1, 1, rho[i])
		for c := range f.reflect {
			f.reflect[c] *= 1 - 0.3*float64(c*(channels-1)/2)
		}
		faces = append(faces, f)
	}
	tr = handmade(channels, faces...)
	var all []uint32
	for i, s := range sizes {
		for range int(s) {
			all = append(all, uint32(4*(i+1)), uint32(4*(i+1)+3))
		}
	}
	for range leak {
		all = append(all, black)
	}
	for s := 1; s < len(tr.patches); s++ {
		tr.sees(s, all...)
		tr.patches[s].kept = grey(1 - float64(leak)/float64(len(all)))
	}
	return tr, sizes, rho
}

// What each patch of a ball gets from the others is the same, and in the sum over reflections what is returned of the lamp's
// light over what is not: rho1/(1 - rho) in the mean over the wall, by the closed form of the integrating sphere, in each
// channel. Where a share of what goes out leaves by a port, it is lost each time.
func TestBallByItsClosedForm(t *testing.T) {
	for _, c := range []struct{ channels, leak int }{{1, 0}, {3, 0}, {1, 4}, {3, 4}} {
		tr, sizes, _ := ball(t, c.channels, c.leak)
		seen := 16.0 / float64(16+c.leak)
		lamps := make([]directLux, 2)
		for lamp := range lamps {
			lamps[lamp] = make(directLux, 4*len(tr.patches)*c.channels)
			for e := 4; e < 4*len(tr.patches); e++ {
				for k := range c.channels {
					lamps[lamp][e*c.channels+k] = float32(100 + 40*lamp*(e/4) + 10*k*(e/4)) // the same on all elements of a patch
				}
			}
		}
		b := newSolver(tr).run(context.Background(), lamps, make([]hotParts, 2), [][]float32{nil, nil})
		for lamp := range lamps {
			for k := range c.channels {
				column := lamp*c.channels + k
				returned, mean, all, sent := 0.0, 0.0, 0.0, 0.0
				for i, a := range sizes {
					rho := tr.mesh.faces[i].reflect[k]
					e := float64(lamps[lamp][4*(i+1)*c.channels+k])
					returned, mean, all, sent = returned+a*rho*e, mean+a*rho, all+a, sent+a*e
				}
				incident := returned / all * seen / (1 - mean/all*seen)
				taken := 0.0
				for i, a := range sizes {
					rho := tr.mesh.faces[i].reflect[k]
					e := float64(lamps[lamp][4*(i+1)*c.channels+k]) + incident
					taken += a * (1 - rho) * e
					if got := float64(b.exitance[4*(i+1)+2][column]); !(math.Abs(got-rho*e) <= 2e-5*rho*e) {
						t.Errorf("%+v: patch %d returns %g of lamp %d in channel %d, want %g", c, i, got, lamp, k, rho*e)
					}
				}
				if !(math.Abs(b.sent[column]-sent) <= 1e-9*sent) || !(math.Abs(b.taken[column]-taken) <= 2e-5*taken) || !(math.Abs(b.lost[column]-(sent-taken)) <= 2e-5*sent) {
					t.Errorf("%+v, lamp %d, channel %d: %g lm sent, %g taken, %g lost, want %g, %g, %g", c, lamp, k, b.sent[column], b.taken[column], b.lost[column], sent, taken, sent-taken)
				}
			}
		}
	}
}

// In a closed set nothing is made or lost even where links are off: all that was sent is taken in the end. What patches get of
// what is hot stands in for what their links would bring of it, and brings the same flux in all.
func TestAClosedSetKeepsItsLight(t *testing.T) {
	tr, sizes, rho := ball(t, 1, 0)
	for s := 1; s < len(tr.patches); s++ { // as if all patches were of one size
		tr.sees(s, 4, 8, 12, 16)
	}
	lamp := make(directLux, 4*len(tr.patches))
	for e := 4; e < len(lamp); e++ {
		lamp[e] = float32(e)
	}
	sent := 0.0
	for i, a := range sizes {
		for k := range 4 {
			sent += a / 4 * float64(lamp[4*(i+1)+k])
		}
	}
	hot := []hotParts{{of: map[uint32][2]int{}}}
	fromHot := make([]float32, len(tr.patches))
	for k := range 4 {
		hot[0].of[uint32(8+k)] = [2]int{}
	}
	for s := 1; s < len(tr.patches); s++ {
		fromHot[s] = float32(rho[1]) * (8 + 9 + 10 + 11) / 4 * 0.25
	}
	for name, c := range map[string]struct {
		hot  []hotParts
		from [][]float32
	}{"links": {make([]hotParts, 1), [][]float32{nil}}, "hot": {hot, [][]float32{fromHot}}} {
		b := newSolver(tr).run(context.Background(), []directLux{lamp}, c.hot, c.from)
		if !(math.Abs(b.taken[0]-sent) <= 1e-4*sent) || !(math.Abs(b.lost[0]) <= 1e-9*sent) || b.sent[0] != sent {
			t.Errorf("%s: of %g lm %g are taken and %g lost", name, sent, b.taken[0], b.lost[0])
		}
		if b.passes >= 60 {
			t.Errorf("%s: it takes %d passes", name, b.passes)
		}
	}
	plain := newSolver(tr).run(context.Background(), []directLux{lamp}, make([]hotParts, 1), [][]float32{nil})
	looked := newSolver(tr).run(context.Background(), []directLux{lamp}, hot, [][]float32{fromHot})
	for i := range sizes {
		// The links look at the first element of each patch, the looks at the mean of the four: 8 of 9.5 on the hot patch.
		e := 4 * (i + 1)
		if a, b := plain.exitance[e][0], looked.exitance[e][0]; !(math.Abs(float64(b/a)-1) <= 0.02) {
			t.Errorf("patch %d returns %g lm/m² by its links, %g by looks", i, a, b)
		}
	}
}

// What falls on one side of a cloth shines from the other, and comes back: two equations, solved by hand.
func TestLightThroughCloth(t *testing.T) {
	x, y := r3.Vec{X: 1}, r3.Vec{Y: 1}
	tr := handmade(1, boardFace(t, r3.Vec{}, x, y, 1, 1, 0.5), boardFace(t, r3.Vec{Z: 2}, y, x, 1, 1, 0.4), boardFace(t, r3.Vec{Z: 2}, x, y, 1, 1, 0.2))
	tr.clothOf(1, 2, 0.3, 0.6)
	tr.sees(1, 4*2, 4*2+1, black, black) // the floor sees the under side by half, and that the floor
	tr.sees(2, 4*1, black, black, black)
	tr.sees(3, black)
	tr.patches[1].kept, tr.patches[2].kept, tr.patches[3].kept = grey(0.5), grey(0.25), grey(0)
	lamp := make(directLux, 16)
	copy(lamp[4:], []float32{100, 100, 100, 100})
	b := newSolver(tr).run(context.Background(), []directLux{lamp}, make([]hotParts, 1), [][]float32{nil})
	// floor = 100 + 0.5*under; under = 0.4*(0.25*floor) + 0.4*0.3*top, with nothing on the top; the top shines 0.2*0.6 of what is under it
	floor := 100 / (1 - 0.5*0.4*0.25*0.5)
	under := 0.25 * 0.5 * floor
	for s, want := range []float64{0, 0.5 * floor, 0.4 * under, 0.2 * 0.6 * under} {
		if got := float64(b.exitance[4*s][0]); !(math.Abs(got-want) <= 1e-4*want) {
			t.Errorf("patch %d returns %g lm/m², want %g", s, got, want)
		}
	}
}

// Light that runs along a row of patches, each of which sees but the next, is followed in a few passes whichever way it runs: they go up
// and down the row in turn. The k-th returns the k-th power of the share of the first.
func TestPassesGoBothWays(t *testing.T) {
	const row, rho = 40, 0.9
	for name, next := range map[string]int{"down": 1, "up": -1} {
		tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: row}, r3.Vec{Y: 1}, row, 1, rho))
		first := row
		if next < 0 {
			first = 1
		}
		for s := 1; s <= row; s++ {
			if s == first {
				tr.sees(s, black)
			} else {
				tr.sees(s, uint32(4*(s+next)))
			}
			if s+first == row+1 {
				tr.patches[s].kept = grey(0) // the last one's leaves
			}
		}
		lamp := make(directLux, 4*(row+1))
		for k := range 4 {
			lamp[4*first+k] = 100
		}
		b := newSolver(tr).run(context.Background(), []directLux{lamp}, make([]hotParts, 1), [][]float32{nil})
		for k := range row {
			want := 100 * math.Pow(rho, float64(k+1))
			if got := float64(b.exitance[4*(first-next*k)][0]); !(math.Abs(got/want-1) <= 1e-3) {
				t.Errorf("%s: patch %d from the first returns %g lm/m², want %g", name, k, got, want)
			}
		}
		if b.passes > 8 {
			t.Errorf("%s: it takes %d passes", name, b.passes)
		}
	}
}

// A solution ends when a pass moves less than 1e-5 of the lamp's flux, or sooner where the quality says so: the light is then off by what
// later passes would move.
func TestWhenASolutionEnds(t *testing.T) {
	set := boxOf(5, 4, 3, func(int) colour.RGB { return grey(0.8) })
	ends := func(settled float64) (passes int, lux float64) {
		q := usual
		q.Settled = settled
		tr, bvh := trace(t, set, q, []receptor.Receptor{{At: r3.Vec{X: 1, Y: 1, Z: 1}, Axis: r3.Vec{Z: 1}}}, nil)
		s := solve(t, tr, &bulb{bvh: bvh, at: r3.Vec{X: 4, Y: 3, Z: 2.5}, flux: grey(5000), cos: -1})
		for _, e := range s.Point(0, 0) {
			lux += e.Y()
		}
		return s.passes, lux
	}
	whole, want := ends(0)
	for _, c := range []struct {
		settled float64
		sooner  bool
	}{{1e-6, false}, {1e-5, false}, {1e-4, true}, {1e-2, true}} {
		passes, got := ends(c.settled)
		if passes > whole || passes < whole != c.sooner {
			t.Errorf("to %g it takes %d passes of %d", c.settled, passes, whole)
		}
		if off := math.Abs(got/want - 1); off > 5*c.settled {
			t.Errorf("to %g it is %.2g off", c.settled, off)
		}
	}
}
