package sheet

import (
	"slices"
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/samples"
)

// crowded are the samples on whose first pages lists of 2.5 mm have no room, by name and set-up: they have 2.2 mm.
var crowded = []string{"map-room ", "ferry-office ", "two-sizes close", "night-log "}

// TestListsAreAsLargeAsTheirSheetHolds compares sheets with the ones whose lists are lettered at the least height: the lists are as large as each has
// had them, the paper and the scale are the same, and no sheet has more pages, or less on its first.
func TestListsAreAsLargeAsTheirSheetHolds(t *testing.T) {
	f := fixture.Family(t)
	for _, name := range samples.Names() {
		for i, in := range sampleInputs(t, name) {
			least := newSheet(in, Options{Font: f}, &faults{}).lay()
			first := least.layout
			least.draw()
			s := sampleSheets(t, name)[i]
			reached := 2.5
			if slices.Contains(crowded, name+" "+in.Setup.Name) {
				reached = 2.2
			}
			if s.d.Pad.Lists < reached {
				t.Errorf("%s %s: lists of %.1f mm, which have had room for %.1f", name, in.Setup.Name, s.d.Pad.Lists, reached)
			}
			if s.layout.Paper != first.Paper || s.layout.Times != first.Times || !s.layout.HoldsAsMuch(&first, layout.Needed) {
				t.Errorf("%s %s: lists of %.1f mm are bought with paper, scale or what stands on the sheet", name, in.Setup.Name, s.d.Pad.Lists)
			}
			if len(s.pages) > len(least.pages) || s.lost() > least.lost() {
				t.Errorf("%s %s: %d pages and %d lost, with small lists %d and %d", name, in.Setup.Name, len(s.pages), s.lost(), len(least.pages), least.lost())
			}
			if found := s.log.all; len(found) > len(least.log.all) {
				t.Errorf("%s %s: %v", name, in.Setup.Name, found)
			}
		}
	}
}

// TestLargeListsAreNotCut letters lists by every height, and wants none that cuts a text or breaks a word in a table.
func TestLargeListsAreNotCut(t *testing.T) {
	for _, cap := range listCaps {
		s := newSheet(fixture.Example(), Options{Font: fixture.Family(t)}, &faults{}).lay()
		least, pages := s.layout, s.pagesOf(s.layout)
		if took := s.holdsLists(trial{cap, 0}, &least, pages); took && (s.cut || s.d.Narrow) {
			t.Errorf("lists of %.1f mm are taken with a text that does not fit", cap)
		}
	}
	if !slices.IsSortedFunc(listCaps, func(a, b float64) int { return int(10 * (b - a)) }) {
		t.Error("the largest height comes first")
	}
}
