package ink

import (
	"image"
	"image/color"
)

// Picture returns the raster as an image of the standard library, or nil where its size and its
// bytes do not agree. One of no more than 256 colours has a palette, in the order they come, which
// makes its file a third as large.
func (m *Image) Picture() image.Image {
	if m.Width <= 0 || m.Height <= 0 || len(m.RGB) != 3*m.Width*m.Height {
		return nil
	}
	if p := m.paletted(); p != nil {
		return p
	}
	out := image.NewRGBA(image.Rect(0, 0, m.Width, m.Height))
	for i := range m.Width * m.Height {
		copy(out.Pix[4*i:], m.RGB[3*i:3*i+3])
		out.Pix[4*i+3] = 0xFF
	}
	return out
}

// paletted is the raster with a palette, nil where it has too many colours.
func (m *Image) paletted() image.Image {
	out := image.NewPaletted(image.Rect(0, 0, m.Width, m.Height), nil)
	number := map[Colour]uint8{}
	for i := range out.Pix {
		c := Colour{R: m.RGB[3*i], G: m.RGB[3*i+1], B: m.RGB[3*i+2]}
		n, known := number[c]
		if !known {
			if len(out.Palette) == 256 {
				return nil
			}
			n = uint8(len(out.Palette))
			number[c] = n
			out.Palette = append(out.Palette, color.RGBA{R: c.R, G: c.G, B: c.B, A: 0xFF})
		}
		out.Pix[i] = n
	}
	return out
}
