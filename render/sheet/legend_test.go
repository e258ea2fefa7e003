package sheet

import (
	"strings"
	"testing"

	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// TestSignsStayInTheirPlaces draws every symbol there is as a sign: none leaves its place, and none is
// so small there that it says nothing.
func TestSignsStayInTheirPlaces(t *testing.T) {
	c := newSheet(example(), Options{Font: family(t)}, &faults{}).d
	for _, e := range symbols.Catalogue() {
		var page ink.Page
		place := box(10, 10, 10+signWide, 10+signHigh)
		c.p.with(&page).example(e, place)
		got := page.Bounds(family(t)).Box
		const pen = 0.5 // lines are not shrunk
		if room := inset(place, -pen, -pen); !contains(room, got.Min) || !contains(room, got.Max) {
			t.Errorf("%s is drawn in %v, its place is %v", e.Key, got, place)
		}
		if width(got) < 0.8*signWide && height(got) < 0.75*signHigh && !strings.HasPrefix(e.Key, "reading:") {
			t.Errorf("%s is only %.1f by %.1f mm", e.Key, width(got), height(got))
		}
	}
}

// TestColumnsHaveAsManyPlaces: the stops of a column are all to a tenth.
func TestColumnsHaveAsManyPlaces(t *testing.T) {
	for v, want := range map[float64]string{-3: "−3.0", -0.84: "−0.8", 2: "+2.0", 0: "0.0", -0.01: "0.0"} {
		if got := overTenths(&v); got != want {
			t.Errorf("%g is %q, want %q", v, got, want)
		}
	}
	if got := overTenths(nil); got != "–" {
		t.Errorf("nothing is %q", got)
	}
}
