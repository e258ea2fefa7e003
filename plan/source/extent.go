package source

import (
	"strings"
	"unicode/utf8"
)

// scalarEnd finds where the single value that starts at start ends. The library does not tell.
func scalarEnd(text []byte, start int, y *yamlNode) int {
	switch {
	case y.Style&doubleQuoted != 0:
		return quoteEnd(text, start, '"')
	case y.Style&singleQuoted != 0:
		return quoteEnd(text, start, '\'')
	case y.Style&(literalStyle|foldedStyle) != 0:
		return textEnd(text, lineEnd(text, start), y.Value)
	}
	return textEnd(text, start, y.Value)
}

// quoteEnd is the offset behind the quote that closes the one at start.
func quoteEnd(text []byte, start int, mark byte) int {
	for i := start + 1; i < len(text); i++ {
		switch {
		case text[i] == '\\' && mark == '"':
			i++
		case text[i] == mark && mark == '\'' && i+1 < len(text) && text[i+1] == mark:
			i++
		case text[i] == mark:
			return i + 1
		}
	}
	return len(text)
}

// textEnd is the offset behind the last character of value, which stands in text from start on
// with its line breaks and indentation folded: but for blanks, the two are equal.
func textEnd(text []byte, start int, value string) int {
	end := start
	for value = strings.TrimLeft(value, " \t\n"); value != ""; value = strings.TrimLeft(value, " \t\n") {
		for end < len(text) && isSpace(text[end]) {
			end++
		}
		_, size := utf8.DecodeRuneInString(value)
		if end+size > len(text) {
			return end
		}
		end, value = end+size, value[size:]
	}
	return end
}

// lineEnd is the offset of the line break after start.
func lineEnd(text []byte, start int) int {
	for start < len(text) && text[start] != '\n' && text[start] != '\r' {
		start++
	}
	return start
}

// propertyEnd is the offset behind the anchor or tag at start, as the library reads them: the name
// of an anchor has letters, digits, - and _, and a tag ends at a space.
func propertyEnd(text []byte, start int) int {
	end := start + 1
	for end < len(text) && (isNameByte(text[end]) || text[start] == '!' && !isSpace(text[end])) {
		end++
	}
	return end
}

// isNameByte reports whether b may be in the name of an anchor.
func isNameByte(b byte) bool {
	return 'a' <= b && b <= 'z' || 'A' <= b && b <= 'Z' || '0' <= b && b <= '9' || b == '-' || b == '_'
}

// skipBlank steps over blanks, line breaks and comments.
func skipBlank(text []byte, i int) int {
	for i < len(text) {
		switch {
		case isSpace(text[i]):
			i++
		case text[i] == '#' && (i == 0 || isSpace(text[i-1])):
			i = lineEnd(text, i)
		default:
			return i
		}
	}
	return i
}

// closing is the offset behind the bracket that closes a flow collection whose last value ended
// at i: only commas, an empty key's marks and comments can stand between.
func closing(text []byte, i int, closer byte) int {
	for ; i < len(text); i++ {
		if i = skipBlank(text, i); i < len(text) && text[i] == closer {
			return i + 1
		}
	}
	return len(text)
}
