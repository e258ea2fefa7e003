package review

import (
	"fmt"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/source"
)

// standIn tells where a light cannot pass for what it stands for, at every face where it tells; and where nothing says the colour of that.
func (c *checker) standIn(l *plan.Light) {
	s := c.set.StandInOf(l.Name)
	if s == nil {
		return
	}
	if s.Unknown != "" {
		c.addMost(l.Name, 1, source.Warning, CodeStandInColour, l.StandsFor.Span, l.Path, s.Unknown, "%s stands for %s, and its colour is compared with nothing", s.Numbered, s.For)
	}
	for i := range s.Faces {
		if p := &s.Faces[i]; !p.Passes() {
			cannotPass(c, l, s, p)
		}
	}
}

// cannotPass words why a light is not taken at a face for what it stands for, and what mends it.
func cannotPass(c *checker, l *plan.Light, s *meter.StandIn, p *meter.Passing) {
	leaves := withoutPrefix(p.Uncomputed)
	if p.Gap != nil && !p.Gap.Passes() {
		c.addMost(l.Name+" "+p.Person, 1, source.Warning, CodeStandInColour, l.StandsFor.Span, l.Path, mendColour(p),
			"%sat the face of %s %s is %s than %s, which it stands for", leaves, p.Person, s.Numbered, meter.GapWords(*p.Gap), s.For)
	}
	if w := p.Way; w != nil && w.Angle > meter.PassAngle {
		c.addMost(l.Name+" "+p.Person, 1, source.Warning, CodeStandInAngle, l.StandsFor.Span, l.Path, fmt.Sprintf("move it to within %d° of there, as %s sees both", meter.PassAngle, p.Person),
			"%sat the face of %s %s comes from %.0f° beside %s, which it stands for: %s", leaves, p.Person, s.Numbered, w.Angle, s.For, w.Aside())
	}
}

// mendColour is what brings a light nearer to the colour that it should have.
func mendColour(p *meter.Passing) string {
	if cure := p.Cure(); cure != nil {
		return cure.Words()
	}
	return "take another unit: no gel of the catalogue brings it nearer"
}
