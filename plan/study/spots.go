package study

import (
	"scrimshaw/plan"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/solid"
	"scrimshaw/plan/term"
)

// nameSpots says of each spot meter what it reads.
func nameSpots(s *plan.Setup, world *light.World, requests []meter.Request, set *meter.Set) {
	sheets := sheetsOf(s)
	for i := range set.Readings {
		r := &set.Readings[i]
		if r.Kind != term.SpotMeter {
			continue
		}
		o := &requests[r.Receptor]
		r.Sees = seen(s, light.Sight(world, &o.Receptor), sheets)
		if r.Luminance != nil {
			r.Sees.SetHandHeld(*r.Luminance, &o.Exposure)
		}
	}
}

// sheetsOf are the sheets of a set-up by what light meets on them; glass, cloth and mirrors are alike on both sides.
func sheetsOf(s *plan.Setup) map[solid.ID]*solid.Skin {
	sheets := map[solid.ID]*solid.Skin{}
	for i := range s.Set.Sheets {
		sheets[s.Set.Sheets[i].ID] = &s.Set.Sheets[i].Front
	}
	return sheets
}

// seen names what a line of sight meets.
func seen(s *plan.Setup, line light.Sightline, sheets map[solid.ID]*solid.Skin) *meter.Sees {
	sees := &meter.Sees{}
	for _, id := range line.Met {
		if skin := sheets[id]; skin != nil {
			sees.Past = append(sees.Past, meter.Passed{Name: s.Names[id], Mirror: !skin.Clear(), Scatters: skin.Scatters()})
		}
	}
	if line.Ends {
		sees.Surface = s.Names[line.Last]
		skin := sheets[line.Last]
		sees.Scatters = skin != nil && skin.Scatters()
	}
	return sees
}
