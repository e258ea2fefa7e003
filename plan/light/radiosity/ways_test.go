package radiosity

import (
	"context"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// Directions are spread as a response weighs them: by the means of the cosine to the axis and of its square, and evenly round it.
func TestDirectionsByResponse(t *testing.T) {
	for _, axis := range []r3.Vec{{Z: 1}, {Z: -1}, r3.Unit(r3.Vec{X: 1, Y: 2, Z: -3}), r3.Unit(r3.Vec{X: -2, Y: 1, Z: 0.1})} {
		frame := basisOf(axis)
		if off := math.Abs(r3.Dot(frame.u, frame.v)) + math.Abs(r3.Dot(frame.u, axis)) + r3.Norm(r3.Sub(r3.Cross(frame.u, frame.v), axis)); off > 1e-12 {
			t.Errorf("the frame about %v is off by %g", axis, off)
		}
		for name, c := range map[string]struct {
			way          func(x, y float64) r3.Vec
			mean, square float64
		}{
			"plane": {func(x, y float64) r3.Vec { return frame.direction(receptor.Cosine, x, y) }, 2. / 3, 1. / 2},
			"dome":  {func(x, y float64) r3.Vec { return frame.direction(receptor.Dome, x, y) }, 1. / 3, 1. / 3},
			"even":  {uniformDirection, 0, 1. / 3},
		} {
			const n = 4096
			var sum r3.Vec
			square, across, round := 0.0, 0.0, 0.0
			for k := range n {
				x, y := receptorSample(k)
				d := c.way(x, y)
				if !(math.Abs(r3.Norm(d)-1) <= 1e-12) {
					t.Fatalf("%s: direction %v", name, d)
				}
				sum = r3.Add(sum, r3.Scale(1.0/n, d))
				square += math.Pow(r3.Dot(d, axis), 2) / n
				across += math.Pow(r3.Dot(d, frame.u), 2) / n
				round += r3.Dot(d, frame.u) * r3.Dot(d, frame.v) / n
			}
			if r3.Norm(r3.Sub(sum, r3.Scale(c.mean, axis))) > 2e-3 || !(math.Abs(square-c.square) <= 2e-3) || !(math.Abs(across-(1-c.square)/2) <= 2e-3) || !(math.Abs(round) <= 2e-3) {
				t.Errorf("%s about %v: mean %v, squares %g and %g, %g", name, axis, sum, square, across, round)
			}
		}
		if frame.direction(receptor.Radiance, 0.3, 0.7) != axis {
			t.Error("a spot meter looks aside")
		}
	}
}

// Rays that a lobe mirrors lie about its middle as it is bright: the mean of cos^n is (n+1)/(n+2) along it, and nothing to a side.
func TestRaysInALobe(t *testing.T) {
	var own turns
	s := &specular{power: 6}
	for i := range s.lobe {
		s.lobe[i].turn = own.next()
	}
	middle := r3.Unit(r3.Vec{X: 1, Y: -2, Z: 2})
	const n = 20000
	var sum r3.Vec
	frame := basisOf(middle)
	squares := [2]float64{}
	for k := range n {
		d := s.inLobe(middle, onFirst(k))
		sum = r3.Add(sum, r3.Scale(1.0/n, d))
		squares[0] += math.Pow(r3.Dot(d, frame.u), 2) / n
		squares[1] += math.Pow(r3.Dot(d, frame.v), 2) / n
	}
	if want := r3.Scale(7./8, middle); r3.Norm(r3.Sub(sum, want)) > 3e-3 {
		t.Errorf("the mean direction is %v, want %v", sum, want)
	}
	if want := (1 - 7./9) / 2; !(math.Abs(squares[0]-want) <= 3e-3) || !(math.Abs(squares[1]-want) <= 3e-3) {
		t.Errorf("the mean squares to the sides are %v, want %g", squares, want)
	}
}

// A mirror in a set that reflects some light diffusely lets rays go on in the proportion of the two, and all that comes back is its factor in all.
func TestMirrorsShareRays(t *testing.T) {
	set := &solid.Set{Sheets: []solid.Sheet{{ID: 3, Corners: []r3.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}, Front: solid.Skin{Reflect: grey(0.6), Mirror: 0.75}}}}
	m := newMesh(set, solid.NewBVH(set), 1)
	s := m.mirrors[mirrorSide{3, true}]
	hit := &solid.Hit{ID: 3, Front: true, Normal: r3.Vec{Z: 1}}
	on := 0
	for k := range 4000 {
		to, factor, is := m.mirrors.meet(hit, r3.Unit(r3.Vec{X: 1, Z: -1}), onFirst(k))
		if is {
			on++
			if r3.Norm(r3.Sub(to, r3.Unit(r3.Vec{X: 1, Z: 1}))) > 1e-12 || !(math.Abs(factor[0]-0.6*0.75/0.75) <= 1e-9) {
				t.Fatalf("a ray goes on along %v with %v", to, factor)
			}
		}
	}
	f := &m.faces[0]
	if !(math.Abs(float64(on)/4000-0.75) <= 2e-3) || !(math.Abs(s.turns.passing-0.75) <= 1e-12) || !(math.Abs(f.met-0.25) <= 1e-12) || !(math.Abs(f.met*f.reflect[1]-0.15) <= 1e-12) || f.specular != s {
		t.Errorf("%d of 4000 go on; %g end there, of which %g come back", on, f.met, f.reflect[1])
	}
	if _, _, is := m.mirrors.meet(&solid.Hit{ID: 3, Normal: r3.Vec{Z: -1}}, r3.Vec{Z: 1}, onFirst(1)); is {
		t.Error("a ray goes on from the back")
	}
}

// A place along a sum falls on the figure that holds it, so far along that.
func TestPickAlongASum(t *testing.T) {
	upTo := []float64{2, 2, 5, 9}
	for _, c := range []struct {
		at           float64
		k            int
		rest, figure float64
	}{{0.5, 0, 0.25, 2}, {2, 0, 1, 2}, {2.6, 2, 0.2, 3}, {7, 3, 0.5, 4}, {9, 3, 1, 4}, {9.5, 3, 1, 4}} {
		if k, rest, figure := pick(upTo, c.at); k != c.k || !(math.Abs(rest-c.rest) <= 1e-12) || figure != c.figure {
			t.Errorf("%g falls on %d, %g along %g, want %+v", c.at, k, rest, figure, c)
		}
	}
}

// What points see of elements adds up direction by direction, and of those with an axis each by 1 + cos.
func TestSumsOfSeenElements(t *testing.T) {
	exitance := make([]columns32, 9)
	for e := range exitance {
		for c := range width {
			exitance[e][c] = float32(e*10 + c)
		}
	}
	seen := []uint32{3, 7, 8}
	const points, rays = 2, 5
	short := []uint16{0, 1, 2, 2, 1, 0, 0, 0, 1, 2}
	var long []uint32
	for _, n := range short {
		long = append(long, uint32(n))
	}
	axes, ways := []heading{{x: 1}, {y: 0.6, z: 0.8}}, []heading{{x: 1}, {x: -1}, {y: 1}, {z: 1}, {z: -1}}
	for name, q := range map[string]*itemBuffer{"short": {short: short}, "long": {long: long}, "short, turned": {short: short, turned: axes, ways: ways}, "long, turned": {long: long, turned: axes, ways: ways}} {
		q.seen = seen
		sums, _ := q.sum(nil, nil, points, rays, exitance)
		for i := range points {
			for c := range width {
				want := 0.0
				for k := range rays {
					weight := 1.0
					if q.turned != nil {
						a, b := axes[i], ways[k]
						weight += float64(a.x)*float64(b.x) + float64(a.y)*float64(b.y) + float64(a.z)*float64(b.z)
					}
					want += weight * float64(exitance[seen[short[k*points+i]]][c])
				}
				if !(math.Abs(float64(sums[i][c])-want) <= 1e-3) {
					t.Errorf("%s: point %d gets %g in column %d, want %g", name, i, sums[i][c], c, want)
				}
			}
		}
	}
}

// A slope stays a slope: along rows and columns, up to blanks and to what stands between, where runs are long enough to have one. A run
// that is too short is weighed by the tent.
func TestSmoothingKeepsSlopes(t *testing.T) {
	f := &frame{}
	f.NU, f.NV = 17, 13
	f.Mask = make([]uint64, 4)
	for j := range f.NV {
		n := j*f.NU + 8
		f.Mask[n>>6] |= 1 << (n & 63)
	}
	value := func(n int) float32 { return 10 + float32(n%f.NU) + 3*float32(n/f.NU) }
	plane := make([]float32, f.NU*f.NV)
	for n := range plane {
		plane[n] = value(n)
	}
	f.smooth(plane, nil)
	for n, v := range plane {
		want := value(n)
		if n%f.NU == 8 {
			want = 0
		}
		if !(math.Abs(float64(v-want)) <= 1e-4) {
			t.Errorf("point %d, %d is %g, want %g", n%f.NU, n/f.NU, v, want)
		}
	}
	// Points that alternate by sets of four directions come out even.
	for n := range plane {
		plane[n] = float32(n % 4)
	}
	f = &frame{}
	f.NU, f.NV = 16, 1
	row := plane[:16]
	f.smooth(row, nil)
	for n, v := range row {
		if !(math.Abs(float64(v-1.5)) <= 1e-5) {
			t.Errorf("point %d of a row that alternates is %g", n, v)
		}
	}
	short := []float32{9, 1, 5, 7}
	for i, want := range []float32{(2*9 + 2*1 + 5) / 5., (2*9 + 2*1 + 2*5 + 7) / 7., (9 + 2*1 + 2*5 + 2*7) / 7., (1 + 2*5 + 2*7) / 5.} {
		if got := shortRun(func(k int) float32 { return short[k] }, i, 4); !(math.Abs(float64(got-want)) <= 1e-6) {
			t.Errorf("point %d of a short run is %g, want %g", i, got, want)
		}
	}
	to := make([]float32, 4)
	smoothRun(to, short, 0, 1, 4)
	if to[1] != float32(37)/7 {
		t.Errorf("a short run is %v", to)
	}
}

// Pairs of neighbours on either side of a wall that stands on the lattice are cut, and no others, whichever way the lattice is laid out.
func TestCutsByPairs(t *testing.T) {
	for _, flipped := range []bool{false, true} {
		wall := solid.Sheet{ID: 1, Corners: []r3.Vec{{X: 0.31, Y: 0.207}, {X: 1.17, Y: 0.93}, {X: 1.17, Y: 0.93, Z: 1}, {X: 0.31, Y: 0.207, Z: 1}}}
		hung := solid.Sheet{ID: 2, Corners: []r3.Vec{{X: 0.1, Y: 1.01, Z: 0.5}, {X: 1.9, Y: 1.01, Z: 0.5}, {X: 1.9, Y: 1.01, Z: 1}, {X: 0.1, Y: 1.01, Z: 1}}}
		walls := &solid.Set{Sheets: []solid.Sheet{wall, hung}}
		f := &frame{Lattice: receptor.Lattice{U: r3.Vec{X: 0.1}, V: r3.Vec{Y: 0.1}, Normal: r3.Vec{Z: 1}, NU: 20, NV: 15}}
		if flipped {
			f.U, f.V, f.NU, f.NV = f.V, f.U, 15, 20
		}
		f.cut(newMesh(walls, solid.NewBVH(walls), 1))
		side := func(p r3.Vec) float64 { return (p.X-0.31)*(0.93-0.207) - (p.Y-0.207)*(1.17-0.31) }
		along := func(a, b r3.Vec) bool { // whether the way from a to b crosses the foot of the wall
			s, u := side(a), side(b)
			if s*u >= 0 {
				return false
			}
			at := r3.Add(a, r3.Scale(s/(s-u), r3.Sub(b, a)))
			return at.X > 0.31 && at.X < 1.17
		}
		cut := 0
		for n := range f.NU * f.NV {
			i, j := n%f.NU, n/f.NU
			if i+1 < f.NU {
				if want := along(f.At(i, j), f.At(i+1, j)); set(f.cuts.u, n) != want {
					t.Errorf("flipped %v: cut between %d, %d and the next along U: %v", flipped, i, j, !want)
				} else if want {
					cut++
				}
			}
			if j+1 < f.NV {
				if want := along(f.At(i, j), f.At(i, j+1)); set(f.cuts.v, n) != want {
					t.Errorf("flipped %v: cut between %d, %d and the next along V: %v", flipped, i, j, !want)
				}
			}
		}
		if cut == 0 {
			t.Error("nothing is cut")
		}
	}
}

// lookedAt is a hot part, 1 m by 1 m of 2 lm/m², that hangs over a place and looks down.
func lookedAt(z float64) *hotParts {
	f := &face{basis: basisOf(r3.Vec{Z: -1})}
	part := newHotPart([]r3.Vec{{X: -0.5, Y: -0.5, Z: z}, {X: -0.5, Y: 0.5, Z: z}, {X: 0.5, Y: 0.5, Z: z}, {X: 0.5, Y: -0.5, Z: z}}, f, 1)
	part.own = colour.RGB{2, 4, 8}
	s := &hotParts{parts: []hotPart{part}, upTo: []float64{14}, all: 14, looks: 1}
	s.patches = []hotPatch{newHotPatch(1, s.parts, 0)}
	return s
}

// rectangleAt is the form factor of that part at a place below it that looks up: of four rectangles with a corner over the place.
func rectangleAt(x, y, z float64) (sum float64) {
	for _, a := range []float64{0.5 - x, 0.5 + x} {
		for _, b := range []float64{0.5 - y, 0.5 + y} {
			sum += math.Copysign(1, a*b) * rectangleFactor(math.Abs(a), math.Abs(b), z) / 4
		}
	}
	return sum
}

// Each point of a lattice with data gets of a hot element close by its form factor, whatever the squares that share a choice.
func TestPointsLookAtHotElements(t *testing.T) {
	for _, shared := range []bool{false, true} {
		for _, step := range []float64{0.05, 0.03} {
			l := receptor.Lattice{Origin: r3.Vec{X: -0.31, Y: -0.2}, U: r3.Vec{X: step}, V: r3.Vec{Y: step}, Normal: r3.Vec{Z: 1}, NU: 13, NV: 9, Mask: []uint64{1 << 20, 1 << 3}}
			f := &frame{Lattice: l, shared: shared}
			tr := &Transport{mesh: &mesh{channels: 3, bvh: solid.NewBVH(&solid.Set{})}, workers: 1, quality: Quality{HotSamples: 4}, samples: sobol.Samples(1 << 12)}
			s := &Solution{t: tr, lamps: 2, hot: []hotParts{{}, *lookedAt(0.8)}}
			_, planes := s.planes(l.NU * l.NV)
			if err := s.addHotTo(context.Background(), f, planes); err != nil {
				t.Fatal(err)
			}
			for n := range l.NU * l.NV {
				at := l.At(n%l.NU, n/l.NU)
				want := rectangleAt(at.X, at.Y, 0.8)
				if n == 20 || n == 67 {
					want = 0
				}
				for c, own := range []float64{2, 4, 8} {
					if got := float64(planes[3+c][n]); !(math.Abs(got-own*want) <= 1e-5) || planes[c][n] != 0 {
						t.Errorf("shared %v: point %d gets %g, want %g", shared, n, got, own*want)
					}
				}
			}
		}
	}
}

// Each patch of a face gets of a hot element close by its form factor, in the mean over itself; halves of its looks differ little.
func TestPatchesLookAtHotElements(t *testing.T) {
	tr := handmade(3, boardFace(t, r3.Vec{X: -0.5, Y: -0.4}, r3.Vec{X: 1.0}, r3.Vec{Y: 0.75}, 10, 9, 0.5))
	tr.quality, tr.samples = Quality{HotSamples: 64}, sobol.Samples(1<<12)
	s := &Solution{t: tr, lamps: 2, hot: []hotParts{{}, *lookedAt(0.8)}}
	tr.slots[33] = 0
	if err := s.lightFromHot(context.Background()); err != nil {
		t.Fatal(err)
	}
	f := &tr.mesh.faces[0]
	for slot := 1; slot < len(tr.patches); slot++ {
		p := &tr.patches[slot]
		at := f.at(p.x+f.du/2, p.y+f.dv/2)
		want := rectangleAt(at.X, at.Y, 0.8)
		if slot == 33 {
			want = 0
		}
		for c, own := range []float64{2, 4, 8} {
			if got := float64(s.fromHot[1][3*slot+c]); !(math.Abs(got-own*want) <= 0.01*own*want) {
				t.Errorf("patch %d gets %g in channel %d, want %g", slot, got, c, own*want)
			}
		}
		if off := s.halfDifferences[1][slot]; !(math.Abs(float64(off)) <= 0.01*0.5*4*want) {
			t.Errorf("halves of the looks of patch %d differ by %g", slot, off)
		}
	}
	if s.fromHot[0] != nil {
		t.Error("patches look at what is not there")
	}
	hot := lookedAt(9) // far off, a patch looks once for each half
	hot.looks = 0.01
	l := patchesLook{tr, newTracer(tr.mesh), hot, make([]float32, 3*len(tr.patches)), make([]float32, len(tr.patches))}
	tr.quality.HotSamples = 4
	l.choose(f, 40, 5, 4.5, 10, 9)
	l.fromPatch(40)
	if want := rectangleAt(0, 0, 9); !(math.Abs(float64(l.lux[121])-4*want) <= 0.02*4*want) || !(math.Abs(float64(l.half[40])) <= 0.02*want) {
		t.Errorf("a patch gets %g of what is far, want %g; halves differ by %g", l.lux[121], 4*want, l.half[40])
	}
}

// Levels mix what lattices meet of lamps, by lamp and channel.
func TestMixOfExitance(t *testing.T) {
	tr := &Transport{mesh: &mesh{channels: 3}}
	s := &Solution{t: tr, lamps: 3, hot: make([]hotParts, 3), blocks: []block{{exitance: make([]columns32, 2)}, {exitance: make([]columns32, 2)}}}
	s.withoutHot = [][]columns32{{{}, {1, 2, 3, 10, 20, 30}}, {{}, {100, 200, 300, 0, 0, 0}}}
	m := s.Mix([]colour.RGB{{1, 2, 4}, {}, {0.5, 0.25, 0}})
	if want := (columns32{1 + 50, 4 + 50, 12}); m.withoutHot[0][1] != want || m.withoutHot[0][0] != (columns32{}) || m.lamps != 1 {
		t.Errorf("mixed are %v, want %v", m.withoutHot[0], want)
	}
	for lamp, want := range [][3][2]int{{{0, 0}, {0, 1}, {0, 2}}, {{0, 3}, {0, 4}, {0, 5}}, {{1, 0}, {1, 1}, {1, 2}}} {
		for c := range 3 {
			if b, k := s.column(lamp, c); b != want[c][0] || k != want[c][1] {
				t.Errorf("lamp %d has channel %d in %d, %d", lamp, c, b, k)
			}
		}
	}
}

// More lamps than fit into one block are solved in several, and each has its own light.
func TestBlocksOfLamps(t *testing.T) {
	for _, channels := range []int{1, 3} {
		tr, sizes, rho := ball(t, channels, 0)
		s := &Solution{t: tr, lamps: 8}
		for lamp := range s.lamps {
			lux := make(directLux, 4*len(tr.patches)*channels)
			for i := 4 * channels; i < len(lux); i++ {
				lux[i] = float32(lamp + 1)
			}
			s.direct = append(s.direct, lux)
		}
		s.hot, s.fromHot = make([]hotParts, 8), make([][]float32, 8)
		if err := s.solveBlocks(context.Background()); err != nil {
			t.Fatal(err)
		}
		all := 0.0
		for _, a := range sizes {
			all += a
		}
		for lamp := range s.lamps {
			sent, taken, _ := s.Balance(lamp)
			for c := range sent {
				if want := all * float64(lamp+1); !(math.Abs(sent[c]-want) <= 1e-6*want) || !(math.Abs(taken[c]-want) <= 1e-4*want) {
					t.Errorf("of lamp %d %g lm are sent and %g taken, want %g", lamp, sent[c], taken[c], want)
				}
			}
			// Evenly lit, a ball with a mean reflectance of rho returns 1/(1 - rho) of what comes straight.
			mean := 0.0
			for i, a := range sizes {
				mean += a * rho[i] / all
			}
			if got, want := s.exitance(4, lamp)[0], rho[0]*float64(lamp+1)/(1-mean); !(math.Abs(got-want) <= 1e-4*want) {
				t.Errorf("lamp %d: a patch returns %g, want %g", lamp, got, want)
			}
		}
		bright := make([]float32, 4*len(tr.patches))
		for e := range bright {
			bright[e] = float32(e % 7)
		}
		if got := brightestOf(tr, bright); !slices.Equal(got, []float32{6, 4, 6, 5}) {
			t.Errorf("the brightest of faces are %v", got)
		}
	}
}

// What a place sees along rays and in a picture is the same through panes, of the first face, too, and of what lies beyond all.
func TestPicturesThroughPanes(t *testing.T) {
	half := colour.RGB{0.5, 0.5, 0.5}
	square := func(x, size, z float64) []r3.Vec {
		return []r3.Vec{{X: x - size, Y: -size, Z: z}, {X: x + size, Y: -size, Z: z}, {X: x + size, Y: size, Z: z}, {X: x - size, Y: size, Z: z}}
	}
	set := &solid.Set{Sheets: []solid.Sheet{
		{ID: 1, Corners: square(0.2, 1, 3), Back: solid.Skin{Reflect: grey(0.5)}, Front: solid.Skin{Reflect: grey(0.5)}},
		{ID: 2, Corners: square(0.9, 0.8, 2), Front: solid.Skin{Direct: half}, Back: solid.Skin{Direct: half}},
	}}
	m := newMesh(set, solid.NewBVH(set), 0.3)
	m.beyond = glowing(8)
	p, e := newDepthBuffer(m, nil), newTracer(m)
	v := &view{origin: r3.Vec{X: -1.213, Y: -1.127}, u: r3.Vec{X: 0.2}, v: r3.Vec{Y: 0.2}, nu: 20, nv: 12}
	up := r3.Vec{Z: 1}
	p.inView = facesInView(p.inView, m, p.faces, v.corners(), &up)
	hits, found := make([]uint32, v.nu*v.nv), map[[2]uint32]int{}
	for number, d := range []r3.Vec{{Z: 1}, r3.Unit(r3.Vec{X: 0.3, Y: 0.1, Z: 1})} {
		p.number, e.number = number, number
		p.render(v, d, hits)
		for n, h := range hits {
			want, _ := e.trace(v.at(n), d, nil)
			if h != want {
				t.Errorf("point %d sees %d, by a ray %d", n, h, want)
			}
			found[[2]uint32{m.patchOf(h), h >> 31}]++
		}
	}
	seen := [4]int{}
	for k, count := range found {
		i := 2 * k[1]
		if k[0] == 2 {
			i++
		}
		seen[i] += count
	}
	if slices.Min(seen[:]) < 5 {
		t.Errorf("of the sheet and beyond it, straight and through the pane are seen %v", seen)
	}
}
