package fit_test

import (
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/review/fit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// The move that is offered frees what it is offered for. The messages of the checks are held by the tests of
// plan/resolve, which runs them.
func TestMoveOfReachFrees(t *testing.T) {
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "-", Text: []byte(`scrimshaw: 1
rooms: {den: {size: [4, 5], height: 2.5}}
lights: {k: {output: {luminance: 9, face: [1.2, 1.2]}, at: [0.3, 0.2], height: 2, mount: hand, aim: [2, 2.5, 0]}}
`)}, log)
	s := resolve.Resolve(doc, doc.Base(log), log)
	before, after, ok := fit.Freed(s, &s.Lights[0])
	if before == 0 {
		t.Fatal("it stands free already")
	}
	if !ok || after > 0 {
		t.Errorf("moved as offered it reaches into %d things", after)
	}
}
