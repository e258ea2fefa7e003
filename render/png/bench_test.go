package png

import (
	"io"
	"testing"

	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

func BenchmarkDraw(b *testing.B) {
	page, opts := specimen.Sheet(), Options{Font: family(b)}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Draw(&page, opts); err != nil {
			b.Fatal(err)
		}
	}
}

// A3 at 150 pixels to the inch, from marks to bytes.
func BenchmarkWrite(b *testing.B) {
	doc, opts := ink.Document{Pages: []ink.Page{specimen.Sheet()}}, Options{Font: family(b)}
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, doc, 0, opts); err != nil {
			b.Fatal(err)
		}
	}
}
