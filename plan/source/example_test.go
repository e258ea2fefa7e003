package source_test

import (
	"fmt"
	"os"

	"scrimshaw/plan/source"
)

func ExampleParse() {
	f := &source.File{Name: "napkin.yaml", Text: []byte("rooms: {kitchen: {size: [3.6, 3.1]}}\n")}
	var log source.Log
	root := source.Parse(f, &log)

	size := root.Get("rooms").Get("kitchen").Get("size")
	fmt.Println(size.Kind, "at line", size.Span.Line, "column", size.Span.Col, "reads", size.Span.Text())
	// Output: a list at line 1 column 25 reads [3.6, 3.1]
}

func ExampleRules_Merge() {
	var log source.Log
	scene := source.Parse(&source.File{Name: "scene.yaml", Text: []byte(
		"lights: {key: {unit: led-point-600, level: 40 %, gels: [1/2 CTO]}}\n")}, &log)
	change := source.Parse(&source.File{Name: "scene.yaml", Text: []byte(
		"lights: {key: {level: 15 %, +gels: [1/4 plus-green]}}\n")}, &log)

	rules := &source.Rules{Things: []string{"lights.*"}, Lists: []string{"lights.*.gels"}}
	key := rules.Merge(scene, change, "close", &log).Get("lights").Get("key")
	fmt.Println(key.Get("unit").Text, key.Get("level").Text, "by", key.Get("level").Layer)
	for _, gel := range key.Get("gels").Items {
		fmt.Println(gel.Text)
	}
	// Output:
	// led-point-600 15 % by close
	// 1/2 CTO
	// 1/4 plus-green
}

func ExampleApply() {
	var log source.Log
	root := source.Parse(&source.File{Name: "scene.yaml", Text: []byte(`lights:
  key: {unit: led-point-600, level: 40 %}   # two bags
setups:
  close: {camera: A}
`)}, &log)
	text, err := source.Apply(root, []source.Edit{
		{Path: "lights.key.level", Text: "35 %"},
		{Layer: "close", Path: "lights.key.level", Text: "20 %"},
	})
	if err != nil {
		fmt.Println(err)
	}
	os.Stdout.Write(text)
	// Output:
	// lights:
	//   key: {unit: led-point-600, level: 35 %}   # two bags
	// setups:
	//   close: {camera: A, change: {lights: {key: {level: 20 %}}}}
}
