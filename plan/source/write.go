package source

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"
)

// MaxShown is how many findings Human and Short write before they say how many more there are.
const MaxShown = 50

// Human writes findings for a reader at a terminal: place, what is wrong, the line with a caret,
// the fix, and what else belongs to it. Control characters of the file are shown as escapes, so
// that a file cannot drive the terminal. With colour it uses ANSI escapes.
func Human(w io.Writer, ds []Diagnostic, colour bool) error {
	p := printer{colour: colour}
	kept, more := Capped(ds, MaxShown)
	for i := range kept {
		if i > 0 && !(brief(&kept[i-1]) && brief(&kept[i])) {
			p.WriteByte('\n')
		}
		p.diagnostic(&kept[i])
	}
	if more > 0 {
		fmt.Fprintf(&p, "\nand %d more\n", more)
	}
	_, err := io.WriteString(w, p.String())
	return err
}

// brief says whether a finding is a note told in one line: it has no place, no fix and nothing related.
func brief(d *Diagnostic) bool {
	return d.Severity == Info && !d.Span.Valid() && d.Hint == "" && len(d.Related) == 0
}

// String is the finding in one line, as editors and scripts read it:
// file:line:column: severity: message [code] (fix: hint).
func (d Diagnostic) String() string {
	var p printer
	p.heading(&d)
	if d.Hint != "" {
		p.WriteString(" (fix: " + visible(d.Hint) + ")")
	}
	return p.Builder.String()
}

// Short writes one line a finding, each as its String.
func Short(w io.Writer, ds []Diagnostic) error {
	var b strings.Builder
	kept, more := Capped(ds, MaxShown)
	for i := range kept {
		fmt.Fprintln(&b, kept[i])
	}
	if more > 0 {
		fmt.Fprintf(&b, "and %d more\n", more)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// spanJSON is a place as JSON: line and column from 1, column in runes, start and end as bytes.
type spanJSON struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Start  int    `json:"start"`
	End    int    `json:"end"`
}

type relatedJSON struct {
	spanJSON
	Message string `json:"message"`
}

type diagnosticJSON struct {
	Severity string `json:"severity"`
	Code     string `json:"code"`
	spanJSON
	Path    string        `json:"path"`
	Setup   string        `json:"setup"`
	Message string        `json:"message"`
	Hint    string        `json:"hint"`
	Related []relatedJSON `json:"related"`
}

// JSON writes all findings as a list of objects, an empty list where there are none.
func JSON(w io.Writer, ds []Diagnostic) error {
	list := make([]diagnosticJSON, len(ds))
	for i, d := range ds {
		list[i] = diagnosticJSON{d.Severity.String(), d.Code, placeJSON(d.Span), d.Path, d.Setup, d.Message, d.Hint,
			make([]relatedJSON, len(d.Related))}
		for j, r := range d.Related {
			list[i].Related[j] = relatedJSON{placeJSON(r.Span), r.Message}
		}
	}
	encoder := json.NewEncoder(w)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(list)
}

func placeJSON(s Span) spanJSON { return spanJSON{s.fileName(), s.Line, s.Col, s.Start, s.End} }

// severityStyle is the colour of a severity.
func severityStyle(s Severity) string {
	return [...]string{ansiCyan, ansiYellow, ansiRed}[min(s, Error)]
}

// diagnostic writes one finding with its excerpts.
func (p *printer) diagnostic(d *Diagnostic) {
	p.heading(d)
	p.WriteByte('\n')
	gutter := numberWidth(d.Span.Line)
	for _, r := range d.Related {
		gutter = max(gutter, numberWidth(r.Span.Line))
	}
	style := severityStyle(d.Severity)
	p.excerpt(d.Span, gutter, style)
	if d.Hint != "" {
		fmt.Fprintf(p, "%*s%s %s\n", gutter+2, "", p.styled(ansiBold, "fix:"), visible(d.Hint))
	}
	for _, r := range d.Related {
		fmt.Fprintf(p, "%*s%s %s\n", gutter+2, "", p.styled(ansiBold, location(r.Span)+":"), visible(r.Message))
		p.excerpt(r.Span, gutter, ansiDim)
	}
}

// heading writes the place and what is wrong, without a line break.
func (p *printer) heading(d *Diagnostic) {
	if at := location(d.Span); at != "" {
		p.WriteString(p.styled(ansiBold, at+":") + " ")
	}
	p.WriteString(p.styled(severityStyle(d.Severity), d.Severity.String()+":") + " ")
	if d.Setup != "" {
		p.WriteString("in set-up " + visible(d.Setup) + ": ")
	}
	p.WriteString(visible(d.Message) + p.styled(ansiDim, " ["+d.Code+"]"))
}

// location is file:line:column, as far as it is known.
func location(s Span) string {
	name := visible(s.fileName())
	if !s.Valid() {
		return name
	}
	return fmt.Sprintf("%s:%d:%d", name, s.Line, s.Col)
}

func numberWidth(n int) int { return len(fmt.Sprint(max(n, 0))) }
