package inhand

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// fitted is a unit of the catalogue in the place of a light: as it hangs there, with its modifier, its gels and the white of the light.
type fitted struct {
	unit  *kit.Unit
	head  kit.Head
	level float64
}

// smallest gives the unit of a light, and the one of the catalogue with the least power, and of those the least mass, that gives as much with the
// same modifier, at the lowest level that does; nil where that is the light's own. Where none does in the light's colour, offColour is the one that does but
// for that. A lamp of the set is no unit that another takes the place of.
func (s *Lit) smallest(l *plan.Light) (own, best, offColour *meter.Class) {
	u := s.Setup.Kit.Unit(l.Choice.Unit)
	if u == nil || u.Class == term.Practical {
		return nil, nil, nil
	}
	is, ok := s.fit(l, u)
	if !ok {
		return nil, nil, nil
	}
	is.level = l.Level
	least, closest := is, is
	for _, f := range s.giving(l, &is, 0) {
		if smaller(&f, &closest) {
			closest = f
		}
		if passes(l, &f) && smaller(&f, &least) {
			least = f
		}
	}
	own = classOf(l, &is)
	switch {
	case least.unit != u:
		best = classOf(l, &least)
	case closest.unit != u:
		offColour = classOf(l, &closest)
	}
	return own, best, offColour
}

// enough gives the unit of the catalogue with the least power, and of those the least mass, that gives so many stops more than a light does, with the
// same modifier and in its colour; nil where none does.
func (s *Lit) enough(l *plan.Light, more float64) (best *meter.Class) {
	u := s.Setup.Kit.Unit(l.Choice.Unit)
	if u == nil || u.Class == term.Practical {
		return nil
	}
	is, ok := s.fit(l, u)
	if !ok {
		return nil
	}
	var least fitted
	for _, f := range s.giving(l, &is, more) {
		if passes(l, &f) && (least.unit == nil || smaller(&f, &least)) {
			least = f
		}
	}
	if least.unit == nil {
		return nil
	}
	return classOf(l, &least)
}

// giving are the other units of the catalogue that are used like that of a light and give so many stops more than it does, at the lowest level that does.
func (s *Lit) giving(l *plan.Light, is *fitted, more float64) (all []fitted) {
	goal := measure(l, &is.head) * is.head.RelativeOutput(l.Level).Y() * math.Exp2(more)
	for _, other := range s.Setup.Kit.Units {
		if other == is.unit || other.Class == term.Practical {
			continue
		}
		f, ok := s.fit(l, other)
		if ok && is.head.UsedLike(&f.head, len(l.Diffusion) > 0) && f.reach(goal, measure(l, &f.head)) {
			all = append(all, f)
		}
	}
	return all
}

// fit puts a unit into the place of a light; not ok where it does not take what the light wears or is set to.
func (s *Lit) fit(l *plan.Light, u *kit.Unit) (fitted, bool) {
	ch := l.Choice
	ch.Modifier = s.Setup.Kit.DefaultModifier(l.Choice)
	if ch.White == nil {
		ch.White = &colour.White{Kelvin: s.Setup.Kit.Unit(l.Choice.Unit).Native}
	}
	ch.Unit, ch.Level = u.Name, nil
	if !slices.Contains(s.Setup.Kit.Fitting(u), ch.Modifier) || math.Abs(ch.White.Duv+ch.Tint) > u.Tint+1e-9 && u.Name != l.Choice.Unit {
		return fitted{}, false
	}
	head, ok := s.Setup.Kit.Head(ch, &source.Log{})
	if !ok || !head.ApplyTilt(l.Frame.Right, l.Frame.Up(), l.Frame.Axis) {
		return fitted{}, false
	}
	return fitted{unit: u, head: head}, true
}

// measure is what two heads have to give alike, at full and without gels: the intensity along the axis, cd; of a head with cloth on it the light that goes onto
// that, lm, for from there on it is the cloth that shines.
func measure(l *plan.Light, h *kit.Head) float64 {
	if len(l.Diffusion) > 0 {
		return h.Source.Flux
	}
	return h.Source.Intensity(r3.Vec{Z: -1})
}

// reach sets a unit to the lowest level at which it gives so much, gels and all, by what it gives at full without them; not ok where it has none.
func (f *fitted) reach(goal, full float64) (ok bool) {
	f.level, ok = f.head.LevelFor(goal / (full * f.head.Filter))
	return ok
}

// passes says whether a unit, as it is set, is taken for the light that it replaces by its colour.
func passes(l *plan.Light, f *fitted) bool {
	gap, ok := gapTo(l, f)
	return ok && gap.Passes()
}

// gapTo is how the light of a unit lies from that of the light that it replaces. Strong colours have no gap: they pass where both
// come from one white.
func gapTo(l *plan.Light, f *fitted) (colour.Gap, bool) {
	is, was := f.head.RelativeOutput(f.level), l.RelativeOutput
	if gap, ok := colour.GapBetween(colour.XY(is), colour.XY(was)); ok {
		return gap, true
	}
	return colour.Gap{}, f.head.WhiteAt(f.level) == l.White
}

// smaller says whether a unit draws less power than another, or as much and has less mass.
func smaller(a, b *fitted) bool {
	if a.unit.Watts != b.unit.Watts {
		return a.unit.Watts < b.unit.Watts
	}
	return a.head.Mass < b.head.Mass
}

func classOf(l *plan.Light, f *fitted) *meter.Class {
	gap, _ := gapTo(l, f)
	return &meter.Class{Unit: f.unit.Name, Watts: f.unit.Watts, Mass: f.head.Mass, Level: f.level, Mired: gap.Mired}
}
