package draw

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// overprints says on the map what it leaves out.
type overprints struct{ *Drawing }

// The overprint of a map that leaves something out: the air round its lettering, and how far apart the places
// are that are tried for it, mm.
const (
	overprintAir  = 1.4
	overprintStep = 1.5
	aside         = 0.02 // what a distance between middles weighs against one between edges
)

// overprintWide is how wide the lettering may run, mm: the first with which it finds a clear place.
var overprintWide = [...]float64{62, 40, 27}

// overprint says on the map what it leaves out, in a box beside it where that covers least, and returns the paper it
// takes.
func (c overprints) overprint(p Pad, v layout.View, taken, soft []carto.Obstacle) []carto.Obstacle {
	if len(section.NotInMaps(c.In)) == 0 {
		return nil
	}
	st := c.Pad.plan().Strong().inked(c.Pad.Look.Alarm)
	lines, b := c.overprintBox(v, st, taken, soft)
	p = p.On(ink.Notes).of("not-in-this-map", "")
	p.Rect(b, Thin, p.Look.Alarm, &p.Look.Paper)
	for i, l := range lines {
		p.Text(box.At(b.Min.X+overprintAir, b.Max.Y-overprintAir-st.Cap-st.Leading()*float64(i)), l, st, ink.Left)
	}
	return []carto.Obstacle{hard(box.Inset(b, -1, -1))}
}

// overprintBox sets the overprint and finds its place: where it meets nothing, else where it meets only what
// lettering may cover if it must. Where there is none it lies over the plan, which counts as a label lost.
func (c overprints) overprintBox(v layout.View, st style, taken, soft []carto.Obstacle) (lines []string, place r2.Box) {
	area, by := box.Inset(v.Panel, 2, 2), mapOnPaper(c.In, v)
	for _, avoid := range [...][]carto.Obstacle{slices.Concat(soft, taken), taken} {
		for _, wide := range overprintWide {
			var size r2.Vec
			lines, size = c.overprintLines(st, wide)
			if b, ok := clearBox(area, by, size, avoid); ok {
				return lines, b
			}
		}
	}
	c.Reduced++
	lines, size := c.overprintLines(st, overprintWide[0])
	return lines, box.Of(area.Min.X, area.Max.Y-size.Y, area.Min.X+size.X, area.Max.Y)
}

// mapOnPaper is the box of the first map, as far as the panel shows it.
func mapOnPaper(in *section.Input, v layout.View) r2.Box {
	g := &in.Maps()[0].Grid
	b := v.Box(r2.Box{Min: g.Origin, Max: g.At(g.NX-1, g.NY-1)})
	return box.Of(max(b.Min.X, v.Panel.Min.X), max(b.Min.Y, v.Panel.Min.Y), min(b.Max.X, v.Panel.Max.X), min(b.Max.Y, v.Panel.Max.Y))
}

// overprintLines are the lines of the overprint, of all maps on the sheet, and the size of its box.
func (c overprints) overprintLines(st style, wide float64) (lines []string, size r2.Vec) {
	for _, words := range section.NotInMaps(c.In) {
		lines = append(lines, c.Set(words, st, wide, 0)...)
	}
	for _, l := range lines {
		size.X = max(size.X, st.Width(l)+2*overprintAir)
	}
	size.Y = float64(len(lines)-1)*st.Leading() + st.Cap + 2*overprintAir
	return lines, size
}

// clearBox is the place for a box in an area, from its upper left on, that meets nothing and is nearest to what it
// is about.
func clearBox(area, about r2.Box, size r2.Vec, taken []carto.Obstacle) (best r2.Box, ok bool) {
	nearest := math.Inf(1)
	for y := area.Max.Y; y-size.Y >= area.Min.Y; y -= overprintStep {
		for x := area.Min.X; x+size.X <= area.Max.X; x += overprintStep {
			b := box.Of(x, y-size.Y, x+size.X, y)
			if far := box.Distance(b, about) + aside*r2.Norm(r2.Sub(box.Centre(b), box.Centre(about))); far < nearest && !meets(carto.Obstacle{Outline: box.Corners(box.Inset(b, -1, -1))}, taken) {
				best, nearest, ok = b, far, true
			}
		}
	}
	return best, ok
}
