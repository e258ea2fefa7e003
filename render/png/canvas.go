package png

import (
	"image"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// flatness is how far chords may leave a curve, pixels.
const flatness = 0.03

// canvas is a picture being drawn.
type canvas struct {
	page   *ink.Page
	font   *font.Family
	scale  float64 // pixels to the millimetre
	img    *image.RGBA
	filler *filler
	clip   []r2.Vec // of the mark at hand, pixels; nil for none
}

func newCanvas(p *ink.Page, family *font.Family, scale float64, width, height int) *canvas {
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	whiten(img.Pix)
	return &canvas{page: p, font: family, scale: scale, img: img, filler: newFiller(img)}
}

// whiten sets all bytes to 255, by copies that double.
func whiten(pix []byte) {
	pix[0] = 0xFF
	for done := 1; done < len(pix); done *= 2 {
		copy(pix[done:], pix[:done])
	}
}

// place returns a place of the page in pixels, y down.
func (c *canvas) place(p r2.Vec) r2.Vec {
	return r2.Vec{X: p.X * c.scale, Y: (c.page.Height - p.Y) * c.scale}
}

func (c *canvas) places(points []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = c.place(p)
	}
	return out
}

func (c *canvas) item(it *ink.Item) {
	c.clip = nil
	if it.Clip > 0 {
		c.clip = c.places(c.page.Clips[it.Clip-1])
	}
	switch {
	case it.Text != nil:
		c.lettering(it.Text)
	case it.Image != nil:
		c.image(it.Image)
	default:
		c.draw(it.Path, it.Stroke, it.Fill)
	}
}

// lettering draws text as the outlines of its letters, over its halo.
func (c *canvas) lettering(t *ink.Text) {
	outline := c.font.Outline(t)
	if t.Halo != nil {
		c.draw(outline, &ink.Stroke{Colour: *t.Halo, Width: t.Size * ink.HaloWidth, Round: true}, t.Halo)
	}
	c.draw(outline, nil, &t.Colour)
}

// draw fills a path, strokes it, or both.
func (c *canvas) draw(path ink.Path, s *ink.Stroke, fill *ink.Colour) {
	runs := path.Flatten(flatness / c.scale)
	for i := range runs {
		runs[i].Points = c.places(runs[i].Points)
	}
	if fill != nil {
		for _, run := range runs {
			c.add(run.Points)
		}
		c.filler.paint(*fill)
	}
	if s == nil {
		return
	}
	pen := newPen(s, c.scale, c.filler.paper, c.add)
	for _, run := range runs {
		pen.stroke(run)
	}
	c.filler.paint(s.Colour)
}

// add adds a polygon, in pixels, to what is painted next.
func (c *canvas) add(polygon []r2.Vec) {
	if c.clip != nil {
		polygon = ink.ClipPolygon(polygon, c.clip)
	}
	c.filler.add(polygon)
}
