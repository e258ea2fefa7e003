package contact_test

import (
	"bytes"
	"fmt"
	"image/png"

	"scrimshaw/render/contact"
	"scrimshaw/symbols/ink"
)

func ExampleWrite() {
	strips := ink.Document{Title: "A run", Pages: []ink.Page{{Title: "A run, set-up 1", Width: 80, Height: 100}}}
	sheets := ink.Document{Title: "A run", Pages: []ink.Page{{Title: "A run, set-up 1", Width: 297, Height: 210}}}
	var b bytes.Buffer
	if err := contact.Write(&b, strips, sheets, contact.Options{}); err != nil {
		fmt.Println(err)
		return
	}
	c, err := png.DecodeConfig(&b)
	fmt.Println(c.Width, c.Height, err)
	// Output: 1080 1799 <nil>
}
