package study_test

import (
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/internal/truth"
	"scrimshaw/plan/internal/truth/scenes"
)

// recorded is a scene of a table: what was traced, and the sum of its text by which it is known again.
type recorded struct {
	seed     int
	sum      string
	readings []traced
}

func tableOf(kind scenes.Kind) string {
	return filepath.Join("testdata", "truth", string(kind)+".txt")
}

// sumOf tells texts apart.
func sumOf(text string) string {
	h := fnv.New64a()
	h.Write([]byte(text))
	return fmt.Sprintf("%016x", h.Sum64())
}

// table reads the table of a kind; none where there is no file.
func table(t *testing.T, kind scenes.Kind) []recorded {
	t.Helper()
	return readTable(t, tableOf(kind))
}

// readTable reads a table; none where there is no file.
func readTable(t *testing.T, path string) (all []recorded) {
	t.Helper()
	text, err := os.ReadFile(path)
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(text)) {
		switch {
		case strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "scene "):
			var r recorded
			if _, err := fmt.Sscanf(line, "scene %d %s", &r.seed, &r.sum); err != nil {
				t.Fatalf("%s: %q: %v", path, line, err)
			}
			all = append(all, r)
		default:
			v, err := parseTraced(line)
			if err != nil || len(all) == 0 {
				t.Fatalf("%s: %q: %v", path, line, err)
			}
			last := &all[len(all)-1]
			last.readings = append(last.readings, v)
		}
	}
	return all
}

const tableHead = `# What the path tracer of plan/internal/truth gives: for the random scenes of plan/internal/truth/scenes (by kind), for those that
# tests write out (odd.txt), and at points of maps (fields.txt). scene: the seed and the sum of its text. Then a line for each
# reading that is not dark: its name; the direct light, its standard error; the reflected light, its error (lx, of a spot cd/m²);
# the total in AP1 and its errors by channel.
# Written by: go test -tags truth ./plan/study -run TestRecordTruth; the last two by: go test ./plan/study -timeout 0 -truth-record
`

// writeTable writes a table.
func writeTable(t *testing.T, path string, all []recorded) {
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
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

func parseTraced(line string) (v traced, err error) {
	c, e := &v.total.RGB, &v.total.SE
	_, err = fmt.Sscan(line, &v.name, &v.direct.Y, &v.direct.YSE, &v.reflected.Y, &v.reflected.YSE, &c[0], &c[1], &c[2], &e[0], &e[1], &e[2])
	v.total.Y = v.direct.Y + v.reflected.Y
	v.total.YSE = hypot(v.direct.YSE, v.reflected.YSE)
	return v, err
}

// made is a random scene that a test asks for.
func made(t *testing.T, kind scenes.Kind, seed int) (text string, s *plan.Setup) {
	t.Helper()
	text, s, err := scenes.Make(kind, seed)
	if err != nil {
		t.Fatal(err)
	}
	return text, s
}

// A table is read as it was written.
func TestTruthTable(t *testing.T) {
	want := traced{name: "ada.key", direct: truth.Part{Y: 12.5, YSE: 0.01}, reflected: truth.Part{Y: 3.25, YSE: 0.02},
		total: truth.Part{RGB: colour.RGB{15, 16, 17}, SE: colour.RGB{0.1, 0.2, 0.3}, Y: 15.75}}
	got, err := parseTraced("  ada.key 12.5 0.01 3.25 0.02 15 16 17 0.1 0.2 0.3")
	want.total.YSE = hypot(0.01, 0.02)
	if err != nil || got != want {
		t.Errorf("%+v, %v, want %+v", got, err, want)
	}
	if _, err := parseTraced("  ada.key 12.5 0.01"); err == nil {
		t.Error("half a line is read")
	}
}
