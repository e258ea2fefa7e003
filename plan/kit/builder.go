package kit

import (
	"fmt"

	"scrimshaw/plan/source"
)

// builder makes one head.
type builder struct {
	catalogue *Catalogue
	choice    Choice
	log       *source.Log
	head      Head
	ok        bool
}

// fault logs an error at span, or at the light where span is not valid.
func (b *builder) fault(span source.Span, code, hint, format string, args ...any) {
	b.ok = false
	b.report(source.Error, span, code, hint, format, args...)
}

func (b *builder) report(severity source.Severity, span source.Span, code, hint, format string, args ...any) {
	if !span.Valid() {
		span = b.choice.Span
	}
	b.log.Add(source.Diagnostic{
		Severity: severity, Code: code, Span: span, Path: b.choice.Path, Setup: b.choice.Setup,
		Message: fmt.Sprintf(format, args...), Hint: hint,
	})
}

// step notes one line of how the head came about.
func (b *builder) step(what, formula, from string, out float64, unit string, in ...float64) {
	b.head.Steps = append(b.head.Steps, Step{What: what, Formula: formula, Source: from, In: in, Out: out, Unit: unit})
}

// place is a file and line, as a source of a step.
func place(s source.Span) string {
	if !s.Valid() {
		return ""
	}
	return fmt.Sprintf("%s:%d", s.File.Name, s.Line)
}
