package frame_test

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"scrimshaw/plan/frame"
)

// sighted is what camera A sees of a thing of a scene.
func sighted(t testing.TB, text, name string) frame.Sight {
	t.Helper()
	setup := laidOut(t, &staged{set: text})
	if setup == nil {
		t.Fatalf("a fault in\n%s", text)
	}
	for _, g := range frame.Judge(setup) {
		if g.Camera == "A" && g.Name == name {
			return g
		}
	}
	t.Fatalf("nobody looks at %s", name)
	return frame.Sight{}
}

// The set hides what is behind it: walls, furniture, people, curtains, frosted glass. Clear glass hides nothing, a doorway
// shows what is past it, one piece of equipment does not hide another, and nothing is seen by a mirror.
func TestTheSetHidesWhatIsBehindIt(t *testing.T) {
	const camera = "cameras: {A: {at: [0.5, 2], height: 1.4, looks: 90, lens: 35 mm}}\n"
	rooms := func(hole string) string {
		return camera + "rooms: {near: {size: [4, 4]}, far: {at: [4.2, 0], size: [4, 4]}}\n" + hole
	}
	const flag = "grip: {f: {flag: [0.4, 0.3], at: [6, 2], height: 1.4, faces: 270, mount: hand}}\n"
	const close = "grip: {f: {flag: [0.4, 0.3], at: [3.2, 2], height: 1.4, faces: 270, mount: hand}"
	for _, c := range []struct {
		name, scene   string
		shows, hidden bool
	}{
		{"in the open", camera + flag, true, false},
		{"behind a wall", rooms("") + flag, false, true},
		{"through a doorway", rooms("openings: {way: {gap: near.right, width: 1, head: 2.1}}\n") + flag, true, false},
		{"beside a doorway", rooms("openings: {way: {gap: near.right, along: 0.2, width: 0.6, head: 2.1}}\n") + flag, false, true},
		{"through glass", rooms("openings: {way: {window: near.right, width: 1.2}}\n") + flag, true, false},
		{"behind frosted glass", rooms("openings: {way: {window: near.right, width: 1.2, glass: glass-frosted}}\n") + flag, false, true},
		{"behind a shut door", rooms("openings: {way: {door: near.right, width: 1.2}}\n") + flag, false, true},
		{"behind a curtain", rooms("openings: {way: {window: near.right, width: 1.2, dressing: [{cloth: full-diffusion, drawn: [0.6, 0.6]}]}}\n") + flag, false, true},
		{"in the gap of a curtain", rooms("openings: {way: {window: near.right, width: 1.2, dressing: [{cloth: full-diffusion, drawn: [0.3, 0.3]}]}}\n") + flag, true, false},
		{"behind furniture", camera + close + "}\nfurniture: {box: {box: [0.6, 0.6, 1.8], at: [2, 2]}}\n", false, true},
		{"over furniture", camera + close + "}\nfurniture: {box: {box: [0.6, 0.6, 0.7], at: [2, 2]}}\n", true, false},
		{"behind somebody", camera + strings.Replace(close, "[0.4, 0.3]", "[0.1, 0.1]", 1) + "}\npeople: {ada: {at: [2, 2], faces: 270}}\n", false, true},
		{"behind a flag", camera + close + ", g: {flag: [2, 2], at: [2, 2], height: 1.4, faces: 270, mount: hand}}\n", true, false},
		{"in a mirror", camera + "rooms: {near: {size: [4, 4]}}\nfurniture: {glass: {mirror: [2, 2], at: {wall: near.right}, lift: 0.3}}\n" +
			"grip: {f: {flag: [0.4, 0.3], at: [0.2, 2.3], height: 1.4, faces: 90, mount: hand}}\n", false, false},
	} {
		if got := sighted(t, c.scene, "f"); got.Shows() != c.shows || got.Hidden != c.hidden {
			t.Errorf("%s: shows %v, hidden %v; want %v and %v", c.name, got.Shows(), got.Hidden, c.shows, c.hidden)
		}
	}
}

// A wall hides so much of a thing as it covers: half a flag behind the jamb of a doorway.
func TestAWallHidesItsPart(t *testing.T) {
	const scene = "rooms: {near: {size: [4, 4]}, far: {at: [4.2, 0], size: [4, 4]}}\nopenings: {way: {gap: near.right, along: %.6f, width: 1.5, head: 2.4}}\n" +
		"cameras: {A: {at: [0.5, 2], height: 1.4, looks: 90, lens: 35 mm}}\n" +
		"grip: {f: {flag: [0.4, 0.3], at: [6, 2], height: 1.4, faces: 270, mount: hand}}\n"
	whole := sighted(t, fmt.Sprintf(scene, 1.2), "f")
	half := sighted(t, fmt.Sprintf(scene, 2.0), "f") // from the left end, the upper on the sheet: its near edge lies on the axis
	if !(math.Abs(half.Share/whole.Share-0.5) <= 1e-9) {
		t.Errorf("half of the flag takes %.9f of what the whole does", half.Share/whole.Share)
	}
}

// What is meant to be in the picture is no finding, with what holds it where the scene says so; a lamp of the set is meant to,
// but for the stand that it is put on.
func TestWhatIsMeantToBeSeen(t *testing.T) {
	const scene = "cameras: {A: {at: [0, 0], height: 1.4, looks: 0, lens: 35 mm}, B: {at: [0.1, -3], height: 1.4, looks: 180, lens: 35 mm}}\nlights: {k: {unit: %s, at: [0, 3], height: 1.5, aim: 180%s}}\n"
	for _, c := range []struct {
		unit, more   string
		shows, meant bool
		parts        string
	}{
		{"led-panel-100", "", true, false, "[head stand]"},
		{"led-panel-100", ", role: motivation", true, false, "[head stand]"},
		{"led-panel-100", ", seen: true", false, true, "[]"},
		{"led-panel-100", ", seen: [A]", false, true, "[]"},
		{"led-panel-100", ", seen: A", false, true, "[]"},
		{"led-panel-100", ", seen: [B]", true, false, "[head stand]"},
		{"practical-table", "", false, true, "[]"},
		{"practical-table", ", mount: stand", true, true, "[stand]"},
		{"practical-table", ", mount: stand, seen: true", false, true, "[]"},
		{"practical-table", ", seen: false", true, false, "[head]"},
	} {
		got := sighted(t, fmt.Sprintf(scene, c.unit, c.more), "k")
		if got.Shows() != c.shows || got.Meant != c.meant || fmt.Sprint(got.Parts) != c.parts || c.meant && got.Shown == 0 {
			t.Errorf("%s%s: shows %v, meant %v, parts %v; want %v, %v, %s", c.unit, c.more, got.Shows(), got.Meant, got.Parts, c.shows, c.meant, c.parts)
		}
	}
}

// Where something shows is said by the edges that it reaches, else by thirds of the frame.
func TestWhereThingsShow(t *testing.T) {
	const scene = "cameras: {A: {at: [0, 0], height: 1.4, looks: 0, lens: 35 mm}}\ngrip: {f: {flag: [%s], at: [%.2f, 3], height: %.2f, faces: 180, mount: hand}}\n"
	for _, c := range []struct {
		size   string
		x, z   float64
		places string
	}{
		{"0.3, 0.2", -1.05, 1.4, "at the left edge"},
		{"0.3, 0.2", 1.05, 1.75, "at the right edge, high"},
		{"0.3, 0.2", 0, 2.0, "at the top edge"},
		{"0.3, 0.2", -0.6, 0.8, "at the bottom edge, to the left"},
		{"0.3, 0.2", 1.05, 0.8, "in the lower right corner"},
		{"0.3, 0.2", -1.05, 2.0, "in the upper left corner"},
		{"0.3, 0.2", 0, 1.4, "in the middle"},
		{"0.3, 0.2", 0.34, 1.4, "in the middle"}, {"0.3, 0.2", 0.37, 1.4, "on the right"}, // a third of half the frame is 0.356 m
		{"0.3, 0.2", -0.34, 1.4, "in the middle"}, {"0.3, 0.2", -0.37, 1.4, "on the left"},
		{"0.3, 0.2", 0, 1.59, "in the middle"}, {"0.3, 0.2", 0, 1.61, "in the upper middle"}, // of half its height 0.2 m
		{"0.3, 0.2", 0.7, 1.4, "on the right"},
		{"0.3, 0.2", 0, 1.75, "in the upper middle"},
		{"0.3, 0.2", -0.7, 1.1, "in the lower left"},
		{"0.3, 3", 1.05, 1.4, "at the right edge, from top to bottom"},
		{"4, 0.3", 0, 0.8, "at the bottom edge, right across"},
		{"4, 0.2", 0, 1.1, "right across the frame, in the lower part"},
		{"0.2, 3", 0.7, 1.4, "from top to bottom, on the right"},
		{"4, 3", 0, 1.4, "across the whole frame"},
	} {
		if got := sighted(t, fmt.Sprintf(scene, c.size, c.x, c.z), "f"); got.Where != c.places {
			t.Errorf("%s m at %g, %g shows %q, want %q", c.size, c.x, c.z, got.Where, c.places)
		}
	}
}

// A move goes through no wall and no furniture, and does not lift a lamp higher than its stand goes.
func TestMovesAreFree(t *testing.T) {
	const scene = "cameras: {A: {at: [2, 0.5], height: 1.4, looks: 0, lens: 35 mm}}\nrooms: {den: {size: [%s, 5]}}\n" +
		"grip: {f: {flag: [0.4, 2], at: [3.1, 4], height: 1.4, faces: 180, mount: hand}}\n%s"
	if got := sighted(t, fmt.Sprintf(scene, "6", ""), "f"); got.Move == nil || got.Move.Way != frame.Right {
		t.Errorf("with room to the right: %+v", got.Move)
	}
	if got := sighted(t, fmt.Sprintf(scene, "3.4", ""), "f"); got.Move != nil && got.Move.Way == frame.Right {
		t.Errorf("through a wall: %+v", got.Move)
	}
	if got := sighted(t, fmt.Sprintf(scene, "6", "furniture: {chest: {box: [0.3, 2, 2], at: [3.55, 4]}}\n"), "f"); got.Move != nil && got.Move.Way == frame.Right {
		t.Errorf("through a chest: %+v", got.Move)
	}
	const lamp = "cameras: {A: {at: [0, 0], height: 1, looks: {pan: 0, tilt: 20}, lens: 18 mm}}\nlights: {k: {output: {candela: 100, shape: uniform}, at: [0, 3], height: 2.55, stand: %s, aim: 0}}\n"
	if got := sighted(t, fmt.Sprintf(lamp, "light-stand"), "k"); got.Move != nil && got.Move.Way == frame.Up {
		t.Errorf("over the top of its stand: %+v", got.Move)
	}
}

// In feet a move is rounded up to half an inch, which no fault is left after.
func TestMovesAreRoundedInTheUnitsOfTheFile(t *testing.T) {
	const scene = "units: ft\ncameras: {A: {at: [0, 0], height: 4.5, looks: 0, lens: 35 mm}}\ngrip: {f: {flag: [1, 8], at: [3.3, 10], height: 4.5, faces: 180, mount: hand}}\n"
	got := sighted(t, scene, "f")
	want := 10*24.89/70 + 0.5 - 3.3 // ft
	if got.Move == nil || got.Move.Way != frame.Right || !(math.Abs(got.Move.Least/0.3048-want) <= 1e-3) {
		t.Fatalf("moved %+v, want %.4f ft to the right", got.Move, want)
	}
	if halves := got.Move.Metres / 0.0127; !(math.Abs(halves-math.Ceil(want*24)) <= 1e-6) {
		t.Errorf("moved %.4f half inches, want %g", halves, math.Ceil(want*24))
	}
}

// What is seen is the same each time.
func TestJudgingIsRepeatable(t *testing.T) {
	setup := laidOut(t, &staged{set: crowded(12, 40)})
	first := frame.Judge(setup)
	for range 3 {
		if again := frame.Judge(setup); !reflect.DeepEqual(first, again) {
			t.Fatal("a second look sees something else")
		}
	}
}

// A least change is the first after which nothing shows; after 95 % of it something does, though what comes and goes.
func TestTheLeastChange(t *testing.T) {
	if got, ok := frame.LeastThat(2, func(v float64) bool { return v < 0.731 }); !ok || !(math.Abs(got-0.731) <= 1e-5) {
		t.Errorf("%g, %v; want 0.731", got, ok)
	}
	behindAPost := func(v float64) bool { return v < 1.5 && (v < 0.40 || v > 0.52) }
	if got, ok := frame.LeastThat(2, behindAPost); !ok || !(math.Abs(got-0.40) <= 1e-5) {
		t.Errorf("%g, %v; want 0.40", got, ok)
	}
	if _, ok := frame.LeastThat(2, func(float64) bool { return true }); ok {
		t.Error("something is found where nothing is")
	}
}

// crowded is a hall with many lights and people.
func crowded(lights, people int) string {
	var b strings.Builder
	b.WriteString("rooms: {hall: {size: [60, 40], height: 5}}\ncameras: {A: {at: [30, 1], height: 1.6, looks: 0, lens: 25 mm}}\npeople:\n")
	for i := range people {
		fmt.Fprintf(&b, "  p%d: {at: [%.2f, %.2f], faces: 180}\n", i, 4+float64(i%25)*2.1, 12+float64(i/25)*1.2)
	}
	b.WriteString("lights:\n")
	for i := range lights {
		fmt.Fprintf(&b, "  l%d: {unit: fresnel-tungsten-650, at: [%.2f, %.2f], height: 2.4, aim: 180}\n", i, 6+float64(i%16)*3.1, 8+float64(i/16)*3.7)
	}
	return b.String()
}

// Judging is bounded: each light and each person is looked at once a step of the search.
func BenchmarkJudgeACrowd(b *testing.B) {
	setup := laidOut(b, &staged{set: crowded(128, 500)})
	if setup == nil {
		b.Fatal("the hall has a fault")
	}
	b.ReportAllocs()
	for b.Loop() {
		frame.Judge(setup)
	}
}
