package sheet

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/render/sheet/box"
	"scrimshaw/symbols/ink"
)

// TestWhatListsMeasureFromIsLettered looks on the plan of every sample for the walls that its lists
// name, for its rooms, and for the clear sizes of the rooms.
func TestWhatListsMeasureFromIsLettered(t *testing.T) {
	eachSample(t, func(t *testing.T, in Input, s *sheet) {
		var walls []string
		for i := range in.Setup.Lights {
			for _, d := range in.Setup.Lights[i].Placing {
				from, _, _ := strings.Cut(d.From, ",")
				if name := from[1+strings.LastIndexByte(from, '.'):]; !slices.Contains(walls, name) { // a wall, or the opening of a jamb
					walls = append(walls, name)
				}
			}
		}
		if len(walls) == 0 {
			t.Errorf("%s: the lists measure from no wall", s.pages[0].Title)
		}
		for _, wall := range walls {
			if !onPlan(&s.pages[0], wall) {
				t.Errorf("%s: the lists measure from %s, which the plan does not letter", s.pages[0].Title, wall)
			}
		}
		for i := range in.Setup.Rooms {
			r := &in.Setup.Rooms[i]
			g := ink.Extent{}
			g.Add(r.Inside...)
			for _, words := range []string{r.Name, s.d.Length(box.Width(g.Box)), s.d.Length(box.Height(g.Box))} {
				if !onPlan(&s.pages[0], words) {
					t.Errorf("%s: nothing says %q of the room %s", s.pages[0].Title, words, r.Name)
				}
			}
		}
	})
}

// onPlan says whether something is lettered on the plan, the collar left out.
func onPlan(p *ink.Page, s string) bool {
	return slices.ContainsFunc(p.Items, func(it ink.Item) bool {
		return it.Text != nil && it.Layer != ink.Collar && it.Text.S == s
	})
}
