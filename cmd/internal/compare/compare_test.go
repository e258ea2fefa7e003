package compare

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"testing"
)

// page is a white picture with a black box in it.
func page(box image.Rectangle) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, 100, 100))
	draw.Draw(m, m.Rect, image.White, image.Point{}, draw.Src)
	draw.Draw(m, box, image.Black, image.Point{}, draw.Src)
	return m
}

func TestImages(t *testing.T) {
	grey := page(image.Rectangle{})
	draw.Draw(grey, grey.Rect, image.NewUniform(color.Gray{188}), image.Point{}, draw.Src) // half the light
	base := page(image.Rect(10, 10, 30, 30))
	for name, c := range map[string]struct {
		a, b image.Image
		want Difference
	}{
		"the same":            {base, page(image.Rect(10, 10, 30, 30)), Difference{}},
		"half the light":      {page(image.Rectangle{}), grey, Difference{0.4971, 1, 1}},
		"a pixel aside":       {base, page(image.Rect(11, 10, 31, 30)), Difference{0.004, 0.004, 0}},
		"four pixels aside":   {base, page(image.Rect(14, 10, 34, 30)), Difference{0.016, 0.016, 0.0156}},
		"missing":             {base, page(image.Rectangle{}), Difference{0.04, 0.04, 0.04}},
		"beside the picture":  {base.SubImage(image.Rect(0, 0, 50, 50)), base.SubImage(image.Rect(50, 50, 100, 100)), Difference{0.16, 0.16, 0.16}},
		"nothing at all":      {image.NewRGBA(image.Rectangle{}), image.NewRGBA(image.Rectangle{}), Difference{}},
		"another kind of one": {base, paletted(base), Difference{}},
	} {
		got, err := Images(c.a, c.b)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if !(math.Abs(got.Mean-c.want.Mean) <= 1e-3) || !(math.Abs(got.Share-c.want.Share) <= 1e-6) || !(math.Abs(got.Apart-c.want.Apart) <= 1e-3) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	if _, err := Images(base, image.NewRGBA(image.Rect(0, 0, 5, 5))); err == nil {
		t.Error("pictures of two sizes are compared")
	}
}

func paletted(m image.Image) image.Image {
	out := image.NewPaletted(m.Bounds(), color.Palette{color.White, color.Black})
	draw.Draw(out, out.Rect, m, image.Point{}, draw.Src)
	return out
}
