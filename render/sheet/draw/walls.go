package draw

import (
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// drawWalls draws the walls as the plan cuts them: solid where they are solid, in outline where an
// opening passes over or under.
func (c things) drawWalls(p Pad, v layout.View) {
	p = p.On(ink.Walls)
	for i := range c.In.Setup.Walls {
		w := &c.In.Setup.Walls[i]
		if w.Opening != "" {
			continue
		}
		// The line of the wall's own ink closes the seams between the pieces of a corner.
		p.of("wall:"+section.Joined(".", w.Room, w.Wall), "").outline(Hair, p.Look.Wall, &p.Look.Wall, v.All(w.Outline)...)
	}
}
