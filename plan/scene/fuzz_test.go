package scene

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scrimshaw/plan/source"
	"scrimshaw/samples"
)

// seeds are scenes that between them use every key and make every kind of fault.
func seeds(t testing.TB) []string {
	t.Helper()
	all := []string{everything(t), twoSetups}
	for _, name := range samples.Names() {
		text, err := samples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, string(text))
	}
	files, err := filepath.Glob("testdata/faults/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range strings.Split("\n"+string(text), "\n=== ")[1:] {
			_, body, _ := strings.Cut(c, "\n")
			scene, _, _ := strings.Cut(body, "\n>>>")
			all = append(all, scene+"\n")
		}
	}
	return all
}

// load reads a scene with all its set-ups and checks what must hold for any text.
func load(t testing.TB, env Env, text string) {
	t.Helper()
	log := &source.Log{}
	d := Open(env, &source.File{Name: "s.yaml", Text: []byte(text)}, log)
	base := d.Base(log)
	if base == nil && !log.Failed() {
		t.Fatal("no scene, and no fault")
	}
	for _, setup := range d.Setups {
		if s := d.Scene(setup, log); s == nil && !log.Failed() {
			t.Fatalf("no set-up %s, and no fault", setup)
		}
	}
	for _, f := range log.All() {
		if f.Code == "" || f.Message == "" {
			t.Fatalf("a fault that says nothing: %+v", f)
		}
		if f.Span.Valid() && (f.Span.Start < 0 || f.Span.End > len(f.Span.File.Text) || f.Span.Start > f.Span.End) {
			t.Fatalf("a fault beyond its file: %+v", f.Span)
		}
	}
}

// FuzzScene: no text makes the loader panic, and none is refused without a fault.
func FuzzScene(f *testing.F) {
	for _, text := range seeds(f) {
		f.Add(text)
	}
	env := testEnv(f)
	f.Fuzz(func(t *testing.T, text string) { load(t, env, text) })
}

// Scenes made of pieces of other scenes are read, or refused with a fault.
func TestShuffledScenesLoad(t *testing.T) {
	env, all := testEnv(t), seeds(t)
	r := rand.New(rand.NewPCG(3, 5))
	for range 2000 {
		lines := strings.SplitAfter(all[r.IntN(len(all))], "\n")
		for range 1 + r.IntN(4) {
			i := r.IntN(len(lines))
			switch r.IntN(4) {
			case 0:
				lines = append(lines[:i:i], lines[i+1:]...)
			case 1:
				other := strings.SplitAfter(all[r.IntN(len(all))], "\n")
				lines[i] += other[r.IntN(len(other))]
			case 2:
				words := strings.FieldsFunc(all[r.IntN(len(all))], func(r rune) bool { return strings.ContainsRune(" {}[],:\n", r) })
				at := strings.IndexAny(lines[i], ":[,") + 1
				lines[i] = lines[i][:at] + " " + words[r.IntN(len(words))] + lines[i][at:]
			case 3:
				if n := len(lines[i]); n > 1 {
					at := r.IntN(n)
					lines[i] = lines[i][:at] + lines[i][min(n, at+1+r.IntN(3)):]
				}
			}
			if len(lines) == 0 {
				lines = []string{"\n"}
			}
		}
		text := strings.Join(lines, "")
		load(t, env, text)
	}
}
