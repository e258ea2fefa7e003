package sheet

import (
	"context"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/study"
	"scrimshaw/render/carto"
	"scrimshaw/samples"
)

// sampleInputs runs a sample through all stations.
func sampleInputs(t *testing.T, name string) (ins []Input) {
	t.Helper()
	shipped, err := kit.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	text, err := samples.Text(name)
	if err != nil {
		t.Fatal(err)
	}
	log := &source.Log{}
	doc := scene.Open(scene.Env{Kit: shipped}, &source.File{Name: name + ".yaml", Text: text}, log)
	setups := doc.Setups
	if len(setups) == 0 {
		setups = []string{""}
	}
	var before *plan.Setup
	for _, setup := range setups {
		before = plan.ResolveAfter(doc, doc.Scene(setup, log), before, log)
		if log.Failed() {
			t.Fatalf("%s: %v", name, log.All())
		}
		lit, err := study.Run(context.Background(), before, study.Options{})
		if err != nil {
			t.Fatal(err)
		}
		ins = append(ins, inputFrom(lit))
	}
	return ins
}

// inputFrom is what the sheet draws of a study.
func inputFrom(s *study.Study) Input {
	in := Input{Setup: s.Setup, Readings: s.Readings.Readings, Cautions: example().Cautions, Unchecked: example().Unchecked}
	in.Field, in.Inset = gridOf("on the floor", s.Floor()), gridOf("at the faces", s.Face())
	for i := range s.Setup.People {
		name := s.Setup.People[i].Name
		f := Face{Person: name, Key: s.Readings.Named(name + ".key"), Fill: s.Readings.Named(name + ".fill")}
		if c := s.Readings.ContrastOf(name); c != nil {
			f.Contrast = c.Stops
		}
		in.Faces = append(in.Faces, f)
	}
	for _, b := range s.Beams {
		in.Beams = append(in.Beams, Beam{Light: b.Light, Half: b.Half.Outline, Tenth: b.Tenth.Outline, Spot: b.Half.Footprint})
	}
	for _, v := range s.Views {
		in.Views = append(in.Views, View{Camera: v.Camera, Outline: v.Outline})
	}
	return in
}

func gridOf(name string, f *study.Field) *Field {
	if f == nil {
		return nil
	}
	l := &f.Lattice
	return &Field{Name: name, Grid: carto.Grid{Origin: r2.Vec{X: l.Origin.X, Y: l.Origin.Y}, Step: l.U.X, NX: l.NU, NY: l.NV, Value: f.Lux, Mask: l.Mask}}
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
						if first := s.c.p.small().strong().ellipsis(lightLabel(l), tagRoom); !has(&s.pages[0], first) && !has(&s.pages[0], unitLabel(l)) && !has(&s.pages[0], s.c.shortLabel(l)) {
							t.Errorf("on %q light %s (%s) has no more than its number", paper, l.Tag, first)
						}
					}
				}
			}
		})
	}
}
