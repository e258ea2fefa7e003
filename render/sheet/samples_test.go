package sheet

import (
	"context"
	"testing"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/resolve"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/samples"
)

// sampleInputs runs a sample through all stations.
func sampleInputs(t *testing.T, name string) (ins []Input) {
	t.Helper()
	text, err := samples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	return inputsOf(t, name, text)
}

// inputsOf runs a scene through all stations.
func inputsOf(t *testing.T, name string, text []byte) (ins []Input) {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: name + ".yaml", Text: text}, log)
	for _, setup := range resolve.ResolveAll(doc, nil, log) {
		lit, err := study.Run(context.Background(), setup, study.Options{})
		if err != nil {
			t.Fatal(err)
		}
		ins = append(ins, Of(lit, Options{}))
	}
	if log.Failed() {
		t.Fatalf("%s: %v", name, log.All())
	}
	return ins
}

// TestSamplesKeepApart holds the samples to the rules of lettering, and every light's tag to its
// full or its short form.
func TestSamplesKeepApart(t *testing.T) {
	f := family(t)
	for _, name := range samples.Names() {
		t.Run(name, func(t *testing.T) {
			for _, in := range sampleInputs(t, name) {
				for _, paper := range []string{"", "A4", "A3", "letter"} {
					s := sheetFor(t, in, Options{Paper: paper, Font: f})
					checkPlan(t, s, f)
					if s.c.reduced > 0 {
						t.Errorf("on %q %d labels are no more than a number, or left out", paper, s.c.reduced)
					}
					for i := range s.pages {
						checkPage(t, &s.pages[i], f)
					}
					for i := range in.Setup.Lights {
						l := &in.Setup.Lights[i]
						if first := s.c.p.small().strong().ellipsis(s.c.lightLabel(l), tagRoom); !has(&s.pages[0], first) && !has(&s.pages[0], s.c.unitLabel(l)) && !has(&s.pages[0], s.c.shortLabel(l)) {
							t.Errorf("on %q light %s (%s) has no more than its number", paper, l.Tag, first)
						}
					}
				}
			}
		})
	}
}
