package frame_test

import (
	"fmt"
	"testing"

	"scrimshaw/plan/frame"
)

// Lamps that are meant to be in a picture are those that a judgement of all equipment finds there, where and as large; others, those that the set hides
// and those behind the lens are left out.
func TestLampsOfAPicture(t *testing.T) {
	setup := laidOut(t, &staged{set: `cameras: {A: {at: [0, 0], height: 1.4, looks: 0, lens: 35 mm}, B: {at: [2, 6], height: 1.4, looks: 200, lens: 25 mm}}
furniture: {screen: {box: [1, 0.1, 2.4], at: [1, 2]}}
lights: {table: {unit: practical-table, at: [-0.3, 3], height: 1.2}, hidden: {unit: practical-table, at: [1.4, 3], height: 1.2}, panel: {unit: led-panel-100, at: [0.4, 4], height: 1.5},
  meant: {unit: led-panel-100, at: [-0.9, 4], height: 1.7, aim: 180, seen: A}, behind: {unit: practical-table, at: [0, -3], height: 1.2}}
`})
	want := map[string]string{}
	for _, s := range frame.Judge(setup) {
		if s.Meant && s.Shown > 0 {
			want[s.Camera+" "+s.Name] = fmt.Sprintf("%.9f %s", s.Shown, s.ShownAt)
		}
	}
	lamps := frame.Lamps(setup)
	for _, s := range lamps {
		if got := fmt.Sprintf("%.9f %s", s.Shown, s.ShownAt); got != want[s.Camera+" "+s.Name] || s.Shows() {
			t.Errorf("%s in %s: %s, want %q", s.Name, s.Camera, got, want[s.Camera+" "+s.Name])
		}
	}
	if len(lamps) != len(want) || len(want) < 3 || want["A table"] == "" || want["A meant"] == "" || want["A hidden"] != "" || want["B meant"] != "" {
		t.Errorf("%d lamps, want %v", len(lamps), want)
	}
	for place, at := range map[string][2]float64{"in the middle": {0.2, -0.1}, "in the upper left": {-0.9, 0.8}, "on the right": {0.5, 0}, "in the lower middle": {0, -1}} {
		if got := frame.PlaceOf(at[0], at[1]); got != place {
			t.Errorf("%v is %s, want %s", at, got, place)
		}
	}
}
