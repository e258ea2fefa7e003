package draw

import (
	"strings"
	"testing"

	"scrimshaw/render/sheet/internal/fixture"
)

// TestNoWidthBreaksEveryWord: a column that its neighbours leave no width still sets all letters, one a line.
func TestNoWidthBreaksEveryWord(t *testing.T) {
	st := style{face: fixture.Family(t), Cap: 1.8}
	for _, width := range []float64{-5, 0, 0.1} {
		lines, cut := st.wrap("2.67:1 wide", width, 0)
		if got := strings.ReplaceAll(strings.Join(lines, ""), "-", ""); got != "2.67:1wide" || cut {
			t.Errorf("%g mm: %q, cut %v", width, lines, cut)
		}
	}
}

// TestNoLineBeginsWithAColon: a ratio is cut behind its colon, which at the head of a line is read as part of nothing.
func TestNoLineBeginsWithAColon(t *testing.T) {
	d := kitchenDrawing(t, fixture.Example())
	st := d.Pad.listed(d.Pad.Look.Ink)
	for width := 6.0; width < 40; width += 0.5 {
		lines, _ := st.wrap("key + fill : fill is 3.5 : 1", width, 0)
		for _, l := range lines {
			if strings.HasPrefix(l, ":") && width > st.Width("3.5 :") {
				t.Errorf("%.1f mm wide: %q", width, lines)
			}
		}
	}
}
