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

// bandTints are the tints of the bands of a look that have one of their own.
func bandTints(t *Theme) (tints []ink.Colour) {
	for stop := -4.5; stop <= 4.5; stop++ {
		tints = append(tints, t.Ramp.At(stop))
	}
	return tints
}

// TestBeamsStandOutInTheirHue holds the lines of light of every usual colour, seen by every usual white, to 3 : 1
// (WCAG 2.1, 1.4.11): on paper, and against the band beside them, or where there is none against every tint of the map.
// They have the hue of the light's own symbol.
func TestBeamsStandOutInTheirHue(t *testing.T) {
	for _, theme := range themes() {
		for _, kelvin := range []float64{2000, 2700, 3200, 4300, 5600, 6500, 10000} {
			for _, white := range []float64{3200, 4300, 5600} {
				rgb, seen := colour.White{Kelvin: kelvin}.RGB(), colour.White{Kelvin: white}.XY()
				line, lamp := theme.beam(rgb, seen), theme.lamp(rgb, seen)
				against := append(bandTints(&theme), theme.Paper)
				if theme.Glow > 0 {
					against = []ink.Colour{theme.band(rgb, seen), theme.Paper}
				}
				for _, ground := range against {
					if got := contrastOf(line, ground); got < 3 {
						t.Errorf("%s: %g K under %g K has %.2f : 1 on %v", theme.Name, kelvin, white, got, ground)
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

// TestContoursHaveAnInkOfTheirOwn that no beam of a usual light uses, and that shows on every tint.
func TestContoursHaveAnInkOfTheirOwn(t *testing.T) {
	day := themes()[0]
	apart := func(a, b ink.Colour) float64 { // CIE 1976
		p, q := colour.Pixel(a).LCH(), colour.Pixel(b).LCH()
		turn := (p.H - q.H) * math.Pi / 180
		return math.Sqrt((p.L-q.L)*(p.L-q.L) + p.C*p.C + q.C*q.C - 2*p.C*q.C*math.Cos(turn))
	}
	for kelvin := 1800.0; kelvin <= 20000; kelvin *= 1.1 {
		for _, white := range []float64{2700, 3200, 4300, 5600, 6500} {
			for _, duv := range []float64{-0.02, 0, 0.02} {
				line := day.beam(colour.White{Kelvin: kelvin, Duv: duv}.RGB(), colour.White{Kelvin: white}.XY())
				if got := apart(line, day.Contour); got < 20 {
					t.Errorf("a beam of %.0f K, Duv %g, under %g K is %.0f from the ink of the contours", kelvin, duv, white, got)
				}
			}
		}
	}
	for _, tint := range bandTints(&day) {
		if got := contrastOf(day.Contour, tint); got < 3 {
			t.Errorf("contours have %.2f : 1 on %v", got, tint)
		}
	}
}

// TestLetteringReadsInEveryLook holds lettering to 4.5 : 1 (WCAG 2.1, 1.4.3): what is lettered on the tints of the map
// against every tint, or where a dark look gives it a rim against that; the second rank and what needs attention
// against the paper. The line about the walls shows on every tint and on their ground, and they do not outshine the
// lettering.
func TestLetteringReadsInEveryLook(t *testing.T) {
	for _, theme := range themes() {
		for _, tint := range bandTints(&theme) {
			if got := contrastOf(theme.Ink, tint); got < 4.5 && theme.rim() == nil {
				t.Errorf("%s: lettering has %.2f : 1 on %v", theme.Name, got, tint)
			}
			if got := contrastOf(theme.Ink, tint); got < 2.5 {
				t.Errorf("%s: the line about the walls has %.2f : 1 on %v", theme.Name, got, tint)
			}
		}
		for name, c := range map[string]ink.Colour{"lettering": theme.Ink, "second rank": theme.Quiet, "alarm": theme.Alarm} {
			if got := contrastOf(c, theme.Paper); got < 4.5 {
				t.Errorf("%s: the %s has %.2f : 1", theme.Name, name, got)
			}
		}
		if got := contrastOf(theme.Ink, theme.Wall); got < 3 {
			t.Errorf("%s: the line about the walls has %.2f : 1 on their ground", theme.Name, got)
		}
		if contrastOf(theme.Wall, theme.Paper) > contrastOf(theme.Quiet, theme.Paper)/1.5 {
			t.Errorf("%s: the walls shout", theme.Name)
		}
	}
}
