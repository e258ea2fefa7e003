package fit

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// Freed is how many things a light reaches into, before and after the moves that are offered.
func Freed(s *plan.Setup, l *plan.Light) (before, after int, ok bool) {
	r := newContactFinder(s, &source.Log{})
	k := r.reachOfLight(l)
	before = len(r.contacts(k, r3.Vec{}, false))
	moves, ok := r.movesOut(k, false)
	var moved r3.Vec
	for _, p := range moves {
		moved = r3.Add(moved, r3.Scale(p.depth, p.escape))
	}
	return before, len(r.contacts(k, moved, false)), ok
}
