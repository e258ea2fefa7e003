package png_test

import (
	"bytes"
	"fmt"
	stdpng "image/png"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/png"
	"scrimshaw/symbols/ink"
)

func ExampleWrite() {
	sheet := ink.Page{Title: "Set-up 1", Width: 297, Height: 210}
	c := ink.NewCanvas(&sheet, ink.Notes)
	c.Text(ink.Text{At: r2.Vec{X: 20, Y: 190}, S: "Key 4300 K", Size: 3.5})
	doc := ink.Document{Title: "One set-up", Language: "en", Pages: []ink.Page{sheet}}

	var file bytes.Buffer
	if err := png.Write(&file, doc, 0, png.Options{DPI: 254}); err != nil {
		panic(err)
	}
	size, err := stdpng.DecodeConfig(&file)
	fmt.Println(size.Width, size.Height, err)
	// Output: 2970 2100 <nil>
}
