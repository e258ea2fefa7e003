package svg_test

import (
	"bytes"
	"fmt"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/svg"
	"scrimshaw/symbols/ink"
)

func ExampleWrite() {
	sheet := ink.Page{Title: "Set-up 1", Width: 297, Height: 210}
	c := ink.NewCanvas(&sheet, ink.Notes)
	c.Text(ink.Text{At: r2.Vec{X: 20, Y: 190}, S: "Key 4300 K", Size: 3.5})
	doc := ink.Document{Title: "One set-up", Language: "en", Pages: []ink.Page{sheet}}

	var file bytes.Buffer
	if err := svg.Write(&file, doc, 0, svg.Options{}); err != nil {
		panic(err)
	}
	fmt.Println(strings.Contains(file.String(), `width="297mm" height="210mm" viewBox="0 0 297 210"`))
	// Output: true
}
