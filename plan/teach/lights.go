package teach

import (
	"cmp"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
)

// What counts: a light that gives less than minPart of a reading is left out of a lesson, and one that nobody called a fill or
// an edge is one where it gives so much of the fill side, or of the back of the head, and more there than before it.
const (
	minPart  = 0.05
	edgePart = 0.3
)

// mostLights is how many lights a lesson has: more can be read neither on a drawing nor on a face.
const mostLights = 6

// gather fills in the lights of the lesson: the key first, then fills, lights behind the head, and others.
func (t *teacher) gather() {
	for _, plane := range [...]string{"key", "fill", "edge", "hair"} {
		t.lesson.Uncomputed = append(t.lesson.Uncomputed, t.reading(plane).Uncomputed...)
	}
	t.lesson.Uncomputed = plan.Unique(t.lesson.Uncomputed)
	if c := t.face.Contrast; c != nil {
		t.lesson.Stops, t.lesson.Ratio = &c.Stops, &c.Ratio
	}
	var all []meter.LessonLight
	for i := range t.study.Setup.Lights {
		if l := &t.study.Setup.Lights[i]; l.Level > 0 {
			all = append(all, t.lessonLight(l))
		}
	}
	t.nameKey(all)
	t.nameFill(all)
	t.nameEdge(all)
	t.placeAll(all)
	all = slices.DeleteFunc(all, func(l meter.LessonLight) bool { return !t.counts(&l) })
	slices.SortStableFunc(all, func(a, b meter.LessonLight) int {
		return cmp.Or(cmp.Compare(rank(a.Role), rank(b.Role)), cmp.Compare(b.Key+b.Fill+b.Back, a.Key+a.Fill+a.Back))
	})
	t.lesson.Lights = all[:min(len(all), mostLights)]
}

// rank is the place of a role in a lesson.
func rank(r term.Role) int {
	if i := slices.Index([]term.Role{term.Key, term.Fill, term.Edge, term.Hair}, r); i >= 0 {
		return i
	}
	return len(term.Roles)
}

// lessonLight is a light with what it gives, and the role that the scene gives it for the person.
func (t *teacher) lessonLight(l *plan.Light) meter.LessonLight {
	key, fill, edge, hair := t.reading("key"), t.reading("fill"), t.reading("edge"), t.reading("hair")
	out := meter.LessonLight{Light: l.Name, Numbered: l.Numbered(), Tag: l.Tag, Key: given(key, l.Name), Fill: given(fill, l.Name),
		Back: max(given(edge, l.Name), given(hair, l.Name))}
	who, _, _ := strings.Cut(t.person.Name, ".") // a role is for somebody at every mark
	for _, r := range l.Roles {
		if (r.Person.Name == "" || r.Person.Name == who) && rank(r.Role) < len(term.Roles) {
			out.Role, out.Written = r.Role, true
		}
	}
	return out
}

// placeAll finds where the light of each comes from, at the reading that it is there for.
func (t *teacher) placeAll(all []meter.LessonLight) {
	for i := range all {
		l := &all[i]
		r := t.reading("key")
		switch {
		case l.Role == term.Key && l.Key > 0:
		case l.Role == term.Fill, l.Fill >= max(l.Key, l.Back):
			r = t.reading("fill")
		case l.Role == term.Edge, l.Role == term.Hair, l.Back > l.Key:
			r, _ = t.behindHead(l)
		}
		t.place(l, t.originOf(t.study.Setup.LightNamed(l.Light), r))
	}
}

// behindHead is the reading at the back of the head that a light gives more, and what it is of.
func (t *teacher) behindHead(l *meter.LessonLight) (*meter.Reading, string) {
	edge, hair := t.reading("edge"), t.reading("hair")
	if given(hair, l.Light) > given(edge, l.Light) {
		return hair, "the hair"
	}
	return edge, "the edge of the head"
}

// nameKey leaves one key: of those that the scene calls so the one that gives the face most; where it calls none so, or none
// of these reaches the face, the light that gives the key side most.
func (t *teacher) nameKey(all []meter.LessonLight) {
	best := -1
	for i := range all {
		if l := &all[i]; l.Role == term.Key && front(l) > 0 && (best < 0 || front(l) > front(&all[best])) {
			best = i
		}
	}
	if best < 0 {
		for i := range all {
			if best < 0 || all[i].Key > all[best].Key {
				best = i
			}
		}
	}
	for i := range all {
		switch l := &all[i]; {
		case i == best:
			l.Written = l.Written && l.Role == term.Key
			l.Role = term.Key
		case l.Role == term.Key:
			l.Role, l.Written = "", false
		}
	}
}

// front is what a light gives the side of the face that it lights more, lx.
func front(l *meter.LessonLight) float64 { return max(l.Key, l.Fill) }

// nameFill names a fill where the scene has none: of the lights without a role the one that gives the fill side most.
func (t *teacher) nameFill(all []meter.LessonLight) {
	if slices.ContainsFunc(all, func(l meter.LessonLight) bool { return l.Role == term.Fill && l.Fill > 0 }) {
		return
	}
	fill := t.reading("fill")
	var best *meter.LessonLight
	for i := range all {
		l := &all[i]
		if l.Role == "" && l.Fill >= minPart**fill.Lux && l.Fill > l.Back && (best == nil || l.Fill > best.Fill) {
			best = l
		}
	}
	if best != nil && best.Fill > 0 {
		best.Role = term.Fill
	}
}

// nameEdge names an edge where the scene has no light behind the head: of the lights without a role the one that gives most
// there.
func (t *teacher) nameEdge(all []meter.LessonLight) {
	if slices.ContainsFunc(all, func(l meter.LessonLight) bool { return (l.Role == term.Edge || l.Role == term.Hair) && l.Back > 0 }) {
		return
	}
	edge := t.reading("edge")
	var best *meter.LessonLight
	for i := range all {
		l := &all[i]
		if l.Role == "" && l.Back >= edgePart**edge.Lux && l.Back > front(l) && (best == nil || l.Back > best.Back) {
			best = l
		}
	}
	if best != nil && best.Back > 0 {
		best.Role = term.Edge
	}
}

// counts says whether a light gives the head enough to be taught.
func (t *teacher) counts(l *meter.LessonLight) bool {
	if l.Role == term.Key {
		return true
	}
	is := func(v float64, plane string) bool { r := t.reading(plane); return v > 0 && v >= minPart**r.Lux }
	return is(l.Key, "key") || is(l.Fill, "fill") || is(l.Back, "edge") || is(l.Back, "hair")
}

// reading is one at the face.
func (t *teacher) reading(plane string) *meter.Reading {
	return t.study.Readings.Named(t.person.Name + "." + plane)
}

// given is what a light gives to a reading, lx.
func given(r *meter.Reading, light string) (lux float64) {
	for i := range r.Shares {
		if r.Shares[i].Light == light {
			lux += r.Shares[i].Lux
		}
	}
	return lux
}
