package fit

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/report"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/unit"
)

// maxMoves is how often a thing is moved out of what it reaches into before nothing is offered.
const maxMoves = 6

// movesOut looks for a move that frees a thing of all it reaches into, one move after another; moves
// are what it takes, each rounded up to what a tape shows.
func (r *contactFinder) movesOut(t *extent, level bool) (moves []contact, ok bool) {
	var moved r3.Vec
	for range maxMoves {
		met := r.contacts(t, moved, level)
		if len(met) == 0 {
			return moves, true
		}
		move := slices.MaxFunc(met, func(a, b contact) int { return int(math.Copysign(1, a.depth-b.depth)) })
		if math.IsInf(move.depth, 0) {
			return nil, false
		}
		move.depth = r.RoundUp(move.depth + contactTolerance)
		moved = r3.Add(moved, r3.Scale(move.depth, move.escape))
		moves = withMove(moves, move)
	}
	return nil, false
}

// withMove adds a move to the one along the same direction, if there is one.
func withMove(moves []contact, move contact) []contact {
	for i := range moves {
		if r3.Dot(moves[i].escape, move.escape) > 1-1e-9 {
			moves[i].depth += move.depth
			return moves
		}
	}
	return append(moves, move)
}

func distance(moves []contact) (sum float64) {
	for _, p := range moves {
		sum += p.depth
	}
	return sum
}

// reachInto says what a thing reaches into or through and how deep, and the least move out of it;
// "" where it is free.
func (r *contactFinder) reachInto(t *extent) (found, mend string) {
	met := r.contacts(t, r3.Vec{}, false)
	if len(met) == 0 {
		return "", ""
	}
	var names []string
	deepest := 0.0
	for _, c := range met {
		names = append(names, c.name)
		r.tell(t.of, t.part, c.name)
		if !math.IsInf(c.depth, 0) {
			deepest = max(deepest, c.depth)
		}
	}
	found = t.name + " reaches into or through " + strings.Join(names, " and ")
	if deepest > 0 {
		found += ", by " + r.Length(deepest)
	}
	return found, r.moveHint(t)
}

// moveHint says how a thing is moved clear of what it reaches into.
func (r *contactFinder) moveHint(t *extent) string {
	moves, ok := r.movesOut(t, true)
	if other, can := r.movesOut(t, false); can && !t.feet && (!ok || distance(other) < distance(moves)) {
		moves, ok = other, true
	}
	upright := slices.ContainsFunc(moves, func(c contact) bool { return c.vertical })
	switch {
	case t.feet && (!ok || upright):
		return "move " + t.name + " to where there is more room"
	case !ok:
		return "this place is too small for " + t.name + ": move it, turn it, or use a smaller one"
	}
	var words []string
	for _, m := range moves {
		words = append(words, r.moveInWords(m))
	}
	return "move " + t.name + " " + strings.Join(words, " and ")
}

// moveInWords is a move in words: "0.32 m away from den.top (down the sheet)".
func (r *contactFinder) moveInWords(p contact) string {
	if p.vertical {
		return r.Length(p.depth) + report.Either(p.escape.Z > 0, " up", " down")
	}
	return r.Length(p.depth) + " away from " + p.name + " (" + onSheet(plan.InPlan(p.escape)) + ")"
}

// onSheet is a direction of the plan in words.
func onSheet(d r2.Vec) string {
	const straight = 0.9998 // within a degree
	switch d = r2.Unit(d); {
	case d.X > straight:
		return "right on the sheet"
	case d.X < -straight:
		return "left on the sheet"
	case d.Y > straight:
		return "up the sheet"
	case d.Y < -straight:
		return "down the sheet"
	}
	return "bearing " + unit.FormatAngle(plane.Bearing(d))
}
