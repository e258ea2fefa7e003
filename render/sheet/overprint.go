package sheet

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// The overprint of a map that leaves something out: the air round its lettering, and how far apart the places
// are that are tried for it, mm.
const (
	overprintAir  = 1.4
	overprintStep = 1.5
)

// overprintWide is how wide the lettering may run, mm: the first with which it finds a clear place.
var overprintWide = [...]float64{62, 40, 27}

// overprint says on the map what it leaves out, in a box where that covers least, and returns the paper it takes.
func (c *composer) overprint(p pad, v view, taken, soft []carto.Obstacle) []carto.Obstacle {
	if len(c.notInMaps()) == 0 {
		return nil
	}
	st := c.p.small().strong().inked(c.p.look.Alarm)
	lines, b := c.overprintBox(inset(v.panel, 2, 2), st, taken, soft)
	p = p.on(ink.Notes).of("not-in-this-map", "")
	p.rect(b, thin, p.look.Alarm, &p.look.Paper)
	for i, l := range lines {
		p.text(at(b.Min.X+overprintAir, b.Max.Y-overprintAir-st.cap-st.leading()*float64(i)), l, st, ink.Left)
	}
	return []carto.Obstacle{hard(inset(b, -1, -1))}
}

// overprintBox sets the overprint and finds its place in an area: the first that meets nothing, else the first that
// meets only what had better not be covered, else the upper left corner.
func (c *composer) overprintBox(area r2.Box, st style, taken, soft []carto.Obstacle) (lines []string, place r2.Box) {
	for _, avoid := range [...][]carto.Obstacle{append(soft[:len(soft):len(soft)], taken...), taken, nil} {
		for _, wide := range overprintWide {
			var size r2.Vec
			lines, size = c.overprintLines(st, wide)
			if b, ok := clearBox(area, size, avoid); ok {
				return lines, b
			}
		}
	}
	return lines, box(area.Min.X, area.Max.Y, area.Min.X, area.Max.Y)
}

// overprintLines are the lines of the overprint, of all maps on the sheet, and the size of its box.
func (c *composer) overprintLines(st style, wide float64) (lines []string, size r2.Vec) {
	for _, words := range c.notInMaps() {
		lines = append(lines, c.set(words, st, wide, 0)...)
	}
	for _, l := range lines {
		size.X = max(size.X, st.width(l)+2*overprintAir)
	}
	size.Y = float64(len(lines)-1)*st.leading() + st.cap + 2*overprintAir
	return lines, size
}

// clearBox is the first place for a box in an area, from its upper left on, that meets nothing.
func clearBox(area r2.Box, size r2.Vec, taken []carto.Obstacle) (r2.Box, bool) {
	for y := area.Max.Y; y-size.Y >= area.Min.Y; y -= overprintStep {
		for x := area.Min.X; x+size.X <= area.Max.X; x += overprintStep {
			b := box(x, y-size.Y, x+size.X, y)
			if !meets(carto.Obstacle{Outline: corners(inset(b, -1, -1))}, taken) {
				return b, true
			}
		}
	}
	return r2.Box{}, false
}

// standObstacles are the symbols as they stand on the plan.
func (c *composer) standObstacles() []carto.Obstacle {
	var all []carto.Obstacle
	for _, d := range c.stands {
		all = append(all, carto.Obstacle{Outline: d.Body})
	}
	return all
}

// floors are the floors of the rooms, which the map is read on.
func (c *composer) floors(v view) []carto.Obstacle {
	var all []carto.Obstacle
	for i := range c.in.Setup.Rooms {
		for _, part := range c.in.Setup.Rooms[i].Parts {
			all = append(all, carto.Obstacle{Outline: v.all(part)})
		}
	}
	return all
}
