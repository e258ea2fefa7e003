package passing_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
)

// worn is what a light wears in a scene, and how it passes then.
func worn(t *testing.T, unit string, gels []string, set string) *meter.Passing {
	t.Helper()
	return passing(t, ada+fmt.Sprintf("lights:\n  k: {unit: %s, at: [1, 2], height: 1.6, aim: ada, gels: [%s]%s, stands-for: 3200 K}\n", unit, strings.Join(gels, ", "), set))
}

// asWorn is what a light wears once a change is made to it.
func asWorn(gels []string, cure *meter.Cure) (after []string) {
	after = slices.Clone(gels)
	for _, name := range cure.Off {
		i := slices.Index(after, name)
		after = slices.Delete(after, i, i+1)
	}
	return append(after, cure.Gels...)
}

// stacks are all stacks of up to three gels that correct.
func stacks(c *kit.Catalogue) (all [][]string) {
	var put func(under []string, from int)
	put = func(under []string, from int) {
		all = append(all, slices.Clone(under))
		for i := from; i < len(c.Gels) && len(under) < 3; i++ {
			if g := c.Gels[i]; c.Corrects(g.Name) {
				put(append(under[:len(under):len(under)], g.Name), i)
			}
		}
	}
	put(nil, 0)
	return all
}

// leaving is how far from 3200 K a white is behind some gels, by what may not be seen, and the light that these pass.
func leaving(c *kit.Catalogue, white float64, gels ...string) (size, passes float64) {
	var stack []colour.Filter
	passes = 1
	for _, name := range gels {
		stack = append(stack, c.Gel(name).Filter())
		passes *= c.Gel(name).Transmittance
	}
	light := colour.ThroughGels(colour.White{Kelvin: white}, stack)
	gap, _ := colour.GapBetween(colour.XY(light.RGB), colour.XY(colour.White{Kelvin: 3200}.RGB()))
	return math.Hypot(gap.Mired/20, gap.Duv/0.006), passes
}

// Whatever a lamp wears, what it should wear instead is the best of all stacks of up to three gels on the bare lamp: none is closer by more than
// counts, none as close has fewer gels, and none of as many passes more. Another run with it says the same gap and the same price.
func TestGelsAreExchanged(t *testing.T) {
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	all := stacks(shipped)
	for _, c := range []struct {
		unit string
		gels []string // a density is for something else, and stays
	}{
		{"led-point-300-daylight", []string{"1/2 CTO"}}, {"led-point-300-daylight", []string{"full CTB", "1/2 plus green"}}, {"fresnel-tungsten-650", []string{"full CTB"}},
		{"led-point-300-daylight", []string{"ND .6", "1/8 CTO", "1/8 CTO", "1/8 CTO", "1/8 CTO"}}, {"discharge-575", []string{"1/4 minus green", "3/4 CTO"}},
		{"fresnel-tungsten-650", []string{"ND .3"}}, {"led-point-300-daylight", []string{"1/2 CTO ND .3"}},
	} {
		p := worn(t, c.unit, c.gels, "")
		name := c.unit + " with " + strings.Join(c.gels, ", ")
		white := shipped.Unit(c.unit).Native
		isBest(t, name, shipped, all, white, c.gels, &p.Gels)
		if !p.Gels.Changes() {
			continue
		}
		after := asWorn(c.gels, &p.Gels)
		then := worn(t, c.unit, after, "")
		near(t, name+", mired then", then.Gap.Mired, p.Gels.Left.Mired, 1e-6)
		near(t, name+", Duv then", then.Gap.Duv, p.Gels.Left.Duv, 1e-9)
		if then.Gels.Changes() {
			t.Errorf("%s: once that is done it wants %s", name, then.Gels.Words())
		}
		_, before := leaving(shipped, white, c.gels...)
		_, passes := leaving(shipped, white, after...)
		near(t, name+", stops", p.Gels.Stops, math.Log2(before/passes), 1e-9)
	}
}

// isBest fails unless what a lamp wears after a change is the best of all stacks on top of the densities that it wears.
func isBest(t *testing.T, name string, c *kit.Catalogue, all [][]string, white float64, gels []string, cure *meter.Cure) {
	t.Helper()
	fixed := slices.DeleteFunc(slices.Clone(gels), func(g string) bool { return !strings.Contains(g, "ND") })
	with := func(stack []string) (size, passes float64) { return leaving(c, white, slices.Concat(fixed, stack)...) }
	closest := math.Inf(1)
	for _, s := range all {
		left, _ := with(s)
		closest = min(closest, left)
	}
	enough := max(closest+0.1, 0.25)
	const slip = 0.02 // of the nearest temperature of a light off the locus
	was, _ := leaving(c, white, gels...)
	if !cure.Changes() {
		if was > enough+slip {
			t.Errorf("%s leaves %.3f and is left so, and a stack leaves %.3f", name, was, closest)
		}
		return
	}
	after := asWorn(gels, cure)
	left, passes := leaving(c, white, after...)
	if left > enough+slip || was < enough-slip {
		t.Errorf("%s: %s leaves %.3f of %.3f, and a stack leaves %.3f", name, cure.Words(), left, was, closest)
	}
	count := len(after) - len(fixed)
	for _, s := range all {
		if other, through := with(s); other < enough-slip && (len(s) < count || len(s) == count && through > passes+1e-9) {
			t.Errorf("%s: %s, and %v is as close (%.3f)", name, cure.Words(), s, other)
		}
	}
}

// A head of two whites that wears a gel is set to the white without it; one whose whites do not go so far keeps it, and gels count where they do
// better.
func TestSettingWithoutGels(t *testing.T) {
	p := worn(t, "led-point-300-bicolour", []string{"full CTB"}, "")
	if p.Setting == nil || p.Setting.White.Kelvin != 3200 || !slices.Equal(p.Setting.Off, []string{"full CTB"}) || p.Cure() != p.Setting {
		t.Fatalf("%+v, %s", p.Setting, p.Cure().Words())
	}
	then := worn(t, "led-point-300-bicolour", nil, ", colour: 3200 K")
	near(t, "mired as set", then.Gap.Mired, p.Setting.Left.Mired, 1e-6)
	warm := worn(t, "led-point-300-bicolour", []string{"1/8 plus green"}, ", colour: 3200 K")
	if warm.Setting != nil || !slices.Equal(warm.Gels.Off, []string{"1/8 plus green"}) || len(warm.Gels.Gels) > 0 {
		t.Errorf("%+v, %+v", warm.Gels, warm.Setting)
	}
}
