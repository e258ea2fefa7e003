package svg

import (
	"fmt"
	"strings"

	"scrimshaw/render/font"
	"scrimshaw/symbols/ink"
)

// raw appends markup as it is.
func (b *builder) raw(s string) *builder { b.out = append(b.out, s...); return b }

// num appends a number with at most a number of decimals.
func (b *builder) num(v float64, decimals int) *builder {
	b.out = ink.AppendNumber(b.out, v, decimals)
	return b
}

// number appends an attribute; name has the space before it.
func (b *builder) number(name string, v float64, decimals int) *builder {
	return b.raw(name).raw(`="`).num(v, decimals).raw(`"`)
}

// point appends a place of the page, to 0.01 mm, with y from the upper edge.
func (b *builder) point(x, y float64) *builder { return b.num(x, 2).raw(" ").num(b.height-y, 2) }

// attr appends an attribute with any value.
func (b *builder) attr(name, value string) *builder {
	return b.raw(" ").raw(name).raw(`="`).text(value).raw(`"`)
}

// colour appends a colour as an attribute, in its short form where it has one.
func (b *builder) colour(name string, c ink.Colour) *builder {
	b.raw(" ").raw(name).raw(`="#`)
	if c.R%17 == 0 && c.G%17 == 0 && c.B%17 == 0 {
		b.out = fmt.Appendf(b.out, "%x%x%x", c.R/17, c.G/17, c.B/17)
	} else {
		b.out = fmt.Appendf(b.out, "%02x%02x%02x", c.R, c.G, c.B)
	}
	return b.raw(`"`)
}

// text appends words as content or in an attribute. They are clean (ink.Clean) already, so that
// only what means something in XML is left to escape.
func (b *builder) text(s string) *builder {
	for _, r := range s {
		switch r {
		case '&':
			b.raw("&amp;")
		case '<':
			b.raw("&lt;")
		case '>':
			b.raw("&gt;")
		case '"':
			b.raw("&#34;")
		case '\'':
			b.raw("&#39;")
		default:
			b.out = append(b.out, string(r)...)
		}
	}
	return b
}

// Families is the list of typefaces to look for: the one that was measured, its twins in metrics,
// and whatever sans there is.
func Families(f *font.Family) string {
	const twins = "Liberation Sans, Arimo, Arial, Helvetica, sans-serif"
	name := ink.Clean(f.Name())
	if name == "" || name == "Liberation Sans" {
		return twins
	}
	return "'" + strings.NewReplacer(`\`, `\\`, `'`, `\'`).Replace(name) + "', " + twins
}
