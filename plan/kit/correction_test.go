package kit_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// The rule by which stacks of gels are chosen, as the documents state it.
const (
	asClose    = 0.1
	notSeen    = 0.25
	mostSheets = 3
)

// tried is one stack of a brute search.
type tried struct {
	names []string
	passes,
	left float64
}

// everyStack is every stack of none to three gels of a catalogue, in any order and with any gel twice, that leaves the light of a head with a
// colour temperature: by the way of each through its gels, not by sums of shifts.
func everyStack(c *kit.Catalogue, from colour.White, wanted [2]float64) (all []tried) {
	var put func(under []*kit.GelData)
	put = func(under []*kit.GelData) {
		one := tried{passes: 1}
		var stack []colour.Filter
		for _, g := range under {
			one.names, one.passes, stack = append(one.names, g.Name), one.passes*g.Transmittance, append(stack, g.Filter())
		}
		light := colour.ThroughGels(from, stack)
		if gap, ok := colour.GapBetween(colour.XY(light.RGB), wanted); ok {
			one.left = math.Hypot(gap.Mired/colour.PassMired, gap.Duv/colour.PassDuv)
			all = append(all, one)
		}
		if len(under) == mostSheets {
			return
		}
		for _, g := range c.Gels {
			if g.XY == nil && (len(under) == 0 || slices.Index(c.Gels, g) >= slices.Index(c.Gels, under[len(under)-1])) {
				put(append(under[:len(under):len(under)], g))
			}
		}
	}
	put(nil)
	return all
}

// The stack that is chosen is as close as any of the catalogue's, neutral densities and all; none that is as close has fewer gels, and none with as many
// passes more.
func TestCorrectIsTheBestOfAllStacks(t *testing.T) {
	c := shipped(t)
	for _, x := range []struct {
		from   colour.White
		wanted colour.White
	}{
		{colour.White{Kelvin: 5600}, colour.White{Kelvin: 3200}},
		{colour.White{Kelvin: 5600}, colour.White{Kelvin: 2470, Duv: 0.003}},
		{colour.White{Kelvin: 3200}, colour.White{Kelvin: 6500, Duv: -0.004}},
		{colour.White{Kelvin: 4000, Duv: 0.011}, colour.White{Kelvin: 3700}},
		{colour.White{Kelvin: 3200}, colour.White{Kelvin: 3180}},
		{colour.White{Kelvin: 2700}, colour.White{Kelvin: 9000, Duv: 0.02}},
	} {
		wanted := colour.XY(x.wanted.RGB())
		gap, _ := colour.GapBetween(colour.XY(x.from.RGB()), wanted)
		got := c.Correct(gap)
		all := everyStack(c, x.from, wanted)
		closest := math.Inf(1)
		for i := range all {
			closest = min(closest, all[i].left)
		}
		const slip = 0.02 // of the nearest temperature of a light off the locus
		if size := got.Left.Size(); size > max(closest+asClose, notSeen)+slip {
			t.Errorf("%v to %v: %v leaves %.3f, and a stack leaves %.3f", x.from, x.wanted, got.Gels, size, closest)
		}
		for i := range all {
			s := &all[i]
			if s.left > max(closest+asClose, notSeen)-slip {
				continue
			}
			if len(s.names) < len(got.Gels) || len(s.names) == len(got.Gels) && s.passes > got.Transmittance+1e-9 {
				t.Errorf("%v to %v: %v, and %v is as close (%.3f), passes %.3f", x.from, x.wanted, got, s.names, s.left, s.passes)
			}
		}
	}
}

// In a kit of one's own with many gels of odd shifts the search finds what all stacks, tried one by one by sums, come to.
func TestCorrectAmongOddGels(t *testing.T) {
	c := &kit.Catalogue{}
	for i := range 28 {
		turn := float64(i) * 0.618
		c.Gels = append(c.Gels, &kit.GelData{Entry: kit.Entry{Name: fmt.Sprint(i)}, Kind: []term.Gel{term.CTO, term.CTB, term.PlusGreen, term.MinusGreen}[i%4],
			Mired: 180*math.Mod(turn, 1) - 90, Duv: 0.02*math.Mod(3*turn, 1) - 0.01, Transmittance: 0.5 + 0.4*math.Mod(7*turn, 1)})
	}
	for _, gap := range []colour.Gap{{Mired: 43, Duv: 0.004}, {Mired: -137, Duv: -0.013}, {Mired: 5, Duv: 0.019}, {Mired: 250, Duv: 0}} {
		size := func(some ...*kit.GelData) float64 {
			g := gap
			for _, one := range some {
				g = g.Shifted(one.Mired, one.Duv)
			}
			return g.Size()
		}
		closest := size()
		none := &kit.GelData{Transmittance: 1}
		for _, a := range append(c.Gels, none) {
			for _, b := range append(c.Gels, none) {
				for _, d := range append(c.Gels, none) {
					closest = min(closest, size(a, b, d))
				}
			}
		}
		count, passes := mostSheets+1, 0.0
		for _, a := range append(c.Gels, none) {
			for _, b := range append(c.Gels, none) {
				for _, d := range append(c.Gels, none) {
					n := 0
					for _, one := range []*kit.GelData{a, b, d} {
						if one != none {
							n++
						}
					}
					if through := a.Transmittance * b.Transmittance * d.Transmittance; size(a, b, d) <= max(closest+asClose, notSeen) && (n < count || n == count && through > passes) {
						count, passes = n, through
					}
				}
			}
		}
		if got := c.Correct(gap); len(got.Gels) != count || !(math.Abs(got.Transmittance-passes) <= 1e-9) {
			t.Errorf("%+v: %+v, want %d gels that pass %.4f", gap, got, count, passes)
		}
	}
}

// What a stack leaves and passes is what its gels do one after the other.
func TestCorrectSaysWhatItsGelsDo(t *testing.T) {
	c := shipped(t)
	gap := colour.Gap{Mired: -88, Duv: 0.009}
	got := c.Correct(gap)
	left, passes := gap, 1.0
	for _, name := range got.Gels {
		g := c.Gel(name)
		left, passes = left.Shifted(g.Mired, g.Duv), passes*g.Transmittance
	}
	if got.Left != left || !(math.Abs(got.Transmittance-passes) <= 1e-12) || len(got.Gels) < 2 {
		t.Errorf("%+v, and its gels leave %+v and pass %v", got, left, passes)
	}
}

// Where none is nearer there is no gel; a catalogue without gels has none to offer; of two sheets that shift alike the one that passes more counts.
func TestCorrectWhereNoGelHelps(t *testing.T) {
	small := colour.Gap{Mired: 3, Duv: -0.0005}
	if got := shipped(t).Correct(small); len(got.Gels) > 0 || got.Left != small || got.Transmittance != 1 {
		t.Errorf("%+v for a gap that nobody sees", got)
	}
	if got := (&kit.Catalogue{}).Correct(colour.Gap{Mired: 90}); len(got.Gels) > 0 || got.Left.Mired != 90 {
		t.Errorf("%+v of nothing", got)
	}
	own := "scrimshaw: 1\ngels:\n  dull: {kind: cto, mired: 40, transmittance: 60 %}\n  clear: {kind: cto, mired: 40, transmittance: 80 %}\n"
	c := (&kit.Catalogue{}).With([]*source.File{{Name: "own.yaml", Text: []byte(own)}}, &source.Log{})
	if got := c.Correct(colour.Gap{Mired: -40}); strings.Join(got.Gels, "+") != "clear" {
		t.Errorf("%+v, want the clearer", got)
	}
}

// A head with more gels, or at another white, gives what the choice of these gives from the start.
func TestAlteredHeads(t *testing.T) {
	c := shipped(t)
	of := func(ch kit.Choice) kit.Head {
		h, ok := c.Head(ch, &source.Log{})
		if !ok {
			t.Fatalf("%+v makes no head", ch)
		}
		return h
	}
	gels := func(names ...string) (all []kit.Gel) {
		for _, n := range names {
			all = append(all, kit.Gel{Name: n})
		}
		return all
	}
	before := of(kit.Choice{Unit: "led-point-300-bicolour", Gels: gels("1/8 minus green")})
	after := of(kit.Choice{Unit: "led-point-300-bicolour", Gels: gels("1/8 minus green", "1/4 CTO")})
	if got := before.Gelled(c, []string{"1/4 CTO"}); got.RGB != after.RGB || got.Filter != after.Filter || got.White != after.White {
		t.Errorf("gelled: %+v, want %+v", got.White, after.White)
	}
	if before.Filter == after.Filter || len(before.Gelled(c, nil).Steps) != len(before.Steps) {
		t.Error("the head before is another now")
	}
	u := c.Unit("led-point-300-bicolour")
	own := of(kit.Choice{Unit: u.Name})
	set, to := own.SetNearer(u, colour.Gap{Mired: colour.Mired(5600) - colour.Mired(3178)})
	want := of(kit.Choice{Unit: u.Name, White: &colour.White{Kelvin: 3200}})
	if !to.Moves || to.Kelvin != 3200 || to.Duv != 0 || !(math.Abs(set.Source.Flux/want.Source.Flux-1) <= 1e-12) || set.RGB != want.RGB {
		t.Errorf("set to %+v, %g lm; want 3200 K, %g lm", to, set.Source.Flux, want.Source.Flux)
	}
	if _, to := own.SetNearer(u, colour.Gap{Mired: colour.Mired(5600) - colour.Mired(1900)}); to.Kelvin != u.Kelvin[0] {
		t.Errorf("set to %g K, and it goes to %g K", to.Kelvin, u.Kelvin[0])
	}
	fixed := c.Unit("led-point-300-daylight")
	if _, to := of(kit.Choice{Unit: fixed.Name}).SetNearer(fixed, colour.Gap{Mired: -90}); to.Moves {
		t.Errorf("a head of one white is set to %+v", to)
	}
	tinted := c.Unit("led-point-300-colour")
	if tinted.Tint == 0 {
		t.Fatal("the coloured head has no tint")
	}
	if _, to := of(kit.Choice{Unit: tinted.Name}).SetNearer(tinted, colour.Gap{Duv: 0.0072}); !to.Moves || !(math.Abs(to.Duv+0.007) <= 1e-12) {
		t.Errorf("set to %+v, want Duv -0.007", to)
	}
}
