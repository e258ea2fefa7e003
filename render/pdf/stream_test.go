package pdf

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/symbols/ink"
	"scrimshaw/symbols/ink/specimen"
)

// contents returns the content streams of a file's pages, inflated.
func contents(t testing.TB, file []byte) []string {
	t.Helper()
	var all []string
	for rest := file; ; {
		_, after, ok := bytes.Cut(rest, []byte("\nstream\n"))
		if !ok {
			return all
		}
		rest = after
		r, err := zlib.NewReader(bytes.NewReader(after))
		if err != nil {
			continue // the map to Unicode is not deflated
		}
		data, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.HasPrefix(data, []byte("0 J\n")) {
			all = append(all, string(data))
		}
	}
}

// operators cuts a content stream into its operators, operands and strings, and reports strings
// that are not closed.
func operators(t testing.TB, s string) []string {
	t.Helper()
	var out []string
	for len(s) > 0 {
		switch {
		case s[0] == ' ' || s[0] == '\n':
			s = s[1:]
		case s[0] == '(':
			end := closing(s)
			if end < 0 {
				t.Fatalf("a string without end: %q", s)
			}
			out, s = append(out, s[:end]), s[end:]
		default:
			end := strings.IndexAny(s+" ", " \n(")
			out, s = append(out, s[:end]), s[end:]
		}
	}
	return out
}

// closing returns the length of the literal string at the start of s, -1 if it does not end.
func closing(s string) int {
	depth := 0
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case '\\':
			i++
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
	return -1
}

// balanced checks that what a stream opens it closes.
func balanced(t testing.TB, stream string) {
	t.Helper()
	depth := map[string]int{}
	pairs := map[string]string{"Q": "q", "EMC": "BDC", "ET": "BT"}
	for _, op := range operators(t, stream) {
		switch op {
		case "q", "BDC", "BT":
			depth[op]++
		case "Q", "EMC", "ET":
			if depth[pairs[op]]--; depth[pairs[op]] < 0 {
				t.Fatalf("%s too often in\n%s", op, stream)
			}
		case "NaN", "Inf", "+Inf", "-Inf":
			t.Fatalf("%s is written", op)
		}
	}
	for op, n := range depth {
		if n != 0 {
			t.Fatalf("%d %s left open in\n%s", n, op, stream)
		}
	}
}

func TestStreamsAreBalanced(t *testing.T) {
	for _, doc := range []ink.Document{specimen.Document(), gallery()} {
		for _, s := range contents(t, written(t, doc, Options{})) {
			balanced(t, s)
		}
	}
}

func FuzzPDFText(f *testing.F) {
	for _, s := range []string{"plain", specimen.Hostile, "\xff\xfe", "a)b(c\\", "\u0d0d\u0a0a\u5c5c\u2929", "漢字😀", ""} {
		f.Add(s, 30.0)
	}
	f.Add("x", math.NaN())
	opts := Options{Font: family(f)}
	f.Fuzz(func(t *testing.T, label string, angle float64) {
		page := ink.Page{Title: label, Width: 100, Height: 50}
		ink.NewCanvas(&page, ink.Notes).Text(ink.Text{At: r2.Vec{X: 1, Y: 1}, S: label, Size: 3, Angle: angle})
		doc := ink.Document{Title: label, Author: label, Subject: label, Language: label, Date: label, Pages: []ink.Page{page}}
		for _, s := range contents(t, written(t, doc, opts)) {
			balanced(t, s)
		}
	})
}
