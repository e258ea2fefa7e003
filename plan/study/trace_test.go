package study_test

import (
	"math"
	"testing"

	"scrimshaw/plan/study"
)

// A lamp that shines straight down outside is drawn with its footprint on the ground, whether a room
// stands beside it on another level or not.
func TestFootprintOnTheGround(t *testing.T) {
	// The intensity falls to a half at 27.5°: 3 m lower the footprint is 3.12 m wide.
	want := 2 * 3 * math.Tan(27.5*math.Pi/180)
	for name, rooms := range map[string]string{
		"no room":             "",
		"a room above":        "rooms: {den: {size: [4, 3]}}\n",
		"a room below":        "rooms: {den: {size: [4, 3], base: -5}}\n",
		"a room on a terrace": "rooms: {den: {size: [4, 3], base: 1}, low: {at: [0, 5], size: [4, 3], base: -1}}\n",
	} {
		t.Run(name, func(t *testing.T) {
			s := laidOut(t, "scrimshaw: 1\nsite: {ground: -2}\n"+rooms+
				"lights: {a: {output: {lux: 2000, distance: 2 m, beam: 55, field: 80}, at: [9, 1], height: 3, aim: down}}\n")
			outline := run(t, s, study.Options{Step: 0.5}).Beams[0].Half.Outline
			least, most := math.Inf(1), math.Inf(-1)
			for _, p := range outline {
				least, most = min(least, p.X), max(most, p.X)
			}
			if wide := most - least; !(math.Abs(wide-want) <= 0.02) {
				t.Errorf("the footprint is %.2f m wide, want %.2f", wide, want)
			}
		})
	}
}
