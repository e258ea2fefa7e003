package resolve

import (
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/source"
)

// Keys are worded by what they are on as the plan numbers it.
func TestUncomputedWords(t *testing.T) {
	log := &source.Log{}
	doc := opened(t, `
rooms: {den: {size: [5, 4]}}
openings: {w: {window: den.left, width: 1}}
furniture: {glass: {mirror: [1, 1], at: {wall: den.top}}}
cameras: {A: {at: [4, 1], lens: 35 mm}}
lights: {k: {unit: soft-panel-200, at: [2, 2], height: 2, aim: down, focus: flood}}
grip: {soft: {silver: [1, 1], at: [1, 2], faces: 90}, n: {net: [1, 1], at: [1, 3], faces: 90}}
site: {when: 2026-06-21 15:30, sky: hazy}
haze: 0.02
setups: {wide: {camera: A, change: {rates: {move: 6}}}}
`, log)
	out := Resolve(doc, doc.Scene("wide", log), log)
	const want = "sun and sky, sky of the site, haze, focus of 1 k"
	if got := plan.ListUncomputed(out.Uncomputed); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	if once := plan.Unique(append(out.Uncomputed, out.Uncomputed...)); len(once) != len(out.Uncomputed) {
		t.Errorf("%d keys of %d once", len(once), len(out.Uncomputed))
	}
}
