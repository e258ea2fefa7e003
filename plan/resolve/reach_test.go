package resolve

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/source"
)

// warned lists the warnings of a scene, one a line, without their places.
func warned(t *testing.T, text string) string {
	t.Helper()
	log := &source.Log{}
	doc := opened(t, text, log)
	Resolve(doc, doc.Scene("", log), log)
	var lines []string
	for _, d := range log.All() {
		if d.Severity >= source.Warning {
			lines = append(lines, d.Severity.String()+" "+d.Code+" "+d.Message+" ["+d.Hint+"]")
		}
	}
	return strings.Join(lines, "\n")
}

const den = "rooms: {den: {size: [4, 4]}}\n"

// What has a size must not reach into a wall or past it, wherever its middle is.
func TestReach(t *testing.T) {
	for _, c := range []struct{ name, scene, want string }{
		{"a face before its wall", den + "lights: {k: {output: {luminance: 9, face: [1.2, 1.2]}, at: [0, 2], height: 1.6, mount: hand, aim: [4, 2, 1.6]}}", ""},
		{"a face across its wall", den + "lights: {k: {output: {luminance: 9, face: [1.2, 1.2]}, at: [0.1, 1], height: 1.6, mount: hand, aim: [0.1, 4, 1.6]}}",
			"warning light-in-solid 1 k reaches into or through den.left, by 0.50 m [move 1 k 0.51 m away from den.left (right on the sheet)]"},
		{"the back of a head", den + "lights: {k: {unit: led-point-300-bicolour, modifier: softbox-90, at: [2, 4], height: 1.6, mount: hand, aim: [2, 0, 1.6]}}",
			"warning light-in-solid 1 k reaches into or through den.top, by 0.34 m [move 1 k 0.35 m away from den.top (down the sheet)]"},
		{"a disc under the ceiling", den + "lights: {k: {output: {luminance: 9, disc: 1}, at: [2, 1], height: 2.1, mount: hand, aim: [2, 4, 2.1]}}",
			"warning light-in-solid 1 k reaches into or through den.ceiling, by 0.10 m [move 1 k 0.11 m down]"},
		{"a globe in a corner", den + "lights: {k: {output: {lumens: 9, sphere: 0.6}, at: [0.2, 0.1], height: 1, mount: hand}}",
			"warning light-in-solid 1 k reaches into or through den.bottom and den.left, by 0.20 m " +
				"[move 1 k 0.21 m away from den.bottom (up the sheet) and 0.11 m away from den.left (right on the sheet)]"},
		{"a tube into a chest", den + "furniture: {chest: {box: [1, 1, 1], at: [2, 2]}}\nlights: {k: {output: {lumens: 9, tube: 1}, at: [2, 1.4], height: 0.9, mount: hand, aim: [4, 1.4, 0.9]}}",
			"warning light-in-solid 1 k reaches into or through chest, by 0.40 m [move 1 k 0.41 m away from chest (down the sheet)]"},
		{"a face larger than the room", "rooms: {slot: {size: [1, 4]}}\nlights: {k: {output: {luminance: 9, face: [1.2, 1]}, at: [0.5, 2], height: 1, mount: hand, aim: [0.5, 4, 1]}}",
			"warning light-in-solid 1 k reaches into or through slot.right and slot.left, by 0.10 m [this place is too small for 1 k: move it, turn it, or use a smaller one]"},
		{"a face through a window", den + "openings: {w: {window: den.left, width: 2}}\nlights: {k: {output: {luminance: 9, face: [1, 0.6]}, at: [0.1, 2], height: 1.5, mount: hand, aim: [0.1, 4, 1.5]}}",
			"warning light-in-solid 1 k reaches into or through w, by 0.33 m [move 1 k 0.33 m away from w (right on the sheet)]"},
		{"a flag by a wall", den + "grip: {f: {flag: [1.2, 1.2], at: [0.1, 3], height: 1.2, faces: 0, mount: hand}}",
			"warning in-solid G1 f reaches into or through den.left, by 0.50 m [move G1 f 0.51 m away from den.left (right on the sheet)]"},
		{"a flag in a wall", den + "grip: {f: {flag: [1, 1], at: [-0.1, 3], height: 1.2, faces: 90, mount: hand}}",
			"warning in-solid the middle of f is inside den.left [move it, or change its height]"},
		{"a person in a wall", den + "people: {p: {at: [0.05, 2], faces: 90}}",
			"warning in-solid p reaches into or through den.left, by 0.08 m [move p 0.09 m away from den.left (right on the sheet)]"},
		{"a person under a ceiling", "rooms: {den: {size: [4, 4], height: 1.65}}\npeople: {p: {at: [2, 2], faces: 90}}",
			"warning in-solid p reaches into or through den.ceiling, by 0.05 m [move p to where there is more room]"},
		{"a person by a wall", den + "people: {p: {at: [0.14, 2], faces: 90}}", ""},
		{"a person at a table", den + "furniture: {t: {table: [1, 1, 0.75], at: [2, 2]}}\npeople: {p: {at: [2, 1.3], pose: seated, faces: 0}}", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := warned(t, c.scene); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// A tube on a wall lies along it, and turns about its aim only where its roll is written.
func TestTubeOnWall(t *testing.T) {
	const tube = "lights: {k: {unit: led-tube-120, at: {wall: den.right, along: 2, in: 0.05}, height: 1.5, aim: [2, 4, 1.5], mount: {wall: den.right}"
	k := resolved(t, den+tube+"}}").Lights[0]
	near3(t, "right", k.Frame.Right, r3.Vec{Y: 1}, 1e-12)
	near3(t, "axis", k.Frame.Axis, r3.Vec{X: -1}, 1e-12)
	if got := warned(t, den+tube+"}}"); got != "" {
		t.Error(got)
	}
	k = resolved(t, den+tube+", roll: 0}}").Lights[0]
	near(t, "right across the aim", r3.Dot(k.Frame.Right, r3.Unit(r3.Vec{X: -1.95, Y: 2})), 0, 1e-9)
	if got := warned(t, den+tube+", roll: 0}}"); !strings.Contains(got, "den.right") {
		t.Errorf("one end is outside, and it says %q", got)
	}
}

// The legs of a stand go under a table, and not through walls and chests.
func TestLegsOfStands(t *testing.T) {
	const lamp = "lights: {k: {output: {candela: 9, shape: uniform}, at: "
	for _, c := range []struct{ name, scene, want string }{
		{"in the open", den + lamp + "[0.5, 2], height: 1.5}}", ""},
		{"by a wall", den + lamp + "[0.2, 2], height: 1.5}}",
			"warning stand-tight the legs of the stand of 1 k, 1.00 m across, reach 0.30 m into den.left " +
				"[move the stand 0.30 m away from den.left (right on the sheet), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"held by the wall", den + lamp + "[0.2, 2], height: 1.5, mount: {wall: den.left}}}", ""},
		{"the base of a boom", den + lamp + "[1.2, 2], height: 1.5, mount: {boom: 1, base: [0.3, 2]}}}",
			"warning in-solid the arm of 1 k reaches 0.43 m deep into den.left [move 1 k 0.58 m right on the sheet, or put the base of its boom elsewhere]\n" +
				"warning stand-tight the legs of the stand of 1 k, 1.00 m across, reach 0.20 m into den.left " +
				"[move the stand 0.20 m away from den.left (right on the sheet), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"outside, by the wall", den + lamp + "[-0.45, 2], height: 1.5, aim: [1, 2, 1.5]}}\nopenings: {w: {window: den.left, width: 1, along: 1.2}}",
			"warning stand-tight the legs of the stand of 1 k, 1.00 m across, reach 0.20 m into den.left " +
				"[move the stand 0.20 m away from den.left (left on the sheet), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"by a table", den + "furniture: {t: {table: [1, 1, 0.75], at: [2, 2]}}\n" + lamp + "[2, 1.3], height: 1.5}}", ""},
		{"by a chest", den + "furniture: {chest: {box: [1, 1, 1], at: [2, 2]}}\ngrip: {f: {flag: [0.5, 0.5], at: [2, 1.1], height: 1.5, faces: 0}}",
			"warning stand-tight the legs of the stand of G1 f, 1.00 m across, reach 0.10 m into chest " +
				"[move the stand 0.10 m away from chest (down the sheet), or use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"in a slot", "rooms: {slot: {size: [0.6, 4]}}\n" + lamp + "[0.3, 2], height: 1.5}}",
			"warning stand-tight the legs of the stand of 1 k, 1.00 m across, reach 0.20 m into slot.right and 0.20 m into slot.left " +
				"[use another mount: {wall: ROOM.WALL}, {clamp: NAME} or {boom: 1.2 m}]"},
		{"on a deck", den + "furniture: {d: {deck: [1, 1, 0.4], at: [2, 2]}}\n" + lamp + "[2, 2], height: 1.5, mount: {stand: d}}}", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := warned(t, c.scene); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
