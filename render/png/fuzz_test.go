package png

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

func FuzzDraw(f *testing.F) {
	f.Add(1.0, 2.0, 0.25, 1.0, 30.0)
	f.Add(-1e5, 9e5, 3e5, 1e-9, 0.0)
	f.Add(math.NaN(), math.Inf(1), 1.0, math.NaN(), 1e300)
	opts := Options{Font: family(f), DPI: 30}
	f.Fuzz(func(t *testing.T, x, y, width, dash, angle float64) {
		page := ink.Page{Width: 30, Height: 20, Clips: [][]r2.Vec{{{X: x}, {Y: y}, {X: 10, Y: 10}}}}
		black := ink.Colour{}
		page.Items = []ink.Item{
			{Path: ink.Polyline(r2.Vec{X: x, Y: y}, r2.Vec{X: y, Y: x}, r2.Vec{X: width}), Stroke: &ink.Stroke{Width: width, Dash: []float64{dash, 1}, Round: true}, Clip: 1},
			{Path: ink.Circle(r2.Vec{X: x, Y: y}, width), Stroke: &ink.Stroke{Width: 1}, Fill: &black},
			{Text: &ink.Text{S: "x", Size: width, Angle: angle, At: r2.Vec{X: x, Y: y}, Halo: &black}},
			{Image: &ink.Image{Min: r2.Vec{X: x, Y: y}, Max: r2.Vec{X: x + width, Y: y + width}, Width: 1, Height: 1, RGB: []byte{1, 2, 3}}},
		}
		if _, err := Draw(&page, opts); err != nil {
			t.Fatal(err)
		}
	})
}
