package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// keepLater keeps a key that is not computed yet.
func (s *Scene) keepLater(key source.LaterKey) {
	name := key.Path[strings.LastIndexByte(key.Path, '.')+1:]
	if l := laterNamed(key.Shape, name); l != nil {
		s.Uncomputed = append(s.Uncomputed, Uncomputed{Later: *l, Path: key.Path, Span: key.Span})
	}
}

// dropOtherSetups leaves out what is on other set-ups, all of which every scene lists.
func (s *Scene) dropOtherSetups() {
	s.Uncomputed = slices.DeleteFunc(s.Uncomputed, func(u Uncomputed) bool { return u.Table == "set-up" && u.Thing() != s.Setup })
}

// withoutSun takes from a moment what it could change where nobody says how far north that is: it then says no more than for how long is shot.
func (s *Scene) withoutSun() {
	if s.Site != nil && s.Site.Latitude.Set {
		return
	}
	for i := range s.Uncomputed {
		if u := &s.Uncomputed[i]; u.Changes == SkyLight {
			u.Changes = NoFigure
		}
	}
}
