package scene

import (
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// probe is one key of one table, for tests that hold for all keys.
type probe struct {
	table, key, doc, example string
	def                      string
	required, form, later    bool
	read                     func(n *source.Node, c *source.Context)
}

// probes lists the keys of a table.
func (t *table[T]) probes() []probe {
	var all []probe
	for _, f := range t.Fields {
		form := slices.Contains(t.Forms, f.Key)
		all = append(all, probe{t.Name, f.Key, f.Doc, f.Example, f.Default, f.Required, form, f.Later != "", func(n *source.Node, c *source.Context) {
			var v T
			f.Read(&v, n, c)
		}})
	}
	return all
}

// everyKey calls test for every key of every table of this package.
func everyKey(t *testing.T, test func(t *testing.T, p probe)) {
	t.Helper()
	for _, table := range tables() {
		own, ok := table.(interface{ probes() []probe })
		if !ok {
			continue // the output's table belongs to package kit
		}
		for _, p := range own.probes() {
			t.Run(p.table+"/"+p.key, func(t *testing.T) { test(t, p) })
		}
	}
}

// value parses text as the value of a key, written in the second line of a file.
func parseValue(t *testing.T, text string) *source.Node {
	t.Helper()
	log := &source.Log{}
	root := source.Parse(&source.File{Name: "x.yaml", Text: []byte("scrimshaw: 1\nkey: " + text + "\n")}, log)
	if root == nil || log.Failed() {
		t.Fatalf("%q is no YAML: %v", text, log.All())
	}
	return root.Get("key")
}

func (p probe) try(t *testing.T, text string) []source.Diagnostic {
	t.Helper()
	log := &source.Log{}
	p.read(parseValue(t, text), &source.Context{Log: log, Path: []string{p.key}})
	return log.All()
}

func TestEveryKeyIsDescribed(t *testing.T) {
	everyKey(t, func(t *testing.T, p probe) {
		if !strings.HasSuffix(p.doc, ".") || len(p.doc) < 5 {
			t.Errorf("the doc is no sentence: %q", p.doc)
		}
		if p.example == "" {
			t.Error("no example")
		}
		if p.def == "" && !p.required && !p.form {
			t.Error("nothing is said of what holds without it")
		}
	})
}

// Every example of the reference is read without a fault.
func TestEveryExampleReads(t *testing.T) {
	everyKey(t, func(t *testing.T, p probe) {
		for _, d := range p.try(t, p.example) {
			if d.Severity == source.Error {
				t.Errorf("%s: %s: %s (%s)", p.example, d.Code, d.Message, d.Hint)
			}
		}
	})
}

// A value of a wrong type is an error at its own place, whatever the key.
func TestEveryKeyRefusesWrongTypes(t *testing.T) {
	everyKey(t, func(t *testing.T, p probe) {
		if p.table == "set-up" && (p.key == "change" || p.key == "cues") {
			return // a change is checked where it meets the scene: testdata/faults/setups.txt
		}
		for _, wrong := range []string{"{no-such-key: [1]}", "[[[1]]]", "[{no-such-key: 1}]"} {
			faults := p.try(t, wrong)
			if len(faults) == 0 {
				t.Errorf("%s is accepted", wrong)
			}
			for _, d := range faults {
				if d.Severity != source.Error || d.Span.Line != 2 || d.Span.Col < 6 || d.Code == "" || d.Message == "" {
					t.Errorf("%s: %+v", wrong, d)
				}
			}
		}
	})
}
