package sheet_test

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/render/sheet"
)

// A room of 4 m by 3 m, drawn at the largest scale that A4 holds.
func ExampleCompose() {
	room := []r2.Vec{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 3}, {X: 0, Y: 3}}
	setup := &plan.Setup{
		Title: "An empty room",
		Rooms: []plan.Room{{Name: "room", Inside: room}},
		Walls: []plan.WallPiece{{Outline: []r2.Vec{{X: 0, Y: -0.2}, {X: 4, Y: -0.2}, {X: 4, Y: 0}, {X: 0, Y: 0}}}},
	}
	document, faults := sheet.Compose(sheet.Input{Setup: setup}, sheet.Options{Paper: "A4 landscape"})
	page := document.Pages[0]
	fmt.Println(len(faults), page.Width, page.Height)
	fmt.Println(page.Title)
	fmt.Println(page.Description)
	// Output:
	// 0 297 210
	// An empty room
	// Lighting plan at 1 : 25 on A4: 0 lights, 0 people, 0 cameras.
}
