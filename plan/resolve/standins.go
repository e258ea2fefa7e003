package resolve

import (
	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/scene"
)

// standIns finds what lights pass for, once all of them hang.
func (r *lightPass) standIns() {
	for i := range r.s.Lights {
		written := &r.s.Lights[i]
		l := r.out.LightNamed(written.Name)
		if !written.StandsFor.Set || l == nil {
			continue
		}
		leave := r.About(written.Path)
		l.StandsFor = r.standIn(l, &written.StandsFor)
		leave()
	}
}

// standIn finds what one light passes for; nil after a fault.
func (r *lightPass) standIn(l *plan.Light, written *scene.Given[scene.StandIn]) *plan.StandIn {
	w := &written.Value
	s := &plan.StandIn{Span: written.Span}
	if w.Colour.Set {
		s.White = &colour.White{Kelvin: w.Colour.Value.Kelvin, Duv: w.Colour.Value.Duv, Daylight: w.Colour.Value.Daylight}
	}
	if w.Thing.Name == "" {
		return s
	}
	if w.Thing.Name == l.Name {
		r.Errorf(w.Thing.Span, CodeStandIn, "name the lamp or the opening that it plays, or write its colour: 2900 K", "%s cannot stand for itself", l.Name)
		return nil
	}
	named := []thingKind{lightKind, openingKind}
	if w.Colour.Set {
		named = named[1:]
	}
	t, ok := r.named(w.Thing, named...)
	switch {
	case !ok:
		return nil
	case t.kind == openingKind:
		s.Opening, ok = w.Thing.Name, r.letsIn(w.Thing)
	default:
		s.Light, ok = w.Thing.Name, r.shines(l, w.Thing)
	}
	if !ok {
		return nil
	}
	return s
}

// letsIn says whether light can come by an opening, and warns of one that is shut: another set-up may open it.
func (r *lightPass) letsIn(ref scene.Ref) bool {
	o := r.out.OpeningNamed(ref.Name)
	if o != nil && o.Transmittance <= 0 {
		r.Warnf(ref.Span, CodeStandIn, "open it with ajar, give it a glass, or name another", "%s is shut, and lets no light in to stand for", ref.Name)
	}
	return o != nil && o.Transmittance > 0
}

// shines says whether a light can be stood for by another: it is up, which it may be in another set-up alone, and stands for nothing itself.
func (r *lightPass) shines(l *plan.Light, ref scene.Ref) bool {
	other := r.out.LightNamed(ref.Name)
	if other == nil {
		return false // with a fault of its own
	}
	if other.Level <= 0 {
		r.Warnf(ref.Span, CodeStandIn, "raise its level, or write the colour that it has: 2700 K", "%s is at 0 %%, and gives no light to stand for", other.Name)
		return false
	}
	if first := &r.s.Lights[r.things[ref.Name].index]; first.StandsFor.Set {
		hint := "write the colour that both have"
		if to := first.StandsFor.Value.Thing.Name; to != "" && to != l.Name {
			hint = "write " + to
		}
		r.Errorf(ref.Span, CodeStandIn, hint, "%s stands for something itself, and is nothing to stand for", other.Name)
		return false
	}
	return true
}
