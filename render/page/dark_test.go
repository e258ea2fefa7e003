package page

import (
	"bytes"
	"strings"
	"testing"

	"scrimshaw/symbols/ink"

	"gonum.org/v1/gonum/spatial/r2"
)

// The page about sheets on dark paper is dark too, and about white ones it stays as it is.
func TestDarkSheetsHaveADarkPage(t *testing.T) {
	night, letters := ink.Colour{R: 10, G: 3, B: 3}, ink.Colour{R: 230, G: 147, B: 118}
	write := func(dark bool) string {
		p := ink.Page{Title: "Night", Width: 100, Height: 100}
		if dark {
			ink.NewCanvas(&p, ink.Ground).Rect(ink.Solid(night), r2.Vec{}, r2.Vec{X: 100, Y: 100})
		}
		ink.NewCanvas(&p, ink.Collar).Text(ink.Text{At: r2.Vec{X: 10, Y: 10}, S: "The kitchen", Size: 5, Colour: letters})
		var b bytes.Buffer
		if err := Write(&b, ink.Document{Title: "Kitchen", Language: "en", Pages: []ink.Page{p}}, Options{}); err != nil {
			t.Fatal(err)
		}
		return b.String()
	}
	if got := write(true); !strings.Contains(got, "color-scheme: dark") || !strings.Contains(got, "background: #0a0303; color: #e69376") {
		t.Error("the page of dark sheets is not dark")
	}
	if strings.Contains(write(false), "color-scheme: dark") {
		t.Error("the page of white sheets is dark")
	}
}
