package carto

import (
	"math"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/symbols/ink"
)

func lightness(c ink.Colour) float64 { return colour.Pixel{R: c.R, G: c.G, B: c.B}.LCH().L }

// deficiencies are what full dichromats see, in linear sRGB: Machado, Oliveira & Fernandes 2009,
// "A physiologically-based model for simulation of color vision deficiency", IEEE TVCG 15(6),
// p. 1291, severity 1.0 (from memory).
var deficiencies = map[string][3][3]float64{
	"protanopia":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"deuteranopia": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"tritanopia":   {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
	"grey print":   {{0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}, {0.2126, 0.7152, 0.0722}},
}

// seen returns a colour as it looks with a deficiency.
func seen(c ink.Colour, m [3][3]float64) ink.Colour {
	decode := func(v uint8) float64 { // IEC 61966-2-1
		if x := float64(v) / 255; x > 0.04045 {
			return math.Pow((x+0.055)/1.055, 2.4)
		}
		return float64(v) / 255 / 12.92
	}
	encode := func(x float64) uint8 {
		x = min(max(x, 0), 1)
		if x <= 0.0031308 {
			return uint8(math.Round(255 * 12.92 * x))
		}
		return uint8(math.Round(255 * (1.055*math.Pow(x, 1/2.4) - 0.055)))
	}
	v := [3]float64{decode(c.R), decode(c.G), decode(c.B)}
	var out [3]uint8
	for i, row := range m {
		out[i] = encode(row[0]*v[0] + row[1]*v[1] + row[2]*v[2])
	}
	return ink.Colour{R: out[0], G: out[1], B: out[2]}
}

func TestTintsAreEvenAndToldApart(t *testing.T) {
	for _, r := range []Ramp{Day(), Ink(), Night()} {
		if r.MaxTints() < 11 {
			t.Errorf("%s holds %d tints, want 11 for ten lines", r.Name, r.MaxTints())
		}
		for n := 2; n <= r.MaxTints(); n++ {
			tints := r.Tints(n)
			low, high := math.Inf(1), 0.0
			for i := 1; i < n; i++ {
				step := lightness(tints[i]) - lightness(tints[i-1])
				low, high = min(low, step), max(high, step)
				for name, m := range deficiencies {
					if s := lightness(seen(tints[i], m)) - lightness(seen(tints[i-1], m)); s < 2 {
						t.Errorf("%s of %d: tints %d and %d are %.2f apart in %s, want 2", r.Name, n, i-1, i, s, name)
					}
				}
			}
			if low < 2 || high-low > 0.75 {
				t.Errorf("%s of %d: steps of lightness from %.2f to %.2f, want even ones of 2 or more", r.Name, n, low, high)
			}
		}
	}
}

func TestBlackReadsOnThePaperTints(t *testing.T) {
	for _, r := range []Ramp{Day(), Ink()} {
		for _, c := range r.Tints(r.MaxTints()) {
			if l := lightness(c); l < 70 {
				t.Errorf("%s: a tint of lightness %.0f is too dark to letter on", r.Name, l)
			}
		}
	}
	for _, c := range Night().Tints(12) {
		if l := lightness(c); l > 35 {
			t.Errorf("night: a tint of lightness %.0f blinds", l)
		}
	}
}

func TestTooManyBandsShareTheDarkestTint(t *testing.T) {
	r := Day()
	n := r.MaxTints() + 3
	tints := r.Tints(n)
	if len(tints) != n || tints[0] != tints[3] || tints[3] == tints[4] {
		t.Errorf("%v", tints)
	}
	if got := r.Tints(1); got[0] != r.At(1) {
		t.Errorf("one tint is %v, want the lightest", got)
	}
	if got := r.Tints(0); len(got) != 0 {
		t.Errorf("no bands, %d tints", len(got))
	}
}
