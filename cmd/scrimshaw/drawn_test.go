package main

import (
	"bytes"
	"context"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"scrimshaw/plan/study"
)

// drawn is what draw makes of a sample: the folder of its files, a.pdf and a.txt among them, and the paths of its pages
// without their ending, in order: each is there as .svg and as .png.
type drawn struct {
	folder string
	pages  []string
}

// shared are samples as they are drawn, by the arguments of draw, and as they are lit, by name. Each is worked out once,
// for the first test that asks for it: light takes seconds, and many tests look at the same drawing.
var shared = struct {
	sync.Mutex
	folder string
	drawn  map[string]drawn
	lit    map[string][]*study.Study
}{drawn: map[string]drawn{}, lit: map[string][]*study.Study{}}

// suite runs the tests in a folder for what they share.
type suite struct{ *testing.M }

func (s suite) Run() int {
	folder, err := os.MkdirTemp("", "drawn")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(folder)
	shared.folder = folder
	return s.M.Run()
}

// drawnSample draws a sample, with more arguments where there are any.
func drawnSample(t *testing.T, name string, more ...string) drawn {
	t.Helper()
	shared.Lock()
	defer shared.Unlock()
	key := strings.Join(append([]string{name}, more...), " ")
	d, done := shared.drawn[key]
	if done {
		return d
	}
	dir, err := os.MkdirTemp(shared.folder, "")
	if err != nil {
		t.Fatal(err)
	}
	d = drawn{dir, drawnPages(t, dir, append([]string{name}, more...))}
	shared.drawn[key] = d
	return d
}

// drawnPages draws a sample in every form and returns the paths of its pages without their ending, in order.
func drawnPages(t *testing.T, dir string, args []string) (bases []string) {
	t.Helper()
	var said bytes.Buffer
	line := []string{"draw", "../../samples/" + args[0] + ".yaml"}
	for _, ending := range []string{".svg", ".png", ".pdf", ".txt"} {
		line = append(line, "-o", filepath.Join(dir, "a"+ending))
	}
	std := streams{in: strings.NewReader(""), out: io.Discard, err: &said}
	if status := run(context.Background(), append(line, args[1:]...), std); status != 0 {
		t.Fatalf("draw ends with %d: %s", status, &said)
	}
	for _, l := range strings.Split(said.String(), "\n") {
		if path, ok := strings.CutPrefix(l, "wrote "); ok && strings.HasSuffix(path, ".svg") {
			bases = append(bases, strings.TrimSuffix(path, ".svg"))
		}
	}
	if len(bases) == 0 {
		t.Fatalf("no pages: %s", &said)
	}
	return bases
}

// litSample computes a sample, as draw does.
func litSample(t *testing.T, name string) []*study.Study {
	t.Helper()
	shared.Lock()
	defer shared.Unlock()
	if shared.lit[name] == nil {
		shared.lit[name] = litStudies(t, study.Options{Fixed: true}, "../../samples/"+name+".yaml")
	}
	return shared.lit[name]
}

// litStudies computes the set-ups of a scene, the built-in one where there is no path.
func litStudies(t testing.TB, o study.Options, path ...string) (studies []*study.Study) {
	t.Helper()
	std := streams{in: strings.NewReader(""), out: io.Discard, err: io.Discard}
	w, err := layOut(context.Background(), std, path, &workFlags{})
	if err != nil || w.in.log.Failed() {
		t.Fatal(err, w.in.log.All())
	}
	t.Cleanup(func() { w.in.Close() })
	err = w.light(context.Background(), std, &workFlags{}, o, func(_ int, s *study.Study) error {
		studies = append(studies, s)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return studies
}
