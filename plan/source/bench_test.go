package source

import (
	"fmt"
	"strings"
	"testing"
)

// longScene has 301 lines in the styles that scenes are written in.
func longScene() []byte {
	var b strings.Builder
	b.WriteString("scrimshaw: 1\ntitle: A long day   # of many lights\nrooms:\n")
	for i := range 20 {
		fmt.Fprintf(&b, "  room-%d: {at: [%d, 0], size: [5.6, 4.6], height: 2.8, wall: 0.25}\n", i, 6*i)
	}
	b.WriteString("lights:\n")
	for i := range 34 {
		fmt.Fprintf(&b, "  light-%d:\n    unit: led-point-300-bicolour\n    modifier: softbox-90\n"+
			"    at: {by: ines, turn: 35 own-left, distance: 2.2}\n    height: 1.7\n"+
			"    gels: [1/2 CTO, 1/4 plus-green]   # what the window asks for\n    level: 12 %%\n    note: \"two bags, tie off\"\n", i)
	}
	b.WriteString("meters:\n  desk-top: {flat: [2.9, 2.5, 0.76], facing: up}\n  wall: {spot: [3.4, 4.6, 1.5], from: A}\n  end: |\n    x\n")
	return []byte(b.String())
}

func BenchmarkParse(b *testing.B) {
	f := &File{Name: "scene.yaml", Text: longScene()}
	b.ReportAllocs()
	b.SetBytes(int64(len(f.Text)))
	for b.Loop() {
		if Parse(f, new(Log)) == nil {
			b.Fatal("it does not parse")
		}
	}
}

func BenchmarkParseFault(b *testing.B) {
	text := strings.Replace(string(longScene()), "{flat: [2.9, 2.5", "{flat: [2.9, 2.5]", 1)
	f := &File{Name: "scene.yaml", Text: []byte(text)}
	b.ReportAllocs()
	for b.Loop() {
		if Parse(f, new(Log)) != nil {
			b.Fatal("it parses")
		}
	}
}

func BenchmarkMerge(b *testing.B) {
	base := parsed(b, string(longScene()))
	change := parsed(b, "lights: {light-3: {level: 5 %, +gels: [1/8 CTB]}, light-9: strike}")
	b.ReportAllocs()
	for b.Loop() {
		lightRules.Merge(base, change, "close", new(Log))
	}
}

func BenchmarkApply(b *testing.B) {
	root := parsed(b, string(longScene()))
	edits := []Edit{{"", "lights.light-20.level", "35 %"}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Apply(root, edits); err != nil {
			b.Fatal(err)
		}
	}
}
