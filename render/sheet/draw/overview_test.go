package draw

import (
	"testing"

	"scrimshaw/plan"
	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// On the overview, a room that lies over another has its name in another place.
func TestRoomsOverEachOtherAreNamedApart(t *testing.T) {
	_, page, p := blank(t, 200, 200)
	d := section.Digest{Name: "wide", Rooms: []plan.Room{{Name: "parlour", Inside: fixture.Quad(0, 0, 5, 4)}, {Name: "loft", Inside: fixture.Quad(0, 0, 5, 4)}}}
	o := OverviewOf([]section.Digest{d})
	o.Draw(p, layout.ViewOf(o.Extent(), box.Of(0, 0, 200, 150), 50))
	var names []ink.Item
	for _, it := range page.Items {
		if it.Text != nil && (it.Text.S == "parlour" || it.Text.S == "loft") {
			names = append(names, it)
		}
	}
	if len(names) != 2 {
		t.Fatalf("%d names of 2 rooms are lettered", len(names))
	}
	family := fixture.Family(t)
	a, b := names[0].Bounds(family).Box, names[1].Bounds(family).Box
	if a.Min.X < b.Max.X && b.Min.X < a.Max.X && a.Min.Y < b.Max.Y && b.Min.Y < a.Max.Y {
		t.Errorf("%s at %v lies over %s at %v", names[0].Text.S, a, names[1].Text.S, b)
	}
}

// TestNamesKeepApart: two names along one line are not read as one, however little room they leave each other.
func TestNamesKeepApart(t *testing.T) {
	c, page, p := blank(t, 100, 40)
	n := namer{c: c, p: p, area: box.Of(0, 0, 100, 40)}
	n.put(ink.Notes, "wall:top", []name{{"top", box.At(50, 20), 0}})
	var places []name
	for x := 50.0; x < 90; x += 0.1 {
		places = append(places, name{"yard", box.At(x, 20), 0})
	}
	n.put(ink.Notes, "opening:yard", places)
	if len(page.Items) != 2 {
		t.Fatalf("%d of 2 names are lettered", len(page.Items))
	}
	family := fixture.Family(t)
	if air := page.Items[1].Bounds(family).Box.Min.X - page.Items[0].Bounds(family).Box.Max.X; air < 1 || air > 4 {
		t.Errorf("there are %.1f mm between the names", air)
	}
}

// TestATagAloneStandsInAllSetups: where there is no room for the set-ups, what is in some of them says that it is.
func TestATagAloneStandsInAllSetups(t *testing.T) {
	s := spot{Mark: section.Mark{Tag: "2"}, in: []string{"wide", "night"}}
	for _, c := range []struct {
		setups      []string
		long, short string
	}{{[]string{"wide", "night"}, "2", "2"}, {[]string{"wide", "night", "close"}, "2 all but close", "2 …"}, {[]string{"wide", "night", "close", "store"}, "2 wide, night", "2 …"}} {
		if long, short := s.words(c.setups), s.short(c.setups); long != c.long || short != c.short {
			t.Errorf("of %v it says %q and %q, want %q and %q", c.setups, long, short, c.long, c.short)
		}
	}
}
