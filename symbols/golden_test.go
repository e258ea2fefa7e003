package symbols

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
	"scrimshaw/testdata/golden"
)

// A soft box 0.9 m wide on its stand, turned by 30 degrees, at 1:50.
func TestGoldenLampOnAStand(t *testing.T) {
	page := ink.Page{Width: 60, Height: 60}
	at := r2.Vec{X: 30, Y: 30}
	DrawLight(ink.NewCanvas(&page, ink.Symbols).Of("light:key", "Key, a soft box."), printLook(), Lamp{
		Class: Boxed, At: at, Bearing: 30, Face: r2.Vec{X: 18, Y: 18}, Colour: ink.Colour{R: 255, G: 214, B: 170},
		Mount: Mount{Hold: Stand, Base: at, Footprint: 20},
	})
	golden.Compare(t, "lamp-on-a-stand", &page)
}

// A window of three panes in a wall 0.2 m thick that runs up the paper, at 1:50.
func TestGoldenWindowInItsWall(t *testing.T) {
	page := ink.Page{Width: 40, Height: 60}
	c := ink.NewCanvas(&page, ink.Walls)
	c.Rect(ink.Solid(printLook().Ink), r2.Vec{X: 10, Y: 5}, r2.Vec{X: 14, Y: 55})
	DrawOpening(c.Of("opening:street", "A window."), printLook(), Opening{
		Kind: Window, Left: r2.Vec{X: 14, Y: 16}, Right: r2.Vec{X: 14, Y: 40}, Out: r2.Vec{X: -4}, Panes: 3,
	})
	golden.Compare(t, "window-in-its-wall", &page)
}

// A mirror 0.8 m wide on a wall that runs across the paper, with the room below it, at 1:50.
func TestGoldenMirrorOnItsWall(t *testing.T) {
	page := ink.Page{Width: 40, Height: 30}
	c := ink.NewCanvas(&page, ink.Walls)
	c.Rect(ink.Solid(printLook().Ink), r2.Vec{X: 5, Y: 20}, r2.Vec{X: 35, Y: 24})
	DrawFurniture(c.Of("furniture:glass", "A mirror."), printLook(), Furniture{
		Kind: Mirror, At: r2.Vec{X: 20, Y: 19.7}, Size: r2.Vec{X: 16, Y: 0.6}, Scale: 20,
	})
	golden.Compare(t, "mirror-on-its-wall", &page)
}
