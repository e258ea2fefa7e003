package radiosity

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// A hot patch has a chance as long as any part of it may be farther from the viewpoint than what is looked at closely, even
// where its cosines say that nothing comes from there.
func TestHotPatchesHaveAChanceWhileTheyHaveFarParts(t *testing.T) {
	from := &viewpoint{normal: r3.Vec{Z: 1}, response: receptor.Cosine}
	for _, c := range []struct {
		name            string
		within, radius  float64
		normal          r3.Vec
		closest, chance float64
	}{
		{"far, face to face", 0, 0, r3.Vec{Z: -1}, 1, 1.0 / 4},
		{"far, turned away", 0, 0, r3.Vec{Z: 1}, 1, 0},
		{"far, turned away, and wide", 0, 1, r3.Vec{Z: 1}, 1, 0.5 * 1.5 / 4},
		{"all of it close", 0.4, 0.5, r3.Vec{Z: -1}, 3, 0},
		{"its rim far", 0, 0.5, r3.Vec{Z: -1}, 2.5, 1 / 6.25},
		{"far from a place within reach", 0.5, 0, r3.Vec{Z: -1}, 2.5, 1 / 6.25},
	} {
		p := &hotPatch{middle: r3.Vec{Z: 2}, normal: c.normal, radius: c.radius, closest: c.closest, power: 1}
		if got := p.chance(from, c.within); !(math.Abs(got-c.chance) <= 1e-12) {
			t.Errorf("%s: a chance of %g, want %g", c.name, got, c.chance)
		}
	}
}

// What an element returns is what comes onto it times what its face throws back, channel by channel; its parts are even
// where the darkest gets nearly what the brightest does.
func TestWhatAnElementReturns(t *testing.T) {
	tr := &Transport{
		mesh:    &mesh{channels: 3, faces: []face{{}, {reflect: colour.RGB{0.5, 0.4, 0.2}}}},
		patches: []patch{{}, {face: 0}, {face: 1}},
	}
	lamp := make(directLux, 3*12)
	copy(lamp[3*9:], []float32{10, 20, 30})
	if got := tr.returned(lamp, 9); !(math.Abs(got-(5+8+6)) <= 1e-12) {
		t.Errorf("the element returns %g lm/m², want 19", got)
	}
	parts := []hotPart{{area: 1}, {area: 0.5}, {area: 2}}
	for least, even := range map[float64]bool{0.7501: true, 0.7499: false} {
		flux := []colour.RGB{grey(1), grey(0.5 * least), grey(2)}
		if got := areEven(parts, flux); got != even {
			t.Errorf("parts of which one gets %g of the others' light are even: %v, want %v", least, got, even)
		}
	}
}

// A choice of hot patches holds those of which parts may be close to any viewpoint within a distance, and gives each a chance but those
// on what is not there.
func TestAChoiceHoldsCloseBy(t *testing.T) {
	patch := func(x float64) hotPatch {
		return hotPatch{of: 1, middle: r3.Vec{X: x, Z: 1}, normal: r3.Vec{Z: -1}, radius: 0.1, closest: 0.4, reach: 0.5, power: 1}
	}
	s := &hotParts{looks: 1, patches: []hotPatch{patch(0), patch(0.1), patch(0.8), patch(5)}}
	s.patches[1].of = 2
	here := viewpoint{middle: r3.Vec{Z: 0.5}, normal: r3.Vec{Z: 1}, response: receptor.Cosine, skip: []solid.ID{2}}
	var c hotChoice
	for _, k := range []struct {
		within float64
		close  []int
	}{{0, []int{0}}, {0.4, []int{0}}, {0.45, []int{0, 2}}, {5, []int{0, 2, 3}}} {
		c.choose(s, &here, k.within)
		if !slices.Equal(c.close, k.close) {
			t.Errorf("within %g m patches %v may be close, want %v", k.within, c.close, k.close)
		}
		if ch := c.chances; len(ch) != 4 || !(ch[0] > 0) || ch[1] != ch[0] || !(ch[2] > ch[1]) || !(ch[3] > ch[2]) {
			t.Errorf("within %g m the chances add up to %v", k.within, ch)
		}
	}
	c.choose(&hotParts{}, &here, 0)
	if len(c.close) != 0 || len(c.chances) != 0 {
		t.Errorf("of no patches %v are close, with chances %v", c.close, c.chances)
	}
}

// At what is looked at seldom, and among very many hot patches, viewpoints share a choice that lie farther apart. All of a square of
// them lies within that of its middle.
func TestChoicesReachFartherForMany(t *testing.T) {
	for _, c := range []struct {
		looks   float64
		patches int
		reach   float64
		points  int // 5 cm apart
	}{{1, 10, 0.12, 4}, {4, 1024, 0.12, 4}, {0.25, 10, 0.24, 7}, {1, 4096, 0.24, 7}, {0.001, 10, 1.5, 43}} {
		s := &hotParts{looks: c.looks, patches: make([]hotPatch, c.patches)}
		if got := s.choiceReach(); !(math.Abs(got-c.reach) <= 1e-12) {
			t.Errorf("%g of the looks, %d patches: a choice reaches %g m, want %g", c.looks, c.patches, got, c.reach)
		}
		if got := s.tileSide(0.05); got != c.points {
			t.Errorf("%g of the looks, %d patches: %d points make a row of a choice, want %d", c.looks, c.patches, got, c.points)
		}
	}
	if got := (&hotParts{looks: 1}).tileSide(1e-9); got != 1+mostTile {
		t.Errorf("of points at one place %d make a row, want %d", got, 1+mostTile)
	}
}

// Of parts that only their element is close for some are looked at, and stand for all: those that look in turn get in the mean what they would
// get by looking at each part many times, and do so with an eighth of the looks.
func TestSomePartsBesideStandForAll(t *testing.T) {
	f := &face{basis: basisOf(r3.Vec{Z: -1})}
	var s hotParts
	sum := 0.0
	for k := range 64 {
		x, y := 0.03*float64(k%8), 0.03*float64(k/8)
		part := newHotPart([]r3.Vec{{X: x, Y: y, Z: 1}, {X: x, Y: y + 0.03, Z: 1}, {X: x + 0.03, Y: y + 0.03, Z: 1}, {X: x + 0.03, Y: y, Z: 1}}, f, 0.0576)
		part.own = grey(1 + float64(k%5))
		sum += part.power()
		s.parts, s.upTo = append(s.parts, part), append(s.upTo, sum)
	}
	s.patches = []hotPatch{newHotPatch(1, s.parts, 0)}
	e := newTracer(&mesh{bvh: solid.NewBVH(&solid.Set{})})
	got := func(besideSamples float64) (all float64, looks int) {
		for turn := range sets {
			from := viewpoint{middle: r3.Vec{X: 0.3, Y: 0.1, Z: 0.5}, normal: r3.Vec{Z: 1}, closeSamples: 1, besideSamples: besideSamples, turn: turn, turns: sets}
			e.choice.choose(&s, &from, 0)
			(&Transport{samples: sobol.Samples(1 << 12)}).sampleHot(e, &s, &from, func(g hotSample) {
				all, looks = all+g.gain[0]*g.part.own[0]/sets, looks+1
			})
		}
		return all, looks
	}
	want, every := got(8)
	few, some := got(1.0 / 8)
	if !(math.Abs(few/want-1) <= 0.02) || every < 8*sets*60 || some > sets*10 || some < sets*6 {
		t.Errorf("%d looks give %.4g, %d looks %.4g", some, few, every, want)
	}
}

// Patches that look a few times share a choice in squares that take about as many looks together as a choice costs, in none wider than 1.1 m but that
// of the least, and in those that all viewpoints so close together share.
func TestSquaresOfPatchesThatShareAChoice(t *testing.T) {
	s := &hotParts{looks: 1}
	for _, c := range []struct {
		apart       float64
		looks, want int
	}{{0.27, 4, 4}, {0.25, 16, 2}, {0.4, 2, 2}, {0.25, 7, 4}, {0.1, 8, 3}, {0.1, 1, 8}, {0.1, 0, 8}, {0.1, 64, 2}, {0.36, 4, 3}, {0.37, 4, 2}, {1.2, 4, 2}, {0.01, 4, 17}} {
		if got := s.squareSide(c.apart, c.looks); got != c.want {
			t.Errorf("patches %g m apart that look %d times share a choice %d by %d, want %d", c.apart, c.looks, got, got, c.want)
		}
	}
}
