package font

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Outline returns the glyphs of t as a path on paper, to be filled by the non-zero rule. The halo
// is a stroke of the same path.
func (f *Family) Outline(t *ink.Text) ink.Path {
	start := f.Start(t)
	w := outliner{
		along: r2.Scale(t.Size, ink.Direction(90-t.Angle)),
		up:    r2.Scale(t.Size, ink.Direction(-t.Angle)),
	}
	face, pen := f.face(t.Bold), 0
	var buf sfnt.Buffer
	for _, r := range ink.Visual(ink.Clean(t.S)) {
		w.origin = r2.Add(start, r2.Scale(float64(pen)/stepsPerEm, w.along))
		w.glyph(face, &buf, r)
		pen += face.advance(r)
	}
	return w.path
}

// outliner puts glyphs on paper.
type outliner struct {
	origin    r2.Vec // of the glyph at hand
	along, up r2.Vec // one em on paper
	em        float64
	path      ink.Path
}

// glyph appends the outline of r. A glyph that the font has but cannot give is left out.
func (w *outliner) glyph(f *face, buf *sfnt.Buffer, r rune) {
	segments, err := f.font.LoadGlyph(buf, f.glyph(buf, r), f.em, nil)
	if err != nil {
		return
	}
	w.em = float64(f.em)
	var at r2.Vec
	for i, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if i > 0 {
				w.path = w.path.Close()
			}
			at = w.place(s.Args[0])
			w.path = w.path.MoveTo(at)
		case sfnt.SegmentOpLineTo:
			at = w.place(s.Args[0])
			w.path = w.path.LineTo(at)
		case sfnt.SegmentOpQuadTo:
			c, end := w.place(s.Args[0]), w.place(s.Args[1])
			w.path = w.path.QuadTo(at, c, end)
			at = end
		case sfnt.SegmentOpCubeTo:
			at = w.place(s.Args[2])
			w.path = w.path.CurveTo(w.place(s.Args[0]), w.place(s.Args[1]), at)
		}
	}
	if len(segments) > 0 {
		w.path = w.path.Close()
	}
}

// place puts a point of a glyph, in font units with y down, on paper.
func (w *outliner) place(p fixed.Point26_6) r2.Vec {
	x, y := float64(p.X)/w.em, -float64(p.Y)/w.em
	return r2.Add(w.origin, r2.Add(r2.Scale(x, w.along), r2.Scale(y, w.up)))
}
