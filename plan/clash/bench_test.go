package clash_test

import (
	"testing"

	"scrimshaw/plan/clash"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/samples"
)

// BenchmarkDefault looks for clashes in the default sample.
func BenchmarkDefault(b *testing.B) {
	shipped, err := kit.Shipped()
	if err != nil {
		b.Fatal(err)
	}
	text, err := samples.Text(samples.Default)
	if err != nil {
		b.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "-", Text: text}, log)
	s := resolve.ResolveAll(doc, nil, log)[0]
	for b.Loop() {
		clash.Find(s)
	}
}
