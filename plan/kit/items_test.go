package kit_test

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/kit"
)

// figure is a figure of an item, with what things of its kind have: common practice, from memory. must says that each of the kind has one.
type figure struct {
	name        string
	of          func(i *kit.Item) float64
	least, most float64
	must        bool
}

// What things of a van have.
var (
	mass     = func(i *kit.Item) float64 { return i.Mass }
	load     = func(i *kit.Item) float64 { return i.Load }
	length   = func(i *kit.Item) float64 { return i.Length }
	amps     = func(i *kit.Item) float64 { return i.Amps }
	section  = func(i *kit.Item) float64 { return i.Section }
	cores    = func(i *kit.Item) float64 { return float64(i.Cores) }
	outlets  = func(i *kit.Item) float64 { return float64(i.Outlets) }
	breakers = func(i *kit.Item) float64 { return i.Breakers }
	residual = func(i *kit.Item) float64 { return i.Residual }
	watts    = func(i *kit.Item) float64 { return i.Watts }
	energy   = func(i *kit.Item) float64 { return i.Energy }
	volts    = func(i *kit.Item) float64 { return i.Volts }
	longest  = func(i *kit.Item) float64 { return slices.Max(i.Size[:]) }
)

// figures are those of each shelf but lifts, which have a test of their own.
var figures = map[string][]figure{
	"clamp":        {{"kg", mass, 0.15, 1.5, true}, {"kg that it carries", load, 4, 50, false}},
	"arm":          {{"kg", mass, 0.5, 6, true}, {"kg that it carries", load, 2, 25, true}, {"m", length, 0.4, 4, true}},
	"head":         {{"kg", mass, 0.6, 2.5, true}},
	"holder":       {{"kg", mass, 0.05, 1.2, true}, {"kg that it carries", load, 5, 20, false}},
	"box":          {{"kg", mass, 0.8, 8, true}, {"m", longest, 0.4, 0.6, false}},
	"bag":          {{"kg", mass, 5, 16, true}},
	"safety":       {{"kg", mass, 0.05, 10, true}, {"kg that it carries", load, 10, 60, false}, {"m", length, 0.4, 10, false}},
	"cable":        {{"kg", mass, 0.3, 35, true}, {"m", length, 2, 50, true}, {"A", amps, 10, 125, false}, {"mm²", section, 1, 35, false}, {"cores", cores, 3, 5, false}},
	"splitter":     {{"kg", mass, 0.4, 6, true}, {"A", amps, 10, 63, true}, {"outlets", outlets, 2, 6, true}, {"A of a breaker", breakers, 10, 20, false}},
	"distribution": {{"kg", mass, 4, 40, true}, {"A", amps, 16, 125, true}, {"outlets", outlets, 3, 16, true}, {"A of a breaker", breakers, 10, 32, true}, {"mA", residual, 30, 30, false}},
	"protection":   {{"kg", mass, 0.1, 2, true}, {"A", amps, 10, 32, false}, {"mA", residual, 10, 30, false}},
	"dimmer":       {{"kg", mass, 0.2, 5, true}, {"W", watts, 200, 5000, false}, {"A", amps, 0.8, 25, false}},
	"battery":      {{"kg", mass, 0.4, 40, true}, {"Wh", energy, 40, 4000, false}, {"V", volts, 12, 240, false}, {"A", amps, 3, 30, false}, {"W", watts, 100, 3600, false}},
	"generator":    {{"kg", mass, 10, 200, true}, {"W", watts, 900, 20000, true}, {"V", volts, 110, 400, true}, {"A", amps, 4, 90, true}, {"outlets", outlets, 1, 8, true}},
	"kit":          {{"kg", mass, 0.2, 40, true}, {"m", longest, 0.1, 1.6, false}},
	"consumable":   {{"kg", mass, 0.1, 4, true}, {"m", length, 5, 60, false}, {"m across", longest, 0.5, 3.5, false}},
}

// Every item has the figures that things of its kind have, within what is met on set.
func TestItemsAreAsTheirKind(t *testing.T) {
	seen := map[string]bool{}
	for _, item := range shipped(t).Items {
		if item.Group == kit.LiftGroup {
			continue
		}
		seen[item.Group] = true
		for _, f := range figures[item.Group] {
			if got := f.of(item); got != 0 || f.must {
				between(t, item.Name+", "+f.name+",", got, []float64{f.least, f.most})
			}
		}
	}
	for group := range figures {
		if !seen[group] {
			t.Errorf("no item is a %s", group)
		}
	}
	for group := range seen {
		if figures[group] == nil {
			t.Errorf("nothing says what a %s has", group)
		}
	}
}

// The figures of one item agree: what a cable weighs and carries with its copper, what a supply gives with its volts and amps, a battery with its energy.
func TestItemsAgreeWithThemselves(t *testing.T) {
	const copper, mains = 8.9e-3, 230.0 // kg/m of 1 mm², V
	for _, item := range shipped(t).Items {
		low := strings.Contains(cmp.Or(item.Plug, item.Doc), "NEMA") || strings.Contains(item.Doc, "120 V")
		switch {
		case item.Group == "cable" && item.Section > 0:
			metal := copper * item.Section * float64(item.Cores) * item.Length
			between(t, item.Name+", kg to its copper", item.Mass/metal, []float64{1.8, 4.5}) // rubber, sheath and plugs
			between(t, item.Name+", A a mm²", item.Amps/item.Section, []float64{4, 11})      // flexible cable in air, as the trade rounds it
			if item.Cores != 3 && item.Cores != 5 {
				t.Errorf("%s has %d cores", item.Name, item.Cores)
			}
		case item.Group == "cable":
			between(t, item.Name+", kg a m", item.Mass/item.Length, []float64{0.04, 0.6})
		case item.Group == "battery" && item.Energy > 0:
			between(t, item.Name+", Wh a kg", item.Energy/item.Mass, []float64{80, 190}) // lithium cells in a case
			between(t, item.Name+", hours at its most", item.Energy/(item.Volts*item.Amps), []float64{0.4, 2})
		case item.Group == kit.GeneratorGroup:
			between(t, item.Name+", W a kg", item.Watts/item.Mass, []float64{40, 110})
		}
		if at := item.Volts; item.Watts > 0 && item.Amps > 0 {
			if at == 0 {
				at = mains
			}
			between(t, item.Name+", W to its volts and amps", item.Watts/(at*item.Amps), []float64{0.9, 1.05})
		}
		if item.Breakers > 0 {
			between(t, item.Name+", A of its breakers to its own", item.Breakers/item.Amps, []float64{0.2, 0.6})
			if low != (math.Mod(item.Breakers, 20) == 0) {
				t.Errorf("%s has breakers of %g A", item.Name, item.Breakers)
			}
		}
		if item.Phases > 1 != (item.Group == "distribution" && strings.Contains(item.Plug, "three-phase")) {
			t.Errorf("%s has %d phases and the plug %q", item.Name, item.Phases, item.Plug)
		}
		if number := strings.TrimPrefix(item.Name, "sandbag-"); number != item.Name && number != strings.TrimSuffix(strings.TrimPrefix(item.Label, "sandbag "), " kg") {
			t.Errorf("%s is called %s", item.Name, item.Label)
		}
	}
}

// A box takes what feeds it and gives less by each breaker; it is for the mains that it says, else for those of its plugs, 230 V and 15 % more or
// less. Of those that serve the smallest is taken.
func TestBoxFor(t *testing.T) {
	boxes := []*kit.Item{
		{Entry: kit.Entry{Name: "large"}, Amps: 125, Breakers: 32}, {Entry: kit.Entry{Name: "blue"}, Amps: 63, Breakers: 16}, {Entry: kit.Entry{Name: "red"}, Amps: 63, Breakers: 16, Phases: 3},
		{Entry: kit.Entry{Name: "120"}, Amps: 60, Breakers: 20, Volts: 120}, {Entry: kit.Entry{Name: "splitter"}, Amps: 63},
	}
	for _, c := range []struct {
		amps, volts float64
		phases      int
		want        string
	}{
		{63, 230, 1, "blue"}, {63, 230, 3, "red"}, {63.1, 230, 1, "large"}, {125, 230, 1, "large"}, {126, 230, 1, ""}, {64, 230, 3, ""}, {16, 230, 1, ""}, {16.1, 230, 1, "blue"},
		{63, 264, 1, "blue"}, {63, 265, 1, ""}, {63, 196, 1, "blue"}, {63, 195, 1, ""}, {60, 120, 1, "120"}, {60, 137, 1, "120"}, {60, 139, 1, ""}, {61, 120, 1, ""},
	} {
		got := ""
		if box := kit.BoxFor(boxes, c.amps, c.volts, c.phases); box != nil {
			got = box.Name
		}
		if got != c.want {
			t.Errorf("%g A of %g V on %d phases: %q, want %q", c.amps, c.volts, c.phases, got, c.want)
		}
	}
}
