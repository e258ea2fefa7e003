package ink_test

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
)

// A lamp drawn in metres at 1:50, half a metre wide, looking to the lower right.
func Example() {
	page := ink.Page{Title: "One lamp", Width: 297, Height: 210}
	lamp := ink.NewCanvas(&page, ink.Symbols).
		Of("light:key", "The key light, aimed to the lower right.").
		At(r2.Vec{X: 100, Y: 80}, 135, 1000/50.0)
	black := ink.Colour{}
	lamp.Polygon(ink.Solid(black), r2.Vec{X: -0.25}, r2.Vec{X: 0.25}, r2.Vec{X: 0.15, Y: -0.3}, r2.Vec{X: -0.15, Y: -0.3})
	lamp.Arrow(ink.Pen{Width: 0.25}, 2, r2.Vec{}, r2.Vec{Y: 1})

	for _, stratum := range page.Strata() {
		for _, group := range stratum.Groups {
			fmt.Println(stratum.Layer.Title(), "|", group.Object, "|", len(group.Items), "marks |", group.Alt)
		}
	}
	// Output:
	// Symbols | light:key | 3 marks | The key light, aimed to the lower right.
}
