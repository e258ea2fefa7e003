package resolve

import (
	"strings"
	"testing"

	"scrimshaw/plan"
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

// TestFormsByHand: of a scene that was made by hand the loader tells nothing, and a silver board or a mirror in it is no
// more silent than in a file.
func TestFormsByHand(t *testing.T) {
	s := &scene.Scene{
		Grip:      []scene.Grip{{Thing: scene.Thing{Name: "soft"}, Kind: "silver", Size: [2]float64{1, 1}}},
		Furniture: []scene.Furniture{{Thing: scene.Thing{Name: "glass"}, Kind: "mirror", Size: [3]float64{1, 0.03, 1}}},
	}
	s.Grip[0].At.Set, s.Furniture[0].At.Set = true, true
	log := &source.Log{}
	out := Resolve(nil, s, log)
	if got := plan.ListUncomputed(out.Uncomputed); got != "mirror glass, silver G1 soft" {
		t.Errorf("lists %q", got)
	}
	var told []string
	for _, d := range log.All() {
		if d.Code == source.CodeLater {
			told = append(told, d.Message)
		}
	}
	if len(told) != 2 || !strings.Contains(told[0]+told[1], "silver is drawn but not computed yet") {
		t.Errorf("told %q", told)
	}
}
