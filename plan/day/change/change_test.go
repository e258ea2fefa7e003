package change_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/day/change"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
)

// shipped is the catalogue, read once.
var shipped = sync.OnceValues(kit.Shipped)

// setups are those of a scene; an order of names may be given.
func setups(t testing.TB, text string, names ...string) (all []*plan.Setup) {
	t.Helper()
	catalogue, err := shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: catalogue}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	err = resolve.Each(doc, names, log, func(s *plan.Setup) error {
		all = append(all, s)
		return nil
	})
	if err != nil || log.Failed() {
		t.Fatal(err, log.All())
	}
	return all
}

// states are those of a scene's set-ups.
func states(t testing.TB, text string) (all []*change.State) {
	t.Helper()
	for _, s := range setups(t, text) {
		all = append(all, change.Of(s))
	}
	return all
}

// den is a scene with a thing of every sort that a crew touches.
const den = `scrimshaw: 1
rooms: {den: {size: [8, 6], height: 3.4}}
openings:
  bay: {window: den.top, along: 1, width: 2, dressing: [{cloth: sheer}]}
  hall: {door: den.right, along: 1}
furniture:
  chest: {box: [1, 0.5, 0.6], at: [1, 5.2]}
  desk: {table: [1.4, 0.7, 0.75], at: [5, 4.6]}
people:
  ada: {at: [3, 4], marks: {sit: {at: [4, 3]}}}
  noor: {at: [6, 4], faces: ada}
cameras: {A: {at: [3, 0.6], lens: 35 mm}, B: {at: [7, 0.6], lens: 50 mm, looks: noor}}
circuits: {ring: {breaker: 16}, bath: {breaker: 10}}
lights:
  key: {unit: fresnel-tungsten-650, at: {by: ada, toward: A, turn: 40 camera-left, distance: 2}, height: 2.2, barndoors: {top: 60}, circuit: ring}
  soft: {unit: led-panel-100, at: [6.5, 2], height: 2, aim: noor}
  lamp: {unit: practical-table, at: {top: desk}}
  cut: {unit: led-point-300-bicolour, modifier: projection-30, at: [1, 1], height: 2.4, aim: ada}
grip:
  board: {card: [1, 1], at: [4.4, 5], height: 1.5, faces: ada}
  silk: {frame: [1.2, 1.2], cloth: silk, at: [5.6, 2.4], height: 1.8, faces: noor}
setups:
  first: {camera: A}
`

// touch are changes of one key each, # for a digit, and the lines that they make of the scene as it is written.
var touch = []struct{ patch, lines string }{
	{"lights: {soft: {at: [#, 1.5]}}", "move soft, aim soft"},
	{"lights: {soft: {height: 2.#}}", ""},
	{"lights: {soft: {level: 2# %}}", "level soft"},
	{"lights: {soft: {level: 0 %}}", "level soft"},
	{"lights: {soft: {colour: 320# K}}", "colour soft"},
	{"lights: {soft: {gels: [1/4 CTO]}}", "gel soft"},
	{"lights: {soft: {diffusion: silk}}", "cloth soft"},
	{"lights: {soft: {circuit: bath}}", "cable soft"},
	{"lights: {soft: {aim: [2, 3, 0.5]}}", "aim soft"},
	{"lights: {soft: {roll: 30}}", "aim soft"},
	{"lights: {soft: {note: wrap it}}", "fit soft"},
	{"lights: {soft: {count: 2}}", "swap soft"},
	{"lights: {soft: {unit: led-tube-60}}", ""},
	{"lights: {soft: {mount: {boom: 1.2}}}", ""},
	{"lights: {soft: strike}", "strike soft"},
	{"lights: {key: {focus: spot}}", "fit key"},
	{"lights: {key: {scrims: [double]}}", "fit key"},
	{"lights: {key: {barndoors: {top: 20, left: 30}}}", "fit key"},
	{"lights: {key: {barndoors: {top: 20}, scrims: [single], focus: 40 %}}", "fit key"},
	{"lights: {cut: {cuts: [{angle: 90, depth: 3# %}]}}", "fit cut"},
	{"lights: {cut: {breakup: {open: 40 %}}}", "fit cut"},
	{"lights: {cut: {focus: 30 %}}", "fit cut"},
	{"lights: {lamp: {bulb: {watts: 40 W, lumens: 400, colour: 2700 K}}}", "swap lamp"},
	{"lights: {more: {unit: led-tube-60, at: [2, 2], height: 2}}", "set more"},
	{"grip: {board: {at: [4.#, 5.2]}}", ""},
	{"grip: {board: {surface: black}}", "fit board"},
	{"grip: {board: {faces: 200}}", "aim board"},
	{"grip: {silk: {cloth: muslin}}", "cloth silk"},
	{"grip: {silk: {frame: [1.8, 1.8]}}", "swap silk"},
	{"grip: {silk: strike}", "strike silk"},
	{"grip: {black: {flag: [0.6, 0.9], at: [2.5, 5], height: 1.6}}", "set black"},
	{"cameras: {A: {lens: 75 mm}}", "camera A"},
	{"cameras: {A: {at: [3.#5, 0.9], looks: [3, 4, 1.5]}}", ""},
	{"cameras: {A: {filter: [ND 0.6]}}", "camera A"},
	{"cameras: {A: {aspect: 2.39}}", "camera A"},
	{"cameras: {A: {at: [3, 0.6], looks: ada, track: [[3, 0.6], [4, 0.6]]}}", "camera A"},
	{"cameras: {A: {exposure: {stop: T4}}}", ""},
	{"exposure: {iso: 400}", "camera "},
	{"furniture: {chest: {at: [1.5, 4.#]}}", "move chest"},
	{"furniture: {chest: {turn: 90}}", "move chest"},
	{"furniture: {chest: {material: linen}}", "fit chest"},
	{"furniture: {chest: strike}", "strike chest"},
	{"furniture: {desk: {at: [5.3, 4.9]}}", "move desk, move lamp"},
	{"openings: {bay: {gels: [1/2 CTO]}}", "gel bay"},
	{"openings: {bay: {dressing: [{cloth: sheer, drawn: [0, 0.#]}]}}", "cloth bay"},
	{"openings: {hall: {ajar: 6#}}", "door hall"},
	{"people: {noor: {at: [6.4, 3.6]}}", ""},
	{"people: {ada: {pose: seated, at: [3, 4]}}", ""},
	{"people: {ada: {walk: [[3, 4], [3, 2]]}}", "mark ada"},
	{"people: {ada: {marks: {sit: {at: [4, 2.6]}}}}", "mark ada.sit"},
	{"people: {noor: {wears: 0.6}}", "mark noor"},
	{"circuits: {ring: {breaker: 20}}", "cable ring"},
}

// varied is a change with a random figure in it.
func varied(rng *rand.Rand, patch string) string {
	return strings.ReplaceAll(patch, "#", fmt.Sprint(1+rng.IntN(8)))
}

// said are the lines of a list as "work name".
func said(l *change.List) (all []string) {
	for i := range l.Lines {
		all = append(all, string(l.Lines[i].Work)+" "+l.Lines[i].Name)
	}
	return all
}

// Each key that a crew can touch makes the lines of its own work, and no others.
func TestEachKeyMakesItsLines(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for _, c := range touch {
		patch := varied(rng, c.patch)
		all := states(t, den+"  next: {camera: A, after: first, change: {"+patch+"}}\n")
		got := said(change.Between(all[0], all[1]))
		if len(got) == 0 || c.lines != "" && strings.Join(got, ", ") != c.lines {
			t.Errorf("%s: %q, want %q", patch, got, c.lines)
		}
	}
}

// randomDay is the den in some set-ups, each after another with some changes.
func randomDay(rng *rand.Rand, count int) string {
	var b strings.Builder
	b.WriteString(den)
	for i := range count {
		after := "first"
		if k := rng.IntN(i + 1); k > 0 {
			after = fmt.Sprint("s", k)
		}
		sections := map[string]bool{}
		var patches []string
		for range 1 + rng.IntN(4) {
			p := varied(rng, touch[rng.IntN(len(touch))].patch)
			if section, _, _ := strings.Cut(p, ":"); !sections[section] && (!strings.Contains(p, "soft") && !strings.Contains(p, "silk") && !strings.Contains(p, "chest") && section != "cameras" || after == "first") {
				sections[section], patches = true, append(patches, p)
			}
		}
		camera := [...]string{"A", "B", "[A, B]"}[rng.IntN(3)]
		if slices.ContainsFunc(patches, func(p string) bool { return strings.HasPrefix(p, "cameras") }) {
			camera = "A"
		}
		fmt.Fprintf(&b, "  s%d: {camera: %s, after: %s, change: {%s}}\n", i+1, camera, after, strings.Join(patches, ", "))
	}
	return b.String()
}

// Changes applied to a set-up give the next: every fact of every thing, as near as somebody places and turns it; and what is as it was is not
// on the list.
func TestChangesGiveTheNextSetup(t *testing.T) {
	for seed := range uint64(12) {
		all := states(t, randomDay(rand.New(rand.NewPCG(seed, 2)), 5))
		for i := range all {
			for k := range all {
				list := change.Between(all[i], all[k])
				made := list.Apply(all[i])
				sameStates(t, fmt.Sprintf("seed %d, %d to %d", seed, i, k), made, all[k])
				if left := change.Between(made, all[k]); len(left.Lines) != 0 {
					t.Errorf("seed %d, %d to %d: %v is left", seed, i, k, said(left))
				}
				if i == k && len(list.Lines) != 0 {
					t.Errorf("seed %d: from a set-up to itself there is %v", seed, said(list))
				}
			}
		}
	}
}

// sameStates compares two states fact by fact.
func sameStates(t *testing.T, where string, made, want *change.State) {
	t.Helper()
	if len(made.Things) != len(want.Things) {
		t.Errorf("%s: %d things, want %d", where, len(made.Things), len(want.Things))
	}
	for i := range want.Things {
		w := &want.Things[i]
		m := made.Find(w.Sort, w.Name)
		if m == nil || len(m.Facts) != len(w.Facts) {
			t.Errorf("%s: %s is not there", where, w.Name)
			continue
		}
		for k, f := range w.Facts {
			got := m.Facts[k].Value
			least := 1e-6
			if f.Aspect == change.Place || f.Aspect == change.Aim || f.Aspect == change.Turn || f.Aspect == change.Walk {
				least = 0.5 // degrees, and 0.01 m is less
			}
			near := slices.EqualFunc(got.Figures, f.Value.Figures, func(a, b float64) bool { return math.Abs(a-b) <= least })
			if m.Facts[k].Aspect != f.Aspect || !slices.Equal(got.Words, f.Value.Words) || !near {
				t.Errorf("%s: %s of %s is %+v, want %+v", where, f.Aspect, w.Name, got, f.Value)
			}
		}
	}
}
