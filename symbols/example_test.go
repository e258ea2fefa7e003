package symbols_test

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols"
	"scrimshaw/symbols/ink"
)

// A soft box 0.9 m wide on a stand, aimed to the right, at 1:50.
func ExampleDrawLight() {
	page := ink.Page{Width: 100, Height: 60}
	canvas := ink.NewCanvas(&page, ink.Symbols).Of("light:key", "Key, a soft box.")
	look := symbols.Look{Ink: ink.Colour{R: 24, G: 24, B: 28}, Paper: ink.Colour{R: 255, G: 255, B: 255}}
	at := r2.Vec{X: 40, Y: 30}
	drawn := symbols.DrawLight(canvas, look, symbols.Lamp{
		Class: symbols.Boxed, At: at, Bearing: 90, Face: r2.Vec{X: 18, Y: 18}, Colour: ink.Colour{R: 255, G: 214, B: 170},
		Mount: symbols.Mount{Hold: symbols.Stand, Base: at, Footprint: 20},
	})
	box := drawn.Box()
	fmt.Printf("%d marks; body %.1f by %.1f mm\n", len(page.Items), box.Max.X-box.Min.X, box.Max.Y-box.Min.Y)
	// Output: 8 marks; body 7.9 by 18.0 mm
}

func ExampleCatalogue() {
	for _, e := range symbols.Catalogue()[:3] {
		fmt.Printf("%s: %s, %s\n", e.Key, e.Name, e.Words)
	}
	// Output:
	// light:bare: open face, a bowl or a bare bulb, no lens
	// light:lensed: lensed, a lens before it, spot to flood
	// light:projected: profile, throws the image of its gate
}
