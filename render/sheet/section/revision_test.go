package section_test

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/render/sheet/internal/fixture"
	"scrimshaw/render/sheet/section"
)

// onPaper is a scene with what a sheet says beside what a crew changes between set-ups.
const onPaper = `scrimshaw: 1
materials: {green: {reflectance: 30 %}}
rooms: {den: {size: [5, 4], walls: green}, loft: {at: [8, 0], size: [3, 3], height: 2.5}}
openings: {bay: {window: den.top, along: 1, width: 2}, hall: {door: den.right, along: 1}}
furniture: {couch: {sofa: [2, 0.9, 0.8], at: [1.5, 3.4], seat: 0.4}}
people: {ada: {at: [2.5, 2.4]}}
cameras: {A: {at: [2.5, 0.5], lens: 32 mm, room: 5 %}}
exposure: {white: 4300 K}
circuits: {ring: {breaker: 16}}
lights:
  one: {unit: led-panel-100, at: [0.8, 0.8], height: 2, role: key}
  two: {unit: fresnel-tungsten-650, at: [4.2, 0.8], height: 2}
meters: {desk: {flat: [4, 2, 0.8], facing: up}}
cues: {q1: {at: she sits, over: 4 s, lights: {one: 20 %}}}
setups:
  wide: {camera: A}
`

// revisedRows are the rows of the list of what was revised by a patch, each "tag | words".
func revisedRows(t *testing.T, patch string) (rows []string) {
	t.Helper()
	setups, log := fixture.SetupsOf(t, onPaper+"  next: {camera: A, after: wide, change: {"+patch+"}}\n")
	if len(setups) != 2 {
		t.Fatal(patch, log.All())
	}
	setups[1].Before = setups[0].Before
	for _, row := range section.SinceOf("A", setups[0], setups[1], nil).Rows(setups[1], section.Units{}) {
		rows = append(rows, row.Tag+" | "+row.Words)
	}
	return rows
}

// TestRevisionsAreSaidInWords: what a crew changes as a change says it, and all else with what it was.
func TestRevisionsAreSaidInWords(t *testing.T) {
	for patch, want := range map[string][]string{
		"lights: {one: {level: 70 %, note: low}}":                                          {"1 | one: level 70 %, was 100 %; note low, was none"},
		"lights: {one: {role: fill, plays: fire}}":                                         {"1 | one: plays fire from 50 % to 100 %, 4 /s, was none; role fill, was key"},
		"lights: {one: {seen: true, stands-for: two}}":                                     {"1 | one: seen in all pictures, was none; passes for two, was none"},
		"lights: {one: {dimmer: pwm}}":                                                     {"1 | one: dimmer pwm, was none"},
		"strike: [one]":                                                                    {"1 | one: struck: 100 W LED panel", "q1 | lights none, was one 20 %"},
		"lights: {three: {unit: led-tube-60, at: [3, 2], height: 2}}":                      {"3 | three: new: 0.6 m LED tube"},
		"lights: {one: {at: [1, 0.8]}}":                                                    {"1 | one: moved 0.20 m; at ada, 11° down, pan 45°"},
		"people: {ada: {at: [2.5, 2.6], height: 1.6}}":                                     {"1 | one: at ada, 12° down, pan 45°; follows ada", "2 | two: at ada, 12° down, pan 315°; follows ada", "A | height 1.49 m, was 1.59 m", "ada | moved 0.20 m; 1.60 m tall, eyes at 1.49 m, was 1.70 m tall, eyes at 1.59 m"},
		"openings: {bay: {along: 1.2, width: 1.8, sill: 1, head: 2.2, panes: [2, 2]}}":     {"bay | along 1.20 m, was 1.00 m; clear width 1.80 m, was 2.00 m; sill 1.00 m, was 0.90 m; head 2.20 m, was 2.10 m; panes 2 × 2, was 1 × 1"},
		"openings: {hall: {hinge: right, swing: in, ajar: 30, escape: true}}":              {"hall | 30°, was shut; hinge right, in, was left, in; escape a way out, was none"},
		"rooms: {loft: {at: [8.5, 0], size: [3.2, 3], height: 2.8, wall: 0.2, base: 0.1}}": {"loft | moved 0.50 m; floor at 0.10 m, was 0.00 m; 3.20 m × 3.00 m, was 3.00 m × 3.00 m; height 2.80 m, was 2.50 m; walls 0.20 m, was 0.15 m"},
		"rooms: {den: {walls: plaster}}":                                                   {"den | walls plaster, was green"},
		"materials: {green: {reflectance: 20 %}}":                                          {"green | returns 20 %, was 30 %"},
		"furniture: {couch: {seat: 0.35}}":                                                 {"couch | seat 0.35 m, was 0.40 m"},
		"cameras: {A: {room: 8 %}}":                                                        {"A | room about the frame 8 %, was 5 %"},
		"exposure: {constant: 300}":                                                        {"cameras | meter dome, C = 300, was dome, C = 340"},
		"meters: {desk: {flat: [4, 2.2, 0.8], facing: 90}}":                                {"desk | place 4.00 m, 2.20 m, 0.80 m, was 4.00 m, 2.00 m, 0.80 m; turned"},
		"cues: {q1: {at: she stands, over: 2 s, lights: {one: 10 %}}}":                     {"q1 | on she stands, was she sits; over 2 s, was over 4 s; lights one 10 %, was one 20 %"},
		"circuits: {ring: {breaker: 20, already: 100 W, at: [1, 1]}}":                      {"ring | breaker 20 A, was 16 A; on it already 100 W, was 0 W; outlet at 1.00 m, 1.00 m, was none"},
		"title: the den, site: {north: 30, ground: -0.2}, rates: {move: 4}, haze: 0.02":    {"scene | title the den, was none; north 30°, was 0°; ground -0.20 m, was 0.00 m; rates move 4 min, was none", "haze | asked for, and not computed"},
	} {
		if got := revisedRows(t, patch); !slices.Equal(got, want) {
			t.Errorf("%s\n says %q", patch, got)
		}
	}
}

// TestANewNumberIsOneLine: a light that is written before others moves their numbers up, and that is one line for all of them; what else is otherwise of one of
// these keeps its own.
func TestANewNumberIsOneLine(t *testing.T) {
	light := func(name string, more string) string {
		return name + ": {unit: led-panel-100, at: [1, 1], height: 2" + more + "}"
	}
	text := func(lights ...string) *plan.Setup {
		s, _ := fixture.SetupOf(t, "scrimshaw: 1\nrooms: {den: {size: [5, 4]}}\nlights: {"+strings.Join(lights, ", ")+"}\n")
		return s
	}
	was := text(light("a", ""), light("b", ""), light("c", ""), light("d", ""))
	for want, now := range map[string]*plan.Setup{
		"2 | new: new: 100 W LED panel; numbers | 3 to 5 were 2 to 4":                                 text(light("a", ""), light("new", ""), light("b", ""), light("c", ""), light("d", "")),
		"1 | b: level 50 %, was 100 %; numbers | 1 was 2, 2 was 1":                                    text(light("b", ", level: 50 %"), light("a", ""), light("c", ""), light("d", "")),
		"1 | new: new: 100 W LED panel; 4 | d: struck: 100 W LED panel; numbers | 2 to 4 were 1 to 3": text(light("new", ""), light("a", ""), light("b", ""), light("c", "")),
	} {
		var rows []string
		for _, row := range section.SinceOf("A", was, now, nil).Rows(now, section.Units{}) {
			rows = append(rows, row.Tag+" | "+row.Words)
		}
		if got := strings.Join(rows, "; "); got != want {
			t.Errorf("got %s\nwant %s", got, want)
		}
	}
}

// TestFiguresWithoutAKeyAreStruckInWhatWasRevised: a reading that a key could change which nothing computes is struck there as it is in the tables, whichever
// of the two sheets has the key, and no other is.
func TestFiguresWithoutAKeyAreStruckInWhatWasRevised(t *testing.T) {
	for _, c := range []struct {
		was, is []plan.Uncomputed
		without string
	}{
		{nil, []plan.Uncomputed{fixture.Filter}, "Struck figures are without filter of A."},
		{[]plan.Uncomputed{fixture.Scrims}, nil, "Struck figures are without scrims of 2 soft."},
		{nil, nil, ""},
	} {
		in := fixture.Example()
		was := slices.Clone(in.Readings)
		for i := range was {
			if was[i].Lux != nil {
				was[i].Lux = fixture.Number(4 * *was[i].Lux)
			}
		}
		in.Readings[3].Uncomputed, was[3].Uncomputed = c.is, c.was
		in.Since = section.SinceOf("A", in.Setup, in.Setup, was)
		struck, without := 0, []string(nil)
		for _, s := range (section.Report{In: &in}).Sections() {
			if s.Title == "Revised since A" {
				for i := range s.Tables[0].Entries {
					struck += len(s.Tables[0].Entries[i].Struck)
				}
				without = s.Without
			}
		}
		if want := section.NonEmpty(c.without); struck != len(want) || !slices.Equal(without, want) {
			t.Errorf("was %v, is %v: %d struck, %q", c.was, c.is, struck, without)
		}
	}
}
