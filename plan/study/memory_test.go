package study_test

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/days"
	"scrimshaw/plan/light"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/study"
	"scrimshaw/samples"
)

// odd is a day in which things move that light passes in odd ways: glass, a mirror, cloth, barndoors and a tube; lamps that go off, change colour and come back, and a person who leaves.
const odd = `{scrimshaw: 1, units: ft,
  rooms: {den: {size: [14, 12], walls: cream}},
  openings: {bay: {window: den.top, along: 5, width: 5, panes: [2, 1], dressing: [{cloth: sheer, drawn: [40 %, 0]}]}},
  furniture: {desk: {table: [4, 2, 2.5], at: [6, 7]}, glass: {mirror: [2, 4], at: {wall: den.right, along: 4}, lift: 1}},
  people: {ida: {at: [7, 5], pose: seated, faces: desk}, jon: {at: [11, 9]}},
  cameras: {A: {at: [3, 2], lens: 32 mm, looks: ida}},
  grip: {silk: {frame: [4, 4], cloth: full-grid-cloth, at: [9, 2], height: 6, faces: ida}},
  lights: {
    sun: {unit: led-point-600-bicolour, modifier: reflector-wide, at: {opening: bay, out: 8}, height: 9, aim: ida, barndoors: {top: 70}},
    key: {unit: led-point-300-bicolour, modifier: softbox-90, at: [12, 2], height: 6, aim: ida},
    spot: {unit: fresnel-tungsten-300, at: [2, 2], height: 7, aim: desk},
    lamp: {output: {lumens: 300, tube: 2}, at: [6, 8], height: 4, aim: down}},
  meters: {door: {spot: [13.9, 11, 4], from: A}},
  setups: {
    wide: {},
    close: {after: wide, change: {cameras: {A: {at: [4, 5]}}, lights: {key: {at: [10, 2]}, lamp: {level: 20 %}}}},
    night: {after: close, change: {lights: {sun: {level: off}, key: {colour: 3200 K}}}},
    alone: {after: night, change: {people: {jon: strike}}},
    again: {after: alone, change: {lights: {spot: {at: [2, 3]}}}}}}`

// Set-ups that share what they have in common are lit the same to the bit as by themselves: readings with all their parts, and
// fields.
func TestSharedWorldsGiveTheSameBits(t *testing.T) {
	t.Parallel()
	fields := study.Options{Quality: light.Draft, Step: 0.5, Fixed: true, AroundHeads: true}
	shared := heldToThemselves(t, "odd", odd, fields)
	for seed := range uint64(2) {
		shared += heldToThemselves(t, fmt.Sprint("day ", seed), days.Make(seed), study.Options{Quality: light.Draft, ReadingsOnly: true})
	}
	if shared < 3 {
		t.Errorf("%d set-ups had the solids of the one before: too few to tell", shared)
	}
}

// heldToThemselves lights the set-ups of a day one after the other and each by itself, and counts those that shared a World.
func heldToThemselves(t *testing.T, what, text string, o study.Options) (shared int) {
	t.Helper()
	with := o
	with.Memory = &study.Memory{}
	var before *plan.Setup
	for _, s := range setupsOf(t, text, scene.Env{}) {
		sameStudy(t, what+", "+s.Name, run(t, s, with), run(t, s, o))
		if before != nil && reflect.DeepEqual(before.Set, s.Set) {
			shared++
		}
		before = s
	}
	return shared
}

// sameStudy holds all that was computed of a set-up to the same bits.
func sameStudy(t *testing.T, what string, got, want *study.Study) {
	t.Helper()
	if !reflect.DeepEqual(got.Readings, want.Readings) {
		t.Errorf("%s: other readings", what)
	}
	if !reflect.DeepEqual(got.Basis.Terms, want.Basis.Terms) || !reflect.DeepEqual(got.Basis.Points, want.Basis.Points) {
		t.Errorf("%s: the light comes by other ways", what)
	}
	for i := range want.Fields {
		if !reflect.DeepEqual(got.Fields[i].Lux, want.Fields[i].Lux) {
			t.Errorf("%s: another field %s", what, want.Fields[i].Name)
		}
	}
	if !reflect.DeepEqual(got.Beams, want.Beams) || !reflect.DeepEqual(got.Views, want.Views) {
		t.Errorf("%s: other beams or views", what)
	}
}

// BenchmarkSharedWorld is a day in one set with a lamp that moves, by set-ups that share what they have in common; "alone" is how
// many times as long set-ups by themselves take, in the same run.
func BenchmarkSharedWorld(b *testing.B) {
	text, err := samples.Text("four-keys")
	if err != nil {
		b.Fatal(err)
	}
	all := setupsOf(b, string(text), scene.Env{})
	var together, alone time.Duration
	for b.Loop() {
		memory := &study.Memory{}
		for _, m := range []*study.Memory{memory, nil} {
			start := time.Now()
			for _, s := range all {
				run(b, s, study.Options{Fixed: true, AroundHeads: true, Memory: m})
			}
			if m != nil {
				together += time.Since(start)
			} else {
				alone += time.Since(start)
			}
		}
	}
	b.ReportMetric(alone.Seconds()/together.Seconds(), "alone")
}
