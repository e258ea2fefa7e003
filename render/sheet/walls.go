package sheet

import "scrimshaw/symbols/ink"

// drawWalls draws the walls as the plan cuts them: solid where they are solid, in outline where an
// opening passes over or under.
func (c things) drawWalls(p pad, v view) {
	p = p.on(ink.Walls)
	for i := range c.in.Setup.Walls {
		w := &c.in.Setup.Walls[i]
		if w.Opening != "" {
			continue
		}
		// The line of the wall's own ink closes the seams between the pieces of a corner.
		p.of("wall:"+joined(".", w.Room, w.Wall), "").outline(hair, p.look.Wall, &p.look.Wall, v.all(w.Outline)...)
	}
}
