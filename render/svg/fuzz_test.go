package svg

import (
	"bytes"
	"io"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

func FuzzSVGText(f *testing.F) {
	opts := Options{Font: family(f)}
	for _, s := range []string{"plain", specimen.Hostile, "\xff\xfe", "]]>", "&#0;", "\ud7ff\ue000\ufffe", "  ", "é\u0301漢😀", "<!--", "\r\n"} {
		f.Add(s, s)
	}
	f.Fuzz(func(t *testing.T, label, object string) {
		page := ink.Page{Title: label, Description: object, Width: 100, Height: 50}
		c := ink.NewCanvas(&page, ink.Notes).Of(object, label)
		c.Text(ink.Text{At: r2.Vec{X: 1, Y: 1}, S: label, Size: 3})
		c.Circle(ink.Solid(ink.Colour{}), r2.Vec{}, 1)
		root := parsed(t, written(t, ink.Document{Language: label, Pages: []ink.Page{page}}, 0, opts))
		if got := root.all("title")[0].text; got != ink.Clean(label) {
			t.Errorf("title %q of %q", got, label)
		}
		for _, e := range root.all("text") {
			if want := ink.Clean(label); e.text != want && e.text != rightToLeftIsolate+want+popIsolate {
				t.Errorf("text %q of %q", e.text, label)
			}
		}
		for _, g := range root.all("g") {
			if got, has := g.attrs["data-object"]; has && got != ink.Clean(object) {
				t.Errorf("object %q of %q", got, object)
			}
		}
	})
}

func FuzzSVGPath(f *testing.F) {
	opts := Options{Font: family(f)}
	f.Add(1.0, 2.0, 0.25, 1.0)
	f.Add(math.NaN(), math.Inf(1), math.NaN(), -1.0)
	f.Add(1e308, -1e308, 1e-300, 1e300)
	f.Fuzz(func(t *testing.T, x, y, width, dash float64) {
		page := ink.Page{Width: 100, Height: 50, Clips: [][]r2.Vec{{{X: x}, {Y: y}}}}
		page.Items = []ink.Item{
			{Path: ink.Circle(r2.Vec{X: x, Y: y}, width), Stroke: &ink.Stroke{Width: width, Dash: []float64{dash}}, Clip: 1},
			{Text: &ink.Text{S: "x", Size: width, Angle: dash, At: r2.Vec{X: x, Y: y}}},
		}
		file := written(t, ink.Document{Pages: []ink.Page{page}}, 0, opts)
		parsed(t, file)
		if bytes.Contains(file, []byte("NaN")) || bytes.Contains(file, []byte("Inf")) {
			t.Errorf("what is no number is written: %s", file)
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	doc := specimen.Document()
	opts := Options{Font: family(b)}
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, doc, 0, opts); err != nil {
			b.Fatal(err)
		}
	}
}
