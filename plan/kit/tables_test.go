package kit

import (
	"encoding/json"
	"io"
	"strings"
	"testing"

	"scrimshaw/plan/source"
)

// Every key of every table says what it means, and its example reads back without a fault.
func TestExamplesRead(t *testing.T) {
	examples(t, unitShape())
	examples(t, OutputShape())
	examples(t, bulbShape())
	examples(t, modifierShape())
	examples(t, gelShape())
	examples(t, clothShape())
	examples(t, materialShape())
	examples(t, sensorShape())
	examples(t, lensFilterShape())
	examples(t, standShape())
	examples(t, gripShape())
	examples(t, itemShape())
}

func examples[T any](t *testing.T, s *source.Shape[T]) {
	t.Helper()
	for i := range s.Fields {
		f := &s.Fields[i]
		log := &source.Log{}
		root := source.Parse(&source.File{Name: "example", Text: []byte(f.Key + ": " + f.Example + "\n")}, log)
		if root == nil || f.Doc == "" || f.Example == "" {
			t.Errorf("%s %s: doc %q, example %q, %v", s.Name, f.Key, f.Doc, f.Example, log.All())
			continue
		}
		f.Read(new(T), root.Get(f.Key), &source.Context{Log: log})
		if len(log.All()) > 0 {
			t.Errorf("%s %s: the example %s has faults: %v", s.Name, f.Key, f.Example, log.All())
		}
	}
}

func TestSchemaAndReference(t *testing.T) {
	if _, err := json.Marshal(fileShape().Schema()); err != nil {
		t.Error(err)
	}
	var b strings.Builder
	for _, write := range []func(io.Writer) error{
		fileShape().Reference, unitShape().Reference, OutputShape().Reference, bulbShape().Reference,
		modifierShape().Reference, gelShape().Reference, clothShape().Reference, materialShape().Reference,
		sensorShape().Reference, lensFilterShape().Reference, standShape().Reference, gripShape().Reference,
	} {
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
	}
	for _, want := range []string{"### unit", "### modifier", "| `warms` |", "### output", "### stand"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the reference has no %q", want)
		}
	}
}
