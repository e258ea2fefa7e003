package scene

import (
	"slices"

	"scrimshaw/plan/source"
)

// fixedKeys are the keys that no change may alter.
var fixedKeys = []string{"scrimshaw", "units", "kit", "prices", "setups"}

// wholeKeys are the keys of things whose value is replaced whole, never merged key by key.
var wholeKeys = []string{"at", "aim", "looks", "faces", "facing", "output", "mount", "bulb", "dressing", "stands-for"}

// placedSections are the sections whose things stand at a place; a room's at is a corner.
var placedSections = []string{"furniture", "people", "cameras", "lights", "grip"}

// changeRules are the rules by which the change of a set-up is laid over the scene.
func changeRules() *source.Rules {
	r := &source.Rules{
		Forms:  map[string][]string{},
		Partly: map[string][]string{},
		Lists:  []string{"lights.*.gels", "openings.*.gels"},
		Fixed:  fixedKeys,
		Whole:  []string{"people.*.marks.*.at", "people.*.marks.*.faces", "circuits.*.at", "cues.*.lights.*"},
		Resets: []source.Reset{{
			At: "lights.*", Key: "unit", Drops: []string{"modifier", "gels", "level", "colour", "cuts"},
		}},
	}
	for _, at := range placedIn("*.at", "people.*.marks.*.at") {
		r.Partly[at] = placeForms
		r.Resets = append(r.Resets, source.Reset{At: at, Key: "in", Drops: []string{"out"}}, source.Reset{At: at, Key: "out", Drops: []string{"in"}})
	}
	complete := map[string]func(*source.Node) bool{}
	for _, p := range changeable() {
		p.rule(r)
		complete[p.name()] = p.complete
	}
	r.Complete = func(path []string, thing *source.Node) bool {
		enough := complete[path[0]]
		return enough == nil || enough(thing)
	}
	return r
}

// placedIn are patterns of the places of things.
func placedIn(key string, more ...string) []string {
	for _, s := range placedSections {
		more = append(more, s+"."+key)
	}
	return more
}

// rule adds what a section knows of its things: their forms, and the keys that each form leaves
// without a meaning.
func (s section[O, T, P]) rule(r *source.Rules) {
	things := s.key + ".*"
	r.Things = append(r.Things, things)
	for _, key := range wholeKeys {
		if s.table.Field(key) != nil {
			r.Whole = append(r.Whole, things+"."+key)
		}
	}
	if len(s.table.Forms) > 0 {
		r.Forms[things] = s.table.Forms
	}
	for _, form := range s.table.Forms {
		if barred := s.table.forbiddenKeys(form); len(barred) > 0 {
			r.Resets = append(r.Resets, source.Reset{At: things, Key: form, Drops: barred})
		}
	}
}

func (s section[O, T, P]) name() string { return s.key }

// complete reports whether a map says all that a thing needs to be one.
func (s section[O, T, P]) complete(n *source.Node) bool {
	if n.Kind != source.Map {
		return true // a fault of its own
	}
	for _, f := range s.table.Fields {
		if f.LackedBy(n) {
			return false
		}
	}
	return len(s.table.Forms) == 0 || slices.ContainsFunc(s.table.Forms, func(f string) bool { return n.Key(f) != nil })
}
