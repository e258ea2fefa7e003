package explain_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/explain"
	"scrimshaw/plan/meter"
	"scrimshaw/plan/study"
)

// playing is a scene of lights that pass for others: one that wears gels which come off, one that gets more, one whose white is set, one beside a lamp of a
// strong colour, one for a white alone.
const playing = `{scrimshaw: 1, exposure: {stop: T2.8}, rooms: {den: {size: [5, 5]}}, openings: {w: {window: den.top, along: centre, width: 1.4}},
	people: {ada: {at: [2.5, 2.5], faces: A, marks: {door: {at: [3.6, 1.5], faces: A}}, walk: [[2, 1], [3, 1]]}}, cameras: {A: {at: [2.5, 0.5], lens: 35 mm}},
	meters: {m: {flat: [1, 1, 1], facing: up}},
	lights: {lamp: {unit: practical-table, at: [1, 1.8], height: 1.2, level: 80 %},
	  set: {unit: led-point-300-bicolour, modifier: softbox-90, at: [1.2, 0.8], height: 2, aim: ada, gels: [1/4 CTB, 1/4 plus green], stands-for: lamp},
	  bare: {unit: led-point-300-daylight, at: [3.8, 0.8], height: 2, aim: ada, gels: [1/2 CTO, 1/2 plus green], stands-for: {opening: w, colour: 5000 K}},
	  more: {output: {lumens: 900, disc: 0.3}, colour: 5600 K, tint: 0.006, at: [0.9, 2], height: 1.3, mount: hand, aim: ada, stands-for: lamp},
	  blue: {output: {candela: 90, shape: uniform}, gels: [deep blue], at: [4, 4], height: 1.3, mount: hand, aim: down, stands-for: lamp},
	  white: {unit: led-point-300-colour, at: [4, 2.4], height: 1.5, mount: hand, aim: ada, tint: 0.005, stands-for: 2900 K}}}`

// How a light passes for another is worked out again from the text, is what meter says, and is said where it is judged, and of nothing else.
func TestStandInsRedone(t *testing.T) {
	s := studies(t, playing)[0]
	holds(t, "playing", s)
	said := 0
	for _, reading := range append(meter.Names(s.Setup), meter.WalkNames(s.Setup)[0]) {
		e, err := explain.Of(context.Background(), s, reading)
		if err != nil {
			t.Fatal(err)
		}
		for i := range e.Lights {
			l := &e.Lights[i]
			judged := judgedAt(s, l.Name, reading)
			if (judged != nil) != (l.StandIn != nil) {
				t.Errorf("%s: %s is judged: %v", reading, l.Name, judged != nil)
			}
			if judged != nil {
				said++
				holdsPassing(t, reading+": "+l.Name, judged, l.StandIn.Steps)
			}
		}
	}
	if said < 20 {
		t.Errorf("%d are explained", said)
	}
}

// judgedAt is how a light passes at the face that a reading is of; nil where it is not judged there.
func judgedAt(s *study.Study, light, reading string) *meter.Passing {
	in := s.Readings.StandInOf(light)
	if in == nil || strings.Contains(reading, ".walk.") {
		return nil
	}
	for k := range in.Faces {
		if in.Faces[k].Person == s.Readings.Named(reading).Person {
			return &in.Faces[k]
		}
	}
	return nil
}

// holdsPassing holds the steps of a light that passes for another to what meter says.
func holdsPassing(t *testing.T, name string, p *meter.Passing, steps []explain.Step) {
	t.Helper()
	value := func(words string) (found []float64) {
		for _, step := range steps {
			if step.Words == words {
				found = append(found, step.Value)
			}
		}
		return found
	}
	var prices []float64
	for _, c := range []*meter.Cure{&p.Gels, p.Setting} {
		if c != nil && c.Changes() {
			prices = append(prices, c.Stops)
		}
	}
	if got := value("price"); !slices.Equal(got, prices) {
		t.Errorf("%s costs %v, and meter says %v", name, got, prices)
	}
	if p.Gap != nil && value("it is warmer by")[0] != p.Gap.Mired {
		t.Errorf("%s is %v mired warmer, and meter says %v", name, value("it is warmer by"), p.Gap.Mired)
	}
	if p.Way != nil && value("the angle between them")[0] != p.Way.Angle {
		t.Errorf("%s comes from %v beside it, and meter says %v", name, value("the angle between them"), p.Way.Angle)
	}
}
