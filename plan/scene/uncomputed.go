package scene

import (
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

// dropOtherSetups leaves out what is on other set-ups, all of which every scene lists. A reverse of one that this
// one comes after stays: what starts from a set-up that is not reversed is not reversed either.
func (s *Scene) dropOtherSetups() {
	line := s.lineage()
	kept := s.Uncomputed[:0]
	for _, u := range s.Uncomputed {
		own := u.Table != "set-up" || u.Thing() == s.Setup || u.Changes == WholeSetup && line[u.Thing()]
		if own {
			kept = append(kept, u)
		}
	}
	s.Uncomputed = kept
}

// lineage is the set-ups that this one starts from, one after another, with itself.
func (s *Scene) lineage() map[string]bool {
	line := map[string]bool{}
	for own := s.setup(s.Setup); own != nil && !line[own.Name]; own = s.setup(own.After.Name) {
		line[own.Name] = true
	}
	return line
}
