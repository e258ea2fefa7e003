package ink

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
)

var black = Colour{}

// flat measures text whose letters are all half an em wide.
type flat struct{}

func (flat) Width(s string, size float64, _ bool) float64 { return float64(len(s)) * size / 2 }
func (flat) Ascent(size float64) float64                  { return size }
func (flat) Descent(size float64) float64                 { return size / 4 }

func TestLayersHaveNamesInDrawingOrder(t *testing.T) {
	var names []string
	for _, l := range Layers() {
		if l.Title() == "" || strings.ContainsFunc(l.String(), func(r rune) bool { return (r < 'a' || r > 'z') && r != '-' }) {
			t.Errorf("layer %d: title %q, name %q", l, l.Title(), l)
		}
		if slices.Contains(names, l.String()) {
			t.Errorf("two layers are called %q", l)
		}
		names = append(names, l.String())
	}
	if len(names) != int(Collar)+1 || names[0] != "paper" || names[1] != "floor-tint" || names[4] != "walls-and-openings" {
		t.Errorf("names %v", names)
	}
	if Layer(200).String() == "" {
		t.Error("an unknown layer has no name")
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{1, 2, "1"}, {1.5, 2, "1.5"}, {1.234, 2, "1.23"}, {-0.001, 2, "0"}, {100, 2, "100"}, {100, 0, "100"},
		{-12.50, 2, "-12.5"}, {math.NaN(), 2, "0"}, {math.Inf(-1), 2, "0"}, {0.1 + 0.2, 2, "0.3"},
	} {
		if got := string(AppendNumber([]byte("x"), c.v, c.decimals)); got != "x"+c.want {
			t.Errorf("%v: %q, want %q", c.v, got, "x"+c.want)
		}
	}
	if Round(1.005001) != 1.01 || Round(-3.14159) != -3.14 {
		t.Error("lengths are not rounded to 0.01")
	}
}

func TestCapital(t *testing.T) {
	for words, want := range map[string]string{"": "", "a lamp": "A lamp", "éclair": "Éclair", "2 lamps": "2 lamps", "\xff": "\uFFFD"} {
		if got := Capital(words); got != want {
			t.Errorf("%q becomes %q, want %q", words, got, want)
		}
	}
}

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"plain":              "plain",
		"a\tb\nc":            "a b c",
		"a\x00\x1b[31mb\x7f": "a[31mb",
		"\u202Eevil\u200b":   "evil",
		"bad \xff byte":      "bad \uFFFD byte",
		"\uFFFE\uFFFF":       "\uFFFD\uFFFD",
		"é Ω 漢 😀":            "é Ω 漢 😀",
		"":                   "",
	} {
		if got := Clean(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

func TestCanvasLeavesOthersAlone(t *testing.T) {
	var page Page
	c := NewCanvas(&page, Walls)
	lamp := c.On(Symbols).Of("light:key", "The key light.").At(r2.Vec{X: 50, Y: 40}, 90, 20)
	pen := Pen{Width: 0.25}
	lamp.Polyline(pen, r2.Vec{}, r2.Vec{Y: 1})
	lamp.Circle(pen.Filled(Colour{R: 255}), r2.Vec{}, 0.1)
	c.Rect(Solid(black), r2.Vec{}, r2.Vec{X: 1, Y: 1})
	if len(page.Items) != 3 {
		t.Fatalf("%d items", len(page.Items))
	}
	line, circle, wall := page.Items[0], page.Items[1], page.Items[2]
	if line.Layer != Symbols || line.Object != "light:key" || line.Alt != "The key light." || line.Path[1].P[0] != (r2.Vec{X: 70, Y: 40}) {
		t.Errorf("line %+v", line)
	}
	if circle.Alt != "" || circle.Fill == nil || circle.Stroke.Width != 0.25 || pen.Fill != nil {
		t.Errorf("circle %+v", circle)
	}
	if wall.Layer != Walls || wall.Object != "" || wall.Stroke != nil {
		t.Errorf("wall %+v", wall)
	}
}

func TestCanvasDrawsNothingOfNothing(t *testing.T) {
	var page Page
	c := NewCanvas(&page, Notes)
	c.Polyline(Pen{Width: 1}, r2.Vec{})
	c.Polyline(Pen{}, r2.Vec{}, r2.Vec{X: 1})
	c.Polygon(Pen{Width: 1})
	c.Text(Text{S: "\x07", Size: 1})
	c.Arrow(Pen{Width: 1}, 2, r2.Vec{})
	c.Hatch(Pen{Width: 1}, 1, 0)
	if len(page.Items) != 0 {
		t.Errorf("%+v", page.Items)
	}
}

func TestWithinCutsByGeometryWhereItCan(t *testing.T) {
	var page Page
	c := NewCanvas(&page, Tint).Within(Corners(r2.Vec{}, r2.Vec{X: 10, Y: 10})...)
	c.Rect(Solid(black), r2.Vec{X: 5, Y: 5}, r2.Vec{X: 15, Y: 15})     // a fill: cut
	c.Rect(Pen{Width: 1}, r2.Vec{X: 4, Y: 4}, r2.Vec{X: 6, Y: 6})      // inside: as it is
	c.Rect(Solid(black), r2.Vec{X: 11, Y: 5}, r2.Vec{X: 15, Y: 15})    // outside: gone
	c.Polyline(Pen{Width: 1}, r2.Vec{X: 5, Y: 5}, r2.Vec{X: 20, Y: 5}) // a line: named
	c.Text(Text{At: r2.Vec{X: 9, Y: 9}, S: "text", Size: 3})           // named too
	c.Within(Corners(r2.Vec{X: 8}, r2.Vec{X: 20, Y: 20})...).Polyline(Pen{Width: 1}, r2.Vec{}, r2.Vec{X: 20, Y: 20})
	c.Within(Corners(r2.Vec{X: 30}, r2.Vec{X: 40, Y: 20})...).Circle(Pen{Width: 1}, r2.Vec{}, 90)
	if len(page.Items) != 5 {
		t.Fatalf("%d items", len(page.Items))
	}
	if got := area(page.Items[0].Path, 1); got != 25 || page.Items[0].Clip != 0 {
		t.Errorf("cut to %v, clip %d", got, page.Items[0].Clip)
	}
	if page.Items[1].Clip != 0 || page.Items[2].Clip != 1 || page.Items[3].Clip != 1 || page.Items[4].Clip != 2 {
		t.Errorf("clips %d %d %d %d", page.Items[1].Clip, page.Items[2].Clip, page.Items[3].Clip, page.Items[4].Clip)
	}
	if len(page.Clips) != 2 || signedArea(page.Clips[1]) != 20 {
		t.Errorf("clips %v", page.Clips)
	}
}

func TestArrowsEndAtTheirTips(t *testing.T) {
	var page Page
	NewCanvas(&page, Throws).DoubleArrow(Pen{Width: 0.25}, 2, r2.Vec{X: 10, Y: 10}, r2.Vec{X: 10, Y: 30})
	if len(page.Items) != 2 {
		t.Fatalf("%d items", len(page.Items))
	}
	heads := Path(page.Items[1].Path).Bounds().Box
	if heads.Min.Y != 10 || heads.Max.Y != 30 || !(math.Abs(heads.Max.X-heads.Min.X-2./3) <= 1e-9) {
		t.Errorf("heads %v", heads)
	}
	if line := Path(page.Items[0].Path).Bounds().Box; line.Min.Y != 11 || line.Max.Y != 29 {
		t.Errorf("line %v", line)
	}
}

func TestBoundsOfItems(t *testing.T) {
	for _, c := range []struct {
		item     Item
		min, max r2.Vec
	}{
		{Item{Path: Rect(r2.Vec{}, r2.Vec{X: 2, Y: 2}), Stroke: &Stroke{Width: 1}}, r2.Vec{X: -0.5, Y: -0.5}, r2.Vec{X: 2.5, Y: 2.5}},
		{Item{Text: &Text{S: "abcd", Size: 2, At: r2.Vec{X: 10, Y: 10}}}, r2.Vec{X: 10, Y: 9.5}, r2.Vec{X: 14, Y: 12}},
		{Item{Text: &Text{S: "abcd", Size: 2, At: r2.Vec{X: 10, Y: 10}, Align: Right, Angle: 90}}, r2.Vec{X: 8, Y: 6}, r2.Vec{X: 10.5, Y: 10}},
		{Item{Text: &Text{S: "ab", Size: 8, Align: Centre, Halo: &black}}, r2.Vec{X: -5, Y: -3}, r2.Vec{X: 5, Y: 9}},
		{Item{Image: &Image{Min: r2.Vec{X: 1}, Max: r2.Vec{X: 2, Y: 3}}}, r2.Vec{X: 1}, r2.Vec{X: 2, Y: 3}},
	} {
		e := c.item.Bounds(flat{})
		if e.Empty() || !near(e.Box.Min, c.min, 1e-9) || !near(e.Box.Max, c.max, 1e-9) {
			t.Errorf("%+v: %v, want %v %v", c.item, e.Box, c.min, c.max)
		}
	}
	page := Page{Items: []Item{{Path: Polyline(r2.Vec{}, r2.Vec{X: 5}), Stroke: &Stroke{Width: 2}}, {}}}
	if e := page.Bounds(flat{}); e.Box.Max != (r2.Vec{X: 6, Y: 1}) {
		t.Errorf("page %v", e.Box)
	}
	if e := (&Page{}).Bounds(flat{}); !e.Empty() {
		t.Errorf("an empty page reaches %v", e.Box)
	}
}

func TestStrata(t *testing.T) {
	nan := math.NaN()
	line := func(x float64) Path { return Polyline(r2.Vec{X: x}, r2.Vec{X: x, Y: 1.23456}) }
	stroke := &Stroke{Width: 0.25, Dash: []float64{0, 0}}
	page := &Page{
		Clips: [][]r2.Vec{Corners(r2.Vec{}, r2.Vec{X: 1, Y: 1})},
		Items: []Item{
			{Layer: Symbols, Object: "a", Alt: "First.", Path: line(1), Stroke: stroke},
			{Layer: Walls, Path: line(2), Stroke: stroke, Clip: 7},
			{Layer: Symbols, Object: "a", Path: line(3), Stroke: stroke},
			{Layer: Symbols, Object: "b", Path: line(4), Stroke: stroke},
			{Layer: Symbols, Text: &Text{S: "x\x00\ny", Size: 2, At: r2.Vec{X: 0.12345}}},
			{Layer: Symbols, Alt: "Said.", Path: line(5), Stroke: stroke},
			{Layer: Symbols, Path: line(6), Stroke: stroke},
			// What shows nothing:
			{Layer: Notes, Path: line(nan), Stroke: stroke},
			{Layer: Notes, Path: line(1e9), Stroke: stroke},
			{Layer: Notes, Path: line(1), Stroke: &Stroke{Width: nan}},
			{Layer: Notes, Path: line(1), Stroke: &Stroke{Width: 1001}},
			{Layer: Notes, Text: &Text{S: "x", Size: 1001}},
			{Layer: Notes, Path: line(1)},
			{Layer: Notes, Path: Path{}.Close(), Fill: &black},
			{Layer: Notes, Text: &Text{S: "\x01", Size: 2}},
			{Layer: Notes, Text: &Text{S: "x", Size: -2}},
			{Layer: Notes, Text: &Text{S: "x", Size: 2, Angle: nan}},
			{Layer: Notes, Image: &Image{Max: r2.Vec{X: 1, Y: 1}, Width: 2, Height: 2, RGB: make([]byte, 3)}},
			{Layer: Notes},
		},
	}
	before := *page
	before.Items = slices.Clone(page.Items)
	strata := page.Strata()
	if !reflect.DeepEqual(before, *page) {
		t.Error("the page was changed")
	}
	if len(strata) != 2 || strata[0].Layer != Walls || strata[1].Layer != Symbols {
		t.Fatalf("layers of %+v", strata)
	}
	wall := strata[0].Groups[0].Items[0]
	if wall.Clip != 0 || wall.Stroke.Dash != nil || wall.Path[1].P[0].Y != 1.23 {
		t.Errorf("wall %+v %+v", wall, wall.Stroke)
	}
	var groups []string
	for _, g := range strata[1].Groups {
		groups = append(groups, g.Object+"|"+g.Alt+"|"+strings.Repeat("*", len(g.Items)))
	}
	if want := []string{"a|First.|**", "b||*", "||*", "|Said.|*", "||*"}; !slices.Equal(groups, want) {
		t.Errorf("groups %q, want %q", groups, want)
	}
	if text := strata[1].Groups[2].Items[0].Text; text.S != "x y" || text.At.X != 0.12 {
		t.Errorf("text %+v", text)
	}
}

func TestPicture(t *testing.T) {
	m := Image{Width: 2, Height: 1, RGB: []byte{1, 2, 3, 4, 5, 6}}
	if r, g, b, a := m.Picture().At(1, 0).RGBA(); r>>8 != 4 || g>>8 != 5 || b>>8 != 6 || a>>8 != 255 {
		t.Errorf("pixel %d %d %d %d", r>>8, g>>8, b>>8, a>>8)
	}
	m.Height = 2
	if m.Picture() != nil {
		t.Error("a raster without bytes has a picture")
	}
}

func BenchmarkStrata(b *testing.B) {
	page := &Page{}
	c := NewCanvas(page, Symbols)
	for i := range 1000 {
		c.Circle(Pen{Width: 0.25}, r2.Vec{X: float64(i)}, 2)
	}
	b.ReportAllocs()
	for b.Loop() {
		page.Strata()
	}
}
