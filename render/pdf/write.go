package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// op appends operators or operands as they are, and a space.
func (b *builder) op(s string) *builder {
	b.out = append(b.out, s...)
	if s[len(s)-1] != '\n' {
		b.out = append(b.out, ' ')
	}
	return b
}

// num appends a number with at most a number of decimals.
func (b *builder) num(v float64, decimals int) *builder {
	b.out = append(ink.AppendNumber(b.out, v, decimals), ' ')
	return b
}

// point appends a place, to 0.01 mm.
func (b *builder) point(p r2.Vec) *builder { return b.num(p.X, 2).num(p.Y, 2) }

// colour sets a colour by an operator.
func (b *builder) colour(c ink.Colour, operator string) *builder {
	return b.num(float64(c.R)/255, 4).num(float64(c.G)/255, 4).num(float64(c.B)/255, 4).op(operator)
}

// pack makes an object of the content stream at hand, which is whole: deflated.
func (b *builder) pack() {
	var packed bytes.Buffer
	w := zlib.NewWriter(&packed)
	_, _ = w.Write(b.out) // a buffer takes all
	_ = w.Close()
	b.packed = append(b.packed, fmt.Appendf(nil, "<</Filter /FlateDecode /Length %d>>\nstream\n%s\nendstream", packed.Len(), packed.Bytes()))
	b.out = b.out[:0]
}

// register tells the library which letters of its typefaces the file has to hold.
func (b *builder) register() {
	for i, style := range [...]string{"", "B"} {
		var all []rune
		for r := range b.runes[i] {
			all = append(all, r)
		}
		slices.Sort(all)
		if len(all) > 0 {
			b.file.SetFont(fontFamily, style, 1)
			b.file.Text(0, 0, string(all))
		}
	}
}
