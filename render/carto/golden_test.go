package carto

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
	"scrimshaw/testdata/golden"
)

var (
	brown = ink.Colour{R: 134, G: 84, B: 38}
	onMM  = func(p r2.Vec) r2.Vec { return r2.Scale(20, p) } // 1:50
)

// A lamp of 1000 cd over a floor of 3 m by 2 m: the band from 64 to 128 lx with its two contours,
// lettered in gaps.
func TestGoldenBandWithLettering(t *testing.T) {
	page := ink.Page{Width: 60, Height: 40}
	levels := StopLevels(64, 64, 128, 2)
	relief := Trace(sampled(31, 21, 0.1, floor(1.5, 1, 2)), Values(levels), Paper(20))
	for _, ring := range relief.bands()[1].Rings {
		ink.NewCanvas(&page, ink.Tint).Polygon(ink.Solid(Day().At(0.5)), through(ring, onMM)...)
	}
	c := ink.NewCanvas(&page, ink.Contours)
	lines := OnPaper(relief.Lines, onMM)
	letters := Letter(lines, LetterOptions{Size: func(Line) r2.Vec { return r2.Vec{X: 5, Y: 2.6} }, Spacing: 60})
	for _, l := range letters {
		c.Text(ink.Text{At: l.At, S: levels[lines[l.Line].Index].Label(Lux, 0), Size: 2.6, Angle: l.Angle, Align: ink.Centre, Colour: brown})
	}
	for _, l := range Cut(lines, letters) {
		c.Polyline(ink.Pen{Colour: brown, Width: 0.18}, l.Points...)
	}
	golden.Compare(t, "band-with-lettering", &page)
}

// An edge of shadow five stops deep, aslant over a floor of 2 m by 1.5 m.
func TestGoldenCliff(t *testing.T) {
	page := ink.Page{Width: 40, Height: 30}
	across := r2.Unit(r2.Vec{X: 3, Y: 1})
	lux := func(p r2.Vec) float64 {
		if r2.Dot(p, across) < 1 {
			return 500
		}
		return 10
	}
	o := Paper(20)
	o.Probe, o.Edge = lux, 0.005
	lines, cliffs := Cliffs(OnPaper(Trace(sampled(21, 16, 0.1, lux), Values(StopLevels(64, 10, 500, 8)), o).Lines, onMM), CliffOptions{})
	c := ink.NewCanvas(&page, ink.Contours)
	for _, l := range lines {
		c.Polyline(ink.Pen{Colour: brown, Width: 0.18}, l.Points...)
	}
	for _, k := range cliffs {
		c.Polyline(ink.Pen{Colour: brown, Width: 0.35}, k.Points...)
		c.Segments(ink.Pen{Colour: brown, Width: 0.18}, k.Ticks...)
	}
	golden.Compare(t, "cliff", &page)
}
