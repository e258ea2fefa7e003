package radiosity

import "scrimshaw/plan/colour"

// Mix is the light of all lamps at their levels, in three channels, as if they were one, for lattices alone: what many lamps
// give to a lattice takes as long to read as what one does.
func (s *Solution) Mix(levels []colour.RGB) *Solution {
	t := s.t
	m := &Solution{t: t, lamps: 1, mixed: true}
	if len(s.blocks) == 0 {
		return m
	}
	m.blocks = make([]block, 1)
	mixed := make([]columns32, len(s.blocks[0].exitance))
	for c := range m.channels() {
		for lamp, level := range levels {
			b, k := s.column(lamp, c%t.Channels())
			if gain := float32(level[c]); gain != 0 {
				for n := range mixed {
					mixed[n][c] += gain * s.withoutHot[b][n][k]
				}
			}
		}
	}
	m.withoutHot = [][]columns32{mixed}
	m.hot = []hotParts{s.mixHot(levels)}
	return m
}

// mostMixedLooks is how many times as often as at one lamp, at most, points look at what many make hot.
const mostMixedLooks = 4

// mixHot puts what lamps make hot side by side, where lattices look at it.
func (s *Solution) mixHot(levels []colour.RGB) (all hotParts) {
	sum := 0.0
	for lamp := range s.hot {
		hot := &s.hot[lamp]
		if hot.share() < hotShare || levels[lamp] == (colour.RGB{}) {
			continue
		}
		all.looks++
		first := len(all.parts)
		for _, part := range hot.parts {
			part.own = part.own.Times(levels[lamp])
			sum += part.power()
			all.parts, all.upTo = append(all.parts, part), append(all.upTo, sum)
		}
		for _, patch := range hot.patches {
			patch.from, patch.to, patch.power = patch.from+first, patch.to+first, 0
			for i := patch.from; i < patch.to; i++ {
				patch.power += all.parts[i].power()
			}
			all.patches = append(all.patches, patch)
		}
	}
	all.all, all.looks = sum, min(all.looks, mostMixedLooks)
	return all
}
