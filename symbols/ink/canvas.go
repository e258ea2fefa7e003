package ink

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
)

// Pen is how a mark is drawn: a line of Width mm, none where that is 0, and a fill, none where it
// is nil.
type Pen struct {
	Colour Colour
	Width  float64
	Dash   []float64 // mm
	Round  bool      // round caps and joins; else butt caps and mitre joins
	Fill   *Colour
}

// Solid is a pen that only fills.
func Solid(c Colour) Pen { return Pen{Fill: &c} }

// Filled is the pen with a fill.
func (p Pen) Filled(c Colour) Pen { p.Fill = &c; return p }

// Dashed is the pen with lengths of dash and gap in turn, mm.
func (p Pen) Dashed(lengths ...float64) Pen { p.Dash = lengths; return p }

// stroke is the pen's line, nil where it draws none.
func (p Pen) stroke() *Stroke {
	if p.Width <= 0 {
		return nil
	}
	return &Stroke{Colour: p.Colour, Width: p.Width, Dash: p.Dash, Round: p.Round}
}

// Canvas draws on one layer of a page, in a frame of its own. It is passed by value: what On, Of,
// At and Within return draws on the same page and leaves the canvas as it was.
//
// Points are in the frame; widths, dashes, heads of arrows, spacings and text are millimetres on
// paper at any scale of the frame, as a drawing office has it.
type Canvas struct {
	page   *Page
	frame  Frame
	layer  Layer
	object string
	alt    *string  // for the next mark
	clip   []r2.Vec // on paper, nil for none
}

// NewCanvas returns a canvas on a layer of a page, in the frame of the paper.
func NewCanvas(page *Page, l Layer) Canvas { return Canvas{page: page, frame: Paper(), layer: l} }

// On is the canvas on another layer.
func (c Canvas) On(l Layer) Canvas { c.layer = l; return c }

// Of is the canvas drawing a thing. The first mark drawn on it or its copies carries the sentence
// alt.
func (c Canvas) Of(object, alt string) Canvas { c.object, c.alt = object, &alt; return c }

// At is the canvas in the frame of a thing that stands at p, turned clockwise by bearing degrees
// and drawn scale times as large.
func (c Canvas) At(p r2.Vec, bearing, scale float64) Canvas {
	c.frame = c.frame.At(p, bearing, scale)
	return c
}

// Frame is where the canvas's axes lie on paper.
func (c Canvas) Frame() Frame { return c.frame }

// Within is the canvas inside a convex polygon, and inside those it was within before.
func (c Canvas) Within(convex ...r2.Vec) Canvas {
	clip := c.placed(convex)
	if c.clip != nil {
		clip = ClipPolygon(clip, c.clip)
	}
	if len(clip) < 3 || signedArea(clip) == 0 {
		clip = []r2.Vec{} // nothing is inside
	}
	c.clip = clip
	return c
}

// Draw draws a path of the frame.
func (c Canvas) Draw(pen Pen, p Path) { c.DrawPlaced(pen, c.frame.Path(p)) }

// DrawPlaced draws a path that is on paper already.
func (c Canvas) DrawPlaced(pen Pen, p Path) {
	stroke := pen.stroke()
	if len(p) == 0 || stroke == nil && pen.Fill == nil {
		return
	}
	c.add(Item{Path: p, Stroke: stroke, Fill: pen.Fill})
}

// Polyline draws an open line.
func (c Canvas) Polyline(pen Pen, points ...r2.Vec) {
	if len(points) > 1 {
		c.Draw(pen, Polyline(points...))
	}
}

// Polygon draws a closed ring.
func (c Canvas) Polygon(pen Pen, points ...r2.Vec) { c.Draw(pen, Polygon(points...)) }

// Rect draws the box between two corners.
func (c Canvas) Rect(pen Pen, a, b r2.Vec) { c.Draw(pen, Rect(a, b)) }

// Circle draws a circle.
func (c Canvas) Circle(pen Pen, centre r2.Vec, radius float64) { c.Draw(pen, Circle(centre, radius)) }

// Arc draws a part of a circle between two bearings of the frame, degrees clockwise.
func (c Canvas) Arc(pen Pen, centre r2.Vec, radius, from, to float64) {
	c.Draw(pen, Arc(centre, radius, from, to))
}

// Segments draws separate straight lines as one mark.
func (c Canvas) Segments(pen Pen, lines ...[2]r2.Vec) { c.Draw(pen, segments(lines)) }

// Hatch fills rings, by the even-odd rule, with lines at a bearing on paper, spacing mm apart.
func (c Canvas) Hatch(pen Pen, spacing, bearing float64, rings ...[]r2.Vec) {
	placed := make([][]r2.Vec, len(rings))
	for i, ring := range rings {
		placed[i] = c.placed(ring)
	}
	c.DrawPlaced(pen, segments(Hatch(placed, spacing, bearing)))
}

// Ticks draws short strokes on one side of a line, as Ticks lays them; lengths are mm on paper.
func (c Canvas) Ticks(pen Pen, spacing, length float64, points ...r2.Vec) {
	c.DrawPlaced(pen, segments(Ticks(c.placed(points), spacing, length)))
}

// Arrow draws a line with a solid head of a length, mm, at its end.
func (c Canvas) Arrow(pen Pen, head float64, points ...r2.Vec) { c.arrow(pen, head, false, points) }

// DoubleArrow draws a line with a solid head at each end.
func (c Canvas) DoubleArrow(pen Pen, head float64, points ...r2.Vec) {
	c.arrow(pen, head, true, points)
}

// arrow ends the line inside the heads, so that its butt ends do not show beside their tips.
func (c Canvas) arrow(pen Pen, head float64, both bool, points []r2.Vec) {
	n := len(points)
	if n < 2 {
		return
	}
	line := c.placed(points)
	heads := Path{}
	end := func(at, from int) {
		if bearing := Bearing(line[from], line[at]); line[at] != line[from] {
			heads = append(heads, ArrowHead(line[at], bearing, head)...)
			line[at] = r2.Sub(line[at], r2.Scale(min(head/2, r2.Norm(r2.Sub(line[at], line[from]))), Direction(bearing)))
		}
	}
	end(n-1, n-2)
	if both {
		end(0, 1)
	}
	pen.Fill = nil
	c.DrawPlaced(pen, Polyline(line...))
	c.DrawPlaced(Solid(pen.Colour), heads)
}

// Text letters t: its At is in the frame, its angle and size are on paper, so that it stays
// upright in a thing that is turned.
func (c Canvas) Text(t Text) {
	if Clean(t.S) == "" {
		return
	}
	t.At = c.frame.Place(t.At)
	c.add(Item{Text: &t})
}

// Image lays a raster into the box between its two corners, upright on paper.
func (c Canvas) Image(m Image) {
	box := Corners(c.frame.Place(m.Min), c.frame.Place(m.Max))
	m.Min, m.Max = box[0], box[2]
	c.add(Item{Image: &m})
}

// add puts a mark on the page, cut to the clip.
func (c Canvas) add(it Item) {
	it.Layer, it.Object = c.layer, c.object
	if c.clip != nil && !c.cut(&it) {
		return
	}
	if c.alt != nil {
		it.Alt, *c.alt = *c.alt, ""
	}
	c.page.Items = append(c.page.Items, it)
}

// placed returns points of the frame on paper.
func (c Canvas) placed(points []r2.Vec) []r2.Vec {
	out := make([]r2.Vec, len(points))
	for i, p := range points {
		out[i] = c.frame.Place(p)
	}
	return out
}

// segments is separate lines as one path.
func segments(lines [][2]r2.Vec) Path {
	p := make(Path, 0, 2*len(lines))
	for _, l := range lines {
		p = p.MoveTo(l[0]).LineTo(l[1])
	}
	return p
}

// cut clips a mark to the canvas's clip, by geometry where that gives the same picture: what lies
// inside stays as it is, and a plain fill is cut. For the rest the item names the clip and the
// writers do it. It says whether anything may be left.
func (c Canvas) cut(it *Item) bool {
	if len(c.clip) == 0 {
		return false
	}
	if it.Text == nil {
		b := it.Bounds(nil)
		if it.Stroke != nil && !it.Stroke.Round {
			b = b.Grown(it.Stroke.Width / 2 * (MitreLimit - 1))
		}
		box := Corners(b.Box.Min, b.Box.Max)
		if !slices.ContainsFunc(box, func(p r2.Vec) bool { return !contains(c.clip, p) }) {
			return true
		}
		if len(ClipPolygon(box, c.clip)) == 0 {
			return false
		}
	}
	if it.Path != nil && it.Stroke == nil && straight(it.Path) {
		var p Path
		for _, run := range Path(it.Path).Flatten(1) {
			p = append(p, Polygon(ClipPolygon(run.Points, c.clip)...)...)
		}
		it.Path = p
		return len(p) > 0
	}
	it.Clip = c.page.clip(c.clip)
	return true
}

// clip returns the number under which items name a clip of the page.
func (p *Page) clip(convex []r2.Vec) int {
	for i := range p.Clips {
		if slices.Equal(p.Clips[i], convex) {
			return i + 1
		}
	}
	p.Clips = append(p.Clips, convex)
	return len(p.Clips)
}

// straight says whether a path has no curves.
func straight(p []Segment) bool {
	return !slices.ContainsFunc(p, func(s Segment) bool { return s.Op == Curve })
}

// contains says whether p lies in a convex polygon or on its edge.
func contains(convex []r2.Vec, p r2.Vec) bool {
	turn := signedArea(convex)
	for i, a := range convex {
		if side(a, convex[(i+1)%len(convex)], p)*turn < 0 {
			return false
		}
	}
	return true
}
