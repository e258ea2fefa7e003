package compare

import (
	"image"
	"image/color"
	"image/draw"
	"testing"
)

// Each pixel of a halved picture is the mean of four, wherever the picture begins; an odd last row and column are left out.
func TestHalved(t *testing.T) {
	m := page(image.Rect(11, 10, 31, 30)).SubImage(image.Rect(1, 0, 100, 41))
	got := Halved(m)
	if got.Bounds() != image.Rect(0, 0, 49, 20) {
		t.Fatalf("bounds %v", got.Bounds())
	}
	for at, want := range map[image.Point]uint8{{4, 6}: 255, {5, 6}: 0, {14, 6}: 0, {15, 6}: 255, {5, 4}: 255, {5, 5}: 0, {5, 14}: 0, {5, 15}: 255} {
		if g := color.GrayModel.Convert(got.At(at.X, at.Y)).(color.Gray).Y; g != want {
			t.Errorf("%v is %d, want %d", at, g, want)
		}
	}
	odd := page(image.Rect(11, 11, 31, 31))
	draw.Draw(odd, image.Rect(50, 50, 51, 52), image.Black, image.Point{}, draw.Src)
	halved := Halved(odd)
	for at, want := range map[image.Point]uint8{{5, 5}: 191, {5, 7}: 127, {7, 7}: 0, {25, 25}: 127} {
		if g := color.GrayModel.Convert(halved.At(at.X, at.Y)).(color.Gray).Y; g != want {
			t.Errorf("odd: %v is %d, want %d", at, g, want)
		}
	}
}
