package cue_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/cue"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
)

// setups lays out all set-ups of a scene.
func setups(t *testing.T, text string) map[string]*plan.Setup {
	t.Helper()
	log := &source.Log{}
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte("scrimshaw: 1\n" + text)}, log)
	all := map[string]*plan.Setup{}
	for _, s := range resolve.ResolveAll(document, nil, log) {
		all[s.Name] = s
	}
	if log.Failed() {
		t.Fatalf("%s\n%v", text, log.All())
	}
	return all
}

// run computes the readings of a set-up.
func run(t *testing.T, s *plan.Setup) *study.Study {
	t.Helper()
	lit, err := study.Run(t.Context(), s, study.Options{ReadingsOnly: true, Quality: light.Draft})
	if err != nil {
		t.Fatal(err)
	}
	return lit
}

// exact is how near a cue comes to a run of its levels, as a share; another white, at which a unit gives other light, comes to rounded, for
// reflected light is followed in single precision.
const (
	exact   = 1e-9
	rounded = 1e-7
)

// kinds are scenes of several kinds, each with two cues, what is written of the lights after them, and halfway through the second. The
// set-ups after and half have those levels written, and no cues.
var kinds = map[string]string{
	"gels, a bicolour lamp to another white, and a bare tungsten that warms": `
rooms: {den: {size: [5, 4]}}
people: {ada: {at: [2, 2], faces: A}}
cameras: {A: {at: [4, 1], lens: 35 mm}}
lights:
  l: {unit: led-point-300-bicolour, at: [0.6, 3.2], height: 2, level: 80 %, colour: 3200 K, gels: [1/4 CTO]}
  w: {unit: fresnel-tungsten-650, at: [4.5, 3.4], height: 2.2, aim: ada, level: 90 %}
cues:
  q1: {at: she turns, lights: {l: 20 %, w: 35 %}}
  q2: {over: 4 s, lights: {l: {level: 60 %, colour: 5600 K}, w: 10 %}}
setups:
  base: {}
  after: {cues: {q1: strike, q2: strike}, change: {lights: {l: {level: 60 %, colour: 5600 K}, w: {level: 10 %}}}}
  half: {cues: {q1: strike, q2: strike}, change: {lights: {l: {level: 40 %, colour: HALF}, w: {level: 22.5 %}}}}
`,
	"cloth, a net and a lamp of a discharge that gets bluer": `
rooms: {den: {size: [5, 4]}}
people: {ada: {at: [2, 2], faces: 90}}
lights:
  d: {unit: discharge-575, at: [0.5, 2], height: 1.9, aim: ada, diffusion: half-diffusion}
  b: {unit: led-point-300-bicolour, at: [4.5, 2], height: 1.8, aim: ada, level: off, count: 2}
grip: {f: {frame: [1, 1], at: [3.4, 2], height: 1.7, faces: ada, cloth: silk}}
cues:
  q1: {lights: {d: 80 %}}
  q2: {over: 4 s, lights: {d: 60 %, b: {level: 40 %, colour: 3200 K, tint: +0.002}}}
setups:
  base: {}
  after: {cues: {q1: strike, q2: strike}, change: {lights: {d: {level: 60 %}, b: {level: 40 %, colour: 3200 K, tint: +0.002}}}}
  half: {cues: {q1: strike, q2: strike}, change: {lights: {d: {level: 70 %}, b: {level: 20 %, colour: 3200 K, tint: +0.002}}}}
`,
	"a mirror, a shaded practical and no people": `
rooms: {den: {size: [5, 4]}}
furniture: {glass: {mirror: [1.2, 1], at: {wall: den.top}, lift: 0.9}, desk: {table: [1.2, 0.7, 0.74], at: [2, 2]}}
lights:
  lamp: {unit: practical-table, at: {top: desk}, bulb: {watts: 40 W}, level: off}
  l: {unit: led-point-300-bicolour, at: [4, 1], height: 1.6, aim: glass, level: 50 %}
meters: {m: {dome: [1.4, 1, 1.3], facing: desk}, wall: {flat: [1, 0.01, 1.2], facing: 0}}
cues:
  q1: {lights: {lamp: 60 %}}
  q2: {at: again, over: 1 min, lights: {lamp: 30 %, l: off}}
setups:
  base: {}
  after: {cues: {q1: strike, q2: strike}, change: {lights: {lamp: {level: 30 %}, l: {level: off}}}}
  half: {cues: {q1: strike, q2: strike}, change: {lights: {lamp: {level: 45 %}, l: {level: 25 %}}}}
`,
	"light from outside, to a room behind a door, a step lower": `
rooms: {den: {size: [5, 4]}, hall: {at: [5.15, 0], size: [3, 4], base: -0.4}}
openings: {w: {window: den.left, width: 1.4}, d: {door: den.right, along: 1.5, ajar: 60}}
people: {ada: {at: [6.6, 1.8], faces: 270}}
cameras: {A: {at: [2, 2], looks: ada, lens: 35 mm}}
lights:
  day: {unit: led-point-600-bicolour, at: {opening: w, out: 2}, height: 2, aim: w, count: 2, colour: 4300 K, level: 40 %}
  hall-lamp: {output: {lumens: 400, face: [0.2, 0.2]}, at: [7.4, 3], height: 1.6, aim: ada, level: off}
cues:
  q1: {lights: {day: off, hall-lamp: 30 %}}
  q2: {over: 2 s, lights: {day: 20 %, hall-lamp: 70 %}}
setups:
  base: {}
  after: {cues: {q1: strike, q2: strike}, change: {lights: {day: {level: 20 %}, hall-lamp: {level: 70 %}}}}
  half: {cues: {q1: strike, q2: strike}, change: {lights: {day: {level: 10 %}, hall-lamp: {level: 50 %}}}}
`,
	"open ground, a bicolour lamp to another white": `
people: {ada: {at: [2, 2], faces: 0}}
lights:
  l: {unit: led-point-300-bicolour, at: [0.6, 3.2], height: 2, aim: ada, level: 80 %, colour: 3200 K, gels: [1/4 CTO]}
cues:
  q1: {at: she turns, lights: {l: 20 %}}
  q2: {over: 4 s, lights: {l: {level: 60 %, colour: 5600 K}}}
setups:
  base: {}
  after: {cues: {q1: strike, q2: strike}, change: {lights: {l: {level: 60 %, colour: 5600 K}}}}
  half: {cues: {q1: strike, q2: strike}, change: {lights: {l: {level: 40 %, colour: HALF}}}}
`,
	"open ground in feet, two people with a mark": `
units: ft
people: {ada: {at: [0, 0], faces: noor, marks: {far: {at: [3, 3], faces: noor}}}, noor: {at: [6, 0], faces: ada}}
cameras: {A: {at: [3, -9], lens: 35 mm}}
lights:
  k: {output: {candela: 3000, shape: uniform}, at: [0, 8], height: 7, level: 10 %, gels: [full CTB]}
  s: {output: {luminance: 900, face: [3, 3]}, at: [8, 8], height: 6, aim: noor, colour: 4000 K}
cues:
  q1: {at: 5 s, lights: {k: 100 %}}
  q2: {at: 9 s, over: 4 s, lights: {k: 50 %, s: {level: 20 %, colour: 4000 K}}}
setups:
  base: {}
  after: {cues: {q1: strike, q2: strike}, change: {lights: {k: {level: 50 %}, s: {level: 20 %}}}}
  half: {cues: {q1: strike, q2: strike}, change: {lights: {k: {level: 75 %}, s: {level: 60 %}}}}
`,
}

// halfway is the white halfway between 3200 K and 5600 K by the even way in mireds.
func halfway() string {
	return fmt.Sprintf("%.12f K", colour.Mired((colour.Mired(3200)+colour.Mired(5600))/2))
}

// A cue is what a run gives with its levels and colours written, and a fade is so at every time.
func TestACueIsARunOfItsLevels(t *testing.T) {
	for name, text := range kinds {
		all := setups(t, strings.ReplaceAll(text, "HALF", halfway()))
		by := exact
		if strings.Contains(text, "rooms:") && strings.Contains(text, "unit: led-point-300-bicolour") && strings.Contains(text, "colour: ") {
			by = rounded
		}
		base, after, half := run(t, all["base"]), run(t, all["after"]), run(t, all["half"])
		cues := base.Readings.Cues
		if len(cues.States) != 3 || after.Readings.Cues != nil {
			t.Fatalf("%s: %d states, and cues that were struck: %v", name, len(cues.States), after.Readings.Cues != nil)
		}
		same(t, name+", before", cues.States[0].Readings, &base.Readings, exact)
		same(t, name+", after", cues.States[2].Readings, &after.Readings, by)
		middle := cues.Axis.Start[1] + base.Setup.Cues[1].Over/2
		for i := range cues.Curves {
			c := &cues.Curves[i]
			shown := c.Person + ".key"
			if c.Meter {
				shown = c.Person
			}
			key := half.Readings.Named(shown)
			if got := at(t, c, middle); off(got.Lux, *key.Lux) > by || off(*got.Over, *key.Over) > by {
				t.Errorf("%s: %s halfway has %g lx, %g over, and a run %g and %g", name, c.Person, got.Lux, *got.Over, *key.Lux, *key.Over)
			}
			for k, when := range []float64{0, cues.Axis.End} {
				end := cues.States[2*k].Readings
				for n := range end {
					if end[n].Name == shown && off(at(t, c, when).Lux, *end[n].Lux) > exact {
						t.Errorf("%s: at %g s the curve of %s has %g lx, and the table %g", name, when, c.Person, at(t, c, when).Lux, *end[n].Lux)
					}
				}
			}
		}
	}
}

// off is how far a figure is from another, as a share of it, or of one where it is small.
func off(got, want float64) float64 { return math.Abs(got-want) / math.Max(1, math.Abs(want)) }

// same holds the readings after a cue to those of a run.
func same(t *testing.T, name string, got []meter.CueReading, want *meter.Set, by float64) {
	t.Helper()
	n := 0
	for i := range got {
		g, w := &got[i], want.Named(got[i].Name)
		n++
		light, wanted := g.Lux, w.Lux
		if g.Luminance != nil {
			light, wanted = g.Luminance, w.Luminance
		}
		if off(*light, *wanted) > by {
			t.Errorf("%s: %s has %.12g, and a run %.12g", name, g.Name, *light, *wanted)
		}
		if (g.CCT == nil) != (w.CCT == nil) || g.CCT != nil && off(*g.CCT, *w.CCT) > by {
			t.Errorf("%s: %s has another colour than a run", name, g.Name)
		}
		if f := want.FaceOf(g.Person); f != nil && strings.HasSuffix(g.Name, ".key") && g.Side != f.Side {
			t.Errorf("%s: the key of %s is %s, and of a run %s", name, g.Person, g.Side, f.Side)
		}
	}
	if n == 0 {
		t.Errorf("%s: nothing is read", name)
	}
}

// at is the last point of a curve at a time.
func at(t *testing.T, c *meter.Curve, seconds float64) (found meter.CurvePoint) {
	t.Helper()
	nearest := math.Inf(1)
	for _, p := range c.Points {
		if d := math.Abs(p.Seconds - seconds); d <= nearest+1e-9 {
			nearest, found = d, p
		}
	}
	if nearest > 1e-9 {
		t.Fatalf("the curve of %s has no point at %g s", c.Person, seconds)
	}
	return found
}

// The curve of a lone lamp is that of its level, by hand: on a dimmer without a curve the light goes with it, and where the next cue takes
// a light before its fade is over it goes on from there.
func TestTheCurveOfALoneLamp(t *testing.T) {
	s := run(t, setups(t, `
people: {ada: {at: [0, 0], faces: 0}}
lights: {k: {output: {candela: 2000, shape: uniform}, at: [0, 3], height: 1.59, level: 20 %}}
cues:
  q1: {at: 10 s, over: 8 s, lights: {k: 100 %}}
  q2: {at: 14 s, over: 2 s, lights: {k: 0 %}}
  q3: {at: 20 s, lights: {k: 40 %}}
`)[""])
	full := *s.Readings.Named("ada.key").Lux / 0.2
	c := &s.Readings.Cues.Curves[0]
	for seconds, level := range map[float64]float64{0: 0.2, 10: 0.2, 12: 0.4, 14: 0.6, 15: 0.3, 16: 0, 20: 0.4, s.Readings.Cues.Axis.End: 0.4} {
		if got := at(t, c, seconds); off(got.Lux, level*full) > exact {
			t.Errorf("%g lx at %g s, want %g", got.Lux, seconds, level*full)
		}
	}
	if before := c.Points[indexBefore(c, 20)]; before.Lux != 0 || before.Over != nil {
		t.Errorf("before the snap there are %g lx", before.Lux)
	}
	last := math.Inf(-1)
	for _, p := range c.Points {
		if p.Seconds < last {
			t.Fatalf("the curve goes back to %g s", p.Seconds)
		}
		last = p.Seconds
	}
	if s.Readings.Cues.Axis.End < 20 || !s.Readings.Cues.Axis.Timed {
		t.Errorf("the axis ends at %g s, timed %v", s.Readings.Cues.Axis.End, s.Readings.Cues.Axis.Timed)
	}
}

// Where there is nobody the meters have curves, but spots, and by their light; where there is somebody they have none.
func TestTheCurvesOfMeters(t *testing.T) {
	const text = `
lights: {k: {output: {candela: 2000, shape: uniform}, at: [0, 3], height: 2, level: 20 %}}
cameras: {A: {at: [3, 3], height: 1.5, looks: 270, lens: 35 mm}}
meters: {low: {flat: [0, 3, 0], facing: up}, beside: {dome: [1, 3, 2], facing: 270}, seen: {spot: [0, 3, 0], from: A}}
cues: {q1: {at: 10 s, over: 8 s, lights: {k: 100 %}}}
`
	s := run(t, setups(t, text)[""])
	var names []string
	for i := range s.Readings.Cues.Curves {
		c := &s.Readings.Cues.Curves[i]
		names = append(names, c.Person)
		full := *s.Readings.Named(c.Person).Lux / 0.2
		if got := at(t, c, 14); !c.Meter || off(got.Lux, 0.6*full) > exact {
			t.Errorf("%s has %g lx halfway, want %g", c.Person, got.Lux, 0.6*full)
		}
	}
	if !slices.Equal(names, []string{"low", "beside"}) {
		t.Errorf("the curves are of %q", names)
	}
	s = run(t, setups(t, "people: {ada: {at: [0, 0], faces: 0}}"+text)[""])
	if all := s.Readings.Cues.Curves; len(all) != 1 || all[0].Meter || all[0].Person != "ada" {
		t.Errorf("with somebody there the curves are %+v", all)
	}
}

// indexBefore is the first point at a time: before what snaps there.
func indexBefore(c *meter.Curve, seconds float64) int {
	for i, p := range c.Points {
		if p.Seconds == seconds {
			return i
		}
	}
	return 0
}

// Where a cue has no time, fades take half of the axis, and as much stands before, between and after them; else the take lasts beyond its last cue by
// eight hundredths, and by a second at least.
func TestTheAxis(t *testing.T) {
	for cues, want := range map[string][]float64{ // when the cues go and where the axis ends, s, by hand
		"{q1: {over: 4 s, lights: {k: 20 %}}, q2: {over: 2 s, lights: {k: 60 %}}}":         {2, 8, 12},
		"{q1: {lights: {k: 20 %}}, q2: {lights: {k: 60 %}}}":                               {1, 2, 3},
		"{q1: {at: 10 s, lights: {k: 20 %}}}":                                              {10, 11},
		"{q1: {at: 10 s, lights: {k: 20 %}}, q2: {at: 98 s, over: 2 s, lights: {k: off}}}": {10, 98, 108},
	} {
		s := run(t, setups(t, "lights: {k: {output: {candela: 2000, shape: uniform}, at: [0, 3], height: 1.59}}\nmeters: {m: {flat: [0, 0, 0], facing: up}}\ncues: "+cues+"\n")[""])
		axis := s.Readings.Cues.Axis
		if got := append(slices.Clone(axis.Start), axis.End); !slices.EqualFunc(got, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("%s: the axis has %v, want %v", cues, got, want)
		}
	}
}

// What holds no low level is out below it, and keeps to its steps.
func TestAFadeKeepsToWhatTheUnitHolds(t *testing.T) {
	for levels, held := range map[kit.Levels]map[float64]float64{
		{}:                       {0: 0, 0.003: 0.003, 1: 1},
		{Least: 0.5}:             {0.49: 0, 0.5: 0.5, 0.73: 0.73},
		{Least: 1}:               {0.99: 0, 1: 1},
		{Least: 0.01, Step: 0.1}: {0.34: 0.3, 0.36: 0.4, 0.005: 0, 1: 1},
	} {
		for level, want := range held {
			if got := levels.Held(level); !(math.Abs(got-want) <= 1e-12) {
				t.Errorf("%+v holds %g as %g, want %g", levels, level, got, want)
			}
		}
	}
}

// A light that plays is read at its lowest and its highest level as runs have it, and in the mean halfway where its light goes with its
// level; one that comes up in a cue plays from there on, and no lower than its unit holds.
func TestLightsThatPlay(t *testing.T) {
	const text = `
rooms: {den: {size: [5, 4]}}
people: {ada: {at: [2, 2], faces: A}}
cameras: {A: {at: [4, 1], lens: 35 mm}}
lights:
  fire: {output: {lumens: 2000, face: [0.5, 0.5]}, at: [0.5, 2], height: 0.5, aim: ada, level: 60 %, plays: {kind: fire, low: 15 %}}
  set: {unit: discharge-575, at: [4.5, 3], height: 1.5, aim: ada, level: off, plays: screen}
cues: {q1: {lights: {set: 80 %}}}
setups:
  base: {}
  low: {change: {lights: {fire: {level: 15 %}}}, cues: {q1: strike}}
`
	all := setups(t, text)
	base, low := run(t, all["base"]), run(t, all["low"])
	played := base.Readings.Played
	if len(played) != 2 || played[0].Cue != "" || played[1].Cue != "q1" || played[0].Play.Rate != 4 {
		t.Fatalf("%+v", played)
	}
	if !(math.Abs(played[1].Low-0.5) <= 1e-12) || played[1].High != 0.8 {
		t.Errorf("the screen plays from %g to %g, and its unit holds no less than 0.5", played[1].Low, played[1].High)
	}
	for i := range played[0].Readings {
		r := &played[0].Readings[i]
		own, least := base.Readings.Named(r.High.Name), low.Readings.Named(r.High.Name)
		if off(*r.High.Lux, *own.Lux) > exact || off(*r.Low.Lux, *least.Lux) > exact || off(*r.Mean.Lux, (*own.Lux+*least.Lux)/2) > exact {
			t.Errorf("%s: %g, %g, %g lx, and runs give %g to %g", r.High.Name, *r.Low.Lux, *r.Mean.Lux, *r.High.Lux, *least.Lux, *own.Lux)
		}
	}
}

// Cues are summed from the basis that there is: many of them cost less than the set-up they are of.
func BenchmarkCues(b *testing.B) {
	log := &source.Log{}
	shipped, err := kit.Shipped()
	if err != nil {
		b.Fatal(err)
	}
	text := "scrimshaw: 1\n" + kinds["cloth, a net and a lamp of a discharge that gets bluer"]
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	s := resolve.Resolve(document, document.Base(log), log)
	lit, err := study.Run(b.Context(), s, study.Options{ReadingsOnly: true})
	if err != nil {
		b.Fatal(err)
	}
	c := cue.Lit{Setup: s, Basis: lit.Basis, Levels: lit.Levels, Requests: lit.Requests}
	for b.Loop() {
		c.Of()
	}
}

// No ray is followed for a cue: what cues do comes of a basis whose world and emitters are gone.
func TestCuesNeedNoNewBasis(t *testing.T) {
	s := run(t, setups(t, strings.ReplaceAll(kinds["gels, a bicolour lamp to another white, and a bare tungsten that warms"], "HALF", "4000 K"))["base"])
	alone := cue.Lit{Setup: s.Setup, Basis: s.Basis, Levels: s.Levels, Requests: s.Requests}
	s.World = nil
	if got := alone.Of(); len(got.States) != 3 || len(got.Curves) != 1 {
		t.Fatalf("%d states, %d curves", len(got.States), len(got.Curves))
	}
}
