package draw

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// squareOn is the cosine of an angle between walls that counts as none.
const squareOn = 0.99

// hole is where an opening cuts the wall, along it and in height, m; ok is false where it does not. One
// that was declared from the room behind cuts it too, at the far end of its depth.
func (f *WallFace) hole(o *plan.Opening) (b r2.Box, ok bool) {
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
	return box.Intersection(b, f.box())
}

// drawHoles draws the openings of the wall, with their names and sizes.
func (c Wall) drawHoles(p Pad, v layout.View, f WallFace, things []carto.Obstacle) []carto.Obstacle {
	var taken []carto.Obstacle
	for i := range c.In.Setup.Openings {
		o := &c.In.Setup.Openings[i]
		cut, ok := f.hole(o)
		if !ok {
			continue
		}
		hole, panes := v.Box(cut), [2]int{1, 1}
		q := p.On(ink.Walls).of("opening:"+o.Name, c.OpeningAlt(o))
		q.Rect(hole, Medium, p.Look.Ink, &p.Look.Paper)
		if o.Kind == term.Window {
			panes = o.Panes
			q.bars(hole, panes)
		}
		for k := range o.Dressing {
			q.hang(&o.Dressing[k], v, f)
		}
		taken = append(taken, carto.Obstacle{Outline: box.Corners(hole)}) // leaders of what stands before it cross it
		c.nameHole(p.On(ink.Notes).of("opening:"+o.Name, ""), hole, panes, c.holeWords(f, o, cut), things)
	}
	return taken
}

// hang draws a curtain on its wall by its edges and folds, and a blind by its slats.
func (p Pad) hang(d *plan.Dressing, v layout.View, f WallFace) {
	a, b := f.at(r3.Vec{X: d.A.X, Y: d.A.Y}).X, f.at(r3.Vec{X: d.B.X, Y: d.B.Y}).X
	on := v.Box(r2.Box{Min: r2.Vec{X: min(a, b), Y: d.Foot}, Max: r2.Vec{X: max(a, b), Y: d.Top}})
	const foldApart, slatApart = 2.5, 1.5 // mm
	if d.Slat > 0 {
		n := max(2, int(box.Height(on)/slatApart))
		for i := range n + 1 {
			y := on.Min.Y + box.Height(on)*float64(i)/float64(n)
			p.Line(Hair, p.Look.Ink, box.At(on.Min.X, y), box.At(on.Max.X, y))
		}
		return
	}
	p.Rect(on, Thin, p.Look.Ink, nil)
	for i, n := 1, int(box.Width(on)/foldApart); i < n; i++ {
		x := on.Min.X + box.Width(on)*float64(i)/float64(n)
		p.Line(Hair, p.Look.Ink, box.At(x, on.Min.Y), box.At(x, on.Max.Y))
	}
}

// holeWords are the name of an opening, its size on this wall and its sill.
func (c Wall) holeWords(f WallFace, o *plan.Opening, cut r2.Box) []string {
	words := []string{o.Name, c.Bare(box.Width(cut)) + " × " + c.Bare(box.Height(cut))}
	if sill := o.Sill - f.room.Base; sill > onFace {
		words = append(words, "sill "+c.Bare(sill))
	}
	return words
}

// nameHole letters an opening in a pane, else across it, clear of what stands before it: with its name over its size
// where there is room.
func (c Wall) nameHole(p Pad, hole r2.Box, panes [2]int, words []string, things []carto.Obstacle) {
	wide := []string{words[0], strings.Join(words[1:], ", ")}
	for _, rooms := range [...][]r2.Box{panesOf(hole, panes), {hole}} {
		for _, lines := range [...][]string{wide, words, words[:1]} {
			for _, room := range rooms {
				if c.letterHole(p, room, lines, things) {
					return
				}
			}
		}
	}
}

// letterHole letters lines in the middle of a box; false where they have no room there.
func (c Wall) letterHole(p Pad, room r2.Box, lines []string, things []carto.Obstacle) bool {
	st := p.place()
	size := r2.Vec{Y: st.Leading() * float64(len(lines))}
	for _, s := range lines {
		size.X = math.Max(size.X, st.Width(s)+1)
	}
	centre := box.Middle(room.Min, room.Max)
	taken := ink.TurnedBox(centre, size, 0)
	if !box.AllIn(taken, box.Inset(room, 0.5, 0.5)) || meets(carto.Obstacle{Outline: taken}, things) {
		return false
	}
	for i, s := range lines {
		down := st.Leading() * (float64(i) - float64(len(lines)-1)/2)
		p.turned(underMiddle(r2.Sub(centre, box.At(0, down)), st.Cap, 0), s, st, ink.Centre, 0, &p.Look.Paper)
	}
	return true
}

// panesOf are the panes of a window, those nearest to its middle first.
func panesOf(hole r2.Box, panes [2]int) (all []r2.Box) {
	nx, ny := max(panes[0], 1), max(panes[1], 1)
	w, h := box.Width(hole)/float64(nx), box.Height(hole)/float64(ny)
	for j := range ny {
		for i := range nx {
			corner := r2.Add(hole.Min, box.At(w*float64(i), h*float64(j)))
			all = append(all, r2.Box{Min: corner, Max: r2.Add(corner, box.At(w, h))})
		}
	}
	middle := box.Middle(hole.Min, hole.Max)
	off := func(b r2.Box) float64 { return r2.Norm(r2.Sub(box.Middle(b.Min, b.Max), middle)) }
	slices.SortStableFunc(all, func(a, b r2.Box) int { return cmp.Compare(math.Round(off(a)*100), math.Round(off(b)*100)) })
	return all
}

// bars draws the bars between panes.
func (p Pad) bars(hole r2.Box, panes [2]int) {
	for i := 1; i < panes[0]; i++ {
		x := hole.Min.X + box.Width(hole)*float64(i)/float64(panes[0])
		p.Line(Thin, p.Look.Ink, box.At(x, hole.Min.Y), box.At(x, hole.Max.Y))
	}
	for i := 1; i < panes[1]; i++ {
		y := hole.Min.Y + box.Height(hole)*float64(i)/float64(panes[1])
		p.Line(Thin, p.Look.Ink, box.At(hole.Min.X, y), box.At(hole.Max.X, y))
	}
}
