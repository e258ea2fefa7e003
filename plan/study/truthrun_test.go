//go:build truth

package study_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/internal/truth/scenes"
	"scrimshaw/plan/light"
	"scrimshaw/plan/study"
)

// recordedScenes is how many scenes of each kind are recorded, from seed 0 on.
const recordedScenes = 50

// The standard error that a record is traced to, of the total, and the most paths of a reading.
const (
	recordedError = 1.5e-3
	recordedPaths = 1 << 18
)

// What TestTruth traces.
var (
	truthKinds   = flag.String("truth-kinds", "inside,window,doorway,clutter,cloth", "kinds of the scenes that TestTruth traces")
	truthFrom    = flag.Int("truth-from", 1000, "the first seed")
	truthCount   = flag.Int("truth-count", 10, "how many seeds of each kind")
	truthQuality = flag.String("truth-quality", "draft,normal,fine", "the qualities that are held to the truth")
	truthError   = flag.Float64("truth-error", 1.5e-3, "the standard error of a total that is traced to")
	truthPaths   = flag.Int("truth-paths", 1<<20, "the most paths of a reading")
)

// recordCount is how many scenes of each kind the tables have.
var recordCount = flag.Int("record-count", recordedScenes, "how many scenes of each kind the tables have")

// TestTruth traces random scenes afresh, and prints how far readings are off:
//
//	go test -tags truth ./plan/study -run TestTruth -v -truth-kinds window -truth-from 1000 -truth-count 10 -truth-quality normal
func TestTruth(t *testing.T) {
	off := map[string][]miss{}
	for _, kind := range strings.Split(*truthKinds, ",") {
		start := time.Now()
		for seed := *truthFrom; seed < *truthFrom+*truthCount; seed++ {
			_, s := made(t, scenes.Kind(kind), seed)
			truths := trace(s, truth.Options{Seed: uint64(seed), Error: *truthError, Most: *truthPaths})
			for _, name := range strings.Split(*truthQuality, ",") {
				quality, ok := light.QualityOf(name)
				if !ok {
					t.Fatalf("there is no quality %q", name)
				}
				lit := run(t, s, study.Options{ReadingsOnly: true, Quality: quality})
				some := misses(fmt.Sprintf("%s %d", kind, seed), lit, truths)
				off[name+" "+kind] = append(off[name+" "+kind], some...)
				off[name] = append(off[name], some...)
			}
		}
		t.Logf("%s: %v", kind, time.Since(start).Round(time.Second))
	}
	for _, name := range strings.Split(*truthQuality, ",") {
		for _, kind := range strings.Split(*truthKinds, ",") {
			report(t, name+" "+kind, off[name+" "+kind], 5)
		}
		report(t, name, off[name], 10)
	}
}

// TestRecordTruth traces the scenes that the tables lack or have in other words, and writes the tables:
//
//	go test -tags truth ./plan/study -run TestRecordTruth -timeout 0
func TestRecordTruth(t *testing.T) {
	for seed := range *recordCount {
		for _, kind := range scenes.Kinds {
			all := table(t, kind)
			text, s := made(t, kind, seed)
			r := recorded{seed: seed, sum: sumOf(text)}
			if seed < len(all) && all[seed].sum == r.sum {
				continue
			}
			r.readings = trace(s, truth.Options{Seed: uint64(seed), Error: recordedError, Most: recordedPaths})
			if seed < len(all) {
				all[seed] = r
			} else {
				all = append(all, r)
			}
			write(t, kind, all)
		}
	}
}

const tableHead = `# What the path tracer of plan/internal/truth gives for the random scenes of plan/internal/truth/scenes.
# scene: the seed and the sum of its text. Then a line for each reading that is not dark: its name; the direct light, its
# standard error; the reflected light, its error (lx, of a spot cd/m²); the total in AP1 and its errors by channel.
# Written by: go test -tags truth ./plan/study -run TestRecordTruth
`

// write writes the table of a kind.
func write(t *testing.T, kind scenes.Kind, all []recorded) {
	t.Helper()
	var b strings.Builder
	b.WriteString(tableHead)
	for _, r := range all {
		fmt.Fprintf(&b, "scene %d %s\n", r.seed, r.sum)
		for _, v := range r.readings {
			c, e := v.total.RGB, v.total.SE
			fmt.Fprintf(&b, "  %s %.6g %.3g %.6g %.3g %.6g %.6g %.6g %.3g %.3g %.3g\n", v.name, v.direct.Y, v.direct.YSE, v.reflected.Y, v.reflected.YSE,
				c[0], c[1], c[2], e[0], e[1], e[2])
		}
	}
	if err := os.MkdirAll(filepath.Dir(tableOf(kind)), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(tableOf(kind), []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
