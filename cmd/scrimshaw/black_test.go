package main

import (
	"image"
	"testing"

	"scrimshaw/plan/colour"
	"scrimshaw/samples"
)

// mostBlack is the share of a page that black may cover: it is for what the crew carries and for lettering, and the
// map of light is read before both.
const mostBlack = 0.055

// TestBlackIsForWhatTheCrewCarries measures the black of every sample's first page.
func TestBlackIsForWhatTheCrewCarries(t *testing.T) {
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			share := blackOf(decoded(t, drawnSample(t, name).pages[0]+".png"))
			t.Logf("%.2f %%", 100*share)
			if share > mostBlack || share == 0 {
				t.Errorf("black covers %.2f %%, want at most %.1f", 100*share, 100*mostBlack)
			}
		})
	}
}

// blackOf is the share of a picture's pixels that are darker than any tint or grey of the map.
func blackOf(m image.Image) float64 {
	const dark = 40 // CIELAB lightness
	b := m.Bounds()
	n := 0
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			r, g, bl, _ := m.At(x, y).RGBA()
			if (colour.Pixel{R: uint8(r >> 8), G: uint8(g >> 8), B: uint8(bl >> 8)}).LCH().L < dark {
				n++
			}
		}
	}
	return float64(n) / float64(b.Dx()*b.Dy())
}
