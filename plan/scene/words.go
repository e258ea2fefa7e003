package scene

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"scrimshaw/plan/source"
)

// maxText bounds a note or a title, in characters: what a sheet can carry.
const maxText = 500

// text reads a line of words. Numbers, dates and the like are taken as they were written.
func text(what, like string) source.Reader[string] {
	schema := map[string]any{"type": []any{"string", "number"}, "maxLength": maxText}
	return scalar(what, like, schema, func(text string, _ *source.Node, _ *source.Context) (string, error) { return plainWords(what, text) })
}

// plainWords are words that a sheet can print.
func plainWords(what, text string) (string, error) {
	text = strings.TrimSpace(text)
	switch {
	case text == "":
		return "", source.Errorf(source.CodeBadValue, "leave the key out", "%s has no words", what)
	case utf8.RuneCountInString(text) > maxText:
		return "", source.Errorf(source.CodeOutOfRange, "shorten it", "%s has at most %d characters", what, maxText)
	case strings.ContainsFunc(text, unprintable):
		return "", source.Errorf(source.CodeBadValue, "remove it", "%s holds a character that cannot be printed", what)
	}
	return text, nil
}

// unprintable reports a rune that no sheet can show. Line ends are read as spaces by the sheet.
func unprintable(r rune) bool { return !unicode.IsGraphic(r) && r != '\n' }

// A name, and the pattern of it in a JSON Schema: validators agree on no class of letters beyond
// ASCII, so it bars what else ASCII has.
const (
	maxName     = 64
	namePattern = `^[^\x00-,./:-@\[-\^\x60{-\xa0]{1,64}$`
)

// reserved are the words that a value takes for something else than a name, in lower case.
var reserved = [...]string{"up", "down", "null"}

// checkThingName refuses what may not name a thing. A thing has a letter in its name, since an
// aim that is a number is a bearing.
func checkThingName(name string) error {
	if err := checkName(name); err != nil {
		return err
	}
	if !strings.ContainsFunc(name, unicode.IsLetter) {
		return source.Errorf(CodeBadName, "put a letter to it", "the name %q has no letter, and would be read as a number", name)
	}
	for _, word := range reserved {
		if strings.EqualFold(name, word) {
			return source.Errorf(CodeBadName, "give it another name", "%q has a meaning of its own and cannot be a name", name)
		}
	}
	return nil
}

// checkName refuses what may not name anything: a set-up, a cue or a thing.
func checkName(name string) error {
	switch {
	case name == "":
		return source.Errorf(CodeBadName, "write the name before the colon", "a name is missing")
	case utf8.RuneCountInString(name) > maxName:
		return source.Errorf(CodeBadName, "shorten it", "a name has at most %d characters", maxName)
	case strings.Contains(name, "."):
		return source.Errorf(CodeBadName, "a dot leads to a part of a thing: write "+strings.ReplaceAll(name, ".", "-"),
			"the name %q holds a dot", name)
	case strings.ContainsFunc(name, notInName):
		return source.Errorf(CodeBadName, tidyName(name), "the name %q holds something else than letters, digits, - and _", name)
	}
	return nil
}

func notInName(r rune) bool {
	return !unicode.IsLetter(r) && !unicode.IsMark(r) && !unicode.IsDigit(r) && r != '-' && r != '_'
}

// tidyName offers a name without the characters that a name may not hold.
func tidyName(name string) string {
	clean := strings.Trim(strings.Map(func(r rune) rune {
		if notInName(r) {
			return '-'
		}
		return r
	}, name), "-")
	if checkName(clean) != nil {
		return ""
	}
	return "write " + clean
}

// ref reads the name of a thing, or of a part of one by dots. what says what is meant.
func ref(what, like string) source.Reader[Ref] {
	schema := map[string]any{"type": "string"}
	return scalar(what, like, schema, func(text string, n *source.Node, _ *source.Context) (Ref, error) {
		if !isPath(text) {
			return Ref{}, source.Errorf(source.CodeBadValue, refHint(text, like), "%q is no name, where %s belongs", text, what)
		}
		return Ref{Name: text, Span: n.Span}, nil
	})
}

// refHint is a name as it was meant: without the quotes of a word processor, its part behind a dot.
func refHint(text, like string) string {
	meant := strings.Trim(text, "\u201c\u201d\u201e\u2018\u2019' ")
	if strings.Contains(like, ".") {
		meant = strings.Replace(meant, " ", ".", 1)
	}
	if meant != text && isPath(meant) {
		return "write " + meant
	}
	return "write it like " + like
}

// isPath reports whether text is a name, with parts by dots.
func isPath(text string) bool {
	for part := range strings.SplitSeq(text, ".") {
		if part == "" || strings.ContainsFunc(part, notInName) {
			return false
		}
	}
	return true
}
