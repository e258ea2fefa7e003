package font

import (
	"fmt"
	"math"
	"unicode/utf8"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"scrimshaw/symbols/ink"
)

// stepsPerEm is the number of steps in an em in which advances are kept.
const stepsPerEm = 1000

// lastCachedRune is the end of the runes whose advances are looked up once, when the font is loaded: Latin,
// Greek and Cyrillic, punctuation, letterlike signs, fractions, arrows and operators.
const lastCachedRune = 0x2300

// noGlyph marks, in a table of advances, a rune without a glyph.
const noGlyph = 1 << 15

// face is one weight.
type face struct {
	file                       []byte
	tables                     tables
	font                       *sfnt.Font
	name                       string
	em                         fixed.Int26_6          // font units an em, as the size at which sfnt answers in font units
	ascent, descent, capHeight float64                // ems
	advances                   [lastCachedRune]uint16 // thousandths of an em, with lacking
}

func newFace(file []byte) (*face, error) {
	t, err := readTables(file)
	if err != nil {
		return nil, err
	}
	parsed, err := sfnt.Parse(file)
	if err != nil {
		return nil, fmt.Errorf("not a usable TrueType font: %w", err)
	}
	f := &face{file: file, tables: t, font: parsed, em: fixed.Int26_6(parsed.UnitsPerEm())}
	var buf sfnt.Buffer
	if name, err := parsed.Name(&buf, sfnt.NameIDFamily); err == nil {
		f.name = name
	}
	m, err := parsed.Metrics(&buf, f.em, font.HintingNone)
	if err != nil {
		return nil, fmt.Errorf("font metrics: %w", err)
	}
	f.ascent, f.descent, f.capHeight = f.ems(m.Ascent), f.ems(m.Descent), f.ems(m.CapHeight)
	for r := range f.advances {
		f.advances[r] = f.lookUp(&buf, rune(r))
	}
	return f, nil
}

// ems converts font units to ems.
func (f *face) ems(units fixed.Int26_6) float64 { return float64(units) / float64(f.em) }

// lookUp returns what advances holds for r.
func (f *face) lookUp(buf *sfnt.Buffer, r rune) uint16 {
	r, ok := ink.Printed(r)
	if !ok {
		return 0
	}
	g := f.glyph(buf, r)
	advance := uint16(f.glyphAdvance(buf, g))
	if g == 0 || r > lastBasicRune {
		return advance | noGlyph
	}
	return advance
}

// lastBasicRune is the end of Unicode's basic plane. Runes beyond it count as missing and are drawn as
// replacement characters: PDF's writer cannot embed them, and the formats are to agree.
const lastBasicRune = 0xFFFF

// glyph returns the index of the glyph of r, 0 where there is none.
func (f *face) glyph(buf *sfnt.Buffer, r rune) sfnt.GlyphIndex {
	if r > lastBasicRune {
		r = utf8.RuneError
	}
	g, err := f.font.GlyphIndex(buf, r)
	if err != nil {
		return 0
	}
	return g
}

// glyphAdvance is the advance of a glyph in thousandths of an em.
func (f *face) glyphAdvance(buf *sfnt.Buffer, g sfnt.GlyphIndex) int {
	a, err := f.font.GlyphAdvance(buf, g, f.em, font.HintingNone)
	if err != nil {
		return 0
	}
	return min(int(math.Round(f.ems(a)*stepsPerEm)), noGlyph-1)
}

// entry is what advances holds, or would hold, for r.
func (f *face) entry(r rune) uint16 {
	if r >= 0 && r < lastCachedRune {
		return f.advances[r]
	}
	return f.lookUp(nil, r)
}

// advance is how far r moves the pen, in thousandths of an em.
func (f *face) advance(r rune) int { return int(f.entry(r) &^ noGlyph) }

// has says whether there is a glyph for r.
func (f *face) has(r rune) bool { return f.entry(r)&noGlyph == 0 }
