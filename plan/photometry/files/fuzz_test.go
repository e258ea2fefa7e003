package files_test

import (
	"io"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

// FuzzLM63 holds the reader to its promises on any bytes: no panic, a file or an error, places that lie
// in the text, light that is finite, and a file that is written reads back the same.
func FuzzLM63(f *testing.F) {
	f.Add([]byte(testdata(f, "annexc.ies")))
	f.Add([]byte(testdata(f, "demonstration.ies")))
	f.Add([]byte("IES:LM-63-2019\r\n[TEST] a\r\n[MORE]\r\nTILT=x.tlt\r\n1,-1,1,2,1,1,2,-1,0,0,1,1.10001,5\r\n0 90\r\n0\r\n5 1\r\n"))
	f.Add([]byte("\xef\xbb\xbfremark\n\ntilt = none\n2 500 1 3 3 2 1 1 -2 -2\n1 1 1\n-90 0 90 0 45 90 1 2 1 1 2 1 1 2 1 \x1a"))
	g := generator{rand.New(rand.NewPCG(4, 63))}
	for range 20 {
		if text, err := g.lm63().Bytes(); err == nil {
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) { checkAny(t, "x.ies", text) })
}

// FuzzLDT holds the other reader to the same.
func FuzzLDT(f *testing.F) {
	g := generator{rand.New(rand.NewPCG(5, 63))}
	for range 30 {
		if text, err := g.ldt().Bytes(); err == nil {
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) { checkAny(t, "x.ldt", text) })
}

func checkAny(t *testing.T, name string, text []byte) {
	log := &source.Log{}
	d, ok := files.Read(&source.File{Name: name, Text: text}, log)
	if ok == log.Failed() || ok != (d != nil) {
		t.Fatalf("ok %v, failed %v", ok, log.Failed())
	}
	for _, f := range log.All() {
		if s := f.Span; !s.Valid() || s.Start < 0 || s.End < s.Start || s.End > len(text) || s.Col < 1 {
			t.Fatalf("span %+v of %d bytes", s, len(text))
		}
	}
	if err := source.Human(io.Discard, log.All(), true); err != nil {
		t.Fatal(err)
	}
	if !ok {
		return
	}
	s, err := d.Source()
	if err != nil {
		t.Fatal(err)
	}
	if !(s.Flux > 0) || math.IsInf(s.Flux, 0) || !(s.Peak() >= 0) || !(s.Intensity(toward(10, 20)) <= s.Peak()*(1+1e-9)) {
		t.Fatalf("flux %g, peak %g", s.Flux, s.Peak())
	}
	checkRewritten(t, name, d)
}

// checkRewritten writes a file and reads it again.
func checkRewritten(t *testing.T, name string, d files.Data) {
	t.Helper()
	written, err := d.Bytes()
	if err != nil {
		t.Fatalf("%v\n%+v", err, d)
	}
	log := &source.Log{}
	again, ok := files.Read(&source.File{Name: name, Text: written}, log)
	if !ok || !reflect.DeepEqual(d, again) {
		t.Fatalf("%s\n wrote %+v\n  read %+v", said(log), d, again)
	}
}
