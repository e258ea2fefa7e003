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

// near are the middles of the bands that have a tint of their own, stops from the working stop.
func near() (stops []float64) {
	for s := -lastTone; s <= lastTone; s++ {
		stops = append(stops, s)
	}
	return stops
}

// A stop is 5 to 6 of lightness by day, but for the brightest, which are close to paper, and at least 4 at night, to
// the rounding of 8 bits; and as even to any deficiency of colour vision.
func TestAStopIsAnEvenStepOfLightness(t *testing.T) {
	for _, c := range []struct {
		ramp            Ramp
		low, high, most float64
	}{{Day(), 4.9, 6, 2.5}, {Night(), 4, 5.5, lastTone}} {
		stops := near()
		for i := 1; i < len(stops); i++ {
			dark, light := c.ramp.At(stops[i-1]), c.ramp.At(stops[i])
			least, slack := c.low, 0.8
			if stops[i] > c.most {
				least = 3.3
			}
			if step := lightness(light) - lightness(dark); step < least || step > c.high {
				t.Errorf("%s: from %+g to %+g stops lightness rises by %.2f", c.ramp.Name, stops[i-1], stops[i], step)
			}
			for name, m := range deficiencies {
				if step := lightness(seen(light, m)) - lightness(seen(dark, m)); step < least-slack || step > c.high+slack {
					t.Errorf("%s: from %+g to %+g stops lightness rises by %.2f in %s", c.ramp.Name, stops[i-1], stops[i], step, name)
				}
			}
		}
	}
}

// The day warms with every stop of light: blue well under the working stop, yellow over it, and grey about it.
func TestCoolUnderAndWarmOverTheWorkingStop(t *testing.T) {
	yellow := func(stop float64) float64 {
		c := Day().At(stop)
		lch := colour.Pixel{R: c.R, G: c.G, B: c.B}.LCH()
		return lch.C * math.Sin(lch.H*math.Pi/180)
	}
	for stop := -lastTone; stop < 2.5; stop++ {
		if yellow(stop+1) <= yellow(stop) {
			t.Errorf("from %+g to %+g stops the tint turns cooler", stop, stop+1)
		}
	}
	if yellow(-1.5) > -2 || yellow(-0.5) > 5 || yellow(0.5) < 8 {
		t.Errorf("about the working stop the tints are %.1f, %.1f and %.1f to the yellow", yellow(-1.5), yellow(-0.5), yellow(0.5))
	}
}

func TestTintsDoNotBlindAtNight(t *testing.T) {
	for _, stop := range near() {
		if l := lightness(Night().At(stop)); l > 42 {
			t.Errorf("night: a tint of lightness %.0f blinds", l)
		}
	}
}

func TestBeyondTheEndsARampIsFlat(t *testing.T) {
	for _, r := range []Ramp{Day(), Night()} {
		if r.At(-30) != r.At(-lastTone) || r.At(30) != r.At(lastTone) || r.At(-lastTone) == r.At(-lastTone+1) {
			t.Errorf("%s: %v %v", r.Name, r.At(-30), r.At(30))
		}
	}
}

// A band has the tint of its stops, whatever other bands a map has.
func TestATintBelongsToItsStop(t *testing.T) {
	wide, narrow := StopLevels(100, 3, 900, 11), StopLevels(100, 30, 120, 11)
	all, some := Day().Bands(wide), Day().Bands(narrow)
	if len(all) != len(wide)+1 || len(some) != len(narrow)+1 {
		t.Fatalf("%d and %d tints", len(all), len(some))
	}
	for i, l := range narrow {
		if got, want := some[i+1], all[l.Stop-wide[0].Stop+1]; got != want || got != Day().At(float64(l.Stop)+0.5) {
			t.Errorf("over %+d stops the tint is %v on one map and %v on another", l.Stop, got, want)
		}
	}
	if some[0] != Day().At(float64(narrow[0].Stop)-0.5) {
		t.Errorf("under %+d stops the tint is %v", narrow[0].Stop, some[0])
	}
	if got := Day().Bands(nil); len(got) != 1 || got[0] != Day().At(0) {
		t.Errorf("without levels: %v", got)
	}
}

func TestALookForACopierHasNoTints(t *testing.T) {
	for _, stop := range near() {
		if got := Ink().At(stop); got != (ink.Colour{R: 255, G: 255, B: 255}) {
			t.Errorf("%+g stops are %v, want paper", stop, got)
		}
	}
}
