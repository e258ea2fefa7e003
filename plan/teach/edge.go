package teach

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/lens"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// toward is the way from one place to another.
func toward(from, to r3.Vec) r3.Vec { return r3.Sub(to, from) }

// tellEdge says what the light behind the head adds there, against the key side and against what the camera sees behind.
func (t *teacher) tellEdge(s *saying) {
	s.About = "edge"
	l := t.lesson.Role(term.Edge, term.Hair)
	if l == nil || !(l.Back > 0) {
		return
	}
	r, what := t.behindHead(l)
	s.add("%s gives %s %s", l.Numbered, what, t.illuminance("edge", l.Back))
	switch under := lens.Stops(*t.reading("key").Lux / l.Back); {
	case unit.EqualStops(under):
		s.add(", as much as the key side has.")
	case under > 0:
		s.add(", %s under the key side.", stops("edgeUnderKey", under))
	default:
		s.add(", %s over the key side.", stops("edgeOverKey", under))
	}
	t.tellBehind(s, l, r)
}

// tellBehind compares a grey card in the light on the back of the head with what the camera sees beside that, with the light
// and without.
func (t *teacher) tellBehind(s *saying, l *meter.LessonLight, r *meter.Reading) {
	b := t.behind(l)
	if b == nil || !(b.Luminance > 0) || b.Surface == "" {
		return
	}
	over := func(lux float64) float64 { return lens.Stops(lens.Grey * lux / math.Pi / b.Luminance) }
	s.add(" A grey card there would stand ")
	addOver(s, "cardOverBehind", over(*r.Lux))
	s.add(" what %s sees behind that side, %s", t.cameraWords(), b.Surface)
	if rest := without(r, []string{l.Light}); rest > 0 {
		s.add(", and without the light ")
		addOver(s, "cardWithoutLight", over(rest))
		s.add(" it")
	}
	s.add(".")
}

// addOver words stops over or under something, or level with it.
func addOver(s *saying, name string, v float64) {
	switch {
	case unit.EqualStops(v):
		s.add("level with")
	case v < 0:
		s.add("%s under", stops(name, v))
	default:
		s.add("%s over", stops(name, v))
	}
}

// behind is what the camera sees beside the head on the side where a light stands; nil where nobody looked.
func (t *teacher) behind(l *meter.LessonLight) *meter.Behind {
	if t.view == nil || t.view.Outside || l.At == nil {
		return nil
	}
	side := meter.PictureRight
	if l.Turn < 0 {
		side = meter.PictureLeft
	}
	for i := range t.view.Behind {
		if b := &t.view.Behind[i]; b.Picture == side {
			return b
		}
	}
	return nil
}
