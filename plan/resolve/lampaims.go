package resolve

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/solid"
)

// lampAim is what a light aims at: where it does not say the person that it is for, down where there is nobody, and
// up for what stands upright; down too for what hangs to shine there.
func (r *lightPass) lampAim(l *scene.Light, whom string, upright, hangsDown bool) (target, bool) {
	switch {
	case l.Aim.Set && r.bounces(&l.Aim.Value):
		return r.bounceAim(l, whom)
	case l.Aim.Set:
		return r.aimed(&l.Aim.Value)
	case upright:
		return r.aimed(&scene.Aim{Form: scene.AimUp})
	case whom != "" && !hangsDown:
		return r.aimed(&scene.Aim{Form: scene.AtThing, Thing: scene.Ref{Name: whom}})
	}
	return r.aimed(&scene.Aim{Form: scene.AimDown})
}

// whom is the person that a light at a spot is for where nothing says so: the first in its room, which is the one behind the opening for a
// light before one; else the first whose face it sees; else the first. "" where there is nobody.
func (r *lightPass) whom(l *scene.Light, s plan.Spot) string {
	if len(r.out.People) < 2 || l.Aim.Set && !r.bounces(&l.Aim.Value) {
		return r.firstFor(l.Name)
	}
	room := s.Room
	if o := r.out.OpeningNamed(s.Opening); o != nil && s.Outside {
		room = o.Room
	}
	order := r.peopleFor(l.Name)
	for _, p := range order {
		if r.roomOf(p.Name) == room {
			return p.Name
		}
	}
	at, set := plan.AtHeight(s.At, r.lampHeight(l, s)), solid.NewBVH(&r.out.Set)
	for _, p := range order {
		if !set.Blocked(at, p.Face.At, p.Own) {
			return p.Name
		}
	}
	return r.firstFor(l.Name)
}

// peopleFor are the people in the order of the file; to what a reverse took across the two of each pair have changed places.
func (r *lightPass) peopleFor(light string) (order []*plan.Person) {
	for i := range r.out.People {
		if p := r.out.Post(r.s.Exchanged[light].Of(r.out.People[i].Name)); p != nil {
			order = append(order, p)
		}
	}
	return order
}

// roomOf is the room that a thing stands in; "" outside.
func (r *placer) roomOf(name string) string {
	s, _ := r.spotOf(name)
	return s.Room
}

// bounceAim is the point of the ceiling, or of the floor, over or under the middle between a light and the person that it is for; with nobody in its
// room, the middle of the room. Where that lies in another room, as beyond a corner, it is straight over or under the light.
func (r *lightPass) bounceAim(l *scene.Light, whom string) (target, bool) {
	a := &l.Aim.Value
	s, ok := r.spotOf(l.Name)
	if !ok {
		return target{}, false
	}
	room := r.out.RoomNamed(s.Room)
	if room == nil {
		r.Errorf(a.Span, CodeNoAim, "write ROOM."+a.Thing.Name+" with the room that is meant", "%s stands in no room: there is no %s to aim at", l.Name, a.Thing.Name)
		return target{}, false
	}
	to, words := room.Middle(), "half way to the middle of "+room.Name
	if p := r.out.Post(whom); p != nil && r.roomOf(whom) == room.Name {
		to, words = plan.InPlan(p.Face.At), "half way to "+whom
	}
	at := r2.Scale(0.5, r2.Add(s.At, to))
	if !room.Holds(at) {
		at, words = s.At, "straight from the light"
	}
	z := room.Base
	if a.Form == scene.AimCeiling {
		z = room.CeilingAt(at)
	}
	r.assume(l.Path, "aim", "the "+a.Thing.Name+" "+words)
	return target{point: plan.AtHeight(at, z)}, true
}
