package resolve

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// A finding names what of equipment reaches into what, with the move that frees it.
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
		{"a boom over a bed whose base falls into a wall", room + "furniture: {bed: {box: [1.6, 2, 0.5], at: [5.2, 2]}}\n" + lamp("at: [5.2, 2], height: 2, aim: down, mount: {boom: 1.2, base: [6.1, 2]}"),
			"warning in-solid the stand of 1 k goes through den.right [put the base of its boom elsewhere, or leave base: out, and it finds a place]"},
		{"a stand through a shelf", room + "furniture: {shelf: {box: [1, 1, 0.1], at: [3, 2], lift: 1}}\n" + lamp("at: [3, 2], height: 2, aim: [3, 4, 1]"),
			"warning in-solid the stand of 1 k goes through shelf [move it, or say what it stands on: {top: NAME}, or mount: {stand: NAME}]"},
		{"a head against a slope", "rooms: {den: {size: [6, 5], height: {low: 1.8, high: 3, toward: right}}}\n" + lamp("at: [0.6, 2], height: 1.85, aim: [3, 2, 1], mount: {boom: 1}"), "warning light-in-solid 1 k reaches into or through den.ceiling, by 0.01 m [move 1 k 0.02 m down]"},
		{"a head in a corner, which nobody carries through the wall", room + "lights: {k: {unit: profile-tungsten-575, modifier: profile-lens-30, at: [5.6, 4.5], height: 2.2, aim: [3.5, 1.7, 1.6]}}",
			"warning hot-near 1 k is hot (575 W) and 0.06 m from den.ceiling: 0.50 m is usual [move it 0.45 m away, or put a sheet that does not burn between]\n" +
				"warning light-in-solid 1 k reaches 0.04 m deep into den.top [move 1 k 0.07 m bearing 233.9°]\n" +
				"warning light-in-solid 1 k reaches 0.05 m deep into den.right [move 1 k 0.07 m bearing 233.9°]\n" +
				"warning stand-tight the legs of the stand of 1 k, 1.20 m across, reach 0.20 m into den.right and 0.10 m into den.top [move the stand 0.20 m away from den.right (left on the sheet) and 0.10 m away from den.top (down the sheet), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"two stands in one place", room + "lights: {k: {unit: led-point-60-bicolour, at: [2, 2], height: 2, aim: [3, 4, 1]}, m: {unit: led-point-60-bicolour, at: [2.01, 2], height: 1.5, aim: [3, 4, 1]}}",
			"warning clash 2 m reaches 0.04 m deep into the stand of 1 k [move 2 m 0.05 m down the sheet]"},
		{"an arm through somebody", room + ada + lamp("at: [4, 3], height: 1.5, aim: [4, 4, 1], mount: {boom: 2, base: [2.05, 3]}"),
			"warning hits-person the arm of 1 k reaches 0.15 m deep into ada [move 1 k 0.15 m up the sheet, or put the base of its boom elsewhere]"},
		{"at a mark", room + "people: {ada: {at: [1, 1], faces: 180, marks: {sit: {at: [3, 3]}}}}\n" + lamp("at: [3, 3.1], height: 2, aim: [3, 4, 1]"),
			"warning hits-person the stand of 1 k reaches 0.05 m deep into ada.sit [move 1 k 0.06 m up the sheet]"},
		{"in the way of a walk", room + "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\n" + lamp("at: [3, 1.2], height: 2, aim: [3, 4, 1]"),
			"warning in-walk the stand of 1 k stands in the way of the walk of ada [move 1 k 0.06 m up the sheet; or lead the walk round it]"},
		{"a chest beside a walk", room + "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\nfurniture: {chest: {box: [0.4, 1, 1], at: [3, 1.51]}}",
			"info walk-tight the walk of ada comes within 0.01 m of chest, on its left, from 1.80 m to 2.20 m along it: a body is 0.46 m wide [lead it 0.22 m farther to the right, as one walks]"},
		{"a chest on either side of a walk", room + "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\nfurniture: {chest: {box: [0.4, 1, 1], at: [3, 1.51]}, bench: {box: [0.4, 0.4, 1], at: [3.2, 0.6]}}",
			"warning walk-tight the walk of ada leads between chest and bench, 0.21 m apart, from 2.00 m to 2.20 m along it: a body 0.46 m wide does not pass [move one of them, or lead the walk round them]"},
		{"an arm over a walk", room + "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\n" + lamp("at: [3, 0.6], height: 2, aim: [3, 0.2, 1], mount: {boom: 2, base: [3, 2.55]}"), ""},
		{"in the swing of a door", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in}}\n" + lamp("at: [3.5, 0.6], height: 2, aim: [3, 4, 1]"),
			"info in-swing 1 k is in the way of the leaf of d, which opens no farther than 40° [move 1 k 0.29 m bearing 319.5°]"},
		{"behind a door that stands open", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in, ajar: 60}}\n" + lamp("at: [3.3, 0.7], height: 2, aim: [3, 4, 1]"),
			"info in-swing 1 k is in the way of the leaf of d, which does not shut: it stops at 44° [move 1 k 0.07 m bearing 310.5°]\n" +
				"warning stand-tight the legs of the stand of 1 k, 1.00 m across, reach 0.28 m into d [move the stand 0.28 m away from d (bearing 254.6°), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"a camera by a door", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in}}\ncameras: {A: {at: [3.5, 1.3], looks: 0, height: 1.5, lens: 35 mm}}\n",
			"info in-swing the legs of A are in the way of the leaf of d, which opens no farther than 53° [draw its legs in and put bags on them, or put A elsewhere]"},
		{"a camera in the swing of a door", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in}}\ncameras: {A: {at: [3.5, 0.8], looks: 0, height: 1.5, lens: 35 mm}}\n",
			"info in-swing the body and the legs of A are in the way of the leaf of d, which opens no farther than 41° [move A 0.29 m bearing 319.5°]"},
		{"a track by a door, whose camera is in its swing too", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in}}\ncameras: {A: {track: [[3.5, 0.8], [3.5, 3]], looks: 0, height: 1.5, lens: 35 mm}}\n",
			"info in-swing the track of A is in the way of the leaf of d, which opens no farther than 64° [lead the track clear of the leaf, or keep d as it is while the rails lie]"},
		{"a track past a door that stands open", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in, ajar: 90}}\ncameras: {A: {track: [[2.5, 0.5], [3.7, 0.5]], looks: 0, height: 1.5, lens: 35 mm}}\n",
			"info in-swing the track of A is in the way of the leaf of d, which does not shut: it stops at 70° [lead the track clear of the leaf, or keep d as it is while the rails lie]"},
		{"a track by the way out", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: in, escape: true}}\ncameras: {A: {track: [[1, 1], [5, 1]], looks: 0, height: 1.5, lens: 35 mm}}\n",
			"warning in-swing the track of A is in the way of the leaf of d, which opens no farther than 48° [lead the track clear of the leaf: it is a way out]"},
		{"a track clear of a door, and one before a door that swings out", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, swing: out}, e: {door: den.left, along: 2, width: 0.9, swing: in}}\ncameras: {A: {track: [[1.4, 0.4], [5, 0.4]], looks: 0, height: 1.5, lens: 35 mm}}\n", ""},
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
			if got := withoutBooms(found(t, c.scene, "")); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// An arm goes through a long cupboard: a move out of it is offered up to two metres, and over one more cupboard behind it, not over two.
func TestHowFarThingsAreMoved(t *testing.T) {
	const room = "rooms: {den: {size: [8, 20], height: 2.5}}\nlights: {k: {unit: led-point-60-bicolour, at: [5.4, 10], height: 2, aim: [7, 10, 1], mount: {boom: 2.4, base: [3, 10]}}}\n"
	long := func(metres float64) string {
		return fmt.Sprintf("furniture: {c: {box: [1.8, %g, 2.4], at: [4.1, 10]}", metres)
	}
	behind := func(name string, from, deep float64) string { // on either side
		return fmt.Sprintf(", %s: {box: [1.8, %g, 2.4], at: [4.1, %g]}, %s2: {box: [1.8, %g, 2.4], at: [4.1, %g]}", name, deep, 10+from+deep/2, name, deep, 10-from-deep/2)
	}
	for _, c := range []struct {
		name, furniture, want string
	}{
		{"just under two metres", long(3.9) + "}", "[move 1 k 1.97 m "},
		{"over two metres", long(4.1) + "}", "[put the base of its boom elsewhere, or take a shorter arm]"},
		{"with one more behind it", long(2) + behind("d", 1, 0.4) + "}", "[move 1 k 1.42 m "},
		{"with two more behind it", long(2) + behind("d", 1, 0.4) + behind("e", 1.4, 0.3) + "}", "[put the base of its boom elsewhere, or take a shorter arm]"},
	} {
		if got := found(t, room+c.furniture, ""); !strings.Contains(got, "the arm of 1 k reaches") || !strings.Contains(got, c.want) {
			t.Errorf("%s: %s", c.name, got)
		}
	}
}

// withoutBooms leaves out what every boom has.
func withoutBooms(told string) string { return without(told, "boom-balance", "boom-load") }

// without leaves the findings of some codes out.
func without(told string, codes ...string) string {
	of := func(line string) bool {
		return slices.ContainsFunc(codes, func(code string) bool { return strings.Contains(line, " "+code+" ") })
	}
	return strings.Join(slices.DeleteFunc(strings.Split(told, "\n"), of), "\n")
}

// What holds things has its figures.
func TestWhatHoldsThings(t *testing.T) {
	const upstairs = "rooms: {hall: {size: [5, 6], height: 5.6}, bed: {at: [5.15, 2], size: [4, 4], base: 2.8}}\npeople: {ada: {at: [7, 3], faces: 180}}\n" +
		"openings: {d: {gap: hall.bottom, along: 3, width: 1, escape: true}, landing: {gap: bed.left, along: 2.2, width: 1}}\n"
	const hall = "furniture: {flight: {stairs: [1, 4, 2.8], at: [4.4, 2.8]}}\n"
	const room = "rooms: {den: {size: [6, 5], height: 2.5}}\n"
	for _, c := range []struct{ name, scene, want string }{
		{"a boom", room + "lights: {k: {unit: led-point-60-bicolour, at: [4, 2], height: 2, aim: [4, 4, 1], mount: {boom: 1}, stand: boom-stand}}",
			"info boom-balance 1 k on its boom: 1.4 kg at 1.00 m turn it with 14 N m, and 2 kg at 0.80 m behind the stand hold that, without the arm's own mass []"},
		{"a boom that is too much", room + "lights: {k: {unit: led-point-600-daylight, at: [5, 2], height: 2, aim: [5, 4, 1], mount: {boom: 3, base: [2, 2]}}}",
			"info boom-balance 1 k on its boom: 5.7 kg at 3.00 m turn it with 168 N m, and 21.5 kg at 0.80 m behind the stand hold that, without the arm's own mass []\n" +
				"warning boom-load the boom of 1 k is to hold 5.7 kg at 3.00 m, and that of the kit carries 8 kg at 2.40 m [take a shorter arm, a lighter head, or a boom that is made for it]\n" +
				"warning boom-load the stand of 1 k bears 31.6 kg with its boom and counterweight, and carries 25 kg (combo-stand) [write stand: wind-up-stand, or take a shorter arm]"},
		{"a boom whose base finds a place aside", room + "furniture: {chest: {box: [1, 1, 1], at: [2, 2]}}\nlights: {k: {unit: led-point-60-bicolour, at: [3.5, 2], height: 2, aim: [6, 2, 2], mount: {boom: 1.5}, stand: boom-stand}}",
			"info boom-balance 1 k on its boom: 1.4 kg at 1.50 m turn it with 21 N m, and 3 kg at 0.80 m behind the stand hold that, without the arm's own mass []"},
		{"a boom with no place for its base", "rooms: {hole: {size: [1.5, 1.5], height: 2.5}}\nlights: {k: {unit: led-point-60-bicolour, at: [0.7, 0.7], height: 2, aim: [1, 0.7, 1], mount: {boom: 1.5}, stand: boom-stand}}",
			"info boom-balance 1 k on its boom: 1.4 kg at 1.50 m turn it with 21 N m, and 3 kg at 0.80 m behind the stand hold that, without the arm's own mass []\n" +
				"warning in-solid the arm of 1 k reaches 0.52 m deep into hole.left [put the base of its boom elsewhere, or take a shorter arm]\n" +
				"warning stand-tight the legs of the stand of 1 k, 1.50 m across, reach 0.10 m into hole.left [move the stand 0.10 m away from hole.left (left on the sheet), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]\n" +
				"warning boom-nowhere nowhere about the lamp is room for the base of its boom: arm, counterweight and legs reach into something on every side [take a shorter arm, write base: with a place, or hold it otherwise]"},
		{"a pole", room + "lights: {k: {unit: led-tube-60, at: [3, 0.3], height: 2.2, aim: down, mount: {pole: [den.left, den.right]}}}",
			"warning pole the pole of 1 k is to bear 0.8 kg over 6.00 m, and that of the kit carries 20 kg over 3.70 m [hang it otherwise, or take a pole that is made for it]"},
		{"a short pole", "rooms: {den: {size: [3, 5], height: 2.5}}\nlights: {k: {unit: led-tube-60, at: [1.5, 0.3], height: 2.2, aim: down, mount: {pole: [den.left, den.right]}}}",
			"info pole the pole of 1 k presses with 70 N on den.right and the wall across: that bears 5 kg by friction (0.4 on plaster) [pads under both ends, and a second fixing on what it bears]"},
		{"a lift in a room", room + "lights: {k: {unit: led-panel-100, at: [3, 2.5], height: 2, aim: [3, 4, 1], mount: {lift: 12}}}",
			"warning lift the lift of 1 k is to go up to 12.00 m, and the ceiling of den is 2.50 m over what it stands on [write mount: {lift: 2}, or less]"},
		{"a lift in the open", "lights: {k: {unit: led-panel-100, at: [3, 2.5], height: 12, aim: [3, 9, 1], mount: {lift: 12}}}",
			"warning lift the lift of 1 k is to go up to 12.00 m, and those of the kit, cranked by hand, go to 8.00 m [take a platform that is driven, with who may drive it; or hang it lower]"},
		{"a lift that is too low", "lights: {k: {unit: led-panel-100, at: [3, 2.5], height: 5.2, aim: [3, 9, 1], mount: {lift: 4}}}",
			"warning lift 1 k is 5.20 m over what its lift stands on, and that goes to 4.00 m [take a higher lift, or lower the lamp]"},
		{"a lift outdoors beside a room", room + "lights: {k: {unit: led-panel-100, at: [9, 2.5], height: 4, aim: [9, 9, 1], mount: {lift: 4}}}",
			"warning no-opening-reached k stands outside and sends no light through an opening [aim it through an opening]\n" +
				"info wind 1 k shows 0.2 m² to the wind at 4.00 m: with 143 kg on its foot a gust of 20.9 m/s tips it by the sum, and a lift comes down before that, at the latest at 12.5 m/s [read off its plate up to which wind it may be up, and watch a wind meter]"},
		{"on the edge of a deck", room + "furniture: {riser: {deck: [2, 1.2, 0.3], at: [3, 2]}}\nlights: {k: {unit: led-panel-100, at: [3, 1.8], height: 2, aim: [3, 4, 1], mount: {stand: riser}}}",
			"warning over-edge the legs of the stand of 1 k, 1.00 m across, reach 0.10 m over the edge of riser [move it in, take a stand with a smaller foot, or clamp it]"},
		{"a sheet in the wind", room + "grip: {f: {frame: frame-240x240, cloth: silk, at: [9, 2], height: 3, faces: 90, stand: wind-up-stand}}",
			"warning wind G1 f shows 5.8 m² to the wind at 3.00 m: with 105 kg on its foot a gust of 5.4 m/s tips it by the sum, so it comes down at 3.6 m/s [lower it, guy it, or put 403 kg more on its foot, to stand until 8 m/s]"},
		{"a sheet outdoors whose stand nobody named", room + "grip: {f: {frame: frame-240x240, cloth: silk, at: [9, 2], height: 3, faces: 90}}",
			"info wind G1 f shows 5.8 m² to the wind at 3.00 m, and at which wind it comes down is not computed: the scene names no stand [write stand: with its name in the kit]"},
		{"a head in the wind", room + "openings: {w: {window: den.right, along: 2, width: 1.2}}\nlights: {k: {unit: led-point-600-daylight, at: {opening: w, out: 2}, height: 2.4}}",
			"warning no-opening-reached k stands outside and sends no light through an opening [aim it through an opening]\n" +
				"error axis-misses the axis of k points away from w [aim it at something in den]\n" +
				"info wind 1 k shows 0.2 m² to the wind at 2.40 m: with 26 kg on its foot a gust of 17.5 m/s tips it by the sum, so it comes down at 11.7 m/s [guy it, and watch a wind meter]"},
		{"a hot head by the ceiling", room + "lights: {k: {unit: fresnel-tungsten-650, at: [3, 2], height: 2.2, aim: [3, 4, 1]}}",
			"warning hot-near 1 k is hot (650 W) and 0.05 m from den.ceiling: 0.50 m is usual [move it 0.46 m away, or put a sheet that does not burn between]"},
		{"a head that a cue makes hot", room + "lights: {k: {unit: fresnel-tungsten-650, at: [3, 2], height: 2.2, aim: [3, 4, 1], level: off}}\ncues: {q1: {over: 4 s, lights: {k: 80 %}}}",
			"warning hot-near 1 k is hot (650 W) and 0.05 m from den.ceiling: 0.50 m is usual [move it 0.46 m away, or put a sheet that does not burn between]"},
		{"a narrow way out", room + "openings: {d: {gap: den.bottom, along: 2, width: 0.7, escape: true}}\n",
			"warning escape the way out d is 0.70 m wide as it stands, and 0.75 m is usual at least [open its leaf farther, or name another way out]"},
		{"a leaf in the way out", room + "openings: {d: {door: den.bottom, along: 2, width: 0.9, ajar: 30, escape: true}}\n",
			"warning escape the way out d is 0.47 m wide as it stands, and 0.75 m is usual at least [open its leaf farther, or name another way out]"},
		{"a frame before the way out, down to the floor", room + "people: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}}\ngrip: {f: {frame: [5.4, 2], cloth: silk, at: [3, 2], height: 1, faces: 0, mount: floor}}",
			"warning escape ada has a way of 0.29 m to the way out d past what stands there, and 0.75 m is usual at least [move G1 f out of that way, or name another way out]"},
		{"a frame that hangs too low there", room + "people: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}}\ngrip: {f: {frame: [5.4, 1], cloth: silk, at: [3, 2], height: 1.9, faces: 0, mount: floor}}",
			"warning escape ada has a way of 0.29 m to the way out d past what stands there and hangs lower than 2.00 m, and 0.75 m is usual at least [move G1 f out of that way, or name another way out]"},
		{"a frame that hangs high enough there", "rooms: {den: {size: [6, 5], height: 3.2}}\npeople: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}}\ngrip: {f: {frame: [5.4, 1], cloth: silk, at: [3, 2], height: 2.51, faces: 0, mount: floor}}", ""},
		{"a frame in nobody's way upstairs", "rooms: {den: {size: [6, 5], height: 2.5}, loft: {size: [6, 5], base: 2.8, height: 2.5}}\npeople: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}}\nfurniture: {c: {box: [0.4, 0.4, 0.4], at: {wall: loft.bottom, along: 3}}}\ngrip: {f: {frame: [5.4, 1], cloth: silk, at: {from: c, shift: [0, 1.8]}, height: 1.4, faces: 0, mount: floor}}", ""},
		{"a camera between two chests", room + "people: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}}\nfurniture: {a: {box: [2, 0.5, 1], at: [1, 2]}, b: {box: [2, 0.5, 1], at: [5, 2]}}\ncameras: {A: {at: [3, 2.175], looks: ada, lens: 35 mm}}",
			"warning escape ada has a way of 0.54 m to the way out d past what stands there, and 0.75 m is usual at least [move A out of that way, or name another way out]"},
		{"a chest before the way out", room + "people: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}}\nfurniture: {a: {box: [2.8, 0.5, 1], at: [1.4, 2]}, b: {box: [2.6, 0.5, 1], at: [4.7, 2]}}",
			"warning escape ada has a way of 0.59 m to the way out d past what stands there, and 0.75 m is usual at least [move b out of that way, or name another way out]"},
		{"a floor over the way out", "rooms: {low: {size: [6, 5], height: 2.5}, high: {size: [6, 5], height: 2.5, base: 2.8}}\npeople: {ada: {at: [3, 4], faces: 180}}\n" +
			"openings: {d: {gap: low.bottom, along: 2.5, width: 1, escape: true}}\nfurniture: {a: {box: [6, 3, 1], at: {wall: high.bottom}}}", ""},
		{"a way out downstairs, by the stairs of the hall", upstairs + hall, ""},
		{"by stairs that are narrow", strings.Replace(upstairs+hall, "[1, 4, 2.8]", "[0.6, 4, 2.8]", 1),
			"warning escape ada has a way of 0.60 m to the way out d past what stands there, and 0.75 m is usual at least [clear a way, or name another way out]"},
		{"past a chest at their foot", strings.Replace(upstairs+hall, "furniture: {", "furniture: {chest: {box: [0.4, 5.64, 1], at: [3.2, 3.18]}, ", 1),
			"warning escape ada has a way of 0.35 m to the way out d past what stands there, and 0.75 m is usual at least [move chest out of that way, or name another way out]"},
		{"upstairs without stairs", upstairs,
			"info escape the way of ada to the way out d is not checked: it leads to another floor, and no stairs of the scene lead there [put the stairs between the two floors into furniture:]"},
		{"stairs that end short of the floor", strings.Replace(upstairs+hall, "[1, 4, 2.8]", "[1, 4, 2.3]", 1),
			"info escape the way of ada to the way out d is not checked: it leads to another floor, and no stairs of the scene lead there [put the stairs between the two floors into furniture:]"},
		{"stairs through a ceiling to the floor over it", "rooms: {low: {size: [6, 5], height: 2.5}, high: {size: [6, 5], height: 2.5, base: 2.8}}\nfurniture: {flight: {stairs: [1, 4, 2.8], at: [4.4, 2.8]}}\n", ""},
		{"stairs through a ceiling to no floor", "rooms: {low: {size: [6, 5], height: 2.5}, high: {size: [6, 5], height: 2.5, base: 3.5}}\nfurniture: {flight: {stairs: [1, 4, 2.8], at: [4.4, 2.8]}}\n",
			"warning over-ceiling flight is 0.30 m too tall for the room low [its top may be at most 2.50 m over the floor]"},
		{"a block as high as the floor over it", "rooms: {low: {size: [6, 5], height: 2.5}, high: {size: [6, 5], height: 2.5, base: 2.8}}\nfurniture: {b: {box: [1, 1, 2.8], at: [4.4, 2.8]}}\n",
			"warning over-ceiling b is 0.30 m too tall for the room low [its top may be at most 2.50 m over the floor]"},
		{"a way out by a window itself", room + "people: {ada: {at: [3, 4], faces: 180}}\nopenings: {w: {window: den.bottom, along: 2.5, width: 1, escape: true}}\nfurniture: {a: {box: [2.8, 0.5, 1], at: [1.4, 2]}, b: {box: [2.6, 0.5, 1], at: [4.7, 2]}}",
			"warning escape ada has a way of 0.59 m to the way out w past what stands there, and 0.75 m is usual at least [move b out of that way, or name another way out]"},
		{"no way out by a window", room + "people: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}, w: {window: den.top, along: 2, width: 1.2}}\n" +
			"furniture: {a: {box: [6, 0.5, 1], at: [3, 2]}}",
			"warning escape ada has no way to the way out d past what stands there [move a out of that way, or name another way out]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := found(t, c.scene, ""); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// A finding begins where a hand computes it.
func TestWhereFindingsBegin(t *testing.T) {
	const room = "rooms: {den: {size: [6, 5], height: 2.5}}\n"
	const lamp = "lights: {k: {unit: led-point-60-bicolour, "
	const tall = "rooms: {den: {size: [6, 5], height: 3.4}}\npeople: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, escape: true}}\n"
	sheet := func(high float64) float64 { // the wind at which a sheet of 1.2 m on a combo stand comes down
		mass := 2.2 + 8.5 + 24                                               // frame, stand, two bags
		turning := 0.613 * 1.2 * (1.2*1.2*high + 0.036*high*high/2)          // N m in 1 m/s: plate and post, both at 1.2
		return math.Sqrt(mass*9.80665*0.6*math.Cos(math.Pi/3)/turning) / 1.5 // three feet on 1.2 m
	}
	tip := 0.018 / math.Cos(math.Pi/6) * math.Sqrt(4-math.Pow(4.05-2.125, 2)) / 2 // the lower edge of an arm of 2 m, six-sided, that comes from below by so much
	high := 2.6
	for sheet(high) > 3.5 {
		high += 1e-4
	}
	for _, c := range []struct {
		name, scene, code string
		low, high, want   float64 // the finding is on the side of high
	}{
		{"an arm in a cupboard", room + "furniture: {c: {box: [0.4, 1, 2.4], at: [4, %s]}}\n" + lamp + "at: [5, 2], height: 2, aim: [5, 4, 1], mount: {boom: 2, base: [3.05, 2]}}}", "in-solid", 3.5, 2, 2 + 0.5 + 0.018 - 0.01},
		{"an arm in somebody", "people: {ada: {at: [3, %s], faces: 180}}\n" + lamp + "at: [5, 2], height: 1.2, aim: [5, 4, 1], mount: {boom: 2, base: [3.05, 2]}}}", "hits-person", 3, 2, 2 + 0.11 + 0.018 - 0.01},
		{"a stand by a walk", "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\n" + lamp + "at: [3, %s], height: 2, aim: [3, 4, 1]}}", "in-walk", 2, 1, 1 + 0.23 + 0.018 - 0.01},
		{"an arm by a track", "cameras: {A: {track: [[1, 1], [4, 1]], looks: 0, height: 1.4, lens: 35 mm}}\ngrip: {f: {flag: [0.2, 0.2], at: [2.5, %s], height: 1.3, faces: 90, mount: {boom: 3, base: [2.5, 4]}}}", "on-track", 2, 1.2, 1 + 0.335 + 0.1 - 0.01},
		{"a sheet in a ceiling", room + "grip: {f: {flag: [0.4, 0.4], at: [3, 2], height: %s, faces: 90}}", "in-solid", 2, 2.4, 2.3},
		{"a lift by its ceiling", room + lamp + "at: [3, 2.5], height: 2, aim: [3, 4, 1], mount: {lift: %s}}}", "lift", 2, 3, 2.5},
		{"a lift by what any does", lamp + "at: [3, 2.5], height: 7.5, aim: [3, 9, 1], mount: {lift: %s}}}", "lift", 7, 9, 8},
		{"a lift by its lamp", lamp + "at: [3, 2.5], height: %s, aim: [3, 9, 1], mount: {lift: 4}}}", "lift", 4.5, 6, 4 + 1.0},
		{"the base of a lift beside a wall", room + lamp + "at: [3, %s], height: 2, aim: {pan: 76, tilt: 0}, mount: {lift: 2}}}", "in-solid", 1, 0.3, 0.75/2*math.Sin(76*math.Pi/180) + 1.2/2*math.Cos(76*math.Pi/180) - 0.01},
		{"the wider base of a higher lift", "rooms: {den: {size: [6, 5], height: 8}}\n" + lamp + "at: [3, %s], height: 5, aim: {pan: 90, tilt: -20}, mount: {lift: 5}}}", "in-solid", 1, 0.3, 0.8/2 - 0.01},
		{"the swing of a door", "rooms: {den: {size: [6, 5], height: 3}}\nopenings: {d: {door: den.bottom, along: 2, width: 1, swing: in}}\n" + lamp + "at: [3.7, %s], height: 2.6, aim: {pan: 0, tilt: 0}}}", "in-swing", 2, 0.6, math.Sqrt(math.Pow(1+0.018-0.01, 2) - 0.3*0.3)},
		{"a flag over somebody", "people: {ada: {at: [3, 2], faces: 180}}\ngrip: {f: {flag: [0.2, 0.2], at: [3, %s], height: 2.3, faces: 0, mount: {boom: 2, base: [3, 4.05]}}}", "over-person", 2.4, 2.05, 2 + 0.26/2 + tip - 0.01},
		{"a pole by its length", "rooms: {den: {size: [%s, 5]}}\nlights: {k: {unit: led-tube-60, at: [1.5, 0.3], height: 2.2, aim: down, mount: {pole: [den.left, den.right]}}}", "warning pole", 3, 4, 3.7},
		{"a boom by its stand", lamp + "at: [5, 2], height: 2, aim: [5, 4, 1], mount: {boom: %s}, stand: light-stand}}", "boom-load", 0.5, 2.3, 0.8 * (8 - 4.5 - 1.4) / 1.4},
		{"feet over an edge", room + "furniture: {riser: {deck: [2, 2, 0.3], at: [3, 2]}}\n" + lamp + "at: [%s, 2], height: 2, aim: [3, 4, 1], stand: light-stand, mount: {stand: riser}}}", "over-edge", 3.2, 3.9, 3.5 + 0.02},
		{"a head by a ceiling", room + "lights: {k: {unit: fresnel-tungsten-1000, at: [3, 2], height: %s, aim: {pan: 0, tilt: 0}}}", "hot-near", 1, 2.2, 2.5 - 0.5 - 0.34/2},
		{"a camera between the legs of a stand", room + "cameras: {A: {at: [%s, 2.175], looks: 0, height: 1.5, lens: 35 mm}}\n" + lamp + "at: [3, 2], height: 2, aim: [3, 4, 1], stand: light-stand}}", "A stands between the legs of the stand of 1 k", 4.5, 3.2, 3 + 0.5 + 0.018 - 0.05},
		{"a camera whose legs reach somebody", "people: {ada: {at: [3, 2], faces: 180}}\ncameras: {A: {at: [3, %s], looks: 180, height: 1.5, lens: 35 mm}}\n", "the legs of A, 0.90 m across as they usually stand, reach", 3.5, 2.1, 2 + 0.11 + 0.45 - 0.05 - 0.175},
		{"a post between the legs of a camera", "cameras: {A: {at: [%s, 2.175], looks: 0, height: 1.5, lens: 35 mm}, B: {at: [3, 2.175], looks: 0, height: 1.5, lens: 35 mm}}\n", "stands between the legs of", 4.5, 3.2, 3 + 0.45 + 0.018 - 0.05},
		{"a camera by a track", "cameras: {A: {track: [[1, 1], [4, 1]], looks: 0, height: 1.4, lens: 35 mm}, B: {at: [2.5, %s], looks: 90, height: 1.5, lens: 35 mm}}", "B stands on the track of A", 3, 1.5, 1 + (0.62+0.05+0.9)/2 - 0.001},
		{"a sheet over the way out", tall + "grip: {f: {flag: [5.8, 1], at: [3, 2], height: %s, faces: 0, mount: floor}}", "hangs lower than 2.00 m", 2.8, 2, 2.5},
		{"a tilted sheet beside the way out", tall + "grip: {f: {flag: [5.8, 2], at: [3, 2], height: %s, faces: 0, tilt: 90, mount: floor}}", "hangs lower than 2.00 m", 2.4, 1.8, 2},
		{"a head in the way out", tall + "furniture: {a: {box: [2.4, 0.5, 1], at: [1.2, 2]}, b: {box: [2.4, 0.5, 1], at: [4.8, 2]}}\nlights: {k: {unit: led-panel-100, at: [3, 2], height: %s, aim: {pan: 0, tilt: 0}, mount: ceiling}}", "hangs lower than 2.00 m", 2.6, 1.8, 2 + 0.34/2},
		{"a pole across the way out", tall + "lights: {k: {unit: led-tube-60, at: [5.8, 0.3], height: %s, aim: down, mount: {pole: [den.left, den.right]}}}", "hangs lower than 2.00 m", 2.4, 1.5, 2 + 0.018},
		{"a ceiling that comes down to the way out", "rooms: {den: {size: [6, 5], height: {low: %s, high: 3.5, toward: top}}}\npeople: {ada: {at: [3, 4], faces: 180}}\nopenings: {d: {gap: den.bottom, along: 2.5, width: 1, head: 1.5, escape: true}}\n", "past a ceiling lower than 2.00 m", 2.4, 1.6, 2},
		{"what rolls, beyond the end of a track", room + "cameras: {A: {track: [[2, 2], [%s, 2]], looks: 0, height: 1.2, lens: 35 mm}}\n", "the platform of A at the end of its track", 5.2, 5.8, 6 - 0.5},
		{"furniture under a ceiling", room + "furniture: {c: {box: [0.4, 1, %s], at: [4, 2]}}", "over-ceiling", 2, 3, 2.5},
		{"a lens under a ceiling", room + "cameras: {A: {at: [3, 2], looks: 0, height: %s, lens: 35 mm}}\n", "error over-ceiling", 2, 3, 2.5},
		{"a walk by a chest", "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\nfurniture: {c: {box: [0.4, 1, 1], at: [3, %s]}}", "walk-through", 3, 1.2, 1 + 0.5},
		{"a track by a chest", "cameras: {A: {track: [[1, 1], [4, 1]], looks: 0, height: 1.4, lens: 35 mm}}\nfurniture: {c: {box: [0.4, 1, 1], at: [2.5, %s]}}", "track-through", 3, 1.2, 1 + 0.5 + 0.335 - 0.001},
		{"a walk by a track", "people: {ada: {at: [1, 0], faces: 180, walk: [[1, 0], [1, 2]]}}\ncameras: {A: {track: [[%s, 1], [4, 1]], looks: 0, height: 1.4, lens: 35 mm}}", "crosses the track", 2, 0.5, 1},
		{"a walk beside a track", "people: {ada: {at: [1, 0], faces: 180, walk: [[0, %s], [5, %.6[1]f]]}}\ncameras: {A: {track: [[1, 1], [4, 1]], looks: 0, height: 1.4, lens: 35 mm}}", "into the room that A takes", 2.5, 1.1, 1 + 0.335 + 0.23 - 0.01},
		{"a shoulder by a chest", "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\nfurniture: {c: {box: [0.4, 1, 1], at: [3, %s]}}", "on its left, from 1.80 m to 2.20 m along it", 3, 1.55, 1 + 0.5 + 0.23 - 0.01},
		{"a shoulder by a chest on the other side", "people: {ada: {at: [1, 1], faces: 180, walk: [[5, 1], [1, 1]]}}\nfurniture: {c: {box: [0.4, 1, 1], at: [3, %s]}}", "on its right, from 1.80 m to 2.20 m along it", 3, 1.55, 1 + 0.5 + 0.23 - 0.01},
		{"a shoulder over a chest", "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\nfurniture: {c: {box: [0.4, 1, %s], at: [3, 1.6]}}", "info walk-tight", 0.2, 1, 0.3 + 0.01},
		{"a shoulder by a wall", room + "people: {ada: {at: [1, 1], faces: 180, walk: [[%s, 1], [%.6[1]f, 3]]}}", "info walk-tight", 1, 0.1, 0.23 - 0.01},
		{"a shoulder at a turn", "people: {ada: {at: [1, 1], faces: 180, walk: [[-2, 0], [0, 0], [0, 2]]}}\nfurniture: {c: {box: [1, 1, 1], at: [%s, -%.6[1]f], turn: 45}}", "on its right, 2.00 m along it", 2, 0.49, (0.5 + 0.23 - 0.01) / math.Sqrt2},
		{"a body between two chests", "people: {ada: {at: [1, 1], faces: 180, walk: [[1, 1], [5, 1]]}}\nfurniture: {c: {box: [0.4, 1, 1], at: [3, 1.6]}, d: {box: [0.4, 1, 1], at: [3, %s]}}", "warning walk-tight", 0, 0.3, 0.6 - 0.46 + 0.01},
		{"a body by a pane", room + "openings: {w: {window: den.top, width: 2, sill: %s, head: 2.2}}\npeople: {ada: {at: [1, 1], faces: 180, walk: [[3, 4], [3, 6]]}}", "leads through w, 1.", 0.6, 0, 0.3},
		{"somebody at a wall", room + "people: {ada: {at: [%s, 2], faces: 180}}", "in-solid", 5, 5.99, 6 - 0.23 + 0.001},
		{"a cue before the last is over", lamp + "at: [3, 2], height: 2, aim: [3, 4, 1]}}\ncues: {q1: {at: 10 s, over: %s s, lights: {k: 50 %%}}, q2: {at: 14 s, over: 1 s, lights: {k: 10 %%}}}", "cue-overlap", 2, 9, 4},
		{"a cue before the one that is written first", lamp + "at: [3, 2], height: 2, aim: [3, 4, 1]}}\ncues: {q1: {at: 10 s, over: 1 s, lights: {k: 50 %%}}, q2: {at: %s s, over: 1 s, lights: {k: 10 %%}}}", "cue-order", 12, 5, 10},
		{"a bulb in a shade", "lights: {k: {unit: practical-table, bulb: {watts: %s W}, at: [0, 0]}}", "too-hot", 30, 100, 60},
		{"a camera turned from everybody", "people: {ada: {at: [3, 4], faces: 180}}\ncameras: {A: {at: [3, 2], looks: %s, height: 1.4, lens: 35 mm}}", "camera-turned", 0, 179, 90},
		{"the post of a flag by another flag", "grip: {f: {flag: [1, 1], at: [3, 2], height: 1.5, faces: 0}, g: {flag: [1, 1], at: [%s, 2], height: 1.5, faces: 0}}", "clash", 5, 3.4, 3 + 0.5 + 0.018 - 0.01},
		{"a lamp in the floor", lamp + "at: [3, 2], height: %s, aim: {pan: 0, tilt: 0}, mount: floor}}", "below-floor", 1, -0.5, 0},
		{"a track over a step", room + "furniture: {riser: {deck: [2, 2, %s], at: [4, 2]}}\ncameras: {A: {track: [[1, 2], [4, 2]], looks: 0, height: 1.4, lens: 35 mm}}\n", "track-through", 0.01, 0.5, 0.03},
		{"somebody out of doors", room + "people: {ada: {at: [%s, 2], faces: 180}}", "outside", 5, 7, 6},
		{"a lens that sees too much", "cameras: {A: {at: [3, 2], looks: 0, height: 1.4, lens: %s mm}}", "lens-wide", 20, 2, 24.89 / 2 / math.Tan(65*math.Pi/180)},
		{"a way out", room + "openings: {d: {gap: den.bottom, along: 2, width: %s, escape: true}}", "escape", 1, 0.5, 0.75},
		{"a sheet in the wind", room + "grip: {f: {frame: frame-120x120, cloth: silk, at: [9, 2], height: %s, faces: 90, stand: combo-stand}}", "comes down at 3.4", 2.6, 3.4, high},
	} {
		t.Run(c.name, func(t *testing.T) {
			told := func(v float64) bool {
				return strings.Contains(found(t, fmt.Sprintf(strings.Replace(c.scene, "%s", "%.6f", 1), v), ""), c.code)
			}
			if told(c.low) || !told(c.high) {
				t.Fatalf("at %g: %v, at %g: %v\n%s", c.low, told(c.low), c.high, told(c.high), found(t, fmt.Sprintf(strings.Replace(c.scene, "%s", "%.6f", 1), c.high), ""))
			}
			if begins := beginsAt(c.low, c.high, told); !(math.Abs(begins-c.want) <= 0.004) {
				t.Errorf("it begins at %.4f, and by hand at %.4f", begins, c.want)
			}
		})
	}
}

// beginsAt is where between two figures something begins to hold that holds at the second.
func beginsAt(low, high float64, holds func(float64) bool) float64 {
	for range 14 {
		if middle := (low + high) / 2; holds(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// A load is too much for the lifts of a kit from where none that goes as high carries it: what a lower one carries is no help, and a higher one may carry
// what the lowest that is high enough does not.
func TestWhereALiftCarriesNoMore(t *testing.T) {
	const lamp = "lights: {k: {unit: heavy, at: [3, 2.5], height: %g, aim: [3, 9, 1], mount: {lift: %g}}}\n"
	const sheet = "grip: {f: {frame: heavy-frame, cloth: silk, at: [3, 2], height: %g, faces: 90, mount: {lift: %g}}}\n"
	for _, c := range []struct {
		name, thing, words string
		rise, want         float64 // how high the lift goes, m, and from which load on none carries it, kg
	}{
		{"a lamp on the lowest", lamp, "1 k weighs", 3, 230}, {"a lamp over the lowest", lamp, "1 k weighs", 4, 190}, {"a lamp that the highest carries alone", lamp, "1 k weighs", 6, 190},
		{"a sheet", sheet, "G1 f weighs", 4, 190}, {"a sheet on the highest alone", sheet, "G1 f weighs", 6, 190},
	} {
		told := func(mass float64) bool {
			found := foundWith(t, fmt.Sprintf(liftsAnd, mass, mass), fmt.Sprintf(c.thing, c.rise, c.rise))
			return strings.Contains(found, fmt.Sprintf("%s %s, and no lift of the kit carries that to %.2f m", c.words, unit.FormatMass(mass), c.rise))
		}
		if told(100) || !told(300) {
			t.Fatalf("%s: at 100 kg %v, at 300 kg %v\n%s", c.name, told(100), told(300), foundWith(t, fmt.Sprintf(liftsAnd, 300.0, 300.0), fmt.Sprintf(c.thing, c.rise, c.rise)))
		}
		if begins := beginsAt(100, 300, told); !(math.Abs(begins-c.want) <= 0.02) {
			t.Errorf("%s: it begins at %.3f kg, and by hand at %g kg", c.name, begins, c.want)
		}
	}
}

// liftsAnd is a kit with lifts of its own, of which the middle one carries least, and with a lamp and a frame of some mass.
const liftsAnd = `scrimshaw: 1
items:
  lift-3: {doc: d, label: low, group: lift, mass: 150 kg, load: 230 kg, length: 3.5, ground: [0.75, 1.2]}
  lift-5: {doc: d, label: middle, group: lift, mass: 150 kg, load: 120 kg, length: 5.5, ground: [0.8, 1.6]}
  lift-8: {doc: d, label: high, group: lift, mass: 210 kg, load: 190 kg, length: 8, ground: [1.9, 1.9]}
units:
  heavy: {doc: d, label: l, class: panel, technology: led, power: 100 W, power-factor: 1, kelvin: 5600 K, mass: %.4f kg, outputs: {bare: {lumens: 9000, beam: 60, field: 100, face: [0.3, 0.3]}}, body: [0.34, 0.1, 0.34]}
grip:
  heavy-frame: {doc: d, label: f, kind: frame, width: 2.4, height: 2.4, mass: %.4f kg}
`

// foundWith is what is found of a scene with entries of its own in the kit.
func foundWith(t *testing.T, entries, text string) string {
	t.Helper()
	k, err := shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	k = k.With([]*source.File{{Name: "kit.yaml", Text: []byte(entries)}}, log)
	doc := scene.Open(scene.Env{Kit: k}, &source.File{Name: "-", Text: []byte("scrimshaw: 1\n" + text)}, log)
	Resolve(doc, doc.Scene("", log), log)
	return told(log)
}
