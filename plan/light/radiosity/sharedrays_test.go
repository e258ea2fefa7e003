package radiosity

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// Up to so many, every place has all rays; beyond it all places together have about as many, and none fewer than the least.
func TestRaysAreSharedInACrowd(t *testing.T) {
	q := Quality{Point: 8192, More: 1 << 14, Cell: 64, Near: 0.8, Noise: 1e-3}
	if q.among(placesFullyRead) != q {
		t.Errorf("%d places get %+v, want all of %+v", placesFullyRead, q.among(placesFullyRead), q)
	}
	four := q.among(4 * placesFullyRead)
	if want := (Quality{Point: 2048, More: 1 << 12, Cell: 16, Near: 0.4, Noise: 4e-3}); four.Point != want.Point ||
		four.More != want.More || four.Cell != want.Cell || math.Abs(four.Near-want.Near) > 1e-12 || four.Noise != want.Noise {
		t.Errorf("four times as many places get %+v, want %+v", four, want)
	}
	if most := q.among(1000 * placesFullyRead); most.Point != leastPoint || most.More != leastMore || most.Cell != leastCell {
		t.Errorf("a multitude gets %+v", most)
	}
	coarse := Quality{Point: 300, More: 100, Cell: 8}
	if few := coarse.among(1000 * placesFullyRead); few.Point != 300 || few.More != 100 || few.Cell != 8 {
		t.Errorf("what is coarse already gets %+v of %+v", few, coarse)
	}
}

// Receptors at many places read what they read alone, within what their own rays say that they may be off by.
func TestACrowdReadsAsEachAlone(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 32))
	q := Quality{Patch: 0.4, Links: 64, More: 4096, Point: 4096, Near: 0.5, Cell: 16, HotSamples: 2, Edge: 3e-3, Matters: 0.02, Noise: 3e-3}
	s := furnished(r)
	bvh := solid.NewBVH(s)
	lamp := &bulb{bvh: bvh, at: free(r, s, bvh), flux: grey(3000), cos: -1}
	var points []receptor.Receptor
	for range 2*placesFullyRead + 1 {
		axis := r3.Unit(r3.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: r.NormFloat64()})
		points = append(points, receptor.Receptor{At: free(r, s, bvh), Axis: axis, Response: receptor.Dome})
	}
	together, _ := trace(t, s, q, points, nil)
	crowded := solve(t, together, lamp)
	if !crowded.SharesRays() {
		t.Fatalf("%d places share no rays", len(points))
	}
	apart, honest := 0.0, 0
	const some = 12
	for i := range some {
		alone, _ := trace(t, s, q, points[i:i+1], nil)
		one := solve(t, alone, lamp)
		if one.SharesRays() {
			t.Fatal("one place shares rays")
		}
		sum := func(s *Solution, n int) (y float64) {
			for _, e := range s.Point(n, 0) {
				y += e.Y()
			}
			return y
		}
		want, got := sum(one, 0), sum(crowded, i)
		off := math.Abs(got - want)
		apart += off / want / some
		if off <= 2*(crowded.Spread(i, 0)+one.Spread(0, 0))+0.01*want {
			honest++
		}
	}
	if apart > 0.04 || honest < some-1 {
		t.Errorf("%.1f %% apart in the mean, %d of %d within what they state", 100*apart, honest, some)
	}
}

// The test of a whole face misses no element that would be chosen by itself.
func TestFacesThatMatter(t *testing.T) {
	r := rand.New(rand.NewPCG(33, 34))
	chosen, skipped := 0, 0
	for range 20 {
		s := furnished(r)
		bvh := solid.NewBVH(s)
		to := receptor.Receptor{At: free(r, s, bvh), Axis: r3.Vec{X: 1}, Response: receptor.Response(r.IntN(2))}
		tr, _ := trace(t, s, usual, []receptor.Receptor{to}, nil)
		bright := make([]float32, 4*len(tr.patches))
		for e := range bright {
			bright[e] = float32(math.Exp(3 * r.NormFloat64()))
		}
		g := &gatherer{s: &Solution{t: tr, brightest: [][]float32{brightestOf(tr, bright)}}}
		limits, share := []float64{math.Exp(2*r.NormFloat64()) / 100}, 1.0/2048
		for slot := 1; slot < len(tr.patches); slot++ {
			p := &tr.patches[slot]
			gain := tr.mesh.rough(&to, p) / 4
			brightest := float64(slices.Max(bright[4*slot : 4*slot+4]))
			matters := g.matters(&to, int(p.face), limits, share)
			if gain > 0 && brightest > limits[0]/math.Sqrt(gain*share) {
				chosen++
				if !matters {
					t.Fatalf("a patch of gain %g and %g lm/m² lies on a face that is left out", gain, brightest)
				}
			}
			if !matters {
				skipped++
			}
		}
	}
	if chosen < 100 || skipped < 100 {
		t.Errorf("%d patches chosen, %d left out: the scenes tell nothing", chosen, skipped)
	}
}
