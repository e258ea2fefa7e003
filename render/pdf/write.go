package pdf

import (
	"bytes"

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

// flush hands what was written to the library, which adds to the same stream.
func (b *builder) flush() {
	if len(b.out) > 0 {
		b.file.RawWriteBuf(bytes.NewReader(b.out))
		b.out = b.out[:0]
	}
}
