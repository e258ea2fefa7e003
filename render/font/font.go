// Package font measures and outlines the one typeface of a sheet. The default is embedded; the
// system's fonts are never asked.
//
// Text is set glyph after glyph by the advances of the font, without kerning, ligatures or
// shaping: what is measured here is what every writer draws, to the thousandth of an em, which is
// the step in which PDF keeps widths. Scripts that need shaping are drawn as separate letters.
package font

import (
	"fmt"
	"slices"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Family is a typeface in one or two weights. It never changes and is safe for concurrent use.
type Family struct {
	regular, bold *face
}

// Default returns the embedded typeface, Liberation Sans: its figures are all of one width, and its
// metrics are those of the faces that a viewer without it is likely to have.
func Default() (*Family, error) {
	return Load(liberationsansregular.TTF, liberationsansbold.TTF)
}

// Load reads a typeface from two TrueType files; bold may be nil, and then the regular weight
// stands in for it. The bytes are kept and must not change. A font that cannot be measured,
// outlined and embedded is an error that says why.
func Load(regular, bold []byte) (*Family, error) {
	r, err := newFace(regular)
	if err != nil {
		return nil, fmt.Errorf("regular font: %w", err)
	}
	if bold == nil {
		return &Family{regular: r, bold: r}, nil
	}
	b, err := newFace(bold)
	if err != nil {
		return nil, fmt.Errorf("bold font: %w", err)
	}
	return &Family{regular: r, bold: b}, nil
}

// Name is the name of the family as the font gives it, "" where it has none.
func (f *Family) Name() string { return f.regular.name }

// HasBold says whether there is a bold weight of its own.
func (f *Family) HasBold() bool { return f.bold != f.regular }

// Width is how far s runs, mm, in glyphs whose em is size mm. Widths add up: that of a string is
// the sum of those of its runes. Runes that are not printed (ink.Printed) have no width.
func (f *Family) Width(s string, size float64, bold bool) float64 {
	face, sum := f.face(bold), 0
	for _, r := range s {
		sum += face.advance(r)
	}
	return float64(sum) * size / stepsPerEm
}

// Ascent is how far glyphs of an em of size mm reach above the baseline, mm.
func (f *Family) Ascent(size float64) float64 { return f.regular.ascent * size }

// Descent is how far glyphs of an em of size mm reach below the baseline, mm, positive.
func (f *Family) Descent(size float64) float64 { return f.regular.descent * size }

// CapHeight is the height of a capital of an em of size mm, mm.
func (f *Family) CapHeight(size float64) float64 { return f.regular.capHeight * size }

// Missing returns the runes of s that a weight lacks a glyph for, each once, in ascending order.
// They are drawn as the font's box for a missing glyph.
func (f *Family) Missing(s string) []rune {
	var missing []rune
	for _, r := range s {
		r, ok := ink.Printed(r)
		if ok && !(f.regular.has(r) && f.bold.has(r)) {
			missing = append(missing, r)
		}
	}
	slices.Sort(missing)
	return slices.Compact(missing)
}

// Start is the baseline point where the first glyph of t begins, mm on paper.
func (f *Family) Start(t *ink.Text) r2.Vec {
	back := f.Width(t.S, t.Size, t.Bold)
	switch t.Align {
	case ink.Left:
		return t.At
	case ink.Centre:
		back /= 2
	}
	return r2.Sub(t.At, r2.Scale(back, ink.Direction(90-t.Angle)))
}

// File returns the bytes of a weight as they were loaded. They must not be changed.
func (f *Family) File(bold bool) []byte { return f.face(bold).file }

// Embeddable returns a copy of a weight with the tables that an embedded font needs and no
// others: no layout, no kerning, no names.
func (f *Family) Embeddable(bold bool) []byte { return f.face(bold).tables.embeddable() }

func (f *Family) face(bold bool) *face {
	if bold {
		return f.bold
	}
	return f.regular
}
