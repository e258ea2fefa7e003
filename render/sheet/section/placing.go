package section

import (
	"slices"
	"strings"

	"scrimshaw/plan"
)

// placing says the two distances that put a thing in its place with a tape, written in a way: bare under a title that says the unit.
func (c Report) placing(ds []plan.Dimension, written func(metres float64) string) string {
	var parts []string
	for _, d := range ds {
		parts = append(parts, written(d.Metres)+" from "+c.wallWord(d.From))
	}
	return strings.Join(parts, ", ")
}

// wallWord is what is measured from as the plan letters it: a wall with its room, "office.left", only where another room has one of that name.
func (c Report) wallWord(from string) string {
	room, rest, _ := strings.Cut(from, ".")
	wall, _, _ := strings.Cut(rest, ",")
	rooms, own := c.In.Setup.Rooms, false
	for i := range rooms {
		has := slices.ContainsFunc(rooms[i].Walls, func(w plan.Wall) bool { return w.Name == wall })
		if has && rooms[i].Name != room {
			return from
		}
		own = own || has
	}
	if own {
		return rest
	}
	return from
}
