package study_test

import (
	"flag"
	"math"
	"path/filepath"
	"slices"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/study"
)

// Scenes of one odd thing each (a silver board, a shade, a blind, a projection spot) are held to the path tracer as well. What it
// gives for them is recorded, for it takes minutes:
//
//	go test ./plan/study -timeout 0 -truth-record    traces what has no record, or has changed its words, and records it
//	go test ./plan/study -timeout 0 -truth-afresh    holds readings to a new trace of each, with other rays, and records nothing
var (
	recordOdd = flag.Bool("truth-record", false, "trace odd scenes without a record, and record them")
	traceOdd  = flag.Bool("truth-afresh", false, "trace odd scenes, whatever the record says")
)

// oddError is the standard error that odd scenes are traced to, of the total.
const oddError = 3e-3

// The seeds of what is recorded and of what is traced afresh.
const (
	recordedSeed = 1
	afreshSeed   = 2
)

// Where odd scenes and points of fields are recorded.
var (
	oddTable   = filepath.Join("testdata", "truth", "odd.txt")
	fieldTable = filepath.Join("testdata", "truth", "fields.txt")
)

// heldToTruth holds the readings of a scene to the path tracer: what comes straight from lamps and all of it are off by no more
// than a share of the true total beyond its noise.
func heldToTruth(t *testing.T, name, scene string, most float64) {
	t.Helper()
	s := laidOut(t, scene)
	want := oddTruth(t, scene, s)
	if len(want) == 0 {
		t.Errorf("%s: nothing is lit", name)
	}
	for _, m := range misses(name, run(t, s, study.Options{ReadingsOnly: true}), want) {
		t.Logf("%s %s: %.2f %% off, stated %.2f %%, noise %.2f: %s", name, m.name, 100*m.off, 100*m.stated, 100*m.noise, m.words)
		if !(m.direct <= most && m.total <= most) || math.IsNaN(m.reflected) {
			t.Errorf("%s %s: the direct light is %.2f %% off, all of it %.2f %%: %s", name, m.name, 100*m.direct, 100*m.total, m.words)
		}
	}
}

// oddTruth is what the path tracer gives for the readings of an odd scene.
func oddTruth(t *testing.T, scene string, s *plan.Setup) []traced {
	t.Helper()
	return recordedTruth(t, oddTable, scene, func(seed uint64) []traced { return trace(s, truth.Options{Seed: seed, Error: oddError}) })
}

// recordedTruth is what a table holds of what the path tracer gives, by a text that says all of what was traced.
func recordedTruth(t *testing.T, table, text string, trace func(seed uint64) []traced) []traced {
	t.Helper()
	if *traceOdd {
		return trace(afreshSeed)
	}
	all := readTable(t, table)
	sum := sumOf(text)
	if i := slices.IndexFunc(all, func(r recorded) bool { return r.sum == sum }); i >= 0 {
		return all[i].readings
	}
	if !*recordOdd {
		t.Fatal("nothing is recorded of the scene: see -truth-record")
	}
	r := recorded{seed: recordedSeed, sum: sum, readings: trace(recordedSeed)}
	writeTable(t, table, append(all, r))
	return r.readings
}
