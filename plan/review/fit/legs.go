package fit

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// The legs of a stand take a circle of ground. They go under a table, between its legs; through a
// wall or a chest they do not.

const (
	legsSlack = 0.02 // m, that a leg gives way

	behindCosine = 0.97 // cosine of the angle within which one thing stands behind another
)

// legsFree warns of a stand whose legs have no room.
func (r *contactFinder) legsFree(name string, m *plan.Mount, base float64, class term.Class) {
	if !m.Kind.OnLegs() || m.Kind == term.Lift || class == term.Practical { // the base of a lift is looked at as it is
		return
	}
	into := r.legsInto(m, base)
	if into == nil {
		return
	}
	hint := "use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}"
	if moves := r.movesForLegs(m, base); moves != nil {
		var words []string
		for _, m := range moves {
			words = append(words, r.moveInWords(m))
		}
		hint = "move the stand " + strings.Join(words, " and ") + ", or " + hint
	}
	r.Warnf(r.things[name].at, CodeStandTight, hint, "the legs of the stand of %s, %s across, reach %s",
		r.out.Numbered(name), r.Length(m.Foot), strings.Join(into, " and "))
}

// cameraLegsFree notes a camera whose legs have no room as wide as they usually stand.
func cameraLegsFree(r *checker, c *plan.Camera) bool {
	m := body.LegsOfCamera(c)
	if m == nil || c.Frame.At.Z <= c.Base || r.told[toldClash{c.Name, body.Head, ""}] {
		return true
	}
	if into := r.legsInto(m, c.Base); into != nil {
		r.Infof(r.things[c.Name].at, CodeStandTight, "draw its legs in and put bags on them, or put it on a plate or a short stand", "the legs of %s, %s across as they usually stand, reach %s",
			c.Name, r.Length(m.Foot), strings.Join(into, " and "))
	}
	return true
}

// legsInto says what the legs of a stand reach into, and how far; nil where they have room.
func (r *contactFinder) legsInto(m *plan.Mount, base float64) (into []string) {
	for _, c := range r.legsMeet(m, m.Base, base) {
		into = append(into, r.Length(c.depth)+" into "+c.name)
	}
	return into
}

// legsMeet lists what the circle of a stand's legs about a point would go through, the deepest of
// each name.
func (r *contactFinder) legsMeet(m *plan.Mount, at r2.Vec, base float64) (met []contact) {
	try := func(name string, ring []r2.Vec, z0, z1 float64) {
		if name == m.On || z0 >= base+body.LegClearance || z1 <= base+body.LegStep {
			return
		}
		near := plane.Nearest(at, ring)
		away := r2.Sub(at, near)
		deep := m.Foot/2 - r2.Norm(away)
		if deep <= legsSlack || r2.Norm(away) <= plane.Grain {
			return // a check of the stand itself reports a middle inside the thing
		}
		met = withContact(met, contact{name: name, escape: plan.AtHeight(r2.Unit(away), 0), depth: deep}, func(other, c contact) bool {
			// What lies behind the nearer of two is not reached before it.
			return other.name == c.name || r3.Dot(other.escape, c.escape) > behindCosine
		})
	}
	for i := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[i]
		if !r.things[p.Name].movable() {
			try(p.Name, p.Base, p.Z0, p.Z1)
		}
	}
	for i := range r.out.Furniture {
		f := &r.out.Furniture[i]
		for _, p := range f.Parts {
			if p.Kind != plan.LegPart {
				try(f.Name, p.Outline, p.Z0, p.Z1)
			}
		}
	}
	return met
}

// movesForLegs is the moves that give a stand's legs room; nil where none is found.
func (r *contactFinder) movesForLegs(m *plan.Mount, base float64) (moves []contact) {
	at := m.Base
	for range maxMoves {
		met := r.legsMeet(m, at, base)
		if len(met) == 0 {
			return moves
		}
		move := met[0]
		for _, c := range met {
			if c.depth > move.depth {
				move = c
			}
		}
		move.depth = r.RoundUp(move.depth)
		at = r2.Add(at, r2.Scale(move.depth, plan.InPlan(move.escape)))
		moves = withMove(moves, move)
	}
	return nil
}
