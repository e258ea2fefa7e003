package golden

import (
	"fmt"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// Dump prints a page for people and for tests that compare drawings: a line a mark, in drawing
// order under its layer and the thing it stands for, places to 0.1 mm. Two pages that look alike
// print alike.
func Dump(p *ink.Page) string {
	d := &dumper{clips: p.Clips}
	for _, s := range p.Strata() {
		d.printf("layer %s\n", s.Layer)
		for _, g := range s.Groups {
			if g.Object != "" || g.Alt != "" {
				d.printf("  %s\n", strings.TrimSpace(g.Object+" "+g.Alt))
			}
			for i := range g.Items {
				d.item(&g.Items[i])
			}
		}
	}
	return d.String()
}

// dumper prints marks.
type dumper struct {
	strings.Builder
	clips [][]r2.Vec
}

func (d *dumper) printf(format string, args ...any) { fmt.Fprintf(d, format, args...) }

func (d *dumper) item(it *ink.Item) {
	d.WriteString("    ")
	switch {
	case it.Text != nil:
		d.text(it.Text)
	case it.Image != nil:
		m := it.Image
		d.printf("image %d by %d in%s%s", m.Width, m.Height, tenths(m.Min), tenths(m.Max))
	default:
		d.path(it)
	}
	if it.Clip > 0 {
		d.WriteString(" within")
		for _, p := range d.clips[it.Clip-1] {
			d.WriteString(tenths(p))
		}
	}
	d.WriteByte('\n')
}

func (d *dumper) text(t *ink.Text) {
	d.printf("%q at%s, %s mm %s", t.S, tenths(t.At), trimmed(t.Size, 2), t.Colour)
	if t.Bold {
		d.WriteString(" bold")
	}
	d.WriteString([...]string{ink.Left: "", ink.Centre: " centred", ink.Right: " to the right"}[min(t.Align, ink.Right)])
	if t.Angle != 0 {
		d.printf(" turned %s", trimmed(t.Angle, 1))
	}
	if t.Halo != nil {
		d.printf(" on %s", *t.Halo)
	}
}

func (d *dumper) path(it *ink.Item) {
	if s := it.Stroke; s != nil {
		d.printf("line %s %s", trimmed(s.Width, 2), s.Colour)
		for _, length := range s.Dash {
			d.printf(" %s", trimmed(length, 1))
		}
		if s.Round {
			d.WriteString(" round")
		}
		d.WriteByte(' ')
	}
	if it.Fill != nil {
		d.printf("fill %s ", *it.Fill)
	}
	d.WriteByte(':')
	for _, s := range it.Path {
		d.printf(" %c", "MLCZ"[s.Op])
		for _, p := range s.P[:points[s.Op]] {
			d.WriteString(tenths(p))
		}
	}
}

// points is how many of a segment's points mean something.
var points = map[ink.Op]int{ink.Move: 1, ink.Line: 1, ink.Curve: 3}

func tenths(p r2.Vec) string { return " " + trimmed(p.X, 1) + "," + trimmed(p.Y, 1) }

func trimmed(v float64, decimals int) string { return string(ink.AppendNumber(nil, v, decimals)) }
