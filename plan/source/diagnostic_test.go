package source

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"
	"unicode/utf8"
)

// at is the span of the first place in text that reads word.
func at(f *File, word string) Span {
	start := bytes.Index(f.Text, []byte(word))
	return newLines(f).span(start, start+len(word))
}

func ExampleHuman() {
	kitchen := &File{Name: "kitchen.yaml", Text: []byte("rooms:\n  den: {size: [5, 4], heigth: 2.6}\n")}
	log := new(Log)
	log.Add(Diagnostic{Severity: Error, Code: "unknown-key", Span: at(kitchen, "heigth"),
		Message: `a room has no key "heigth"`, Hint: `did you mean "height"?`})
	log.Add(Diagnostic{Severity: Warning, Code: "low", Setup: "close", Span: at(kitchen, "2.6"), Message: "the ceiling is low",
		Related: []Related{{at(kitchen, "rooms"), "all rooms are here"}}})
	if err := Human(os.Stdout, log.All(), false); err != nil {
		panic(err)
	}
	fmt.Println(Summary(log.All()))
	// Output:
	// kitchen.yaml:2:23: error: a room has no key "heigth" [unknown-key]
	//  2 |   den: {size: [5, 4], heigth: 2.6}
	//    |                       ^^^^^^
	//    fix: did you mean "height"?
	//
	// kitchen.yaml:2:31: warning: in set-up close: the ceiling is low [low]
	//  2 |   den: {size: [5, 4], heigth: 2.6}
	//    |                               ^^^
	//    kitchen.yaml:1:1: all rooms are here
	//  1 | rooms:
	//    | ^^^^^
	// 1 error, 1 warning
}

func TestHuman(t *testing.T) {
	long := strings.Repeat("left ", 30) + "HERE" + strings.Repeat(" right", 30)
	for _, c := range []struct{ name, text, word, want string }{
		{"tabs are expanded", "a:\t\tb\tHERE\n", "HERE", " 1 | a:      b   HERE\n   |             ^^^^\n"},
		{"wide letters", "日本: HERE\n", "HERE", " 1 | 日本: HERE\n   |       ^^^^\n"},
		{"marked wide letters", "a: 日本\n", "日本", " 1 | a: 日本\n   |    ^^^^\n"},
		{"combining marks", "e\u0301e\u0301: HERE\n", "HERE", " 1 | e\u0301e\u0301: HERE\n   |     ^^^^\n"},
		{"a mark alone", "e\u0301x\n", "\u0301", " 1 | e\u0301x\n   | ^\n"},
		{"a terminal is not driven", "a: \x1b[2J\x07 HERE\n", "HERE", ` 1 | a: \x1b[2J\x07 HERE` + "\n   |                ^^^^\n"},
		{"nor turned round", "a: \u202eb HERE\n", "HERE", ` 1 | a: \u{202e}b HERE` + "\n   |              ^^^^\n"},
		{"bytes that are no text", "a: \xff\xfe HERE\n", "HERE", ` 1 | a: \xff\xfe HERE` + "\n   |             ^^^^\n"},
		{"CR LF", "a: 1\r\nb: HERE\r\n", "HERE", " 2 | b: HERE\n   |    ^^^^\n"},
		{"a byte order mark", bom + "HERE: 1\n", "HERE", " 1 | HERE: 1\n   | ^^^^\n"},
		{"more lines than one", "a:\n  b: HERE\n  c: 1\n", "HERE\n  c: 1", " 2 |   b: HERE\n   |      ^^^^\n"},
		{"a place behind the line", "a:\nb: 1\n", "\n", " 1 | a:\n   |   ^\n"},
		{"a long line is cut", long, "HERE",
			" 1 | …" + strings.Repeat("left ", 8) + "HERE" + strings.Repeat(" right", 9) + "…\n" +
				"   |  " + strings.Repeat(" ", 40) + "^^^^\n"},
		{"a long line from its start", "HERE" + strings.Repeat(" right", 30), "HERE",
			" 1 | HERE" + strings.Repeat(" right", 15) + " rig…\n   | ^^^^\n"},
		{"a number of several digits", strings.Repeat("\n", 99) + "HERE", "HERE", " 100 | HERE\n     | ^^^^\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f := &File{Name: "f", Text: []byte(c.text)}
			var b strings.Builder
			span := at(f, c.word)
			if err := Human(&b, []Diagnostic{{Severity: Error, Code: "c", Span: span, Message: "m"}}, false); err != nil {
				t.Fatal(err)
			}
			want := fmt.Sprintf("f:%d:%d: error: m [c]\n", span.Line, span.Col) + c.want
			if b.String() != want {
				t.Errorf("got\n%s\nwant\n%s", b.String(), want)
			}
		})
	}
}

func TestHumanWithoutPlace(t *testing.T) {
	var b strings.Builder
	ds := []Diagnostic{{Severity: Error, Code: "io", Message: "cannot read \x1b[31mit"}, {Code: "n", Span: Span{File: &File{Name: "a\nb"}}, Message: "odd"}}
	if err := Human(&b, ds, false); err != nil {
		t.Fatal(err)
	}
	if want := "error: cannot read \\x1b[31mit [io]\n\na\\x0ab: info: odd [n]\n"; b.String() != want {
		t.Errorf("got %q, want %q", b.String(), want)
	}
}

func TestHumanColour(t *testing.T) {
	f := &File{Name: "f", Text: []byte("a: b\n")}
	var plain, coloured strings.Builder
	ds := []Diagnostic{{Severity: Warning, Code: "c", Span: at(f, "b"), Message: "m", Hint: "h", Related: []Related{{at(f, "a"), "r"}}}}
	if err := Human(&plain, ds, false); err != nil {
		t.Fatal(err)
	}
	if err := Human(&coloured, ds, true); err != nil {
		t.Fatal(err)
	}
	const want = "\x1b[1mf:1:4:\x1b[0m \x1b[1;33mwarning:\x1b[0m m\x1b[2m [c]\x1b[0m\n"
	if first, _, _ := strings.Cut(coloured.String(), "\n"); first+"\n" != want {
		t.Errorf("got %q, want %q", first, want)
	}
	bare := strings.NewReplacer(ansiBold, "", ansiDim, "", ansiRed, "", ansiYellow, "", ansiCyan, "", ansiReset, "").Replace(coloured.String())
	if bare != plain.String() {
		t.Errorf("but for colour %q is not %q", bare, plain.String())
	}
}

func TestLogAll(t *testing.T) {
	a, b := &File{Name: "a.yaml", Text: []byte("x: 1\ny: 2\n")}, &File{Name: "b.yaml", Text: []byte("z: 3\n")}
	log := new(Log)
	if log.Failed() || len(log.All()) != 0 || Summary(log.All()) != "nothing found" {
		t.Error("an empty log is not empty")
	}
	log.Errorf(at(b, "z"), "one", "", "in b")
	log.Warnf(at(a, "y"), "two", "", "second line")
	if log.Failed() == false {
		t.Error("an error is no failure")
	}
	log.Infof(at(a, "2"), "three", "", "second line, later")
	log.Add(Diagnostic{Severity: Error, Code: "four", Setup: "close", Span: at(a, "x"), Message: "twice"})
	log.Add(Diagnostic{Severity: Error, Code: "four", Span: at(a, "x"), Message: "twice"})
	log.Add(Diagnostic{Severity: Error, Code: "alone", Setup: "close", Span: at(a, "x"), Message: "only there"})
	log.Add(Diagnostic{Severity: Error, Code: "alone", Setup: "wide", Span: at(a, "x"), Message: "only there"})
	log.Errorf(Span{}, "no-place", "", "no place")
	const want = `error: no place [no-place]
a.yaml:1:1: error: in set-up close: only there [alone]
a.yaml:1:1: error: twice [four]
a.yaml:2:1: warning: second line [two]
a.yaml:2:4: info: second line, later [three]
b.yaml:1:1: error: in b [one]
`
	if got := short(log); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := Summary(log.All()); got != "4 errors, 1 warning, 1 note" {
		t.Errorf("the summary is %q", got)
	}
}

func TestLogIsCapped(t *testing.T) {
	f := &File{Name: "f", Text: []byte(strings.Repeat("a\n", 100))}
	log := new(Log)
	for i := range 60 {
		log.Add(Diagnostic{Severity: Severity(i % 2), Code: "c", Span: Span{File: f, Start: 2 * i, End: 2*i + 1, Line: i + 1, Col: 1}, Message: "m"})
	}
	log.Errorf(Span{File: f, Start: 198, End: 199, Line: 100, Col: 1}, "last", "", "the worst")
	out := short(log)
	if got := strings.Count(out, "\n"); got != MaxShown+1 || !strings.HasSuffix(out, "f:100:1: error: the worst [last]\nand 11 more\n") {
		t.Errorf("%d lines:\n%s", got, out)
	}
	if got := strings.Count(out, "warning"); got != 30 {
		t.Errorf("%d of 30 warnings are shown", got)
	}

	for range maxKept + 5 {
		log.Warnf(Span{File: f, Line: 1, Col: 1}, "flood", "", "again")
	}
	all := log.All()
	if last := all[len(all)-1]; last.Code != "too-many" || last.Message != "66 more findings not kept" {
		t.Errorf("the last finding is %+v", last)
	}
}

func TestJSON(t *testing.T) {
	var b strings.Builder
	if err := JSON(&b, nil); err != nil || b.String() != "[]\n" {
		t.Errorf("nothing is %q, %v", b.String(), err)
	}
	f := &File{Name: "f.yaml", Text: []byte("a: é <b>\n")}
	ds := []Diagnostic{{Severity: Error, Code: "c", Span: at(f, "<b>"), Path: "a", Setup: "s", Message: "m <b>", Hint: "h",
		Related: []Related{{at(f, "a"), "r"}}}}
	b.Reset()
	if err := JSON(&b, ds); err != nil {
		t.Fatal(err)
	}
	var compact bytes.Buffer
	if err := json.Compact(&compact, []byte(b.String())); err != nil {
		t.Fatal(err)
	}
	const want = `[{"severity":"error","code":"c","file":"f.yaml","line":1,"column":6,"start":6,"end":9,"path":"a","setup":"s",` +
		`"message":"m <b>","hint":"h","related":[{"file":"f.yaml","line":1,"column":1,"start":0,"end":1,"message":"r"}]}]`
	if compact.String() != want {
		t.Errorf("got\n%s\nwant\n%s", compact.String(), want)
	}
}

// What quotes the file stays readable, however much the file holds.
func TestLongWordsAreClipped(t *testing.T) {
	var log Log
	log.Errorf(Span{}, CodeSyntax, strings.Repeat("é", 1e5), "%s", strings.Repeat("x", 1e5))
	d := log.All()[0]
	for _, text := range []string{d.Message, d.Hint} {
		if len(text) > maxWords+len("…") || !utf8.ValidString(text) || !strings.Contains(text, "…") {
			t.Errorf("%d bytes, valid %v", len(text), utf8.ValidString(text))
		}
	}
}

// TestDiagnosticString: printed by itself or in a list, a finding reads as it does in --faults line.
func TestDiagnosticString(t *testing.T) {
	f := &File{Name: "den.yaml", Text: []byte("rooms: {den: {heigth: 2}}\n")}
	log := new(Log)
	log.Add(Diagnostic{Severity: Error, Code: "unknown-key", Setup: "close", Span: at(f, "heigth"), Message: `a room has no key "heigth"`, Hint: `did you mean "height"?`})
	log.Infof(Span{}, "assumed", "", "assumed fps: \x1b")
	want := `[info: assumed fps: \x1b [assumed] den.yaml:1:15: error: in set-up close: a room has no key "heigth" [unknown-key] (fix: did you mean "height"?)]`
	if got := fmt.Sprint(log.All()); got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	var lines strings.Builder
	if err := Short(&lines, log.All()[1:]); err != nil || lines.String() != log.All()[1].String()+"\n" {
		t.Errorf("Short writes %q, %v", lines.String(), err)
	}
}
