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
		if got := p.chance(from, c.within); math.Abs(got-c.chance) > 1e-12 {
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
	if got := tr.returned(lamp, 9); math.Abs(got-(5+8+6)) > 1e-12 {
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

// A choice of hot patches is taken over by viewpoints close by that look nearly the same way, and made anew by others. It
// holds the patches of which parts may be close to any of them.
func TestAChoiceHoldsCloseBy(t *testing.T) {
	patch := func(x float64) hotPatch {
		return hotPatch{of: 1, middle: r3.Vec{X: x, Z: 1}, normal: r3.Vec{Z: -1}, radius: 0.1, closest: 0.4, reach: 0.5, power: 1}
	}
	s := &hotParts{looks: 1, patches: []hotPatch{patch(0), patch(0.1), patch(0.8), patch(5)}}
	s.patches[1].of = 2
	here := viewpoint{middle: r3.Vec{Z: 0.5}, normal: r3.Vec{Z: 1}, response: receptor.Cosine, skip: []solid.ID{2}}
	var c hotChoice
	c.update(s, &here)
	if !slices.Equal(c.close, []int{0, 2}) {
		t.Errorf("patches %v may be close, want 0 and 2", c.close)
	}
	if ch := c.chances; len(ch) != 4 || !(ch[0] > 0) || ch[1] != ch[0] || !(ch[2] > ch[1]) || !(ch[3] > ch[2]) {
		t.Errorf("the chances add up to %v", ch)
	}
	for _, k := range []struct {
		name string
		to   viewpoint
		anew bool
	}{
		{"the same place", here, false},
		{"0.45 m away", viewpoint{middle: r3.Vec{X: 0.45, Z: 0.5}, normal: here.normal, response: here.response}, false},
		{"0.55 m away", viewpoint{middle: r3.Vec{X: 0.55, Z: 0.5}, normal: here.normal, response: here.response}, true},
		{"turned by 20°", viewpoint{middle: here.middle, normal: r3.Vec{X: math.Sin(0.35), Z: math.Cos(0.35)}, response: here.response}, false},
		{"turned by 30°", viewpoint{middle: here.middle, normal: r3.Vec{X: 0.5, Z: math.Sqrt(0.75)}, response: here.response}, true},
		{"another response", viewpoint{middle: here.middle, normal: here.normal, response: receptor.Dome}, true},
	} {
		c := hotChoice{}
		c.update(s, &here)
		c.update(s, &k.to)
		if anew := c.from.middle != here.middle || c.from.normal != here.normal || c.from.response != here.response; anew != k.anew {
			t.Errorf("%s: the choice is made anew: %v, want %v", k.name, anew, k.anew)
		}
	}
	c.update(&hotParts{}, &here)
	if len(c.close) != 0 || len(c.chances) != 0 {
		t.Errorf("of no patches %v are close, with chances %v", c.close, c.chances)
	}
}

// At what is looked at seldom, and among very many hot patches, viewpoints share a choice that lie farther apart.
func TestChoicesReachFartherForMany(t *testing.T) {
	for _, c := range []struct {
		looks   float64
		patches int
		reach   float64
	}{{1, 10, 0.5}, {4, 256, 0.5}, {0.25, 10, 1}, {1, 1024, 1}, {0.01, 10, 1.5}} {
		s := &hotParts{looks: c.looks, patches: make([]hotPatch, c.patches)}
		if got := s.choiceReach(); math.Abs(got-c.reach) > 1e-12 {
			t.Errorf("%g of the looks, %d patches: a choice reaches %g m, want %g", c.looks, c.patches, got, c.reach)
		}
	}
}
