package sheet

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/sheet/internal/fixture"
)

// TestTallStandsStayInTheFrame puts a light with a wide stand above everything else: the ring of its
// legs lies within the frame on every paper.
func TestTallStandsStayInTheFrame(t *testing.T) {
	f := fixture.Family(t)
	for _, paper := range []string{"A4", "A4 landscape", "A3"} {
		in := fixture.Example()
		l := &in.Setup.Lights[0]
		l.Frame.At.X, l.Frame.At.Y = 2, 6
		l.Mount.Base, l.Mount.Foot = r2.Vec{X: 2, Y: 6}, 2.6
		s := sheetFor(t, in, Options{Paper: paper, Font: f})
		checkPage(t, &s.pages[0], f)
	}
}
