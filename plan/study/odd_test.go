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

// oddTable is where odd scenes are recorded.
var oddTable = filepath.Join("testdata", "truth", "odd.txt")

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

// oddTruth is what the path tracer gives for an odd scene.
func oddTruth(t *testing.T, scene string, s *plan.Setup) []traced {
	t.Helper()
	if *traceOdd {
		return trace(s, truth.Options{Seed: afreshSeed, Error: oddError})
	}
	all := readTable(t, oddTable)
	sum := sumOf(scene)
	if i := slices.IndexFunc(all, func(r recorded) bool { return r.sum == sum }); i >= 0 {
		return all[i].readings
	}
	if !*recordOdd {
		t.Fatal("the scene has no record: see -truth-record")
	}
	r := recorded{seed: recordedSeed, sum: sum, readings: trace(s, truth.Options{Seed: recordedSeed, Error: oddError})}
	writeTable(t, oddTable, append(all, r))
	return r.readings
}
