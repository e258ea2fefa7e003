package source

import (
	"math"
	"strconv"
	"strings"
)

// article puts "a" or "an" before a noun.
func article(noun string) string {
	if noun != "" && strings.ContainsRune("aeiouAEIOU", rune(noun[0])) && !strings.HasPrefix(noun, "uni") {
		return "an " + noun
	}
	return "a " + noun
}

// plural is "1 error" or "2 errors".
func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}

// counted says how many things there may be: "2 values", "at least 1 value", "1 to 3 values".
func counted(least, most int, noun string) string {
	switch {
	case least == most:
		return plural(least, noun)
	case most == math.MaxInt:
		return "at least " + plural(least, noun)
	}
	return strconv.Itoa(least) + " to " + plural(most, noun)
}

// quotedList is `"a", "b" or "c"`.
func quotedList(words []string, last string) string {
	var b strings.Builder
	for i, word := range words {
		switch {
		case i > 0 && i == len(words)-1:
			b.WriteString(" " + last + " ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(`"` + word + `"`)
	}
	return b.String()
}
