// Package contact puts a whole run into one picture for a message: what a phone held upright can
// read without enlarging, one strip a set-up under the title, and at the end the sheets, small and
// numbered, so that one knows what there is on paper.
package contact

import (
	"fmt"
	"image"
	"io"
	"math"
	"strings"

	"github.com/fogleman/gg"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/font"
	"scrimshaw/render/png"
	"scrimshaw/symbols/ink"
)

// Options say how a contact sheet is made. The zero value is ready to use.
type Options struct {
	Font  *font.Family // that the pages were laid out with; nil: the default
	Width int          // pixels; 0 is Width
	Paper ink.Colour   // of the cards; with Ink zero as well, black on white
	Ink   ink.Colour
}

// Width is that of a phone held upright, pixels.
const Width = 1080

// longest is the most height of a picture, pixels.
const longest = 60000

// Write writes the picture as PNG. The strips are pages of one width, drawn as wide as the picture;
// the sheets follow them two by two.
func Write(w io.Writer, strips, sheets ink.Document, o Options) error {
	if len(strips.Pages) == 0 {
		return fmt.Errorf("contact: a run without set-ups")
	}
	if err := o.complete(); err != nil {
		return err
	}
	t := newTable(o, strips.Pages[0].Width)
	if err := t.strips(strips.Pages); err != nil {
		return err
	}
	if err := t.sheets(sheets); err != nil {
		return err
	}
	if t.high > longest {
		return fmt.Errorf("contact: the run is %d pixels long, the most is %d: draw fewer set-ups at once", t.high, longest)
	}
	m, err := t.picture()
	if err != nil {
		return fmt.Errorf("contact: %w", err)
	}
	return png.Encode(w, m, t.perMM)
}

// complete fills in what was left out.
func (o *Options) complete() error {
	if o.Width < 0 || o.Width > 20*Width || o.Width > 0 && o.Width < Width/10 {
		return fmt.Errorf("contact: a picture %d pixels wide", o.Width)
	}
	if o.Width == 0 {
		o.Width = Width
	}
	if o.Paper == o.Ink {
		o.Paper, o.Ink = ink.Colour{R: 255, G: 255, B: 255}, ink.Colour{}
	}
	if o.Font != nil {
		return nil
	}
	family, err := font.Default()
	if err != nil {
		return fmt.Errorf("contact: %w", err)
	}
	o.Font = family
	return nil
}

// table is what cards are laid on.
type table struct {
	opts  Options
	gap   int     // round and between cards, pixels
	wide  int     // of a card
	perMM float64 // pixels to the millimetre of a strip
	high  int     // so far
	cards []card
}

// card is a place for pictures one under another. They are drawn when it is known that all cards together are
// not too long, and one at a time.
type card struct {
	x, y, wide, high int
	pages            []*ink.Page
}

func newTable(o Options, strip float64) *table {
	t := &table{opts: o, gap: o.Width / 54}
	t.wide, t.high = o.Width-2*t.gap, t.gap
	t.perMM = float64(t.wide) / strip
	return t
}

// strips lays pages one under another.
func (t *table) strips(pages []ink.Page) error {
	for i := range pages {
		c, err := t.card(t.gap, t.wide, &pages[i])
		if err != nil {
			return err
		}
		t.high += c.high + t.gap
	}
	return nil
}

// sheets lays pages two by two, each with its number and title below it.
func (t *table) sheets(doc ink.Document) error {
	wide := (t.wide - t.gap) / 2
	row := 0
	for i := range doc.Pages {
		caption := t.caption(doc, i, float64(wide)/t.perMM)
		c, err := t.card(t.gap+i%2*(wide+t.gap), wide, &doc.Pages[i], &caption)
		if err != nil {
			return err
		}
		row = max(row, c.high)
		if i%2 == 1 || i == len(doc.Pages)-1 {
			t.high, row = t.high+row+t.gap, 0
		}
	}
	return nil
}

// card lays pages on the table, at its present height, one under another.
func (t *table) card(x, wide int, pages ...*ink.Page) (card, error) {
	c := card{x: x, y: t.high, wide: wide, pages: pages}
	for _, p := range pages {
		_, high, err := png.Size(p, png.Options{Width: wide})
		if err != nil {
			return c, fmt.Errorf("contact: %w", err)
		}
		c.high += high
	}
	t.cards = append(t.cards, c)
	return c, nil
}

// caption is a page, mm wide, with the number of a sheet and what it shows of the run.
func (t *table) caption(doc ink.Document, i int, wide float64) ink.Page {
	const size, beside = 2.57, 2.0 // mm; capitals of that size are 1.8 mm high
	p := ink.Page{Width: wide, Height: 6}
	c := ink.NewCanvas(&p, ink.Collar)
	c.Rect(ink.Solid(t.opts.Paper), r2.Vec{}, r2.Vec{X: p.Width, Y: p.Height})
	number := fmt.Sprintf("%d / %d", i+1, len(doc.Pages))
	line := ink.Text{At: r2.Vec{X: beside, Y: 2.1}, S: number, Size: size, Bold: true, Colour: t.opts.Ink}
	c.Text(line)
	line.At.X += t.opts.Font.Width(number, size, true) + beside
	line.S, line.Bold = t.short(doc, i, size, wide-beside-line.At.X), false
	c.Text(line)
	return p
}

// short is the title of a page without that of the run, cut to a width.
func (t *table) short(doc ink.Document, i int, size, room float64) string {
	s := strings.TrimPrefix(strings.TrimPrefix(doc.Pages[i].Title, doc.Title), ", ")
	if s == "" {
		s = "plan"
	}
	measure := func(s string) float64 { return t.opts.Font.Width(s, size, false) }
	if measure(s) <= room {
		return s
	}
	r := []rune(s)
	for r = r[:min(len(r), ink.Fitting(r, room, measure)+1)]; measure(s) > room && len(r) > 0; {
		r = r[:len(r)-1]
		s = strings.TrimRight(string(r), " ,") + "…"
	}
	return s
}

// picture draws all cards on the table.
func (t *table) picture() (*image.RGBA, error) {
	dc := gg.NewContext(t.opts.Width, t.high)
	ground := between(t.opts.Paper, t.opts.Ink, 0.12)
	dc.SetRGB255(int(ground.R), int(ground.G), int(ground.B))
	dc.Clear()
	dc.SetFillRuleEvenOdd()
	for _, c := range t.cards {
		high := 0
		for _, p := range c.pages {
			m, err := png.Draw(p, png.Options{Font: t.opts.Font, Width: c.wide})
			if err != nil {
				return nil, err
			}
			dc.DrawImage(m, c.x, c.y+high)
			high += m.Rect.Dy()
		}
		// Round corners: the ground over what lies outside them.
		x, y, w, h := float64(c.x), float64(c.y), float64(c.wide), float64(c.high)
		dc.DrawRectangle(x-1, y-1, w+2, h+2)
		dc.DrawRoundedRectangle(x, y, w, h, float64(t.gap)*0.6)
		dc.Fill()
	}
	return dc.Image().(*image.RGBA), nil
}

// between is the colour at a share of the way from a to b.
func between(a, b ink.Colour, share float64) ink.Colour {
	mix := func(a, b uint8) uint8 { return uint8(math.Round(float64(a) + share*(float64(b)-float64(a)))) }
	return ink.Colour{R: mix(a.R, b.R), G: mix(a.G, b.G), B: mix(a.B, b.B)}
}
