package scene

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

var update = os.Getenv("UPDATE_GOLDEN") != ""

// The files of testdata/faults hold cases: a line `=== name`, a scene, a line `>>>`, and all that
// the program says about it, the scene first and then each set-up.
func TestFaults(t *testing.T) {
	files, err := filepath.Glob("testdata/faults/*.txt")
	if err != nil || len(files) < 5 {
		t.Fatalf("%d files of cases: %v", len(files), err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		cases := strings.Split("\n"+string(text), "\n=== ")[1:]
		for i, c := range cases {
			title, body, _ := strings.Cut(c, "\n")
			scene, want, _ := strings.Cut(body+"\n", "\n>>>\n")
			scene += "\n"
			got := strings.TrimSpace(told(t, scene))
			cases[i] = title + "\n" + scene + ">>>\n" + got + "\n"
			t.Run(strings.TrimSuffix(filepath.Base(name), ".txt")+"/"+title, func(t *testing.T) {
				if want = strings.TrimSpace(want); got != want && !update {
					t.Errorf("got:\n%s\nwant:\n%s", got, want)
				}
			})
		}
		if update {
			if err := os.WriteFile(name, []byte("=== "+strings.Join(cases, "\n=== ")), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// told is what a user reads about a scene and its set-ups.
func told(t *testing.T, scene string) string {
	t.Helper()
	log := &source.Log{}
	d := Open(testEnv(t), &source.File{Name: "s.yaml", Text: []byte(scene)}, log)
	d.Base(log)
	for _, setup := range d.Setups {
		d.Scene(setup, log)
	}
	var b strings.Builder
	for _, d := range log.All() {
		if d.Severity >= source.Warning && d.Hint == "" {
			t.Errorf("%s:%d: %q comes without a fix", d.Span.File.Name, d.Span.Line, d.Message)
		}
	}
	if err := source.Human(&b, log.All(), false); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// testEnv is an outside with the shipped kit and a few files.
func testEnv(t testing.TB) Env {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	return Env{Kit: shipped, Files: fstest.MapFS{
		"lamps.yaml":   {Data: []byte("scrimshaw: 1\nmaterials:\n  sailcloth: {doc: A sail, reflectance: 0.7}\n")},
		"prices.yaml":  {Data: []byte("scrimshaw: 1\nrates: {light-stand: 3.50}\n")},
		"kit/bad.yaml": {Data: []byte("scrimshaw: 1\nmaterials:\n  sailcloth: {doc: A sail, reflectance: 7}\n")},
	}}
}
