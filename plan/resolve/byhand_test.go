package resolve

import (
	"strings"
	"testing"

	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// TestSceneWithoutCatalogue: where no catalogue was given that is the fault, told once, and not each name.
func TestSceneWithoutCatalogue(t *testing.T) {
	doc := opened(t, `
rooms: {den: {size: [5, 4], walls: brick}}
lights: {a: {unit: led-point-600-bicolour, at: [1, 1], height: 2}, b: {unit: led-panel-100, gels: [1/2 CTO], at: [2, 2], height: 2}}
`, &source.Log{})
	for name, given := range map[string]*scene.Document{"no document": nil, "a document without kit": {}} {
		log := &source.Log{}
		Resolve(given, doc.Base(log), log)
		if all := log.All(); len(all) != 1 || all[0].Code != CodeNoCatalogue || !strings.Contains(all[0].Hint, "kit.Shipped") {
			t.Errorf("%s: %v", name, all)
		}
	}
}

// TestMeterOfNoKind: a scene that was made by hand may name any kind of meter; one that does not exist is reported.
func TestMeterOfNoKind(t *testing.T) {
	s := &scene.Scene{Meters: []scene.Meter{
		{Thing: scene.Thing{Name: "desk"}, Kind: "flta"}, {Thing: scene.Thing{Name: "air"}, Kind: "dome"}}}
	for i := range s.Meters {
		s.Meters[i].At.Set = true
	}
	log := &source.Log{}
	out := Resolve(nil, s, log)
	if all := log.All(); len(all) != 1 || all[0].Code != source.CodeUnknownWord || !strings.Contains(all[0].Message, "flta") {
		t.Errorf("told %v", all)
	}
	if len(out.Meters) != 1 || out.Meters[0].Kind != term.DomeMeter {
		t.Errorf("meters %+v", out.Meters)
	}
}
