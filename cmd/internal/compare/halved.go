package compare

import (
	"image"
	"image/color"
)

// Halved is a picture of half as many pixels each way, an odd last row or column left out: each is the mean of four, as smoothing at edges mixes
// them, in the picture's own values. A renderer that sets letters to a part of a pixel sets them nearer to their place in a picture drawn for it.
func Halved(m image.Image) image.Image {
	from := m.Bounds()
	out := image.NewRGBA64(image.Rect(0, 0, from.Dx()/2, from.Dy()/2))
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			out.SetRGBA64(x, y, meanOfFour(m, from.Min.X+2*x, from.Min.Y+2*y))
		}
	}
	return out
}

// meanOfFour is the mean of a pixel and of those right of it, below it, and below that.
func meanOfFour(m image.Image, x, y int) color.RGBA64 {
	var sum [4]uint32
	for _, p := range [...]image.Point{{x, y}, {x + 1, y}, {x, y + 1}, {x + 1, y + 1}} {
		r, g, b, a := m.At(p.X, p.Y).RGBA()
		sum[0], sum[1], sum[2], sum[3] = sum[0]+r, sum[1]+g, sum[2]+b, sum[3]+a
	}
	return color.RGBA64{R: uint16(sum[0] / 4), G: uint16(sum[1] / 4), B: uint16(sum[2] / 4), A: uint16(sum[3] / 4)}
}
