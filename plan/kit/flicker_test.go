package kit

import (
	"math"
	"testing"

	"scrimshaw/plan/lens"
	"scrimshaw/plan/term"
)

// The power that a phase dimmer lets through is summed over a half cycle, and its wave at twice the mains by its mean is what the
// ripple of a filament grows by; nothing is cut at full, and the last flick has a wave of twice its mean.
func TestWaveOfCutMains(t *testing.T) {
	for _, from := range []float64{0, 0.5, 1, 1.8, 2.5, 3, 3.1} {
		const n = 200000
		mean, cos, sin := 0.0, 0.0, 0.0
		for i := range n {
			if x := math.Pi * (float64(i) + 0.5) / n; x > from {
				p := math.Pow(math.Sin(x), 2)
				mean, cos, sin = mean+p, cos+p*math.Cos(2*x), sin+p*math.Sin(2*x)
			}
		}
		if got, want := cutWave(from), 2*math.Hypot(cos, sin)/mean; !(math.Abs(got-want) <= 1e-3) {
			t.Errorf("from %g on the wave is %.4f, and summed %.4f", from, got, want)
		}
	}
	if full, last := cutWave(0), cutWave(math.Pi); !(math.Abs(full-1) <= 1e-12) || last != 2 {
		t.Errorf("of the whole %g, of nothing %g", full, last)
	}
	if a, b, c := phaseRipple(1), phaseRipple(0.5), phaseRipple(0.01); !(math.Abs(a-1) <= 1e-9) || b <= a || c <= b || c > 2 {
		t.Errorf("at full %g, at half %g, at a hundredth %g", a, b, c)
	}
}

// What dims a lamp decides how it pulses: nothing makes what an electronic supply sends on go up and down but what switches it.
func TestRippleByDimmer(t *testing.T) {
	filament, led, steady := Head{Technology: term.Tungsten, Flicker: 0.1}, Head{Technology: term.LED, Flicker: 0.2}, Head{Technology: term.LED}
	for _, c := range []struct {
		name  string
		head  *Head
		mains float64
		level float64
		by    Dimming
		want  lens.Ripple
	}{
		{"a filament on mains", &filament, 50, 1, Dimming{}, lens.Ripple{Hertz: 100, Depth: 0.1}},
		{"one on a battery", &filament, 0, 1, Dimming{}, lens.Ripple{Depth: 0.1}},
		{"one behind a phase dimmer", &filament, 60, 0.5, Dimming{Kind: term.PhaseDimmer}, lens.Ripple{Hertz: 120, Depth: 0.1 * phaseRipple(0.5)}},
		{"one at full behind it", &filament, 60, 1, Dimming{Kind: term.PhaseDimmer}, lens.Ripple{Hertz: 120, Depth: 0.1}},
		{"one behind pulses", &filament, 50, 0.5, Dimming{Kind: term.PulseDimmer, Hertz: 1000}, lens.Ripple{Hertz: 1000, Depth: 0.01}},
		{"one on a transformer", &filament, 50, 0.5, Dimming{Kind: term.TransformerDimmer}, lens.Ripple{Hertz: 100, Depth: 0.1}},
		{"a bulb behind a phase dimmer", &led, 50, 0.3, Dimming{Kind: term.PhaseDimmer}, lens.Ripple{Hertz: 100, Duty: 0.3}},
		{"a steady head that is switched", &steady, 50, 0.3, Dimming{Kind: term.PulseDimmer, Hertz: 400}, lens.Ripple{Hertz: 400, Duty: 0.3}},
		{"one at full", &steady, 50, 1, Dimming{Kind: term.PulseDimmer, Hertz: 400}, lens.Ripple{Hertz: 100}},
		{"one whose current is less", &led, 50, 0.3, Dimming{Kind: term.CurrentDimmer}, lens.Ripple{}},
		{"a bulb without a dimmer", &led, 50, 0.3, Dimming{Kind: term.NoDimmer}, lens.Ripple{Hertz: 100, Depth: 0.2}},
	} {
		got := c.head.Ripple(c.mains, c.level, c.by)
		if got.Hertz != c.want.Hertz || !(math.Abs(got.Depth-c.want.Depth) <= 1e-12) || got.Duty != c.want.Duty {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// A bulb of fewer watts than its kind ripples more: 13 % at 40 W and 7 % at 100 W, as the catalogue has them.
func TestFlickerOfSmallBulbs(t *testing.T) {
	shipped, err := Shipped()
	if err != nil {
		t.Fatal(err)
	}
	for name, watts := range map[string]float64{"tungsten-40": 100, "tungsten-100": 40} {
		b := *shipped.Bulb(name)
		(&BulbChoice{Watts: watts}).alter(&b)
		if want := shipped.Bulb(map[float64]string{40: "tungsten-40", 100: "tungsten-100"}[watts]).Flicker; !(math.Abs(b.Flicker-want) <= 0.005) {
			t.Errorf("%s at %g W ripples %.3f deep, want %.3f", name, watts, b.Flicker, want)
		}
	}
}
