package files_test

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/files"
)

const generated = 1000

// What is written reads back the same, to the last figure.
func TestLM63RoundTrip(t *testing.T) {
	g := generator{rand.New(rand.NewPCG(1, 63))}
	for i := range generated {
		l := g.lm63()
		again := rewritten(t, name("LM-63", i), "x.ies", l).(*files.LM63)
		if !reflect.DeepEqual(l, again) {
			t.Fatalf("%s:\n wrote %+v\n  read %+v", name("LM-63", i), l, again)
		}
	}
}

func TestLDTRoundTrip(t *testing.T) {
	g := generator{rand.New(rand.NewPCG(2, 63))}
	for i := range generated {
		d := g.ldt()
		again := rewritten(t, name("EULUMDAT", i), "x.ldt", d).(*files.LDT)
		if !reflect.DeepEqual(d, again) {
			t.Fatalf("%s:\n wrote %+v\n  read %+v", name("EULUMDAT", i), d, again)
		}
	}
}

// rewritten writes a file and reads it.
func rewritten(t *testing.T, what, file string, d files.Data) files.Data {
	t.Helper()
	text, err := d.Bytes()
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	for line := range strings.SplitSeq(string(text), "\r\n") {
		if strings.ContainsAny(line, "\r\n") {
			t.Fatalf("%s: a line end that is not CR LF in %q", what, line)
		}
	}
	again, _ := read(t, file, string(text))
	return again
}

// A conversion, there and back, moves no light: within the rounding of the format the intensities
// are the same in every direction, and so are flux, opening, lamps and power.
func TestConversionKeepsTheLight(t *testing.T) {
	g := generator{rand.New(rand.NewPCG(3, 63))}
	for i := range generated {
		l := g.lm63()
		if l.System != photometry.TypeC {
			if _, err := l.LDT(); err == nil || !strings.Contains(err.Error(), "C planes only") {
				t.Fatalf("type %s was converted: %v", l.System, err)
			}
			continue
		}
		d, err := l.LDT()
		if err != nil {
			t.Fatalf("%s: %v", name("LM-63", i), err)
		}
		sameLight(t, g, name("LM-63 to EULUMDAT", i), l, rewritten(t, name("converted", i), "x.ldt", d))
		back, err := d.LM63()
		if err != nil {
			t.Fatalf("%s and back: %v", name("LM-63", i), err)
		}
		sameLight(t, g, name("LM-63 to EULUMDAT and back", i), l, rewritten(t, name("converted back", i), "x.ies", back))
	}
	for i := range generated {
		d := g.ldt()
		l, err := d.LM63()
		if err != nil {
			t.Fatalf("%s: %v", name("EULUMDAT", i), err)
		}
		sameLight(t, g, name("EULUMDAT to LM-63", i), d, rewritten(t, name("converted", i), "x.ies", l))
	}
}

func sameLight(t *testing.T, g generator, what string, a, b files.Data) {
	t.Helper()
	s, err := a.Source()
	if err != nil {
		t.Fatal(err)
	}
	u, err := b.Source()
	if err != nil {
		t.Fatal(err)
	}
	within(t, what+" flux", u.Flux, s.Flux, 1e-6*s.Flux)
	within(t, what+" rated", b.Rated(), a.Rated(), 1e-9*a.Rated())
	within(t, what+" power", b.Power(), a.Power(), 0)
	for range 20 {
		dir := r3.Unit(r3.Vec{X: g.NormFloat64(), Y: g.NormFloat64(), Z: g.NormFloat64()})
		within(t, what+" cd", u.Intensity(dir), s.Intensity(dir), 1e-6*s.Peak())
	}
	if t.Failed() {
		t.FailNow()
	}
}
