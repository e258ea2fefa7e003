package sheet_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/render/pdf"
	"scrimshaw/render/sheet"
	"scrimshaw/samples"
)

// From a sample to a PDF, through every station of a run.
func ExampleOf() {
	shipped, e1 := kit.Shipped()
	text, e2 := samples.Text("napkin")
	if err := errors.Join(e1, e2); err != nil {
		fmt.Println(err)
		return
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "napkin.yaml", Text: text}, log)
	options, inputs := sheet.Options{Paper: "A3"}, []sheet.Input(nil)
	for _, setup := range resolve.ResolveAll(document, nil, log) {
		lit, err := study.Run(context.Background(), setup, study.Options{Quality: light.Draft})
		if err != nil {
			fmt.Println(err)
			return
		}
		inputs = append(inputs, sheet.Of(lit, options))
	}
	drawn, faults := sheet.Compose(inputs, options)
	var file bytes.Buffer
	err := pdf.Write(&file, drawn, pdf.Options{Font: options.Font})
	fmt.Println(log.Failed(), faults, err, drawn.Pages[0].Description)
	// Output:
	// false [] <nil> Lighting plan at 1 : 20 on A3: 1 light, 1 person, 1 camera. Working stop T2.8.
}

// A room of 4 m by 3 m, drawn at the largest scale that A4 holds.
func ExampleCompose() {
	room := []r2.Vec{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 4, Y: 3}, {X: 0, Y: 3}}
	setup := &plan.Setup{
		Title: "An empty room",
		Rooms: []plan.Room{{Name: "room", Inside: room}},
		Walls: []plan.WallPiece{{Outline: []r2.Vec{{X: 0, Y: -0.2}, {X: 4, Y: -0.2}, {X: 4, Y: 0}, {X: 0, Y: 0}}}},
	}
	document, faults := sheet.Compose([]sheet.Input{{Setup: setup}}, sheet.Options{Paper: "A4 landscape"})
	page := document.Pages[0]
	fmt.Println(len(faults), page.Width, page.Height)
	fmt.Println(page.Title)
	fmt.Println(page.Description)
	// Output:
	// 0 297 210
	// An empty room
	// Lighting plan at 1 : 25 on A4: 0 lights, 0 people, 0 cameras.
}
