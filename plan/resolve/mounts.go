package resolve

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/clash"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/term"
)

// holding is what a mount holds.
type holding struct {
	at, axis  r3.Vec
	spot      plan.Spot
	practical bool
	what      string  // "the lamp"
	foot      float64 // of its stand, m across
}

// mountOf resolves how a thing is held, and the z of what that stands on.
func (r *holder) mountOf(written scene.Given[scene.Mount], h holding) (m plan.Mount, base float64, ok bool) {
	at := plan.InPlan(h.at)
	m = plan.Mount{Kind: term.Stand, Base: at, On: h.spot.On}
	base = h.spot.Base
	if !written.Set {
		if h.practical {
			m.Kind = term.Floor
			base, m.On = r.supportUnder(h.spot)
		}
		return m, base, true
	}
	w := &written.Value
	m.Kind, m.Arm = w.Kind, w.Arm
	switch w.Kind {
	case term.Stand:
		base, ok = r.standOn(w, &m, at, base)
	case term.Boom:
		base, ok = r.boom(w, &m, h)
	case term.Clamp:
		ok = r.clamp(w, &m, at)
	case term.Pole, term.Wall:
		ok = r.fixToWalls(w, &m, at)
	default:
		ok = true
	}
	return m, base, ok
}

// standOn is a stand on a deck, or on what is there.
func (r *holder) standOn(w *scene.Mount, m *plan.Mount, at r2.Vec, base float64) (float64, bool) {
	if w.On.Name == "" {
		return base, true
	}
	if _, ok := r.named(w.On, furnitureKind); !ok {
		return 0, false
	}
	f, ok := r.shape(w.On.Name)
	if !ok {
		return 0, false
	}
	m.On = f.Name
	top, over := topAt(f, at)
	if !over {
		r.Warnf(w.On.Span, CodeNotOnTop, "move it over "+f.Name+", or name what it stands on", "%s is not over %s, where the scene puts its stand", r.XY(at), f.Name)
	}
	return top, true
}

// boom is an arm from a stand of its own: where its base is not said, behind the thing.
func (r *holder) boom(w *scene.Mount, m *plan.Mount, h holding) (float64, bool) {
	at := plan.InPlan(h.at)
	if !w.Base.Set {
		m.Base = r.baseOfBoom(w, m, h)
		r.assume(r.Path, "base of the boom", "["+r.Length(m.Base.X)+", "+r.Length(m.Base.Y)+"]")
		return r.standing(m.Base, h.spot.Room).Base, true
	}
	s, ok := r.place(&w.Base.Value, func(r2.Vec) float64 { return 0 })
	if !ok {
		return 0, false
	}
	m.Base = s.At
	if off := r2.Norm(r2.Sub(s.At, at)); off > w.Arm+plane.Grain {
		r.Errorf(w.Base.Span, CodeBoomShort, "move the base "+r.Length(off-w.Arm)+" nearer, or take a longer arm",
			"an arm of %s does not reach: %s is %s from its base", r.Length(w.Arm), h.what, r.Length(off))
		return 0, false
	}
	return s.Base, true
}

// baseStep is how far apart the bearings are that are tried for the base of a boom, degrees.
const baseStep = 15

// baseOfBoom is a place for the base of a boom: behind what it holds, or as little to a side of that as its arm, its counterweight and its
// legs have room. Where none has, it is behind, and a warning says so.
func (r *holder) baseOfBoom(w *scene.Mount, m *plan.Mount, h holding) r2.Vec {
	at, back := plan.InPlan(h.at), r2.Scale(-1, plan.InPlan(h.axis))
	if r2.Norm(back) < 1e-6 {
		back = r2.Vec{Y: 1}
	}
	arm := r2.Scale(w.Arm, r2.Unit(back))
	room := clash.RoomIn(r.out)
	for aside := 0; aside <= 180; aside += baseStep {
		for _, turn := range [2]float64{float64(aside), -float64(aside)} {
			try := *m
			try.Base, try.Foot = r2.Add(at, plane.Clockwise(arm, turn)), h.foot
			s := r.standing(try.Base, h.spot.Room)
			if s.Room == h.spot.Room && room.Takes(&try, plan.FrameAlong(h.at, h.axis, 0, 0), s.Base) {
				return try.Base
			}
		}
	}
	r.Warnf(w.Span, CodeBoomNowhere, "take a shorter arm, write base: with a place, or hold it otherwise", "nowhere about %s is room for the base of its boom: arm, counterweight and legs reach into something on every side", h.what)
	return r2.Add(at, arm)
}

// clamp grips a thing at the point of it nearest to what it holds.
func (r *holder) clamp(w *scene.Mount, m *plan.Mount, at r2.Vec) bool {
	if name, _, dotted := strings.Cut(w.On.Name, "."); dotted && r.things[name].kind == roomKind {
		r.Errorf(w.On.Span, scene.CodeWrongThing, "write {wall: "+w.On.Name+"} for a plate on it", "a clamp holds on to a thing, not to a wall")
		return false
	}
	t, ok := r.named(w.On, furnitureKind, openingKind, gripKind, lightKind)
	if !ok {
		return false
	}
	s, ok := r.spotOf(w.On.Name)
	if !ok {
		return false
	}
	m.On, m.Base = w.On.Name, s.At
	if t.kind != furnitureKind {
		return true
	}
	f, ok := r.shape(w.On.Name)
	if ok {
		m.Base = plane.Nearest(at, outlines(f.Parts)...)
	}
	return ok
}

// outlines are the rings of some parts.
func outlines(parts []plan.Part) [][]r2.Vec {
	rings := make([][]r2.Vec, len(parts))
	for i := range parts {
		rings[i] = parts[i].Outline
	}
	return rings
}

// fixToWalls is a pole between two walls, or a plate on one.
func (r *holder) fixToWalls(w *scene.Mount, m *plan.Mount, at r2.Vec) bool {
	if w.Kind == term.Pole && len(w.Walls) != 2 || len(w.Walls) == 0 {
		r.reportMissing(w.Span, "write {pole: [ROOM.WALL, ROOM.WALL]}", "a pole goes between two walls")
		return false
	}
	if w.Kind == term.Pole && w.Walls[0].Name == w.Walls[1].Name {
		r.Errorf(w.Walls[1].Span, CodeSamePlace, "name the wall across from it", "a pole goes between two walls, and both are %s", w.Walls[0].Name)
		return false
	}
	for _, ref := range w.Walls {
		_, wall, ok := r.wall(ref)
		if !ok {
			return false
		}
		on, _ := plane.NearestOnSegment(at, wall.Left, wall.Right)
		m.PoleEnds = append(m.PoleEnds, on)
		m.On = ref.Name
	}
	m.Base = m.PoleEnds[0]
	return true
}

// standFor puts a thing on a stand: the one that the scene names, else the one that it usually stands on.
func (r *holder) standFor(named scene.Given[string], usual string, m *plan.Mount) bool {
	name := named.Or(usual)
	m.Stand, m.Chosen, m.Foot = r.kit.Stand(name), named.Set, scene.DefaultFootprint
	if m.Stand != nil {
		m.Foot = m.Stand.Footprint
		return true
	}
	if named.Set {
		r.unknownEntry(named, "stand", kit.Names(r.kit.Stands))
	}
	return !named.Set
}

// liftFor takes the lowest lift of the catalogue that goes so high with the load, kg. Where none does, it stands on the ground of the highest.
func (r *holder) liftFor(m *plan.Mount, load float64, axis r3.Vec) {
	if m.Kind != term.Lift {
		return
	}
	m.Stand, m.Chosen, m.Ground, m.Turn = nil, false, plan.UsualLift, plane.Bearing(plan.InPlan(axis))
	if m.Lift = r.kit.LiftFor(m.Arm, load); m.Lift != nil {
		m.Ground = m.Lift.Ground
	} else if highest := r.kit.HighestLift(); highest != nil {
		m.Ground = highest.Ground
	}
	m.Foot = math.Hypot(m.Ground[0], m.Ground[1])
}

// footOf is the ground that the stand takes that the scene names, or the usual one, m across.
func (r *holder) footOf(named scene.Given[string], usual string) float64 {
	if stand := r.kit.Stand(named.Or(usual)); stand != nil {
		return stand.Footprint
	}
	return scene.DefaultFootprint
}

// usualStand is the stand that a light's unit comes with; "" where nothing says it.
func (r *holder) usualStand(l *scene.Light) string {
	if u := r.kit.Unit(l.Unit.Value); u != nil && l.Output == nil {
		return u.Stand
	}
	return ""
}
