package explain_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/explain"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/samples"
)

// studies computes the set-ups of a scene.
func studies(t testing.TB, text string) (all []*study.Study) {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "scene.yaml", Text: []byte(text)}, log)
	err = resolve.Each(document, nil, log, func(s *plan.Setup) error {
		lit, err := study.Run(context.Background(), s, study.Options{ReadingsOnly: true, Quality: light.Draft})
		all = append(all, lit)
		return err
	})
	if err != nil || log.Failed() {
		t.Fatal(err, log.All())
	}
	return all
}

// holds fails unless the text of every reading of a study, worked out again, gives the reading, and the sum is meter's.
func holds(t *testing.T, name string, s *study.Study) {
	t.Helper()
	if names := meter.Names(s.Setup); len(names) != len(s.Readings.Readings) {
		t.Errorf("%s: %q are named of %d", name, names, len(s.Readings.Readings))
	}
	for i, reading := range meter.Names(s.Setup) {
		r := &s.Readings.Readings[i]
		if r.Name != reading {
			t.Fatalf("%s: reading %d is %s, and %s is named", name, i, r.Name, reading)
		}
		holdsReading(t, name, s, r)
	}
	along := alongWalks(&s.Readings)
	if names := meter.WalkNames(s.Setup); len(names) != len(along) {
		t.Errorf("%s: %d readings along walks are named of %d", name, len(names), len(along))
	}
	const everyFew = 7 // of those along walks: their kinds come in turn
	for i, reading := range meter.WalkNames(s.Setup) {
		if along[i].Name != reading {
			t.Fatalf("%s: reading %d along walks is %s, and %s is named", name, i, along[i].Name, reading)
		}
		if i%everyFew == 0 {
			holdsReading(t, name, s, along[i])
		}
	}
}

// alongWalks are the readings along the walks of a set, in their order.
func alongWalks(set *meter.Set) (all []*meter.Reading) {
	for i := range set.Walks {
		for k := range set.Walks[i].Points {
			p := &set.Walks[i].Points[k]
			all = append(all, &p.Left, &p.Right)
			for n := range p.Domes {
				all = append(all, &p.Domes[n])
			}
		}
	}
	return all
}

// holdsReading holds one reading.
func holdsReading(t *testing.T, name string, s *study.Study, r *meter.Reading) {
	t.Helper()
	reading := r.Name
	e, err := explain.Of(context.Background(), s, reading)
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if err := explain.Write(&text, []explain.Explanation{*e}); err != nil {
		t.Fatal(err)
	}
	holdsText(t, name+" "+reading, r, e, text.String())
	holdsShares(t, name+" "+reading, s.Setup.Lights, e)
}

func holdsText(t *testing.T, name string, r *meter.Reading, e *explain.Explanation, text string) {
	t.Helper()
	want := r.Luminance
	if want == nil {
		want = r.Lux
	}
	sum := 0.0
	for _, l := range e.Lights {
		sum += l.Value
	}
	if !(math.Abs(sum-*want) <= 1e-9*math.Max(1, *want)) {
		t.Errorf("%s: the lights give %.12g, and meter reads %.12g", name, sum, *want)
	}
	again := redo(t, name, text)
	if again.lines == 0 {
		t.Errorf("%s: it has no formula:\n%s", name, text)
	}
	if !near(again.reading, *want) {
		t.Errorf("%s: worked out again it is %g, and meter reads %g:\n%s", name, again.reading, *want, text)
	}
	if r.Stop != nil && !near(again.stop, *r.Stop) {
		t.Errorf("%s: the stop is %g again, and meter reads %g", name, again.stop, *r.Stop)
	}
	if r.Over != nil && !(math.Abs(again.over-*r.Over) <= 0.01) {
		t.Errorf("%s: it is %g over again, and meter reads %g", name, again.over, *r.Over)
	}
	for symbol, v := range again.lamps {
		if math.IsNaN(v) {
			t.Errorf("%s: %s is no number", name, symbol)
		}
	}
}

// holdsShares fails unless what is a share is one: of its full light a lamp gives all at full, and as much as its level says
// where its unit has no curve of its own; of an opening no more is seen than there is.
func holdsShares(t *testing.T, name string, lights []plan.Light, e *explain.Explanation) {
	t.Helper()
	const rounding = 1e-6
	for i := range e.Lights {
		l := &e.Lights[i]
		from := &lights[slices.IndexFunc(lights, func(p plan.Light) bool { return p.Name == l.Name })]
		q, ok := valueOfSymbol(l.Lamp, "q")
		if plain := from.Head.Curve == nil || from.Level == 1; !ok || plain && !(math.Abs(q-from.Level) <= rounding) {
			t.Errorf("%s: %s gives %.9g of its full light at a level of %g", name, l.Name, q, from.Level)
		}
		for _, way := range l.Ways {
			if seen, ok := valueOfSymbol(way.Steps, "V"); !ok || !(seen > 0) || seen > 1+rounding {
				t.Errorf("%s: of the opening of %s %.9g is seen", name, l.Name, seen)
			}
		}
	}
}

// valueOfSymbol is what a symbol stands for in some steps.
func valueOfSymbol(steps []explain.Step, symbol string) (value float64, ok bool) {
	i := slices.IndexFunc(steps, func(s explain.Step) bool { return s.Symbol == symbol })
	if i < 0 {
		return 0, false
	}
	return steps[i].Value, true
}

// Whoever has only the text gets each reading of every sample.
func TestSamplesRedone(t *testing.T) {
	for _, name := range samples.Names() {
		text, err := samples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range studies(t, string(text)) {
			holds(t, name+" "+s.Setup.Name, s)
		}
	}
}

// day is a scene in feet of two floors, with a mark, a walk, meters of each kind, two cameras and two set-ups, the second by night
// with a filter before a lens.
const day = `{scrimshaw: 1, units: ft, exposure: {stop: T2.8, iso: 800, meter: flat},
	rooms: {hall: {size: [16, 14], height: 9}, loft: {at: [20, 0], size: [12, 14], height: 8, base: 3}},
	openings: {bay: {window: hall.top, along: 4, width: 5, sill: 2, head: 7}},
	people: {ada: {at: [6, 7], pose: seated, faces: A, marks: {door: {at: [11, 4], faces: B}}, walk: [[9, 9], [12, 9], [12, 4]]}, ben: {at: [25, 7], faces: 180}},
	cameras: {A: {at: [8, 1.5], height: 4, lens: 35 mm}, B: {at: [14, 2], height: 5, lens: 50 mm, filter: [ND 0.6], exposure: {iso: 400}}},
	meters: {wall: {spot: [8, 14, 5], from: B}, all: {dome: [10, 8, 4], facing: up}, table: {flat: [4, 4, 2.5], facing: up}},
	furniture: {chest: {box: [4, 2, 3], at: [9, 6]}},
	lights: {sun: {output: {candela: 60000, beam: 25, field: 40}, at: {opening: bay, out: 8}, height: 8, aim: ada},
	  lamp: {output: {lumens: 900, sphere: 0.8}, at: [5, 5], height: 5, colour: 2700 K}, soft: {output: {lumens: 1500, disc: 1}, at: [25, 4], height: 6, aim: ben}},
	setups: {day: {}, night: {change: {exposure: {stop: T2}, lights: {sun: {level: 4 %, gels: [full CTB]}, lamp: {level: 60 %}}}}}}`

// Faces and marks, walks, spots and domes, in feet, on two floors, by day and by night, with filters: each says enough to be
// worked out again.
func TestKindsOfReadingsRedone(t *testing.T) {
	kinds := map[string]bool{}
	for _, s := range studies(t, day) {
		holds(t, "day "+s.Setup.Name, s)
		for _, r := range append(meter.Names(s.Setup), meter.WalkNames(s.Setup)...) {
			kinds[s.Setup.Name+" "+r] = true
		}
	}
	for _, want := range []string{"day ada.key", "night ada.door.key", "day ada.walk.0.00.left", "night ada.walk.0.00.dome.B", "day wall", "night all", "day ben.dome.A"} {
		if !kinds[want] {
			t.Errorf("no reading is called %s", want)
		}
	}
}

// lamps are sources with closed forms, and some without, over and beside meters of each kind.
const lamps = `{scrimshaw: 1,
	rooms: {hall: {size: [6, 5], height: 3}},
	people: {ada: {at: [3, 2], faces: 170}},
	cameras: {A: {at: [3, 0.4], lens: 32 mm}},
	furniture: {block: {box: [0.5, 0.5, 1.4], at: [2.2, 1.6]}},
	meters: {top: {flat: [2, 2.5, 0.8], facing: up}, side: {flat: [1, 3, 1.2], facing: 100}, all: {dome: [3, 3, 1], facing: up},
	  wall: {spot: [5, 5, 1.5], from: A}, low: {flat: [4.9, 3.5, 1.95], facing: up}, edge: {dome: [4.2, 3.1, 1.5], facing: 200}},
	lights: {SOURCE}}`

// Each kind of opening, each way of reading, a lamp that is off, several as one, gels, a lamp behind a block, and a reading that a lamp
// cuts with its own plane.
func TestKindsOfLampsRedone(t *testing.T) {
	for name, lamp := range map[string]string{
		"point":         `a: {output: {candela: 1000, shape: uniform}, at: [2, 3], height: 2.6, aim: down}`,
		"cosine":        `a: {output: {lumens: 3000, shape: cosine}, at: [2, 3], height: 2.6, aim: ada}`,
		"lobe":          `a: {output: {lux: 800, distance: 3 m, beam: 40, field: 70}, at: [5, 4], height: 2.2, aim: ada, gels: [1/2 CTO, 1/4 CTB]}`,
		"face":          `a: {output: {luminance: 4000, face: [1.2, 0.8]}, at: [4.6, 3.4], height: 2.0, aim: ada}`,
		"tilted face":   `a: {output: {lumens: 4000, face: [1.2, 0.8]}, at: [5, 3.5], height: 1.9, aim: {pan: 270, tilt: 0}, roll: 20}`,
		"disc":          `a: {output: {lumens: 4000, disc: 0.9}, at: [5, 3.5], height: 1.9, aim: {pan: 250, tilt: -20}, count: 3, level: 40 %}`,
		"tube":          `a: {output: {lumens: 2000, tube: 1.2}, at: [4.5, 3], height: 2.1, aim: ada, roll: 30}`,
		"sphere":        `a: {output: {lumens: 2000, sphere: 0.6}, at: [4.5, 3.4], height: 1.95, aim: down}`,
		"lobed face":    `a: {output: {lumens: 2000, face: [1, 1], beam: 60}, at: [4.5, 3.4], height: 1.95, aim: ada}`,
		"off":           `a: {output: {candela: 1000, shape: uniform}, at: [2, 3], height: 2.6, level: 0 %}`,
		"two, one off":  `a: {output: {candela: 1000, shape: uniform}, at: [2, 3], height: 2.6, level: 0 %}, b: {output: {candela: 500, shape: cosine}, at: [3, 4], height: 2.6, aim: ada}`,
		"behind doors":  `a: {unit: fresnel-tungsten-650, at: [5, 4], height: 2.2, aim: ada, barndoors: {top: 40, left: 60, bottom: 30, right: 50}}`,
		"through silk":  `a: {unit: led-point-300-bicolour, at: [5, 4], height: 2.2, aim: ada}, b: {output: {lumens: 900, shape: uniform}, at: [1, 1], height: 2}`,
		"behind a grid": `a: {unit: led-point-300-bicolour, modifier: softbox-90 + grid-40, at: [5, 4], height: 2.2, aim: ada}`,
		"on a dimmer":   `a: {unit: fresnel-tungsten-650, at: [5, 4], height: 2.2, aim: ada, level: 30 %, gels: [1/2 CTB]}`,
		"by a mirror":   `a: {output: {lumens: 2000, disc: 0.3}, at: [4.5, 3.4], height: 1.9, aim: {pan: 270, tilt: 0}}, b: {output: {candela: 300, shape: uniform}, at: [4, 1], height: 1.8}`,
		"off silver":    `a: {output: {candela: 3000, beam: 30}, at: [4.5, 3.4], height: 1.9, aim: [1, 3.4, 1.4]}`,
		"in a shade":    `a: {unit: practical-table, at: [4, 3], height: 1.5}`,
	} {
		text := strings.Replace(lamps, "SOURCE", lamp, 1)
		for of, grip := range map[string]string{"through silk": "frame: [1.2, 1.2], cloth: quarter-silk, at: [4.2, 3.2], height: 2.0", "off silver": "silver: [1, 1], at: [1, 3.4], height: 1.4"} {
			if name == of {
				text = strings.Replace(text, "meters:", "grip: {f: {"+grip+", faces: ada}}, meters:", 1)
			}
		}
		if name == "by a mirror" {
			text = strings.Replace(text, "furniture: {", "furniture: {glass: {mirror: [1.4, 1.6], at: {wall: hall.left, along: centre}, lift: 0.6}, view: {mirror: [1, 1], at: {wall: hall.top, along: 4.4}, lift: 0.9}, ", 1)
		}
		for _, s := range studies(t, text) {
			holds(t, name, s)
		}
	}
}

// Nobody has to guess which readings there are.
func TestUnknownReading(t *testing.T) {
	s := studies(t, strings.Replace(lamps, "SOURCE", `a: {output: {candela: 1000, shape: uniform}, at: [2, 3], height: 2.6}`, 1))[0]
	_, err := explain.Of(context.Background(), s, "ada.kee")
	var d *source.Diagnostic
	if !errors.As(err, &d) || d.Message != `there is no reading "ada.kee"` || d.Hint != `did you mean "ada.key"?` {
		t.Errorf("it says %v", err)
	}
	if d := explain.Unknown("x", nil); d.Hint != "add people or meters: the scene has no readings" {
		t.Errorf("the hint is %q", d.Hint)
	}
}

// JSON has what the text has: each light's value, and a formula's inputs by name.
func TestJSON(t *testing.T) {
	s := studies(t, strings.Replace(lamps, "SOURCE", `a: {output: {candela: 1000, shape: uniform}, at: [2, 3], height: 2.6}`, 1))[0]
	e, err := explain.Of(context.Background(), s, "wall")
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := explain.WriteJSON(&b, []explain.Explanation{*e}); err != nil {
		t.Fatal(err)
	}
	var got []struct {
		Reading, Unit, Surface string
		Value                  float64
		Lights                 []struct {
			Light string
			Value float64
			Ways  []struct {
				Steps []struct {
					Symbol  string
					Formula string
					In      []struct {
						Symbol string
						Value  float64
					}
					Value float64
				}
			}
		}
	}
	if err := json.Unmarshal(b.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	g := got[0]
	steps := g.Lights[0].Ways[0].Steps
	last := steps[len(steps)-1]
	known := map[string]float64{}
	for _, in := range last.In {
		known[in.Symbol] = in.Value
	}
	again := evaluate(t, last.Formula, known, "wall")
	if g.Unit != "cd/m²" || g.Surface != "hall.top" || !(math.Abs(again-last.Value) <= 1e-6*again) || !(math.Abs(g.Value-g.Lights[0].Value) <= 1e-7*g.Value) {
		t.Errorf("%+v; worked out again it is %g", g, again)
	}
}

// Light by a mirror is called that, of the mirror itself and of what the mirror shows, and a pane a pane: as meter calls them.
func TestMirrorsAreNoPanes(t *testing.T) {
	text, err := samples.Text("fitting-room")
	if err != nil {
		t.Fatal(err)
	}
	e, err := explain.Of(context.Background(), studies(t, string(text))[0], "imre.key")
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := explain.Write(&b, []explain.Explanation{*e}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"by glass through yard ", "reflected off fitting.ceiling by glass ", "reflected off fitting.right "} {
		if !strings.Contains(b.String(), "    "+want) {
			t.Errorf("it does not say %q:\n%s", want, &b)
		}
	}
	for _, wrong := range []string{"through glass", "from glass", "reflected from"} {
		if strings.Contains(b.String(), wrong) {
			t.Errorf("it says %q:\n%s", wrong, &b)
		}
	}
}
