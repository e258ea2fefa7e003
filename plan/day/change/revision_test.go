package change_test

import (
	"flag"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scrimshaw/plan/day/change"
	"scrimshaw/plan/internal/days"
	"scrimshaw/plan/source"
)

// paper is a scene with a thing of every sort that a sheet has, none placed by another that the edits move.
const paper = `scrimshaw: 1
title: the den
sheet: {production: Low Water, location: Quay house, for: electric, by: R. Lund, revision: A, date: 2031-05-14, paper: A3, scale: "1:50"}
site: {ground: 0, north: 10}
exposure: {iso: 800, fps: 25, shutter: 180, stop: T2.8, white: 4300 K, meter: dome}
materials: {green: {reflectance: 30 %, colour: "#446644"}}
rooms:
  den: {size: [8, 6], height: 3.4, wall: 0.2, walls: green}
  loft: {at: [12, 0], size: [3, 3]}
openings:
  bay: {window: den.top, along: 1, width: 2, sill: 0.9, head: 2.1, panes: [2, 2], dressing: [{cloth: sheer, drawn: [0, 0.5]}]}
  hall: {door: den.right, along: 1, hinge: left, swing: in, ajar: 20}
furniture:
  chest: {box: [1, 0.5, 0.6], at: [1, 5.2], turn: 0, material: light-wood}
  couch: {sofa: [2, 0.9, 0.8], at: [2, 1.2], seat: 0.4}
people:
  ada: {at: [3, 4], faces: 180, height: 1.7, pose: standing, skin: 0.3, wears: 0.2, marks: {sit: {at: [4, 3], faces: 180}}}
  noor: {at: [6, 4], faces: 170, walk: [[6, 4], [6, 2.5]]}
cameras:
  A: {at: [3, 0.6], height: 1.5, looks: [3, 4, 1.5], lens: 35 mm, room: 5 %}
  B: {at: [7, 0.6], height: 1.5, looks: [6, 4, 1.5], lens: 50 mm, track: [[7, 0.6], [7.4, 0.6]]}
circuits: {ring: {breaker: 16, already: 100 W}, bath: {breaker: 10}}
lights:
  key: {unit: fresnel-tungsten-650, at: [1.5, 2.4], height: 2.2, aim: [3, 4, 1.5], barndoors: {top: 60}, circuit: ring, role: key, level: 80 %}
  soft: {unit: led-panel-100, at: [6.5, 2], height: 2, aim: [6, 4, 1.5], level: 60 %, colour: 4300 K, note: low}
  cut: {unit: led-point-300-bicolour, modifier: projection-30, at: [1, 1], height: 2.4, aim: [3, 4, 1.5], level: 50 %}
  glow: {unit: practical-table, at: [7.2, 5.2], height: 1.0, level: 30 %}
grip:
  board: {card: [1, 1], at: [4.4, 5], height: 1.5, faces: 200}
  silk: {frame: [1.2, 1.2], cloth: silk, at: [5.6, 2.4], height: 1.8, faces: 10}
meters:
  desk: {flat: [4, 2, 0.8], facing: up}
  glass: {spot: [3, 5.8, 1.5], from: A}
line: [ada, noor]
rates: {move: 4, aim: 1}
cues: {q1: {at: she sits, over: 4 s, lights: {soft: 20 %}}}
setups:
  first: {camera: [A, B]}
`

// edits change one quantity each, # a digit, and the things that a list of what was revised then names; none of what only says how the sheet is drawn.
var edits = []struct{ was, is, names string }{
	{"key: {unit: fresnel-tungsten-650, at: [1.5, 2.4]", "key: {unit: fresnel-tungsten-650, at: [1.#, 2.6]", "light:key"},
	{"key: {unit: fresnel-tungsten-650,", "key: {unit: fresnel-tungsten-1000,", "light:key"},
	{"height: 2.2, aim: [3, 4, 1.5], barndoors: {top: 60}", "height: 2.3#, aim: [3, 4, 1.5], barndoors: {top: 60}", "light:key"},
	{"height: 2.2, aim: [3, 4, 1.5], barndoors", "height: 2.2, aim: [3, 4.4, 1.#], barndoors", "light:key"},
	{"barndoors: {top: 60}", "barndoors: {top: 4#}", "light:key"},
	{"barndoors: {top: 60}", "barndoors: {top: 60}, scrims: [single]", "light:key"},
	{"barndoors: {top: 60}", "barndoors: {top: 60}, focus: 4# %", "light:key"},
	{"barndoors: {top: 60}", "barndoors: {top: 60}, gels: [1/2 CTB]", "light:key"},
	{"barndoors: {top: 60}", "barndoors: {top: 60}, diffusion: silk", "light:key"},
	{"circuit: ring, role", "circuit: bath, role", "light:key"},
	{"role: key", "role: {ada: key}", "light:key"},
	{"level: 80 %", "level: 7#.5 %", "light:key"},
	{"colour: 4300 K, note", "colour: 520# K, note", "light:soft"},
	{"colour: 4300 K, note", "colour: 4300 K, tint: 0.00#, note", "light:soft"},
	{"note: low", "note: high #", "light:soft"},
	{"note: low", "note: low, count: 2", "light:soft"},
	{"note: low", "note: low, seen: true", "light:soft"},
	{"note: low", "note: low, plays: fire", "light:soft"},
	{"note: low", "note: low, stands-for: glow", "light:soft"},
	{"note: low", "note: low, dimmer: pwm", "light:soft"},
	{"note: low", "note: low, mount: {boom: 1.2}", "light:soft"},
	{"note: low", "note: low, roll: 3#", "light:soft"},
	{"level: 50 %}", "level: 50 %, focus: 2# %}", "light:cut"},
	{"level: 50 %}", "level: 50 %, cuts: [{angle: 90, depth: 3# %}]}", "light:cut"},
	{"level: 50 %}", "level: 50 %, breakup: {open: 4# %}}", "light:cut"},
	{"level: 30 %", "bulb: {watts: 4# W, lumens: 400, colour: 2700 K}, level: 30 %", "light:glow"},
	{"  glow: {unit: practical-table, at: [7.2, 5.2], height: 1.0, level: 30 %}\n", "", "light:glow"},
	{"  glow:", "  more: {unit: led-tube-60, at: [2, 5], height: 2, aim: down}\n  glow:", "light:more, numbers:"}, // of what stands behind it
	{"board: {card: [1, 1]", "board: {card: [1.#, 1]", "grip:board"},
	{"faces: 200}", "faces: 21#}", "grip:board"},
	{"faces: 200}", "faces: 200, surface: black}", "grip:board"},
	{"faces: 200}", "faces: 200, note: to the left}", "grip:board"},
	{"cloth: silk, at", "cloth: muslin, at", "grip:silk"},
	{"at: [5.6, 2.4]", "at: [5.6, 2.#7]", "grip:silk"},
	{"  board: {card: [1, 1], at: [4.4, 5], height: 1.5, faces: 200}\n", "", "grip:board, numbers:"},
	{"lens: 35 mm", "lens: 7# mm", "camera:A"},
	{"lens: 35 mm", "lens: 35 mm, filter: [ND 0.6]", "camera:A"},
	{"lens: 35 mm", "lens: 35 mm, aspect: 2.39", "camera:A"},
	{"lens: 35 mm", "lens: 35 mm, exposure: {stop: T4}", "camera:A"},
	{"room: 5 %", "room: 1# %", "camera:A"},
	{"[7.4, 0.6]]", "[7.6, 0.#5]]", "camera:B"},
	{"looks: [6, 4, 1.5]", "looks: [6.3, 4, 1.#]", "camera:B"},
	{"camera: [A, B]", "camera: A", "camera:B"},
	{"iso: 800", "iso: 1#00", "exposure:"},
	{"fps: 25", "fps: 5#", "exposure:"},
	{"white: 4300 K, meter", "white: 560# K, meter", "exposure:"},
	{"meter: dome}", "meter: dome, constant: 31#}", "exposure:"},
	{"meter: dome}", "meter: dome, range: {over: 6, under: 5}}", "exposure:"},
	{"chest: {box: [1, 0.5, 0.6]", "chest: {box: [1, 0.5, 0.7#]", "furniture:chest"},
	{"at: [1, 5.2], turn: 0", "at: [1, 4.#], turn: 0", "furniture:chest"},
	{"turn: 0", "turn: 1#", "furniture:chest"},
	{"material: light-wood", "material: dark-wood", "furniture:chest"},
	{"turn: 0", "turn: 0, lift: 0.1#", "furniture:chest"},
	{"seat: 0.4}", "seat: 0.3#}", "furniture:couch"},
	{"  couch: {sofa: [2, 0.9, 0.8], at: [2, 1.2], seat: 0.4}\n", "", "furniture:couch"},
	{"along: 1, width: 2,", "along: 1.#5, width: 2,", "opening:bay"},
	{"width: 2, sill: 0.9", "width: 1.6, sill: 0.9", "opening:bay"},
	{"sill: 0.9", "sill: 1.0#", "opening:bay"},
	{"head: 2.1", "head: 2.2#", "opening:bay"},
	{"panes: [2, 2]", "panes: [3, 2]", "opening:bay"},
	{"drawn: [0, 0.5]", "drawn: [0, 0.6#]", "opening:bay"},
	{"panes: [2, 2]", "panes: [2, 2], gels: [1/2 CTO]", "opening:bay"},
	{"hinge: left", "hinge: right", "opening:hall"},
	{"swing: in", "swing: out", "opening:hall"},
	{"ajar: 20", "ajar: 4#", "opening:hall"},
	{"ajar: 20", "ajar: 20, escape: true", "opening:hall"},
	{"door: den.right, along: 1, hinge: left, swing: in, ajar: 20", "gap: den.right, along: 1, width: 0.8", "opening:hall"},
	{"ada: {at: [3, 4]", "ada: {at: [3.#1, 4.2]", "person:ada"},
	{"faces: 180, height", "faces: 14#, height", "person:ada"},
	{"height: 1.7", "height: 1.8#", "person:ada, mark:ada.sit"},
	{"pose: standing", "pose: standing, eyes: 1.4#", "person:ada, mark:ada.sit"},
	{"skin: 0.3", "skin: 0.3#", "person:ada"},
	{"wears: 0.2", "wears: 0.2#", "person:ada"},
	{"skin: 0.3", "skin: 0.3, seen: false", "person:ada"},
	{"sit: {at: [4, 3]", "sit: {at: [4, 2.#]", "mark:ada.sit"},
	{"[6, 2.5]]", "[6.3, 2.#]]", "person:noor"},
	{"breaker: 16", "breaker: 2#", "circuit:ring"},
	{"already: 100 W", "already: 2#0 W", "circuit:ring"},
	{"at: she sits", "at: she stands", "cue:q1"},
	{"over: 4 s", "over: #.5 s", "cue:q1"},
	{"soft: 20 %", "soft: 1# %", "cue:q1"},
	{"soft: 20 %", "soft: {level: 20 %, colour: 3200 K}", "cue:q1"},
	{"flat: [4, 2, 0.8]", "flat: [4, 2.#, 0.8]", "meter:desk"},
	{"facing: up", "facing: 90", "meter:desk"},
	{"spot: [3, 5.8, 1.5]", "spot: [3.#, 5.8, 1.5]", "meter:glass"},
	{"at: [12, 0]", "at: [12.#5, 0]", "room:loft"},
	{"size: [3, 3]", "size: [3.#5, 3]", "room:loft"},
	{"size: [3, 3]", "size: [3, 3], base: 0.#", "room:loft"},
	{"size: [3, 3]", "size: [3, 3], height: 2.#1", "room:loft"},
	{"size: [3, 3]", "size: [3, 3], wall: 0.3#", "room:loft"},
	{"size: [3, 3]", "size: [3, 3], floor: green", "room:loft"},
	{"  loft: {at: [12, 0], size: [3, 3]}\n", "", "room:loft"},
	{"reflectance: 30 %", "reflectance: 2# %", "material:green"},
	{"#446644", "#446640", "material:green"},
	{"title: the den", "title: the den by night", "scene:"},
	{"first: {camera: [A, B]}", "first: {camera: [A, B], sequence: night}", "scene:"},
	{"production: Low Water", "production: High Water", "scene:"},
	{"for: electric", "for: grip", "scene:"},
	{"ground: 0", "ground: -0.#", "scene:"},
	{"north: 10", "north: 4#", "scene:"},
	{"line: [ada, noor]", "line: [noor, ada]", "scene:"},
	{"move: 4", "move: 4.#", "scene:"},
	{"line: [ada, noor]", "line: [ada, noor]\nhaze: 0.0#", "waiting:haze"},
	{"revision: A", "revision: B", ""},
	{"date: 2031-05-14", "date: 2031-05-2#", ""},
	{"paper: A3", "paper: A2", ""},
	{"scale: \"1:50\"", "scale: \"1:100\"", ""},
}

// manyEdits is how many groups of random edits are tried, and editsFrom the seed that they come from.
var (
	manyEdits = flag.Int("edits", 50, "how many groups of random edits are tried")
	editsFrom = flag.Uint64("edits-from", 0, "their seed, and that of the first random day")
)

// edited is the scene with some edits, and the things that they name; ok is false where two of them touch the same words.
func edited(rng *rand.Rand, some ...int) (text string, names []string, ok bool) {
	text = paper
	for _, i := range some {
		e := &edits[i]
		is := e.is
		if !strings.HasPrefix(is, "#") {
			is = varied(rng, is)
		}
		if strings.Count(text, e.was) != 1 {
			return "", nil, false
		}
		text = strings.Replace(text, e.was, is, 1)
		names = append(names, strings.FieldsFunc(e.names, func(r rune) bool { return r == ',' || r == ' ' })...)
	}
	slices.Sort(names)
	return text, slices.Compact(names), true
}

// revisedThings are the things that a list of what was revised names.
func revisedThings(was, is *change.State) (names []string) {
	lines := change.Revision(was, is)
	for i := range lines {
		names = append(names, string(lines[i].Sort)+":"+lines[i].Name)
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// papers are the set-ups of a scene as sheets have them.
func papers(t testing.TB, text string) (all []*change.State) {
	t.Helper()
	for _, s := range setups(t, text) {
		all = append(all, change.OnPaper(s))
	}
	return all
}

// Every quantity of a sheet that is edited is named by its thing, one way and back, and nothing else is.
func TestARevisionNamesWhatWasEdited(t *testing.T) {
	rng := rand.New(rand.NewPCG(1+*editsFrom, 3))
	before := papers(t, paper)[0]
	for i := range edits {
		text, want, ok := edited(rng, i)
		if !ok {
			t.Fatalf("%q stands not once in the scene", edits[i].was)
		}
		after := papers(t, text)[0]
		for _, got := range [][]string{revisedThings(before, after), revisedThings(after, before)} {
			if !slices.Equal(got, want) {
				t.Errorf("%q for %q names %v, want %v", edits[i].is, edits[i].was, got, want)
			}
		}
	}
}

// sameWords is what comes where two edits write the same words.
var sameWords = regexp.MustCompile(`false[0-9]`)

// Of several edits at once each is named.
func TestARevisionIsComplete(t *testing.T) {
	rng := rand.New(rand.NewPCG(2+*editsFrom, 3))
	before := papers(t, paper)[0]
	tried := 0
	for range *manyEdits {
		some := rng.Perm(len(edits))[:2+rng.IntN(5)]
		text, want, ok := edited(rng, some...)
		if !ok || sameWords.MatchString(text) || strings.Contains(text, "more:") || !strings.Contains(text, "glow:") || !strings.Contains(text, "board:") || strings.Contains(text, "camera: A}") {
			continue
		}
		tried++
		if got := revisedThings(before, papers(t, text)[0]); !slices.Equal(got, want) {
			t.Errorf("%v names %v, want %v", some, got, want)
		}
	}
	if tried < *manyEdits/4 {
		t.Errorf("only %d of them fit together", tried)
	}
}

// lengths are keys whose bare numbers are metres.
var lengths = regexp.MustCompile(`\b(height|width|along|sill|head|out|distance|wall|at|size|flat|spot|table|card|box|frame|sofa|seat): (\[[^\]a-z]*\]|[0-9.]+)`)

// inUnit writes those lengths of a scene in a unit of so many metres.
func inUnit(text, name string, metres float64) string {
	number := regexp.MustCompile(`-?[0-9]+(\.[0-9]+)?`)
	return lengths.ReplaceAllStringFunc(text, func(found string) string {
		key, value, _ := strings.Cut(found, ": ")
		return key + ": " + number.ReplaceAllStringFunc(value, func(n string) string {
			v, _ := strconv.ParseFloat(n, 64)
			return strconv.FormatFloat(v/metres, 'f', 9, 64) + " " + name
		})
	})
}

// shuffled writes a tree with the keys of its things in another order; the things keep theirs, for it is their numbers.
func shuffled(rng *rand.Rand, n *source.Node, depth int) string {
	var parts []string
	switch n.Kind {
	case source.Map:
		order := rng.Perm(len(n.Keys))
		if depth == 1 {
			slices.Sort(order)
		}
		for _, i := range order {
			parts = append(parts, n.Keys[i].Name+": "+shuffled(rng, n.Keys[i].Value, depth+1))
		}
		if depth == 0 {
			return strings.Join(parts, "\n# a remark\n") + "\n"
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case source.List:
		for _, item := range n.Items {
			parts = append(parts, shuffled(rng, item, depth+1))
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	if n.Quoted || strings.ContainsAny(n.Text, ":#,[]{}") {
		return strconv.Quote(n.Text)
	}
	return n.Text
}

// Nothing is revised of a file that says the same: with remarks, its keys in another order, its lengths in centimetres or feet; of a scene with a thing of
// every sort and of random days.
func TestNothingIsRevisedOfTheSameScene(t *testing.T) {
	rng := rand.New(rand.NewPCG(3+*editsFrom, 3))
	texts := []string{paper}
	for seed := *editsFrom; seed < *editsFrom+6; seed++ {
		texts = append(texts, days.Make(seed))
	}
	for i, text := range texts {
		log := &source.Log{}
		tree := source.Parse(&source.File{Name: "s.yaml", Text: []byte(text)}, log)
		if log.Failed() {
			t.Fatal(log.All())
		}
		before := papers(t, text)
		for what, same := range map[string]string{"itself": text, "other keys": shuffled(rng, tree, 0), "centimetres": inUnit(text, "cm", 0.01), "feet": inUnit(text, "ft", 0.3048)} {
			after := papers(t, same)
			for k := range before {
				if got := revisedThings(before[k], after[k]); len(got) > 0 || len(after) != len(before) {
					t.Errorf("scene %d, %s: %v is revised", i, what, got)
				}
			}
		}
	}
}

// What random days differ by from each other is named where a crew touches it, and who moves with what is said.
func TestARevisionHoldsTheChangesOfADay(t *testing.T) {
	for seed := *editsFrom; seed < *editsFrom+8; seed++ {
		all := papers(t, days.Make(seed))
		touched := states(t, days.Make(seed))
		for i := range all {
			for k := range all {
				named := revisedThings(all[i], all[k])
				list := change.Between(touched[i], touched[k])
				for j := range list.Lines {
					if l := &list.Lines[j]; !slices.Contains(named, string(l.Sort)+":"+l.Name) {
						t.Errorf("seed %d, %d to %d: %s is not on the list", seed, i, k, l.Name)
					}
				}
			}
		}
	}
}

// dayEdits change one quantity of any random day, # a digit, and all that it may name in any of its set-ups.
var dayEdits = []struct{ was, is, names string }{
	{"at: {top: desk}, level: 30 %", "at: {top: desk}, level: 3#.5 %", "light:lamp"},
	{"height: 1.4, faces: noor", "height: 1.5#, faces: noor", "grip:board"},
	{"flat: [2.8, 3.4, 0.8]", "flat: [2.8, 3.#2, 0.8]", "meter:desk-top"},
	{"height: 2.8}", "height: 2.9#}", "room:den"},
	{"along: 1.5, width: 1.4", "along: 1.5, width: 1.4, panes: [#, 3]", "opening:pane"},
	{"title: a day", "title: another day", "scene:"},
	{"roll: 20", "roll: 4#", "light:hair"},
	{"table: [1, 0.6, 0.75]", "table: [1.#, 0.6, 0.75]", "furniture:desk"},
	{"line: [ada, noor]\n", "", "scene:"},
}

// Of a random day each edit is named in the first set-up, and in the others nothing but what it may name: some of them set that quantity anew.
func TestARevisionOfARandomDay(t *testing.T) {
	rng := rand.New(rand.NewPCG(4+*editsFrom, 3))
	for i, e := range dayEdits {
		seed := *editsFrom + uint64(i)
		for e.is == "" && strings.Contains(days.Make(seed), "reverse:") {
			seed++ // a reverse may take from the line who change places
		}
		text := days.Make(seed)
		if strings.Count(text, e.was) != 1 {
			t.Fatalf("%q stands not once in the day", e.was)
		}
		before, after := papers(t, text), papers(t, strings.Replace(text, e.was, varied(rng, e.is), 1))
		for k := range before {
			got := revisedThings(before[k], after[k])
			if k == 0 && !slices.Equal(got, []string{e.names}) || len(got) > 0 && !slices.Equal(got, []string{e.names}) {
				t.Errorf("%q names %v in set-up %d, want %v", e.is, got, k+1, e.names)
			}
		}
	}
}
