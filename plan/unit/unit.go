// Package unit parses and prints lengths, angles, light levels and the trade's other written
// quantities. It is a leaf: text in, SI numbers out.
//
// Every error a Parse function returns is a *Fault. Numbers are written with a decimal point,
// without digit groups, and must be finite; a narrow or hard space, a typographic prime or quote,
// a true minus and the vulgar fractions are read as the plain characters they stand for.
package unit

import (
	"fmt"
	"strings"
)

// Fault is a value that could not be read: what is wrong and, where one is likely, the fix. It has no place and
// no code, which only the reader of a file knows: a value that a flag gives has neither, and this package, a
// leaf, knows of no file.
type Fault struct {
	Message string // plain words, no full stop
	Hint    string // "did you mean 3 m?"; "" where no fix is likely
}

// Error returns the message without the hint.
func (f *Fault) Error() string { return f.Message }

// fault makes a *Fault as an error; hint may be "".
func fault(hint, format string, args ...any) error {
	return &Fault{Message: fmt.Sprintf(format, args...), Hint: hint}
}

// plainCharacters turns the characters that keyboards and word processors put in place of plain ones
// back, so that one grammar reads them all.
var plainCharacters = strings.NewReplacer(
	"\u00a0", " ", "\u2007", " ", "\u2009", " ", "\u200a", " ", "\u202f", " ", "\t", " ",
	"\u2032\u2032", `"`, "''", `"`,
	"\u2032", "'", "\u2019", "'", "\u2018", "'", "\u00b4", "'",
	"\u2033", `"`, "\u201d", `"`, "\u201c", `"`,
	"\u2212", "-", "\u2013", "-",
	"\u2044", "/",
	"½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8",
	"\u00ba", "°",
)

// normalise is text with plain characters and no space at its ends.
func normalise(text string) string { return strings.TrimSpace(plainCharacters.Replace(text)) }
