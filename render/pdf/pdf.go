// Package pdf writes a document of ink as PDF: pages of any size, a layer of the viewer for each
// layer of ink, a bookmark for each page, text that can be selected and searched in an embedded
// subset of the typeface, and the same bytes on any day.
//
// The library underneath lays out the file: objects, fonts, images, layers. What stands on a page is
// written here, in millimetres with y up, which is ink's own frame: a drawing can be read off the
// content stream. Notes on the library's habits stand where they are worked round.
package pdf

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// Options say how a document is written. The zero value is ready to use.
type Options struct {
	Font *font.Family // that the pages were laid out with; nil: the default
}

// points is the length of a millimetre in PDF's unit.
const points = 72 / ink.Inch

// Write writes all pages of a document as one file.
func Write(w io.Writer, doc ink.Document, opts Options) (err error) {
	if len(doc.Pages) == 0 {
		return fmt.Errorf("pdf: a document without pages")
	}
	for i, p := range doc.Pages {
		if !(p.Width > 0 && p.Height > 0) || math.IsInf(p.Width+p.Height, 0) {
			return fmt.Errorf("pdf: page %d is %v by %v mm", i+1, p.Width, p.Height)
		}
	}
	if opts.Font == nil {
		if opts.Font, err = font.Default(); err != nil {
			return fmt.Errorf("pdf: %w", err)
		}
	}
	// The library trusts fonts: a damaged one that could be measured may still make it panic.
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("pdf: the library failed, most likely on the typeface: %v", p)
		}
	}()
	b := newBuilder(&doc, opts.Font)
	for i := range doc.Pages {
		b.sheet(i)
	}
	b.register()
	var file bytes.Buffer
	if err := b.file.Output(&file); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	if err := b.assemble(w, file.Bytes()); err != nil {
		return fmt.Errorf("pdf: %w", err)
	}
	return nil
}

// builder makes one file.
type builder struct {
	doc    *ink.Document
	font   *font.Family
	file   *fpdf.Fpdf
	out    []byte   // of the content stream at hand
	packed [][]byte // the content streams of the pages so far, as objects of the file: the library would hold all of them open
	layers map[ink.Layer]int
	fonts  [2]bool          // added to the file: regular, bold
	runes  [2]map[rune]bool // that are lettered in each
	bold   bool             // the weight that is set
	set    bool             // whether one is, on this page
	widths map[int]bool     // of images, pixels
	place  []string         // of the last page in the outline
	marks  [][]ink.Layer    // of a document with a structure: the layers of the lettering of each page, in the order of its numbers
}

func newBuilder(doc *ink.Document, family *font.Family) *builder {
	// One unit is one point, so that the library scales nothing.
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: size(&doc.Pages[0])})
	f.SetCompression(true)
	f.SetCatalogSort(true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	b := &builder{doc: doc, font: family, file: f, layers: map[ink.Layer]int{}, runes: [2]map[rune]bool{{}, {}}, widths: map[int]bool{}}
	b.describe()
	return b
}

// describe writes what a viewer says about the file. A file without a date gets the first day of
// the Unix calendar: PDF's library would take the day it is written.
func (b *builder) describe() {
	d, f := b.doc, b.file
	f.SetProducer("scrimshaw", true)
	f.SetTitle(words(d.Title), true)
	f.SetAuthor(words(d.Author), true)
	f.SetSubject(words(d.Subject), true)
	f.SetLang(language(d.Language))
	date := day(d.Date)
	f.SetCreationDate(date)
	f.SetModificationDate(date)
}

// sheet writes a page.
func (b *builder) sheet(i int) {
	p := &b.doc.Pages[i]
	b.file.AddPageFormat("P", size(p))
	b.marks = append(b.marks, nil)
	b.set = false
	b.op("0 J\n0 j\n")
	b.weight(false) // the library encodes bookmarks by the typeface that is set
	b.bookmark(p)
	b.op("q").num(points, 6).op("0 0").num(points, 6).op("0 0 cm").num(ink.MitreLimit, 1).op("M\n")
	for _, s := range p.Strata() {
		b.op(fmt.Sprintf("/OC /OC%d BDC\n", b.layer(s.Layer)))
		for it := range ink.Marks([]ink.Stratum{s}) {
			b.item(it)
		}
		b.op("EMC\n")
	}
	b.op("Q\n")
	b.pack()
	b.links(p)
}

// links makes the rectangles of a page lead to other pages.
func (b *builder) links(p *ink.Page) {
	for _, l := range p.Links {
		to := slices.IndexFunc(b.doc.Pages, func(o ink.Page) bool { return o.Name == l.To })
		if to < 0 || &b.doc.Pages[to] == p || l.To == "" {
			continue
		}
		id := b.file.AddLink()
		b.file.SetLink(id, 0, to+1)
		b.file.Link(l.Min.X*points, (p.Height-l.Max.Y)*points, (l.Max.X-l.Min.X)*points, (l.Max.Y-l.Min.Y)*points, id)
	}
}

// bookmark names the page in the outline, under those of its headings that the page before has, and new ones for the
// rest. The library takes heights from the upper edge of the last page for those of all pages.
func (b *builder) bookmark(p *ink.Page) {
	place := b.placeOf(p)
	shared := 0
	for shared < min(len(b.place), len(place)-1) && b.place[shared] == place[shared] {
		shared++
	}
	last := b.doc.Pages[len(b.doc.Pages)-1].Height
	for level := shared; level < len(place); level++ {
		b.file.Bookmark(place[level], level, (last-p.Height)*points)
	}
	b.place = place
}

// placeOf is where a page stands in the outline: where it says, else by its title, else by its number.
func (b *builder) placeOf(p *ink.Page) (place []string) {
	for _, heading := range p.Outline {
		place = append(place, words(heading))
	}
	switch title := words(p.Title); {
	case place != nil:
		return place
	case title != "":
		return []string{title}
	}
	return []string{fmt.Sprintf("Page %d", b.file.PageNo())}
}

// layer returns the file's number of a layer, which all pages share.
func (b *builder) layer(l ink.Layer) int {
	n, ok := b.layers[l]
	if !ok {
		n = b.file.AddLayer(l.Title(), true)
		b.layers[l] = n
	}
	return n
}

func size(p *ink.Page) fpdf.SizeType {
	return fpdf.SizeType{Wd: p.Width * points, Ht: p.Height * points}
}

// words returns a text for the file's own strings, which the library writes in the basic plane.
func words(s string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF {
			return '\uFFFD'
		}
		return r
	}, ink.Clean(s))
}

// language keeps what a language tag may have (BCP 47): the library does not escape it.
func language(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return -1
	}, s)
}

// day reads a date, with or without a time.
func day(s string) time.Time {
	for _, layout := range []string{time.RFC3339, "2006-01-02T15:04:05", time.DateOnly, "2006-01", "2006"} {
		if t, err := time.Parse(layout, s); err == nil && t.Year() > 0 {
			return t
		}
	}
	return time.Unix(0, 0).UTC()
}
