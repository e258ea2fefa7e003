package ink

import "image"

// Picture returns the raster as an image of the standard library, or nil where its size and its
// bytes do not agree.
func (m *Image) Picture() image.Image {
	if m.Width <= 0 || m.Height <= 0 || len(m.RGB) != 3*m.Width*m.Height {
		return nil
	}
	out := image.NewRGBA(image.Rect(0, 0, m.Width, m.Height))
	for i := range m.Width * m.Height {
		copy(out.Pix[4*i:], m.RGB[3*i:3*i+3])
		out.Pix[4*i+3] = 0xFF
	}
	return out
}
