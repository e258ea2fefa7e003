package meter

import (
	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/solid"
)

// Namer names what light came by: its lamp, the surface that it left last, panes and mirrors.
type Namer struct {
	setup   *plan.Setup
	mirrors map[solid.ID]bool
}

// NamerOf names what light comes by in a set-up.
func NamerOf(s *plan.Setup) Namer {
	n := Namer{setup: s, mirrors: map[solid.ID]bool{}}
	for _, m := range s.Set.Mirrors() {
		n.mirrors[m.ID] = true
	}
	return n
}

// Share names a term that gives so much, lx, or cd/m² for a spot.
func (n Namer) Share(t *light.Term, value float64) Share {
	s := Share{Light: t.Light, Numbered: n.setup.Numbered(t.Light), Path: t.Path.String(), Lux: value}
	for _, id := range t.Via {
		s.Via, s.Mirrors = append(s.Via, n.setup.Names[id]), append(s.Mirrors, n.mirrors[id])
	}
	if t.Path != light.Direct {
		s.From = n.setup.Names[t.From]
	}
	return s
}
