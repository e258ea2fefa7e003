package resolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
)

// finish takes stock: bounds, the list of what was assumed, where things stand.
func (r *finisher) finish() {
	r.out.Bounds = r.bounds()
	r.takeUncomputed()
	r.assumeGround()
	r.sortAssumed()
}

// assumeGround lists the level of the ground where something stands on it beside rooms.
func (r *finisher) assumeGround() {
	if r.s.Site != nil && r.s.Site.Ground.Set || len(r.out.Rooms) == 0 {
		return
	}
	for i := range r.out.Lights {
		if r.out.RoomUnder(r.out.Lights[i].Mount.Base, "") == nil {
			r.assume("", "ground outside", r.Length(r.out.Ground))
			return
		}
	}
}

// bounds is the box of everything that stands, in plan.
func (r *finisher) bounds() r2.Box {
	b := plane.Bounds(nil)
	add := func(points ...r2.Vec) {
		for _, p := range points {
			b = plane.Include(b, p)
		}
	}
	s := r.out
	for i := range s.Rooms {
		add(s.Rooms[i].Inside...)
	}
	for i := range s.Walls {
		add(s.Walls[i].Outline...)
	}
	for i := range s.Set.Prisms {
		add(s.Set.Prisms[i].Base...)
	}
	for i := range s.People {
		for k := range s.People[i].Marks {
			add(s.People[i].Marks[k].At)
		}
		if w := s.People[i].Walk; w != nil {
			add(w.Corners...)
		}
	}
	for i := range s.Cameras {
		add(plan.InPlan(s.Cameras[i].Frame.At))
		if t := s.Cameras[i].Track; t != nil {
			add(t.Corners...)
		}
	}
	for i := range s.Lights {
		add(plan.InPlan(s.Lights[i].Frame.At), s.Lights[i].Mount.Base)
	}
	for i := range s.Grip {
		g := &s.Grip[i]
		add(g.Mount.Base)
		for _, p := range g.Corners() {
			add(plan.InPlan(p))
		}
	}
	for i := range s.Meters {
		add(plan.InPlan(s.Meters[i].At))
	}
	if b.Min.X > b.Max.X {
		return r2.Box{}
	}
	return b
}

// keepSpots puts where things stand into the set-up.
func (r *placer) keepSpots() {
	for _, name := range r.names {
		if s, known := r.spots[name]; known && s.ok {
			r.out.Spots[name] = s.v
		}
	}
}

// takeUncomputed lists the keys that are not computed yet, once all that they are on has its number.
func (r *finisher) takeUncomputed() {
	for _, u := range append(slices.Clone(r.s.Uncomputed), r.uncomputed...) {
		r.out.Uncomputed = append(r.out.Uncomputed, plan.Uncomputed{Uncomputed: u, Words: keyInWords(r.out, &u)})
	}
}

// keyInWords says a key with what it is on, by its number on the plan.
func keyInWords(s *plan.Setup, u *scene.Uncomputed) string {
	thing := u.Thing()
	switch {
	case u.Table == "site" && u.Key == "when":
		return "sun and sky"
	case u.Table == "site":
		return u.Key + " of the site"
	case u.Table == "set-up":
		return u.Key + " of the set-up " + thing
	case u.Table == "piece of grip":
		return gripInWords(s, u.Key, thing)
	case u.Table == "piece of furniture":
		return u.Key + " " + thing
	case thing == "":
		return u.Key
	}
	return u.Key + " of " + s.Numbered(thing)
}

// gripInWords says a piece of grip with its cloth: "half-diffusion on frame G1 soft".
func gripInWords(s *plan.Setup, kind, name string) string {
	words := kind + " " + s.Numbered(name)
	for i := range s.Grip {
		if g := &s.Grip[i]; g.Name == name && g.Cloth != "" {
			return g.Cloth + " on " + words
		}
	}
	return words
}
