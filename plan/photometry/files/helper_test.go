package files_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry/files"
	"scrimshaw/plan/source"
)

// within fails unless got is want to an absolute tolerance.
func within(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s = %.12g, want %.12g to %g", what, got, want, tolerance)
	}
}

// toward is a direction of the lamp frame by the angles of type C, degrees.
func toward(gamma, c float64) r3.Vec {
	sinG, cosG := math.Sincos(gamma * math.Pi / 180)
	sinC, cosC := math.Sincos(c * math.Pi / 180)
	return r3.Vec{X: sinG * cosC, Y: sinG * sinC, Z: -cosG}
}

// read reads a file that must have no errors, and gives the warnings' messages.
func read(t testing.TB, name, text string) (files.Data, []string) {
	t.Helper()
	log := &source.Log{}
	d, ok := files.Read(&source.File{Name: name, Text: []byte(text)}, log)
	if !ok || log.Failed() {
		t.Fatalf("%s: %s", name, said(log))
	}
	var warnings []string
	for _, f := range log.All() {
		warnings = append(warnings, f.Message)
	}
	return d, warnings
}

// said is what a log says, as a user sees it.
func said(log *source.Log) string {
	var b strings.Builder
	if err := source.Human(&b, log.All(), false); err != nil {
		return err.Error()
	}
	return b.String()
}

func testdata(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// written is a distribution of type C as an LM-63 file, absolute, with intensities at vertical
// angles from 0 to last in even steps, and at the given planes.
func written(planes []float64, last, step float64, candela func(gamma, c float64) float64) string {
	l := &files.LM63{
		Edition: files.Edition2019, Lamps: 1, Lumens: -1, Multiplier: 1, Ballast: 1, Second: 1,
		Horizontal: planes, Keywords: []files.Keyword{{"TEST", "none"}, {"TESTLAB", "a formula"}, {"ISSUEDATE", "none"}, {"MANUFAC", "nobody"}},
	}
	for i := 0; float64(i)*step <= last+1e-9; i++ {
		l.Vertical = append(l.Vertical, float64(i)*step)
	}
	for _, c := range planes {
		var row []float64
		for _, g := range l.Vertical {
			row = append(row, candela(g, c))
		}
		l.Candela = append(l.Candela, row)
	}
	text, err := l.Bytes()
	if err != nil {
		panic(fmt.Sprint("a test made a bad file: ", err))
	}
	return string(text)
}

func cosine(power float64) func(gamma, _ float64) float64 {
	return func(gamma, _ float64) float64 {
		return 1000 * math.Pow(math.Max(0, math.Cos(gamma*math.Pi/180)), power)
	}
}
