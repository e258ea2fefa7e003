package clash

import (
	"scrimshaw/plan/body"
	"scrimshaw/plan/term"
)

// touching is a pair of pieces that may lie in each other.
type touching struct {
	words string
	is    func(t *thing, p *body.Hull, o *thing, q *body.Hull) bool
}

// touches are all pairs that may. Whatever else lies in something is a fault.
var touches = []touching{
	{"legs, which are turned until they fit: the ground that they take is looked at as a circle", func(t *thing, p *body.Hull, o *thing, q *body.Hull) bool {
		return legs(t, p) || legs(o, q)
	}},
	{"the ground of legs, and all that does not stand up from it", func(t *thing, p *body.Hull, o *thing, q *body.Hull) bool {
		return p.Part == body.Ground && !upFrom(t, o, q) || q.Part == body.Ground && !upFrom(o, t, p)
	}},
	{"what holds on to a thing, or stands on it", func(t *thing, _ *body.Hull, o *thing, _ *body.Hull) bool {
		return t.mount.On != "" && t.mount.On == o.Name || o.mount.On != "" && o.mount.On == t.Name
	}},
	{"a lamp and the ceiling that it hangs from", func(t *thing, p *body.Hull, o *thing, q *body.Hull) bool {
		return t.mount.Kind == term.Ceiling && o.Kind == Set && q.Sheet
	}},
	{"what is held by hand, and whoever holds it", func(t *thing, _ *body.Hull, o *thing, _ *body.Hull) bool {
		return t.mount.Kind == term.Hand && o.Kind == Person
	}},
	{"a sheet and the doors and cloth of a lamp before which it stands", func(t *thing, p *body.Hull, o *thing, q *body.Hull) bool {
		return p.Sheet && q.Sheet && (t.Kind == Light || o.Kind == Light)
	}},
	{"what stands under its own head, and what belongs to the set, over people", func(t *thing, p *body.Hull, o *thing, _ *body.Hull) bool {
		return o.Kind == Over && (t.prop || t.Kind == Camera || p.Part == body.Stand || t.mount.Kind == term.Hand || t.mount.Kind == term.Floor)
	}},
	{"a stand beside the rails: its legs are looked at as a circle", func(_ *thing, p *body.Hull, o *thing, _ *body.Hull) bool {
		return o.Kind == Way && p.Part == body.Stand
	}},
}

// legs says whether a piece is one of the legs of a stand. The base of a lift does not turn.
func legs(t *thing, p *body.Hull) bool { return p.Part == body.Legs && t.mount.Kind != term.Lift }

// upFrom says whether a piece of a thing stands up from the ground of legs, of a camera or beside one: somebody, a leaf that swings, a post, the base of a lift.
// What else stands there is looked at with what gives way: tables, walls, rails.
func upFrom(ground, o *thing, q *body.Hull) bool {
	if o.Kind == Person || o.Kind == Swing {
		return ground.ofCamera()
	}
	holds := q.Part == body.Stand || q.Part == body.Legs && o.mount.Kind == term.Lift
	return holds && (ground.ofCamera() || o.ofCamera())
}

// mayTouch says whether two pieces may lie in each other.
func mayTouch(t *thing, p *body.Hull, o *thing, q *body.Hull) bool {
	for _, may := range touches {
		if may.is(t, p, o, q) {
			return true
		}
	}
	return false
}
