package resolve

import (
	"fmt"
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// A camera that has a wall or a pane where its body is, or everybody behind it, is an error with its place and the fix wherever that is certain, and a warning
// or nothing where it is not.
func TestBadCamerasAreErrors(t *testing.T) {
	const room = "rooms: {den: {size: [6, 5]}}\npeople: {ada: {at: [3, 4], faces: 180}}\n"
	const nextDoor = "rooms: {den: {size: [6, 5]}, hall: {at: [6.3, 0], size: [4, 5]}}\npeople: {ada: {at: [3, 2], faces: 90}}\n"
	const floors = "rooms: {den: {size: [6, 5], height: 2.5}, loft: {size: [6, 5], base: 2.8, height: 2.5}}\nfurniture: {c: {box: [0.4, 0.4, 0.4], at: {wall: loft.top, along: 3}}}\n" +
		"people: {ada: {at: {from: c, shift: [0, -0.7]}, faces: 180}}\n"
	const turned = "error camera-turned ada is behind A [turn it: looks: ada; or write seen: false for who is not in the picture]"
	body := func(deep, in string) string {
		return "error in-solid the body of A goes " + deep + " into " + in + ", if it is 0.35 m long, and none has room there [move the camera " + deep + " along its axis, with a shorter lens; or shoot through a gap]"
	}
	for _, c := range []struct{ name, scene, want string }{
		{"far from a wall", room + "cameras: {A: {at: [3, 0.4], lens: 35 mm}}", ""},
		{"a long body in a wall", room + "cameras: {A: {at: [3, 0.21], height: 1.5, looks: {pan: 0, tilt: 0}, lens: 35 mm}}",
			"warning in-solid the body of A goes 0.14 m into den.bottom, if it is 0.35 m long [move the camera 0.14 m along its axis, with a shorter lens; or shoot through a gap]"},
		{"any body in a wall", room + "cameras: {A: {at: [3, 0.19], height: 1.5, looks: {pan: 0, tilt: 0}, lens: 35 mm}}", body("0.16 m", "den.bottom")},
		{"beside a wall", room + "cameras: {A: {at: [0.02, 2], height: 1.5, looks: {pan: 0, tilt: 0}, lens: 35 mm}}",
			"error in-solid the body of A reaches into or through den.left, by 0.01 m, and none is so small that it has room there [move the body of A 0.02 m away from den.left (right on the sheet), or shoot through a gap]"},
		{"through a pane", room + "openings: {w: {window: den.bottom, along: 2, width: 2, sill: 0.9, head: 2.1}}\ncameras: {A: {at: [3, 0.0], height: 1.5, looks: {pan: 0, tilt: 0}, lens: 35 mm}}",
			"error in-solid the body of A reaches into or through w, by 0.12 m, and none is so small that it has room there [move the body of A 0.13 m away from w (up the sheet), or shoot through a gap]"},
		{"in a gap", room + "openings: {w: {gap: den.bottom, along: 2, width: 2}}\ncameras: {A: {at: [3, 0.05], height: 1.5, looks: {pan: 0, tilt: 0}, lens: 35 mm}}", ""},
		{"through a window from the next room", nextDoor + "openings: {w: {window: den.right, along: 1.5, width: 2, sill: 0.9, head: 2.1}}\ncameras: {A: {at: [7.5, 2], height: 1.5, lens: 35 mm}}", ""},
		{"through a doorway from the next room", nextDoor + "openings: {w: {gap: den.right, along: 1.5, width: 2, head: 2.1}}\ncameras: {A: {at: [6.35, 2], height: 1.5, lens: 35 mm}}", ""},
		{"in a corner that is turned", "rooms: {den: {corners: [{a: [0, 0]}, {b: [4, 4]}, {c: [0, 8]}, {d: [-4, 4]}]}}\npeople: {ada: {at: [0, 6], faces: 180}}\ncameras: {A: {at: [0.1, 0.2], height: 1.5, looks: {pan: 0, tilt: 0}, lens: 35 mm}}", body("0.25 m", "den.a-b")},
		{"on the upper of two floors", floors + "cameras: {A: {at: {from: c, shift: [0, -4.7]}, height: 1.5, looks: {pan: 0, tilt: 0}, lens: 35 mm}}", body("0.25 m", "loft.bottom")},
		{"turned from somebody on the upper of two floors", floors + "cameras: {A: {at: {from: c, shift: [0, -2.7]}, height: 1.5, looks: 180, lens: 35 mm}}", turned},
		{"at the end of a track", room + "cameras: {A: {track: [[3, 1], [3, 0.1]], height: 1.2, looks: {pan: 0, tilt: 0}, lens: 35 mm}}", strings.Replace(body("0.25 m", "den.bottom"), "A goes", "A at the end goes", 1)},

		{"everybody ahead", room + "cameras: {A: {at: [3, 1], height: 1.5, looks: 0, lens: 35 mm}}", ""},
		{"somebody behind", room + "cameras: {A: {at: [3, 1], height: 1.5, looks: 180, lens: 35 mm}}", turned},
		{"a little under square to the axis", room + "cameras: {A: {at: [3, 3], height: 1.5, looks: 89.5, lens: 35 mm}}", ""},
		{"a little over square to the axis", room + "cameras: {A: {at: [3, 3], height: 1.5, looks: 90.5, lens: 35 mm}}", turned},
		{"in a mirrored scene", "rooms: {den: {at: [-6, 0], size: [6, 5]}}\npeople: {ada: {at: [-3, 4], faces: 180}}\ncameras: {A: {at: [-3, 1], height: 1.5, looks: 180, lens: 35 mm}}", turned},
		{"in feet", "units: ft\nrooms: {den: {size: [20, 16]}}\npeople: {ada: {at: [10, 13], faces: 180}}\ncameras: {A: {at: [10, 3], height: 5, looks: 180, lens: 35 mm}}", turned},
		{"a thing is what it looks at", room + "cameras: {A: {at: [3, 1], height: 1.5, looks: den.bottom, lens: 35 mm}}", ""},
		{"a place in space is what it looks at", room + "cameras: {A: {at: [3, 1], height: 1.5, looks: [3, 0, 1.5], lens: 35 mm}}", "warning camera-turned ada is behind A [turn it: looks: ada]"},
		{"nobody is meant to be seen", strings.Replace(room, "faces: 180", "faces: 180, seen: false", 1) + "cameras: {A: {at: [3, 1], height: 1.5, looks: 180, lens: 35 mm}}", ""},
		{"a mark ahead", strings.Replace(room, "faces: 180", "faces: 180, marks: {sit: {at: [3, 0.4]}}", 1) + "cameras: {A: {at: [3, 1], height: 1.5, looks: 180, lens: 35 mm}}", ""},
		{"a walk into the picture", strings.Replace(room, "faces: 180", "faces: 180, walk: [[3, 4], [4.5, 4], [4.5, 0.6]]", 1) + "cameras: {A: {at: [3, 1.5], height: 1.5, looks: 180, lens: 35 mm}}", ""},
		{"seen in a mirror ahead", room + "furniture: {glass: {mirror: [1, 1], at: {wall: den.bottom, along: 2.5}, lift: 1}}\ncameras: {A: {at: [3, 1], height: 1.5, looks: 180, lens: 35 mm}}",
			"warning camera-turned ada is behind A [turn it: looks: ada]"},
		{"a mirror behind it, too", room + "furniture: {glass: {mirror: [1, 1], at: {wall: den.top, along: 2.5}, lift: 1}}\ncameras: {A: {at: [3, 1], height: 1.5, looks: 180, lens: 35 mm}}", turned},
		{"past somebody on a track", room + "cameras: {A: {track: [[2, 1], [2, 4.4]], height: 1.5, looks: 0, lens: 35 mm}}",
			"warning camera-turned ada is behind A at the end [turn it: looks: ada]"},
		{"on a track that has everybody behind it", room + "cameras: {A: {track: [[2, 1], [4, 1]], height: 1.5, looks: 180, lens: 35 mm}}",
			strings.Replace(turned, "A [", "A at the end [", 1) + "\n" + strings.Replace(turned, "A [", "A at the start [", 1)},
		{"one of two cameras", room + "cameras: {A: {at: [3, 1], height: 1.5, looks: 180, lens: 35 mm}, B: {at: [5, 1], lens: 35 mm}}", turned},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := without(found(t, c.scene, ""), "stand-tight", "track-through"); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// Each camera that cannot be has an error with its line, its column, that line itself and the fix, as a user reads it.
func TestBadCamerasHaveAPlace(t *testing.T) {
	const scene = "rooms: {den: {size: [6, 5]}}\npeople: {ada: {at: [3, 4], faces: 180}}\ncameras:\n  A: {%s}\n"
	for camera, code := range map[string]string{
		"at: [3, -0.05], lens: 35 mm":         "in-solid",
		"at: [3, 0.1], lens: 35 mm":           "in-solid",
		"at: [3, 1], lens: 35 mm, looks: A":   "no-aim",
		"at: [3, 1]":                          "missing-key",
		"at: [3, 1], lens: 35 m":              "bad-value",
		"at: [3, 1], lens: 35":                "missing-unit",
		"at: [3, 1], lens: 35 mm, looks: 180": "camera-turned",
		"at: [3, 1], lens: 35 mm, looks: {pan: 180, tilt: 0}, height: 5 m": "over-ceiling",
	} {
		log := &source.Log{}
		doc := opened(t, fmt.Sprintf(scene, camera), log)
		Resolve(doc, doc.Base(log), log)
		told := false
		for _, d := range log.All() {
			if d.Severity != source.Error {
				continue
			}
			told = told || d.Code == code
			if text := d.String(); d.Hint == "" || !strings.Contains(text, "-:5:") {
				t.Errorf("%s: without its place or the fix: %s", camera, text)
			}
		}
		if !told || !log.Failed() {
			t.Errorf("%s: no error %s in %v", camera, code, log.All())
		}
	}
}
