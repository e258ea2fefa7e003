// Package pending says which figures of a set-up the keys could change that it writes and that nothing computes
// yet. It errs to the safe side: a figure that it lets stand would be the same if all keys were computed.
package pending

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/scene"
)

// Figures knows of a set-up which of its figures could change.
type Figures struct {
	setup  *plan.Setup
	levels light.Levels
	spaces *spaces
}

// Of returns the figures of a set-up at some levels: a light that is out gives nothing, whatever is put before it.
func Of(s *plan.Setup, levels light.Levels) *Figures {
	return &Figures{setup: s, levels: levels, spaces: spacesOf(s)}
}

// isOn says whether a light gives any.
func (f *Figures) isOn(name string) bool { return f.levels[name].Y() > 0 }

// At returns the keys that could change the light at a place, in the order of the set-up. given is what each
// light gives there. Of a spot meter the places are its lens and what it is pointed at.
func (f *Figures) At(given map[string]float64, places ...r3.Vec) []plan.Uncomputed {
	if len(f.setup.Uncomputed) == 0 {
		return nil
	}
	var here []int
	for _, p := range places {
		here = append(here, f.spaces.at(p)...)
	}
	return f.keysWhere(func(u *plan.Uncomputed) bool { return f.changes(u, given, here) })
}

// Over returns the keys that could change a map of light: on a wall of a room, or over the whole set where room
// is "". Where its light falls nobody looks: a lamp that is up lights some of it.
func (f *Figures) Over(room string) []plan.Uncomputed {
	here := f.allSpaces()
	if room != "" {
		here = []int{f.spaces.find(f.spaces.room(room))}
	}
	given := map[string]float64{}
	for i := range f.setup.Lights {
		if l := &f.setup.Lights[i]; f.isOn(l.Name) && intersect(f.spaces.at(l.Frame.At), here) {
			given[l.Name] = 1
		}
	}
	return f.keysWhere(func(u *plan.Uncomputed) bool { return f.changes(u, given, here) })
}

// Stops returns the keys that could change the stops that a camera judges; "" are those of the whole scene, by
// which every camera goes.
func (f *Figures) Stops(camera string) []plan.Uncomputed {
	return f.keysWhere(func(u *plan.Uncomputed) bool {
		return u.Changes == scene.OwnStops && (camera == "" || camera == u.Thing())
	})
}

// allSpaces is every space of the set.
func (f *Figures) allSpaces() []int {
	var all []int
	for room := range f.spaces.joint {
		all = append(all, f.spaces.find(room))
	}
	return all
}

// keysWhere are the keys of the set-up that is picks.
func (f *Figures) keysWhere(is func(*plan.Uncomputed) bool) []plan.Uncomputed {
	var some []plan.Uncomputed
	for i := range f.setup.Uncomputed {
		if u := &f.setup.Uncomputed[i]; is(u) {
			some = append(some, *u)
		}
	}
	return some
}

// changes says whether a key could change the light in some spaces, where each light gives so much.
func (f *Figures) changes(u *plan.Uncomputed, given map[string]float64, here []int) bool {
	switch u.Changes {
	case scene.OwnLight:
		return f.ofLight(u, given, here)
	case scene.OpeningLight:
		return f.ofOpening(u, here)
	case scene.SkyLight:
		return intersect([]int{f.spaces.find(f.spaces.outdoors())}, here)
	}
	return u.Changes == scene.AllLight
}

// ofLight is of a key on a light: it matters where the light gives something, and wherever its light can come.
func (f *Figures) ofLight(u *plan.Uncomputed, given map[string]float64, here []int) bool {
	for i := range f.setup.Lights {
		l := &f.setup.Lights[i]
		if l.Name != u.Thing() || !f.isOn(l.Name) {
			continue
		}
		return given[l.Name] > 0 || intersect(f.spaces.at(l.Frame.At), here)
	}
	return false
}

// ofOpening is of a key on an opening: it matters in the spaces on its sides.
func (f *Figures) ofOpening(u *plan.Uncomputed, here []int) bool {
	for i := range f.setup.Openings {
		o := &f.setup.Openings[i]
		if o.Name != u.Thing() || !intersect(f.spaces.sidesOf(o), here) {
			continue
		}
		return true
	}
	return false
}
