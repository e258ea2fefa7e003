package study_test

import (
	"flag"
	"fmt"
	"math"
	"slices"
	"testing"

	"scrimshaw/plan/internal/truth/scenes"
	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

// limits are how far readings of a quality may be off beyond noise: shares of the true light, and kelvin.
type limits struct{ median, most, worst, kelvin, stated float64 }

// The limits. most and kelvin are of 95 readings in 100; stated is how large the error that a reading states may be at the
// median: one that says too much says nothing.
var truthLimits = map[light.Quality]limits{
	light.Draft:  {median: 0.01, most: 0.05, worst: 0.15, kelvin: 15, stated: 0.02},
	light.Normal: {median: 0.002, most: 0.01, worst: 0.03, kelvin: 15, stated: 0.006},
	light.Fine:   {median: 0.001, most: 0.005, worst: 0.015, kelvin: 15, stated: 0.006},
}

// recordedAll asks for every recorded scene; a usual run takes the first few of each kind, fewer where a scene takes longer.
var recordedAll = flag.Bool("truth-recorded", false, "hold every recorded scene to the truth, not the first of each kind")

// usual is how many recorded scenes of a kind a usual run takes.
var usual = map[light.Quality]int{light.Draft: 12, light.Normal: 12, light.Fine: 3}

// TestTruthLimits holds the readings of the recorded scenes to what the path tracer gave for them.
func TestTruthLimits(t *testing.T) {
	for quality, limit := range truthLimits {
		t.Run(quality.String(), func(t *testing.T) {
			var all []miss
			for _, kind := range scenes.Kinds {
				some := recordedMisses(t, kind, quality)
				report(t, quality.String()+" "+string(kind), some, 3)
				if kind == scenes.Cloth { // of which fewer are recorded, so that others could hide them
					hold(t, "cloth, 95 in 100", some, 0.95, func(m *miss) float64 { return m.total }, limit.most)
				}
				all = append(all, some...)
			}
			report(t, quality.String(), all, 10)
			hold(t, "median", all, 0.5, func(m *miss) float64 { return m.total }, limit.median)
			hold(t, "95 in 100", all, 0.95, func(m *miss) float64 { return m.total }, limit.most)
			hold(t, "worst", all, 1, func(m *miss) float64 { return m.total }, limit.worst)
			hold(t, "colour of 95 in 100, K,", all, 0.95, func(m *miss) float64 { return m.kelvin }, limit.kelvin)
			hold(t, "median stated error", all, 0.5, func(m *miss) float64 { return m.stated }, limit.stated)
			honest(t, all)
		})
	}
}

// honest holds stated errors to what they say: the truth lies within two of them in at least 95 readings of 100.
func honest(t *testing.T, all []miss) {
	t.Helper()
	within := 0
	for i := range all {
		if m := &all[i]; m.off <= 2*math.Hypot(m.stated, m.noise) {
			within++
		} else {
			t.Logf("    %s %s states %.3f %%, is %.3f %% off (tracer %.3f %%)", m.scene, m.name, 100*m.stated, 100*m.off, 100*m.noise)
		}
	}
	share := float64(within) / float64(len(all))
	t.Logf("the truth lies within two stated errors in %.1f %% of %d readings", 100*share, len(all))
	if share < 0.95 {
		t.Errorf("the truth lies within two stated errors in %.1f %% of %d readings, want 95 %%", 100*share, len(all))
	}
}

// recordedMisses are how far the readings of the recorded scenes of a kind are off.
func recordedMisses(t *testing.T, kind scenes.Kind, quality light.Quality) (all []miss) {
	recordedScenes := table(t, kind)
	if len(recordedScenes) == 0 {
		t.Fatalf("no scenes of the kind %s are recorded", kind)
	}
	n := usual[quality]
	if !*recordedAll && len(recordedScenes) > n {
		recordedScenes = recordedScenes[:n]
	}
	for _, r := range recordedScenes {
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
