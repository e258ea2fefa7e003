package section_test

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/day/change"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// dayOfThree are three set-ups, of which the last follows the first.
const dayOfThree = `scrimshaw: 1
rooms: {den: {size: [5, 4]}}
furniture: {chest: {box: [1, 0.5, 0.6], at: [0.8, 3.5]}}
people: {ada: {at: [2.5, 3]}}
cameras: {A: {at: [2.5, 0.5], lens: 32 mm}}
lights:
  one: {unit: fresnel-tungsten-650, at: [0.8, 0.8], height: 2, role: key, circuit: ring}
  two: {unit: fresnel-tungsten-650, at: [4.2, 0.8], height: 2}
grip: {sheet: {card: [1, 1], at: [4, 3], height: 1.5, faces: ada}}
circuits: {ring: {breaker: 16}, bath: {breaker: 10}}
setups:
  wide: {camera: A}
  close:
    camera: A
    after: wide
    change:
      cameras: {A: {lens: 75 mm}}
      exposure: {iso: 400}
      furniture: {chest: {turn: 90}}
      strike: [two]
      lights: {one: {at: [1.1, 0.8], level: 40 %, circuit: bath}, three: {unit: led-tube-60, at: [3, 2], height: 2}}
      grip: {sheet: {surface: black}}
  again: {camera: A, after: wide}
`

// changesToSecond are the cells of the list of changes of the second of two set-ups.
func changesToSecond(t *testing.T, scene string) (rows [][]string) {
	t.Helper()
	setups, log := fixture.SetupsOf(t, scene)
	if len(setups) != 2 {
		t.Fatal(log.All())
	}
	for _, list := range reportOf(section.Input{Setup: setups[1]}).Sections() {
		if strings.HasPrefix(list.Title, "Changes") {
			for _, e := range list.Tables[0].Entries {
				rows = append(rows, e.Cells)
			}
		}
	}
	return rows
}

// TestALevelGivesNoColourThatIsSet: where the lamp's own white is set to another, that line says it, and the level does not claim it.
func TestALevelGivesNoColourThatIsSet(t *testing.T) {
	var said []string
	for _, cells := range changesToSecond(t, "scrimshaw: 1\nexposure: {white: 5600 K}\nlights: {a: {unit: led-panel-100, at: [0, 0], height: 2, aim: down, colour: 5600 K}}\nsetups: {one: {}, two: {after: one, change: {lights: {a: {level: 40 %, colour: 3200 K}}}}}\n") {
		said = append(said, cells[len(cells)-1])
	}
	if want := []string{"level 40 %, was 100 %", "3200 K, was 5600 K"}; !slices.Equal(said, want) {
		t.Errorf("the changes are %q, want %q", said, want)
	}
}

// changesOf is the list of changes of each set-up that names ask for: its title, and its rows.
func changesOf(t *testing.T, names ...string) [][]string {
	t.Helper()
	setups, log := fixture.SetupsOf(t, dayOfThree, names...)
	if len(setups) == 0 {
		t.Fatal(log.All())
	}
	var all [][]string
	for _, s := range setups {
		var rows []string
		for _, list := range reportOf(section.Input{Setup: s}).Sections() {
			if strings.HasPrefix(list.Title, "Changes") {
				rows = append(append(rows, list.Title), list.Words...)
				for _, e := range list.Tables[0].Entries {
					rows = append(rows, strings.Join(e.Cells, ": "))
				}
			}
		}
		all = append(all, rows)
	}
	return all
}

// TestChangesAreToldFromTheSetupBefore: the first set-up of a day has none before it; of the others the sheet says what a
// crew does between that in the file and this, whichever it is written after, also where the one before is not drawn.
func TestChangesAreToldFromTheSetupBefore(t *testing.T) {
	close := []string{"Changes since wide", "10 changes: 1 strike, 1 set, 2 move, 1 fit, 1 cable, 1 level, 1 aim, 2 camera.",
		"□: 1, 2: off first: hot for about 10 min", "□: 2: struck", "□: chest: turned to 90°", "□: A: 75 mm, was 32 mm", "□: cameras: ISO 400, was 800; white 2870 K, was 3200 K",
		"□: 3: new: 0.6 m LED tube", "□: 1: moved 0.30 m", "□: G1: black, was white", "□: 1: circuit bath, was ring", "□: 1: level 40 %, was 100 %, gives 2870 K",
		"□: 1: at ada, 9° down, pan 34°"}
	again := []string{"Changes since close", "10 changes: 1 strike, 1 set, 2 move, 1 fit, 1 cable, 1 level, 1 aim, 2 camera.",
		"□: 1: off first: hot for about 10 min", "□: 3: struck", "□: chest: turned to 0°", "□: A: 32 mm, was 75 mm", "□: cameras: ISO 800, was 400; white 3200 K, was 2870 K",
		"□: 2: new: 650 W fresnel", "□: 1: moved 0.30 m", "□: G1: white, was black", "□: 1: circuit ring, was bath", "□: 1: level 100 %, was 40 %, gives 3200 K",
		"□: 1: at ada, 9° down, pan 39°"}
	for _, c := range []struct {
		names []string
		want  [][]string
	}{
		{nil, [][]string{nil, close, again}},
		{[]string{"close"}, [][]string{close}},
		{[]string{"again", "close"}, [][]string{again, close}},
	} {
		got := changesOf(t, c.names...)
		if !slices.EqualFunc(got, c.want, slices.Equal) {
			t.Errorf("of %v the changes are\n%q, want\n%q", c.names, got, c.want)
		}
	}
}

// TestChangesAreToldFromTheOneBeforeInTheFile where a set-up follows none, though the run does not draw that one.
func TestChangesAreToldFromTheOneBeforeInTheFile(t *testing.T) {
	const text = `scrimshaw: 1
people: {ada: {at: [2, 3]}}
cameras: {A: {at: [2, 0.5], lens: 32 mm}}
lights: {one: {unit: fresnel-tungsten-650, at: [0, 1], height: 2}}
setups:
  night: {camera: A, change: {lights: {one: {level: 10 %}}}}
  day: {camera: A, change: {lights: {one: {level: 50 %}}}}
`
	for _, names := range [][]string{{"night", "day"}, {"day"}} {
		setups, log := fixture.SetupsOf(t, text, names...)
		if len(setups) == 0 {
			t.Fatal(log.All())
		}
		list := sectionOf(t, section.Input{Setup: setups[len(setups)-1]}, "Changes since night")
		if got := list.Tables[0].Entries; len(got) != 2 || !strings.Contains(got[1].Cells[2], "level 50 %, was 10 %") {
			t.Errorf("asked for %v, the changes of the day are %+v", names, got)
		}
	}
}

// TestAccessoriesAreChanges: where a zoom stands, wire, leaves, gels and cloth are listed each by itself, and what stays is not.
func TestAccessoriesAreChanges(t *testing.T) {
	setups, log := fixture.SetupsOf(t, `scrimshaw: 1
people: {ada: {at: [2, 3]}}
cameras: {A: {at: [2, 0.5], lens: 32 mm}}
lights: {one: {unit: fresnel-tungsten-650, at: [0, 1], height: 2, barndoors: {top: 60}, gels: [1/4 CTB]}}
setups:
  wide: {camera: A}
  close: {camera: A, after: wide, change: {lights: {one: {focus: spot, scrims: [double], gels: [], diffusion: silk}}}}
`, "close")
	if len(setups) == 0 {
		t.Fatal(log.All())
	}
	list := sectionOf(t, section.Input{Setup: setups[0]}, "Changes since wide")
	got := told(list)
	for _, words := range []string{"spot, was flood", "double scrim, was none", "gels none, was 1/4 CTB", "diffusion silk, was none"} {
		if !strings.Contains(got, words) {
			t.Errorf("the changes are %q, without %q", got, words)
		}
	}
	if strings.Contains(got, "doors") {
		t.Errorf("the doors stay, and the changes are %q", got)
	}
}

// told are the rows of a list in one line.
func told(list *section.Section) string {
	var rows []string
	for _, e := range list.Tables[0].Entries {
		rows = append(rows, strings.Join(e.Cells, " "))
	}
	return strings.Join(rows, "; ")
}

// TestHalvesOfACurtain are told apart by their side, as seen from inside.
func TestHalvesOfACurtain(t *testing.T) {
	setups, log := fixture.SetupsOf(t, `scrimshaw: 1
rooms: {den: {size: [5, 4]}}
openings:
  w: {window: den.left, width: 1.2, dressing: [{cloth: sheer, drawn: [0.4, 0.5]}]}
  v: {window: den.top, width: 1.2, dressing: [{cloth: sheer}, {blind: 50 mm}]}
lights: {one: {unit: fresnel-tungsten-650, at: [1, 1], height: 2}}
`)
	if len(setups) == 0 {
		t.Fatal(log.All())
	}
	var got []string
	for _, e := range sectionOf(t, section.Input{Setup: setups[0]}, "Grip, in metres").Tables[0].Entries {
		got = append(got, e.Cells[0]+" "+e.Cells[1])
	}
	want := []string{"w curtain, sheer, left half", "w curtain, sheer, right half", "v curtain, sheer", "v blind, slats of 0.05 m at 0°"}
	if !slices.Equal(got, want) {
		t.Errorf("the list has %q, want %q", got, want)
	}
}

// TestCamerasComeAndGo: which camera rolls is a change, and none is struck for it.
func TestCamerasComeAndGo(t *testing.T) {
	setups, log := fixture.SetupsOf(t, `scrimshaw: 1
people: {ada: {at: [2, 3]}}
cameras: {A: {at: [2, 0.5], lens: 32 mm}, B: {at: [1, 0.5], lens: 32 mm}}
lights: {one: {unit: fresnel-tungsten-650, at: [0, 1], height: 2}}
setups: {wide: {camera: A}, other: {camera: B, after: wide, change: {people: {ada: {faces: A}}}}}
`)
	if len(setups) != 2 {
		t.Fatal(log.All())
	}
	var said []string
	for _, e := range sectionOf(t, section.Input{Setup: setups[1]}, "Changes since wide").Tables[0].Entries {
		said = append(said, strings.Join(e.Cells, ": "))
	}
	if want := []string{"□: B: comes in", "□: A: goes out"}; !slices.Equal(said, want) {
		t.Errorf("the changes are %q, want %q", said, want)
	}
}

// TestWindowsAreDressedBetweenSetups: a curtain that is hung, and a gel on the glass, are work for the crew.
func TestWindowsAreDressedBetweenSetups(t *testing.T) {
	setups, log := fixture.SetupsOf(t, `scrimshaw: 1
rooms: {den: {size: [5, 4]}}
openings: {bay: {window: den.top, along: 1, width: 2}}
people: {ada: {at: [2, 3]}}
cameras: {A: {at: [2, 0.5], lens: 32 mm}}
lights: {one: {unit: fresnel-tungsten-650, at: [1, 1], height: 2}}
setups: {day: {camera: A}, dusk: {camera: A, after: day, change: {openings: {bay: {gels: [1/2 CTO], dressing: [{cloth: sheer, drawn: [0, 0.8]}]}}}}}
`)
	if len(setups) != 2 {
		t.Fatal(log.All())
	}
	got := told(sectionOf(t, section.Input{Setup: setups[1]}, "Changes since day"))
	if want := "□ bay gels 1/2 CTO, was none; □ bay curtain, sheer 0.90 m, was none"; got != want {
		t.Errorf("the changes are %q, want %q", got, want)
	}
}

// TestAListSaysWhatALightIsFor: which lamp is the key is read from the list, with whose key it is.
func TestAListSaysWhatALightIsFor(t *testing.T) {
	setups, log := fixture.SetupsOf(t, dayOfThree, "wide")
	if len(setups) == 0 {
		t.Fatal(log.All())
	}
	notes := sectionOf(t, section.Input{Setup: setups[0]}, "Lights, in metres").Tables[0].Entries[0].Notes
	if !strings.HasPrefix(notes[0], "key; ") {
		t.Errorf("the notes of the key are %q", notes)
	}
	s, _ := fixture.SetupOf(t, `scrimshaw: 1
people: {ada: {at: [2, 3]}, noor: {at: [1, 3]}}
lights: {one: {unit: fresnel-tungsten-650, at: [0, 1], height: 2, role: {ada: key, noor: edge}}}
`)
	notes = sectionOf(t, section.Input{Setup: s}, "Lights, in metres").Tables[0].Entries[0].Notes
	if !strings.HasPrefix(notes[0], "key of ada, edge of noor; ") {
		t.Errorf("the notes of a light that is two people's are %q", notes)
	}
}

// TestMarksAndWalksChange: the list names tape that somebody lays anew, and a walk that leads another way.
func TestMarksAndWalksChange(t *testing.T) {
	const scene = `scrimshaw: 1
people:
  ada: {at: [2.5, 3], marks: {sit: {at: [1, 1]}, go: {at: [3, 1]}}, walk: [[0, 0], [2, 0]]}
  bo: {at: [4, 3]}
cameras: {A: {at: [2.5, 0.5], lens: 32 mm}}
setups:
  wide: {camera: A}
  close: {camera: A, after: wide, change: {people: {ada: {marks: {sit: {at: [1, 1.4]}, end: {at: [4, 1]}}, walk: [[0, 0], [2, 1]]}, bo: {walk: [[0, 0], [0, 2]]}}}}
`
	var rows []string
	for _, cells := range changesToSecond(t, scene) {
		rows = append(rows, strings.Join(cells, ": "))
	}
	if want := []string{"□: ada: walks another way", "□: bo: walks", "□: ada.sit: moved 0.40 m; faces 121°", "□: ada.end: new"}; !slices.Equal(rows, want) {
		t.Errorf("the changes are\n%q, want\n%q", rows, want)
	}
}

// TestAReverseSaysWhatStays: the changes of a reverse count from what it is of, and name what did not go across.
func TestAReverseSaysWhatStays(t *testing.T) {
	setups, log := fixture.SetupsOf(t, `scrimshaw: 1
people: {ada: {at: [1, 3], faces: noor}, noor: {at: [3, 3], faces: ada}}
line: [ada, noor]
cameras: {A: {at: {by: ada, toward: noor, turn: 20, distance: 2}, lens: 32 mm, looks: ada}}
lights:
  one: {unit: fresnel-tungsten-650, at: [0, 1], height: 2}
  two: {unit: fresnel-tungsten-650, at: {by: ada, toward: noor, turn: 30 left, distance: 1}, height: 2}
setups: {wide: {camera: A}, other: {reverse: {of: wide}}}
`)
	if len(setups) != 2 {
		t.Fatal(log.All())
	}
	list := sectionOf(t, section.Input{Setup: setups[1]}, "Changes since wide")
	if want := "Not across: 1 one stands in coordinates."; !slices.Contains(list.Words, want) {
		t.Errorf("the words are %q, want %q among them", list.Words, want)
	}
	aimed := false
	for _, e := range list.Tables[0].Entries {
		if e.Cells[1] == "1" {
			t.Errorf("what did not go across changes: %v", e.Cells)
		}
		aimed = aimed || e.Cells[1] == "2" && strings.HasPrefix(e.Cells[2], "at noor")
	}
	if !aimed {
		t.Errorf("the changes are %+v", list.Tables[0].Entries)
	}
}

// The sum says a single change without a rate in the singular.
func TestSumWordsOfOneWithoutARate(t *testing.T) {
	for unrated, want := range map[int]string{0: "rates", 1: ", without the 1 that has none", 2: ", without the 2 that have none"} {
		sum := change.Sum{Lines: 5, Minutes: 10, Unrated: unrated}
		if got := section.SumWords(&sum); !strings.HasSuffix(got, want) {
			t.Errorf("%d without a rate: %q, want it to end in %q", unrated, got, want)
		}
	}
}

// What is done at the board, dimmers, seats and steps are changes.
func TestTheBoardAndSeatsChange(t *testing.T) {
	setups, log := fixture.SetupsOf(t, `scrimshaw: 1
cameras: {A: {at: [2, 0.5], looks: 0, lens: 32 mm}}
furniture: {couch: {sofa: [2, 0.9, 0.8], at: [6, 6]}, flight: {stairs: [1, 2, 1.2], at: [9, 6]}}
lights:
  one: {unit: fresnel-tungsten-650, at: [0, 1], height: 2, dimmer: phase}
  two: {unit: fresnel-tungsten-650, at: [3, 1], height: 2, plays: fire}
cues: {q1: {at: dusk, over: 4 s, lights: {one: 50 %}}, q2: {lights: {two: off}}}
setups:
  wide: {camera: A}
  close:
    camera: A
    after: wide
    change:
      furniture: {couch: {seat: 0.5}, flight: {steps: 5}}
      lights: {one: {dimmer: none}, two: {plays: candle}}
    cues: {q1: {over: 2 s, lights: {one: 30 %}}, q2: strike, q3: {lights: {one: off}}}
  same: {camera: A, after: close}
`, "close", "same")
	if len(setups) != 2 {
		t.Fatal(log.All())
	}
	got := told(sectionOf(t, section.Input{Setup: setups[0]}, "Changes since wide"))
	for _, words := range []string{"seat 0.50 m, was 0.40 m", "5 steps, was 7 steps", "dimmer none, was phase", "candle", "over 2 s, was over 4 s", "1 one 30 %", "q2 struck", "q3 new"} {
		if !strings.Contains(got, words) {
			t.Errorf("the changes are %q, without %q", got, words)
		}
	}
	for _, s := range reportOf(section.Input{Setup: setups[1]}).Sections() {
		if strings.HasPrefix(s.Title, "Changes") && len(s.Tables) > 0 && len(s.Tables[0].Entries) > 0 {
			t.Errorf("a set-up that is the one before has changes: %q", told(s))
		}
	}
}
