package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/plane"
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
	for i := range s.Cameras {
		add(plan.InPlan(s.Cameras[i].Frame.At))
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
