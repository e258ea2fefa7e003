package pending_test

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// lit resolves a scene and computes its light.
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
	s, err := study.Run(t.Context(), setup, study.Options{Step: 0.5, Quality: light.Draft})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// struck lists what the readings of the meters, and the stops alone, are without.
func struck(s *study.Study) string {
	var all []string
	for i := range s.Readings.Readings {
		r := &s.Readings.Readings[i]
		if len(r.Uncomputed) == 0 || r.Person != "" && !strings.Contains(r.Name, ".dome.") && !strings.HasSuffix(r.Name, ".front") {
			continue
		}
		words := r.Name
		for _, u := range r.Uncomputed {
			words += " " + u.Path[strings.IndexByte(u.Path, '.')+1:]
			if !u.AltersLight() {
				words += " (stops)"
			}
		}
		all = append(all, words)
	}
	return strings.Join(all, "; ")
}

// Two rooms of one house with a door between them, and one that nothing leads to.
const house = `
rooms: {den: {size: [4, 3]}, hall: {at: [4.15, 0], size: [3, 3]}, cellar: {at: [9, 0], size: [2, 2]}}
meters: {d: {flat: [2, 1, 1], facing: up}, h: {flat: [5.5, 1.5, 1], facing: up}, c: {flat: [10, 1, 1], facing: up}, y: {flat: [2, -3, 1], facing: up}}
`

// The door is shut unless the scene has it ajar; the window of the den looks on the yard.
const (
	shutDoor = "openings: {door: {door: den.right}, w: {window: den.bottom, width: 2, KEY}}\n"
	openDoor = "openings: {door: {door: den.right, ajar: 90}, w: {window: den.bottom, width: 2, KEY}}\n"
)

func TestWhatIsStruck(t *testing.T) {
	inside := func(key string) string {
		return "lights: {k: {output: {candela: 100, shape: uniform}, at: [1, 2], height: 2, aim: down" + key + "}}\n"
	}
	open := func(doors, key string) string { return house + strings.Replace(doors, ", KEY", key, 1) }
	for _, c := range []struct{ name, scene, want string }{
		{"nothing written", open(shutDoor, "") + inside(""), ""},
		{"a lamp in a shut room with a window", open(shutDoor, "") + inside(", focus: 40 %"), "d k.focus; y k.focus"},
		{"a lamp, the door ajar", open(openDoor, "") + inside(", focus: 40 %"), "d k.focus; h k.focus; y k.focus"},
		{"a lamp that is out", open(openDoor, "") + inside(", focus: 40 %, level: 0 %"), ""},
		{"a silver board and a mirror", open(openDoor, "") + inside("") + "grip: {f: {silver: [1, 1], at: [1, 1], faces: down}}\n" +
			"furniture: {m: {mirror: [1, 1], at: {wall: hall.top}}}\n", ""},
		{"a view", open(openDoor, ", outside: {luminance: 800}") + inside(""), "d w.outside; h w.outside; y w.outside"},
		{"a computed frame, a curtain and gels", open(shutDoor, ", gels: [1/2 CTO], dressing: [{cloth: sheer}]") + inside("") +
			"grip: {f: {frame: [1, 1], at: [1, 1], faces: down, cloth: silk}}\n", ""},
		{"the sun", open(shutDoor, "") + inside("") + "site: {when: 2026-06-21 15:30, latitude: 59.9}\n", "d when; y when"},
		{"a moment at no latitude", open(shutDoor, "") + inside("") + "site: {when: 2026-06-21 15:30}\n", ""},
		{"a place without a moment", open(shutDoor, "") + inside("") + "site: {latitude: 59.9}\n", ""},
		{"haze", open(shutDoor, "") + inside("") + "haze: 0.02\n", "d haze; h haze; c haze; y haze"},
		{"a focus without figures", open(shutDoor, "") + "lights: {k: {unit: soft-panel-200, focus: flood, at: [1, 2], height: 2, aim: down}}\n",
			"d k.focus; y k.focus"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			if got := struck(lit(t, c.scene)); got != c.want {
				t.Errorf("got  %s\nwant %s", got, c.want)
			}
		})
	}
}

// Rooms that touch have no wall between them, and a reading in a doorway has part in both rooms.
func TestSpacesThatAreOne(t *testing.T) {
	const scene = `
rooms: {a: {size: [3, 3]}, b: {at: [3, 0], size: [3, 3]}, far: {at: [0, 3.15], size: [3, 3]}}
openings: {door: {door: a.top}}
meters: {m: {flat: [4, 1, 1], facing: up}, way: {flat: [1.5, 3.07, 1], facing: up}, f: {flat: [1, 5, 1], facing: up}}
lights: {k: {output: {candela: 100, shape: uniform}, at: [1, 1], height: 2, aim: down, focus: 40 %}}
`
	if got := struck(lit(t, scene)); got != "m k.focus; way k.focus" {
		t.Errorf("got %q", got)
	}
}

// A key on a light strikes what its light could come to; one that changes no light strikes nothing, and one that is computed neither.
func TestWhatIsOnALight(t *testing.T) {
	const scene = "meters: {lit: {flat: [0, 0, 2], facing: up}, away: {flat: [0, 0, 2], facing: down}}\n" +
		"lights: {a: {output: {candela: 100, shape: uniform}, at: [0, 0], height: 3, aim: down, KEY}, b: {output: {candela: 100, shape: uniform}, at: [1, 0], height: 0.5, aim: up}}\n"
	for key, want := range map[string]string{
		"focus: 40 %": "lit a.focus; away a.focus",
		"plays: fire": "",
		"diffusion: silk, seen: true, dimmer: pwm": "",
	} {
		if got := struck(lit(t, strings.Replace(scene, "KEY", key, 1))); got != want {
			t.Errorf("%s: got %s, want %s", key, got, want)
		}
	}
}

// A map is without what alters light anywhere on it; a light that is turned up later strikes it then.
func TestMapsAndLevels(t *testing.T) {
	s := lit(t, house+strings.Replace(shutDoor, ", KEY", "", 1)+
		"lights: {k: {unit: soft-panel-200, at: [1, 2], height: 2, aim: down, level: 0 %, focus: 40 %}}\nsheet: {plane: 0.75}\n")
	without := func() int {
		return len(s.Floor().Uncomputed) + len(s.Level().Uncomputed) + len(s.Readings.Named("d").Uncomputed)
	}
	if n := without(); n != 0 {
		t.Errorf("a lamp that is out strikes %d figures", n)
	}
	up := light.LevelsOf(s.Setup.Lights)
	up["k"] = s.Setup.Lights[0].Head.RelativeOutput(1)
	s.Relevel(up)
	if n := without(); n != 3 {
		t.Errorf("%d figures of 3 are struck once the lamp is up", n)
	}
}

// A wall has no part in what happens in another room.
func TestMapOfAWall(t *testing.T) {
	log := &source.Log{}
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	text := "scrimshaw: 1\n" + house + strings.Replace(shutDoor, ", KEY", "", 1) +
		"lights: {k: {output: {candela: 100, shape: uniform}, at: [1, 2], height: 2, aim: down, focus: 40 %}}\n"
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	setup := resolve.Resolve(document, document.Base(log), log)
	for wall, want := range map[string]int{"den.left": 1, "cellar.left": 0} {
		s, err := study.Run(t.Context(), setup, study.Options{Step: 0.5, Quality: light.Draft, Planes: []study.Plane{{Wall: wall}}})
		if err != nil {
			t.Fatal(err)
		}
		if got := len(wallField(t, s, wall).Uncomputed); got != want {
			t.Errorf("%s: %d keys, want %d", wall, got, want)
		}
	}
}

// wallField is the field on a wall by its name.
func wallField(t *testing.T, s *study.Study, name string) *study.Field {
	t.Helper()
	i := slices.IndexFunc(s.Fields, func(f study.Field) bool { return f.Kind == study.OnWall && f.Name == name })
	if i < 0 {
		t.Fatalf("no field on the wall %s", name)
	}
	return &s.Fields[i]
}
