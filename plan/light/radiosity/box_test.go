package radiosity

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
	"scrimshaw/testdata/published"
)

// bulb is a point that sends the same way everywhere, or, with a cone, only near an axis.
type bulb struct {
	bvh  *solid.BVH
	at   r3.Vec
	flux colour.RGB
	axis r3.Vec
	cos  float64 // of the half angle of the cone; -1 for all round

	normal r3.Vec // of the patch aimed at: these lamps are asked by one goroutine
}

func (b *bulb) intensity(d r3.Vec) float64 {
	if b.cos > -1 && r3.Dot(d, b.axis) < b.cos {
		return 0
	}
	return 1 / (2 * math.Pi * (1 - b.cos))
}

func (b *bulb) SetPatch(_ int, _ []r3.Vec, normal r3.Vec) Visibility {
	b.normal = normal
	return Unoccluded
}

// Flux sums over small triangles, by a ray to each.
func (b *bulb) Flux(_ int, part []r3.Vec, _ bool) (sum colour.RGB) {
	for i := 1; i+1 < len(part); i++ {
		u, v := r3.Sub(part[i], part[0]), r3.Sub(part[i+1], part[0])
		middle := r3.Add(part[0], r3.Scale(1.0/3, r3.Add(u, v)))
		size := max(r3.Norm(u), r3.Norm(v), r3.Norm(r3.Sub(u, v)))
		n := min(max(4, int(size/b.grain(middle))), 24)
		share := r3.Norm(r3.Cross(u, v)) / 2 / float64(n*n)
		for k := range n * n {
			// The triangles of a row come in pairs that share a side.
			x, y := float64(k%n)+1.0/3, float64(k/n)+1.0/3
			if k%n+k/n >= n {
				x, y = float64(n)-x, float64(n)-y
			}
			at := r3.Add(part[0], r3.Add(r3.Scale(x/float64(n), u), r3.Scale(y/float64(n), v)))
			sum = sum.Add(b.Light(0, at, b.normal).Scale(share))
		}
	}
	return sum
}

func (b *bulb) grain(at r3.Vec) float64 {
	d := r3.Norm(r3.Sub(at, b.at))
	if b.cos > -1 {
		return d * math.Tan(math.Acos(b.cos)) / 4
	}
	return 0.15 * d
}

func (b *bulb) Light(_ int, at, normal r3.Vec) colour.RGB {
	way := r3.Sub(at, b.at)
	square := r3.Norm2(way)
	d := r3.Scale(1/math.Sqrt(square), way)
	e := -r3.Dot(d, normal) * b.intensity(d) / square
	if e <= 0 || b.bvh.Blocked(b.at, at, nil) {
		return colour.RGB{}
	}
	return b.flux.Scale(e)
}

func (b *bulb) EmitRays(land func(solid.Hit, r3.Vec, colour.RGB) bool) bool {
	frame := basis{r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}}
	if b.cos > -1 {
		frame = basisOf(b.axis)
	}
	const rays = 4096
	for k := range uint32(rays) {
		x, y := sobol.Point(k, 0x5bd1e995, 0x27d4eb2f) // off the edges of boxes
		up := 1 - x*(1-b.cos)
		sin, cos := math.Sincos(2 * math.Pi * y)
		r := math.Sqrt(1 - up*up)
		d := r3.Add(r3.Scale(up, frame.n), r3.Add(r3.Scale(r*cos, frame.u), r3.Scale(r*sin, frame.v)))
		hit, ok := b.bvh.FirstOpaque(b.at, d, nil)
		if !ok || !land(hit, r3.Add(b.at, r3.Scale(hit.T, d)), b.flux.Scale(1.0/rays)) {
			return false
		}
	}
	return true
}

func grey(y float64) colour.RGB { return colour.RGB{y, y, y} }

// boxOf is a closed box of sheets that look inward: floor, ceiling, and walls at y = 0, x = w, y = d,
// x = 0.
func boxOf(w, d, h float64, reflect func(side int) colour.RGB) *solid.Set {
	p := func(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }
	sides := [][]r3.Vec{
		{p(0, 0, 0), p(w, 0, 0), p(w, d, 0), p(0, d, 0)},
		{p(0, 0, h), p(0, d, h), p(w, d, h), p(w, 0, h)},
		{p(0, 0, 0), p(0, 0, h), p(w, 0, h), p(w, 0, 0)},
		{p(w, 0, 0), p(w, 0, h), p(w, d, h), p(w, d, 0)},
		{p(w, d, 0), p(w, d, h), p(0, d, h), p(0, d, 0)},
		{p(0, d, 0), p(0, d, h), p(0, 0, h), p(0, 0, 0)},
	}
	s := &solid.Set{}
	for i, corners := range sides {
		s.Sheets = append(s.Sheets, solid.Sheet{ID: solid.ID(i + 1), Name: []string{"floor", "ceiling", "front", "right", "back", "left"}[i],
			Corners: corners, Front: solid.Skin{Reflect: reflect(i)}})
	}
	return s
}

// inside is a lattice over each side of a box, half a step off its edges.
func inside(s *solid.Set, n int) []receptor.Lattice {
	var all []receptor.Lattice
	for i := range s.Sheets {
		c := s.Sheets[i].Corners
		u, v := r3.Scale(1/float64(n), r3.Sub(c[1], c[0])), r3.Scale(1/float64(n), r3.Sub(c[3], c[0]))
		all = append(all, receptor.Lattice{Origin: r3.Add(c[0], r3.Scale(0.5, r3.Add(u, v))), U: u, V: v,
			Normal: r3.Unit(r3.Cross(u, v)), NU: n, NV: n})
	}
	return all
}

var usual = Quality{Patch: 0.25, Links: 64, Point: 8192, Lattice: 64, Near: 0.4, Cell: 64, HotSamples: 4, Noise: 5e-4}

// trace makes a transport or fails.
func trace(t testing.TB, s *solid.Set, q Quality, points []receptor.Receptor, lattices []receptor.Lattice) (*Transport, *solid.BVH) {
	t.Helper()
	bvh := solid.NewBVH(s)
	tr, err := Trace(context.Background(), s, bvh, q, 1, points, lattices)
	if err != nil {
		t.Fatal(err)
	}
	return tr, bvh
}

// solve follows lamps or fails.
func solve(t testing.TB, tr *Transport, lamps ...Lamp) *Solution {
	t.Helper()
	s, err := tr.Solve(context.Background(), lamps)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// In a closed box whose sides all reflect alike, the mean of the reflected light is rho Phi/(A(1-rho)),
// wherever the lamp: CIE 171:2006, 5.8, whose box this is. The mean is taken over lattices, by rays
// that had no part in the solution.
func TestClosedBox(t *testing.T) {
	for _, row := range published.Read(t, "interreflection.txt", "closed cube") {
		rho := row.In[0]
		if testing.Short() && rho != 0.5 {
			continue
		}
		s := boxOf(4, 4, 4, func(int) colour.RGB { return grey(rho) })
		tr, bvh := trace(t, s, usual, nil, inside(s, 80))
		solution := solve(t, tr, &bulb{bvh: bvh, at: r3.Vec{X: 2, Y: 2, Z: 2}, flux: grey(10000), cos: -1})
		sum := 0.0
		for k := range 6 {
			planes, err := solution.Lattice(context.Background(), k)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range planes[0] {
				sum += float64(e) / (6 * 80 * 80)
			}
		}
		want := row.Out[0]
		sent, taken, lost := solution.Balance(0)
		t.Logf("rho %.2f: %.4f lx, %+.3f %% off, in %d passes", rho, sum, 100*(sum/want-1), solution.passes)
		if !(math.Abs(sum/want-1) <= 1e-3) {
			t.Errorf("rho %g: mean %g lx, want %g", rho, sum, want)
		}
		if !(math.Abs(sent[0]-10000) <= 1e-3) || !(math.Abs(taken[0]/sent[0]-1) <= 1e-4) || lost[0] > 1e-9 {
			t.Errorf("rho %g: %g lm sent, %g taken in, %g lost", rho, sent[0], taken[0], lost[0])
		}
	}
}
