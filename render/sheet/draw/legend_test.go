package draw

import (
	"strings"
	"testing"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// TestSignsStayInTheirPlaces draws every symbol there is as a sign: none leaves its place, and none is
// so small there that it says nothing.
func TestSignsStayInTheirPlaces(t *testing.T) {
	c := kitchenDrawing(t, fixture.Example())
	for _, e := range symbols.Catalogue() {
		var page ink.Page
		place := box.Of(10, 10, 10+signWide, 10+signHigh)
		c.Pad.With(&page).example(e.Draw, place, strings.HasPrefix(e.Key, "mount:") || strings.HasPrefix(e.Key, "person:"))
		got := page.Bounds(fixture.Family(t)).Box
		const pen = 0.5 // lines are not shrunk
		if room := box.Inset(place, -pen, -pen); !box.Contains(room, got.Min) || !box.Contains(room, got.Max) {
			t.Errorf("%s is drawn in %v, its place is %v", e.Key, got, place)
		}
		if box.Width(got) < 0.8*signWide && box.Height(got) < 0.75*signHigh && !strings.HasPrefix(e.Key, "reading:") && e.Key != "light:bulb" { // these have a size of their own
			t.Errorf("%s is only %.1f by %.1f mm", e.Key, box.Width(got), box.Height(got))
		}
	}
}
