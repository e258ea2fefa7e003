package png

import (
	"encoding/binary"
	"image"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// filler fills polygons on a picture by the non-zero rule.
type filler struct {
	img   *image.RGBA
	cover *cover
	paper []r2.Vec // the picture with a margin
}

func newFiller(img *image.RGBA) *filler {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	return &filler{img: img, cover: newCover(w, h), paper: ink.Corners(r2.Vec{X: -1, Y: -1}, r2.Vec{X: float64(w) + 1, Y: float64(h) + 1})}
}

// add adds a polygon, in pixels, to what is painted next, without what lies beyond the picture.
func (f *filler) add(polygon []r2.Vec) {
	for _, p := range polygon {
		if p.X < f.paper[0].X || p.Y < f.paper[0].Y || p.X > f.paper[2].X || p.Y > f.paper[2].Y {
			polygon = ink.ClipPolygon(polygon, f.paper)
			break
		}
	}
	f.cover.polygon(polygon)
}

// paint fills what was added with a colour.
func (f *filler) paint(c ink.Colour) {
	f.cover.spans(func(y, from, to int, share float64) {
		row := f.img.Pix[f.img.PixOffset(from, y):f.img.PixOffset(to, y)]
		if alpha := byte(share*255 + 0.5); alpha < 255 {
			for ; len(row) > 0; row = row[4:] {
				mix(row, c, alpha)
			}
			return
		}
		word := uint32(c.R) | uint32(c.G)<<8 | uint32(c.B)<<16 | 0xFF<<24
		for ; len(row) >= 4; row = row[4:] {
			binary.LittleEndian.PutUint32(row, word)
		}
	})
}

// paintFrom fills what was added with the pixels of a picture that lies at the same place.
func (f *filler) paintFrom(from *image.RGBA) {
	f.cover.spans(func(y, x0, x1 int, share float64) {
		for x := x0; x < x1; x++ {
			p := from.RGBAAt(x, y)
			mix(f.img.Pix[f.img.PixOffset(x, y):], ink.Colour{R: p.R, G: p.G, B: p.B}, byte(share*255+0.5))
		}
	})
}

// mix lays a colour over a pixel by an alpha of 255.
func mix(pixel []byte, c ink.Colour, alpha byte) {
	pixel[0] = blendOver(pixel[0], c.R, alpha)
	pixel[1] = blendOver(pixel[1], c.G, alpha)
	pixel[2] = blendOver(pixel[2], c.B, alpha)
}

func blendOver(under, top, alpha byte) byte {
	a := uint32(alpha)
	return byte((uint32(under)*(255-a) + uint32(top)*a + 127) / 255)
}
