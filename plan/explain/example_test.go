package explain_test

import (
	"context"
	"fmt"

	"scrimshaw/plan/explain"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// One point of 1000 cd, three metres over a meter: the last line of what comes straight.
func ExampleOf() {
	log := &source.Log{}
	shipped, err := kit.Shipped()
	if err != nil {
		fmt.Println(err)
		return
	}
	text := `{scrimshaw: 1,
	  lights: {lamp: {output: {candela: 1000, shape: uniform}, at: [0, 0], height: 3, aim: down}},
	  meters: {below: {flat: [0, 0, 0], facing: up}}}`
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "one-lamp.yaml", Text: []byte(text)}, log)
	lit, err := study.Run(context.Background(), resolve.Resolve(document, document.Base(log), log), study.Options{ReadingsOnly: true})
	if err != nil {
		fmt.Println(err, log.All())
		return
	}
	e, err := explain.Of(context.Background(), lit, "below")
	if err != nil {
		fmt.Println(err)
		return
	}
	steps := e.Lights[0].Straight
	last := steps[len(steps)-1]
	fmt.Printf("%s = %s = %.2f %s\n", last.Symbol, last.Formula, last.Value, last.Unit)
	// Output: E0 = I × c / d² = 111.11 lx
}
