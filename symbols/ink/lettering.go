package ink

import (
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Printed returns the rune that is lettered for r: a space for a tab or the end of a line, nothing
// for other controls and for format characters (which could turn a label round), the replacement
// character for what no file format can hold.
func Printed(r rune) (rune, bool) {
	switch {
	case r >= ' ' && r < 0x7F:
		return r, true
	case r == '\t' || r == '\n' || r == '\r' || r == '\u2028' || r == '\u2029':
		return ' ', true
	case unicode.IsControl(r) || unicode.Is(unicode.Cf, r):
		return 0, false
	case r&0xFFFE == 0xFFFE || !utf8.ValidRune(r):
		return utf8.RuneError, true
	}
	return r, true
}

// Clean returns s as it is lettered (see Printed). Bytes that are not UTF-8 become replacement
// characters.
func Clean(s string) string {
	for _, r := range s {
		if p, ok := Printed(r); !ok || p != r || r == utf8.RuneError {
			return clean(s)
		}
	}
	return s
}

func clean(s string) string {
	var b strings.Builder
	for _, r := range s {
		if p, ok := Printed(r); ok {
			b.WriteRune(p)
		}
	}
	return b.String()
}

// Capital returns words with a capital first.
func Capital(s string) string {
	first, size := utf8.DecodeRuneInString(s)
	if size == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[size:]
}

// Measure tells how far text runs and reaches; a typeface does. Sizes are ems in millimetres, and
// so are the answers; Descent is positive.
type Measure interface {
	Width(s string, size float64, bold bool) float64
	Ascent(size float64) float64
	Descent(size float64) float64
}

// Wrap breaks words into lines no wider than a width, mm, at a size of lettering; a word that is wider
// by itself stands alone.
func Wrap(m Measure, words string, size, width float64) (lines []string) {
	line := ""
	for _, w := range strings.Fields(words) {
		longer := strings.TrimSpace(line + " " + w)
		if line != "" && m.Width(longer, size, false) > width {
			lines = append(lines, line)
			longer = w
		}
		line = longer
	}
	return append(lines, line)
}

// Fitting returns how many runes of a line, from its start, are no wider than width: few trials find it, so that a
// line may be of any length.
func Fitting(line []rune, width float64, measure func(string) float64) int {
	return sort.Search(len(line), func(n int) bool { return measure(string(line[:n+1])) > width })
}
