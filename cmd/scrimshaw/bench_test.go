package main

import (
	"bytes"
	"context"
	"testing"

	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
	"scrimshaw/render/carto"
	"scrimshaw/render/sheet"
)

// studied is the built-in scene with its light computed.
func studied(b *testing.B) *study.Study {
	b.Helper()
	return litStudies(b, study.Options{})[0]
}

// BenchmarkLevelEdit is what a changed level costs: the floor summed again and its contours, ten
// levels a stop apart, found again: plain, as while a level is being moved, and smoothed as a
// sheet draws them.
func BenchmarkLevelEdit(b *testing.B) {
	s := studied(b)
	floor := s.Floor()
	grid := sheet.Of(s, sheet.Options{}).Field.Grid
	levels := carto.Values(carto.StopLevels(300, 1, 2000, 10))
	half := light.Levels{}
	for name, level := range s.Levels {
		half[name] = level.Scale(0.5)
	}
	b.Run("plain", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			s.Basis.Field(0, half, floor.Lux)
			carto.Trace(grid, levels, carto.Options{})
		}
	})
	b.Run("as drawn", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			s.Basis.Field(0, half, floor.Lux)
			carto.Trace(carto.Denoise(grid, 0.03), levels, carto.Paper(50))
		}
	})
}

// BenchmarkDraw is a whole draw of the built-in scene to PDF, without the start of a process.
func BenchmarkDraw(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		var out, faults bytes.Buffer
		std := streams{in: &bytes.Buffer{}, out: &out, err: &faults}
		if status := run(context.Background(), []string{"draw", "-o", "-", "--format", "pdf"}, std); status != exitFine {
			b.Fatal(faults.String())
		}
	}
}
