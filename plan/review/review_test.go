package review_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/review"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// lit resolves a scene and computes its readings.
func lit(t *testing.T, text string) *study.Study {
	t.Helper()
	log := &source.Log{}
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	if log.Failed() {
		t.Fatalf("%s\n%v", text, log.All())
	}
	s, err := study.Run(t.Context(), setup, study.Options{ReadingsOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// resolvedOnly resolves a scene, whatever is wrong with it.
func resolvedOnly(t *testing.T, text string) *plan.Setup {
	t.Helper()
	log := &source.Log{}
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	if setup == nil {
		t.Fatalf("%s\n%v", text, log.All())
	}
	return setup
}

// A face 2 m before a lamp of 1000 cd gets 250 lx on axis; the working stop at ISO 800, 1/50 s and
// the dome's constant asks for 170 lx.
func TestCheck(t *testing.T) {
	const face = "people: {ada: {at: [0, 0], faces: 0}}\n"
	lamp := func(what string) string {
		return face + "lights:\n  k: {" + what + ", at: [0, 2.1], height: 1.59, aim: ada}\n"
	}
	standing := func(aside string) string {
		return "cameras: {A: {at: [0, 0], height: 1.2, looks: 0, lens: 50 mm}}\nlights: {k: {output: {candela: 1000, shape: uniform}, at: [" + aside +
			", 4], height: 2.4, aim: down}}\n"
	}
	burning := func(deep, seen string) string {
		return "cameras: {A: {at: [0, -2], height: 1.2, looks: 0, lens: 50 mm}, B: {at: [0, -3], height: 1.2, looks: 180, lens: 50 mm}}\nlights: {k: {output: {luminance: 5000, sphere: 0.2}, at: [0, " +
			deep + "], height: 1.2, mount: hand" + seen + "}}\n"
	}
	spot := func(what, at string) string {
		return what + "cameras: {A: {at: [0, 0], height: 1.5, looks: 0, lens: 50 mm}}\nmeters: {m: {spot: [" + at + "], from: A}}\n"
	}
	holding := func(holds string) string {
		return "people: {ada: {at: [0, 0], faces: 90, skin: 0.36}}\nexposure: {stop: T2.8, range: " + holds + "}\n" +
			"cameras: {A: {at: [2, 2], height: 1.6, lens: 25 mm, looks: ada}}\nfurniture: {wall: {box: [0.2, 9, 6], at: [-3, 0], material: black}}\n" +
			"lights: {k: {output: {candela: 1500, shape: uniform}, at: [1.5, 0], height: 1.59}, globe: {output: {luminance: 5000, sphere: 0.2}, at: [-0.5, 0.7], height: 1.9, mount: hand, seen: true}}\n"
	}
	for _, c := range []struct {
		name, scene string
		want        []string // severity, code and message
	}{
		{"a face at the working stop", lamp("output: {candela: 1000, shape: uniform}"), nil},
		{"a dark key side", lamp("output: {candela: 100, shape: uniform}"), []string{
			"warning key-under the key side of ada is 3.3 stops under T2.8"}},
		{"a bright key side", lamp("output: {candela: 10000, shape: uniform}"), []string{
			"warning key-over the key side of ada is 3.4 stops over T2.8"}},
		{"a bright key side behind a silver board", lamp("output: {candela: 10000, shape: uniform}") +
			"grip: {f: {silver: [1, 1], at: [3, 0], faces: ada}}\n", []string{
			"warning key-over the key side of ada is 3.4 stops over T2.8"}},
		{"a dark key side, with more than a line holds", lamp("output: {candela: 100, shape: uniform}, focus: 40 %") +
			"  l: {output: {candela: 1, shape: uniform}, at: [2, 2.1], focus: 40 %}\nsite: {when: 2026-06-21 15:30, latitude: 59.9}\nhaze: 0.02\n", []string{
			"warning key-under without sun and sky, haze, focus of 1 k and 1 more, the key side of ada is 3.3 stops under T2.8"}},
		{"a key side behind a filter", strings.Replace(lamp("output: {candela: 1000, shape: uniform}"), "lights:", "cameras: {A: {at: [2, 3], lens: 35 mm, filter: [ND .6]}}\nlights:", 1), []string{
			"warning key-under the key side of ada is 1.9 stops under T2.8",
			"info frame-clear no equipment shows in the frame of A; 1 k comes nearest, at the right edge: 10.2° outside it, 30.4 % of the frame's width"}},
		{"light from behind alone", strings.Replace(lamp("output: {candela: 1000, shape: uniform}"), "2.1]", "-2.1]", 1), []string{
			"warning key-under no light reaches the key side of ada"}},
		{"a key that is outshone", face + "lights:\n" +
			"  main:  {output: {candela: 500, shape: uniform}, at: [1.5, 1.6], height: 1.59, role: key}\n" +
			"  other: {output: {candela: 1000, shape: uniform}, at: [-1.5, 1.6], height: 1.59, role: {ada: fill}}\n", []string{
			"warning key-beaten the key of ada, 1 main, lights mostly the darker side of the face, which is 1.0 stops under the other"}},
		{"an edge from the front", face + "lights:\n" +
			"  main:  {output: {candela: 500, shape: uniform}, at: [1.5, 1.6], height: 1.59, role: edge}\n" +
			"  other: {output: {candela: 1000, shape: uniform}, at: [-1.5, 1.6], height: 1.59, role: key}\n", []string{
			"warning role-effect 1 main is an edge, and it lights the front of the head of ada more than the back: it gives no edge"}},
		{"two colours", face + "lights:\n" +
			"  a: {output: {candela: 1000, shape: uniform}, at: [1.5, 1.6], height: 1.59, colour: 3200 K}\n" +
			"  b: {output: {candela: 700, shape: uniform}, at: [-1.5, 1.6], height: 1.59, colour: 5600 K}\n", []string{
			"info colour-gap the fill side of ada is 134 mired cooler than the key side (5600 K against 3200 K)"}},
		{"a lamp at no level", lamp("output: {candela: 1000, shape: uniform}, level: 0 %"), nil},
		{"one of two lamps at no level", lamp("output: {candela: 1000, shape: uniform}") + "  l: {output: {candela: 9, shape: uniform}, at: [0, 4], height: 2, level: 0 %}\n", []string{
			"info no-light 2 l is at 0 %"}},
		{"a stand that is too low", face + "lights: {k: {unit: led-point-300-bicolour, at: [0, 4], height: 2.8, level: 12 %}}\n", []string{
			"warning stand-short 1 k is 2.80 m above what it stands on, and its stand does not go so high (light-stand, to 2.60 m)"}},
		{"a stand that is too high", face + "lights: {k: {unit: led-point-300-bicolour, at: [0, 4], height: 0.3, level: 12 %}}\n", []string{
			"warning stand-tall 1 k is 0.30 m above what it stands on, and its stand does not go so low (light-stand, from 0.95 m)"}},
		{"a stand that does not take its head", face + "lights: {k: {unit: led-point-1200-daylight, at: [0, 4], height: 2, level: 3 %, stand: light-stand}}\n", []string{
			"warning stand-spigot 1 k sits on a spigot of 28 mm, and its stand takes 16 mm (light-stand)",
			"warning stand-heavy 1 k weighs 9.9 kg, more than its stand carries (light-stand, 8 kg)"}},
		{"a walk out of the light", strings.Replace(lamp("output: {candela: 1000, shape: uniform}"), "faces: 0", "faces: 0, walk: [[0, 0], [0, -3]]", 1) +
			"cameras: {A: {at: [0, 1.2], lens: 35 mm, looks: ada}}\n", []string{
			"info walk-leaves the walk of ada leaves T2.8 for A from 1.50 m to 3.00 m: 2.1 stops under"}},
		{"the same walk of somebody who is in no picture", strings.Replace(lamp("output: {candela: 1000, shape: uniform}"), "faces: 0", "faces: 0, seen: false, walk: [[0, 0], [0, -3]]", 1) +
			"cameras: {A: {at: [0, 10], lens: 35 mm, looks: 0}}\n", nil},
		{"a lamp that lights nothing but a walk", strings.Replace(lamp("output: {candela: 1000, shape: uniform}"), "faces: 0", "faces: 0, walk: [[20, 0], [20, 0.4]]", 1) +
			"  l: {output: {lux: 170, distance: 2, beam: 60}, at: [20, 2.2], aim: [20, 0.2, 1.59], height: 1.59}\ngrip: {f: {flag: [4, 4], at: [10, 0], height: 1.6, faces: ada}}\n", nil},
		{"a stand in frame", standing("0.95"), []string{
			"warning in-frame the stand of 1 k shows from top to bottom of A, on the right: 2.1 % of the frame; move it 0.07 m camera right, or pan A 1° left"}},
		{"a stand just out of frame", standing("1.1"), []string{
			"info frame-clear no equipment shows in the frame of A; the stand of 1 k comes nearest, at the right edge, from top to bottom: 1.1° outside it, 4.2 % of the frame's width"}},
		{"a stand far from the frame", standing("5"), nil},
		{"a stand in the margin", strings.Replace(standing("1.1"), "50 mm", "50 mm, room: 5 %", 1), []string{
			"info in-margin the stand of 1 k lies in the margin about the frame of A, at the right edge, from top to bottom: 1.1° outside it, 4.2 % of the frame's width; move it 0.02 m camera right, or pan A 0.5° left"}},
		{"a stand just past the margin", strings.Replace(standing("1.12"), "50 mm", "50 mm, room: 5 %", 1), []string{
			"info frame-clear no equipment shows in the frame of A; the stand of 1 k comes nearest, at the right edge, from top to bottom: 1.4° outside it, 5.2 % of the frame's width"}},
		{"a lamp that is meant to be in the picture", burning("1", ", seen: true"), []string{
			"info seen-bright 1 k shows in the middle of A, and its light there is 6.5 stops over white (5000 cd/m²)"}},
		{"a lamp in the picture, through a filter", strings.Replace(burning("1", ", seen: true"), "50 mm}, B", "50 mm, filter: [ND .6]}, B", 1), []string{
			"info seen-bright 1 k shows in the middle of A, and its light there is 4.5 stops over white (5000 cd/m²)"}},
		{"a lamp for the other camera", burning("1", ", seen: B"), []string{
			"info seen-nowhere 1 k is meant to be in the picture of B, and does not show there",
			"warning in-frame 1 k shows in the middle of A: 2.5 % of the frame; raise it 0.53 m"}},
		{"a lamp that is meant to be in the picture, and is not", burning("-2.5", ", seen: true"), []string{
			"info seen-nowhere 1 k is meant to be in the picture, and does not show there"}},
		{"a camera before a mirror", "rooms: {den: {size: [4, 4]}}\nfurniture: {glass: {mirror: [1, 1.2], at: {wall: den.top, along: 1.5}, lift: 0.8}}\n" +
			"cameras: {A: {at: [2, 1], height: 1.4, looks: 0, lens: 35 mm}}\nlights: {k: {output: {candela: 100, shape: uniform}, at: [1.4, 0.8], height: 1.4, aim: up}}\n", []string{
			"warning reflected 1 k with its stand shows in the mirror glass, at the bottom edge of A: 1.3 % of the frame; move it 0.88 m camera right, or turn glass 7.5° clockwise",
			"warning reflected camera A sees itself in the mirror glass, at the bottom edge of A: 0.4 % of the frame; turn glass 2° clockwise"}},
		{"a lamp in a window by night", "rooms: {den: {size: [4, 4]}}\nopenings: {sea: {window: den.top, width: 1.6, along: centre}}\n" +
			"cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}\nlights: {k: {output: {luminance: 2000, face: [0.6, 0.6]}, at: [2.6, 0.9], height: 1.5, aim: sea}}\n", []string{
			"warning in-glass the light of 1 k shows in the glass of sea, on the right of A: 3.3 % of the frame; the glass returns 8.2 %, which is 1.6 stops over white; behind it is nothing, and it shows unless the view there is brighter than 1630 cd/m²"}},
		{"people, a frame and cloth in a window by night", "rooms: {den: {size: [4, 4]}}\nopenings: {sea: {window: den.top, width: 1.6, along: centre}}\npeople: {ada: {at: [2.9, 0.7], faces: 0, seen: false}}\n" +
			"cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}\ngrip: {silk: {frame: [0.6, 0.6], cloth: half-diffusion, at: [2.4, 1.4], height: 1.5, faces: 0}}\n" +
			"lights: {k: {unit: led-panel-100, diffusion: half-diffusion, at: [3.3, 1.2], height: 1.9, aim: sea, level: 40 %}}\n", []string{
			"info in-glass the cloth of 1 k shows in the glass of sea, in the upper right of A: 1.7 % of the frame; the glass returns 8.2 %, which is 5.9 stops over grey; behind it is nothing, and it shows unless the view there is brighter than 5900 cd/m²; move it 2.67 m camera left",
			"info in-glass G1 silk shows in the glass of sea, on the right of A: 3.8 % of the frame; the glass returns 8.2 %, which is 1.4 stops under grey; behind it is nothing, and it shows unless the view there is brighter than 36.7 cd/m²; move it 1.84 m camera left",
			"info in-glass ada shows in the glass of sea, on the right of A: 3.9 % of the frame; the glass returns 8.2 %, which is 4.0 stops under grey; behind it is nothing, and it shows unless the view there is brighter than 6.29 cd/m²; move them 2.36 m camera left"}},
		{"a lamp with cloth that is meant to be in the picture", "rooms: {den: {size: [4, 4]}}\nopenings: {sea: {window: den.top, width: 1.6, along: centre}}\n" +
			"cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}\nlights: {k: {unit: led-panel-100, diffusion: half-diffusion, at: [2.6, 0.9], height: 1.5, aim: sea, seen: true}}\n", []string{
			"info seen-nowhere 1 k is meant to be in the picture, and does not show there"}},
		{"a lamp in a window before a lit wall", "rooms: {den: {size: [4, 4]}}\nopenings: {sea: {window: den.top, width: 1.6, along: centre}}\nfurniture: {wall: {box: [6, 0.2, 3], at: [2, 6], material: white}}\n" +
			"cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}\nlights: {k: {output: {luminance: 2000, face: [0.6, 0.6]}, at: [2.6, 0.9], height: 1.5, aim: sea}, l: {output: {candela: 40, shape: uniform}, at: [3.6, 5], height: 2.4, aim: wall}}\n", []string{
			"warning in-glass the light of 1 k shows in the glass of sea, on the right of A: 3.3 % of the frame; the glass returns 8.2 %, which is 1.6 stops over white; 4.2 stops over what is behind (wall)"}},
		{"a lamp in a window before a bright wall", "rooms: {den: {size: [4, 4]}}\nopenings: {sea: {window: den.top, width: 1.6, along: centre}}\nfurniture: {wall: {box: [6, 0.2, 3], at: [2, 6], material: white}}\n" +
			"cameras: {A: {at: [1.6, 1], height: 1.4, looks: 0, lens: 35 mm}}\nlights: {k: {output: {luminance: 2000, face: [0.6, 0.6]}, at: [2.6, 0.9], height: 1.5, aim: sea}, l: {output: {candela: 90000, shape: uniform}, at: [3.9, 5], height: 2.4, aim: wall}}\n", nil},
		{"a lamp that shines onto a lens", strings.Replace(lamp("output: {candela: 1000, shape: uniform}"), "lights:", "cameras: {A: {at: [0, -3], looks: ada, lens: 50 mm}}\nlights:\n  back: {output: {candela: 4000, shape: uniform}, at: [0.8, -0.3], height: 2.4, aim: down}", 1), []string{
			"warning key-over the key side of ada is 2.3 stops over T2.8",
			"info frame-clear no equipment shows in the frame of A; the stand of 1 back comes nearest, at the right edge, from top to bottom: 2.1° outside it, 8 % of the frame's width",
			"info flare 1 back shines onto the lens of A from the upper right, 22.9° off its axis and 8.7° outside the frame: 429 lx there, 0.9 stops under the key of ada; it lays a veil over the picture, 2.2 stops under grey; an eyebrow of 0.10 m by 0.10 m on the matte box, at the top, 0.15 m before the lens, shades it"}},
		{"a lamp that shines onto a lens from just outside the frame", strings.Replace(lamp("output: {candela: 1000, shape: uniform}"), "lights:", "cameras: {A: {at: [0, -3], looks: ada, lens: 50 mm}}\nlights:\n  back: {output: {candela: 9000, shape: uniform}, at: [1.5, 2.3], height: 2.1, aim: down}", 1), []string{
			"warning key-over the key side of ada is 3.0 stops over T2.8",
			"info frame-clear no equipment shows in the frame of A; 1 back comes nearest, in the upper right corner: 0.2° outside it, 0.9 % of the frame's width",
			"warning flare 1 back shines onto the lens of A from the right, 16.6° off its axis and 1.8° outside the frame: 282 lx there, 2.3 stops under the key of ada; it lays a veil over the picture, 2.9 stops under grey; a flag of 0.10 m by 0.10 m, 0.50 m before the lens, at the right edge of the frame, shades it"}},
		{"a lamp that shines onto a lens from within the frame", strings.Replace(burning("1", ", seen: true"), "5000", "90000", 1), []string{
			"info seen-bright 1 k shows in the middle of A, and its light there is 10.7 stops over white (90000 cd/m²)",
			"warning flare 1 k shines onto the lens of A from within the frame: 314 lx there; it lays a veil over the picture, 2.7 stops under grey"}},
		{"a lamp that goes out between half cycles", face + "exposure: {fps: 24, shutter: 180}\ncameras: {A: {at: [0, 3], looks: ada, lens: 50 mm}}\n" +
			"lights: {k: {unit: discharge-575-magnetic, at: [2, 3], height: 2, gels: [ND1.2, ND0.6]}}\n", []string{
			"warning key-under the key side of ada is 3.1 stops under T2.8",
			"warning flicker 1 k flickers for A at ada.key, at 24 fps and 180° (1/48 s): by 7.9 % from frame to frame, 4 times a second, and by 7.9 % from row to row; none at 172.8° (1/50 s), or at 25 fps and 180°"}},
		{"one whose shutter is set as a time", face + "exposure: {fps: 24, shutter: 1/60}\ncameras: {A: {at: [0, 3], looks: ada, lens: 50 mm}}\n" +
			"lights: {k: {unit: discharge-575-magnetic, at: [2, 3], height: 2, gels: [ND1.2, ND0.6]}}\n", []string{
			"warning key-under the key side of ada is 3.4 stops under T2.8",
			"warning flicker 1 k flickers for A at ada.key, at 24 fps and 144° (1/60 s): by 33.1 % from frame to frame, 4 times a second, and by 33.1 % from row to row; none at 172.8° (1/50 s), or at 20 fps and 144°"}},
		{"one at a shutter that fits it", face + "exposure: {fps: 24, shutter: 1/50}\ncameras: {A: {at: [0, 3], looks: ada, lens: 50 mm}}\n" +
			"lights: {k: {unit: discharge-575-magnetic, at: [2, 3], height: 2, gels: [ND1.2, ND0.6]}}\n", []string{
			"warning key-under the key side of ada is 3.2 stops under T2.8"}},
		{"a bulb in the picture behind a dimmer", "exposure: {fps: 25, shutter: 144}\ncameras: {A: {at: [0, -2], height: 1.2, looks: 0, lens: 50 mm}}\n" +
			"lights: {k: {unit: practical-bulb, bulb: led-806, at: [0, 1], height: 1.2, level: 20 %, dimmer: phase}}\n", []string{"warning dimmer 1 k is no filament, and a dimmer that cuts half-waves does not dim it as it is set",
			"warning flicker 1 k flickers for A where it shows, at 25 fps and 144° (1/62.5 s): by 62.5 % from row to row; none at 180° (1/50 s), or at 20 fps and 144°"}},
		{"a camera that rolls past a mirror", "rooms: {den: {size: [4, 4]}}\nfurniture: {glass: {mirror: [1, 1.2], at: {wall: den.top, along: 2.5}, lift: 0.8}}\n" +
			"cameras: {A: {track: [[1, 1], [3.2, 1]], height: 1.4, looks: {pan: 0, tilt: 0}, lens: 35 mm}}\n", []string{
			"warning reflected camera A sees itself in the mirror glass, at the bottom edge of A: 0.8 % of the frame, most 1.60 m along its track"}},
		{"a lamp that goes out of one picture into another", "rooms: {den: {at: [-0.6, -0.5], size: [3.6, 6]}}\ncameras: {A: {at: [0, 0], height: 1.5, looks: 0, lens: 50 mm}, B: {at: [1.6, 0], height: 1.5, looks: 0, lens: 50 mm}}\n" +
			"lights: {k: {output: {candela: 1000, shape: uniform}, at: [0.2, 4], height: 1.6, aim: down}}\n", []string{
			"warning in-frame 1 k with its stand shows at the bottom edge of A: 4.8 % of the frame; pan A 13° left; moved 0.96 m camera right it would show in B",
			"info frame-clear no equipment shows in the frame of B; 1 k comes nearest, at the left edge: 3.2° outside it, 12.1 % of the frame's width"}},
		{"a lamp that shines onto a lens at the end of its track alone", "cameras: {A: {track: [[-9, 0], [2, 0]], height: 1.5, looks: 0, lens: 50 mm}}\nlights: {k: {output: {candela: 9000, shape: uniform}, at: [3.5, 4], height: 1.5}}\n", []string{
			"info frame-clear no equipment shows in the frame of A; 1 k comes nearest, at the right edge: 4.5° outside it, 17 % of the frame's width, at the end of its track",
			"info flare 1 k shines onto the lens of A, most at the end of its track, from the right, 20.6° off its axis and 6.6° outside the frame: 462 lx there; it lays a veil over the picture, 2.1 stops under grey; an eyebrow of 0.10 m by 0.10 m on the matte box, at the right edge, 0.15 m before the lens, shades it"}},
		{"a stand that shows from the middle of a track", "cameras: {A: {track: [[-2, 0], [2, 0]], height: 1.2, looks: 0, lens: 50 mm}}\nlights: {k: {output: {candela: 1000, shape: uniform}, at: [0, 4], height: 2.4, aim: down}}\n", []string{
			"warning in-frame the stand of 1 k shows at the right edge of A, from top to bottom: 2.1 % of the frame, worst 1.02 m along its track (from 0.98 m to 3.02 m); move it 3.02 m camera left"}},
		{"a stand that a track comes near to", "cameras: {A: {track: [[-2, 0], [-1.2, 0]], height: 1.2, looks: 0, lens: 50 mm}}\nlights: {k: {output: {candela: 1000, shape: uniform}, at: [0, 4], height: 2.4, aim: down}}\n", []string{
			"info frame-clear no equipment shows in the frame of A; the stand of 1 k comes nearest, at the right edge, from top to bottom: 2.4° outside it, 9.2 % of the frame's width, at the end of its track"}},
		{"rails in the frame", "people: {ada: {at: [0, 0], faces: 180}}\ncameras: {A: {track: [[0, -9], [0, -2]], height: 0.8, lens: 25 mm}}\n", []string{
			"warning in-frame the track of A shows at the bottom edge of A: 0.6 % of the frame, worst at the start of its track (from 0.00 m to 2.42 m)"}},
		{"a reader in the frame", "people: {ada: {at: [0, 0], faces: 180}, reader: {at: [0.5, -1.2], faces: ada, seen: false}, noor: {at: [2, -1], faces: ada, seen: B}}\ncameras: {A: {at: [0, -4], height: 1.5, lens: 25 mm}, B: {at: [-1.5, -4.1], height: 1.5, lens: 25 mm}}\n", []string{
			"warning in-frame reader shows at the bottom edge of A, to the right: 8.4 % of the frame; move them 1.13 m camera right, or pan A 21.5° left",
			"warning in-frame reader shows at the bottom edge of B, to the right: 5.9 % of the frame; move them 1.05 m camera right, or pan B 16° left"}},
		{"a reader with a mark in the frame", "people: {ada: {at: [0, 0], faces: 180}, reader: {at: [5, -1.2], faces: ada, seen: false, marks: {by: {at: [-0.6, -1.2]}}}}\ncameras: {A: {at: [0, -4], height: 1.5, lens: 35 mm}}\n", []string{
			"warning in-frame reader.by shows at the bottom edge of A, to the left: 11.5 % of the frame; move them 0.62 m camera left, or pan A 12.5° right"}},
		{"a pan that brings another in", "cameras: {A: {at: [0, -2], height: 1.2, looks: 0, lens: 50 mm}}\ngrip: {f: {flag: [1, 1.6], at: [0.62, 2], height: 1.2, faces: 180}, g: {flag: [1, 1.6], at: [-1.6, 2], height: 1.2, faces: 180}}\n", []string{
			"warning in-frame G1 f shows at the right edge of A, from top to bottom: 44 % of the frame; move it 0.88 m camera right; a pan of 12.5° left would bring in G2 g"}},
		{"a pan that loses the subject", "people: {ada: {at: [0.7, 3], faces: 180}}\ncameras: {A: {at: [0, -2], height: 1.6, looks: 0, lens: 50 mm}}\ngrip: {f: {flag: [1, 1.6], at: [0.62, 2], height: 1.2, faces: 180}}\n", []string{
			"warning in-frame G1 f shows in the lower right corner of A: 37.7 % of the frame; move it 0.88 m camera right; a pan of 12.5° left would lose ada"}},
		{"cameras on both sides of the line", "people: {ada: {at: [0, 0], faces: noor}, noor: {at: [2, 0], faces: ada}}\nline: [ada, noor]\ncameras: {A: {at: [1, -3], lens: 35 mm}, B: {at: [1, 3], lens: 35 mm}, C: {at: [-2, 0.1], lens: 35 mm}, D: {track: [[0, -2], [0, 2]], looks: 0, lens: 35 mm}}\n", []string{
			"warning in-frame camera B with its stand shows at the bottom edge of A, to the right: 1 % of the frame; move it 0.41 m camera right, or pan A 4° left",
			"warning in-frame camera D with its stand shows in the lower left corner of A: 7.9 % of the frame; move it 2.36 m camera left",
			"warning in-frame camera A with its stand shows at the bottom edge of B, to the left: 1 % of the frame; move it 0.41 m camera left, or pan B 4° right",
			"warning in-frame camera D with its stand shows at the bottom edge of B, to the right: 8.1 % of the frame; move it 1.44 m camera left",
			"warning line-crossed B is to the left of the line from ada to noor, and A to the right: cut together, both people look the same way",
			"warning in-frame camera D with its stand shows at the bottom edge of C, to the right: 8 % of the frame",
			"info on-line C is on the line from ada to noor, within 5° (2.9° off it): it cuts with both sides",
			"warning in-frame camera B with its stand shows in the lower right corner of D: 1.9 % of the frame, worst 2.08 m along its track (from 0.00 m to 2.49 m); move it 0.89 m camera right; a pan of 9.5° left would lose ada",
			"info line-track the track of D crosses the line from ada to noor 2.00 m along"}},
		{"a spot meter that reads nothing", spot("", "0, 9, 1.5"), []string{
			"warning spot-reads m, a spot meter from A, reads nothing: no surface lies on its way"}},
		{"a spot meter on somebody", spot("people: {ada: {at: [0, 6]}}\n", "0, 9, 1.5"), []string{
			"warning spot-reads m, a spot meter from A, reads ada, who is drawn as a plain figure: no skin, hair or cloth of its own"}},
		{"a spot meter on a door", spot("rooms: {den: {at: [-2, -1], size: [4, 4]}}\nopenings: {way: {door: den.top}}\n", "0, 9, 1.5"), []string{
			"warning spot-reads m, a spot meter from A, reads the leaf of way"}},
		{"a spot meter on a wall", spot("rooms: {den: {at: [-2, -1], size: [4, 4]}}\n", "0, 3, 1.5"), nil},
		{"a spot meter on cloth", spot("grip: {silk: {frame: [2, 2], at: [0, 4], height: 1.5, faces: 180, cloth: full-diffusion}}\n", "0, 4, 1.5"), []string{
			"warning in-frame G1 silk shows across the whole frame of A: 100 % of the frame; move it 2.00 m camera left",
			"warning spot-reads m, a spot meter from A, reads silk by what it returns: light that comes through it is not counted"}},
		{"a spot meter through a net", spot("grip: {net: {net: [2, 2], at: [0, 4], height: 1.5, faces: 180}}\nfurniture: {shed: {box: [4, 1, 4], at: [0, 8]}}\n", "0, 7.5, 1.5"), []string{
			"warning in-frame G1 net shows across the whole frame of A: 100 % of the frame; move it 2.00 m camera left",
			"warning spot-reads m, a spot meter from A, looks through net and reads shed behind it: the light of the cloth itself is not counted"}},
		{"a spot meter through glass", spot("rooms: {den: {at: [-2, -1], size: [4, 4]}}\nopenings: {bay: {window: den.top, width: 1}}\nfurniture: {shed: {box: [4, 1, 4], at: [0, 8]}}\n", "0, 7.5, 1.5"), []string{
			"info spot-reads m, a spot meter from A, looks through bay and reads shed behind it: what the glass mirrors is not counted"}},
		{"a spot meter through glass on nothing", spot("rooms: {den: {at: [-2, -1], size: [4, 4]}}\nopenings: {bay: {window: den.top, width: 1}}\n", "0, 7.5, 1.5"), []string{
			"warning spot-reads m, a spot meter from A, reads nothing: no surface lies on its way behind bay"}},
		{"what a camera does not hold", holding("{over: 2, under: 3}"), []string{
			"info seen-bright 2 globe shows in the upper right of A, and its light there is 6.5 stops over white (5000 cd/m²)",
			"warning clipped the key side of ada clips for A: 2.7 stops over grey, and it holds 2 over",
			"warning clipped the fill side of ada clips for A: 2.7 stops over grey, and it holds 2 over",
			"info clipped 2 globe clips for A: 9.0 stops over grey, 0.8 % of the frame, and it holds 2 over",
			"info sunk wall sinks for A: 6.1 stops under grey, 50 % of the frame, and it holds 3 under",
			"info frame-clear no equipment shows in the frame of A; 1 k comes nearest, at the left edge: 2.1° outside it, 4.8 % of the frame's width",
			"info flare 1 k shines onto the lens of A from the left, 29.5° off its axis and 3° outside the frame: 307 lx there, 0.8 stops under the key of ada; it lays a veil over the picture, 2.7 stops under grey; an eyebrow of 0.10 m by 0.10 m on the matte box, at the left edge, 0.15 m before the lens, shades it"}},
		{"a camera that does not say what it holds", strings.Replace(holding("{over: 2}"), ", range: {over: 2}", "", 1), []string{
			"info seen-bright 2 globe shows in the upper right of A, and its light there is 6.5 stops over white (5000 cd/m²)",
			"info frame-clear no equipment shows in the frame of A; 1 k comes nearest, at the left edge: 2.1° outside it, 4.8 % of the frame's width",
			"info flare 1 k shines onto the lens of A from the left, 29.5° off its axis and 3° outside the frame: 307 lx there, 0.8 stops under the key of ada; it lays a veil over the picture, 2.7 stops under grey; an eyebrow of 0.10 m by 0.10 m on the matte box, at the left edge, 0.15 m before the lens, shades it"}},
		{"in feet", "units: ft\npeople: {ada: {at: [0, 0], faces: 0}}\n" +
			"lights: {k: {unit: led-point-300-bicolour, at: [0, 13], height: 9, level: 12 %}}\n", []string{
			"warning stand-short 1 k is 9'0\" above what it stands on, and its stand does not go so high (light-stand, to 8'6½\")"}},
		{"a light that cannot pass for a lamp", face + "lights:\n  lamp: {output: {candela: 1000, shape: uniform}, colour: 3200 K, at: [0, 2.1], height: 1.59, aim: ada}\n" +
			"  k: {unit: led-point-60-bicolour, at: [2, 2.1], height: 1.59, aim: ada, level: 5 %, stands-for: lamp}\n", []string{
			"warning stand-in-colour at the face of ada 2 k is 134 mired cooler than 1 lamp, which it stands for",
			"warning stand-in-angle at the face of ada 2 k comes from 45° beside 1 lamp, which it stands for: 45° farther to own right"}},
		{"a light that passes for a lamp", face + "lights:\n  lamp: {output: {candela: 1000, shape: uniform}, colour: 3200 K, at: [0, 2.1], height: 1.59, aim: ada}\n" +
			"  k: {unit: led-point-60-bicolour, colour: 3200 K, at: [0.5, 2.1], height: 1.59, aim: ada, level: 5 %, stands-for: lamp}\n", nil},
		{"a light for a window that nothing comes in by", "rooms: {den: {at: [-3, -3], size: [6, 6]}}\nopenings: {w: {window: den.top, width: 1}}\n" +
			lamp("output: {candela: 900, shape: uniform}, stands-for: w"), []string{
			"warning stand-in-colour 1 k stands for w, and its colour is compared with nothing"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			s := lit(t, c.scene)
			var got []string
			for _, d := range review.Check(s.Setup, &s.Readings) {
				got = append(got, d.Severity.String()+" "+d.Code+" "+d.Message)
			}
			if strings.Join(got, "\n") != strings.Join(c.want, "\n") {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(c.want, "\n"))
			}
		})
	}
}

// The resolver reports a lamp behind a blank wall, and nothing reports again what follows from it.
func TestTheCauseIsToldOnce(t *testing.T) {
	s := lit(t, `
rooms: {den: {size: [5, 4]}}
openings: {w: {window: den.top, width: 1}}
people: {ada: {at: [2, 2], faces: 0}}
lights: {k: {output: {candela: 1000, shape: uniform}, at: [2, -3], height: 1.6, aim: ada}}
`)
	for _, d := range review.Check(s.Setup, &s.Readings) {
		t.Errorf("tells %s %s", d.Code, d.Message)
	}
	if !s.Setup.Lights[0].Misplaced {
		t.Error("the lamp lights no opening, and nothing says so")
	}
}

// More light is asked for in a way that gives it: reflected light does not grow with a shorter throw.
func TestWhatGivesMore(t *testing.T) {
	const room = "rooms: {den: {size: [3, 3], walls: white, ceiling: white}}\npeople: {ada: {at: [1.5, 2.6], faces: 180}}\n"
	for _, c := range []struct{ name, scene, want string }{
		{"straight", "people: {ada: {at: [0, 0], faces: 0}}\nlights: {k: {output: {candela: 100, shape: uniform}, at: [0, 2.1], height: 1.59, aim: ada}}",
			"use a light 9.6 times stronger, a throw 0.32 times as long, or a wider stop"},
		{"reflected, with level left", room + "lights: {k: {output: {lumens: 8000, beam: 40}, at: [1.5, 0.5], height: 1.5, aim: up, level: 2 %}}", "most of the light there is reflected: set k to "},
		{"reflected, at full level", room + "lights: {k: {output: {lumens: 200, beam: 40}, at: [1.5, 0.5], height: 1.5, aim: up}}", "most of the light there is reflected: use a larger unit than k, "},
	} {
		s := lit(t, c.scene)
		hint := ""
		for _, d := range review.Check(s.Setup, &s.Readings) {
			if d.Code == review.CodeKeyUnder {
				hint = d.Hint
			}
		}
		if !strings.HasPrefix(hint, c.want) {
			t.Errorf("%s: offers %q, want %q", c.name, hint, c.want)
		}
	}
}

// What mends a light that cannot pass is offered: its own white before any gel, gels where it has no other white, and a place.
func TestWhatMakesALightPass(t *testing.T) {
	for _, c := range []struct{ unit, to, at, want string }{
		{"led-point-60-bicolour", "3200 K", "0.5, 2", "set it to 3200 K: leaves nothing"},
		{"led-point-150-daylight", "3200 K", "0.5, 2", "add full CTO: leaves nothing, takes 0.9 stops"},
		{"fresnel-tungsten-150", "'3200 K, Duv 0.03'", "0.5, 2", "add full plus green + 3/4 plus green + 1/8 plus green: leaves nothing, takes 0.8 stops"},
	} {
		s := lit(t, "people: {ada: {at: [0, 0], faces: 0}}\nlights: {k: {unit: "+c.unit+", at: ["+c.at+"], height: 1.6, aim: ada, stands-for: "+c.to+"}}")
		var hints []string
		for _, d := range review.Check(s.Setup, &s.Readings) {
			if d.Code == review.CodeStandInColour {
				hints = append(hints, d.Hint)
			}
		}
		if len(hints) != 1 || !strings.HasPrefix(hints[0], c.want) {
			t.Errorf("%s offers %q, want %q", c.unit, hints, c.want)
		}
	}
}

// In a room a trace of every lamp comes back from the walls; a lamp that gives nothing but a trace
// is still told of.
func TestATraceIsNothing(t *testing.T) {
	s := lit(t, `
rooms: {den: {size: [5, 4]}, far: {at: [5.3, 0], size: [5, 4]}}
openings: {crack: {gap: den.right, width: 0.05, head: 0.1}}
people: {ada: {at: [2, 2], faces: 0}}
lights:
  key: {output: {candela: 1000, shape: uniform}, at: [2, 3.6], height: 1.6, aim: ada}
  lost: {output: {candela: 1000, shape: uniform}, at: [9, 3], height: 1.6, aim: up}
`)
	var lost bool
	for _, d := range review.Check(s.Setup, &s.Readings) {
		lost = lost || d.Code == review.CodeNoLight && strings.Contains(d.Message, "of 2 lost ")
	}
	if !lost {
		t.Error("the review says that a lamp behind a wall lights something")
	}
}

// The cautions name the lights that they are about, and hold for no others.
func TestCautions(t *testing.T) {
	s := lit(t, `
rooms: {den: {size: [5, 4]}}
openings: {w: {window: den.left, width: 1}}
lights:
  a: {unit: fresnel-tungsten-650, at: [1, 1], height: 1.5, aim: down}
  b: {unit: discharge-575, at: {opening: w, out: 2}, height: 1.8, aim: den.right}
  c: {output: {candela: 100, shape: uniform}, at: [2, 2], height: 2.2, aim: down, mount: {boom: 1, base: [3, 2]}}
`)
	var got []string
	for _, c := range review.Cautions(s.Setup) {
		got = append(got, c.Hazard+" "+strings.Join(c.Tags, ","))
	}
	want := "mains 1,2; overhead 3; heat 1,2; glass 2; weather 2"
	if strings.Join(got, "; ") != want {
		t.Errorf("got %s, want %s", strings.Join(got, "; "), want)
	}
}

// The caution of what hangs overhead begins at 2 m, of lights and of sheets alike, and that of the weather at the inside of the wall: found by halving.
func TestCautionsBegin(t *testing.T) {
	for _, c := range []struct {
		thing, hazard, tag string
		has, lacks, want   float64 // m
	}{
		{"lights: {a: {unit: led-panel-100, at: [2, 2], height: %.4f, aim: down}}", "overhead", "1", 2.3, 1.5, 2},
		{"grip: {g: {flag: [0.6, 0.6], at: [2, 2], height: %.4f, faces: 0}}", "overhead", "G1", 2.3, 1.5, 2},
		{"lights: {a: {unit: led-panel-100, at: [%.4f, 2], height: 1.5, aim: down}}", "weather", "1", 7, 3, 5},
		{"grip: {g: {flag: [0.6, 0.6], at: [%.4f, 2], height: 1.5, faces: 0}}", "weather", "G1", 7, 3, 5},
	} {
		told := func(at float64) bool {
			s := resolvedOnly(t, "rooms: {den: {size: [5, 4]}}\n"+fmt.Sprintf(c.thing, at)+"\n")
			return slices.ContainsFunc(review.Cautions(s), func(w review.Caution) bool { return w.Hazard == c.hazard && slices.Contains(w.Tags, c.tag) })
		}
		has, lacks := c.has, c.lacks
		if !told(has) || told(lacks) {
			t.Errorf("%s: told %v at %g and %v at %g", c.thing, told(has), has, told(lacks), lacks)
			continue
		}
		for math.Abs(has-lacks) > 2e-3 {
			if middle := (has + lacks) / 2; told(middle) {
				has = middle
			} else {
				lacks = middle
			}
		}
		if !(math.Abs(has-c.want) <= 0.005) {
			t.Errorf("%s: told from %g, want %g", c.thing, has, c.want)
		}
	}
}

// What was hot as it is touched between two set-ups is named, and what takes two people; what stays as it was is not.
func TestCautionsOfChanges(t *testing.T) {
	s := lit(t, `
rooms: {den: {size: [5, 4]}}
lights:
  a: {unit: fresnel-tungsten-650, at: [1, 1], height: 1.5, aim: down}
  b: {unit: fresnel-tungsten-650, at: [4, 3], height: 1.5, aim: down}
  c: {unit: led-tube-60, at: [2, 2], height: 2.2, aim: down, mount: {boom: 1, base: [3, 2]}}
`).Setup
	before := s.Remains()
	before.Lights = slices.Clone(s.Lights)
	before.Lights[0].Frame.At.X++
	before.Lights[2].Frame.At.X++
	s.Before = before
	for _, c := range review.Cautions(s) {
		if c.Hazard == "changing" && strings.Join(c.Tags, ",") == "1,3" {
			return
		}
	}
	t.Errorf("the cautions are %v", review.Cautions(s))
}

// What was assumed is named with the thing it was assumed for.
func TestAssumed(t *testing.T) {
	s := lit(t, "people: {ada: {at: [0, 0]}}\n")
	for _, d := range review.Assumed(s.Setup) {
		if d.Severity != source.Info || d.Code != review.CodeAssumed {
			t.Errorf("%+v is no note", d)
		}
		if d.Path == "people.ada" && d.Severity.String()+" "+d.Code+" "+d.Message == "info assumed assumed for ada: pose standing" {
			return
		}
	}
	t.Error("nothing says that ada stands")
}

// The light at a face, its colours and the reach of a stand are findings from where a hand computes it: N² = E S t / C with C = 340 (ISO 2720) at 1/50 s,
// a stop under or two over the working stop, both common practice; of a stand by what its entry in the kit says.
func TestWhereLitFindingsBegin(t *testing.T) {
	const face = "people: {ada: {at: [0, 0], faces: 180}}\n"
	const lamp = "lights: {k: {output: {candela: 3000, shape: uniform}, at: [0, -3], height: 1.6, aim: ada}}\n"
	const on = face + "exposure: {iso: 800, fps: 25, stop: T%f}\n" + lamp
	const stand = "lights: {k: {unit: led-panel-100, at: [0, 0], height: %f, aim: down, stand: light-stand}}\n"
	key := *lit(t, fmt.Sprintf(on, 2.8)).Readings.Named("ada.key").Lux
	right := math.Sqrt(key * 800 / 50 / 340) // the stop of the key side
	for _, c := range []struct {
		code, scene     string
		low, high, want float64
	}{
		{review.CodeKeyUnder, on, 1, 16, right * math.Sqrt2},
		{review.CodeKeyOver, on, 1, 16, right / 2},
		{review.CodeStandShort, stand, 2, 3.5, 2.6},
		{review.CodeStandTall, stand, 0.4, 1.5, 0.95 - 0.15},
	} {
		from, to := begins(t, c.scene, c.code, c.low, c.high)
		if c.want < math.Min(from, to)-2e-3 || c.want > math.Max(from, to)+2e-3 {
			t.Errorf("%s begins between %g and %g, want %g", c.code, from, to, c.want)
		}
	}
}
