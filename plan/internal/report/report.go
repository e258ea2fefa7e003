// Package report is how the layout of a set-up and its checks report faults: with the thing at hand, its set-up and
// lengths in the units of the file.
package report

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// Either is a where first is true, else b.
func Either[T any](first bool, a, b T) T {
	if first {
		return a
	}
	return b
}

// Reporter logs what is wrong with the thing at hand, in the units of the file.
type Reporter struct {
	Log   *source.Log
	Path  string // of the thing at hand
	Setup string // its name
	Feet  bool   // the file has lengths in feet, and so have messages
}

// About names the thing at hand until the function it returns is called.
func (r *Reporter) About(path string) (leave func()) {
	outer := r.Path
	r.Path = path
	return func() { r.Path = outer }
}

// Diagnostic is a finding about the thing at hand; the hint says what to write instead.
func (r *Reporter) Diagnostic(s source.Severity, span source.Span, code, hint, format string, args ...any) source.Diagnostic {
	return source.Diagnostic{Severity: s, Code: code, Span: span, Path: r.Path, Setup: r.Setup,
		Message: fmt.Sprintf(format, args...), Hint: hint}
}

// Errorf logs an error.
func (r *Reporter) Errorf(span source.Span, code, hint, format string, args ...any) {
	r.Log.Add(r.Diagnostic(source.Error, span, code, hint, format, args...))
}

// Warnf logs a warning.
func (r *Reporter) Warnf(span source.Span, code, hint, format string, args ...any) {
	r.Log.Add(r.Diagnostic(source.Warning, span, code, hint, format, args...))
}

// Infof logs a note.
func (r *Reporter) Infof(span source.Span, code, hint, format string, args ...any) {
	r.Log.Add(r.Diagnostic(source.Info, span, code, hint, format, args...))
}

// Length prints metres in the units of the file.
func (r *Reporter) Length(metres float64) string { return unit.FormatLength(metres, r.Feet) }

// Coordinate prints a coordinate as the file would write it, a bare number.
func (r *Reporter) Coordinate(metres float64) string {
	if r.Feet {
		metres /= unit.Foot
	}
	return unit.FormatNumber(metres)
}

// XY prints a place as the file would write it.
func (r *Reporter) XY(p r2.Vec) string {
	return "[" + r.Coordinate(p.X) + ", " + r.Coordinate(p.Y) + "]"
}

// RoundUp rounds a move away from nought to what a tape shows, so that what is printed does mend.
func (r *Reporter) RoundUp(move float64) float64 {
	step := Either(r.Feet, unit.Inch/2, 0.01)
	return math.Copysign(math.Ceil(math.Abs(move)/step-1e-6)*step, move)
}

// Round rounds a move to what a tape shows.
func (r *Reporter) Round(move float64) float64 {
	step := Either(r.Feet, unit.Inch/2, 0.01)
	return math.Round(move/step) * step
}
