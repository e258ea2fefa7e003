package ink

import (
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/bidi"
)

// Visual returns a line with its letters in the order in which they stand from left to right, where some run from right
// to left: by the Unicode Bidirectional Algorithm (UAX #9), for lines without embeddings, which are not lettered.
// Brackets that are read from the right are turned. Other lines stay as they are.
func Visual(s string) string {
	if !hasRightToLeft(s) {
		return s
	}
	var p bidi.Paragraph
	if _, err := p.SetString(s); err != nil {
		return s
	}
	order, err := p.Order()
	if err != nil {
		return s
	}
	runs := runsOf(order)
	if RunsLeft(s) {
		slices.Reverse(runs)
	} else {
		reverseNumbers(runs)
	}
	var b strings.Builder
	for _, r := range runs {
		b.WriteString(r.visual())
	}
	return b.String()
}

// RunsLeft reports whether a line as a whole runs from right to left: by its first letter that has a direction (P2
// and P3 of UAX #9).
func RunsLeft(s string) bool {
	for _, r := range s {
		switch classOf(r) {
		case bidi.L:
			return false
		case bidi.R, bidi.AL:
			return true
		}
	}
	return false
}

func classOf(r rune) bidi.Class {
	p, _ := bidi.LookupRune(r)
	return p.Class()
}

// hasRightToLeft reports whether any letter of a line runs from right to left.
func hasRightToLeft(s string) bool {
	const first = 0x0590 // the first letter that does
	return strings.IndexFunc(s, func(r rune) bool {
		return r >= first && (classOf(r) == bidi.R || classOf(r) == bidi.AL)
	}) >= 0
}

// run is a part of a line whose letters run one way.
type run struct {
	text   string
	left   bool // from right to left
	number bool // a number among letters that run from right to left, in a line that does not
}

// runsOf are the runs of a line as they are read. A number behind letters that run from right to left is a run of
// its own: it stands on their left (W7, I1).
func runsOf(order bidi.Ordering) (runs []run) {
	for i := range order.NumRuns() {
		r := order.Run(i)
		text, left := r.String(), r.Direction() == bidi.RightToLeft
		if n := leadingNumber(text); !left && n > 0 && len(runs) > 0 {
			runs = append(runs, run{text: text[:n], number: true})
			text = text[n:]
		}
		if text != "" {
			runs = append(runs, run{text: text, left: left})
		}
	}
	return runs
}

// leadingNumber is how many bytes of a text are a number at its start, with the signs that belong to it.
func leadingNumber(s string) (end int) {
	for i, r := range s {
		switch classOf(r) {
		case bidi.EN, bidi.AN, bidi.ET:
			end = i + len(string(r))
		case bidi.ES, bidi.CS, bidi.NSM, bidi.BN:
		default:
			return end
		}
	}
	return end
}

// reverseNumbers turns each row of runs that are read from the right round, in a line that runs to the right (L2).
func reverseNumbers(runs []run) {
	for i := 0; i < len(runs); i++ {
		end := i
		for end < len(runs) && (runs[end].left || runs[end].number) {
			end++
		}
		slices.Reverse(runs[i:end])
		i = max(i, end)
	}
}

// visual is a run from left to right.
func (r run) visual() string {
	if !r.left {
		return r.text
	}
	var letters []string // each with its marks behind it, as they are drawn
	for _, c := range r.text {
		if unicode.Is(unicode.Mn, c) && len(letters) > 0 {
			letters[len(letters)-1] += string(c)
			continue
		}
		letters = append(letters, turned(c))
	}
	slices.Reverse(letters)
	return strings.Join(letters, "")
}

// pairs are the signs besides brackets that turn with the direction (L4).
const pairs = "<>«»‹›≤≥"

// turned is a letter as it is read from the right.
func turned(r rune) string {
	signs := []rune(pairs)
	if i := slices.Index(signs, r); i >= 0 {
		return string(signs[i^1])
	}
	return bidi.ReverseString(string(r)) // which turns brackets
}

// Unshaped returns the letters of a line that are joined to their neighbours or stacked on them as a rule, and that
// are lettered one by one: of scripts such as Arabic or Devanagari, and marks that stand on letters.
func Unshaped(s string) []rune {
	var some []rune
	for _, r := range s {
		if r >= firstMark && (unicode.In(r, joined...) || unicode.In(r, unicode.Mn, unicode.Me)) {
			some = append(some, r)
		}
	}
	slices.Sort(some)
	return slices.Compact(some)
}

const firstMark = 0x0300

// joined are the scripts whose letters change with their neighbours.
var joined = []*unicode.RangeTable{
	unicode.Arabic, unicode.Syriac, unicode.Nko, unicode.Mandaic, unicode.Mongolian, unicode.Devanagari, unicode.Bengali, unicode.Gurmukhi,
	unicode.Gujarati, unicode.Oriya, unicode.Tamil, unicode.Telugu, unicode.Kannada, unicode.Malayalam, unicode.Sinhala, unicode.Tibetan,
	unicode.Myanmar, unicode.Khmer, unicode.Javanese, unicode.Balinese,
}
