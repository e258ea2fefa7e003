package source

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Nearest returns the word of words that text was most likely meant to be, or "" where none is
// near enough to offer without looking silly. Upper and lower case count as equal; a swap of two
// neighbours counts as one slip, as do a letter too many, too few or wrong (the restricted
// Damerau-Levenshtein distance). Ties go to the first.
func Nearest(text string, words []string) string {
	folded := strings.ToLower(text)
	if utf8.RuneCountInString(folded) > maxWord {
		return ""
	}
	best, least := "", utf8.RuneCountInString(folded)+1
	for _, word := range words {
		if word == text || utf8.RuneCountInString(word) > maxWord {
			continue
		}
		target := strings.ToLower(word)
		if d := distance([]rune(folded), []rune(target)); d < least && d <= maxTypos(folded, target) {
			best, least = word, d
		}
	}
	return best
}

// maxWord is the longest word, in runes, that is worth comparing.
const maxWord = 64

// maxTypos is how many slips between two words still make a likely typo: none in words of one or two
// letters, one up to five, two up to nine, then three.
func maxTypos(a, b string) int {
	switch n := max(utf8.RuneCountInString(a), utf8.RuneCountInString(b)); {
	case n < 3:
		return 0
	case n <= 5:
		return 1
	case n <= 9:
		return 2
	}
	return 3
}

// distance is the optimal string alignment distance of a and b.
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			row[j+1] = min(last[j+1], row[j]) + 1
			if a[i] == b[j] {
				row[j+1] = min(row[j+1], last[j])
			} else {
				row[j+1] = min(row[j+1], last[j]+1)
			}
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}

// maxOffered is how many words DidYouMean offers.
const maxOffered = 3

// minStart is how many letters of a word, at least, tell which word was begun.
const minStart = 3

// Beginning returns the words that text is the start of, in their order, upper and lower case alike: a
// name that was left off before its last part.
func Beginning(text string, words []string) []string {
	folded := strings.ToLower(text)
	if utf8.RuneCountInString(folded) < minStart {
		return nil
	}
	var begun []string
	for _, word := range words {
		if word != text && strings.HasPrefix(strings.ToLower(word), folded) && !slices.Contains(begun, word) {
			begun = append(begun, word)
		}
	}
	return begun
}

// DidYouMean is the hint that offers the nearest of words, else the first that text is the start of, or "".
func DidYouMean(text string, words []string) string {
	if near := Nearest(text, words); near != "" {
		return `did you mean "` + near + `"?`
	}
	if begun := Beginning(text, words); len(begun) > 0 {
		return "did you mean " + quotedList(begun[:min(len(begun), maxOffered)], "or") + "?"
	}
	return ""
}

// DidYouMeanOr is the hint of DidYouMean; where nothing is near, the names that begin with the most of the text's parts ("lamp-1800-soft"
// for "lamp-1800-hard"), if those are two or more, else those that end in what it ends in ("quarter-silk" for "half-silk"), else those that
// begin with its first part; and where there is none, otherwise.
func DidYouMeanOr(text string, words []string, otherwise string) string {
	if near := DidYouMean(text, words); near != "" {
		return near
	}
	alike, shared := sameStart(text, words)
	if kind := sameKind(text, words); shared < 2 && len(kind) > 0 {
		alike = kind
	}
	if len(alike) > 0 {
		return "did you mean " + quotedList(alike[:min(len(alike), maxOffered)], "or") + "?"
	}
	return otherwise
}

// sameKind returns the words that have the last part of a name, which says of what kind it is.
func sameKind(name string, words []string) []string {
	parts := partsOf(name)
	if len(parts) < 2 {
		return nil
	}
	kind := parts[len(parts)-1]
	var alike []string
	for _, word := range words {
		if utf8.RuneCountInString(kind) >= minStart && slices.Contains(partsOf(word), kind) && !slices.Contains(alike, word) {
			alike = append(alike, word)
		}
	}
	return alike
}

// sameStart returns the words that have as many first parts of a name as any has, and how many those are. A short first part
// tells nothing.
func sameStart(name string, words []string) (alike []string, shared int) {
	parts := partsOf(name)
	if len(parts) < 2 || utf8.RuneCountInString(parts[0]) < minStart {
		return nil, 0
	}
	for _, word := range words {
		n := 0
		for of := partsOf(word); n < min(len(parts), len(of)) && of[n] == parts[n]; n++ {
		}
		if n > shared {
			alike, shared = nil, n
		}
		if n > 0 && n == shared && !slices.Contains(alike, word) {
			alike = append(alike, word)
		}
	}
	return alike, shared
}

// partsOf are the parts of a name between hyphens and blanks, in small letters.
func partsOf(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return r == '-' || r == ' ' })
}

// maxSuggested is how many words Offer lists.
const maxSuggested = 8

// Offer is the hint of DidYouMean; where nothing is near, it lists the words there are, the first of many.
func Offer(text string, words []string) string {
	if near := DidYouMean(text, words); near != "" || len(words) == 0 {
		return near
	}
	if more := len(words) - maxSuggested; more > 0 {
		return "there is " + strings.Join(words[:maxSuggested], ", ") + " and " + plural(more, "other")
	}
	return "there is " + quotedList(words, "or")
}
