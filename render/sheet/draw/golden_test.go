package draw

import (
	"testing"

	"scrimshaw/render/sheet/box"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
	"scrimshaw/testdata/golden"
)

// blank is a composer with a page to draw on.
func blank(t *testing.T, wide, high float64) (*Drawing, *ink.Page, Pad) {
	t.Helper()
	page := &ink.Page{Width: wide, Height: high}
	c := kitchenDrawing(t, fixture.Example())
	return c, page, c.Pad.With(page)
}

// Four lamps in a panel with room for one full tag: the ladder of labels from the full tag by the
// short one to the number.
func TestGoldenLadderOfLabels(t *testing.T) {
	c, page, p := blank(t, 104, 40)
	var labels []placeable
	for i, x := range []float64{14, 38, 62, 86} {
		l := &c.In.Setup.Lights[i%3]
		colour := ink.Colour{R: 230, G: 150, B: 70}
		where := box.At(x, 12)
		body := symbols.Drawn{Body: box.Corners(box.Of(x-3, 9, x+3, 15))}
		labels = append(labels, &tag{object: "light:" + l.Name, number: []string{"1", "2", "3", "4"}[i], cap: c.Pad.Ranks.Lamp, strip: &colour,
			lines: things{c}.lightLines(l), short: things{c}.shortLabel(l), anchor: where, drawn: body, priority: 3})
		p.On(ink.Symbols).outline(Thin, p.Look.Ink, nil, body.Body...)
	}
	c.place(p, layout.View{Scale: 20, Panel: box.Of(0, 0, 104, 40)}, labels, bodies(p, labels))
	golden.Compare(t, "ladder-of-labels", page)
}

// The legend of a soft box on a stand, a throw and a hard edge.
func TestGoldenLegend(t *testing.T) {
	c, page, p := blank(t, layout.Measure+2*layout.Pads, 24)
	for _, key := range []string{"light:boxed", "mount:stand", "throw", "cliff"} {
		c.used(key)
	}
	DrawRows(p, legend{c}.rows(), layout.Pads, 20)
	golden.Compare(t, "legend", page)
}
