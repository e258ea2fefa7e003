package source

import (
	"encoding/binary"
	"fmt"
	"strings"
	"testing"
	"time"
	"unicode/utf16"
)

// wide is text in UTF-16, with a byte order mark where marked.
func wide(text string, order binary.AppendByteOrder, marked bool) string {
	var b []byte
	if marked {
		b = order.AppendUint16(b, 0xfeff)
	}
	for _, unit := range utf16.Encode([]rune(text)) {
		b = order.AppendUint16(b, unit)
	}
	return string(b)
}

// bomb is a file whose aliases multiply: each line holds the one above nine times, between two brackets.
func bomb(open, item, closer string) string {
	var b strings.Builder
	b.WriteString("scrimshaw: 1\na0: &a0 " + open + fmt.Sprintf(item, 0, "x") + closer + "\n")
	for i := 1; i < 40; i++ {
		var items []string
		for k := range 9 {
			items = append(items, fmt.Sprintf(item, k, fmt.Sprintf("*a%d", i-1)))
		}
		fmt.Fprintf(&b, "a%d: &a%d %s%s%s\n", i, i, open, strings.Join(items, ", "), closer)
	}
	return b.String()
}

// TestHostileFiles: whatever a file is, one message says soon what is wrong with it and how to mend it.
func TestHostileFiles(t *testing.T) {
	const scene = "scrimshaw: 1\ntitle: Café\nrooms: {den: {size: [5, 4]}}\n"
	const patience = 10 * time.Second // far more than a slow machine takes; a file that expands takes for ever
	for _, c := range []struct{ name, text, code, message string }{
		{"UTF-16, little end first", wide(scene, binary.LittleEndian, true), CodeNotText, "starts like UTF-16"},
		{"UTF-16, big end first", wide(scene, binary.BigEndian, true), CodeNotText, "starts like UTF-16"},
		{"UTF-16 without its mark", wide(scene, binary.LittleEndian, false), CodeNotText, "starts like UTF-16"},
		{"UTF-16 without its mark, big end first", wide(scene, binary.BigEndian, false), CodeNotText, "starts like UTF-16"},
		{"UTF-32", "\xff\xfe\x00\x00s\x00\x00\x00c\x00\x00\x00", CodeNotText, "starts like UTF-32"},
		{"Latin-1", strings.Replace(scene, "é", "\xe9", 1), CodeNotText, "the byte 0xE9 is not UTF-8"},
		{"a byte order mark", bom + scene, "", ""},
		{"two byte order marks", bom + bom + scene, CodeNotText, "U+FEFF"},
		{"CR ends the lines", strings.ReplaceAll(scene, "\n", "\r"), "", ""},
		{"CR ends the lines, with a fault", strings.ReplaceAll(scene, "\n", "\r") + "rooms: 2\r", CodeDuplicateKey, "stands here twice"},
		{"50 MB of remarks", "scrimshaw: 1\n" + strings.Repeat("# remark\n", 50<<20/9), CodeTooLarge, "50.0 MB"},
		{"50 MB in one line", "title: " + strings.Repeat("x", 50<<20), CodeTooLarge, "50.0 MB"},
		{"deep lists", "a: " + strings.Repeat("[", 100_000), CodeTooDeep, "100 levels"},
		{"deep maps", "a: " + strings.Repeat("{a: ", 100_000), CodeTooDeep, "100 levels"},
		{"deep dashes", "a:\n  " + strings.Repeat("- ", 100_000), CodeTooDeep, "100 levels"},
		{"deep indentation", indented(1300), CodeTooDeep, "100 levels"},
		{"lists that multiply", bomb("[", "%[2]s", "]"), CodeAlias, "repeats too much"},
		{"maps that multiply", bomb("{", "k%d: %s", "}"), CodeAlias, "repeats too much"},
		{"many colons in one line", strings.Repeat("a: ", 300_000), CodeSyntax, "second key"},
		{"many quotes", "title: \"" + strings.Repeat(`\"`, 400_000), CodeSyntax, "never closed"},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, start := new(Log), time.Now()
			Parse(&File{Name: "s.yaml", Text: []byte(c.text)}, log)
			if took := time.Since(start); took > patience {
				t.Errorf("it took %v", took)
			}
			all := log.All()
			if c.code == "" {
				if len(all) > 0 {
					t.Errorf("told %v", all)
				}
				return
			}
			if len(all) != 1 || all[0].Code != c.code || !strings.Contains(all[0].Message, c.message) || all[0].Hint == "" || !all[0].Span.Valid() {
				t.Errorf("told %v, want one %s with %q and a fix", all, c.code, c.message)
			}
		})
	}
}

// indented is a map in a map, each in a line of its own.
func indented(levels int) string {
	var b strings.Builder
	for i := range levels {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}
