package study_test

import (
	"fmt"
	"slices"
	"testing"

	"scrimshaw/plan/internal/truth/scenes"
	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

// limits are how far readings of a quality may be off beyond noise: shares of the true light, and kelvin. most and
// kelvin are of 95 readings in 100. scenes is how many of each kind are looked at: fine takes seconds for some.
type limits struct {
	median, most, worst, kelvin float64
	scenes                      int
}

var truthLimits = map[light.Quality]limits{
	light.Draft:  {median: 0.01, most: 0.05, worst: 0.15, kelvin: 15, scenes: recordedScenes},
	light.Normal: {median: 0.002, most: 0.01, worst: 0.03, kelvin: 15, scenes: recordedScenes},
	light.Fine:   {median: 0.001, most: 0.005, worst: 0.015, kelvin: 15, scenes: 15},
}

// TestTruthLimits holds the readings of the recorded scenes to what the path tracer gave for them.
func TestTruthLimits(t *testing.T) {
	for _, quality := range []light.Quality{light.Draft, light.Normal, light.Fine} {
		limit := truthLimits[quality]
		t.Run(quality.String(), func(t *testing.T) {
			var all []miss
			for _, kind := range scenes.Kinds {
				some := recordedMisses(t, kind, quality, limit.scenes)
				report(t, quality.String()+" "+string(kind), some, 3)
				all = append(all, some...)
			}
			report(t, quality.String(), all, 10)
			hold(t, "median", all, 0.5, func(m *miss) float64 { return m.total }, limit.median)
			hold(t, "95 in 100", all, 0.95, func(m *miss) float64 { return m.total }, limit.most)
			hold(t, "worst", all, 1, func(m *miss) float64 { return m.total }, limit.worst)
			hold(t, "colour of 95 in 100, K,", all, 0.95, func(m *miss) float64 { return m.kelvin }, limit.kelvin)
		})
	}
}

// recordedMisses are how far the readings of the first recorded scenes of a kind are off.
func recordedMisses(t *testing.T, kind scenes.Kind, quality light.Quality, most int) (all []miss) {
	rows := table(t, kind)
	if len(rows) == 0 {
		t.Fatalf("no scenes of the kind %s are recorded", kind)
	}
	for _, r := range rows[:min(most, len(rows))] {
		text, s := made(t, kind, r.seed)
		if sumOf(text) != r.sum {
			t.Fatalf("%s %d has other words than when it was traced: record the table anew", kind, r.seed)
		}
		lit := run(t, s, study.Options{ReadingsOnly: true, Quality: quality})
		all = append(all, misses(fmt.Sprintf("%s %d", kind, r.seed), lit, r.readings)...)
	}
	return all
}

// hold says whether a share of all readings is within a limit.
func hold(t *testing.T, what string, all []miss, share float64, of func(m *miss) float64, limit float64) {
	t.Helper()
	values := make([]float64, len(all))
	for i := range all {
		values[i] = of(&all[i])
	}
	slices.Sort(values)
	if got := values[int(share*float64(len(values)-1))]; got > limit {
		t.Errorf("%s is %.4g off, at most %.4g may be", what, got, limit)
	}
}
