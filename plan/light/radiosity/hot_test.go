package radiosity

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// Sixteen lamps and fewer get all looks, more share them, and one that gives much of the light gets as many as it would among as few as
// would make it up.
func TestLooksAreShared(t *testing.T) {
	for _, c := range []struct {
		count int
		first float64 // what the first gives, of others that give 1 each
		each  float64
		looks [2]float64 // of the first and of the others
	}{{8, 1, 1, [2]float64{1, 1}}, {32, 1, 1, [2]float64{0.5, 0.5}}, {33, 32, 1, [2]float64{1, 16. / 33}}, {65, 2, 1, [2]float64{16 * 2. / 66, 16. / 65}},
		{64, 0, 0, [2]float64{0.25, 0.25}}} {
		lamps := make([]hotParts, c.count)
		for i := range lamps {
			lamps[i].all = c.each
		}
		lamps[0].all = c.first
		shareLooks(lamps)
		for i, want := range c.looks {
			if got := lamps[i].looks; !(math.Abs(got-want) <= 1e-12) {
				t.Errorf("%d lamps of which the first gives %g: lamp %d gets %g of the looks, want %g", c.count, c.first, i, got, want)
			}
		}
	}
	for _, c := range []struct {
		looks int
		share float64
		want  int
	}{{16, 1, 16}, {16, 0.5, 8}, {16, 0.51, 9}, {16, 0.01, 2}, {1, 0.01, 1}, {1, 1, 1}, {0, 1, 0}} {
		if got := some(c.looks, c.share); got != c.want {
			t.Errorf("%g of %d looks are %d, want %d", c.share, c.looks, got, c.want)
		}
	}
}

// slope is a lamp whose light rises with x: lux a metre on top of some.
type slope struct {
	lux, rise float64
	back      float64 // lx on what looks down
	hidden    [2]bool // from before and from behind
	normal    r3.Vec
}

func (l *slope) side() int {
	if l.normal.Z < 0 {
		return 1
	}
	return 0
}

func (l *slope) SetPatch(_ int, _ []r3.Vec, normal r3.Vec) Visibility {
	l.normal = normal
	if l.hidden[l.side()] {
		return Hidden
	}
	return Unoccluded
}

func (l *slope) Flux(_ int, part []r3.Vec, _ bool) colour.RGB {
	return l.Light(0, solid.Centre(part), l.normal).Scale(areaOf(part))
}

func (l *slope) Light(_ int, at, normal r3.Vec) colour.RGB {
	if normal.Z < 0 {
		return grey(l.back)
	}
	return grey(l.lux + l.rise*at.X)
}

func (l *slope) EmitRays(func(solid.Hit, r3.Vec, colour.RGB) bool) bool { return false }

// An element is hot from twenty times the mean on, or from a fiftieth of all that is returned on; on cloth from the mean on where no
// rays of surfaces meet any.
func TestWhatIsHot(t *testing.T) {
	for _, c := range []struct {
		across int // patches each way
		lux    float64
		cloth  bool
		kept   float64
		hot    bool
	}{
		{20, 20.5, false, 1, true}, {20, 20, false, 1, false}, // 20 times (1599 + x)/1600
		{10, 8.3, false, 1, true}, {10, 8, false, 1, false}, // x of 399 + x
		{20, 20, true, 1, false}, {20, 20.5, true, 1, true}, {20, 1.1, true, 0, true}, {20, 0.9, true, 0, false},
		{20, 10.2, true, 0.25, true}, {20, 9.9, true, 0.25, false}, // a quarter of the rays meet some: half of twenty times
	} {
		tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 2}, c.across, c.across, 0.5))
		tr.quality.HotSamples = 4
		if c.cloth {
			tr.mesh.faces[0].otherSide = 1
		}
		lux := make(directLux, 4*len(tr.patches))
		for e := 4; e < len(lux); e++ {
			lux[e] = 1
		}
		for s := range tr.patches {
			tr.patches[s].kept = grey(c.kept)
		}
		const bright = 4*57 + 2
		lux[bright] = float32(c.lux)
		s := tr.findHot(0, &slope{lux: c.lux, hidden: [2]bool{false, true}}, lux)
		if parts, is := s.of[bright]; is != c.hot || is && parts != [2]int{0, 4} || len(s.of) > 1 && c.lux > 1 {
			t.Errorf("%+v: %d hot elements, the bright one has parts %v", c, len(s.of), parts)
		}
		area := 4.0 / float64(4*c.across*c.across)
		if want := 0.5 * area * (float64(len(lux)-5) + c.lux); !(math.Abs(s.all-want) <= 1e-6*want) {
			t.Errorf("%+v: %g lm are returned, want %g", c, s.all, want)
		}
		if c.hot && len(s.of) == 1 {
			if want := 3 * 0.5 * area * c.lux; !(math.Abs(s.upTo[3]-want) <= 1e-6*want) || len(s.patches) != 1 || !(math.Abs(s.patches[0].power-want) <= 1e-6*want) {
				t.Errorf("%+v: the hot element returns %g, want %g", c, s.upTo[3], want)
			}
			if got := s.share(); !(math.Abs(got-s.upTo[3]/s.all) <= 1e-12) {
				t.Errorf("%+v: it has %g of all", c, got)
			}
		}
	}
	if got := new(hotParts).share(); got != 0 {
		t.Errorf("no parts have %g of all", got)
	}
}

// Where the light within a hot element is uneven it has sixteen parts instead of four, each with its own share of what falls on the element.
func TestUnevenHotElements(t *testing.T) {
	for _, c := range []struct {
		rise  float64
		parts int
	}{{0.1, 4}, {10, 16}} {
		tr := handmade(1, boardFace(t, r3.Vec{}, r3.Vec{X: 2}, r3.Vec{Y: 2}, 1, 1, 0.5))
		lamp := &slope{lux: 1, rise: c.rise, hidden: [2]bool{false, true}}
		straight := directLux{0, 0, 0, 0, 1, 10, 1, 1}
		s := hotParts{of: map[uint32][2]int{}, upTo: []float64{7}, parts: []hotPart{{}}}
		tr.addHot(&s, tr.mesh.aim(lamp, 0, &tr.patches[1]), straight, 5)
		if s.of[5] != [2]int{1, 1 + c.parts} || len(s.upTo) != len(s.parts) {
			t.Fatalf("light that rises by %g: parts %v", c.rise, s.of[5])
		}
		sum, all := 0.0, 1+c.rise*1.5 // the mean of the light over the element, whose middle is at x = 1.5 m
		for _, p := range s.parts[1:] {
			want := 0.5 * 10 * (1 + c.rise*p.middle.X) / all
			if !(math.Abs(p.own[0]-want) <= 1e-9*want) {
				t.Errorf("light that rises by %g: a part returns %g lm/m², want %g", c.rise, p.own[0], want)
			}
			sum += p.area * p.own[0]
		}
		if !(math.Abs(sum-0.5*10) <= 1e-9) || !(math.Abs(s.upTo[len(s.upTo)-1]-7-3*sum) <= 1e-9) {
			t.Errorf("light that rises by %g: its parts return %g lm, want 5; the sums end at %v", c.rise, sum, s.upTo)
		}
	}
}

// rectangleFactor is the form factor of a rectangle, 2a by 2b, at a place over its middle at a distance c that looks at it: the
// closed form for a place over a corner (Howell, A Catalog of Radiation Heat Transfer Configuration Factors, B-4), four times.
func rectangleFactor(a, b, c float64) float64 {
	x, y := a/c, b/c
	p, q := math.Sqrt(1+x*x), math.Sqrt(1+y*y)
	return 4 / (2 * math.Pi) * (x/p*math.Atan(y/p) + y/q*math.Atan(x/q))
}

// A part counts from far as if all of it were at one place, and from close by with its form factor.
func TestFactorOfAHotPart(t *testing.T) {
	figure := []r3.Vec{{X: -0.1, Y: 0.2, Z: 1}, {X: 0.1, Y: 0.2, Z: 1}, {X: 0.1, Y: -0.2, Z: 1}, {X: -0.1, Y: -0.2, Z: 1}}
	f := &face{basis: basisOf(r3.Vec{Z: -1})}
	h := newHotPart(figure, f, 0.32)
	if h.area < 0.08-1e-12 || h.area > 0.08+1e-12 || !h.even || h.middle != (r3.Vec{Z: 1}) {
		t.Errorf("the part is %+v", h)
	}
	// Its element, four times as large, has a form factor of 0.02 at the distance from which on it is close, of 0.005 on cloth.
	f.otherSide = 1
	cloth := newHotPart(figure, f, 0.32)
	for _, c := range []struct {
		part  *hotPart
		share float64
	}{{&h, 0.02}, {&cloth, 0.005}} {
		limit := 0.32 / math.Pi / c.share
		if c.part.isClose(limit*1.001) || !c.part.isClose(limit*0.999) {
			t.Errorf("a part is not close from %g m² on", limit)
		}
		if limit := 0.08 / math.Pi / 0.02; c.part.isCloseItself(limit*1.001) || !c.part.isCloseItself(limit*0.999) {
			t.Errorf("a part is not close itself from %g m² on", limit)
		}
	}
	ahead := r3.Vec{Z: 1}
	plane, dome := &viewpoint{normal: ahead, response: receptor.Cosine}, &viewpoint{normal: ahead, response: receptor.Dome}
	if got, want := h.factor(plane, r3.Vec{Z: 0.6}, r3.Vec{Z: 1}), rectangleFactor(0.1, 0.2, 0.4); !(math.Abs(got-want) <= 1e-12) {
		t.Errorf("from 0.4 m its factor is %g, want %g", got, want)
	}
	// In sum over two domes that look opposite ways all of the light counts once, from everywhere: the solid angle by pi.
	sum, back := h.factor(dome, r3.Vec{Z: 0.6}, r3.Vec{Z: 1}), h.factor(&viewpoint{normal: r3.Vec{Z: -1}, response: receptor.Dome}, r3.Vec{Z: 0.6}, r3.Vec{Z: 1})
	angle := 4 * math.Asin(0.1*0.2/math.Sqrt((0.1*0.1+0.16)*(0.2*0.2+0.16)))
	if !(math.Abs(sum+back-angle/math.Pi) <= 1e-9) || !(sum > back) {
		t.Errorf("two domes get %g and %g, want %g in all", sum, back, angle/math.Pi)
	}
	for _, c := range []struct {
		from  *viewpoint
		at    r3.Vec
		place r3.Vec
		want  float64
	}{
		{plane, r3.Vec{Z: -3}, r3.Vec{Z: 1}, 0.08 / (math.Pi * 16)},
		{plane, r3.Vec{X: 3, Z: -3}, r3.Vec{Z: 1}, 0.08 / (math.Pi * 25) * 0.8 * 0.8},
		{dome, r3.Vec{X: 3, Z: -3}, r3.Vec{Z: 1}, 0.08 / (math.Pi * 25) * 0.8 * 0.9},
		{plane, r3.Vec{Z: 5}, r3.Vec{Z: 1}, 0}, // from behind
		{&viewpoint{normal: r3.Vec{Z: -1}, response: receptor.Cosine}, r3.Vec{Z: -3}, r3.Vec{Z: 1}, 0},
	} {
		if got := h.factor(c.from, c.at, c.place); !(math.Abs(got-c.want) <= 1e-12) {
			t.Errorf("at %v the factor is %g, want %g", c.at, got, c.want)
		}
	}
}

// Looks at what is far stand for all of it: their sum is what all parts give, whatever their power, and where only some of the
// viewpoints look, each look counts for more.
func TestFarLooksStandForAll(t *testing.T) {
	f := &face{basis: basisOf(r3.Vec{Z: -1})}
	var s hotParts
	sum, want := 0.0, 0.0
	for k, own := range []float64{5, 1, 2, 9, 0.5, 3} {
		x, y := 2*float64(k%3), 3*float64(k/3)
		part := newHotPart([]r3.Vec{{X: x, Y: y, Z: 3}, {X: x, Y: y + 0.02, Z: 3}, {X: x + 0.02, Y: y + 0.02, Z: 3}, {X: x + 0.02, Y: y, Z: 3}}, f, 0.0016)
		part.own = grey(own)
		sum += part.power()
		s.parts, s.upTo = append(s.parts, part), append(s.upTo, sum)
		to := r3.Add(part.middle, r3.Vec{})
		square := r3.Norm2(to)
		want += own * 0.0004 * 9 / square / (math.Pi * square)
		if k%2 == 1 {
			s.patches = append(s.patches, newHotPatch(1, s.parts, k-1))
		}
	}
	e := newTracer(&mesh{bvh: solid.NewBVH(&solid.Set{})})
	for _, standsFor := range []float64{1, 2} {
		got, numbers := 0.0, [2]int{}
		const turns = 16
		for turn := range turns {
			from := viewpoint{normal: r3.Vec{Z: 1}, samples: 64, closeSamples: 1, besideSamples: 1, turn: turn, turns: turns, standsFor: standsFor, offset: 0.5}
			e.choice.choose(&s, &from, 0)
			(&Transport{samples: sobol.Samples(1 << 12)}).sampleHot(e, &s, &from, func(g hotSample) {
				got += g.gain[1] * g.part.own[1] / turns
				numbers[g.number&1]++
			})
		}
		if !(math.Abs(got/want-standsFor) <= 0.005*standsFor) || numbers != [2]int{32 * turns, 32 * turns} {
			t.Errorf("for %g viewpoints: %g times what all parts give, by %v looks", standsFor, got/want, numbers)
		}
	}
}

// A viewpoint has its looks at what is beside by turns, each in the middle of its share of what parts return.
func TestBesideOffsets(t *testing.T) {
	for turn := range 4 {
		v := viewpoint{turn: turn, turns: 4, offset: 0.3}
		if got, want := v.besideOffset(), 0.125+0.25*float64(turn); got != want {
			t.Errorf("turn %d begins at %g, want %g", turn, got, want)
		}
	}
	if got := (&viewpoint{turns: 1, offset: 0.3}).besideOffset(); got != 0.3 {
		t.Errorf("one that looks alone begins at %g", got)
	}
}

// A patch on which more hangs than on most looks more often, up to a most; parts close by get an eighth of the looks, one at least.
func TestLooksOfAPatch(t *testing.T) {
	tr := handmade(1, boardFace(t, r3.Vec{Z: 1}, r3.Vec{X: 2}, r3.Vec{Y: 4}, 2, 2, 0.5))
	tr.quality.HotSamples = 4
	for importance, want := range map[float64][2]int{0: {4, 1}, 0.2: {4, 1}, 0.5: {8, 1}, 0.8: {16, 2}, 1: {20, 2}, 100: {64, 8}} {
		tr.patches[2].importance = importance
		v := tr.ofPatch(2)
		if v.samples != want[0] || v.closeSamples != want[1] || v.besideSamples != float64(want[0])/32 {
			t.Errorf("where %g hangs on a patch it looks %d times, %d close by, %g beside, want %v", importance, v.samples, v.closeSamples, v.besideSamples, want)
		}
		f := &tr.mesh.faces[0]
		middle := f.at(1.5*f.du, 0.5*f.dv)
		if r3.Norm(r3.Sub(v.middle, middle)) > 1e-12 || v.reach != f.du {
			t.Errorf("it looks from %v, want %v", v.middle, middle)
		}
	}
	tr.cells = []cell{{at: r3.Vec{X: 3}}}
	if v := tr.ofCell(0, r3.Vec{Z: -1}); v.samples != 16 || v.closeSamples != 2 || v.besideSamples != 2 || v.middle != (r3.Vec{X: 3}) || v.normal != (r3.Vec{Z: -1}) {
		t.Errorf("a cell looks as %+v", v)
	}
}

// Points of planes that lend each other what they see look half as often where what is hot can be no large share of what they get, and no less than
// twice together; elsewhere, all round, and at a quality that spares none, they take all looks. A lamp's own rays count in the mean over the rectangle, channels together.
func TestLooksAreSparedWhereLittleIsHot(t *testing.T) {
	const plenty, none = 0.999 * 3 * math.Pi, 1.001 * 3 * math.Pi
	for _, c := range []struct {
		response    receptor.Response
		shared      bool
		most, spare float64
		usual, want int
	}{
		{receptor.Cosine, true, plenty, 3, 32, 16},
		{receptor.Cosine, true, none, 3, 32, 32},
		{receptor.Cosine, true, plenty, 3, 3, leastLooks},
		{receptor.Cosine, true, plenty, 3, 1, 1},
		{receptor.Dome, true, plenty, 3, 32, 32},
		{receptor.Cosine, false, plenty, 3, 32, 32},
		{receptor.Cosine, true, 0, 0, 32, 32},
	} {
		f := &frame{Lattice: receptor.Lattice{NU: 4, NV: 3, Response: c.response}, shared: c.shared}
		red := []float32{9, 9, 9, 9, 9, 0, 1, 9, 9, 0.5, 0.5, 9} // 0.5 in the mean of columns 1 and 2 of the last two rows
		l := latticeLook{t: &Transport{quality: Quality{Spare: c.spare}}, f: f, own: [][]float32{red, red}, x: 1, y: 1, toX: 3, toY: 3}
		e := &tracer{choice: hotChoice{chances: []float64{0.1, c.most}}}
		if got := l.some(e, c.usual); got != c.want {
			t.Errorf("%+v: %d looks", c, got)
		}
	}
}
