package study_test

import (
	"context"
	"fmt"
	"os"
	"strings"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// A program that reads a scene and meters it: what DEVELOPERS.md shows.
func Example() {
	text := `{scrimshaw: 1,
	  lights: {lamp: {output: {candela: 1000, shape: uniform}, at: [0, 0], height: 3, aim: down}},
	  meters: {below: {flat: [0, 0, 0], facing: up}}}`
	shipped, err := kit.Shipped()
	if err != nil {
		panic(err)
	}
	log := &source.Log{}
	file := &source.File{Name: "one-lamp.yaml", Text: []byte(text)}
	document := scene.Open(scene.Env{Kit: shipped}, file, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	for _, found := range log.All() {
		fmt.Println(found) // with file, line, column and the fix
	}
	if log.Failed() {
		return
	}
	lit, err := study.Run(context.Background(), setup, study.Options{ReadingsOnly: true})
	if err != nil {
		panic(err)
	}
	fmt.Printf("%.0f lx\n", *lit.Readings.Named("below").Lux)
	// Output: 111 lx
}

// TestTheGuideShowsTheExample holds the program in DEVELOPERS.md to the Example above.
func TestTheGuideShowsTheExample(t *testing.T) {
	own, err := os.ReadFile("embed_test.go")
	if err != nil {
		t.Fatal(err)
	}
	guide, err := os.ReadFile("../../DEVELOPERS.md")
	if err != nil {
		t.Fatal(err)
	}
	_, body, _ := strings.Cut(string(own), "func Example() {\n")
	body, _, _ = strings.Cut(body, "\t// Output:")
	var shown strings.Builder
	for line := range strings.Lines(body) {
		shown.WriteString("    " + strings.ReplaceAll(strings.TrimPrefix(line, "\t"), "\t", "    "))
	}
	if !strings.Contains(string(guide), shown.String()) {
		t.Errorf("DEVELOPERS.md does not hold\n%s", shown.String())
	}
}
