package resolve

import (
	"fmt"
	"strings"
	"testing"
)

// What of equipment reaches into something is told by what it reaches into, with the move that frees it.
func TestBodiesInEachOther(t *testing.T) {
	const room = "rooms: {den: {size: [6, 5], height: 2.5}}\n"
	const ada = "people: {ada: {at: [3, 3], faces: 180}}\n"
	lamp := func(where string) string {
		return "lights: {k: {unit: led-point-60-bicolour, " + where + "}}\n"
	}
	for _, c := range []struct{ name, scene, want string }{
		{"an arm past a wall", room + lamp("at: [5, 2], height: 2, aim: [3, 2, 1], mount: {boom: 2, base: [3.05, 2]}"), ""},
		{"an arm in a cupboard", room + "furniture: {cupboard: {box: [0.4, 1, 2.4], at: [4, 2]}}\n" + lamp("at: [5, 2], height: 2, aim: [5, 4, 1], mount: {boom: 2, base: [3.05, 2]}"),
			"warning in-solid the arm of 1 k reaches 0.52 m deep into cupboard [move 1 k 0.52 m down the sheet, or put the base of its boom elsewhere]"},
		{"a stand through a shelf", room + "furniture: {shelf: {box: [1, 1, 0.1], at: [3, 2], lift: 1}}\n" + lamp("at: [3, 2], height: 2, aim: [3, 4, 1]"),
			"warning in-solid the stand of 1 k goes through shelf [move it, or say what it stands on: {top: NAME}, or mount: {stand: NAME}]"},
		{"a head against a slope", "rooms: {den: {size: [6, 5], height: {low: 1.8, high: 3, toward: right}}}\n" + lamp("at: [0.6, 2], height: 1.85, aim: [3, 2, 1], mount: {boom: 1}"),
			"warning in-solid the arm of 1 k reaches 0.07 m deep into den.ceiling [move 1 k 0.59 m left on the sheet, or put the base of its boom elsewhere]\n" +
				"warning light-in-solid 1 k reaches into or through den.ceiling, by 0.01 m [move 1 k 0.02 m down]\n" +
				"warning stand-tight the legs of the stand of 1 k, 1.00 m across, reach 0.25 m into den.left [move the stand 0.25 m away from den.left (left on the sheet), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"two stands in one place", room + "lights: {k: {unit: led-point-60-bicolour, at: [2, 2], height: 2, aim: [3, 4, 1]}, m: {unit: led-point-60-bicolour, at: [2.01, 2], height: 1.5, aim: [3, 4, 1]}}",
			"warning clash 2 m reaches 0.04 m deep into the stand of 1 k [move 2 m 0.05 m down the sheet]"},
		{"an arm through somebody", room + ada + lamp("at: [4, 3], height: 1.5, aim: [4, 4, 1], mount: {boom: 2, base: [2.05, 3]}"),
			"warning hits-person the arm of 1 k reaches 0.15 m deep into ada [move 1 k 0.15 m up the sheet, or put the base of its boom elsewhere]"},
		{"at a mark", room + "people: {ada: {at: [1, 1], faces: 180, marks: {sit: {at: [3, 3]}}}}\n" + lamp("at: [3, 3.1], height: 2, aim: [3, 4, 1]"),
			"warning hits-person the stand of 1 k reaches 0.05 m deep into ada.sit [move 1 k 0.06 m up the sheet]"},
		{"in the way of a walk", room + "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\n" + lamp("at: [3, 1.2], height: 2, aim: [3, 4, 1]"),
			"warning in-walk the stand of 1 k stands in the way of the walk of ada [move 1 k 0.06 m up the sheet; or lead the walk round it]"},
		{"an arm over a walk", room + "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\n" + lamp("at: [3, 0.6], height: 2, aim: [3, 0.2, 1], mount: {boom: 2, base: [3, 2.55]}"), ""},
		{"in the swing of a door", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in}}\n" + lamp("at: [3.5, 0.6], height: 2, aim: [3, 4, 1]"),
			"info in-swing 1 k is in the way of the leaf of d, which opens no farther than 40° [move 1 k 0.29 m bearing 319.5°]"},
		{"behind a door that stands open", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in, ajar: 60}}\n" + lamp("at: [3.3, 0.7], height: 2, aim: [3, 4, 1]"),
			"info in-swing 1 k is in the way of the leaf of d, which does not shut: it stops at 44° [move 1 k 0.07 m bearing 310.5°]\n" +
				"warning stand-tight the legs of the stand of 1 k, 1.00 m across, reach 0.28 m into d [move the stand 0.28 m away from d (bearing 254.6°), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"in the swing of the way out", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in, escape: true}}\n" + lamp("at: [3.5, 0.6], height: 2, aim: [3, 4, 1]"),
			"warning in-swing 1 k is in the way of the leaf of d, which opens no farther than 40° [move 1 k 0.29 m bearing 319.5°]"},
		{"in the way of a camera", room + "cameras: {A: {track: [[1, 1], [4, 1]], looks: 0, height: 1.4, lens: 35 mm}}\n" + lamp("at: [2.5, 1], height: 1.4, aim: [2.5, 0.2, 1], mount: {boom: 1.5, base: [2.5, 2.45]}"),
			"warning on-track 1 k is in the way of A along its track [move 1 k 0.37 m up the sheet, or put the base of its boom elsewhere; or hang it higher]"},
		{"over somebody", room + ada + lamp("at: [3, 3], height: 2.2, aim: [3, 4, 1], mount: {boom: 1, base: [3, 2.05]}"),
			"info over-person 1 k hangs over ada [a safety bond on it, bags on its stand, and nobody under it while it moves]"},
		{"a camera's legs through a bed", room + ada + "furniture: {bed: {box: [2, 1, 0.5], at: [3, 1]}}\ncameras: {A: {at: [3, 1], height: 1.4, lens: 35 mm}}\n",
			"warning in-solid the legs of A reach 0.35 m deep into bed [move A 0.35 m down the sheet]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := found(t, c.scene, ""); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
				fmt.Printf("@@%s@@%q\n", c.name, got)
			}
		})
	}
}

var _ = fmt.Sprint
var _ = strings.Contains
