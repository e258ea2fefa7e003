package sheet

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

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

// TestBeamsAreNumbered looks beside the beams of every sample for the number of their light.
func TestBeamsAreNumbered(t *testing.T) {
	eachSample(t, Options{}, func(t *testing.T, in Input, s *sheet) {
		for i := range in.Beams {
			l := s.d.light(in.Beams[i].Light)
			drawn, numbered := false, false
			for j := range s.pages[0].Items {
				it := &s.pages[0].Items[j]
				if it.Layer != ink.Beams || it.Object != "light:"+l.Name {
					continue
				}
				drawn = drawn || it.Path != nil
				numbered = numbered || it.Text != nil && it.Text.S == l.Tag
			}
			if drawn && !numbered {
				t.Errorf("%s: nothing says whose the beam of %s is", s.pages[0].Title, l.Tag)
			}
		}
	})
}

// TestRimsSayWhereLightLands: of a footprint that a wall and a leaf cut, what runs along them is not
// drawn, nor the steps from a table to the floor.
func TestRimsSayWhereLightLands(t *testing.T) {
	in := example()
	c := newSheet(in, Options{Font: family(t)}, &faults{}).d
	at := r2.Vec{X: 2.7, Y: 2.9}
	hinge, tip, ok := leafOf(&in.Setup.Openings[1])
	if !ok {
		t.Fatal("the door has no leaf")
	}
	for _, k := range []struct {
		name string
		line []r2.Vec
		rim  bool
		want int
	}{
		{"along a wall", []r2.Vec{{X: 0.3, Y: 3.59}, {X: 1.8, Y: 3.6}}, false, 0},
		{"along the far face of a wall", []r2.Vec{{X: 0.3, Y: 3.79}, {X: 1.8, Y: 3.8}}, false, 0},
		{"along a dresser", []r2.Vec{{X: 1.3, Y: 0.51}, {X: 2.5, Y: 0.5}}, false, 0},
		{"along a leaf", []r2.Vec{mix(hinge, tip, 0.1), mix(hinge, tip, 0.9)}, false, 0},
		{"across a room", []r2.Vec{{X: 0, Y: 1}, {X: 4.2, Y: 2}}, false, 1},
		{"over the edge of a table", []r2.Vec{{X: 2.7, Y: 2.3}, {X: 2.7, Y: 1.5}}, true, 0},
		{"a side, which runs that way", []r2.Vec{{X: 2.7, Y: 2.3}, {X: 2.7, Y: 1.5}}, false, 1},
		{"round the lamp", []r2.Vec{{X: 2.4, Y: 2.0}, {X: 2.7, Y: 1.9}, {X: 3.0, Y: 2.0}}, true, 1},
		{"round the lamp, with a step between", []r2.Vec{{X: 2.4, Y: 2.2}, {X: 2.7, Y: 2.1}, {X: 2.72, Y: 1.4}, {X: 3.0, Y: 1.5}}, true, 2},
	} {
		if got := c.telling(at, k.line, k.rim); len(got) != k.want {
			t.Errorf("%s: %v, want %d lines", k.name, got, k.want)
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
