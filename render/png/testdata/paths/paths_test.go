// Package paths measures the path geometry of ink and of its rasteriser against a general library of paths. It is no part
// of the module: .ci/compare-paths runs it in a module of its own.
package paths

import (
	"math"
	"testing"

	"github.com/tdewolff/canvas"
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/font"
	"scrimshaw/render/png"
	"scrimshaw/symbols/ink"
)

// ring is a contour of 120 points as a map has it, mm.
func ring(k int) []r2.Vec {
	var line []r2.Vec
	for i := range 120 {
		t := float64(i) / 120 * 2 * math.Pi
		r := 70 + 10*math.Sin(5*t+float64(k))
		line = append(line, r2.Vec{X: 200 + r*math.Cos(t), Y: 140 + r*math.Sin(t)})
	}
	return line
}

const rings = 200

var dash = []float64{1.5, 0.8}

// drawn strokes the rings and fills the pixels of a sheet: strokes, dashes and coverage together.
func drawn(b *testing.B, dash []float64) {
	family, err := font.Default()
	if err != nil {
		b.Fatal(err)
	}
	page := ink.Page{Width: 420, Height: 297}
	for k := range rings {
		page.Items = append(page.Items, ink.Item{Path: ink.Polygon(ring(k)...), Stroke: &ink.Stroke{Width: 0.25, Dash: dash}})
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := png.Draw(&page, png.Options{DPI: 110, Font: family}); err != nil {
			b.Fatal(err)
		}
	}
}

// outlined turns the same strokes to outlines by the library, and fills nothing.
func outlined(b *testing.B, settle bool, dash ...float64) {
	canvas.FastStroke = !settle
	b.ReportAllocs()
	for b.Loop() {
		for k := range rings {
			p := libraryPath(ring(k))
			if len(dash) > 0 {
				p = p.Dash(0, dash...)
			}
			p.Stroke(0.25, canvas.ButtCap, canvas.MiterJoin, 0.01)
		}
	}
}

func libraryPath(points []r2.Vec) *canvas.Path {
	p := &canvas.Path{}
	for i, q := range points {
		if i == 0 {
			p.MoveTo(q.X, q.Y)
		} else {
			p.LineTo(q.X, q.Y)
		}
	}
	p.Close()
	return p
}

func BenchmarkStrokesOursWithPixels(b *testing.B) { drawn(b, nil) }
func BenchmarkStrokesLibrarySettled(b *testing.B) { outlined(b, true) }
func BenchmarkStrokesLibraryFast(b *testing.B)    { outlined(b, false) }
func BenchmarkDashesOursWithPixels(b *testing.B)  { drawn(b, dash) }
func BenchmarkDashesLibraryFast(b *testing.B)     { outlined(b, false, dash...) }

func BenchmarkFlattenOurs(b *testing.B) {
	p := ink.Circle(r2.Vec{X: 10, Y: 10}, 5)
	for b.Loop() {
		p.Flatten(0.01)
	}
}

func BenchmarkFlattenLibrary(b *testing.B) {
	p := canvas.Circle(5).Translate(10, 10).ReplaceArcs()
	for b.Loop() {
		p.Flatten(0.01)
	}
}

// TestStrokes says what the library makes of strokes that a sheet has: a dot of no length, and a line as wide as the square
// that it goes round.
func TestStrokes(t *testing.T) {
	for _, settle := range []bool{true, false} {
		canvas.FastStroke = !settle
		dot := &canvas.Path{}
		dot.MoveTo(5, 5)
		dot.LineTo(5, 5)
		t.Logf("settled %v: a dot with round caps covers %v", settle, dot.Stroke(1, canvas.RoundCap, canvas.RoundJoin, 0.01).Bounds())
		square := libraryPath([]r2.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}})
		covered := square.Stroke(8, canvas.ButtCap, canvas.MiterJoin, 0.01).Contains(0.5, 0.5, canvas.NonZero)
		t.Logf("settled %v: a line 8 mm wide round a square of 1 mm covers its middle: %v", settle, covered)
	}
}
