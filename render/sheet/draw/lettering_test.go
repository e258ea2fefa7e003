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
