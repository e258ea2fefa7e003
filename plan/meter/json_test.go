package meter

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/lens"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/shot"
	"scrimshaw/plan/term"
)

// told is a set in which everything has a figure of its own, so that none can stand for another, and beside it the same thing without.
func told() Set {
	keys := []plan.Uncomputed{uncomputed(scene.Later{Waits: "filters", Changes: scene.OwnStops}, "cameras.A.filter", "filter of A")}
	light := func(name string, lux float64) Reading {
		return Reading{Name: name, Lux: &lux, Over: stops(lux / 100), Uncomputed: keys}
	}
	best, worst := 0, 1
	return Set{
		Walks: []Walk{{Person: "ada", Length: 0.5, Courses: []Course{{Camera: "A", Working: 2.8, Best: &best, Worst: &worst, Off: []OffStop{{From: 0.25, To: 0.5, Over: stops(-1.5)}, {From: 9}}}, {}},
			Points: []WalkPoint{{At: r3.Vec{X: 7}, Facing: r3.Vec{Y: 1}, Side: "right", Contrast: contrastOf(8, 2), Left: light("l", 21), Right: light("r", 22), Domes: []Reading{light("d", 23)}}, {Along: 0.5, In: "desk"}}}},
		Tracks: []Track{{Camera: "A", Length: 3, Changes: []TrackChange{{Along: 1.25, Person: "ada", Size: shot.CloseUp}, {Along: 2, Person: "ada", From: FromLit}, {Along: 2.5}}}},
		Reflections: []Reflection{{Reflection: frame.Reflection{Camera: "A", In: "glass", Name: "2 key", Share: 0.03, Where: "left", Along: 1.5, Factor: 0.08, Glass: true}, Luminance: 500, Behind: 40, Surface: "wall"},
			{Reflection: frame.Reflection{In: "mirror", Factor: 0.9}, Luminance: 7, Behind: 8, Surface: "x"}, {Reflection: frame.Reflection{Glass: true}}},
		Flares: []Flare{{Glare: frame.Glare{Camera: "A", Light: "key", Along: 0.5, OffAxis: 40, OffFrame: 10, Shade: &frame.Shade{Side: frame.RightSide, Ahead: 0.4, Width: 0.6, Height: 0.3}}, Lux: 60, Uncomputed: keys}, {}},
		Flickers: []Flicker{{Camera: "A", At: "table", Worst: lens.Swing{Frames: 0.1, Rows: 0.2, Beat: 4}, Safe: &Steadying{Seconds: 0.02, Degrees: 172.8, FPS: 25},
			Lamps: []Pulsing{{Light: "tube", Ripple: lens.Ripple{Hertz: 100, Depth: 0.3}, Swing: lens.Swing{Frames: 0.4}}, {Ripple: lens.Ripple{Duty: 0.5}}}}, {Safe: &Steadying{FPS: 50}}, {}},
		Pictures: []Picture{{Camera: "A", Places: 576, Range: lens.Range{Over: 6}, Surfaces: []Surface{{Name: "rug", Through: "bay", Share: 0.4, Mean: stops(-1), Most: stops(2), Least: stops(-3), MostAt: "m", LeastAt: "l", Clipped: 0.05, Sunk: 0.06}, {}},
			Lamps: []LampSeen{{Light: "globe", Where: "left", Share: 0.01, Luminance: stops(900), Over: stops(5)}}, Beyond: []Beyond{{What: "rug", Sinks: true, Over: stops(-7), Share: 0.07}, {}}, Uncomputed: keys}},
		Lesson: &Lesson{Person: "ada", Camera: "A", Side: "left", Stops: stops(2), Ratio: stops(4), Uncomputed: keys, Lights: []LessonLight{{Light: "key", Tag: "1", Role: term.Key, Written: true, By: "wall", At: &r3.Vec{},
			Distance: 3, Turn: -40, FromNose: 35, Height: 30, Wide: 5, High: 6, Key: 100, Fill: 20, Back: 1}, {Light: "day", Distance: 9, Key: 7}},
			Sentences: []Sentence{{About: "ratio", Text: "four to one", Figures: []Figure{{"ratio", 4, "", "4 : 1"}}}, {}}},
		StandIns: []StandIn{{Light: "page", For: "1 desk", Unknown: "why", Faces: []Passing{{Person: "ada", Share: 0.3, Gap: &colour.Gap{Mired: 12, Duv: 0.001}, Whites: [2]colour.White{{Kelvin: 3000, Duv: 0.002}, {Kelvin: 3100}},
			Gels: Cure{Off: []string{"a"}, Gels: []string{"b"}, Left: &colour.Gap{Mired: 3}, Stops: 0.5}, Setting: &Cure{White: &kit.Setting{Kelvin: 2900, Duv: -0.003}}, Way: &Way{Angle: 10, Higher: 5, Right: stops(-4), Wide: 8, For: 9}}, {}}}},
		InHand: []InHand{{Light: "day", Up: 1, Down: stops(3), Wants: []Want{{Person: "ada", More: 0.4, Uncomputed: keys}, {Person: "bo", More: 2, Alone: true}}, Unit: &Class{Unit: "big", Watts: 700, Mass: 7, Level: 0.5, Mired: 2},
			Smallest: &Class{Unit: "small"}, OffColour: &Class{Unit: "other"}, Nearer: &Nearer{Metres: 0.4, Person: "ada", Stops: 0.6, Camera: "A"}}, {}},
		Cues: &Cues{Axis: CueAxis{Timed: true, End: 30, Start: []float64{5, 12}}, Curves: []Curve{{Person: "ada", Working: 4, Points: []CurvePoint{{Seconds: 5, Lux: 80, Over: stops(-1)}, {Seconds: 6}}}},
			States: []CueState{{}, {Cue: &plan.Cue{Name: "q1", At: "she sits", Seconds: stops(5), Over: 2}, Moves: []CueMove{{"day", "1 day", CueSetting{0.5, stops(3200)}, CueSetting{Level: 1}, true}},
				Readings: []CueReading{{light("ada.key", 31), "left", stops(1)}, {Reading: light("m", 32)}}}}},
		Played: []Played{{Light: "fire", Play: &plan.Play{Kind: term.Fire, Rate: 4}, Cue: "q1", Low: 0.2, High: 0.6, Readings: []PlayedReading{{light("m", 41), light("m", 42), light("m", 43)}}}, {Play: &plan.Play{}}},
		Faces:  []Face{{Person: "ada", Skin: &Tone{Key: stops(1), Fill: stops(-2)}, Views: []View{{Camera: "A", Behind: []Behind{{PictureLeft, "wall", 30, stops(-1), stops(-2)}, {}}, Catchlights: []Catchlight{{Light: "key", Hour: 10, Size: 0.1}, {}}}}}},
	}
}

// toldAs are the figures that told has, by where they stand in JSON.
const toldAs = `
walks.0: person ada, length 0.5
walks.0.courses.0: camera A, working 2.8, best 0, worst 0.5
walks.0.courses.0.off.0: from 0.25, to 0.5, over -1.5
walks.0.courses.0.off.1: over null
walks.0.courses.1: camera null, best null, worst null
walks.0.points.0: at.0 7, facing.1 1, in null, key right, stops 2, ratio 4, left.lux 21, right.lux 22, domes.0.lux 23, domes.0.camera A, uncomputed.0.key cameras.A.filter, uncomputed.1 -
walks.0.points.1: along 0.5, in desk, key null, stops null, ratio null, domes.0 -
tracks.0: camera A, length 3
tracks.0.changes.0: along 1.25, person ada, size close-up, from null
tracks.0.changes.1: size null, from lit
tracks.0.changes.2: person null
reflections.0: camera A, in glass, glass true, thing 2 key, share 0.03, where left, along 1.5, returns 0.08, luminance 500, behind 40, surface wall
reflections.1: returns null, luminance null, behind null, surface null
reflections.2: luminance null, behind 0, surface null
flares.0: camera A, light key, lux 60, along 0.5, offAxis 40, offFrame 10, shade.side right, shade.ahead 0.4, shade.width 0.6, shade.height 0.3, uncomputed.0.changes stops
flares.1: shade null
flickers.0: camera A, at table, worst.frames 0.1, worst.rows 0.2, worst.beat 4, safe.seconds 0.02, safe.degrees 172.8, safe.fps 25
flickers.0.lamps.0: light tube, hertz 100, depth 0.3, duty null, swing.frames 0.4
flickers.0.lamps.1: depth null, duty 0.5
flickers.1: safe.seconds null, safe.degrees null, safe.fps 50
flickers.2: safe null, at null
pictures.0: camera A, places 576, over 6, under null, unjudged.0 -, uncomputed.0.waits filters
pictures.0.surfaces.0: name rug, through bay, share 0.4, mean -1, most 2, least -3, mostAt m, leastAt l, clipped 0.05, sunk 0.06
pictures.0.surfaces.1: name null, through null, mean null, most null, least null
pictures.0.lamps.0: light globe, where left, share 0.01, luminance 900, over 5
pictures.0.beyond.0: what rug, sinks true, over -7, share 0.07
pictures.0.beyond.1: sinks false, over null
teach: person ada, camera A, missing null, key left, stops 2, ratio 4, uncomputed.0.key cameras.A.filter
teach.lights.0: light key, number 1, role key, written true, by wall, distance 3, turn -40, fromNose 35, height 30, wide 5, high 6, keySide 100, fillSide 20, back 1
teach.lights.1: light day, by null, distance null, turn null, fromNose null, height null, wide null, high null, keySide 7
teach.sentences.0: about ratio, text four to one, figures.0.name ratio, figures.0.value 4, figures.0.words 4 : 1
standIns.0: light page, standsFor 1 desk, unknown why
standIns.0.faces.0: person ada, share 0.3, gap.mired 12, gap.duv 0.001, whites.0.kelvin 3000, whites.0.duv 0.002, whites.1.kelvin 3100, passes true
standIns.0.faces.0.gels: off.0 a, gels.0 b, kelvin null, duv null, left.mired 3, stops 0.5
standIns.0.faces.0.setting: kelvin 2900, duv -0.003, left null, gels.0 -
standIns.0.faces.0.way: angle 10, higher 5, ownRight -4, width 8, widthFor 9
standIns.0.faces.1: gap null, whites.0 -, gels null, setting null, way null
inHand.0: light day, up 1, down 3, unit.unit big, unit.watts 700, unit.mass 7, unit.level 0.5, unit.mired 2, smallest.unit small, offColour.unit other
inHand.0.wants.0: person ada, more 0.4, uncomputed.0.key cameras.A.filter
inHand.0.wants.1: person bo, more null
inHand.0.nearer: metres 0.4, person ada, stops 0.6, camera A
inHand.1: down null, unit null, smallest null, offColour null, nearer null
cues.axis: timed true, end 30, start.0 5, start.1 12
cues.curves.0: person ada, working 4, points.0.seconds 5, points.0.lux 80, points.0.over -1, points.1.over null
cues.states.0: cue null, at null, seconds null, over 0
cues.states.1: cue q1, at she sits, seconds 5, over 2
cues.states.1.moves.0: light day, from.level 0.5, from.cct 3200, to.level 1, to.cct null
cues.states.1.readings.0: name ada.key, side left, lux 31, over 0.31, change 1, uncomputed.0.changes stops
cues.states.1.readings.1: name m, side null, change null
plays.0: light fire, kind fire, low 0.2, high 0.6, rate 4, cue q1, readings.0.name m, readings.0.low.lux 41, readings.0.mean.lux 42, readings.0.high.lux 43
plays.1: cue null, readings.0 -
contrasts.0: person ada, stops null, steadiness null, skin.key 1, skin.fill -2, clothes null
contrasts.0.cameras.0.behind.0: side camera left, surface wall, luminance 30, over -1, fromCheek -2
contrasts.0.cameras.0.behind.1: surface null, over null, fromCheek null
contrasts.0.cameras.0.catchlights.0: light key, hour 10, size 0.1
contrasts.0.cameras.0.catchlights.1: hour null`

// at is what stands at a path of a document; "-" nothing.
func at(document any, path string) string {
	for _, step := range strings.Split(path, ".") {
		switch d := document.(type) {
		case map[string]any:
			v, ok := d[step]
			if !ok {
				return "no key " + step
			}
			document = v
		case []any:
			i, err := strconv.Atoi(step)
			if err != nil || i >= len(d) {
				return "-"
			}
			document = d[i]
		default:
			return fmt.Sprintf("nothing in %v", document)
		}
	}
	if document == nil {
		return "null"
	}
	return fmt.Sprint(document)
}

// JSON gives each figure under a key of its own, and null for what has no meaning: never a nought that could be taken for one.
func TestJSONTellsWhatIsKnown(t *testing.T) {
	var b bytes.Buffer
	if err := WriteJSON(&b, []Set{told(), {}}); err != nil {
		t.Fatal(err)
	}
	var sets []any
	if err := json.Unmarshal(b.Bytes(), &sets); err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(strings.TrimSpace(toldAs), "\n") {
		where, figures, _ := strings.Cut(line, ": ")
		for _, f := range strings.Split(figures, ", ") {
			key, want, _ := strings.Cut(f, " ")
			if got := at(sets[0], where+"."+key); got != want {
				t.Errorf("%s.%s is %s, want %s", where, key, got, want)
			}
		}
	}
	for key, want := range map[string]string{"scene": "", "setup": "null", "readings": "[]", "walks": "[]", "tracks": "[]", "flickers": "[]", "teach": "null", "cues": "null", "plays": "[]", "standIns": "[]"} {
		if got := at(sets[1], key); got != want {
			t.Errorf("of an empty set %s is %q, want %q", key, got, want)
		}
	}
}
