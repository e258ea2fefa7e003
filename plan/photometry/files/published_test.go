package files_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
	"scrimshaw/testdata/published"
)

// The samples of LM-63: keywords, planes, intensities at the nodes and between them, and flux.
func TestSamplesOfLM63(t *testing.T) {
	for label, name := range map[string]string{"annex c": "annexc.ies", "demonstration": "demonstration.ies"} {
		d, _ := read(t, name, testdata(t, name))
		s, err := d.Source()
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range published.Read(t, "lm63.txt", label+" node", label+" between") {
			want := row.Out[0]
			within(t, fmt.Sprint(row.Label, row.In), s.Intensity(toward(row.In[0], row.In[1])), want, 1e-9*want)
		}
		flux := published.Read(t, "lm63.txt", label+" flux")[0]
		within(t, flux.Label, s.Flux, flux.Out[0], 1e-3)
	}
}

func TestAnnexCInItsOwnTerms(t *testing.T) {
	d, warnings := read(t, "annexc.ies", testdata(t, "annexc.ies"))
	l := d.(*files.LM63)
	if want := int(published.Read(t, "lm63.txt", "annex c keywords")[0].Out[0]); len(l.Keywords) != want {
		t.Errorf("%d keywords, want %d", len(l.Keywords), want)
	}
	n, err := l.Nodes()
	if err != nil {
		t.Fatal(err)
	}
	if want := int(published.Read(t, "lm63.txt", "annex c planes")[0].Out[0]); len(n.Horizontal)-1 != want {
		t.Errorf("planes %v, want %d of them and the first again", n.Horizontal, want)
	}
	if got := l.Get("OTHER"); got != "a remark that is longer than a line has room for\nand goes on in the next" {
		t.Errorf("[OTHER] with its [MORE] is %q", got)
	}
	if l.Get("_BEAMS") != "four by six" || l.Tilt.Geometry != 1 || len(l.Tilt.Factors) != 13 || l.Tilt.Factors[6] != 0.98 {
		t.Errorf("%q, tilt %+v", l.Get("_BEAMS"), l.Tilt)
	}
	o, _ := l.Opening()
	if o.Form != photometry.Rectangle {
		t.Errorf("opening %+v", o)
	}
	within(t, "face along C0", o.Width, 0.6*0.3048, 1e-12)
	within(t, "face along C90", o.Height, 0.5*0.3048, 1e-12)
	if d.Power() != 495 || d.Rated() != 50000 || d.Format() != "IES LM-63-2002" {
		t.Errorf("%g W, %g lm, %s", d.Power(), d.Rated(), d.Format())
	}
	// The sample is not consistent in its energy, and the reader says so.
	if !strings.Contains(strings.Join(warnings, "\n"), "the intensities add up to 98596 lm, more than the 50000 lm of the lamps") {
		t.Errorf("warnings: %q", warnings)
	}
}

// Closed forms written as files: flux, beam and field angles to 0.1 %.
func TestClosedFormsAsFiles(t *testing.T) {
	for _, row := range published.Read(t, "distributions.txt", "cosine power") {
		power, name := row.In[0], fmt.Sprint(row.Label, row.In)
		for _, planes := range [][]float64{{0}, {0, 45, 90}, {0, 90, 180}, {0, 120, 240, 360}, {90, 180, 270}} {
			ies, _ := read(t, "x.ies", written(planes, 90, 0.5, cosine(power)))
			ldt, err := ies.(*files.LM63).LDT()
			if err != nil {
				t.Fatal(err)
			}
			text, err := ldt.Bytes()
			if err != nil {
				t.Fatal(err)
			}
			again, _ := read(t, "x.ldt", string(text))
			for _, d := range []files.Data{ies, again} {
				checkAngles(t, fmt.Sprint(name, " ", d.Format(), planes), d, row.Out)
			}
		}
	}
}

// checkAngles holds flux, beam and field to a row, in both main planes.
func checkAngles(t *testing.T, name string, d files.Data, want []float64) {
	t.Helper()
	s, err := d.Source()
	if err != nil {
		t.Fatal(err)
	}
	within(t, name+" flux", s.Flux, want[0], 1e-3*want[0])
	beam, along := photometry.BeamAngle(s.Distribution)
	within(t, name+" beam", beam, want[1], 1e-3*want[1])
	within(t, name+" beam along", along, want[1], 1e-3*want[1])
	field, along := photometry.FieldAngle(s.Distribution)
	within(t, name+" field", field, want[2], 1e-3*want[2])
	within(t, name+" field along", along, want[2], 1e-3*want[2])
	within(t, name+" peak", s.Peak(), 1000, 1e-3)
}

// A uniform cone is a table that ends at its edge: nothing is taken beyond the last angle.
func TestConesAsFiles(t *testing.T) {
	for _, row := range published.Read(t, "distributions.txt", "cone") {
		half := row.In[0]
		d, _ := read(t, "x.ies", written([]float64{0}, half, half/2, func(float64, float64) float64 { return 1 }))
		s, err := d.Source()
		if err != nil {
			t.Fatal(err)
		}
		name := fmt.Sprint(row.Label, row.In)
		within(t, name+" flux", s.Flux, row.Out[0], 5.1e-6)
		beam, _ := photometry.BeamAngle(s.Distribution)
		field, _ := photometry.FieldAngle(s.Distribution)
		within(t, name+" beam", beam, 2*half, 1e-6)
		within(t, name+" field", field, 2*half, 1e-6)
		within(t, name+" just beyond", s.Intensity(toward(half+1e-6, 77)), 0, 0)
		within(t, name+" at the edge", s.Intensity(toward(half, 77)), 1, 1e-9)
	}
}

// The zones of the handbooks: 1 cd between two angles of a table that begins and ends there.
func TestZonesAsTables(t *testing.T) {
	for _, row := range published.Read(t, "distributions.txt", "zone") {
		_, flux, err := photometry.NewTable(photometry.Nodes{
			Horizontal: []float64{0}, Vertical: []float64{row.In[0], row.In[1]}, Candela: [][]float64{{1, 1}},
		})
		if err != nil {
			t.Fatal(err)
		}
		within(t, fmt.Sprint(row.Label, row.In), flux, row.Out[0], 5.1e-5)
		within(t, fmt.Sprint(row.Label, row.In), flux, 2*math.Pi*(math.Cos(row.In[0]*math.Pi/180)-math.Cos(row.In[1]*math.Pi/180)), 1e-12)
	}
}
