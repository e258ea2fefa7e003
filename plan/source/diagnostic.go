package source

import "fmt"

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

// Log collects diagnostics. The zero value is ready to use. It is not safe for concurrent use.
type Log struct {
	all []Diagnostic
}

// Add records d.
func (l *Log) Add(d Diagnostic) { l.all = append(l.all, d) }

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
func (l *Log) Failed() bool {
	for i := range l.all {
		if l.all[i].Severity == Error {
			return true
		}
	}
	return false
}
