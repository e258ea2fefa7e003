// Package clash finds which bodies of a set-up lie in each other: lamps, stands, arms, sheets and cameras in walls, ceilings, furniture,
// doors and their swing, people, walks, tracks, and in each other. It words nothing.
package clash

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/body"
)

// Kind is what a body belongs to.
type Kind uint8

// The kinds: equipment, and what it meets.
const (
	Light Kind = iota
	Grip
	Camera
	Set    // a wall, a floor, a ceiling, a pane, a leaf, furniture
	Person // somebody, where they are or at a mark
	Walk   // the room that somebody walks through
	Swing  // the room that a leaf takes as it swings
	Way    // the room that a camera takes along its track
	Over   // what is over somebody, up to the ceiling
	Ground // what the legs of a camera, a stand or a lift take of the floor
)

// Side is one of the two things of a clash.
type Side struct {
	Kind Kind
	Name string // of a camera at the end of its track, or of somebody at a mark: that of the post
}

// Slack is how deep one body lies in another before that counts, m: no body is known better.
const Slack = 0.01

// assumedSlack is the same for what has no size but a usual one: cameras and lamps of the set, m.
const assumedSlack = 0.05

// Clash is a piece of equipment that lies in something.
type Clash struct {
	Of, In Side
	Parts  []body.Part // of the first, that lie in it, in the order of its pieces
	Into   []body.Part // of the other, that they lie in
	Deep   float64     // how deep the deepest lies in it, m
	Move   r3.Vec      // the least move of the first that takes all of it out, m; nought where none is known
}

// Find lists all clashes of a set-up, in the order of the scene.
func Find(s *plan.Setup) (all []Clash) {
	things, set := equipment(s), obstacles(s)
	searched := 0
	for i, t := range things {
		var found []Clash
		var met []meeting
		for _, o := range append(slices.Clip(set), things[:i]...) {
			if here := t.meets(o); here != nil {
				found = append(found, clashOf(t, o, here))
				if o.Kind != Over && t.Kind != Ground {
					met = append(met, here...)
				}
			}
		}
		if met != nil && searched < mostSearches {
			searched++
			move := freeing(s, t, met, append(slices.Clip(set), others(things, i)...))
			for k := range found {
				found[k].Move = move
			}
		}
		all = append(all, found...)
	}
	return all
}

// others are all things but one.
func others(all []*thing, i int) []*thing { return append(slices.Clone(all[:i]), all[i+1:]...) }

// clashOf is how a thing lies in another by where they meet.
func clashOf(t, o *thing, met []meeting) Clash {
	c := Clash{Of: t.Side, In: o.Side}
	for _, m := range met {
		c.Deep = max(c.Deep, m.Deep)
		if !slices.Contains(c.Parts, m.a.Part) {
			c.Parts = append(c.Parts, m.a.Part)
		}
		if !slices.Contains(c.Into, m.b.Part) {
			c.Into = append(c.Into, m.b.Part)
		}
	}
	return c
}

// meeting is a piece that lies in another.
type meeting struct {
	a, b *body.Hull
	body.Meeting
}

// meets lists the pieces of a thing that lie in those of another and may not.
func (t *thing) meets(o *thing) (met []meeting) {
	if body.BoxesApart(&t.box, &o.box, -Slack) || t.sameCamera(o) {
		return nil
	}
	slack := max(t.slack, o.slack)
	for i := range t.pieces {
		p := &t.pieces[i]
		if body.BoxesApart(&p.Box, &o.box, -Slack) {
			continue
		}
		for k := range o.pieces {
			q := &o.pieces[k]
			if p.Apart(q, -Slack) || mayTouch(t, p, o, q) {
				continue
			}
			if m := p.Meet(q); m.Deep > slack {
				met = append(met, meeting{p, q, m})
			}
		}
	}
	return met
}

// sameCamera says whether two things are one camera at two places of its track, or a camera and its track or its legs.
func (t *thing) sameCamera(o *thing) bool {
	return t.ofCamera() && (o.ofCamera() || o.Kind == Way) && plan.CameraOf(t.Name) == plan.CameraOf(o.Name)
}

// ofCamera says whether a thing is a camera or its legs.
func (t *thing) ofCamera() bool { return t.Kind == Camera || t.tripod }
