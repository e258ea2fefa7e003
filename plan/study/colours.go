package study

import (
	"scrimshaw/plan/colour"
	"scrimshaw/plan/light"
)

// Colours is the light at the points of a field by channel, AP1. A basis gives luminous sums: with one channel of every
// light at a time they are what that channel gives.
func (s *Study) Colours(f *Field) []colour.RGB {
	out := make([]colour.RGB, len(f.Lux))
	plane := make([]float32, len(f.Lux))
	for c := range 3 {
		var unit colour.RGB
		unit[c] = 1
		only := light.Levels{}
		for name, level := range s.fieldLevels() {
			var channel colour.RGB
			channel[c] = level[c]
			only[name] = channel
		}
		s.Basis.Field(s.index(f), only, plane)
		for n, y := range plane {
			out[n][c] = float64(y) / unit.Y()
		}
	}
	return out
}
