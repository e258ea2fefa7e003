package svg

import (
	"bytes"
	"encoding/base64"
	"image/png"
	"strings"

	"scrimshaw/symbols/ink"
)

func (b *builder) item(it *ink.Item) {
	switch {
	case it.Text != nil:
		b.lettering(it.Text, it.Clip)
	case it.Image != nil:
		b.image(it.Image, it.Clip)
	default:
		b.raw("<path")
		b.path(it.Path)
		if it.Fill != nil {
			b.colour("fill", *it.Fill)
		}
		if it.Stroke != nil {
			b.stroke(it.Stroke)
		}
		b.clipped(it.Clip).raw("/>\n")
	}
}

// clipped names a clip, if there is one.
func (b *builder) clipped(clip int) *builder {
	if clip > 0 {
		b.attr("clip-path", "url(#"+b.clip(clip)+")")
	}
	return b
}

// stroke writes a pen. Butt caps, mitre joins and a mitre limit of 4 are SVG's defaults.
func (b *builder) stroke(s *ink.Stroke) {
	b.colour("stroke", s.Colour).number(" stroke-width", s.Width, 3)
	if len(s.Dash) > 0 {
		b.raw(` stroke-dasharray="`)
		for i, d := range s.Dash {
			if i > 0 {
				b.raw(" ")
			}
			b.num(d, 2)
		}
		b.raw(`"`)
	}
	if s.Round {
		b.raw(` stroke-linecap="round" stroke-linejoin="round"`)
	}
}

// path writes the d of a path. After M and L a repeated letter is left out.
func (b *builder) path(p []ink.Segment) {
	b.raw(` d="`)
	last := ink.Close
	for _, s := range p {
		switch s.Op {
		case ink.Move:
			b.raw("M")
		case ink.Line:
			if last == ink.Close || last == ink.Curve {
				b.raw("L")
			} else {
				b.raw(" ")
			}
		case ink.Curve:
			if last == ink.Curve {
				b.raw(" ")
			} else {
				b.raw("C")
			}
			b.point(s.P[0].X, s.P[0].Y).raw(" ").point(s.P[1].X, s.P[1].Y).raw(" ").point(s.P[2].X, s.P[2].Y)
		case ink.Close:
			b.raw("Z")
		}
		if s.Op == ink.Move || s.Op == ink.Line {
			b.point(s.P[0].X, s.P[0].Y)
		}
		last = s.Op
	}
	b.raw(`"`)
}

// lettering writes text. A halo is the same text with a stroke, written first: renderers that do
// not know paint-order would draw the stroke over the letters. It is hidden from readers aloud.
func (b *builder) lettering(t *ink.Text, clip int) {
	if t.Halo == nil && clip == 0 {
		b.letters(t, nil)
		return
	}
	b.raw("<g")
	b.clipped(clip).raw(">")
	if t.Halo != nil {
		b.letters(t, t.Halo)
	}
	b.letters(t, nil)
	b.raw("</g>\n")
}

// letters writes text once, as a halo where halo is not nil.
func (b *builder) letters(t *ink.Text, halo *ink.Colour) {
	if b.opts.Outlines {
		b.outlines(t, halo)
		return
	}
	x, y := t.At.X, b.height-t.At.Y
	b.raw("<text").number(" x", x, 2).number(" y", y, 2).number(" font-size", t.Size, 3)
	if t.Bold {
		b.raw(` font-weight="bold"`)
	}
	b.raw([]string{ink.Left: "", ink.Centre: ` text-anchor="middle"`, ink.Right: ` text-anchor="end"`}[min(t.Align, ink.Right)])
	if t.Angle != 0 {
		b.raw(` transform="rotate(`).num(-t.Angle, 3).raw(" ").num(x, 2).raw(" ").num(y, 2).raw(`)"`)
	}
	b.fit(t)
	if strings.HasPrefix(t.S, " ") || strings.HasSuffix(t.S, " ") || strings.Contains(t.S, "  ") {
		b.raw(` xml:space="preserve"`)
	}
	b.paint(t, halo)
	b.raw(">").line(t.S).raw("</text>\n")
}

// line writes what a text says. Viewers put letters in their order, and take lines for such as run to the right.
func (b *builder) line(s string) *builder {
	if !ink.RunsLeft(s) {
		return b.text(s)
	}
	return b.raw(rightToLeftIsolate).text(s).raw(popIsolate)
}

// What stands between these runs from right to left as a whole (UAX #9, 2.4).
const (
	rightToLeftIsolate = "\u2067"
	popIsolate         = "\u2069"
)

// outlines draws a text as the outlines of its letters.
func (b *builder) outlines(t *ink.Text, halo *ink.Colour) {
	b.raw("<path")
	b.path(b.opts.Font.Outline(t))
	b.paint(t, halo)
	if halo == nil {
		b.raw(` role="img"`).attr("aria-label", t.S)
	}
	b.raw("/>\n")
}

// fit gives the length that the text was laid out with, so that it keeps its box in a viewer that
// has another typeface or kerns: glyphs are then drawn a little wider or narrower. Viewers that do
// not know the attribute lose nothing.
func (b *builder) fit(t *ink.Text) {
	if width := b.opts.Font.Width(t.S, t.Size, t.Bold); width > 0 && len([]rune(t.S)) > 1 {
		b.number(" textLength", width, 2).raw(` lengthAdjust="spacingAndGlyphs"`)
	}
}

// paint writes the colours of text or of its halo.
func (b *builder) paint(t *ink.Text, halo *ink.Colour) {
	if halo == nil {
		b.colour("fill", t.Colour)
		return
	}
	b.colour("fill", *halo).colour("stroke", *halo).number(" stroke-width", t.Size*ink.HaloWidth, 3)
	b.raw(` stroke-linejoin="round" aria-hidden="true"`)
}

// image writes a raster, as PNG inside the file.
func (b *builder) image(m *ink.Image, clip int) {
	var data bytes.Buffer
	if err := png.Encode(&data, m.Picture()); err != nil {
		b.err = err
		return
	}
	b.raw("<image").number(" x", m.Min.X, 2).number(" y", b.height-m.Max.Y, 2)
	b.number(" width", m.Max.X-m.Min.X, 2).number(" height", m.Max.Y-m.Min.Y, 2)
	b.raw(` preserveAspectRatio="none" image-rendering="optimizeQuality"`)
	b.clipped(clip).raw(` xlink:href="data:image/png;base64,`)
	b.out = base64.StdEncoding.AppendEncode(b.out, data.Bytes())
	b.raw(`"/>` + "\n")
}
