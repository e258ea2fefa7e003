package scene

import (
	"bytes"
	"io/fs"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// counting counts how often each file is opened.
type counting struct {
	fs.FS
	mu     sync.Mutex
	opened map[string]int
}

func (c *counting) Open(name string) (fs.File, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.opened[name]++
	return c.FS.Open(name)
}

// Stat looks at a file without opening it, as a folder on a disk does.
func (c *counting) Stat(name string) (fs.FileInfo, error) { return fs.Stat(c.FS, name) }

const lampIES = "IESNA91\nTILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1 30\n0 45 90\n0\n900 360 0\n"

const measuredScene = `scrimshaw: 1
kit: [own/lamps.yaml]
lights:
  a: {output: {ies: lamp.ies}, at: [0, 0], height: 3, aim: down}
  b: {output: {ies: lamp.ies}, at: [1, 0], height: 3, aim: down}
  c: {unit: wash, at: [2, 0], height: 3, aim: down}
setups:
  one: {change: {lights: {a: {output: {ies: own/lamp.ies}}}}}
  two: {after: one, change: {lights: {b: {at: [5, 5]}}}}
`

const washKit = "scrimshaw: 1\nunits:\n  wash: {doc: a wash, label: wash, class: panel, technology: led, power: 30 W, kelvin: 5600 K,\n    outputs: {bare: {ies: lamp.ies}}}\n"

// openMeasured opens measuredScene with its files, named as from outside the folder.
func openMeasured(files fs.FS, log *source.Log) *Document {
	return Open(Env{Files: files}, &source.File{Name: "den/scene.yaml", Text: []byte(measuredScene)}, log)
}

// A photometric file is read once, whoever names it: lights, set-ups, kit files, at the same time. Its
// path starts at the folder of the file that names it.
func TestPhotometricFilesAreReadOnce(t *testing.T) {
	files := &counting{opened: map[string]int{}, FS: fstest.MapFS{
		"lamp.ies": {Data: []byte(lampIES)}, "own/lamp.ies": {Data: []byte(strings.Replace(lampIES, "900", "500", 1))},
		"own/lamps.yaml": {Data: []byte(washKit)},
	}}
	log := &source.Log{}
	d := openMeasured(files, log)
	var group sync.WaitGroup
	scenes := map[string]*Scene{}
	var mu sync.Mutex
	for _, setup := range []string{"", "one", "two"} {
		group.Go(func() {
			own := &source.Log{}
			s := d.Scene(setup, own)
			mu.Lock()
			defer mu.Unlock()
			scenes[setup] = s
			if own.Failed() {
				t.Error(setup, own.All())
			}
		})
	}
	group.Wait()
	if log.Failed() {
		t.Fatal(log.All())
	}
	for setup, want := range map[string]string{"": "den/lamp.ies", "one": "den/own/lamp.ies", "two": "den/own/lamp.ies"} {
		m := scenes[setup].Lights[0].Output.Measured
		if m == nil || m.File.Name != want {
			t.Errorf("%q: %+v, want %s", setup, m, want)
		}
		if other := scenes[setup].Lights[1].Output.Measured; other == nil || other.File.Name != "den/lamp.ies" {
			t.Errorf("%q: %+v", setup, other)
		}
	}
	wash := d.Kit.Unit("wash").Outputs[0].Output.Measured
	if wash == nil || wash.File.Name != "den/own/lamp.ies" || wash.Watts != 30 {
		t.Errorf("%+v", wash)
	}
	for name, times := range files.opened {
		if times != 1 {
			t.Errorf("%s was opened %d times", name, times)
		}
	}
}

// A file that cannot be read is reported at the place that names it, in every set-up that does.
func TestPhotometricFilesThatCannotBeHad(t *testing.T) {
	big := fstest.MapFS{"lamp.ies": {Data: bytes.Repeat([]byte("1 "), kit.MaxMeasuredBytes)}, "own/lamps.yaml": {Data: []byte(washKit)}}
	for want, files := range map[string]fs.FS{
		"this scene has no folder":             nil,
		`there is no file "own/lamp.ies"`:      fstest.MapFS{"lamp.ies": {Data: []byte(lampIES)}, "own/lamps.yaml": {Data: []byte(washKit)}},
		"the file is larger than":              big,
		"the line TILT=NONE, TILT=INCLUDE or ": fstest.MapFS{"lamp.ies": {Data: []byte("x")}},
	} {
		log := &source.Log{}
		d := openMeasured(files, log)
		d.Base(log)
		d.Scene("one", log)
		found := false
		for _, f := range log.All() {
			found = found || f.Severity == source.Error && strings.Contains(f.Message, want)
		}
		if !found {
			t.Errorf("%v, want %s", log.All(), want)
		}
	}
}

// A pipe in place of a file is refused before it is opened, which would wait for its writer.
func TestPipesAreNotOpened(t *testing.T) {
	files := &counting{opened: map[string]int{}, FS: fstest.MapFS{"lamp.ies": {Mode: fs.ModeNamedPipe}, "own/lamps.yaml": {Mode: fs.ModeNamedPipe}}}
	log := &source.Log{}
	openMeasured(files, log).Base(log)
	for name := range files.opened {
		t.Errorf("%s was opened", name)
	}
	if !log.Failed() || !strings.Contains(log.All()[0].Message, "a folder, a pipe or a device") {
		t.Errorf("%v", log.All())
	}
}
