package fit

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/term"
)

// The legs of a stand take a circle of ground. They go under a table, between its legs; through a
// wall or a chest they do not.

const (
	legsHigh  = 0.30 // m: legs pass under what is higher (common practice)
	legsOver  = 0.03 // m: and stand on what is lower, a carpet or a threshold
	legsSlack = 0.02 // m, that a leg gives way

	behind = 0.97 // cosine of the angle within which one thing stands behind another
)

// legsFree warns of a stand whose legs have no room.
func (r *reacher) legsFree(name string, m *plan.Mount, base float64, class term.Class) {
	if m.Kind != term.Stand && m.Kind != term.Boom && m.Kind != term.Lift || class == term.Practical {
		return
	}
	met := r.legsMeet(m, m.Base, base)
	if len(met) == 0 {
		return
	}
	var into []string
	for _, c := range met {
		into = append(into, r.Length(c.deep)+" into "+c.name)
	}
	hint := "use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}"
	if pushes := r.legsFreed(m, base); pushes != nil {
		var moves []string
		for _, p := range pushes {
			moves = append(moves, r.worded(p))
		}
		hint = "move the stand " + strings.Join(moves, " and ") + ", or " + hint
	}
	r.Warnf(r.things[name].at, CodeStandTight, hint, "the legs of the stand of %s, %s across, reach %s",
		r.out.Numbered(name), r.Length(m.Foot), strings.Join(into, " and "))
}

// legsMeet lists what the circle of a stand's legs about a point would go through, the deepest of
// each name.
func (r *reacher) legsMeet(m *plan.Mount, at r2.Vec, base float64) (met []contact) {
	try := func(name string, ring []r2.Vec, z0, z1 float64) {
		if name == m.On || z0 >= base+legsHigh || z1 <= base+legsOver {
			return
		}
		near := plane.Nearest(at, ring)
		away := r2.Sub(at, near)
		deep := m.Foot/2 - r2.Norm(away)
		if deep <= legsSlack || r2.Norm(away) <= plane.Grain {
			return // a check of the stand itself reports a middle inside the thing
		}
		met = withContact(met, contact{name: name, away: plan.AtHeight(r2.Unit(away), 0), deep: deep}, func(other, c contact) bool {
			// What lies behind the nearer of two is not reached before it.
			return other.name == c.name || r3.Dot(other.away, c.away) > behind
		})
	}
	for i := range r.out.Set.Prisms {
		p := &r.out.Set.Prisms[i]
		if !r.things[p.Name].moves() {
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

// legsFreed is the moves that give a stand's legs room; nil where none is found.
func (r *reacher) legsFreed(m *plan.Mount, base float64) (pushes []contact) {
	at := m.Base
	for range maxPushes {
		met := r.legsMeet(m, at, base)
		if len(met) == 0 {
			return pushes
		}
		push := met[0]
		for _, c := range met {
			if c.deep > push.deep {
				push = c
			}
		}
		push.deep = r.RoundUp(push.deep)
		at = r2.Add(at, r2.Scale(push.deep, plan.InPlan(push.away)))
		pushes = withPush(pushes, push)
	}
	return nil
}
