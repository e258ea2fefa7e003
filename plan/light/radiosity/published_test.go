package radiosity

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/reference"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
	"scrimshaw/testdata/published"
)

// glow lights what looks up at z = 0 evenly, and nothing else.
type glow struct{ e colour.RGB }

func (g glow) SetPatch(_ int, corners []r3.Vec, normal r3.Vec) Visibility {
	if math.Abs(corners[0].Z) < 1e-9 && normal.Z > 0.5 {
		return Unoccluded
	}
	return Hidden
}

func (g glow) Flux(_ int, part []r3.Vec, _ bool) colour.RGB { return g.e.Scale(r3.Norm(area(part))) }

func (g glow) Light(_ int, at, normal r3.Vec) colour.RGB {
	if math.Abs(at.Z) < 1e-9 && normal.Z > 0.5 {
		return g.e
	}
	return colour.RGB{}
}

func (g glow) EmitRays(func(solid.Hit, r3.Vec, colour.RGB) bool) bool { return false }

// Six sides, each one patch. With exact form factors the balance is a system of six equations; with rays
// it is the solution that every scene gets, to the error of as many rays.
func TestSixPatches(t *testing.T) {
	for _, row := range published.Read(t, "interreflection.txt", "six patches") {
		w, d, h := row.In[0], row.In[1], row.In[2]
		s := boxOf(w, d, h, func(side int) colour.RGB { return grey(row.In[min(3+side, 5)]) })
		exact := balanced(s, row.In[6]/(w*d))
		q := Quality{Patch: max(w, d, h), Links: 1 << 17, Point: 64, Lattice: 1}
		tr, _ := trace(t, s, q, []receptor.Receptor{{At: r3.Vec{X: w / 2, Y: d / 2, Z: h / 2}, Axis: r3.Vec{Z: 1}, Response: receptor.Dome}}, nil)
		solution := solve(t, tr, glow{grey(row.In[6] / (w * d))})
		for i, side := range []int{0, 1, 3, 2} { // floor, ceiling, right, front
			want, tolerance := row.Out[i], 1e-5
			if want < 10 {
				tolerance = 5e-7
			}
			if !(math.Abs(exact[side]/want-1) <= tolerance) {
				t.Errorf("%v: %s gets %.7g lx by six equations, want %.7g", row.In, s.Sheets[side].Name, exact[side], want)
			}
			for n := range tr.patches {
				if f := &tr.mesh.faces[tr.patches[n].face]; n > 0 && f.id == solid.ID(side+1) {
					got := float64(solution.blocks[0].exitance[4*n][0]) / f.reflect[0]
					if !(math.Abs(got/want-1) <= 1e-3) {
						t.Errorf("%v: %s gets %.7g lx, want %.7g", row.In, s.Sheets[side].Name, got, want)
					}
				}
			}
		}
		if _, taken, _ := solution.Balance(0); !(math.Abs(taken[0]/row.In[6]-1) <= 1e-6) {
			t.Errorf("%v: %g lm taken in of %g", row.In, taken[0], row.In[6])
		}
	}
}

// balanced is the light of each side of a box whose floor gets e from outside, by exact form factors.
func balanced(s *solid.Set, e float64) (lit [6]float64) {
	var factor [6][6]float64 // of the light that side i gets, from side j
	for i := range factor {
		for j := range factor {
			if i != j {
				a := s.Sheets[i].Corners
				factor[i][j] = reference.Exchange(a, s.Sheets[j].Corners) / r3.Norm(area(a))
			}
		}
	}
	for range 200 {
		for i := range lit {
			lit[i] = 0
			if i == 0 {
				lit[i] = e
			}
			for j := range lit {
				lit[i] += factor[i][j] * s.Sheets[j].Front.Reflect[0] * lit[j]
			}
		}
	}
	return lit
}

// An evenly lit floor that nothing else adds to: CIE 171:2006, 5.6.
func TestBrightFloor(t *testing.T) {
	s := boxOf(4, 4, 3, func(side int) colour.RGB { return grey([6]float64{0.5}[side]) })
	var points []receptor.Receptor
	rows := published.Read(t, "interreflection.txt", "bright floor")
	for _, row := range rows {
		in := row.In
		points = append(points, receptor.Receptor{At: r3.Vec{X: in[0], Y: in[1], Z: in[2]}, Axis: r3.Vec{X: in[3], Y: in[4], Z: in[5]}})
	}
	tr, _ := trace(t, s, usual, points, nil)
	solution := solve(t, tr, glow{grey(1000)})
	for i, row := range rows {
		got := 0.0
		for _, e := range solution.Point(i, 0) {
			got += e[0]
		}
		if got = 100 * got / (1000 * 0.5); !(math.Abs(got/row.Out[0]-1) <= 5e-3) {
			t.Errorf("%v: %.3f %%, want %.3f", row.In, got, row.Out[0])
		}
	}
}

// The share of a patch's rays that meet another is the form factor, to four standard deviations of so
// many random rays: 1000 pairs at random.
func TestLinksAreFormFactors(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	const rays = 1024
	pairs := 1000
	if testing.Short() {
		pairs = 50
	}
	for pair := 0; pair < pairs; {
		a := quad(r, r3.Vec{}, r3.Vec{Z: 1})
		way := r3.Vec{X: 2*r.Float64() - 1, Y: 2*r.Float64() - 1, Z: 1.3 + r.Float64()}
		b := quad(r, way, r3.Unit(r3.Vec{X: r.Float64() - 0.5, Y: r.Float64() - 0.5, Z: -1}))
		if !before(a, b) || !before(b, a) {
			continue
		}
		pair++
		s := &solid.Set{Sheets: []solid.Sheet{
			{ID: 1, Corners: a, Front: solid.Skin{Reflect: grey(0.5)}},
			{ID: 2, Corners: b, Front: solid.Skin{Reflect: grey(0.5)}},
		}}
		// A receptor that sees the first.
		q := Quality{Patch: 1.7, Links: rays, Point: 64, Lattice: 1}
		tr, _ := trace(t, s, q, []receptor.Receptor{{At: r3.Vec{Z: 0.1}, Axis: r3.Vec{Z: -1}}}, nil)
		p := &tr.patches[tr.slots[tr.mesh.faces[0].first]]
		met := 0
		for _, e := range tr.links[p.from:p.to] {
			if e >= 4 {
				met++
			}
		}
		want := reference.Exchange(a, b) / r3.Norm(area(a))
		got := float64(met) / float64(p.to-p.from)
		if sigma := math.Sqrt(want * (1 - want) / rays); !(math.Abs(got-want) <= 4*sigma) {
			t.Errorf("pair %d: %.5f of the rays, form factor %.5f, sigma %.5f", pair, got, want, sigma)
		}
	}
}

// quad is a rectangle about a point, its sides at random.
func quad(r *rand.Rand, at, n r3.Vec) []r3.Vec {
	frame := basisOf(n)
	sin, cos := math.Sincos(r.Float64() * math.Pi)
	u := r3.Scale(0.5+0.3*r.Float64(), r3.Add(r3.Scale(cos, frame.u), r3.Scale(sin, frame.v)))
	v := r3.Scale(0.5+0.3*r.Float64(), r3.Cross(n, r3.Unit(u)))
	return []r3.Vec{
		r3.Sub(r3.Sub(at, u), v), r3.Sub(r3.Add(at, u), v), r3.Add(r3.Add(at, u), v), r3.Add(r3.Sub(at, u), v),
	}
}

// before says whether all corners of b lie before a.
func before(a, b []r3.Vec) bool {
	n := area(a)
	for _, p := range b {
		if r3.Dot(n, r3.Sub(p, a[0])) <= 0.05*r3.Norm(n) {
			return false
		}
	}
	return true
}

// What a lattice sees, drawn, is what single rays see: everywhere but where a ray runs into an edge.
func TestPicturesAgreeWithRays(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	s := furnished(r)
	l := receptor.Lattice{Origin: r3.Vec{X: 0.013, Y: 0.017, Z: 0.9}, U: r3.Vec{X: 0.05}, V: r3.Vec{Y: 0.05}, Normal: r3.Vec{X: 0.6, Z: 0.8}, NU: 118, NV: 98, Response: receptor.Dome}
	bvh := solid.NewBVH(s)
	m := newMesh(s, bvh, 0.25)
	tr := &Transport{mesh: m, quality: usual}
	f, err := tr.traceFromLattice(context.Background(), &l)
	if err != nil {
		t.Fatal(err)
	}
	e := tracer{m: m}
	axis := basisOf(l.Normal)
	asked, differ := 0, 0
	for range 50_000 {
		set, k := r.IntN(sets), r.IntN(f.rays)
		nu, nv := f.size(set)
		i, j := r.IntN(nu), r.IntN(nv)
		at := r3.Add(l.Origin, r3.Add(r3.Scale(float64(i*side+set%side), l.U), r3.Scale(float64(j*side+set/side), l.V)))
		if _, in := bvh.Inside(at); in {
			continue
		}
		x, y := receptorSample(bayer[set]*f.rays + k)
		want, _ := e.trace(at, axis.direction(receptor.Dome, x, y), nil)
		asked++
		if f.buffers[set].at((k*nv+j)*nu+i) != want {
			differ++
		}
	}
	t.Logf("%d of %d differ", differ, asked)
	if differ*5000 > asked { // 0.02 %
		t.Errorf("%d of %d rays see something else", differ, asked)
	}
}
