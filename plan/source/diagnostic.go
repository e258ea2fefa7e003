package source

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Severity ranks a Diagnostic.
type Severity uint8

// Info is worth knowing; Warning is a risk; Error stops the work.
const (
	Info Severity = iota
	Warning
	Error
)

// String returns "info", "warning" or "error".
func (s Severity) String() string { return [...]string{"info", "warning", "error"}[min(int(s), 2)] }

// Related is a second place that explains a Diagnostic.
type Related struct {
	Span    Span
	Message string
}

// Diagnostic is one finding with its place. Message is in plain words without a full stop;
// Hint is the fix, where one is likely. Code is stable, in kebab case ("unknown-key").
//
// A *Diagnostic is an error as well, that of a function which reads a text and does not know where it stands: its place
// is empty, and the reader of the value puts it in (Context.Refuse).
type Diagnostic struct {
	Severity Severity
	Code     string
	Span     Span
	Path     string // dotted path in the scene: "rooms.den.height"
	Setup    string // the set-up it was found in; "" for the scene itself
	Message  string
	Hint     string
	Related  []Related
}

// Errorf makes the error of a value whose place is not known; hint may be "".
func Errorf(code, hint, format string, args ...any) *Diagnostic {
	return &Diagnostic{Severity: Error, Code: code, Hint: hint, Message: fmt.Sprintf(format, args...)}
}

// Error returns the message alone, for those who know where the text stands.
func (d *Diagnostic) Error() string { return d.Message }

// DiagnosticKey tells diagnostics apart, whatever set-up they are found in.
type DiagnosticKey struct {
	code, message string
	span          Span
}

// Key returns what tells d apart.
func (d *Diagnostic) Key() DiagnosticKey { return DiagnosticKey{d.Code, d.Message, d.Span} }

// Log collects diagnostics. The zero value is ready to use. It is not safe for concurrent use.
type Log struct {
	all     []Diagnostic
	dropped int // findings beyond maxKept
	failed  bool
}

// maxKept is how many findings a Log keeps: nobody reads more, and a hostile file makes millions.
const maxKept = 10_000

// maxWords is how long a message or a hint may grow, in bytes, when it quotes what was written.
const maxWords = 1000

// clipped is a text that a person can still read.
func clipped(text string) string {
	if len(text) <= maxWords {
		return text
	}
	return strings.ToValidUTF8(text[:maxWords/2], "") + "…" + strings.ToValidUTF8(text[len(text)-maxWords/2:], "")
}

// Add records d.
func (l *Log) Add(d Diagnostic) {
	l.failed = l.failed || d.Severity == Error
	d.Message, d.Hint = clipped(d.Message), clipped(d.Hint)
	if len(l.all) >= maxKept {
		l.dropped++
		return
	}
	l.all = append(l.all, d)
}

// Errorf records an error at span.
func (l *Log) Errorf(span Span, code, hint, format string, args ...any) {
	l.Add(Diagnostic{Severity: Error, Code: code, Span: span, Hint: hint, Message: fmt.Sprintf(format, args...)})
}

// Warnf records a warning at span.
func (l *Log) Warnf(span Span, code, hint, format string, args ...any) {
	l.Add(Diagnostic{Severity: Warning, Code: code, Span: span, Hint: hint, Message: fmt.Sprintf(format, args...)})
}

// Infof records a note at span.
func (l *Log) Infof(span Span, code, hint, format string, args ...any) {
	l.Add(Diagnostic{Severity: Info, Code: code, Span: span, Hint: hint, Message: fmt.Sprintf(format, args...)})
}

// Failed reports whether an error was recorded.
func (l *Log) Failed() bool { return l.failed }

// All returns the findings sorted by file, line, column and code, each once: what was found in
// the scene and again in its set-ups is reported as the scene's. The caller owns the result.
func (l *Log) All() []Diagnostic {
	all := slices.Clone(l.all)
	slices.SortStableFunc(all, compare)
	all = slices.CompactFunc(merged(all), same)
	if l.dropped > 0 {
		all = append(all, Diagnostic{Severity: Info, Code: "too-many", Message: plural(l.dropped, "more finding") + " not kept"})
	}
	return all
}

// merged gives equal neighbours in the sorted list the set-up of the one that lies in the scene
// itself, where there is one.
func merged(sorted []Diagnostic) []Diagnostic {
	for i := 0; i < len(sorted); {
		end := i + 1
		for end < len(sorted) && same(sorted[i], sorted[end]) {
			end++
		}
		if slices.ContainsFunc(sorted[i:end], func(d Diagnostic) bool { return d.Setup == "" }) {
			sorted[i].Setup = ""
		}
		i = end
	}
	return sorted
}

// compare orders findings by place, then by what they say.
func compare(a, b Diagnostic) int {
	return cmp.Or(
		strings.Compare(a.Span.fileName(), b.Span.fileName()),
		cmp.Compare(a.Span.Line, b.Span.Line),
		cmp.Compare(a.Span.Col, b.Span.Col),
		strings.Compare(a.Code, b.Code),
		strings.Compare(a.Message, b.Message),
	)
}

// same reports whether two findings tell the reader the same.
func same(a, b Diagnostic) bool { return compare(a, b) == 0 }

// fileName is the name of the span's file, "" for none.
func (s Span) fileName() string {
	if s.File == nil {
		return ""
	}
	return s.File.Name
}

// Capped returns the most weighty findings of ds, at most the given number and in their order,
// and how many are left out.
func Capped(ds []Diagnostic, most int) (kept []Diagnostic, more int) {
	room := most
	keep := make([]bool, len(ds))
	for severity := int(Error); severity >= int(Info); severity-- {
		for i := range ds {
			if room > 0 && int(ds[i].Severity) == severity {
				keep[i] = true
				room--
			}
		}
	}
	for i := range ds {
		if keep[i] {
			kept = append(kept, ds[i])
		}
	}
	return kept, len(ds) - len(kept)
}

// Summary is one line such as "2 errors, 1 warning, 3 notes", or "nothing found".
func Summary(ds []Diagnostic) string {
	var count [3]int
	for i := range ds {
		count[min(ds[i].Severity, Error)]++
	}
	var parts []string
	for _, part := range []struct {
		severity Severity
		noun     string
	}{{Error, "error"}, {Warning, "warning"}, {Info, "note"}} {
		if n := count[part.severity]; n > 0 {
			parts = append(parts, plural(n, part.noun))
		}
	}
	if len(parts) == 0 {
		return "nothing found"
	}
	return strings.Join(parts, ", ")
}
