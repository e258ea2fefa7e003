package draw

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// matchDash is a long dash with two short ones (ISO 128-2 no. 09), mm.
var matchDash = []float64{9, 1.4, 2, 1.4, 2, 1.4}

// Match draws what ties the parts of a plan to each other.
type Match struct{ *Drawing }

// KeyRows are a small plan of the rooms with the parts that it is split into, the one at hand shaded.
func (c Match) KeyRows(t *layout.Tiles) []Row {
	return []Row{{Height: layout.KeyHigh + 1, Draw: func(p Pad, x, top float64) { c.drawKey(p, t, x, top) }}}
}

func (c Match) drawKey(p Pad, t *layout.Tiles, x, top float64) {
	g := box.Bounds{}
	for i := range t.Parts() {
		b := t.Part(i)
		g.All([]r2.Vec{b.Min, b.Max}, 0)
	}
	all := g.Box()
	scale := math.Min(layout.Measure/box.Width(all), layout.KeyHigh/box.Height(all))
	v := layout.ViewOf(all, box.Of(x, top-box.Height(all)*scale, x+box.Width(all)*scale, top), 1000/scale)
	shade := p.Look.Ramp.At(0)
	p.Rect(v.Box(t.Own(c.Part)), 0, p.Look.Quiet, &shade)
	p.cutAway(Hair, wallPieces(c.In.Setup, v)...)
	st := p.Small().Strong()
	for i := range t.Parts() {
		b := v.Box(t.Own(i))
		p.Rect(b, Hair, p.Look.Ink, nil)
		p.turned(box.At((b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y-st.Cap)/2), fmt.Sprint(i+1), st, ink.Centre, 0, &p.Look.Paper)
	}
}

// matchSeam is a match line on paper, and the part that goes on beyond it.
type matchSeam struct {
	from, to r2.Vec
	next     int
}

// seamsOf are the match lines of the part at hand, from edge to edge of a panel.
func (c Match) seamsOf(v layout.View) (all []matchSeam) {
	t := c.Tiles
	if t.Parts() == 1 {
		return nil
	}
	b, in := v.Box(t.Own(c.Part)), v.Panel
	x, y := c.Part%t.Nx, c.Part/t.Nx
	if x > 0 {
		all = append(all, matchSeam{box.At(b.Min.X, in.Min.Y), box.At(b.Min.X, in.Max.Y), c.Part - 1})
	}
	if x < t.Nx-1 {
		all = append(all, matchSeam{box.At(b.Max.X, in.Min.Y), box.At(b.Max.X, in.Max.Y), c.Part + 1})
	}
	if y > 0 {
		all = append(all, matchSeam{box.At(in.Min.X, b.Max.Y), box.At(in.Max.X, b.Max.Y), c.Part - t.Nx})
	}
	if y < t.Ny-1 {
		all = append(all, matchSeam{box.At(in.Min.X, b.Min.Y), box.At(in.Max.X, b.Min.Y), c.Part + t.Nx})
	}
	return all
}

// seams are the match lines as lettering keeps clear of them.
func (c Match) seams(v layout.View) (all []carto.Obstacle) {
	for _, s := range c.seamsOf(v) {
		c.used("match")
		all = append(all, carto.Obstacle{Outline: []r2.Vec{s.from, s.to}})
	}
	return all
}

// Lines draws the lines at which a part goes on on another, and says which.
func (c Match) Lines(p Pad, v layout.View) {
	for _, s := range c.seamsOf(v) {
		c.matchLine(p, s.from, s.to, s.next)
	}
}

// matchLine draws one line, lettered where that is clear of other lettering.
func (c Match) matchLine(p Pad, a, b r2.Vec, to int) {
	p.dashed(Thick, p.Look.Ink, matchDash, a, b)
	var taken []carto.Obstacle
	for i := range p.page.Items {
		if t := p.page.Items[i].Text; t != nil {
			q := t.Corners(p.Face)
			taken = append(taken, carto.Obstacle{Outline: q[:]})
		}
	}
	st, words := p.plan().Strong(), fmt.Sprintf("match line: part %d", to+1)
	along := r2.Sub(b, a)
	angle := carto.Upright(along)
	off := r2.Scale(st.Cap/2+1.2, ink.Direction(-angle))
	for _, share := range [...]float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		centre := r2.Add(box.Interpolate(a, b, share), off)
		if o := (carto.Obstacle{Outline: ink.TurnedBox(centre, st.boxOf(words), angle)}); !meets(o, taken) {
			p.turned(underMiddle(centre, st.Cap, angle), words, st, ink.Centre, angle, &p.Look.Paper)
			return
		}
	}
}
