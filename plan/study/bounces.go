package study

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
)

// bounceShare is how much of what a light gives to somebody comes off the surface, at least, where it is sent there for them.
const bounceShare = 0.5

// findBounces finds the lights that are aimed at something that is nobody, and who gets their light from there.
func (s *Study) findBounces() {
	for i := range s.Setup.Lights {
		l := &s.Setup.Lights[i]
		if !s.Setup.AimsAtThing(l) {
			continue
		}
		h, ok := s.World.BVH().FirstOpaque(l.Frame.At, l.Frame.Axis, s.Setup.Bars())
		if !ok {
			continue
		}
		off := s.Setup.Names[h.ID]
		if p := s.litOff(l.Name, off); p != nil {
			at := r3.Add(l.Frame.At, r3.Scale(h.T, l.Frame.Axis))
			s.Bounces = append(s.Bounces, Bounce{l.Name, off, p.Name, at, p.Face.At, r3.Norm(r3.Sub(p.Face.At, at))})
		}
	}
}

// litOff is who gets most light of a lamp off a surface, if that is most of what they get of it; nil where nobody does.
func (s *Study) litOff(lamp, surface string) (best *plan.Person) {
	most := 0.0
	for i := range s.Setup.People {
		p := &s.Setup.People[i]
		r := s.Readings.Named(p.Name + ".key")
		if r == nil {
			continue
		}
		off, all := 0.0, 0.0
		for _, share := range r.Shares {
			if share.Light != lamp {
				continue
			}
			all += share.Lux
			if sentOn := share.Path == light.Reflected.String() || share.Path == light.Mirrored.String(); sentOn && share.From == surface {
				off += share.Lux
			}
		}
		if off > most && off >= bounceShare*all {
			best, most = p, off
		}
	}
	return best
}
