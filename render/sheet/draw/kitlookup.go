package draw

import (
	"scrimshaw/plan"
	"scrimshaw/plan/kit"
)

// unitOf is the catalogue's entry of a light's unit, nil where it has none.
func unitOf(s *plan.Setup, l *plan.Light) *kit.Unit {
	if s.Scene == nil || s.Kit == nil {
		return nil
	}
	name := ""
	for i := range s.Scene.Lights {
		if w := &s.Scene.Lights[i]; w.Name == l.Name {
			name = w.Unit.Value
		}
	}
	for _, u := range s.Kit.Units {
		if u.Name == name {
			return u
		}
	}
	return nil
}

// The sizes of what the catalogue does not know, m: common practice.
const (
	headWide = 0.25
	headDeep = 0.30
)

// bodyOf is the width and depth of a light's head, m.
func bodyOf(s *plan.Setup, l *plan.Light) (wide, deep float64) {
	if u := unitOf(s, l); u != nil && u.Body[0] > 0 && u.Body[1] > 0 {
		return u.Body[0], u.Body[1]
	}
	return headWide, headDeep
}
