package resolve

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// either is a where first is true, else b.
func either[T any](first bool, a, b T) T {
	if first {
		return a
	}
	return b
}

// reporter logs what is wrong with the thing at hand, in the units of the file.
type reporter struct {
	log   *source.Log
	path  string // of the thing at hand
	setup string // its name
	feet  bool
}

// about names the thing at hand until the function it returns is called.
func (r *reporter) about(path string) (leave func()) {
	outer := r.path
	r.path = path
	return func() { r.path = outer }
}

func (r *reporter) diagnostic(s source.Severity, span source.Span, code, hint, format string, args ...any) source.Diagnostic {
	return source.Diagnostic{Severity: s, Code: code, Span: span, Path: r.path, Setup: r.setup,
		Message: fmt.Sprintf(format, args...), Hint: hint}
}

func (r *reporter) errorf(span source.Span, code, hint, format string, args ...any) {
	r.log.Add(r.diagnostic(source.Error, span, code, hint, format, args...))
}

func (r *reporter) warnf(span source.Span, code, hint, format string, args ...any) {
	r.log.Add(r.diagnostic(source.Warning, span, code, hint, format, args...))
}

func (r *reporter) infof(span source.Span, code, hint, format string, args ...any) {
	r.log.Add(r.diagnostic(source.Info, span, code, hint, format, args...))
}

// length prints metres in the units of the file.
func (r *reporter) length(metres float64) string { return unit.FormatLength(metres, r.feet) }

// coordinate prints a coordinate as the file would write it, a bare number.
func (r *reporter) coordinate(metres float64) string {
	if r.feet {
		metres /= unit.Foot
	}
	return unit.FormatNumber(metres)
}

// xy prints a place as the file would write it.
func (r *reporter) xy(p r2.Vec) string {
	return "[" + r.coordinate(p.X) + ", " + r.coordinate(p.Y) + "]"
}

// roundUp rounds a move away from nought to what a tape shows, so that what is printed does mend.
func (r *reporter) roundUp(move float64) float64 {
	step := either(r.feet, unit.Inch/2, 0.01)
	return math.Copysign(math.Ceil(math.Abs(move)/step-1e-6)*step, move)
}

// rounded rounds a move to what a tape shows.
func (r *reporter) rounded(move float64) float64 {
	step := either(r.feet, unit.Inch/2, 0.01)
	return math.Round(move/step) * step
}
