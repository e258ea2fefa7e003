package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"unicode/utf16"

	"codeberg.org/go-pdf/fpdf"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// The operators are those of ISO 32000-1, tables 57 to 61 and 103 to 109.

func (b *builder) item(it *ink.Item) {
	if it.Text != nil {
		b.weight(it.Text.Bold) // before q, so that it outlasts Q
	}
	if it.Clip > 0 {
		b.op("q")
		b.path(ink.Polygon(b.page().Clips[it.Clip-1]...))
		b.op("W n\n")
		defer b.op("Q\n")
	}
	switch {
	case it.Text != nil:
		b.mark(it, func() { b.lettering(it.Text) })
	case it.Image != nil:
		b.image(it.Image)
	default:
		b.draw(it.Path, it.Stroke, it.Fill)
	}
}

// page is the page at hand.
func (b *builder) page() *ink.Page { return &b.doc.Pages[b.file.PageNo()-1] }

// draw fills a path, strokes it, or both.
func (b *builder) draw(p []ink.Segment, s *ink.Stroke, fill *ink.Colour) {
	paint := "S\n"
	if fill != nil {
		b.colour(*fill, "rg")
		paint = "f\n"
	}
	if s != nil {
		b.stroke(s)
	}
	if s != nil && fill != nil {
		paint = "B\n"
	}
	b.path(p)
	b.op(paint)
}

func (b *builder) stroke(s *ink.Stroke) {
	b.colour(s.Colour, "RG").num(s.Width, 3).op("w [")
	for _, d := range s.Dash {
		b.num(d, 2)
	}
	b.op("] 0 d")
	if s.Round {
		b.op("1 J 1 j\n")
	} else {
		b.op("0 J 0 j\n")
	}
}

func (b *builder) path(p []ink.Segment) {
	for _, s := range p {
		switch s.Op {
		case ink.Move:
			b.point(s.P[0]).op("m")
		case ink.Line:
			b.point(s.P[0]).op("l")
		case ink.Curve:
			b.point(s.P[0]).point(s.P[1]).point(s.P[2]).op("c")
		case ink.Close:
			b.op("h")
		}
	}
}

// lettering writes text. A halo is drawn as outlines, so that the words are in the file once and
// are found once.
func (b *builder) lettering(t *ink.Text) {
	if t.Halo != nil {
		rim := &ink.Stroke{Colour: *t.Halo, Width: t.Size * ink.HaloWidth, Round: true}
		b.draw(b.font.Outline(t), rim, t.Halo)
	}
	along, up := r2.Scale(t.Size, ink.Direction(90-t.Angle)), r2.Scale(t.Size, ink.Direction(-t.Angle))
	start := b.font.Start(t)
	b.op("q")
	slanted := math.Mod(t.Angle, 90) != 0
	if slanted {
		b.actual(t.S)
	}
	b.colour(t.Colour, "rg")
	b.num(along.X, 5).num(along.Y, 5).num(up.X, 5).num(up.Y, 5).num(start.X, 3).num(start.Y, 3).op("cm\n")
	b.text(words(ink.Visual(ink.Clean(t.S)))) // at the origin of the frame just set
	if slanted {
		b.op("EMC")
	}
	b.op("Q\n")
}

// actual opens a span that says its text: readers put the letters of upright and level text
// together by themselves, but not those of slanted text.
func (b *builder) actual(s string) {
	b.op("/Span <</ActualText <FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		b.out = fmt.Appendf(b.out, "%04X", u)
	}
	b.op(">>> BDC\n")
}

// fontFamily is what the library calls the typeface: a name that it does not take for one of its own.
const fontFamily = "text"

// weight sets the typeface, one unit of the frame to the em. A weight that no page uses is not in
// the file.
func (b *builder) weight(bold bool) {
	bold = bold && b.font.HasBold()
	if b.set && b.bold == bold {
		return
	}
	i, style := 0, ""
	if bold {
		i, style = 1, "B"
	}
	if !b.fonts[i] {
		b.file.AddUTF8FontFromBytes(fontFamily, style, b.font.Embeddable(bold))
		b.fonts[i] = true
	}
	b.file.SetFont(fontFamily, style, 1)
	b.op("BT /" + fontNames[i] + " 1 Tf ET\n")
	b.bold, b.set = bold, true
}

// text shows text in the typeface that is set, each letter by its code in UTF-16, as the library writes the typeface.
func (b *builder) text(s string) {
	i := 0
	if b.bold {
		i = 1
	}
	b.out = append(b.out, "BT ("...)
	for _, r := range s {
		b.runes[i][r] = true
		for _, c := range [...]byte{byte(r >> 8), byte(r)} {
			switch c {
			case '\\', '(', ')':
				b.out = append(b.out, '\\', c)
			case '\r':
				b.out = append(b.out, '\\', 'r')
			default:
				b.out = append(b.out, c)
			}
		}
	}
	b.out = append(b.out, ") Tj ET\n"...)
}

// image draws a raster into its box. The library puts images in order by their width, from a map:
// those of one width would come in a different order in every run. So each gets a width of its
// own, by columns on its right that are clipped away.
func (b *builder) image(m *ink.Image) {
	wide := m.Width
	for b.widths[wide] {
		wide++
	}
	b.widths[wide] = true
	var data bytes.Buffer
	if err := png.Encode(&data, padded{m.Picture(), wide}); err != nil {
		b.file.SetError(err)
		return
	}
	name, kind := fmt.Sprintf("image-%d", wide), fpdf.ImageOptions{ImageType: "png", AllowNegativePosition: true}
	b.file.RegisterImageOptionsReader(name, kind, &data)
	b.op("q")
	b.path(ink.Rect(m.Min, m.Max))
	b.op("W n\n")
	b.file.ImageOptions(name, 0, 0, 1, 1, false, kind, 0, "") // where it goes is said here
	width := (m.Max.X - m.Min.X) * float64(wide) / float64(m.Width)
	b.num(width, 5).op("0 0").num(m.Max.Y-m.Min.Y, 5).num(m.Min.X, 5).num(m.Min.Y, 5).op("cm").op("/" + imageName(wide) + " Do\n")
	b.op("Q\n")
}

// padded is an image with columns added on its right.
type padded struct {
	image.Image
	wide int
}

func (p padded) Bounds() image.Rectangle {
	r := p.Image.Bounds()
	r.Max.X = r.Min.X + p.wide
	return r
}

func (p padded) At(x, y int) color.Color {
	return p.Image.At(min(x, p.Image.Bounds().Max.X-1), y)
}

// Opaque tells the encoder to leave transparency out.
func (padded) Opaque() bool { return true }
