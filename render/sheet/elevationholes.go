package sheet

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// squareOn is the cosine of an angle between walls that counts as none.
const squareOn = 0.99

// hole is where an opening cuts the wall, along it and in height, m; ok is false where it does not. One
// that was declared from the room behind cuts it too, at the far end of its depth.
func (f *face) hole(o *plan.Opening) (b r2.Box, ok bool) {
	left, right := o.Left, o.Right
	if o.Room != f.room.Name || o.Wall != f.wall.Name {
		through := r2.Scale(o.Depth, o.Outward)
		left, right = r2.Add(o.Right, through), r2.Add(o.Left, through)
		back := r2.Dot(o.Outward, f.wall.Outward) < -squareOn
		if !back || math.Abs(f.off(left)) > onFace || math.Abs(f.off(right)) > onFace {
			return b, false
		}
	}
	from, to := f.at(r3.Vec{X: left.X, Y: left.Y}), f.at(r3.Vec{X: right.X, Y: right.Y})
	b = r2.Box{Min: r2.Vec{X: from.X, Y: o.Sill}, Max: r2.Vec{X: to.X, Y: o.Head}}
	return common(b, f.box())
}

// common is what two boxes share; ok is false where that is nothing.
func common(a, b r2.Box) (shared r2.Box, ok bool) {
	shared = r2.Box{
		Min: r2.Vec{X: math.Max(a.Min.X, b.Min.X), Y: math.Max(a.Min.Y, b.Min.Y)},
		Max: r2.Vec{X: math.Min(a.Max.X, b.Max.X), Y: math.Min(a.Max.Y, b.Max.Y)},
	}
	return shared, shared.Max.X > shared.Min.X && shared.Max.Y > shared.Min.Y
}

// drawHoles draws the openings of the wall, with their names and sizes.
func (c wallDrawing) drawHoles(p pad, v view, f face) []carto.Obstacle {
	var taken []carto.Obstacle
	for i := range c.in.Setup.Openings {
		o := &c.in.Setup.Openings[i]
		cut, ok := f.hole(o)
		if !ok {
			continue
		}
		hole, panes := onPaper(v, cut), [2]int{1, 1}
		q := p.on(ink.Walls).of("opening:"+o.Name, c.openingAlt(o))
		q.rect(hole, medium, p.look.Ink, &p.look.Paper)
		if o.Kind == "window" {
			panes = o.Panes
			q.bars(hole, panes)
		}
		taken = append(taken, hard(hole))
		c.nameHole(p.on(ink.Notes).of("opening:"+o.Name, ""), hole, panes, c.holeWords(f, o, cut))
	}
	return taken
}

// holeWords are the name of an opening, its size on this wall and its sill.
func (c wallDrawing) holeWords(f face, o *plan.Opening, cut r2.Box) []string {
	words := []string{o.Name, c.bare(width(cut)) + " × " + c.bare(height(cut))}
	if sill := o.Sill - f.room.Base; sill > onFace {
		words = append(words, "sill "+c.bare(sill))
	}
	return words
}

// nameHole letters an opening in a pane, else across it: with its name over its size where there is room.
func (c wallDrawing) nameHole(p pad, hole r2.Box, panes [2]int, words []string) {
	wide := []string{words[0], strings.Join(words[1:], ", ")}
	for _, room := range [...]r2.Box{paneOf(hole, panes), hole} {
		for _, lines := range [...][]string{wide, words, words[:1]} {
			if c.letterHole(p, room, lines) {
				return
			}
		}
	}
}

// letterHole letters lines in the middle of a box; false where they have no room there.
func (c wallDrawing) letterHole(p pad, room r2.Box, lines []string) bool {
	st := p.quiet()
	size := r2.Vec{Y: st.leading() * float64(len(lines))}
	for _, s := range lines {
		size.X = math.Max(size.X, st.width(s)+1)
	}
	centre := middle(room.Min, room.Max)
	if !allIn(turnedBox(centre, size, 0), inset(room, 0.5, 0.5)) {
		return false
	}
	for i, s := range lines {
		down := st.leading() * (float64(i) - float64(len(lines)-1)/2)
		p.turned(underMiddle(r2.Sub(centre, at(0, down)), st.cap, 0), s, st, ink.Centre, 0, &p.look.Paper)
	}
	return true
}

// paneOf is the pane of a window that is nearest to its middle, the lower left of several.
func paneOf(hole r2.Box, panes [2]int) r2.Box {
	nx, ny := max(panes[0], 1), max(panes[1], 1)
	w, h := width(hole)/float64(nx), height(hole)/float64(ny)
	corner := r2.Add(hole.Min, at(w*float64((nx-1)/2), h*float64((ny-1)/2)))
	return r2.Box{Min: corner, Max: r2.Add(corner, at(w, h))}
}

// bars draws the bars between panes.
func (p pad) bars(hole r2.Box, panes [2]int) {
	for i := 1; i < panes[0]; i++ {
		x := hole.Min.X + width(hole)*float64(i)/float64(panes[0])
		p.line(thin, p.look.Ink, at(x, hole.Min.Y), at(x, hole.Max.Y))
	}
	for i := 1; i < panes[1]; i++ {
		y := hole.Min.Y + height(hole)*float64(i)/float64(panes[1])
		p.line(thin, p.look.Ink, at(hole.Min.X, y), at(hole.Max.X, y))
	}
}
