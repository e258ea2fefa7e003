package sheet

import (
	"testing"

	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
	"scrimshaw/testdata/golden"
)

// blank is a composer with a page to draw on.
func blank(t *testing.T, wide, high float64) (*drawing, *ink.Page, pad) {
	t.Helper()
	page := &ink.Page{Width: wide, Height: high}
	c := newSheet(example(), Options{Font: family(t)}, &faults{}).d
	return c, page, c.p.with(page)
}

// Four lamps in a panel with room for one full tag: the ladder of labels from the full tag by the
// short one to the number.
func TestGoldenLadderOfLabels(t *testing.T) {
	c, page, p := blank(t, 60, 34)
	var things []placeable
	for i, x := range []float64{10, 24, 38, 52} {
		l := &c.in.Setup.Lights[i%3]
		colour := ink.Colour{R: 230, G: 150, B: 70}
		where := at(x, 12)
		body := symbols.Drawn{Body: corners(box(x-3, 9, x+3, 15))}
		things = append(things, &tag{object: "light:" + l.Name, number: []string{"1", "2", "3", "4"}[i], strip: &colour,
			lines: c.lightLines(l), short: c.shortLabel(l), anchor: where, drawn: body, weight: 3})
		p.on(ink.Symbols).outline(thin, p.look.Ink, nil, body.Body...)
	}
	c.place(p, view{scale: 20, panel: box(0, 0, 60, 34)}, things, bodies(p, things))
	golden.Compare(t, "ladder-of-labels", page)
}

// The legend of a soft box on a stand, a throw and a cliff of light.
func TestGoldenLegend(t *testing.T) {
	c, page, p := blank(t, StripWide, 24)
	for _, key := range []string{"light:boxed", "mount:stand", "throw", "cliff"} {
		c.used(key)
	}
	drawRows(p, c.legend().drawn, pads, 20)
	golden.Compare(t, "legend", page)
}
