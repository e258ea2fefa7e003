package sheet

import (
	"fmt"
	"slices"

	"scrimshaw/plan/source"
)

// faults are the findings of composing, in the order they were made, each once.
type faults struct{ all []source.Diagnostic }

func (f *faults) add(d source.Diagnostic) {
	same := func(e source.Diagnostic) bool {
		return e.Code == d.Code && e.Message == d.Message && e.Setup == d.Setup
	}
	if !slices.ContainsFunc(f.all, same) {
		f.all = append(f.all, d)
	}
}

// join adds what others have found.
func (f *faults) join(others *faults) {
	for _, d := range others.all {
		f.add(d)
	}
}

func (f *faults) warn(code, hint, format string, args ...any) {
	f.add(source.Diagnostic{Severity: source.Warning, Code: code, Hint: hint, Message: fmt.Sprintf(format, args...)})
}

// failed says whether a sheet cannot be drawn.
func (f *faults) failed() bool {
	return slices.ContainsFunc(f.all, func(d source.Diagnostic) bool { return d.Severity == source.Error })
}
