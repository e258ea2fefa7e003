package source

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestParseHostile holds inputs that are made to hang or to fill the memory to a time and a cause.
func TestParseHostile(t *testing.T) {
	bomb := "a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1]\n"
	chain := "a0: &a0 [x]\n"
	for i := 1; i < 200; i++ {
		chain += fmt.Sprintf("a%d: &a%d [*a%d]\n", i, i, i-1)
	}
	for c := 'b'; c < 'n'; c++ {
		bomb += fmt.Sprintf("%c: &%c [%s]\n", c, c, strings.Repeat(fmt.Sprintf("*%c,", c-1), 9))
	}
	for _, c := range []struct{ name, text, code, message string }{
		{"20,000 brackets", "a: " + strings.Repeat("[", 20_000), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"20,000 braces", "a: " + strings.Repeat("{b: ", 20_000), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"20,000 dashes", strings.Repeat("- ", 20_000), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"400 lines, each deeper", ladder(400), CodeTooDeep, "nested too deep: a scene has at most 100 levels"},
		{"50 MB", strings.Repeat("lights: {}\n", 5_000_000), CodeTooLarge, "the file is too large: 52.5 MB, where a scene has at most 1 MB"},
		{"an alias bomb", bomb, CodeAlias, "the alias *e repeats too much: aliases may add 100000 values to a file"},
		{"a chain of aliases", chain, CodeTooDeep, "the alias *a98 nests too deep: a scene has at most 100 levels"},
		{"many keys twice", "{" + strings.Repeat("a: 1, ", 50_000) + "}", CodeDuplicateKey, `the key "a" stands here twice`},
		{"a fault behind 1 MB", strings.Repeat("a: {b: [1, 2], c: 'x'}\n", 40_000) + "b: [1\nc: 2\n", CodeSyntax, "this [ is never closed"},
		{"a fault behind one line of 1 MB", "a: [" + strings.Repeat("1, ", 300_000) + "1 2: 3]]\n", CodeSyntax, "somewhere from here on this is not YAML: did not find expected key"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var log Log
			start := time.Now()
			Parse(&File{Name: "scene.yaml", Text: []byte(c.text)}, &log)
			took := time.Since(start)
			all := log.All()
			if all[0].Code != c.code || all[0].Message != c.message {
				t.Errorf("got %d findings, the first %s %q at %d:%d", len(all), all[0].Code, all[0].Message, all[0].Span.Line, all[0].Span.Col)
			}
			if took > 10*time.Second {
				t.Errorf("it took %v", took)
			}
			t.Log(took)
		})
	}
}

// ladder nests maps in lines, each indented one more.
func ladder(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

func TestParseAtLimits(t *testing.T) {
	deep := "a: " + strings.Repeat("[", maxDepth-1) + strings.Repeat("]", maxDepth-1)
	for name, text := range map[string]string{
		"99 levels": deep,
		"1 MB":      "a: '" + strings.Repeat("x", MaxBytes-6) + "'\n",
		"aliases":   "a: &a [1, 2, 3]\nb: [" + strings.Repeat("*a, ", 1000) + "]\n",
	} {
		var log Log
		if Parse(&File{Name: "scene.yaml", Text: []byte(text)}, &log) == nil || log.Failed() {
			t.Errorf("%s: refused: %s", name, short(&log))
		}
	}
}

// TestSpans names the text and the place of every key and value in all styles.
func TestSpans(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"a: b\n", []string{"a 1:1 a", "a 1:4 b"}},
		{"  a  :  b # c\n", []string{"a 1:3 a", "a 1:9 b"}},
		{"a: {b: [1, 'two'], c, d: }\n", []string{"a 1:1 a", "a 1:4 {b: [1, 'two'], c, d: }", "a.b 1:5 b", "a.b 1:8 [1, 'two']", "a.b.0 1:9 1",
			"a.b.1 1:12 'two'", "a.c 1:20 c", "a.c 1:21 ", "a.d 1:23 d", "a.d 1:25 "}},
		{"a:\n  b: 1 # x\n  c:\n  - 2\n  -\n", []string{"a 1:1 a", "a 2:3 b: 1 # x\n  c:\n  - 2\n  -", "a.b 2:3 b", "a.b 2:6 1", "a.c 3:3 c",
			"a.c 4:3 - 2\n  -", "a.c.0 4:5 2", "a.c.1 5:4 "}},
		{"é: \"ü\\\"\" # ñ\nb: 'it''s'\n", []string{"é 1:1 é", "é 1:4 \"ü\\\"\"", "b 2:1 b", "b 2:4 'it''s'"}},
		{"a: one\n  two\n\n  three # c\nb: x\n", []string{"a 1:1 a", "a 1:4 one\n  two\n\n  three", "b 5:1 b", "b 5:4 x"}},
		{"a: |2-  # c\n   one\n\n  two\n# c\nb: >\n  x\n  y\n", []string{"a 1:1 a", "a 1:4 |2-  # c\n   one\n\n  two", "b 6:1 b", "b 6:4 >\n  x\n  y"}},
		{"a: |\nb: ''\n", []string{"a 1:1 a", "a 1:4 |", "b 2:1 b", "b 2:4 ''"}},
		{"a: &x {b: 1}\nc: *x\n", []string{"a 1:1 a", "a 1:7 {b: 1}", "a.b 1:8 b", "a.b 1:11 1", "c 2:1 c", "c 2:4 *x", "c.b 1:8 b", "c.b 1:11 1"}},
		{"a: &x\nb: &y # c\n  z\n", []string{"a 1:1 a", "a 1:6 ", "b 2:1 b", "b 3:3 z"}},
		{"a: [x: y, {z: 1}, [2]]\n", []string{"a 1:1 a", "a 1:4 [x: y, {z: 1}, [2]]", "a.0 1:5 x: y", "a.0.x 1:5 x", "a.0.x 1:8 y",
			"a.1 1:11 {z: 1}", "a.1.z 1:12 z", "a.1.z 1:15 1", "a.2 1:19 [2]", "a.2.0 1:20 2"}},
		{"a: [ # one [\n  1, # two ]\n  2,\n]\n", []string{"a 1:1 a", "a 1:4 [ # one [\n  1, # two ]\n  2,\n]", "a.0 2:3 1", "a.1 3:3 2"}},
		{bom + "a: 1\r\nb: 2\r\n", []string{"a 1:1 a", "a 1:4 1", "b 2:1 b", "b 2:4 2"}},
		{"a: 1\rb: ~\r", []string{"a 1:1 a", "a 1:4 1", "b 2:1 b", "b 2:4 ~"}},
		{"---\na: 7'10\"\n...\n", []string{"a 2:1 a", "a 2:4 7'10\""}},
		{"-a: - b\n", nil},
	} {
		var log Log
		root := Parse(&File{Name: "scene.yaml", Text: []byte(c.text)}, &log)
		if c.want == nil {
			if !log.Failed() {
				t.Errorf("%q was not refused", c.text)
			}
			continue
		}
		if log.Failed() {
			t.Errorf("%q: %s", c.text, short(&log))
			continue
		}
		if got := spans(root, ""); !slices.Equal(got, c.want) {
			t.Errorf("%q:\ngot  %q\nwant %q", c.text, got, c.want)
		}
	}
}

// spans lists path, place and text of every key and value below n.
func spans(n *Node, at string) []string {
	var all []string
	say := func(path string, s Span) {
		all = append(all, fmt.Sprintf("%s %d:%d %s", path, s.Line, s.Col, s.Text()))
	}
	for _, k := range n.Keys {
		path := strings.TrimPrefix(at+"."+k.Name, ".")
		say(path, k.Span)
		say(path, k.Value.Span)
		all = append(all, spans(k.Value, path)...)
	}
	for i, item := range n.Items {
		path := fmt.Sprintf("%s.%d", at, i)
		say(path, item.Span)
		all = append(all, spans(item, path)...)
	}
	return all
}

func TestScalars(t *testing.T) {
	for text, want := range map[string]Node{
		"yes":          {Kind: Scalar, Text: "yes"},
		"010":          {Kind: Scalar, Text: "010"},
		".nan":         {Kind: Scalar, Text: ".nan"},
		"2001-01-01":   {Kind: Scalar, Text: "2001-01-01"},
		"null":         {Kind: Null},
		"~":            {Kind: Null},
		"":             {Kind: Null},
		"''":           {Kind: Scalar, Quoted: true},
		"'null'":       {Kind: Scalar, Text: "null", Quoted: true},
		`"a\tb\u00e9"`: {Kind: Scalar, Text: "a\tbé", Quoted: true},
		"|\n  x\n  y":  {Kind: Scalar, Text: "x\ny", Quoted: true},
		"x\n  y":       {Kind: Scalar, Text: "x y"},
		"a#b":          {Kind: Scalar, Text: "a#b"},
		"80 %":         {Kind: Scalar, Text: "80 %"},
	} {
		got := value(t, text)
		if got.Kind != want.Kind || got.Text != want.Text || got.Quoted != want.Quoted {
			t.Errorf("%q is %+v, want %+v", text, *got, want)
		}
	}
}
