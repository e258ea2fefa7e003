package draw

import (
	"math"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/symbols/ink"
)

// contrastOf is the contrast ratio of two colours (WCAG 2.1).
func contrastOf(a, b ink.Colour) float64 {
	channel := func(v uint8) float64 {
		c := float64(v) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	luminance := func(c ink.Colour) float64 {
		return 0.2126*channel(c.R) + 0.7152*channel(c.G) + 0.0722*channel(c.B) + 0.05
	}
	x, y := luminance(a), luminance(b)
	return math.Max(x, y) / math.Min(x, y)
}

// TestBeamsStandOutInTheirHue holds the lines of light of every usual colour, seen by every usual
// white, to 3 : 1 against every tint of the map, and to the hue of the light's own symbol.
func TestBeamsStandOutInTheirHue(t *testing.T) {
	for _, theme := range themes() {
		tints := append(theme.Ramp.Tints(8), theme.Paper)
		for _, kelvin := range []float64{2000, 2700, 3200, 4300, 5600, 6500, 10000} {
			for _, white := range []float64{3200, 4300, 5600} {
				rgb, seen := colour.White{Kelvin: kelvin}.RGB(), colour.White{Kelvin: white}.XY()
				line, lamp := theme.beam(rgb, seen), theme.lamp(rgb, seen)
				for _, tint := range tints {
					if got := contrastOf(line, tint); got < 3 {
						t.Errorf("%s: %g K under %g K has %.2f : 1 on %v", theme.Name, kelvin, white, got, tint)
					}
				}
				a, b := colour.Pixel(line).LCH(), colour.Pixel(lamp).LCH()
				if turn := math.Abs(math.Remainder(a.H-b.H, 360)); b.C > 8 && turn > 12 {
					t.Errorf("%s: %g K under %g K turns by %.0f°", theme.Name, kelvin, white, turn)
				}
			}
		}
	}
}

// TestLetteringReadsInEveryLook holds lettering to 4.5 : 1 (WCAG 2.1, 1.4.3): what is lettered on the
// tints of the map against every tint, the second rank, which has a rim where the map is dark, against
// the paper. Walls are told from every tint and do not outshine the lettering.
func TestLetteringReadsInEveryLook(t *testing.T) {
	for _, theme := range themes() {
		for _, tint := range theme.Ramp.Tints(8) {
			if got := contrastOf(theme.Ink, tint); got < 4.5 {
				t.Errorf("%s: lettering has %.2f : 1 on %v", theme.Name, got, tint)
			}
			if got := contrastOf(theme.Wall, tint); got < 1.25 {
				t.Errorf("%s: walls have %.2f : 1 on %v", theme.Name, got, tint)
			}
		}
		for name, c := range map[string]ink.Colour{"second rank": theme.Quiet, "alarm": theme.Alarm} {
			if got := contrastOf(c, theme.Paper); got < 4.5 {
				t.Errorf("%s: the %s has %.2f : 1", theme.Name, name, got)
			}
		}
		if theme.rim() != nil && contrastOf(theme.Wall, theme.Paper) > contrastOf(theme.Quiet, theme.Paper)/2 {
			t.Errorf("%s: the walls shout", theme.Name)
		}
	}
}
