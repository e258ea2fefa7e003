package page_test

import (
	"bytes"
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/page"
	"scrimshaw/symbols/ink"
)

func ExampleWrite() {
	sheet := ink.Page{Title: "Set-up 1", Width: 297, Height: 210}
	c := ink.NewCanvas(&sheet, ink.Notes)
	c.Text(ink.Text{At: r2.Vec{X: 20, Y: 190}, S: "Key 4300 K", Size: 3.5})
	doc := ink.Document{Title: "One set-up", Language: "en", Pages: []ink.Page{sheet}}

	var file bytes.Buffer
	if err := page.Write(&file, doc, page.Options{}); err != nil {
		panic(err)
	}
	fmt.Printf("%.15s\n", file.String())
	// Output: <!DOCTYPE html>
}
