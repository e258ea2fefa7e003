package study_test

import (
	"context"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/internal/truth/scenes"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/light"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/samples"
)

// setup resolves a sample, its first set-up where it has several.
func setup(t testing.TB, name string) *plan.Setup {
	t.Helper()
	text, err := samples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	document := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: name, Text: text}, log)
	first := ""
	if len(document.Setups) > 0 {
		first = document.Setups[0]
	}
	s := resolve.Resolve(document, document.Scene(first, log), log)
	if log.Failed() {
		t.Fatalf("%s: %+v", name, log.All())
	}
	return s
}

func run(t testing.TB, s *plan.Setup, o study.Options) *study.Study {
	t.Helper()
	lit, err := study.Run(context.Background(), s, o)
	if err != nil {
		t.Fatal(err)
	}
	return lit
}

// atEdge says whether the light at a place differs from that around it by so much that a shadow's
// edge may run between: there a lattice point and a ray may fall on different sides.
func atEdge(at func(light.Receptor) float64, r light.Receptor, value float64) bool {
	for _, d := range []r3.Vec{{X: 2e-3}, {X: -2e-3}, {Y: 2e-3}, {Y: -2e-3}} {
		moved := r
		moved.At = r3.Add(r.At, d)
		if math.Abs(at(moved)-value) > 0.02*value {
			return true
		}
	}
	return false
}

// Direct light, which single receptors find exactly and fields from points of an opening, in the samples: 0.25 % in
// the mean and 1 % at 95 of 100 points above 5 lx, away from the hard edges of points.
func TestFieldsAgreeWithMeters(t *testing.T) {
	for _, name := range samples.Names() {
		s := setup(t, name)
		errors := directErrors(s, run(t, s, study.Options{}), 1000)
		promised(t, name, errors, 0.0025, 0.010)
	}
}

// fieldScenes is how many random scenes of a kind fields are held to readings in.
var fieldScenes = flag.Int("field-scenes", 3, "how many random scenes of each kind the fields are held to readings in")

// The same on floors of random scenes of every kind: lamps inside, outside windows, behind a doorway, in clutter.
func TestFieldsOfEveryKind(t *testing.T) {
	for _, quality := range []struct {
		light.Quality
		mean, p95 float64
		scenes    int
	}{{light.Normal, 0.0025, 0.010, *fieldScenes}, {light.Fine, 0.0015, 0.005, (*fieldScenes + 2) / 3}} {
		for _, kind := range scenes.Kinds {
			var errors []float64
			for seed := range quality.scenes {
				_, s := made(t, kind, seed)
				errors = append(errors, directErrors(s, run(t, s, study.Options{Quality: quality.Quality, Step: 0.1}), 400/quality.scenes+1)...)
			}
			promised(t, fmt.Sprint(quality.Quality, " ", kind), errors, quality.mean, quality.p95)
		}
	}
}

// directErrors are by how much the direct light of fields differs from that of receptors, as shares, at some points.
func directErrors(s *plan.Setup, lit *study.Study, points int) (errors []float64) {
	rng := rand.New(rand.NewPCG(1, 2))
	meter := lit.World.Evaluator(light.Emitters(s), lit.Levels)
	back := backs(lit)
	for tried := 0; len(errors) < points && tried < 20*points; tried++ {
		k := rng.IntN(len(lit.Fields))
		f := &lit.Fields[k]
		l := &f.Lattice
		i, j := rng.IntN(l.NU), rng.IntN(l.NV)
		value := float64(f.Lux[j*l.NU+i]) - float64(back[k][j*l.NU+i])
		if l.Masked(i, j) || value <= 5 {
			continue
		}
		r := light.Receptor{At: l.At(i, j), Axis: l.Axis(l.At(i, j)), Response: l.Response, Skip: l.Skip}
		if want := meter(r); !atEdge(meter, r, want) {
			errors = append(errors, math.Abs(value/want-1))
		}
	}
	return errors
}

// backs is the reflected light of every field.
func backs(s *study.Study) [][]float32 {
	all := make([][]float32, len(s.Fields))
	for k := range s.Fields {
		all[k] = make([]float32, len(s.Fields[k].Lux))
		s.Basis.ReflectedField(k, s.Levels, all[k])
	}
	return all
}

// The reflected part of fields, from 256 rays a point shared with its neighbours, and of single
// receptors, from rays of their own: over all samples 1.5 % apart in the mean, and 5 % at 95 of 100 points. A night
// lit by a hot spot on a table has the most, 1.4 and 5.1 % by itself. The
// largest differences lie beside furniture, where light changes within a hand's breadth.
func TestReflectedFieldsAgreeWithMeters(t *testing.T) {
	var all []float64
	points := 60
	if *recordedAll {
		points = 300
	}
	for _, name := range samples.Names() {
		s := setup(t, name)
		lit := run(t, s, study.Options{})
		errors := reflectedErrors(t, s, lit, points)
		mean, most := meanAnd95(errors)
		t.Logf("%s: reflected light of fields and meters differs by %.2f %% in the mean, 95th percentile %.1f %%", name, 100*mean, 100*most)
		all = append(all, errors...)
	}
	promised(t, "reflected light of fields", all, 0.015, 0.05)
}

// The same on floors and at faces of random scenes of every kind, held to the path tracer: over all kinds, of which clutter alone
// has 5.1 % at 95 of 100.
func TestReflectedFieldsOfEveryKind(t *testing.T) {
	for _, quality := range []struct {
		light.Quality
		mean, p95 float64
	}{{light.Normal, 0.015, 0.05}, {light.Fine, 0.01, 0.03}} {
		if quality.Quality == light.Fine && !*recordedAll {
			continue // it takes minutes
		}
		var all []float64
		for _, kind := range scenes.Kinds {
			var errors []float64
			for seed := range *fieldScenes {
				text, s := made(t, kind, seed)
				errors = append(errors, tracedErrors(t, text, s, run(t, s, study.Options{Quality: quality.Quality}), 200 / *fieldScenes + 1)...)
			}
			mean, most := meanAnd95(errors)
			t.Logf("%s: reflected light of fields differs by %.2f %% in the mean, 95th percentile %.1f %%", kind, 100*mean, 100*most)
			all = append(all, errors...)
		}
		promised(t, fmt.Sprint(quality.Quality, " reflected"), all, quality.mean, quality.p95)
	}
}

// A map at faces leaves people out, however hot a lamp makes them: light that they would return comes to no point of it.
func TestFacesGetNoLightOffPeopleLeftOut(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
title: people left out
rooms: {den: {size: [4, 4], height: 2.6, walls: black}}
people:
  ada: {at: [1, 1.5], faces: 94}
  noor: {at: [2.5, 1.4], faces: 332}
lights: {near: {unit: discharge-575, at: [2.75, 0.7], height: 2.3, aim: noor}}
cameras: {A: {at: [1.1, 0.7], height: 1.45, lens: 35 mm}}
`)
	promised(t, "reflected light beside a hot person", reflectedErrors(t, s, run(t, s, study.Options{}), 101), 0.03, 0.1)
}

// tracedErrors are by how much the reflected light of fields differs from what the path tracer finds, as shares, at some
// points of more than 1 lx.
func tracedErrors(t *testing.T, text string, s *plan.Setup, lit *study.Study, points int) (errors []float64) {
	t.Helper()
	at, values := latticePoints(lit, points)
	receptors, key := make([]truth.Receptor, len(at)), text
	for i, r := range at {
		receptors[i] = truth.Receptor{At: r.At, Axis: r.Axis, Skip: r.Skip}
		if r.Response == light.Dome {
			receptors[i].Response = truth.Dome
		}
		key += fmt.Sprintf("%.6f %.6f %v %v\n", r.At, r.Axis, r.Response, r.Skip)
	}
	want := recordedTruth(t, fieldTable, key, func(seed uint64) (all []traced) {
		for i, v := range truth.Trace(s, receptors, truth.Options{Seed: seed, Error: tracedTo, Dark: leastBack}) {
			all = append(all, traced{strconv.Itoa(i), v.Direct, v.Reflected, v.Total})
		}
		return all
	})
	for i := range want {
		if v := &want[i].reflected; v.Y > leastBack {
			errors = append(errors, max(0, math.Abs(values[i]/v.Y-1)-2*v.YSE/v.Y))
		}
	}
	return errors
}

// latticePoints are some points of fields, and the reflected light there.
func latticePoints(lit *study.Study, points int) (at []light.Receptor, values []float64) {
	back := backs(lit)
	rng := rand.New(rand.NewPCG(3, 4))
	for tried := 0; len(values) < points && tried < 20*points; tried++ {
		k := rng.IntN(len(lit.Fields))
		l := &lit.Fields[k].Lattice
		if i, j := rng.IntN(l.NU), rng.IntN(l.NV); !l.Masked(i, j) {
			at = append(at, light.Receptor{At: l.At(i, j), Axis: l.Axis(l.At(i, j)), Response: l.Response, Skip: l.Skip})
			values = append(values, float64(back[k][j*l.NU+i]))
		}
	}
	return at, values
}

// leastBack is the reflected light, lx, below which points of fields are not compared.
const leastBack = 1

// tracedTo is the standard error that points of fields are traced to.
const tracedTo = 6e-3

// litPoints are some points of fields that get more than 1 lx of reflected light, and that light.
func litPoints(lit *study.Study, points int) (at []light.Receptor, values []float64) {
	all, back := latticePoints(lit, 10*points)
	for i := range all {
		if back[i] > leastBack && len(at) < points {
			at, values = append(at, all[i]), append(values, back[i])
		}
	}
	return at, values
}

// reflectedErrors are by how much the reflected light of fields differs from that of receptors, as shares, at some points.
func reflectedErrors(t *testing.T, s *plan.Setup, lit *study.Study, points int) (errors []float64) {
	at, values := litPoints(lit, points)
	const batch = 50 // more would share rays
	for from := 0; from < len(at); from += batch {
		some := at[from:min(from+batch, len(at))]
		b, err := lit.World.Basis(context.Background(), light.Emitters(s), light.Targets{Points: some})
		if err != nil {
			t.Fatal(err)
		}
		for i := range some {
			_, want := parts(b, lit.Levels, i)
			errors = append(errors, math.Abs(values[from+i]/want.Y()-1))
		}
	}
	return errors
}

// The readings of two-sizes hold light that comes back through panes, which rays meet in any order, and those of the
// ironing room light that passes cloth by turns.
func TestSameBitsForAnyNumberOfWorkers(t *testing.T) {
	for _, name := range []string{"map-room", "two-sizes", "ironing-room"} {
		s := setup(t, name)
		one := run(t, s, study.Options{Workers: 1})
		for _, workers := range []int{2, 8} {
			many := run(t, s, study.Options{Workers: workers})
			for i := range one.Fields {
				if !slices.Equal(one.Fields[i].Lux, many.Fields[i].Lux) {
					t.Errorf("%s: field %d differs between 1 and %d workers", name, i, workers)
				}
			}
			if !reflect.DeepEqual(one.Readings, many.Readings) {
				t.Errorf("%s: readings differ between 1 and %d workers", name, workers)
			}
		}
	}
}

func TestRelevelIsLinear(t *testing.T) {
	s := setup(t, "map-room")
	lit := run(t, s, study.Options{})
	before := slices.Clone(lit.Floor().Lux)
	half := light.Levels{}
	for name, level := range lit.Levels {
		half[name] = level.Scale(0.5)
	}
	key := *lit.Readings.Named("ines.key").Lux
	lit.Relevel(half)
	if got := *lit.Readings.Named("ines.key").Lux; !(math.Abs(got-key/2) <= 1e-12*key) {
		t.Errorf("half of %g lx is %g lx", key, got)
	}
	for n, v := range lit.Floor().Lux {
		if !(math.Abs(float64(v)-float64(before[n])/2) <= 1e-6*float64(before[n])) {
			t.Fatalf("point %d: half of %g lx is %g lx", n, before[n], v)
		}
	}
}

func TestMaskLeavesOutWhatStandsOnTheFloor(t *testing.T) {
	s := setup(t, "map-room")
	f := run(t, s, study.Options{}).Floor()
	for j := range f.Lattice.NV {
		for i := range f.Lattice.NU {
			p := f.Lattice.At(i, j)
			if f.Lattice.Masked(i, j) {
				continue
			}
			if s.RoomAt(r3.Vec{X: p.X, Y: p.Y, Z: p.Z + 0.01}) == nil && !onThreshold(s, p) {
				t.Fatalf("%v has data but lies in no room", p)
			}
		}
	}
}

func onThreshold(s *plan.Setup, p r3.Vec) bool {
	for i := range s.Openings {
		if o := &s.Openings[i]; o.FarRoom != "" && o.Kind != "window" {
			return true
		}
	}
	return false
}

func TestOpenGroundReachesBeyondWhatStands(t *testing.T) {
	s := &plan.Setup{Lights: nil}
	s.Exposure.Stop.N = 2
	lit := run(t, s, study.Options{})
	f := lit.Floor()
	if got := float64(f.Lattice.NU) * f.Lattice.U.X; !(math.Abs(got-6) <= 2*study.Step) {
		t.Errorf("open ground round nothing is %.2f m wide, want 3 m each way", got)
	}
}

func BenchmarkRun(b *testing.B) {
	s := setup(b, samples.Default)
	b.ReportAllocs()
	for b.Loop() {
		run(b, s, study.Options{})
	}
}

func BenchmarkRelevel(b *testing.B) {
	lit := run(b, setup(b, samples.Default), study.Options{})
	levels := light.Levels{}
	for name := range lit.Levels {
		levels[name] = colour.RGB{0.5, 0.5, 0.5}
	}
	b.ReportAllocs()
	for b.Loop() {
		lit.Relevel(levels)
	}
}

func TestProbeAgreesWithTheField(t *testing.T) {
	s := setup(t, "map-room")
	lit := run(t, s, study.Options{})
	f := lit.Floor()
	probe := lit.Probe(f)
	checked := 0
	for n := 0; n < len(f.Lux); n += 7 {
		i, j := n%f.Lattice.NU, n/f.Lattice.NU
		if f.Lattice.Masked(i, j) || f.Lux[n] < 5 {
			continue
		}
		p := f.Lattice.At(i, j)
		got := probe(r2.Vec{X: p.X, Y: p.Y})
		if math.Abs(got-float64(f.Lux[n])) <= 1e-3*got {
			checked++
		} else if !atEdge(lit.World.Evaluator(light.Emitters(s), lit.Levels), light.Receptor{At: p, Axis: f.Lattice.Normal}, got) {
			t.Errorf("at %v the probe gives %g lx, the field %g lx", p, got, f.Lux[n])
		}
	}
	if checked < 500 {
		t.Errorf("only %d points checked", checked)
	}
}

// TestProbeFollowsTheShadowOfANearThing: a plane just under the top of a box has the box's shadow from a large soft lamp as
// an edge. Between the points of the lattice the probe gives what a meter reads there, where the points give something else.
func TestProbeFollowsTheShadowOfANearThing(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
furniture: {block: {box: [1, 1, 1], at: [2, 0], material: black}}
lights: {soft: {output: {luminance: 5000, face: [1, 1]}, at: [0, 0], height: 1.6, aim: [2, 0, 1.6]}}
`)
	lit := run(t, s, study.Options{Planes: []study.Plane{{Height: 0.98}}})
	f := lit.Level()
	probe, meter := lit.Probe(f), lit.World.Evaluator(light.Emitters(s), lit.Levels)
	corner, step := f.Corner()
	worst, missed := 0.0, 0
	for i := range 40 {
		for j := range 40 {
			p := r2.Vec{X: 2.502 + 0.007*float64(i), Y: 0.1 + 0.013*float64(j)}
			at := f.At(p)
			want := meter(light.Receptor{At: at, Axis: f.Lattice.Normal})
			u, v := int((p.X-corner.X)/step), int((p.Y-corner.Y)/step)
			if want < 20 {
				continue
			}
			if nearest := float64(f.Lux[v*f.Lattice.NU+u]); math.Abs(nearest-want) > 0.2*want {
				missed++
			}
			worst = max(worst, math.Abs(probe(p)-want)/want)
		}
	}
	if missed < 50 {
		t.Errorf("only at %d places do the points of the field miss the light by a fifth: no edge runs there", missed)
	}
	if worst > 0.06 {
		t.Errorf("the probe is off by %.0f %%, want at most 6", 100*worst)
	}
}

// TestProbeKeepsTheSidesOfACardApart: what a card throws back lies before it, and right behind it is its shadow. Points of
// the lattice on either side are no neighbours.
func TestProbeKeepsTheSidesOfACardApart(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
rooms: {den: {size: [5, 4], height: 3, walls: black, floor: black, ceiling: black}}
lights: {lamp: {output: {candela: 4000, shape: uniform}, at: [0.6, 2], height: 1.6, aim: c}}
grip: {c: {card: [1.6, 1.6], at: [3.026, 2], height: 1.5, faces: [0.6, 2, 1.5], surface: white}}
`)
	lit := run(t, s, study.Options{Planes: []study.Plane{{Height: 1.5}}})
	probe := lit.Probe(lit.Level())
	for i := range 20 {
		y := 1.6 + 0.04*float64(i)
		before, behind := probe(r2.Vec{X: 3.02, Y: y}), probe(r2.Vec{X: 3.032, Y: y})
		far := probe(r2.Vec{X: 3.12, Y: y})
		if before < 3*far {
			t.Fatalf("at y %.2f there are %.2f lx before the card and %.2f lx behind it: it throws nothing back", y, before, far)
		}
		if behind > 1.5*far {
			t.Errorf("at y %.2f there are %.2f lx right behind the card, and %.2f lx a hand further", y, behind, far)
		}
	}
}

// Every level of floor has its own map: a room two steps up lay on none.
func TestEveryLevelOfFloorHasAField(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
rooms:
  den:  {size: [4, 3], height: 2.5}
  loft: {at: [4.3, 0], size: [3, 3], height: 2.5, base: 0.4}
  hall: {at: [0, 3.3], size: [4, 2], height: 2.5, base: 0.4}
lights: {a: {output: {lumens: 3000, shape: uniform}, at: [5.5, 1.5], height: 1.6, aim: down}}
`)
	lit := run(t, s, study.Options{Step: 0.5})
	var levels []float64
	for i := range lit.Fields {
		if f := &lit.Fields[i]; f.Kind == study.OnFloor {
			levels = append(levels, f.Z)
		}
	}
	if !slices.Equal(levels, []float64{0, 0.4}) {
		t.Fatalf("floors at %v, want 0 and 0.4", levels)
	}
	if most := slices.Max(lit.Fields[1].Lux); most < 50 {
		t.Errorf("the loft has at most %g lx under its lamp", most)
	}
}

// The floor that counts as the largest has the most points with data, not the widest box round them: here
// two closets far apart, and a hall.
func TestFloorIsTheLargest(t *testing.T) {
	s := laidOut(t, `scrimshaw: 1
rooms:
  one:  {at: [0, 0], size: [1, 1]}
  two:  {at: [20, 9], size: [1, 1]}
  hall: {at: [5, 2], size: [6, 4], base: 0.4}
lights: {a: {output: {lumens: 3000, shape: uniform}, at: [6, 3], height: 1.6, aim: down}}
`)
	if f := run(t, s, study.Options{Step: 0.2}).Floor(); f == nil || f.Z != 0.4 {
		t.Errorf("the largest floor is %+v, want the hall's", f)
	}
}
