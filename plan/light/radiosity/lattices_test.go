package radiosity

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// unevenLattice is a lattice of numbers of points that four does not go into, some of which have no data.
func unevenLattice() receptor.Lattice {
	return receptor.Lattice{Origin: r3.Vec{X: 1, Y: 2, Z: 3}, U: r3.Vec{X: 0.05}, V: r3.Vec{Y: 0.04}, Normal: r3.Vec{Z: 1}, NU: 10, NV: 7, Mask: []uint64{1<<3 | 1<<17, 0}}
}

// The sets of a lattice part its points: each with data is one of one set, stands where the view of the set has it, and is written back
// to its place.
func TestSetsPartTheLattice(t *testing.T) {
	f := &frame{Lattice: unevenLattice(), rays: 16}
	found := make([]int, f.NU*f.NV)
	for s := range sets {
		nu, nv := f.size(s)
		v := f.view(s, nu, nv)
		f.buffers[s].points = f.points(s, nu, nv)
		sums := make([]columns32, len(f.buffers[s].points))
		for at, n := range f.buffers[s].points {
			where := v.at(int(n))
			i, j := int(math.Round((where.X-1)/0.05)), int(math.Round((where.Y-2)/0.04))
			if r3.Norm(r3.Sub(where, f.At(i, j))) > 1e-12 || i%side != s%side || j%side != s/side {
				t.Errorf("a point of set %d stands at %v", s, where)
			}
			found[j*f.NU+i]++
			sums[at][2] = float32(1 + j*f.NU + i)
		}
		plane := make([]float32, f.NU*f.NV)
		f.place(plane, sums, s, 2)
		for n, v := range plane {
			if mine := n%f.NU%side+n/f.NU%side*side == s && !f.blankAt(n); mine && v != float32(1+n)/16 || !mine && v != 0 {
				t.Errorf("set %d puts %g to point %d", s, v, n)
			}
		}
	}
	for n, times := range found {
		if want := 1; (n == 3 || n == 17) && times != 0 || n != 3 && n != 17 && times != want {
			t.Errorf("point %d is in %d sets", n, times)
		}
	}
}

// Where neighbours lend each other what they see, the directions of all sets are one sequence, each once; else each set looks in the same.
func TestDirectionsOfSets(t *testing.T) {
	f := &frame{rays: 4, shared: true}
	var all []int
	for s := range sets {
		for k := range f.rays {
			all = append(all, f.number(s, k))
		}
	}
	slices.Sort(all)
	for n, number := range all {
		if n != number {
			t.Fatalf("the directions are %v", all)
		}
	}
	f.shared = false
	if f.number(5, 3) != 3 {
		t.Errorf("alone, direction 3 is %d", f.number(5, 3))
	}
	for k := range 10 {
		a, b := oppositePair(2*k), oppositePair(2*k+1)
		if r3.Norm(r3.Add(a, b)) > 1e-15 || !(math.Abs(r3.Norm(a)-1) <= 1e-12) {
			t.Errorf("pair %d is %v and %v", k, a, b)
		}
	}
	// Spread evenly: along any axis the mean square is a third.
	// Those of the upper half are as many to each side.
	var square, ahead r3.Vec
	for k := range 4096 {
		d := oppositePair(k)
		if k%2 == 0 {
			ahead = r3.Add(ahead, r3.Scale(1./2048, d))
		}
		square = r3.Add(square, r3.Vec{X: d.X * d.X / 4096, Y: d.Y * d.Y / 4096, Z: d.Z * d.Z / 4096})
	}
	if !(math.Abs(square.X-1./3) <= 0.002) || !(math.Abs(square.Y-1./3) <= 0.002) || !(math.Abs(square.Z-1./3) <= 0.002) {
		t.Errorf("the mean squares along the axes are %v", square)
	}
	if r3.Norm(r3.Sub(ahead, r3.Vec{Z: 0.5})) > 0.002 {
		t.Errorf("the mean of those of the upper half is %v", ahead)
	}
}

// A lattice of points far apart has all directions for each; a set of very many points gets fewer, and sixteen at least.
func TestRaysOnLattices(t *testing.T) {
	for _, c := range []struct {
		rays, points int
		step         float64
		want         int
	}{{64, 1000, 0.05, 64}, {64, 1000, 0.6, 1024}, {64, 1 << 21, 0.05, 24}, {64, 1 << 20, 0.05, 48}, {64, 1 << 28, 0.05, 16}, {8, 1 << 28, 0.05, 8}} {
		tr := &Transport{quality: Quality{Lattice: c.rays}, points: c.points}
		l := receptor.Lattice{U: r3.Vec{X: c.step}, V: r3.Vec{Y: 0.01}, NU: 10, NV: 10}
		if got := raysOn(tr, &l); got != c.want {
			t.Errorf("%d points %g m apart: %d rays of %d, want %d", c.points, c.step, got, c.rays, c.want)
		}
		l.U, l.V = l.V, l.U
		if got := raysOn(tr, &l); got != c.want {
			t.Errorf("the other way round %d rays", got)
		}
	}
	l := receptor.Lattice{U: r3.Vec{X: 0.01}, V: r3.Vec{Y: 0.01}, NU: 1 << 11, NV: 1 << 10}
	if got := raysOn(&Transport{quality: Quality{Lattice: 64}}, &l); got != 24 {
		t.Errorf("a lattice alone has %d rays", got)
	}
	l = receptor.Lattice{U: r3.Vec{X: 0.05}, V: r3.Vec{Y: 0.05}, NU: 10, NV: 10, Response: receptor.Dome}
	for _, c := range []struct{ plane, allRound, want int }{{48, 96, 96}, {48, 0, 48}, {64, 32, 64}} {
		q := Quality{Lattice: c.plane, AllRound: c.allRound}
		if got := raysOn(&Transport{quality: q}, &l); got != c.want {
			t.Errorf("a lattice of domes has %d rays of %d and %d, want %d", got, c.plane, c.allRound, c.want)
		}
	}
}

// The axis of each point of a set goes to the place that the domes are turned to; in the place itself there is none.
func TestAxesOfASet(t *testing.T) {
	l := unevenLattice()
	toward := l.At(6, 5)
	l.Toward = &toward
	f := &frame{Lattice: l}
	for s := range sets {
		nu, nv := f.size(s)
		q := &itemBuffer{points: f.points(s, nu, nv)}
		q.turn(f, s, nu)
		v := f.view(s, nu, nv)
		for at, n := range q.points {
			want := headingOf(f.Axis(v.at(int(n))))
			if got := q.turned[at]; !(math.Abs(float64(got.x-want.x)) <= 1e-5) || !(math.Abs(float64(got.y-want.y)) <= 1e-5) || !(math.Abs(float64(got.z-want.z)) <= 1e-5) {
				t.Errorf("set %d: a point has the axis %v, want %v", s, got, want)
			}
		}
	}
}

// Points that lend each other what they see share eight times the looks of a patch, by turns, each look for all sixteen; a point alone has as
// many for itself. Each lamp begins with another.
func TestLooksOfPoints(t *testing.T) {
	tr := &Transport{}
	for _, c := range []struct {
		samples  int
		share    float64
		all      int
		standFor float64
	}{{1, 1, 8, 2}, {2, 1, 16, 1}, {4, 1, 32, 1}, {4, 0.25, 8, 2}, {1, 0.1, 2, 8}} {
		f := &frame{Lattice: unevenLattice(), shared: true}
		hot := &hotParts{looks: c.share}
		looks := f.looks(Quality{HotSamples: c.samples}, hot)
		if looks != c.all {
			t.Errorf("%+v: %d looks", c, looks)
		}
		for lamp := range 3 {
			sum, first := 0, 0
			for n := range sets {
				v := tr.ofPoint(f, n%side, n/side, lamp, looks)
				sum += v.samples
				if v.turn == 0 {
					first = n
				}
				if v.standsFor != c.standFor || v.turns != min(sets, looks) || v.closeSamples != 1 || v.besideSamples != 0.125 || v.offset != 0.5 || v.middle != f.At(n%side, n/side) {
					t.Errorf("%+v: a point looks as %+v", c, v)
				}
			}
			if sum != looks {
				t.Errorf("%+v: sixteen points look %d times, want %d", c, sum, looks)
			}
			if want := slices.Index(bayer[:], (sets-lamp)%sets); first != want {
				t.Errorf("lamp %d begins at point %d, want %d", lamp, first, want)
			}
		}
		f.shared = false
		if v := tr.ofPoint(f, 1, 2, 0, f.looks(Quality{HotSamples: c.samples}, hot)); v.samples != c.all || v.turns != 1 || v.standsFor != 1 {
			t.Errorf("%+v: a point alone looks as %+v", c, v)
		}
	}
	hot := &hotParts{looks: 1}
	near, far := &frame{Lattice: unevenLattice(), shared: true}, &frame{Lattice: unevenLattice()}
	if a, b := near.tileSide(hot), far.tileSide(hot); a != side || b != 4 {
		t.Errorf("%d and %d points each way share a choice", a, b)
	}
	far.V.Y = 0.3
	hot.looks = 0.1 // a choice reaches 0.38 m, 0.54 m from corner to corner
	if a, b := near.tileSide(hot), far.tileSide(hot); a != 2*side || b != 2 {
		t.Errorf("of what is looked at seldom %d and %d points each way share a choice", a, b)
	}
}

// A choice of a rectangle of points is made in its middle, and reaches its corners.
func TestChoiceOfARectangle(t *testing.T) {
	f := &frame{Lattice: unevenLattice()}
	hot := &hotParts{patches: []hotPatch{{of: 1, normal: r3.Vec{Z: -1}, power: 1}}}
	for _, c := range []struct {
		x    float64
		want bool
	}{{0.99, true}, {1.01, false}} { // from the middle of columns 2 to 7 and rows 1 to 4 corners are within 0.125 + 0.06 m
		hot.patches[0].middle = r3.Vec{X: 1.225 + 0.185*c.x, Y: 2.1, Z: 3}
		e := &tracer{}
		(&latticeLook{&Transport{}, f, 0, hot, nil, 2, 1, 8, 5}).choose(e)
		if got := len(e.choice.close) == 1; got != c.want {
			t.Errorf("what is %g of the way off is close: %v", c.x, got)
		}
	}
}

// Of patches a choice is made likewise: in the middle of a square, to its corner patches' middles.
func TestChoiceOfASquareOfPatches(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{X: 5}, r3.Vec{X: 3}, r3.Vec{Y: 2}, 6, 5, 0.5))
	f := &tr.mesh.faces[0]
	hot := &hotParts{patches: []hotPatch{{of: 7, normal: r3.Vec{Z: -1}, power: 1}}}
	for _, c := range []struct {
		x    float64
		want bool
	}{{0.99, true}, {1.01, false}} { // four by three patches, from column 1 and row 2 on
		hot.patches[0].middle = r3.Vec{X: 5 + 1.5 + c.x*math.Hypot(0.75, 0.4), Y: 1.4}
		l := &patchesLook{Transport: tr, tracer: &tracer{}, hot: hot}
		l.choose(f, 9, 3, 3.5, 4, 3)
		if got := len(l.tracer.choice.close) == 1; got != c.want {
			t.Errorf("what is %g of the way off is close: %v", c.x, got)
		}
	}
}

// A memory gives a lattice that it knows, with as many rays, turned to another place or not; none that differs.
func TestAMemoryKnowsLattices(t *testing.T) {
	l := unevenLattice()
	toward := r3.Vec{X: 4}
	l.Toward = &toward
	m := &Memory{}
	f := &frame{Lattice: l, rays: 16}
	for s := range sets {
		nu, nv := f.size(s)
		f.buffers[s].points = f.points(s, nu, nv)
	}
	f.buffers[2].seen, f.buffers[2].short, f.buffers[2].long = make([]uint32, 5), make([]uint16, 7), make([]uint32, 11)
	m.keepFrame(f)
	if want := 4*(68+5+11) + 2*7; m.size != want {
		t.Errorf("it takes %d bytes, want %d", m.size, want)
	}
	other, straight, elsewhere := l, l, l
	place := r3.Vec{Y: 9}
	other.Toward, straight.Toward, elsewhere.Origin = &place, nil, r3.Vec{}
	for name, c := range map[string]struct {
		l    receptor.Lattice
		rays int
		want bool
	}{"the same": {l, 16, true}, "turned": {other, 16, true}, "more rays": {l, 32, false}, "not turned": {straight, 16, false}, "elsewhere": {elsewhere, 16, false}} {
		got := m.frameOf(&c.l, c.rays)
		if (got != nil) != c.want {
			t.Errorf("%s: known %v", name, got != nil)
		} else if c.want {
			p := got.buffers[0].points[1]
			v := got.view(0, 3, 2)
			want := headingOf(c.l.Axis(v.at(int(p))))
			if h := got.buffers[0].turned[1]; !(math.Abs(float64(h.x-want.x)) <= 1e-5) || !(math.Abs(float64(h.y-want.y)) <= 1e-5) {
				t.Errorf("%s: turned %v, want %v", name, h, want)
			}
		}
	}
	m.Next()
	if len(m.frames) != 1 {
		t.Error("what was used is let go")
	}
	if m.Next(); len(m.frames) != 0 || m.size != 0 {
		t.Errorf("what was not used is kept, %d bytes", m.size)
	}
	if got := (*Memory)(nil).frameOf(&l, 16); got != nil {
		t.Error("no memory knows a lattice")
	}
}

// Only plain points that do not turn to a place look ahead of their plane alone.
func TestWhatLatticesLookAheadOf(t *testing.T) {
	toward := r3.Vec{X: 1}
	for _, c := range []struct {
		l    receptor.Lattice
		want bool
	}{
		{receptor.Lattice{Response: receptor.Cosine}, true}, {receptor.Lattice{Response: receptor.Dome}, false},
		{receptor.Lattice{Response: receptor.Cosine, Toward: &toward}, false}, {receptor.Lattice{Response: receptor.Dome, Toward: &toward}, false},
	} {
		c.l.Normal = r3.Vec{Z: 1}
		if got := (&frame{Lattice: c.l}).ahead(); (got != nil) != c.want || c.want && *got != c.l.Normal {
			t.Errorf("%+v looks ahead of %v", c.l, got)
		}
	}
}

// A memory knows what lamps give to patches, by a few places and closely, and lets it go with a round in which nobody asked.
func TestAMemoryKnowsLamps(t *testing.T) {
	m := &Memory{lamps: map[Lamp]*knownLamp{}}
	lamp := &slope{}
	k := m.lampOf(lamp)
	m.remember(k, 3, false, []float32{1, 2, 3, 4}, 0.5)
	m.remember(k, 3, false, []float32{9, 9, 9, 9}, 9)
	m.remember(k, 4, true, []float32{5, 6, 7, 8}, -1)
	if m.size != 2*luxBytes || k.bytes() != 2*luxBytes || m.lampOf(lamp) != k {
		t.Errorf("%d bytes, of the lamp %d", m.size, k.bytes())
	}
	lux := make([]float32, 4)
	if edge, is := k.recall(3, false, lux); !is || edge != 0.5 || !slices.Equal(lux, []float32{1, 2, 3, 4}) {
		t.Errorf("patch 3 has %v, edge %g, %v", lux, edge, is)
	}
	if _, is := k.recall(3, true, lux); is || lux[0] != 1 {
		t.Errorf("patch 3 is known closely, %v", lux)
	}
	if !k.knowsAll([]patch{{number: 3}}) || k.knowsAll([]patch{{number: 3}, {number: 4}}) || (*knownLamp)(nil).knowsAll([]patch{{}}) {
		t.Error("patches are known that are not, or not known that are")
	}
	m.size = mostKept
	if m.remember(k, 5, false, lux, 0); k.knowsAll([]patch{{number: 5}}) {
		t.Error("there is room in a full memory")
	}
	m.size = 2 * luxBytes
	m.Next()
	if m.lampOf(lamp) != k || len(m.lamps) != 1 {
		t.Error("a lamp that was asked is let go")
	}
	m.Next()
	if m.Next(); len(m.lamps) != 0 || m.size != 0 {
		t.Errorf("a lamp that nobody asked is kept, %d bytes", m.size)
	}
}

// What a hot element returns of a lamp's own light is taken out of what the rays of lattices meet: of it, and through glass of what the glass
// leaves, but not by mirrors. Only where it is much of what is returned.
func TestLatticesLeaveOutWhatIsHot(t *testing.T) {
	for _, c := range []struct {
		share float64
		taken bool
	}{{0.26, true}, {0.24, false}} {
		tr := handmade(3, boardFace(t, r3.Vec{}, r3.Vec{X: 1}, r3.Vec{Y: 1}, 1, 1, 0.5))
		tr.lattices = []*frame{{}}
		tr.filtered = []filtered{{element: 6, factor: colour.RGB{0.1, 0.2, 0.4}}, {element: 6, factor: grey(0.5), mirror: true}, {element: 5, factor: grey(0.5)}}
		s := &Solution{t: tr, lamps: 3, blocks: []block{{exitance: make([]columns32, 20)}, {exitance: make([]columns32, 20)}}, hot: make([]hotParts, 3), direct: make([]directLux, 3)}
		for i := range s.direct {
			s.direct[i] = make(directLux, 24)
			copy(s.direct[i][18:], []float32{10, 20, 30})
		}
		s.hot[2] = hotParts{of: map[uint32][2]int{6: {0, 1}}, parts: make([]hotPart, 1), upTo: []float64{c.share}, all: 1}
		s.setWithoutHot()
		for e, want := range map[int]colour.RGB{6: {-5, -10, -15}, 5: {}, 8: {-0.5, -2, -6}, 12: {}, 16: {}} {
			if !c.taken {
				want = colour.RGB{}
			}
			for k := range 3 {
				if got := float64(s.withoutHot[1][e][k]); !(math.Abs(got-want[k]) <= 1e-5) {
					t.Errorf("of %g: element %d lost %g in channel %d, want %g", c.share, e, got, k, want[k])
				}
			}
			if s.withoutHot[0][e] != (columns32{}) || s.blocks[1].exitance[e] != (columns32{}) || s.withoutHot[1][e][3] != 0 {
				t.Errorf("of %g: element %d lost of another lamp", c.share, e)
			}
		}
	}
}

// What the points of a row see of a face along a direction are the elements that rays from them meet.
func TestElementsAlongARow(t *testing.T) {
	f := boardFace(t, r3.Vec{X: -1, Y: 2, Z: -1}, r3.Vec{Z: 3}, r3.Vec{X: 4}, 3, 4, 0.5)
	f.first = 5
	v := &view{origin: r3.Vec{X: -0.53, Z: -0.4137}, u: r3.Vec{X: 0.21, Z: 0.03}, v: r3.Vec{X: -0.04, Z: 0.19}, nu: 9, nv: 7}
	d := r3.Unit(r3.Vec{X: 0.3, Y: 1, Z: 0.2})
	q := newElementMap(&f, v, d, 1)
	for j := -30; j < 60; j++ { // past the edges of the face the elements at them, as where a point just misses it
		got := make([]uint32, 60)
		q.elements(got, -25, j)
		for n, e := range got {
			from := r3.Add(v.origin, r3.Add(r3.Scale(float64(n-25), v.u), r3.Scale(float64(j), v.v)))
			if want := f.element(r3.Add(from, r3.Scale((2-from.Y)/d.Y, d))); e != want {
				t.Errorf("point %d, %d sees element %d, want %d", n-25, j, e, want)
			}
		}
	}
}

// The numbers of elements in the mesh become places among those that are followed, in the order of the mesh, and what is seen through glass
// follows after them, in an order that does not tell who met it first.
func TestElementsAreNumbered(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 4}, r3.Vec{Y: 1}, 4, 1, 0.5))
	tr.patches = []patch{{}, tr.patches[4], tr.patches[2]}
	tr.slots = []uint32{0, 0, 1, 0, 1}
	tr.mesh.seen.list = []filtered{{element: 4*4 + 1, via: []solid.ID{2}}, {element: 4*2 + 3, via: []solid.ID{2}}, {element: 4*2 + 3, via: []solid.ID{1}, ratio: 0.5}, {element: 4*2 + 3, via: []solid.ID{1}, ratio: 0.25}}
	tr.links = []uint32{4*4 + 2, filteredBit, filteredBit | 1, filteredBit | 2, filteredBit | 3, 4 * 2, black}
	tr.number()
	if want := []uint32{4*2 + 2, 12 + 12, 12 + 8, 12 + 4, 12, 4, 0}; !slices.Equal(tr.links, want) {
		t.Errorf("links are %v, want %v", tr.links, want)
	}
	for i, want := range []uint32{4 + 3, 4 + 3, 4 + 3, 8 + 1} {
		if got := tr.filtered[i].element; got != want {
			t.Errorf("what is seen through glass, %d, is element %d, want %d", i, got, want)
		}
	}
	if all := listFiltered(append(tr.filtered, filtered{element: 7, mirror: true}), 3); !slices.Equal(all[7], []uint32{12, 16, 20}) || !slices.Equal(all[9], []uint32{24}) {
		t.Errorf("by element %v", all)
	}
	if tr.behind(4*2+1) != 9 || tr.behind(24) != 9 || tr.isMirrored(24) || tr.isMirrored(3) {
		t.Error("what is behind glass is another")
	}
}
