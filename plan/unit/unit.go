// Package unit parses and prints lengths, angles, light levels and the trade's other written
// quantities. It is a leaf: text in, SI numbers out.
//
// Every error a Parse function returns is a *source.Diagnostic without a place: a value that a flag gives has none, and of
// a value in a file its reader knows it. Numbers are written with a decimal point,
// without digit groups, and must be finite; a narrow or hard space, a typographic prime or quote,
// a true minus and the vulgar fractions are read as the plain characters they stand for.
package unit

import (
	"strings"

	"scrimshaw/plan/source"
)

// fault makes the error of a value that could not be read; hint may be "".
func fault(hint, format string, args ...any) error {
	return source.Errorf(source.CodeBadValue, hint, format, args...)
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
