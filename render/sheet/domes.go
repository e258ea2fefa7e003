package sheet

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// domesOf are the dome readings of a face toward each camera that sees it, which are those within
// 90° of its nose; where none does, toward every camera.
func domesOf(s *study.Study, person string) []*meter.Reading {
	nose := s.Setup.Post(person).Face.Axis
	var seen, all []*meter.Reading
	for _, c := range s.Setup.CameraPosts() {
		d := s.Readings.Named(person + ".dome." + c.Name)
		if d == nil {
			continue
		}
		all = append(all, d)
		if r3.Dot(d.Facing, nose) >= 0 {
			seen = append(seen, d)
		}
	}
	if len(seen) == 0 {
		return all
	}
	return seen
}
