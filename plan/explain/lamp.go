package explain

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/unit"
)

// lampSteps follow a lamp from the catalogue to its flux, and what level, count and gels leave of that.
func lampSteps(l *plan.Light, level colour.RGB) *working {
	w := newWorking()
	for i := range l.Head.Steps {
		w.note(kitStep(&l.Head.Steps[i]))
	}
	h := &l.Head
	w.given("flux that leaves it, at full and without gels", "F", h.Source.Flux, "lm", "the lines above")
	count, filter := float64(max(l.Count, 1)), h.Filter
	if filter == 0 && level.Y() > 0 {
		filter = 1 // a head made by hand has no gels
	}
	w.given("how many stand as one", "N", count, "", "the scene")
	light := 0.0
	if filter > 0 {
		light = level.Y() / (count * filter)
	}
	setting, source := unit.FormatPercent(l.Level), "the scene's level, by the unit's curve"
	if own := h.LightAt(l.Level); math.Abs(light-own) > rounding*own {
		setting, source = setting+" and the white of the cue", source+", and what the unit gives at that white"
	}
	w.given("of its full light, at "+setting, "q", light, "", source)
	w.given("what its gels pass", "g", filter, "", "catalogue")
	w.worked("level, count and gels together", "k", "N × q × g", level.Y(), "", "light is linear in each")
	return w
}

// kitStep is a line of the catalogue's calculation.
func kitStep(s *kit.Step) Step {
	out := Step{Words: s.What, Value: s.Out, Unit: s.Unit, Source: s.Source}
	if s.Formula != "" {
		out.Words += ": " + s.Formula
	}
	if len(s.In) != 2 {
		return out
	}
	a, b := s.In[0], s.In[1]
	for _, c := range [...]struct {
		before string
		factor float64
	}{{"", 1}, {"π × ", math.Pi}} {
		if math.Abs(c.factor*a*b-s.Out) <= rounding*math.Abs(s.Out) {
			out.Formula = c.before + figure(a) + " × " + figure(b)
		}
	}
	return out
}

// rounding is the share by which a product may be off for its last digits.
const rounding = 1e-9
