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

// maxPushes is how often a thing is moved out of what it reaches into before nothing is offered.
const maxPushes = 6

// freed looks for a move that frees a thing of all it reaches into, one push after another; pushes
// are what it takes, each rounded up to what a tape shows.
func (r *reacher) freed(t *reaching, level bool) (pushes []contact, ok bool) {
	var moved r3.Vec
	for range maxPushes {
		met := r.contacts(t, moved, level)
		if len(met) == 0 {
			return pushes, true
		}
		push := slices.MaxFunc(met, func(a, b contact) int { return int(math.Copysign(1, a.deep-b.deep)) })
		if math.IsInf(push.deep, 0) {
			return nil, false
		}
		push.deep = r.RoundUp(push.deep + bite)
		moved = r3.Add(moved, r3.Scale(push.deep, push.away))
		pushes = withPush(pushes, push)
	}
	return nil, false
}

// withPush adds a push to the one along the same direction, if there is one.
func withPush(pushes []contact, push contact) []contact {
	for i := range pushes {
		if r3.Dot(pushes[i].away, push.away) > 1-1e-9 {
			pushes[i].deep += push.deep
			return pushes
		}
	}
	return append(pushes, push)
}

func distance(pushes []contact) (sum float64) {
	for _, p := range pushes {
		sum += p.deep
	}
	return sum
}

// reachInto says what a thing reaches into or through and how deep, and the least move out of it;
// "" where it is free.
func (r *reacher) reachInto(t *reaching) (found, mend string) {
	met := r.contacts(t, r3.Vec{}, false)
	if len(met) == 0 {
		return "", ""
	}
	var names []string
	deepest := 0.0
	for _, c := range met {
		names = append(names, c.name)
		if !math.IsInf(c.deep, 0) {
			deepest = max(deepest, c.deep)
		}
	}
	found = t.name + " reaches into or through " + strings.Join(names, " and ")
	if deepest > 0 {
		found += ", by " + r.Length(deepest)
	}
	return found, r.mend(t)
}

// mend says how a thing is moved clear of what it reaches into.
func (r *reacher) mend(t *reaching) string {
	pushes, ok := r.freed(t, true)
	if other, can := r.freed(t, false); can && !t.feet && (!ok || distance(other) < distance(pushes)) {
		pushes, ok = other, true
	}
	upright := slices.ContainsFunc(pushes, func(c contact) bool { return c.rise })
	switch {
	case t.feet && (!ok || upright):
		return "move " + t.name + " to where there is more room"
	case !ok:
		return "this place is too small for " + t.name + ": move it, turn it, or use a smaller one"
	}
	var moves []string
	for _, p := range pushes {
		moves = append(moves, r.worded(p))
	}
	return "move " + t.name + " " + strings.Join(moves, " and ")
}

// worded is a push in words: "0.32 m away from den.top (down the sheet)".
func (r *reacher) worded(p contact) string {
	if p.rise {
		return r.Length(p.deep) + report.Either(p.away.Z > 0, " up", " down")
	}
	return r.Length(p.deep) + " away from " + p.name + " (" + onSheet(plan.InPlan(p.away)) + ")"
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
