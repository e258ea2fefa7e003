// Package svg writes a page of ink as SVG 1.1 that browsers, editors and converters read alike:
// millimetres as user units, one switchable group a layer, a titled group for each thing, true
// text, presentation attributes only, opaque colours, nothing from outside the file.
package svg

import (
	"fmt"
	"io"
	"math"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// Options say how a page is written. The zero value is ready to use.
type Options struct {
	Font *font.Family // that the page was laid out with; nil: the default
	// Outlines draws text as the outlines of its letters: the same everywhere, but no longer text.
	Outlines bool
	// Prefix stands before every id, so that several pages can be put into one document.
	Prefix string
	// Follow says where a link of the page leads to by the name of the other page, and what that is called; to an empty address nothing leads. Without it a page
	// has no links: the pages of a document are files of their own, and what those are called is not known here.
	Follow func(name string) (address, title string)
}

// Write writes one page of a document, counted from 0, as a file of its own. There is no XML
// declaration, which UTF-8 does not need, so that the file can also be pasted into HTML.
func Write(w io.Writer, doc ink.Document, page int, opts Options) error {
	if page < 0 || page >= len(doc.Pages) {
		return fmt.Errorf("svg: no page %d in a document of %d", page+1, len(doc.Pages))
	}
	p := &doc.Pages[page]
	if !(p.Width > 0 && p.Height > 0) || math.IsInf(p.Width+p.Height, 0) {
		return fmt.Errorf("svg: page %d is %v by %v mm", page+1, p.Width, p.Height)
	}
	if opts.Font == nil {
		family, err := font.Default()
		if err != nil {
			return fmt.Errorf("svg: %w", err)
		}
		opts.Font = family
	}
	b := &builder{opts: opts, page: p, height: p.Height}
	b.document(&doc)
	if b.err != nil {
		return fmt.Errorf("svg: page %d: %w", page+1, b.err)
	}
	_, err := w.Write(b.out)
	return err
}

// builder makes one file.
type builder struct {
	opts   Options
	page   *ink.Page
	height float64 // of the page, from which y is turned round
	out    []byte
	err    error
}

func (b *builder) document(doc *ink.Document) {
	strata := b.page.Strata()
	b.root(doc, strata)
	b.words(doc)
	b.clips(strata)
	b.raw(`<rect`).number(" width", b.page.Width, 2).number(" height", b.page.Height, 2).raw(` fill="#fff"/>` + "\n")
	for _, s := range strata {
		b.layer(s)
	}
	b.links()
	b.raw("</svg>\n")
}

// links lays rectangles over the page that lead to others.
func (b *builder) links() {
	for _, l := range b.leading() {
		b.raw("<a").attr("href", l.address).attr("aria-label", l.title).raw("><rect").number(" x", l.Min.X, 2).number(" y", b.height-l.Max.Y, 2)
		b.number(" width", l.Max.X-l.Min.X, 2).number(" height", l.Max.Y-l.Min.Y, 2).raw(` pointer-events="all"/></a>` + "\n")
	}
}

// leading is a link with where it leads.
type leading struct {
	ink.Link
	address, title string
}

// leading are the links of the page that lead somewhere.
func (b *builder) leading() (all []leading) {
	if b.opts.Follow == nil {
		return nil
	}
	for _, l := range b.page.Links {
		if address, title := b.opts.Follow(l.To); address != "" && l.Max.X > l.Min.X && l.Max.Y > l.Min.Y {
			all = append(all, leading{l, address, title})
		}
	}
	return all
}

// root opens the file. Units of the viewBox are millimetres; what is set here is inherited.
func (b *builder) root(doc *ink.Document, strata []ink.Stratum) {
	b.raw(`<svg xmlns="http://www.w3.org/2000/svg"`)
	if hasImage(strata) {
		b.raw(` xmlns:xlink="http://www.w3.org/1999/xlink"`)
	}
	if lang := ink.Clean(doc.Language); lang != "" {
		b.attr("xml:lang", lang)
	}
	b.raw(` width="`).num(b.page.Width, 2).raw(`mm" height="`).num(b.page.Height, 2).raw(`mm" viewBox="0 0 `)
	role := "img"
	if len(b.leading()) > 0 {
		role = "group" // of an image nobody reaches the links
	}
	b.num(b.page.Width, 2).raw(" ").num(b.page.Height, 2).raw(`"`).attr("role", role)
	b.attr("aria-labelledby", b.opts.Prefix+"title "+b.opts.Prefix+"desc")
	b.attr("font-family", Families(b.opts.Font))
	b.raw(` text-rendering="geometricPrecision" fill="none">` + "\n")
}

// words writes the title and the description.
func (b *builder) words(doc *ink.Document) {
	title := ink.Clean(b.page.Title)
	if title == "" {
		title = ink.Clean(doc.Title)
	}
	b.raw("<title").attr("id", b.opts.Prefix+"title").raw(">").text(title).raw("</title>\n")
	b.raw("<desc").attr("id", b.opts.Prefix+"desc").raw(">").text(ink.Clean(b.page.Description)).raw("</desc>\n")
}

// clips defines the clips that marks name.
func (b *builder) clips(strata []ink.Stratum) {
	used := make([]bool, len(b.page.Clips)+1)
	for it := range ink.Marks(strata) {
		used[it.Clip] = true
	}
	for i, polygon := range b.page.Clips {
		if used[i+1] {
			b.raw("<clipPath").attr("id", b.clip(i+1)).raw("><path")
			b.path(ink.Polygon(polygon...))
			b.raw("/></clipPath>\n")
		}
	}
}

// clip is the id of a clip by the number items know it by.
func (b *builder) clip(n int) string { return fmt.Sprintf("%sclip-%d", b.opts.Prefix, n) }

func (b *builder) layer(s ink.Stratum) {
	b.raw("<g").attr("id", b.opts.Prefix+"layer-"+s.Layer.String()).attr("data-layer", s.Layer.String()).raw(">\n")
	for _, g := range s.Groups {
		b.group(g)
	}
	b.raw("</g>\n")
}

// group writes the marks of one thing; a browser shows the title when the pointer rests on them.
func (b *builder) group(g ink.Group) {
	if g.Object != "" || g.Alt != "" {
		b.raw("<g")
		if g.Object != "" {
			b.attr("data-object", g.Object)
		}
		b.raw(">")
		if g.Alt != "" {
			b.raw("<title>").text(g.Alt).raw("</title>")
		}
		b.raw("\n")
		defer b.raw("</g>\n")
	}
	for i := range g.Items {
		b.item(&g.Items[i])
	}
}

func hasImage(strata []ink.Stratum) bool {
	for it := range ink.Marks(strata) {
		if it.Image != nil {
			return true
		}
	}
	return false
}
