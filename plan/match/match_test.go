package match_test

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/match"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/plan/term"
)

// den is a room with a key, a fill and a light behind; a case writes what its second set-up changes. Invented.
const den = `scrimshaw: 1
exposure: {iso: 800, fps: 24, shutter: 1/48, stop: T2.8, white: 4300 K, meter: dome}
rooms: {den: {size: [6, 5], height: 3}}
people: {ada: {at: [3, 2.5], faces: A}, ben: {at: [4.6, 3.4], faces: ada}}
cameras: {A: {at: [3, 0.4], looks: ada, lens: 35 mm}, B: {at: [1, 0.6], looks: ada, lens: 50 mm}}
lights:
  key: {unit: soft-panel-200, at: {by: ada, toward: A, turn: 45 camera-left, distance: 2}, height: 2.1, level: 40 %, colour: 4300 K, role: key}
  fill: {unit: soft-panel-200, at: {by: ada, toward: A, turn: 50 camera-right, distance: 2.3}, height: 1.8, level: 8 %, colour: 4300 K, role: fill}
  back: {unit: fresnel-tungsten-650, at: [4.5, 4.4], height: 2.5, aim: ada}
`

// bulb is a lamp near ada, which is off, with a bulb that no dial takes far down.
const bulb = "lights: {lamp: {unit: practical-table, at: [2.7, 2.1], height: 1.3, bulb: led-1521, level: 0 %}}"

// Lights for a first set-up: one that lights the wall behind ada, and one that is near her on the side of the key.
const (
	wash = "lights: {wash: {unit: soft-panel-200, at: [3, 3.6], height: 2.4, aim: [3, 5, 1.5], level: 40 %, colour: 4300 K}}"
	near = "lights: {key: {level: 40 %}, near: {unit: soft-panel-200, at: {by: ada, toward: A, turn: 45 camera-left, distance: 0.45}, height: 1.7, level: 0.5 %, colour: 4300 K}}"
)

// looksOf lights the set-ups of a scene, or those named, and gives the looks of each.
func looksOf(t *testing.T, text string, names ...string) (looks [][]match.Look) {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	err = resolve.Each(doc, names, log, func(s *plan.Setup) error {
		lit, err := study.Run(context.Background(), s, study.Options{ReadingsOnly: true, Quality: light.Draft, AroundHeads: true})
		if err != nil {
			return err
		}
		of := match.Lit{Setup: s, Basis: lit.Basis, Levels: lit.Levels, Readings: &lit.Readings}
		of.AroundBasis, of.Around = lit.Around()
		looks = append(looks, of.Looks())
		return nil
	})
	if err != nil || log.Failed() {
		t.Fatal(err, log.All(), text)
	}
	return looks
}

// look is the look of a face to a camera.
func look(t *testing.T, all []match.Look, person, camera string) *match.Look {
	t.Helper()
	for i := range all {
		if all[i].Person == person && all[i].Camera == camera {
			return &all[i]
		}
	}
	t.Fatalf("%s is not seen by %s", person, camera)
	return nil
}

// written is a fix as a set-up after the second one; wears is what lamps have already.
func written(f *match.Mend, wears map[string]string) string {
	var lights []string
	for _, c := range f.Changes {
		keys := []string{fmt.Sprintf("level: %.4f %%", 100*c.Level)}
		if c.White != nil {
			keys = append(keys, fmt.Sprintf("colour: %.0f K", c.White.Kelvin), fmt.Sprintf("tint: %.4f", c.White.Duv))
		}
		if len(c.Gels) > 0 {
			keys = append(keys, "gels: ["+strings.Join(append(strings.FieldsFunc(wears[c.Light], func(r rune) bool { return r == ',' }), c.Gels...), ", ")+"]")
		}
		if c.Bare {
			keys = append(keys, "gels: []")
		}
		if len(c.Scrims) > 0 {
			keys = append(keys, "scrims: ["+strings.Join(term.Words(c.Scrims), ", ")+"]")
		}
		lights = append(lights, c.Light+": {"+strings.Join(keys, ", ")+"}")
	}
	return "  three: {after: two, change: {lights: {" + strings.Join(lights, ", ") + "}}}\n"
}

// A fill side without any light is no reason to leave the key side as it is: in the open, by the level and by the white of a lone lamp.
func TestFixOfADarkFillSide(t *testing.T) {
	const open = `scrimshaw: 1
exposure: {stop: T2.8, white: 4300 K, meter: flat}
people: {ada: {at: [3, 2.5], faces: A}}
cameras: {A: {at: [3, 0.4], looks: ada, lens: 35 mm}}
lights: {key: {unit: led-point-300-bicolour, at: [-2, 3.2], height: 1.6, aim: ada, colour: 4300 K, level: 80 %}}
setups: {one: {}, two: {after: one, change: {lights: {key: {CHANGE}}}}}
`
	for change, want := range map[string]string{"level: 20 %": "1 key: level 80 %, was 20 %", "colour: 5600 K": "1 key: set it to 4300 K"} {
		looks := looksOf(t, strings.Replace(open, "CHANGE", change, 1))
		from, is := look(t, looks[0], "ada", "A"), look(t, looks[1], "ada", "A")
		fix := is.MendTo(from, looks[1])
		if is.Figures[match.Fill] != nil || fix == nil || len(fix.Changes) != 1 || fix.Changes[0].Words() != want {
			t.Errorf("%s: %+v, want %s", change, fix, want)
		}
	}
}

// TestTurned: a profile says which cheek the camera sees, and not on which side of the picture the key is; beside it counts from which side of the face a camera looks.
func TestTurned(t *testing.T) {
	far := match.Look{Side: meter.TurnedAway, From: meter.FromShadow}
	near := match.Look{Side: meter.TurnedTo, From: meter.FromLit}
	look := func(side meter.Side, from meter.Lean) match.Look { return match.Look{Side: side, From: from} }
	for _, c := range []struct {
		is, from match.Look
		turned   bool
	}{
		{far, far, false}, {near, far, true}, {match.Look{}, far, false}, {far, match.Look{}, false},
		{look(meter.PictureRight, meter.FromShadow), far, false}, {look(meter.PictureLeft, meter.FromShadow), far, false}, {look(meter.PictureLeft, meter.FromLit), far, true},
		{look(meter.PictureLeft, meter.FromLit), near, false}, {look(meter.PictureLeft, meter.FromShadow), near, true},
		{near, look(meter.PictureLeft, meter.FromShadow), true}, {look(meter.PictureLeft, meter.FromFront), near, false}, {look(meter.PictureLeft, meter.FromBehind), far, false},
		{look(meter.PictureLeft, meter.FromShadow), look(meter.PictureRight, meter.FromShadow), true}, {look(meter.PictureLeft, meter.FromLit), look(meter.PictureLeft, meter.FromShadow), false},
	} {
		if got := c.is.Turned(&c.from); got != c.turned {
			t.Errorf("%+v %+v beside %+v %+v is turned: %v", c.is.Side, c.is.From, c.from.Side, c.from.From, got)
		}
	}
}

// A fix does what it says: written into the scene and lit again, the rows that it closes lie within what passes, and where it says that they then lie.
func TestFixCloses(t *testing.T) {
	for name, c := range map[string]struct {
		base, change string
		person       string
		camera       string
		want         string // the light and what is done to it, or "" for no fix
		back         back   // the lights that change, where they can be set back to what they were; others do not
		wears        map[string]string
		all          bool // whether it closes all that the lights decide
		around       bool // and all that lies around the face
	}{
		"nothing changes":      {change: "lights: {key: {level: 41 %}}"},
		"a key too bright":     {change: "lights: {key: {level: 80 %}}", want: "level", back: back{"key": {40, 0}}, all: true},
		"several heads as one": {base: "lights: {key: {count: 2}}", change: "lights: {key: {level: 20 %}}", want: "level", back: back{"key": {40, 0}}, all: true},
		"a lamp in cloth":      {base: "lights: {key: {diffusion: half-diffusion}}", change: "lights: {key: {level: 90 %}}", want: "level", back: back{"key": {40, 0}}, all: true},
		"light from outside": {base: "openings: {w: {window: den.left, width: 1.4}}, lights: {key: {unit: led-point-600-bicolour, at: {opening: w, out: 1.5}, height: 1.8, aim: ada, level: 80 %}}",
			change: "lights: {key: {level: 30 %}}", want: "level", back: back{"key": {80, 0}}, all: true},
		"both too dim":                 {change: "lights: {key: {level: 12 %}, fill: {level: 2.4 %}}", want: "level", back: back{"key": {40, 0}, "fill": {8, 0}}, all: true},
		"a fill off":                   {change: "lights: {fill: {level: 0.5 %}}", want: "level", back: back{"fill": {8, 0}}},
		"a key at another white":       {change: "lights: {key: {colour: 5600 K}}", want: "set it to", back: back{"key": {40, 4300}}, all: true},
		"the camera at another white":  {change: "exposure: {white: 5600 K}", want: "set it to"},
		"the camera at another stop":   {change: "exposure: {stop: T4}", want: "level", back: back{"key": {80, 0}, "fill": {16, 0}}, all: true},
		"a key nearer":                 {change: "lights: {key: {at: {by: ada, toward: A, turn: 45 camera-left, distance: 1.3}}}", want: "level", all: true},
		"a key under a gel":            {change: "lights: {key: {gels: [1/2 CTO]}}", want: "take its gels off", back: back{"key": {40, 0}}, all: true},
		"as the other camera sees it":  {change: "lights: {key: {level: 90 %}}", camera: "B", want: "level", back: back{"key": {40, 0}}, all: true},
		"somebody beside":              {change: "lights: {key: {level: 100 %}}", person: "ben", want: "level", back: back{"key": {40, 0}}},
		"a lamp that was off":          {base: bulb, change: "lights: {lamp: {level: 60 %}}", want: "4 lamp: off, was 60 %", back: back{"lamp": {}}, all: true},
		"a lamp that was dimmed":       {base: strings.Replace(bulb, "level: 0 %", "level: 12 %", 1), change: "lights: {lamp: {level: 100 %}}", want: "4 lamp: level", back: back{"lamp": {12, 0}}, all: true},
		"a head that does not dim":     {base: "lights: {key: {unit: discharge-575-magnetic, colour: 5600 K, level: 100 %}}", change: "lights: {key: {at: {by: ada, toward: A, turn: 45 camera-left, distance: 1.2}}}", want: "scrim"},
		"daylight where tungsten was":  {base: "lights: {key: {unit: fresnel-tungsten-650, colour: 3200 K, level: 100 %}}", change: "lights: {key: {gels: [full CTB]}}", want: "take its gels off", back: back{"key": {100, 0}}, all: true},
		"what stands behind":           {base: wash, change: "lights: {wash: {level: 12 %}}", want: "4 wash: level", back: back{"wash": {40, 0}}, all: true, around: true},
		"behind, and the face":         {base: wash, change: "lights: {wash: {level: 12 %}, key: {level: 80 %}}", want: "4 wash: level", back: back{"key": {40, 0}, "wash": {40, 0}}, all: true, around: true},
		"a near light and a far one":   {base: near, change: "lights: {key: {level: 4 %}, near: {level: 3.2 %}}", want: "near: level", back: back{"key": {40, 0}, "near": {0.5, 0}}, all: true, around: true},
		"sides that change places":     {change: "lights: {key: {level: 8 %}, fill: {level: 40 %}}", want: "2 fill: level", back: back{"key": {40, 0}, "fill": {8, 0}}, all: true, around: true},
		"filaments that warm and fade": {base: "lights: {key: {unit: fresnel-tungsten-650, colour: 3200 K, level: 100 %}}", change: "lights: {key: {level: 30 %}}", want: "level", back: back{"key": {100, 0}}, all: true},
	} {
		t.Run(name, func(t *testing.T) {
			fix := tryFix(t, c.base, c.change, c.person, c.camera, c.want, c.wears, c.all, c.around)
			if c.back != nil {
				c.back.hold(t, fix.Changes)
			}
		})
	}
}

// back is how lights stood, by their names: what mends a face by levels and whites alone sets these to that again, in any order, and leaves the others alone.
type back map[string]struct {
	percent float64 // its level
	kelvin  float64 // its white; 0 where that stays
}

// backStops is how far from the level that it had a light may be set, stops: levels are set as they print, and the cheapest of them that passes is taken.
const backStops = 0.1

func (b back) hold(t *testing.T, changes []match.Change) {
	t.Helper()
	if len(changes) != len(b) {
		t.Errorf("%d lights change, want %d", len(changes), len(b))
	}
	for i := range changes {
		c := &changes[i]
		was, ok := b[c.Light]
		if off := 100*c.Level != was.percent; !ok || off && !(math.Abs(math.Log2(100*c.Level/was.percent)) <= backStops) {
			t.Errorf("%s: it was at %g %% before", c.Words(), was.percent)
		}
		if (c.White != nil) != (was.kelvin > 0) || c.White != nil && !(math.Abs(1e6/c.White.Kelvin-1e6/was.kelvin) <= match.PassMired) {
			t.Errorf("%s: it was at %g K before", c.Words(), was.kelvin)
		}
		if len(c.Gels)+len(c.Scrims) > 0 {
			t.Errorf("%s: it had nothing before it", c.Words())
		}
	}
}

func tryFix(t *testing.T, base, change, person, camera, want string, wears map[string]string, all, around bool) (fix *match.Mend) {
	t.Helper()
	text := den + "setups:\n  one: {change: {" + base + "}}\n  two: {after: one, change: {" + change + "}}\n"
	if person == "" {
		person = "ada"
	}
	if camera == "" {
		camera = "A"
	}
	looks := looksOf(t, text)
	from, is := look(t, looks[0], person, camera), look(t, looks[1], person, camera)
	fix = is.MendTo(from, looks[1])
	if want == "" {
		if fix != nil {
			t.Fatalf("there is nothing to mend, and it does %v", fix)
		}
		return nil
	}
	if fix == nil {
		t.Fatalf("no fix for %s", differences(is, from))
	}
	said := saidOf(fix)
	if !strings.Contains(strings.Join(said, ", "), want) {
		t.Errorf("%v, want %s", said, want)
	}
	if len(fix.Closes) == 0 {
		t.Errorf("%v closes nothing", said)
	}
	again := looksOf(t, text+written(fix, wears), "three")
	got := look(t, again[0], person, camera)
	if got.Turned(from) {
		t.Errorf("after %v the key is on the other side", said)
	}
	for r := range match.Rows {
		closed := slices.Contains(fix.Closes, r)
		if off := got.Off(from, r); closed && off || off && all && (around || r != match.BehindLeft && r != match.BehindRight && r != match.Steadiness) {
			t.Errorf("after %v row %d is off: %s, before %s", said, r, differences(got, from), differences(is, from))
		}
		d, tell := got.Differs(from, r), 0.03
		if r.InMired() {
			tell = 3
		}
		if said := fix.After[r]; d != nil && !math.IsNaN(said) && !(math.Abs(*d-said) <= tell) {
			t.Errorf("after the fix row %d should lie %.2f off, and lies %.2f", r, said, *d)
		}
	}
	return fix
}

// saidOf are the words of a mend.
func saidOf(fix *match.Mend) (said []string) {
	for i := range fix.Changes {
		said = append(said, fix.Changes[i].Words())
	}
	return said
}

func differences(is, from *match.Look) string {
	var all []string
	for r := range match.Rows {
		if d := is.Differs(from, r); d != nil {
			all = append(all, fmt.Sprintf("%d: %+.2f", r, *d))
		}
	}
	return strings.Join(all, ", ")
}

// fixed is a head that gives all its light or none.
const fixed = "unit: discharge-575-magnetic, colour: 5600 K, level: 100 %"

// What is not found says what it hangs on: the light that would have to go across, the one that is too near, the one that lights the wall and the face.
func TestOpen(t *testing.T) {
	for name, c := range map[string]struct {
		base, change string
		want         match.Open // with Share, Away and Was, where they are to be looked at
		or           string     // a lamp that would do as well for the same cost: the steps of their dials say which comes nearer
	}{
		"the key across":          {change: "lights: {key: {at: {by: ada, toward: A, turn: 45 camera-right, distance: 2}}, fill: {level: 0.5 %}}", want: match.Open{Of: match.OfSide, Light: "1 key", Share: 0.9}},
		"one light, near":         {base: "lights: {fill: {level: 0.5 %}}", change: "lights: {key: {at: {by: ada, toward: A, turn: 45 camera-left, distance: 0.4}, height: 1.7, level: 1.6 %}}", want: match.Open{Of: match.OfSteady, Light: "1 key", Away: 0.4, Was: 2.1}},
		"a wall beyond any level": {base: wash, change: "lights: {wash: {level: 1 %, gels: [ND 0.9, ND 0.9, ND 0.9, ND 0.9]}}", want: match.Open{Of: match.OfBehind, Spoil: true, Light: "1 key"}, or: "2 fill"},
		"a darker wall":           {change: "rooms: {den: {walls: dark-wood}}", want: match.Open{Of: match.OfBehind, Spoil: true, Light: "1 key"}},
		"heads that do not dim":   {base: "lights: {key: {" + fixed + "}, fill: {" + fixed + "}, back: {" + fixed + "}}", change: "rooms: {den: {walls: dark-wood}}", want: match.Open{Of: match.OfBehind, Light: "2 fill"}},
	} {
		t.Run(name, func(t *testing.T) {
			looks := looksOf(t, den+"setups:\n  one: {change: {"+c.base+"}}\n  two: {after: one, change: {"+c.change+"}}\n")
			from, is := look(t, looks[0], "ada", "A"), look(t, looks[1], "ada", "A")
			mend := is.MendTo(from, looks[1])
			if mend == nil {
				t.Fatalf("nothing is off: %s", differences(is, from))
			}
			i := slices.IndexFunc(mend.Open, func(o match.Open) bool { return o.Of == c.want.Of })
			if i < 0 {
				t.Fatalf("it is not open: %+v, %s", mend, differences(is, from))
			}
			got := mend.Open[i]
			near := func(got, want float64) bool { return want == 0 || math.Abs(got-want) < 0.15 }
			if got.Light != c.want.Light && got.Light != c.or || got.Spoil != c.want.Spoil || !near(got.Share, c.want.Share) || !near(got.Away, c.want.Away) || !near(got.Was, c.want.Was) {
				t.Errorf("%+v, want %+v; %s", got, c.want, differences(is, from))
			}
		})
	}
}

// A camera that goes behind the head has the key on the other side of its picture, and on the same side of the face: nothing has turned, and what stands
// behind the head is not held to the wall that the other camera sees.
func TestFromBehind(t *testing.T) {
	text := den + "setups:\n  one: {camera: A}\n  two: {after: one, change: {cameras: {A: {at: [3.3, 4.6], looks: ada}}}}\n"
	text = strings.Replace(text, "ada: {at: [3, 2.5], faces: A}", "ada: {at: [3, 2.5], faces: 180}", 1)
	text = strings.NewReplacer("by: ada, toward: A, turn: 45 camera-left", "by: ada, turn: 45 own-right", "by: ada, toward: A, turn: 50 camera-right", "by: ada, turn: 50 own-left").Replace(text)
	looks := looksOf(t, text)
	from, is := look(t, looks[0], "ada", "A"), look(t, looks[1], "ada", "A")
	if from.Back || !is.Back || from.Side != meter.PictureLeft || is.Side != meter.PictureRight || is.Own != from.Own || is.Turned(from) {
		t.Errorf("%+v %+v, turned %v", from.Side, is.Side, is.Turned(from))
	}
	if is.Differs(from, match.BehindLeft) == nil || is.Off(from, match.BehindLeft) || is.Off(from, match.BehindRight) {
		t.Errorf("what is behind is compared: %s", differences(is, from))
	}
	crossed := *is
	crossed.Own = "left"
	if !crossed.Turned(from) {
		t.Error("seen from behind, the key on the other side of the face has not turned")
	}
}

// A lamp that a cue puts out is matched as it burns before: the looks are those of the same set-up without its cues.
func TestLooksAreThoseBeforeCues(t *testing.T) {
	lit := den + strings.Replace(bulb, "0 %", "60 %", 1)[len("lights: {"):]
	lit = strings.Replace(lit, "\nlamp:", "\n  lamp:", 1)
	lit = strings.TrimSuffix(lit, "}") + "\nsetups:\n  plain: {}\n  cued: {change: {cues: {q1: {over: 2 s, lights: {lamp: off}}}}}\n"
	looks := looksOf(t, lit)
	for i := range looks[0] {
		for r, was := range looks[0][i].Figures {
			if got := looks[1][i].Figures[r]; (got == nil) != (was == nil) || got != nil && *got != *was {
				t.Errorf("row %v of %s reads otherwise where a cue comes after", r, looks[0][i].Person)
			}
		}
	}
}
