package sheet

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// overprints says on the map what it leaves out.
type overprints struct{ *drawing }

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
func (c overprints) overprint(p pad, v view, taken, soft []carto.Obstacle) []carto.Obstacle {
	if len(notInMaps(c.in)) == 0 {
		return nil
	}
	st := c.p.small().strong().inked(c.p.look.Alarm)
	lines, b := c.overprintBox(v, st, taken, soft)
	p = p.on(ink.Notes).of("not-in-this-map", "")
	p.rect(b, thin, p.look.Alarm, &p.look.Paper)
	for i, l := range lines {
		p.text(at(b.Min.X+overprintAir, b.Max.Y-overprintAir-st.cap-st.leading()*float64(i)), l, st, ink.Left)
	}
	return []carto.Obstacle{hard(inset(b, -1, -1))}
}

// overprintBox sets the overprint and finds its place: where it meets nothing, else where it meets only what had
// better not be covered. Where there is none it lies over the plan, which counts as a label lost.
func (c overprints) overprintBox(v view, st style, taken, soft []carto.Obstacle) (lines []string, place r2.Box) {
	area, by := inset(v.panel, 2, 2), mapOnPaper(c.in, v)
	for _, avoid := range [...][]carto.Obstacle{slices.Concat(soft, taken), taken} {
		for _, wide := range overprintWide {
			var size r2.Vec
			lines, size = c.overprintLines(st, wide)
			if b, ok := clearBox(area, by, size, avoid); ok {
				return lines, b
			}
		}
	}
	c.reduced++
	lines, size := c.overprintLines(st, overprintWide[0])
	return lines, box(area.Min.X, area.Max.Y-size.Y, area.Min.X+size.X, area.Max.Y)
}

// mapOnPaper is the box of the first map, as far as the panel shows it.
func mapOnPaper(in *Input, v view) r2.Box {
	g := &in.fields()[0].Grid
	b := onPaper(v, r2.Box{Min: g.Origin, Max: g.At(g.NX-1, g.NY-1)})
	return box(max(b.Min.X, v.panel.Min.X), max(b.Min.Y, v.panel.Min.Y), min(b.Max.X, v.panel.Max.X), min(b.Max.Y, v.panel.Max.Y))
}

// overprintLines are the lines of the overprint, of all maps on the sheet, and the size of its box.
func (c overprints) overprintLines(st style, wide float64) (lines []string, size r2.Vec) {
	for _, words := range notInMaps(c.in) {
		lines = append(lines, c.set(words, st, wide, 0)...)
	}
	for _, l := range lines {
		size.X = max(size.X, st.width(l)+2*overprintAir)
	}
	size.Y = float64(len(lines)-1)*st.leading() + st.cap + 2*overprintAir
	return lines, size
}

// clearBox is the place for a box in an area, from its upper left on, that meets nothing and is nearest to what it
// is about.
func clearBox(area, about r2.Box, size r2.Vec, taken []carto.Obstacle) (best r2.Box, ok bool) {
	nearest := math.Inf(1)
	for y := area.Max.Y; y-size.Y >= area.Min.Y; y -= overprintStep {
		for x := area.Min.X; x+size.X <= area.Max.X; x += overprintStep {
			b := box(x, y-size.Y, x+size.X, y)
			if far := apart(b, about) + aside*r2.Norm(r2.Sub(centre(b), centre(about))); far < nearest && !meets(carto.Obstacle{Outline: corners(inset(b, -1, -1))}, taken) {
				best, nearest, ok = b, far, true
			}
		}
	}
	return best, ok
}

func centre(b r2.Box) r2.Vec { return middle(b.Min, b.Max) }

// apart is how far two boxes are from each other; 0 where they share paper.
func apart(a, b r2.Box) float64 {
	return math.Hypot(max(0, a.Min.X-b.Max.X, b.Min.X-a.Max.X), max(0, a.Min.Y-b.Max.Y, b.Min.Y-a.Max.Y))
}

// standObstacles are the symbols as they stand on the plan.
func (c planDrawing) standObstacles() []carto.Obstacle {
	var all []carto.Obstacle
	for _, d := range c.stands {
		all = append(all, carto.Obstacle{Outline: d.Body})
	}
	return all
}

// floors are the floors of the rooms, which the map is read on.
func floorOutlines(s *plan.Setup, v view) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range s.Rooms {
		for _, part := range s.Rooms[i].Parts {
			all = append(all, carto.Obstacle{Outline: v.all(part)})
		}
	}
	return all
}
