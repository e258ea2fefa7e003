package kit_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// head makes a head that must have no faults.
func head(t testing.TB, ch kit.Choice) kit.Head {
	t.Helper()
	log := &source.Log{}
	h, ok := shipped(t).Head(ch, log)
	if !ok || log.Failed() {
		t.Fatalf("%+v: %v", ch, log.All())
	}
	return h
}

func gels(names ...string) (list []kit.Gel) {
	for _, n := range names {
		list = append(list, kit.Gel{Name: n})
	}
	return list
}

func TestHeadTakesItsDefaultModifier(t *testing.T) {
	h := head(t, kit.Choice{Unit: "led-point-600-bicolour"})
	if h.ModifierLabel != "wide reflector" || h.Class != term.Bare {
		t.Errorf("modifier %q, class %q", h.ModifierLabel, h.Class)
	}
	within(t, "flux", h.Source.Flux, 0.82*52800, 1e-9)
	within(t, "K", h.White.Kelvin, 5600, 0)
	within(t, "kg", h.Mass, 5.7, 1e-9)
	within(t, "filter", h.Filter, 1, 0)
	bare := head(t, kit.Choice{Unit: "led-point-600-bicolour", Modifier: kit.Unmodified})
	if bare.ModifierLabel != "" {
		t.Errorf("a bare head has the modifier %q", bare.ModifierLabel)
	}
	within(t, "bare flux", bare.Source.Flux, 52800, 1e-9)
}

// A soft modifier has the luminance L = eta flux / (pi A), and takes the body's shape.
func TestSoftboxLuminance(t *testing.T) {
	h := head(t, kit.Choice{Unit: "led-point-600-daylight", Modifier: "softbox-120"})
	within(t, "cd/m2", h.Source.Luminance(), 0.52*60000/(math.Pi*1.2*1.2), 1e-6)
	if h.Class != term.Boxed || h.Source.Opening.Form != photometry.Rectangle {
		t.Errorf("class %q, opening %v", h.Class, h.Source.Opening)
	}
}

// A grid leaves the light on the axis and cuts the rest: less flux, same luminance.
func TestGridNarrows(t *testing.T) {
	panel := head(t, kit.Choice{Unit: "soft-panel-200"})
	grid := head(t, kit.Choice{Unit: "soft-panel-200", Modifier: "grid-40"})
	within(t, "on the axis", grid.Source.Luminance(), 0.95*panel.Source.Luminance(), 1e-6)
	if grid.Source.Flux > 0.3*panel.Source.Flux || grid.Source.Opening != panel.Source.Opening {
		t.Errorf("flux %.0f of %.0f, opening %v", grid.Source.Flux, panel.Source.Flux, grid.Source.Opening)
	}
	side := r3.Vec{X: math.Sin(1), Z: -math.Cos(1)} // 57 degrees off, beyond the cut-off
	within(t, "beyond the cut-off", grid.Source.Intensity(side), 0, 0)
}

func TestGelsShiftAndCost(t *testing.T) {
	h := head(t, kit.Choice{Unit: "discharge-1200", Gels: gels("1/2 CTO", "ND .3")})
	within(t, "K", h.White.Kelvin, 4072.7, 0.1)
	within(t, "filter", h.Filter, 0.71*math.Pow(10, -0.3), 1e-9)
	within(t, "Y", h.RGB.Y(), 1, 1e-12)
	bare := head(t, kit.Choice{Unit: "discharge-1200"})
	within(t, "source is without gels", h.Source.Flux, bare.Source.Flux, 0)
}

func TestGelNames(t *testing.T) {
	c := shipped(t)
	for name, want := range map[string]string{
		"1/2 CTO": "1/2 CTO", "half CTO": "1/2 CTO", "½ CTO": "1/2 CTO", "CTO 1/2": "1/2 CTO", "1/2 cto": "1/2 CTO",
		"CTO": "full CTO", "full CTB": "full CTB", "1/4 plus green": "1/4 plus green", "quarter plus-green": "1/4 plus green",
		"minus green": "full minus green", "ND .6": "ND .6", "ND 0.6": "ND .6", "nd.6": "ND .6", "ND 1.2": "ND 1.2",
		"three quarter CTO": "3/4 CTO", "CTO ND 0.3": "full CTO ND .3", "1/2 CTO ND.6": "1/2 CTO ND .6", "Pale Blue": "pale blue",
	} {
		if g := c.Gel(name); g == nil || g.Name != want {
			t.Errorf("%q finds %v, want %q", name, g, want)
		}
	}
	if g := c.Gel("3/8 CTO"); g != nil {
		t.Errorf("3/8 CTO finds %q", g.Name)
	}
}

func TestWhiteWithinRange(t *testing.T) {
	h := head(t, kit.Choice{Unit: "led-point-300-bicolour", White: &colour.White{Kelvin: 4300}})
	kelvin, duv := colour.CCT(colour.XY(h.RGB))
	within(t, "K", kelvin, 4300, 0.5)
	within(t, "Duv", duv, 0, 1e-6)
	h = head(t, kit.Choice{Unit: "led-tube-120", White: &colour.White{Kelvin: 4300}, Tint: 0.01})
	_, duv = colour.CCT(colour.XY(h.RGB))
	within(t, "Duv with tint", duv, 0.01, 1e-6)
	h = head(t, kit.Choice{Unit: "led-point-300-bicolour", White: &colour.White{Kelvin: 5600, Daylight: true}})
	within(t, "x of daylight", colour.XY(h.RGB)[0], colour.Daylight(5600)[0], 1e-9)
	if !h.White.Daylight {
		t.Error("the word daylight is lost")
	}
}

// What a user reads when a choice cannot be.
func TestHeadFaults(t *testing.T) {
	for _, c := range []struct {
		choice              kit.Choice
		code, message, hint string
	}{
		{kit.Choice{Unit: "led-point-600-bicolor"}, kit.CodeUnknownUnit,
			`there is no unit "led-point-600-bicolor" in the catalogue`, `did you mean "led-point-600-bicolour"?`},
		{kit.Choice{Unit: "searchlight"}, kit.CodeUnknownUnit,
			`there is no unit "searchlight" in the catalogue`, "`scrimshaw kit units` lists them"},
		{kit.Choice{Unit: "discharge-1800", Modifier: "softbox-91"}, kit.CodeUnknownModifier,
			`there is no modifier "softbox-91" in the catalogue`, `did you mean "softbox-90"?`},
		{kit.Choice{Unit: "fresnel-tungsten-650", Modifier: "softbox-90"}, kit.CodeNoFit,
			`"softbox-90" does not fit on "fresnel-tungsten-650"`, "it takes bare, snoot, book-light-120, book-light-180"},
		{kit.Choice{Unit: "led-tube-60", White: &colour.White{Kelvin: 2000}}, kit.CodeWhiteRange,
			`"led-tube-60" makes from 2700 K to 10000 K, not 2000 K`, "set it to 2700 K, the nearest, and add CTO gels"},
		{kit.Choice{Unit: "led-point-600-daylight", White: &colour.White{Kelvin: 6500}}, kit.CodeWhiteRange,
			`"led-point-600-daylight" makes 5600 K only, not 6500 K`, "set it to 5600 K, the nearest, and add CTB gels"},
		{kit.Choice{Unit: "discharge-575", Gels: gels("1/2 CTX")}, kit.CodeUnknownGel,
			`there is no gel "1/2 CTX" in the catalogue`, `did you mean "1/2 CTO"?`},
	} {
		log := &source.Log{}
		c.choice.Path, c.choice.Setup = "lights.day", "two"
		if _, ok := shipped(t).Head(c.choice, log); ok {
			t.Errorf("%+v: no fault", c.choice)
			continue
		}
		d := log.All()[0]
		if d.Code != c.code || d.Message != c.message || d.Hint != c.hint {
			t.Errorf("\n got %s: %s | %s\nwant %s: %s | %s", d.Code, d.Message, d.Hint, c.code, c.message, c.hint)
		}
		if d.Path != "lights.day" || d.Setup != "two" {
			t.Errorf("path %q, set-up %q", d.Path, d.Setup)
		}
	}
}

// All faults of one light are reported at once.
func TestHeadTellsAllFaults(t *testing.T) {
	log := &source.Log{}
	shipped(t).Head(kit.Choice{
		Unit: "led-tube-60", Modifier: "snoot", White: &colour.White{Kelvin: 1500}, Gels: gels("none", "1/2 CTO", "other"),
	}, log)
	if len(log.All()) != 4 {
		t.Errorf("%d faults, want 4: %v", len(log.All()), log.All())
	}
}

// A tint that a unit cannot be set to is a warning: it may be what was measured.
func TestTintBeyondTheUnitWarns(t *testing.T) {
	log := &source.Log{}
	h, ok := shipped(t).Head(kit.Choice{Unit: "led-point-300-daylight", Tint: 0.004}, log)
	if all := log.All(); !ok || len(all) != 1 || all[0].Severity != source.Warning || all[0].Code != kit.CodeTintRange {
		t.Errorf("ok %v, log %v", ok, all)
	}
	within(t, "Duv", h.White.Duv, 0.004, 1e-12)
}

// The steps of a head lead from what the catalogue states to what the source is.
func TestStepsLeadToTheSource(t *testing.T) {
	h := head(t, kit.Choice{Unit: "led-point-600-daylight", Modifier: "softbox-90 + grid-40", Gels: gels("1/4 CTB", "1/8 plus green")})
	var flux, white, light float64
	for _, s := range h.Steps {
		switch {
		case s.Unit == "lm":
			flux = s.Out
		case s.Unit == "K":
			white = s.Out
		case strings.HasPrefix(s.What, "light after"):
			light = s.Out
		}
		if len(s.In) == 2 && s.Formula == "flux x efficiency" {
			within(t, s.What, s.In[0]*s.In[1], s.Out, 1e-9)
		}
	}
	within(t, "lm", flux, h.Source.Flux, 1e-9)
	within(t, "K", white, h.White.Kelvin, 1e-9)
	within(t, "light", light, h.Filter, 1e-12)
	if first := h.Steps[0]; !strings.HasPrefix(first.Source, "kit:led.yaml:") {
		t.Errorf("the first step comes from %q", first.Source)
	}
}

func TestDriveIsLinearInLevel(t *testing.T) {
	h := head(t, kit.Choice{Unit: "led-point-600-bicolour", White: &colour.White{Kelvin: 3200}, Gels: gels("ND .3")})
	full := h.RelativeOutput(1)
	within(t, "Y at full", full.Y(), h.Filter, 1e-12)
	for _, level := range []float64{0.01, 0.35, 0.8} {
		got := h.RelativeOutput(level)
		for i := range got {
			within(t, fmt.Sprint("output at ", level), got[i], level*full[i], 1e-12)
		}
	}
	if h.RelativeOutput(0) != (colour.RGB{}) || h.RelativeOutput(-1) != (colour.RGB{}) || h.RelativeOutput(math.NaN()) != (colour.RGB{}) {
		t.Error("a lamp that is off gives light")
	}
	if h.RelativeOutput(2) != full {
		t.Error("a level over full gives more than full")
	}
}

// A dimmed tungsten lamp warms as a filament does, from its own white, by the light that its level leaves it.
func TestTungstenWarms(t *testing.T) {
	h := head(t, kit.Choice{Unit: "fresnel-tungsten-650"})
	within(t, "K at 100 %", h.WhiteAt(1).Kelvin, 3200, 0)
	within(t, "K at 50 %", h.WhiteAt(0.5).Kelvin, colour.Dimmed(3200, 0.5), 1e-9)
	within(t, "K at 1 %", h.WhiteAt(0.01).Kelvin, 2016.3, 0.1)
	within(t, "Y at 50 %", h.RelativeOutput(0.5).Y(), 0.5, 1e-12)
	last := 3200.0
	for level := 0.95; level > 0; level -= 0.05 {
		kelvin, duv := colour.CCT(colour.XY(h.RelativeOutput(level)))
		if kelvin >= last || kelvin < 1000 || !(math.Abs(duv) <= 1e-5) {
			t.Errorf("%.0f K, Duv %g at %.0f %%, before it %.0f K", kelvin, duv, level*100, last)
		}
		last = kelvin
	}
	gelled := head(t, kit.Choice{Unit: "fresnel-tungsten-650", Gels: gels("full CTB")})
	want := colour.Mired(colour.Mired(colour.Dimmed(3200, 0.5)) - (colour.Mired(3200) - colour.Mired(5600)))
	within(t, "gelled, K at 50 %", gelled.WhiteAt(0.5).Kelvin, want, 1e-6)
	if led := head(t, kit.Choice{Unit: "led-point-150-daylight"}); led.WhiteAt(0.1) != led.White {
		t.Error("an LED lamp changes colour as it dims")
	}
}

func TestDriveOfAHandmadeHead(t *testing.T) {
	h := kit.Head{White: colour.White{Kelvin: 3200}, RGB: colour.White{Kelvin: 3200}.RGB(), Filter: 1, WarmsWhenDimmed: true}
	kelvin, _ := colour.CCT(colour.XY(h.RelativeOutput(0.5)))
	within(t, "K at 50 %", kelvin, colour.Dimmed(3200, 0.5), 0.5)
	h.Curve = []float64{0, 0.01, 1}
	within(t, "K at 50 %, where a curve leaves 1 % of the light", h.WhiteAt(0.5).Kelvin, 2016.3, 0.1)
	h = kit.Head{RGB: colour.RGB{1, 1, 1}, Filter: 1, Curve: []float64{0, 0.2, 1}}
	within(t, "curve at 25 %", h.RelativeOutput(0.25).Y(), 0.1, 1e-12)
	within(t, "curve at 75 %", h.RelativeOutput(0.75).Y(), 0.6, 1e-12)
	within(t, "curve at 100 %", h.RelativeOutput(1).Y(), 1, 1e-12)
}

func BenchmarkShipped(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := kit.Shipped(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHead(b *testing.B) {
	c := shipped(b)
	ch := kit.Choice{Unit: "led-point-600-daylight", Gels: gels("1/2 CTO")}
	b.ReportAllocs()
	for b.Loop() {
		c.Head(ch, &source.Log{})
	}
}

func BenchmarkDrive(b *testing.B) {
	h := head(b, kit.Choice{Unit: "fresnel-tungsten-650"})
	b.ReportAllocs()
	for b.Loop() {
		h.RelativeOutput(0.5)
	}
}

func ExampleCatalogue_Head() {
	c, err := kit.Shipped()
	if err != nil {
		fmt.Println(err)
		return
	}
	log := &source.Log{}
	h, _ := c.Head(kit.Choice{Unit: "discharge-1200", Gels: []kit.Gel{{Name: "1/2 CTO"}}}, log)
	fmt.Printf("%s: %.0f lx at 5 m, %.0f K\n", h.UnitLabel, h.Source.Peak()*h.Filter/25, h.White.Kelvin)

	c.Head(kit.Choice{Unit: "discharge-1200", Gels: []kit.Gel{{Name: "1/2 CTQ"}}}, log)
	fmt.Println(log.All()[0].Message + "; " + log.All()[0].Hint)
	// Output:
	// 1200 W discharge: 1022 lx at 5 m, 4073 K
	// there is no gel "1/2 CTQ" in the catalogue; did you mean "1/2 CTO"?
}
