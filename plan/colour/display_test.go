package colour_test

import (
	"math"
	"testing"

	"scrimshaw/plan/colour"
)

// A light of the camera's own white is drawn without colour.
func TestDisplayOfTheCamerasWhiteIsGrey(t *testing.T) {
	for _, w := range []colour.White{{Kelvin: 3200}, {Kelvin: 4300, Duv: 0.002}, {Kelvin: 5600, Daylight: true}} {
		p := colour.Display(w.RGB(), w.XY(), 70)
		if p.R != p.G || p.G != p.B {
			t.Errorf("%+v under itself is %+v", w, p)
		}
		within(t, "lightness", p.LCH().L, 70, 0.3)
	}
}

func TestDisplayTellsWarmFromCool(t *testing.T) {
	camera := colour.White{Kelvin: 4300}.XY()
	warm := colour.Display(colour.White{Kelvin: 2700}.RGB(), camera, 60)
	cool := colour.Display(colour.White{Kelvin: 7000}.RGB(), camera, 60)
	if !(warm.R > warm.G && warm.G > warm.B) {
		t.Errorf("2700 K under 4300 K is %+v, want red over green over blue", warm)
	}
	if !(cool.B > cool.G && cool.G > cool.R) {
		t.Errorf("7000 K under 4300 K is %+v, want blue over green over red", cool)
	}
	if dark := colour.Display(colour.RGB{}, camera, 50); dark.R != dark.G || dark.G != dark.B {
		t.Errorf("no light is drawn grey, not %+v", dark)
	}
}

// Any colour asked for comes out at its lightness and hue, with no more chroma than sRGB has.
func TestLCHStaysInGamut(t *testing.T) {
	for hue := 0.0; hue < 360; hue += 15 {
		for lightness := 20.0; lightness <= 95; lightness += 5 {
			got := colour.LCH{L: lightness, C: 150, H: hue}.Pixel().LCH()
			within(t, "lightness", got.L, lightness, 0.5)
			off := math.Abs(math.Remainder(got.H-hue, 360)) * math.Pi / 180 * got.C
			if off > 1.2 { // one step of 8 bits
				t.Errorf("hue %g at L %g comes out at %g", hue, lightness, got.H)
			}
		}
	}
}

// Reference values of IEC 61966-2-1 and CIELAB: the primaries and mid grey.
func TestPixelLCH(t *testing.T) {
	for _, c := range []struct {
		p    colour.Pixel
		want colour.LCH
	}{ // common knowledge, printed by many converters; from memory
		{colour.Pixel{R: 255, G: 255, B: 255}, colour.LCH{L: 100}},
		{colour.Pixel{R: 119, G: 119, B: 119}, colour.LCH{L: 50.03}},
		{colour.Pixel{R: 255}, colour.LCH{L: 53.24, C: 104.55, H: 40}},
		{colour.Pixel{B: 255}, colour.LCH{L: 32.30, C: 133.81, H: 306.29}},
	} {
		got := c.p.LCH()
		within(t, "L", got.L, c.want.L, 0.02)
		within(t, "C", got.C, c.want.C, 0.05)
		if c.want.C > 0 {
			within(t, "H", got.H, c.want.H, 0.05)
		}
		if back := got.Pixel(); back != c.p {
			t.Errorf("%+v comes back as %+v", c.p, back)
		}
	}
}

func TestFromPixelIsAbsolute(t *testing.T) {
	xy := colour.XY(colour.FromPixel(colour.Pixel{R: 255, G: 255, B: 255}))
	within(t, "x of screen white", xy[0], 0.3127, 1e-9)
	within(t, "y of screen white", xy[1], 0.3290, 1e-9)
}

// A colour that a screen cannot show keeps its lightness and its hue, and as much chroma as the screen has: one channel is
// full, or off.
func TestChromaIsReducedToWhatAScreenShows(t *testing.T) {
	for _, c := range []colour.LCH{{L: 50, C: 200, H: 30}, {L: 80, C: 150, H: 100}, {L: 30, C: 120, H: 290}, {L: 60, C: 90, H: 200}} {
		got := c.Pixel()
		seen := got.LCH()
		least, most := min(got.R, got.G, got.B), max(got.R, got.G, got.B)
		if least > 1 && most < 254 {
			t.Errorf("%+v is shown as %v, which could be more colourful", c, got)
		}
		if turn := math.Abs(math.Remainder(seen.H-c.H, 360)); turn > 1.5 || !(math.Abs(seen.L-c.L) <= 0.6) {
			t.Errorf("%+v is shown as %+v: another hue or lightness", c, seen)
		}
		if seen.C < 20 || seen.C >= c.C {
			t.Errorf("%+v is shown with a chroma of %g", c, seen.C)
		}
	}
}

// Under a lightness of 8 light is L/903.3 of the white's (ISO/CIE 11664-4), and no longer a cube.
func TestDarkGreys(t *testing.T) {
	for lightness, code := range map[float64]uint8{0: 0, 1: 4, 2: 7, 5: 17, 7: 21} {
		if got := (colour.LCH{L: lightness}).Pixel(); got != (colour.Pixel{R: code, G: code, B: code}) {
			t.Errorf("a grey of lightness %g is %v, want %d", lightness, got, code)
		}
	}
}

// Drawn darker a colour is less chromatic by as much, so that it keeps its saturation.
func TestDisplayKeepsSaturation(t *testing.T) {
	camera := colour.White{Kelvin: 5600, Daylight: true}.XY()
	warm := colour.White{Kelvin: 4800}.RGB()
	light := colour.Display(warm, camera, 80).LCH()
	for _, lightness := range []float64{60, 40, 20} {
		dark := colour.Display(warm, camera, lightness).LCH()
		within(t, "chroma by lightness", dark.C/dark.L, light.C/light.L, 0.06*light.C/light.L)
	}
	if light.C < 5 || light.C > 30 {
		t.Errorf("a chroma of %g tells nothing", light.C)
	}
}

// The locus of daylight has one formula up to 7000 K and another beyond: CIE 15, both written out here.
func TestDaylightAt7000K(t *testing.T) {
	const k = 7000.0
	x := -4.6070e9/(k*k*k) + 2.9678e6/(k*k) + 0.09911e3/k + 0.244063
	within(t, "x", colour.Daylight(k)[0], x, 1e-12)
	const above = 7000.001
	x = -2.0064e9/(above*above*above) + 1.9018e6/(above*above) + 0.24748e3/above + 0.237040
	within(t, "x beyond", colour.Daylight(above)[0], x, 1e-12)
}
