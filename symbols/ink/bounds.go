package ink

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Extent is a box that grows, in mm. The zero value is empty.
type Extent struct {
	Box  r2.Box
	some bool
}

// Empty says whether nothing was added.
func (e Extent) Empty() bool { return !e.some }

// Add grows the extent to hold points.
func (e *Extent) Add(points ...r2.Vec) {
	for _, p := range points {
		if !e.some {
			e.Box, e.some = r2.Box{Min: p, Max: p}, true
			continue
		}
		e.Box.Min = r2.Vec{X: min(e.Box.Min.X, p.X), Y: min(e.Box.Min.Y, p.Y)}
		e.Box.Max = r2.Vec{X: max(e.Box.Max.X, p.X), Y: max(e.Box.Max.Y, p.Y)}
	}
}

// Join grows the extent to hold another.
func (e *Extent) Join(o Extent) {
	if o.some {
		e.Add(o.Box.Min, o.Box.Max)
	}
}

// Grown is the extent with a margin all round.
func (e Extent) Grown(margin float64) Extent {
	if e.some {
		d := r2.Vec{X: margin, Y: margin}
		e.Box = r2.Box{Min: r2.Sub(e.Box.Min, d), Max: r2.Add(e.Box.Max, d)}
	}
	return e
}

// Bounds is the extent of a path itself, without its stroke; curves count as far as they reach.
func (p Path) Bounds() Extent {
	var e Extent
	var at r2.Vec
	for _, s := range p {
		switch s.Op {
		case Move, Line:
			e.Add(s.P[0])
			at = s.P[0]
		case Curve:
			e.Add(s.P[2])
			for _, t := range turns(at, s.P) {
				e.Add(onCubic(at, s.P, t))
			}
			at = s.P[2]
		}
	}
	return e
}

// turns are the places between 0 and 1 where a cubic runs level or upright: the roots of its
// derivative, by axis.
func turns(from r2.Vec, p [3]r2.Vec) []float64 {
	var ts []float64
	for _, v := range [...][4]float64{{from.X, p[0].X, p[1].X, p[2].X}, {from.Y, p[0].Y, p[1].Y, p[2].Y}} {
		a, b, c := v[3]-3*v[2]+3*v[1]-v[0], 2*(v[2]-2*v[1]+v[0]), v[1]-v[0]
		for _, t := range quadratic(a, b, c) {
			if t > 0 && t < 1 {
				ts = append(ts, t)
			}
		}
	}
	return ts
}

// quadratic returns the real roots of a t² + b t + c; of a constant, none.
func quadratic(a, b, c float64) []float64 {
	if a == 0 {
		if b == 0 {
			return nil
		}
		return []float64{-c / b}
	}
	d := b*b - 4*a*c
	if d < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(d), b)) / 2 // the form that does not cancel
	if q == 0 {
		return []float64{0}
	}
	return []float64{q / a, c / q}
}

// Corners are those of the box that text fills, from the start of its baseline: below and above it
// by the descent and the ascent of the typeface, turned with the text.
func (t *Text) Corners(m Measure) [4]r2.Vec {
	width := m.Width(t.S, t.Size, t.Bold)
	left := -width * float64(t.Align) / 2
	along, up := Direction(90-t.Angle), Direction(-t.Angle)
	corner := func(x, y float64) r2.Vec {
		return r2.Add(t.At, r2.Add(r2.Scale(x, along), r2.Scale(y, up)))
	}
	low, high := -m.Descent(t.Size), m.Ascent(t.Size)
	return [4]r2.Vec{corner(left, low), corner(left+width, low), corner(left+width, high), corner(left, high)}
}

// Bounds is the extent of a mark with half the width of its stroke or halo; the points of sharp
// mitres may reach further. Its clip is not heeded.
func (it *Item) Bounds(m Measure) Extent {
	var e Extent
	if it.Path != nil {
		e.Join(Path(it.Path).Bounds())
		if it.Stroke != nil {
			e = e.Grown(it.Stroke.Width / 2)
		}
	}
	if t := it.Text; t != nil {
		var b Extent
		corners := t.Corners(m)
		b.Add(corners[:]...)
		if t.Halo != nil {
			b = b.Grown(t.Size * HaloWidth / 2)
		}
		e.Join(b)
	}
	if it.Image != nil {
		e.Add(it.Image.Min, it.Image.Max)
	}
	return e
}

// Bounds is the extent of all marks of a page.
func (p *Page) Bounds(m Measure) Extent {
	var e Extent
	p = p.Unfolded()
	for i := range p.Items {
		e.Join(p.Items[i].Bounds(m))
	}
	return e
}
