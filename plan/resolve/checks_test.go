package resolve

import (
	"fmt"
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// A camera sees somebody, or the message names what stands between.
func TestCameraSees(t *testing.T) {
	const rooms = "rooms: {a: {size: [4, 3]}, b: {at: [4.15, 0], size: [3, 3]}}\n"
	const scene = "people: {p: {at: [2, 1.5], faces: 90}}\ncameras: {A: {at: [6, 1.4], lens: 35 mm}}\n"
	for _, c := range []struct{ name, scene, want string }{
		{"through a blank wall", rooms + scene,
			"warning camera-blocked A cannot see p: b.left stands between [move the camera to where it sees a person, or open a door or a gap on the way]"},
		{"through a shut door", rooms + scene + "openings: {d: {door: a.right, along: 1, width: 1}}",
			"warning camera-blocked A cannot see p: d stands between [move the camera to where it sees a person, or open a door or a gap on the way]"},
		{"through a gap", rooms + scene + "openings: {d: {gap: a.right, along: 1, width: 1}}", ""},
		{"one of two", rooms + "people: {p: {at: [2, 1.5], faces: 90}, q: {at: [5, 1.5], faces: 90}}\ncameras: {A: {at: [6, 1.4], lens: 35 mm}}\n", ""},
		{"neither of two", rooms + "people: {p: {at: [2, 1.5], faces: 90}, q: {at: [1, 1], faces: 90}}\ncameras: {A: {at: [6, 1.4], lens: 35 mm}}\n",
			"warning camera-blocked A cannot see anybody: b.left stands between [move the camera to where it sees a person, or open a door or a gap on the way]"},
		{"past furniture", rooms + scene + "openings: {d: {gap: a.right, along: 1, width: 1}}\nfurniture: {f: {box: [0.5, 0.5, 2], at: [3, 1.5]}}", ""},
		{"nobody is there", rooms + "cameras: {A: {at: [6, 1.4], lens: 35 mm, looks: 0}}", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := warned(t, c.scene); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// What reads nought or is seen by nobody is reported.
func TestSilence(t *testing.T) {
	const lamp = "lights: {k: {output: {candela: 9, shape: uniform}, at: [2, 2], height: 1.5}}"
	const room = "rooms: {a: {at: [1, 1], size: [3.6, 3.1], base: 0.5}}\n"
	for _, c := range []struct{ name, scene, want string }{
		{"a meter in the room", room + "meters: {m: {flat: [2, 2, 0.5]}}", ""},
		{"a meter outside", room + "meters: {m: {flat: [9, 2, 1]}}", "warning outside m reads outside every room [a lies from [1, 1] to [4.6, 4.1]]"},
		{"a meter under the floor", room + "meters: {m: {flat: [2, 2, 0]}}", "warning outside m reads 0.50 m under the floor of a [the floor is at 0.5]"},
		{"a meter over the ceiling", room + "meters: {m: {dome: [2, 2, 4]}}", "warning outside m reads 1.00 m over the ceiling of a [the ceiling is at 3]"},
		{"a meter in a doorway", room + "openings: {d: {gap: a.left, along: 1, width: 1}}\nmeters: {m: {flat: [0.95, 2.5, 1]}}", ""},
		{"a meter on open ground", "meters: {m: {flat: [9, 2, 1]}}", ""},
		{"a meter under the ground", "meters: {m: {flat: [9, 2, -1]}}", "warning outside m reads 1.00 m under the ground [measure height up from the ground]"},
		{"a person outside", room + "people: {p: {at: [7, 2], faces: 0}}", "info outside p stands outside every room [a lies from [1, 1] to [4.6, 4.1]]"},
		{"a camera outside", room + "cameras: {A: {at: [7, 2], looks: 0, lens: 35 mm}}", "info outside A stands outside every room [a lies from [1, 1] to [4.6, 4.1]]"},
		{"a slot", "rooms: {a: {size: [0.2, 3]}}", "warning room-narrow a is 0.20 m wide [bare numbers are metres; write 12 ft for feet]"},
		{"a lamp that is off", strings.Replace(lamp, "1.5}", "1.5, level: off}", 1), "warning all-dark every light of this set-up is struck or off [turn a light up, or keep one]"},
		{"no lamp at all", "people: {p: {at: [7, 2], faces: 0}}", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := found(t, c.scene, ""); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
	const struck = lamp + "\nsetups: {wide: {}, dark: {change: {lights: {k: strike}}}}"
	if got := found(t, struck, "wide"); got != "" {
		t.Error(got)
	}
	if got, want := found(t, struck, "dark"), "warning all-dark every light of this set-up is struck or off [turn a light up, or keep one]"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// found lists what resolving a set-up finds, but for notes of what is computed later.
func found(t *testing.T, text, setup string) string {
	t.Helper()
	var lines []string
	for _, line := range foundOf(t, text, setup) {
		if !strings.HasPrefix(line, openGround) { // which is so of each scene of a lamp or two
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n")
}

// openGround begins what is said of a scene without rooms.
const openGround = "info wind the scene has no rooms, so that all of it stands in the wind"

// What stands in a scene without rooms comes down in the wind, too; in a scene of feet its area is in those.
func TestOpenGround(t *testing.T) {
	const lamp = "lights: {k: {unit: led-point-60-bicolour, at: [3, 2], height: %s, aim: [9, 9, 1]}, m: {unit: discharge-1200, at: [9, 2], height: 2, aim: [3, 9, 1]%s}}\n"
	const frame = "{frame: frame-120x120, cloth: silk, at: [%d, 2], height: 2, faces: 90}"
	for _, c := range []struct{ scene, want string }{
		{fmt.Sprintf(lamp, "2", ""), openGround + "; 2 m comes down at 11.2 m/s, 1 k at 14.7 m/s [write rooms: where this is indoors]"},
		{fmt.Sprintf(lamp, "2", ", mount: {lift: 2}"), openGround + "; 2 m comes down at 12.5 m/s, 1 k at 14.7 m/s [write rooms: where this is indoors]"},
		{fmt.Sprintf("grip: {f: "+frame+", g: "+frame+"}", 2, 6), openGround + "; at which wind G1 f, G2 g come down is not computed: the scene names no stand [write rooms: where this is indoors]"},
		{"rooms: {den: {size: [1, 1], at: [30, 30]}}\nunits: ft\ngrip: {f: {frame: frame-120x120, cloth: silk, at: [9, 2], height: 8, faces: 90, stand: combo-stand}}",
			"warning wind G1 f shows 15.6 sq ft to the wind at 8'0\": with 23 kg on its foot a gust of 11 mph tips it by the sum, so it comes down at 7 mph [lower it, guy it, or put 108 kg more on its foot, to stand until 17 mph]"},
	} {
		if got := strings.Join(foundOf(t, c.scene, ""), "\n"); got != c.want {
			t.Errorf("got\n%s\nwant\n%s", got, c.want)
		}
	}
}

// foundOf is all that is found, one a line.
func foundOf(t *testing.T, text, setup string) (lines []string) {
	t.Helper()
	log := &source.Log{}
	doc := opened(t, text, log)
	Resolve(doc, doc.Scene(setup, log), log)
	for _, d := range log.All() {
		lines = append(lines, d.Severity.String()+" "+d.Code+" "+d.Message+" ["+d.Hint+"]")
	}
	return lines
}

// What a sheet cannot map is refused with the scene, not when it is drawn.
func TestSheetThatCannotBeDrawn(t *testing.T) {
	const scene = "rooms: {a: {size: [4, 4]}}\npeople: {p: {at: [2, 3], faces: 180}}\ncameras: {A: {at: [2, 1], lens: 35 mm}}\n"
	for _, c := range []struct{ sheet, want string }{
		{"plane: 0.75", ""},
		{"plane: 9", "error plane no plane can be mapped at 9.00 m: no room is so high; the highest room has 2.50 m []"},
		{"plane: -1", "error out-of-range a plane is 0 m to 100 m, and \"-1\" is not [did you mean 1?]"},
		{"plane: 0.75, field: face", "error plane a sheet has one map: the plane, or the domes at face height [leave out plane, or field: face]"},
		{"field: face", ""},
		{"scale: '1:33'", "error bad-value \"1:33\" is not a scale that rules are made for [did you mean 1:25?]"},
		{"scale: '1/4\"'", ""},
		{"date: 1/3/2026", "error bad-value a date is written like 2031-05-14, and \"1/3/2026\" is not [write it like 2026-03-01]"},
		{"date: 2026-03-01", ""},
	} {
		if got := found(t, scene+"sheet: {"+c.sheet+"}", ""); got != c.want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c.sheet, got, c.want)
		}
	}
	if got, want := found(t, "sheet: {field: face}", ""), "error plane the map of domes at face height needs a person and a camera, and the scene lacks one of them [field: floor]"; got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

// The review names a lamp before one of two mirrors that face each other, and none by mirrors that hang side by side, behind both,
// or with a wall between the two, unless a gap in it lets some of one see some of the other.
func TestTwoMirrorsAreTold(t *testing.T) {
	const den = "rooms: {den: {size: [5, 4]}, far: {at: [5.15, 0], size: [3, 4]}}\nlights: {k: {unit: led-panel-100, at: %s, height: 1.5, aim: 0}}\nfurniture: {a: {mirror: [1, 1], at: {wall: den.left, along: 2}}, b: {mirror: [1, 1], at: {wall: %s, along: 3.4}}}\n"
	const gap = "openings: {g: {gap: den.right, along: 2.8, width: 0.3}}\n"
	const told = "info two-mirrors the light of 1 k over a and b, one after the other, is not counted: of lamps one mirror is [turn one of the two away from the other where that light matters]"
	for _, c := range []struct{ at, wall, more, want string }{
		{"[2, 2]", "den.right", "", told}, {"[2, 2]", "den.left", "", ""}, {"[-2, 2]", "den.left", "", ""},
		{"[2, 2]", "far.right", "", ""}, {"[2, 2]", "far.right", gap, told},
	} {
		var told []string
		for line := range strings.Lines(found(t, fmt.Sprintf(den, c.at, c.wall)+c.more, "")) {
			if strings.Contains(line, "two-mirrors") {
				told = append(told, strings.TrimSpace(line))
			}
		}
		if got := strings.Join(told, "\n"); got != c.want {
			t.Errorf("%s %s: got\n%s\nwant\n%s", c.wall, c.more, got, c.want)
		}
	}
}

// Heat is reported with its figure: in a shade or a box that is not made for it, on cloth and on glass.
func TestHeat(t *testing.T) {
	const den = "rooms: {den: {size: [5, 4]}}\nopenings: {w: {window: den.left, width: 1.5}}\n"
	for _, c := range []struct{ name, scene, want string }{
		{"a bulb in its own shade", "lights: {l: {unit: practical-table, at: [1, 1], height: 1}}", ""},
		{"a bulb that is too strong", "lights: {l: {unit: practical-table, at: [1, 1], height: 1, bulb: tungsten-100}}",
			"warning too-hot 1 l has a bulb of 100 W in its shade 0.3 m, which is made for 60 W [take a bulb of 60 W or less, or one of LEDs]"},
		{"an LED bulb as bright", "lights: {l: {unit: practical-table, at: [1, 1], height: 1, bulb: led-1521}}", ""},
		{"a shade that stands more", "lights: {l: {unit: practical-table, at: [1, 1], height: 1, bulb: tungsten-100, shade: {most-power: 100 W}}}", ""},
		{"a box on a 2 kW head", "lights: {k: {unit: open-tungsten-2000, modifier: softbox-90, at: [2, 2], aim: down}}",
			"warning too-hot 1 k has 2000 W behind its softbox 0.9 m, which stands the heat of 1000 W [take one that is made for more, or a cooler head]"},
		{"a box on a cool head", "lights: {k: {unit: led-point-600-bicolour, modifier: softbox-90, at: [2, 2], aim: down}}", ""},
		{"a frame too near", "lights: {k: {unit: fresnel-tungsten-2000, at: [2, 1], height: 1.5, aim: 0}}\ngrip: {f: {frame: [1, 1], cloth: silk, at: [2, 1.4], height: 1.5, faces: 180}}",
			"warning heat 1 k puts 4.4 kW/m² on frame G1 f from 0.40 m, and cloth scorches from 1 [move it to 0.90 m from there, widen its beam, or dim it]"},
		{"a frame too near once a cue brings the lamp up", "lights: {k: {unit: fresnel-tungsten-2000, at: [2, 1], height: 1.5, aim: 0, level: off}}\ngrip: {f: {frame: [1, 1], cloth: silk, at: [2, 1.4], height: 1.5, faces: 180}}\n" +
			"cues: {q1: {over: 2 s, lights: {k: 100 %}}, q2: {over: 2 s, lights: {k: off}}}",
			"warning heat 1 k puts 4.4 kW/m² on frame G1 f from 0.40 m, and cloth scorches from 1 [move it to 0.90 m from there, widen its beam, or dim it]"},
		{"a bulb that is too strong once a cue brings it up", "lights: {l: {unit: practical-table, at: [1, 1], height: 1, bulb: tungsten-100, level: off}}\ncues: {q1: {lights: {l: 40 %}}}",
			"warning too-hot 1 l has a bulb of 100 W in its shade 0.3 m, which is made for 60 W [take a bulb of 60 W or less, or one of LEDs]"},
		{"a frame farther off", "lights: {k: {unit: fresnel-tungsten-2000, at: [2, 1], height: 1.5, aim: 0}}\ngrip: {f: {frame: [1, 1], cloth: silk, at: [2, 2], height: 1.5, faces: 180}}", ""},
		{"a frame by a cool head", "lights: {k: {unit: led-panel-100, at: [2, 1], height: 1.5, aim: 0}}\ngrip: {f: {frame: [1, 1], cloth: silk, at: [2, 1.2], height: 1.5, faces: 180}}", ""},
		{"a pane too near", den + "lights: {k: {unit: fresnel-tungsten-2000, at: {opening: w, out: 0.3}, height: 1.5, aim: 90}}",
			"warning heat 1 k puts 5 kW/m² on the glass of w from 0.37 m, and panes crack from 3.4 [move it to 0.50 m from there, widen its beam, or dim it]"},
		{"a bulb on its mains", "circuits: {a: {breaker: 16}}\nlights: {l: {unit: practical-table, at: [1, 1], height: 1}}", ""},
		{"a bulb on half its mains", "circuits: {a: {breaker: 16, volts: 120}}\nlights: {l: {unit: practical-table, at: [1, 1], height: 1}}",
			"warning wrong-mains 1 l has a bulb for 230 V on a circuit of 120 V, where it gives 11 % of its light, and that redder [put one in that is made for 120 V; `scrimshaw kit bulbs` lists some]"},
		{"a bulb on twice its mains", "circuits: {a: {breaker: 16, hertz: 60}, b: {breaker: 16}}\nlights: {l: {unit: practical-table, at: [1, 1], height: 1, bulb: tungsten-60-120v, circuit: b}}",
			"warning wrong-mains 1 l has a bulb for 120 V on a circuit of 230 V, where it fails or burns out [put one in that is made for 230 V; `scrimshaw kit bulbs` lists some]"},
		{"a bulb for those mains", "circuits: {a: {breaker: 16, hertz: 60}, b: {breaker: 16}}\nlights: {l: {unit: practical-table, at: [1, 1], height: 1, bulb: tungsten-60-120v, circuit: a}}", ""},
		{"a bulb that takes any", "circuits: {a: {breaker: 16, volts: 120}}\nlights: {l: {unit: practical-desk, at: [1, 1], height: 1}}", ""},
		{"nobody says which circuit", "circuits: {a: {breaker: 16, hertz: 60}, b: {breaker: 16}}\nlights: {l: {unit: practical-table, at: [1, 1], height: 1}}", ""},
		{"a battery of some voltage", "circuits: {a: {breaker: 16, kind: battery}}\nlights: {l: {unit: practical-table, at: [1, 1], height: 1}}", ""},
		{"a ballast for other mains", "circuits: {a: {breaker: 16, volts: 120}}\nlights: {k: {unit: discharge-575-magnetic, at: [2, 2], height: 1.5, aim: 0}}",
			"warning wrong-mains 1 k takes mains of 220 to 240 V, and its circuit has 120 V [put it on another circuit, or take a unit for those mains]"},
		{"on batteries, too bright", "circuits: {b: {item: battery-48v-600}}\nlights: {k: {unit: led-point-600-daylight, at: [0, 0], height: 2, aim: down, level: 51 %, circuit: b}}\n",
			"warning wrong-mains 1 k gives 50 % of its light at most on batteries of 48 V, and is at 51 % [write level: 50 % or less, or feed it from mains]"},
		{"on batteries", "circuits: {b: {item: battery-48v-600}}\nlights: {k: {unit: led-point-600-daylight, at: [0, 0], height: 2, aim: down, level: 50 %, circuit: b}}\n", ""},
		{"a pane far enough", den + "lights: {k: {unit: fresnel-tungsten-2000, at: {opening: w, out: 1}, height: 1.5, aim: 90}}", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			var told []string
			for line := range strings.Lines(found(t, c.scene, "")) {
				if strings.Contains(line, " too-hot ") || strings.Contains(line, " heat ") || strings.Contains(line, " wrong-mains ") || strings.HasPrefix(line, "error") {
					told = append(told, strings.TrimSpace(line))
				}
			}
			if got := strings.Join(told, "\n"); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}
