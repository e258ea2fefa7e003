// Package png draws a page of ink as pixels and writes them as PNG that knows its resolution, so
// that it prints at the scale of the drawing.
//
// Everything is turned into polygons in pixels, lines with their dashes, caps and joins and letters
// by their outlines, and filled with the exact cover of each pixel: nothing is drawn small and
// enlarged, and no clip needs a mask.
package png

import (
	"fmt"
	"image"
	"io"
	"math"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// Options say how a page is drawn. The zero value is ready to use.
type Options struct {
	Font *font.Family // that the page was laid out with; nil: the default
	// DPI is the number of pixels to the inch; 0 is DefaultDPI, unless Width is given.
	DPI float64
	// Width of the picture in pixels; it wins over DPI. 0 leaves it to DPI.
	Width int
}

// DefaultDPI is enough for a screen and for a print at arm's length.
const DefaultDPI = 150

// maxPixels is the most pixels of a picture: A1 at 400 to the inch. It keeps a slip in the resolution
// from taking all memory.
const maxPixels = 125e6

// Write writes one page of a document, counted from 0.
func Write(w io.Writer, doc ink.Document, page int, opts Options) error {
	if page < 0 || page >= len(doc.Pages) {
		return fmt.Errorf("png: no page %d in a document of %d", page+1, len(doc.Pages))
	}
	p := &doc.Pages[page]
	scale, _, _, err := opts.size(p)
	if err != nil {
		return err
	}
	img, err := Draw(p, opts)
	if err != nil {
		return err
	}
	return Encode(w, img, scale)
}

// Draw draws a page on white paper.
func Draw(p *ink.Page, opts Options) (*image.RGBA, error) {
	scale, width, height, err := opts.size(p)
	if err != nil {
		return nil, err
	}
	if opts.Font == nil {
		if opts.Font, err = font.Default(); err != nil {
			return nil, fmt.Errorf("png: %w", err)
		}
	}
	c := newCanvas(p, opts.Font, scale, width, height)
	for it := range ink.Marks(p.Strata()) {
		c.item(it)
	}
	return c.img, nil
}

// Size returns the width and height, pixels, of the picture that Draw makes.
func Size(p *ink.Page, opts Options) (width, height int, err error) {
	_, width, height, err = opts.size(p)
	return width, height, err
}

// size returns pixels to the millimetre, and the picture's width and height in pixels.
func (o Options) size(p *ink.Page) (scale float64, width, height int, err error) {
	if !(p.Width > 0 && p.Height > 0) || math.IsInf(p.Width+p.Height, 0) {
		return 0, 0, 0, fmt.Errorf("png: a page of %v by %v mm", p.Width, p.Height)
	}
	if o.Width < 0 || o.DPI < 0 || math.IsNaN(o.DPI) {
		return 0, 0, 0, fmt.Errorf("png: neither %v pixels to the inch nor a width of %d pixels is possible", o.DPI, o.Width)
	}
	switch {
	case o.Width > 0:
		scale = float64(o.Width) / p.Width
	case o.DPI > 0:
		scale = o.DPI / ink.Inch
	default:
		scale = DefaultDPI / ink.Inch
	}
	w, h := max(1, math.Round(p.Width*scale)), max(1, math.Round(p.Height*scale))
	if w*h > maxPixels {
		return 0, 0, 0, fmt.Errorf("png: %.0f by %.0f pixels are too many: ask for fewer to the inch", w, h)
	}
	return scale, int(w), int(h), nil
}
