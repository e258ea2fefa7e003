package study_test

import (
	"context"
	"fmt"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// From text to a reading: one point of 1000 cd, three metres over a meter.
func ExampleRun() {
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
	setup := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		fmt.Println(log.All())
		return
	}
	lit, err := study.Run(context.Background(), setup, study.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f lx\n", *lit.Readings.Named("below").Lux)
	// Output: 111.11 lx
}
