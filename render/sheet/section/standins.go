package section

import (
	"fmt"

	"scrimshaw/plan"
	"scrimshaw/plan/meter"
)

// standInWords say what a light passes for, and what is still between them at the face that it gives most of its light to: "for 1 lamp: at
// signe 88 mired cooler, add 1/2 CTO; 44° beside it". A figure that a key could change which nothing computes yet is left out.
func (in *Input) standInWords(l *plan.Light) string {
	for i := range in.StandIns {
		s := &in.StandIns[i]
		if s.Light != l.Name {
			continue
		}
		words := "stands for " + s.For
		if p := s.Main(); p != nil && len(p.Uncomputed) == 0 {
			words += ": at " + p.Person + " " + passingWords(p)
		}
		return words
	}
	return ""
}

// passingWords say in a few words how a light passes for something at a face.
func passingWords(p *meter.Passing) string {
	words := p.ColourWords()
	if change := mostly(p); change != "" {
		words += ", " + change
	}
	if p.Way != nil {
		words += fmt.Sprintf(", %.0f° beside it", p.Way.Angle)
	}
	return words
}

// mostly is what closes the gap, where it is one.
func mostly(p *meter.Passing) string {
	if p.Gap == nil || p.Gap.Passes() {
		return ""
	}
	if cure := p.Cure(); cure != nil {
		return cure.Change()
	}
	return "no gel closes it"
}
