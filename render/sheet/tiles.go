package sheet

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// A plan that is too large for its paper at the smallest scale that is read with ease is split into
// parts, a page each, which lie over each other along match lines.
const (
	overlap   = 12.0 // mm of the set that two neighbours both show
	mostParts = 16
	keyHigh   = 34.0 // mm, the key to the parts at most
)

// matchDash is a long dash with two short ones (ISO 128-2 no. 09), mm.
var matchDash = []float64{9, 1.4, 2, 1.4, 2, 1.4}

// tiles are the parts of a plan: their number across and down, and where the first lies. The zero
// value is a plan in one piece.
type tiles struct {
	nx, ny int
	first  r2.Box // m: what the part at the upper left shows
	step   r2.Vec // m, from part to part
}

// parts is how many there are.
func (t tiles) parts() int { return max(1, t.nx) * max(1, t.ny) }

// part is what part i shows, m; they are counted as one reads.
func (t tiles) part(i int) r2.Box {
	shift := r2.Vec{X: t.step.X * float64(i%t.nx), Y: -t.step.Y * float64(i/t.nx)}
	return r2.Box{Min: r2.Add(t.first.Min, shift), Max: r2.Add(t.first.Max, shift)}
}

// own is what part i shows that no other does, up to the match lines, m.
func (t tiles) own(i int) r2.Box {
	b := t.part(i)
	half := r2.Scale(0.5, r2.Sub(r2.Sub(b.Max, b.Min), t.step)) // of the overlap
	if i%t.nx > 0 {
		b.Min.X += half.X
	}
	if i%t.nx < t.nx-1 {
		b.Max.X -= half.X
	}
	if i/t.nx > 0 {
		b.Max.Y -= half.Y
	}
	if i/t.nx < t.ny-1 {
		b.Min.Y += half.Y
	}
	return b
}

// tiled splits an extent over panels of a size, at a scale. ok is false where that takes too many.
func tiled(extent, panel r2.Box, times float64) (t tiles, ok bool) {
	metres := times / 1000
	split := func(need, have float64) (n int, step float64) {
		if need <= have {
			return 1, 0
		}
		n = int(math.Ceil((need - overlap) / (have - overlap)))
		return n, (need - have) / float64(n-1)
	}
	w, h := width(panel)-2*marginX, height(panel)-2*marginY
	if w < 5*overlap || h < 5*overlap {
		return t, false
	}
	needX, needY := width(extent)/metres, height(extent)/metres
	if !(needX < 1e6 && needY < 1e6) {
		return t, false
	}
	var stepX, stepY float64
	t.nx, stepX = split(needX, w)
	t.ny, stepY = split(needY, h)
	t.step = r2.Vec{X: stepX * metres, Y: stepY * metres}
	middleX, middleY := (extent.Min.X+extent.Max.X)/2, (extent.Min.Y+extent.Max.Y)/2
	x := middleX - t.step.X*float64(t.nx-1)/2
	y := middleY + t.step.Y*float64(t.ny-1)/2
	half := r2.Vec{X: w * metres / 2, Y: h * metres / 2}
	t.first = box(x-half.X, y-half.Y, x+half.X, y+half.Y)
	return t, t.parts() <= mostParts
}

// split is the layout of a plan in parts on a paper: the fewest that there can be.
func (f *fitter) split(p Paper, times float64) (best layout, ok bool) {
	try := func(l layout) {
		t, fits := tiled(f.extent, l.plan, times)
		if fits && (!ok || t.parts() < best.tiles.parts()) {
			best, ok = l, true
			best.tiles, best.times = t, times
		}
	}
	for _, upright := range [...]bool{false, true} {
		if f.way == Portrait && !upright || f.way == Landscape && upright {
			continue
		}
		page := sheetOf(p, upright)
		head := f.head(page.grand())
		try(page.side(1, 0, head))
		try(page.below(math.Max(head+2*pads, blockHigh+barHeight+2*barGap), head))
	}
	return best, ok
}

// inPartsAt is the largest scale at which a plan in parts is not too many of them.
func (f *fitter) inPartsAt(p Paper) (times float64, ok bool) {
	for _, times := range f.scales {
		if _, ok := f.split(p, times); ok {
			return times, true
		}
	}
	return 0, false
}

// pourParts fills the collar of the first part.
func (f *fitter) pourParts(l *layout, key *block) {
	f.keys = append([]*block{key}, f.blocks[:min(1, len(f.blocks))]...) // the key of levels comes first
	l.pieces, l.left = pour(whole(append([]*block{key}, ranked(f.blocks)...)), l.slots)
}

// drawParts draws the pages of a plan in parts, the first with what the collar holds.
func (s *sheet) drawParts() []ink.Page {
	var pages []ink.Page
	for i := range s.layout.tiles.parts() {
		l := s.layout
		if i > 0 {
			l.pieces, _ = pour(whole(s.fitter.keys), l.slots)
		}
		pages = append(pages, s.c.planPart(&l, i))
	}
	return pages
}

// planPart draws one part of a plan.
func (c *composer) planPart(l *layout, i int) ink.Page {
	v := viewOf(l.tiles.part(i), l.plan, l.times)
	c.part = i
	page := c.planPage(l, v)
	word := fmt.Sprintf("part %d of %d", i+1, l.tiles.parts())
	page.Title = joined(", ", page.Title, word)
	if i > 0 {
		page.Name = fmt.Sprintf("part-%d", i+1)
	}
	page.Description += " This is " + word + "."
	c.matchLines(c.p.with(&page).on(ink.Notes), l, v, i)
	return page
}

// cropFrom leaves of the items from one on what lies in a panel; lettering that does not wholly is
// left out.
func cropFrom(page *ink.Page, first int, panel r2.Box, face ink.Measure) {
	kept, clip := page.Items[:first], 0
	for _, it := range page.Items[first:] {
		b := it.Bounds(face).Box
		whole := contains(panel, b.Min) && contains(panel, b.Max)
		switch {
		case b.Max.X <= panel.Min.X || b.Min.X >= panel.Max.X || b.Max.Y <= panel.Min.Y || b.Min.Y >= panel.Max.Y:
			continue
		case it.Text != nil && !whole:
			continue
		case !whole:
			if clip == 0 {
				page.Clips = append(page.Clips, corners(panel))
				clip = len(page.Clips)
			}
			it.Clip = clip
		}
		kept = append(kept, it)
	}
	page.Items = kept
}

// keyToParts is a small plan of the rooms with the parts that it is split into, the one at hand
// shaded.
func (c *composer) keyToParts(t *tiles) *section {
	return &section{title: "Parts", drawn: []row{{height: keyHigh + 1, draw: func(p pad, x, top float64) { c.drawKey(p, t, x, top) }}}}
}

func (c *composer) drawKey(p pad, t *tiles, x, top float64) {
	g := gatherer{}
	for i := range t.parts() {
		b := t.part(i)
		g.all([]r2.Vec{b.Min, b.Max}, 0)
	}
	all := g.box()
	scale := math.Min(measure/width(all), keyHigh/height(all))
	v := viewOf(all, box(x, top-height(all)*scale, x+width(all)*scale, top), 1000/scale)
	shade := p.look.Ramp.Tints(3)[1]
	p.rect(onPaper(v, t.own(c.part)), 0, p.look.Quiet, &shade)
	for i := range c.in.Setup.Walls {
		if w := &c.in.Setup.Walls[i]; w.Opening == "" {
			p.outline(0, p.look.Wall, &p.look.Wall, v.all(w.Outline)...)
		}
	}
	st := p.small().strong()
	for i := range t.parts() {
		b := onPaper(v, t.own(i))
		p.rect(b, hair, p.look.Ink, nil)
		p.turned(at((b.Min.X+b.Max.X)/2, (b.Min.Y+b.Max.Y-st.cap)/2), fmt.Sprint(i+1), st, ink.Centre, 0, &p.look.Paper)
	}
}

// onPaper takes a box of the set to paper.
func onPaper(v view, b r2.Box) r2.Box { return r2.Box{Min: v.mm(b.Min), Max: v.mm(b.Max)} }

// matchLines draws the lines at which a part goes on on another, and says which.
func (c *composer) matchLines(p pad, l *layout, v view, i int) {
	t, b := l.tiles, onPaper(v, l.tiles.own(i))
	x, y := i%t.nx, i/t.nx
	if x > 0 {
		c.matchLine(p, at(b.Min.X, l.plan.Min.Y), at(b.Min.X, l.plan.Max.Y), i-1)
	}
	if x < t.nx-1 {
		c.matchLine(p, at(b.Max.X, l.plan.Min.Y), at(b.Max.X, l.plan.Max.Y), i+1)
	}
	if y > 0 {
		c.matchLine(p, at(l.plan.Min.X, b.Max.Y), at(l.plan.Max.X, b.Max.Y), i-t.nx)
	}
	if y < t.ny-1 {
		c.matchLine(p, at(l.plan.Min.X, b.Min.Y), at(l.plan.Max.X, b.Min.Y), i+t.nx)
	}
}

// matchLine draws one line, lettered where that is clear of other lettering.
func (c *composer) matchLine(p pad, a, b r2.Vec, to int) {
	p.dashed(thick, p.look.Ink, matchDash, a, b)
	var taken []carto.Obstacle
	for i := range p.page.Items {
		if t := p.page.Items[i].Text; t != nil {
			q := t.Corners(p.face)
			taken = append(taken, carto.Obstacle{Outline: q[:]})
		}
	}
	st, words := p.small().strong(), fmt.Sprintf("match line: part %d", to+1)
	along := r2.Sub(b, a)
	angle := carto.Upright(along)
	off := r2.Scale(st.cap/2+1.2, ink.Direction(-angle))
	for _, share := range [...]float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9} {
		centre := r2.Add(mix(a, b, share), off)
		if o := (carto.Obstacle{Outline: turnedBox(centre, st.boxOf(words), angle)}); !meets(o, taken) {
			p.turned(underMiddle(centre, st.cap, angle), words, st, ink.Centre, angle, &p.look.Paper)
			return
		}
	}
}

// splitNote says that a plan comes in parts, and which paper would hold it in one piece.
func (c *composer) splitNote(f *fitter, l *layout) {
	hint := ""
	for _, p := range papersOf(c.in.Setup.Feet) {
		if whole, ok := f.best(p); ok && whole.times <= l.times {
			hint = fmt.Sprintf("--paper %s holds it in one piece at %s", p.Name, unit.FormatScale(whole.times, c.in.Setup.Feet))
			break
		}
	}
	c.log.add(source.Diagnostic{Severity: source.Info, Code: "plan-in-parts", Setup: c.in.Setup.Name, Hint: hint,
		Message: fmt.Sprintf("the plan does not fit on %s at %s and is split into %d parts with match lines",
			l.paper.Name, unit.FormatScale(l.times, c.in.Setup.Feet), l.tiles.parts())})
}
