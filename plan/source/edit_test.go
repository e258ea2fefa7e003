package source

import (
	"strconv"
	"strings"
	"testing"
)

// parsed is the tree of a text that has no fault.
func parsed(t testing.TB, text string) *Node {
	t.Helper()
	var log Log
	root := Parse(&File{Name: "scene.yaml", Text: []byte(text)}, &log)
	if log.Failed() {
		var b strings.Builder
		_ = Short(&b, log.All())
		t.Fatalf("%q: %s", text, b.String())
	}
	return root
}

func TestApply(t *testing.T) {
	const wide = "setups:\n  wide: {camera: A}\n  close:\n    camera: A   # tight\n    after: wide\n"
	for _, c := range []struct {
		name, text string
		edit       Edit
		want       string
	}{
		{"a value in braces", "lights: {key: {level: 40 %, roll: 0}} # c\n", Edit{"", "lights.key.level", "35 %"},
			"lights: {key: {level: 35 %, roll: 0}} # c\n"},
		{"a value in lines", "lights:\n  key:\n    level: 40 %   # dim\n    roll: 0\n", Edit{"", "lights.key.level", "35 %"},
			"lights:\n  key:\n    level: 35 %   # dim\n    roll: 0\n"},
		{"quotes give way", "title: 'it''s'  # c\n", Edit{"", "title", Quote(`7'10" & more`)}, "title: \"7'10\\\" & more\"  # c\n"},
		{"a text block gives way", "title: |\n  one\n  two\nunits: m\n", Edit{"", "title", "one"}, "title: one\nunits: m\n"},
		{"an empty value", "title:\nunits: m\n", Edit{"", "title", "one"}, "title: one\nunits: m\n"},
		{"an empty value in braces", "a: {b, c: }\n", Edit{"", "a.b", "1"}, "a: {b: 1, c: }\n"},
		{"an item", "a: [1, 2, 3]\n", Edit{"", "a.1", "5"}, "a: [1, 5, 3]\n"},
		{"an item in lines", "a:\n- 1\n- 2 # c\n", Edit{"", "a.1", "5"}, "a:\n- 1\n- 5 # c\n"},
		{"a map in lines gives way", "key:\n  at:   # by the window\n    opening: quay\n    # out there\n    out: 2.5 # m\n  roll: 0\n",
			Edit{"", "key.at", "[1, 2]"}, "key:\n  at: [1, 2]   # by the window\n # m\n  roll: 0\n"},
		{"a list in lines gives way", "a:\n- 1\n- 2\nb: 3\n", Edit{"", "a", "[4]"}, "a: [4]\nb: 3\n"},
		{"a new key in braces", "a: {b: 1, } # c\n", Edit{"", "a.c", "2"}, "a: {b: 1, c: 2, } # c\n"},
		{"a new key in empty braces", "a: {}\n", Edit{"", "a.c", "2"}, "a: {c: 2}\n"},
		{"a new key in lines", "a:\n  b: 1 # c\n\n# next\nd: 2\n", Edit{"", "a.c", "2"}, "a:\n  b: 1 # c\n  c: 2\n\n# next\nd: 2\n"},
		{"a new key with CR LF", "a:\r\n  b: 1\r\nd: 2\r\n", Edit{"", "a.c", "2"}, "a:\r\n  b: 1\r\n  c: 2\r\nd: 2\r\n"},
		{"a new key at an end without a line break", "a:\r\n  b: 1", Edit{"", "a.c", "2"}, "a:\r\n  b: 1\r\n  c: 2"},
		{"a new key behind a list", "a:\n- x\n- y\n", Edit{"", "b", "2"}, "a:\n- x\n- y\nb: 2\n"},
		{"a new key in an item", "a:\n- x: 1\n- y: 2\n", Edit{"", "a.0.z", "3"}, "a:\n- x: 1\n  z: 3\n- y: 2\n"},
		{"a new thing", "lights:\n    key: {level: 1 %}\n", Edit{"", "lights.fill.level", "2 %"},
			"lights:\n    key: {level: 1 %}\n    fill: {level: 2 %}\n"},
		{"a new section", "a:\n    b: 1\n", Edit{"", "lights.fill.level", "2 %"},
			"a:\n    b: 1\nlights:\n    fill: {level: 2 %}\n"},
		{"a key that needs quotes", "a: {b: 1}\n", Edit{"", "a.7'10\"", "2"}, "a: {b: 1, \"7'10\\\"\": 2}\n"},
		{"a value that needs quotes in braces only", "a: {b: 1}\nc: 2\n", Edit{"", "a.b", "1, 2"}, "a: {b: \"1, 2\"}\nc: 2\n"},
		{"and not elsewhere", "c: 2\n", Edit{"", "c", "1, 2"}, "c: 1, 2\n"},
		{"an alias gives way", "a: &x 1\nb: *x\n", Edit{"", "b", "2"}, "a: &x 1\nb: 2\n"},
		{"a byte order mark stays", bom + "a: 1\n", Edit{"", "a", "2"}, bom + "a: 2\n"},
		{"letters of many bytes", "ключ: {é: 日本} # ñ\n", Edit{"", "ключ.é", "ü"}, "ключ: {é: ü} # ñ\n"},
		{"a change that is missing", wide, Edit{"close", "lights.soft.level", "14 %"},
			wide + "    change:\n      lights:\n        soft: {level: 14 %}\n"},
		{"a change that is missing in braces", wide, Edit{"wide", "lights.soft.level", "14 %"},
			strings.Replace(wide, "{camera: A}", "{camera: A, change: {lights: {soft: {level: 14 %}}}}", 1)},
		{"a change that is there", wide + "    change: {lights: {soft: {level: 20 %}}}\nsoft: 1\n", Edit{"close", "lights.soft.level", "14 %"},
			wide + "    change: {lights: {soft: {level: 14 %}}}\nsoft: 1\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Apply(parsed(t, c.text), []Edit{c.edit})
			if err != nil {
				t.Fatal(err)
			}
			if string(got) != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

func TestApplySeveral(t *testing.T) {
	got, err := Apply(parsed(t, "a: {}\nb: 1\n"), []Edit{{"", "a.x", "1"}, {"", "a.y", "[2]"}, {"", "a.y.0", "3"}, {"", "b", "{}"}, {"", "b.z", "4"}})
	if err != nil {
		t.Fatal(err)
	}
	if want := "a: {x: 1, y: [3]}\nb: {z: 4}\n"; string(got) != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestApplyRefuses(t *testing.T) {
	for _, c := range []struct {
		name, text string
		edit       Edit
		want       string
	}{
		{"below a single value", "a: 1\n", Edit{"", "a.b", "2"}, "cannot set a.b: scene.yaml:1:4: a is a single value"},
		{"an item that is not there", "a: [1]\n", Edit{"", "a.1", "2"}, "cannot set a.1: scene.yaml:1:4: a has 1 item, and no 1"},
		{"a set-up that is not there", "a: 1\n", Edit{"wide", "a", "2"}, "cannot set a in set-up wide: scene.yaml:1:1: the scene has no such set-up"},
		{"an empty path", "a: 1\n", Edit{"", "a.", "2"}, "cannot set a.: the path has an empty key"},
		{"two lines", "a: 1\n", Edit{"", "a", "1\nb: 2"}, "cannot set a: the new value has more than one line"},
		{"a comment", "a: 1\n", Edit{"", "a", "1 # c"}, `cannot set a: "1 # c" is not one value; text with marks of YAML in it needs quotes`},
		{"a key", "a: 1\n", Edit{"", "a", "b: c"}, `cannot set a: "b: c" is not one value; text with marks of YAML in it needs quotes`},
		{"nothing", "a: 1\n", Edit{"", "a", "~"}, "cannot set a: the new value is empty"},
		{"inside an alias", "a: &x {b: 1}\nc: *x\n", Edit{"", "c.b", "2"}, "cannot set c.b: scene.yaml:2:4: the value is shared by the alias *x; write it out first"},
		{"what an alias repeats", "a: &x {b: 1}\nc: *x\n", Edit{"", "a.b", "2"}, "cannot set a.b: scene.yaml:1:11: the way it is written there does not allow it; edit it by hand"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Apply(parsed(t, c.text), []Edit{c.edit})
			if err == nil {
				t.Fatalf("it was allowed: %q", got)
			}
			if err.Error() != c.want {
				t.Errorf("got  %s\nwant %s", err, c.want)
			}
		})
	}
	if _, err := Apply(nil, nil); err == nil {
		t.Error("no tree was edited")
	}
}

// TestEditsCanBeTakenBack sets single values of a scene with comments, and sets what they were again: every byte is as it was, and on the way no line changes but that of the value.
func TestEditsCanBeTakenBack(t *testing.T) {
	const text = "# the kitchen, second day\r\nunits: m   # metres\r\n\r\nlights:\r\n  # keep these in order\r\n" +
		"  key: {level: 40 %, gels: [1/2 CTO, \"1/4 CTB\"], at: [1.2, 2] }   # by the door\r\n  fill:\r\n    level: 5 %\t# barely\r\n    note: \"two bags: tie off\"\r\n" +
		"setups:\r\n  close: {after: wide, change: {lights: {key: {level: 20 %}}}}"
	for _, c := range []struct {
		edit Edit
		old  string
		line int // of the text, from 0
	}{
		{Edit{"", "units", "ft"}, "m", 1}, {Edit{"", "lights.key.level", "35 %"}, "40 %", 5}, {Edit{"", "lights.key.gels.1", "nd"}, `"1/4 CTB"`, 5},
		{Edit{"", "lights.key.at", "[0, 0, 1]"}, "[1.2, 2]", 5}, {Edit{"", "lights.fill.level", "off"}, "5 %", 7},
		{Edit{"", "lights.fill.note", "none"}, `"two bags: tie off"`, 8}, {Edit{"close", "lights.key.level", "1 %"}, "20 %", 10},
	} {
		edited, err := Apply(parsed(t, text), []Edit{c.edit})
		if err != nil {
			t.Errorf("%v: %v", c.edit, err)
			continue
		}
		before, after := strings.Split(text, "\r\n"), strings.Split(string(edited), "\r\n")
		if len(before) != len(after) {
			t.Errorf("%v: %d lines became %d", c.edit, len(before), len(after))
			continue
		}
		for i := range before {
			if same := before[i] == after[i]; same == (i == c.line) {
				t.Errorf("%v: line %d was %q and is %q", c.edit, i+1, before[i], after[i])
			}
		}
		back, err := Apply(parsed(t, string(edited)), []Edit{{c.edit.Layer, c.edit.Path, c.old}})
		if err != nil || string(back) != text {
			t.Errorf("%v taken back is\n%s\n%v", c.edit, back, err)
		}
	}
}

// TestEveryValueCanBeSet sets every value of scenes in every style, and adds a key to every map.
func TestEveryValueCanBeSet(t *testing.T) {
	for _, text := range seeds {
		var log Log
		root := Parse(&File{Name: "seed.yaml", Text: []byte(text)}, &log)
		if root == nil || log.Failed() || strings.Contains(text, "&") || strings.Contains(text, "?") || strings.Contains(text, "[p: q") {
			continue
		}
		for _, path := range paths(root, nil) {
			checkEdit(t, root, Edit{Path: path, Text: "[new, 7'10\"]"}, true)
		}
	}
}

// paths lists the path of every value below n, and of one new key of every map.
func paths(n *Node, at []string) []string {
	var all []string
	down := func(name string, v *Node) {
		path := append(at[:len(at):len(at)], name)
		all = append(append(all, strings.Join(path, ".")), paths(v, path)...)
	}
	for _, k := range n.Keys {
		down(k.Name, k.Value)
	}
	for i, item := range n.Items {
		down(strconv.Itoa(i), item)
	}
	if n.Kind == Map {
		all = append(all, strings.Join(append(at[:len(at):len(at)], "brand-new"), "."))
	}
	return all
}

// checkEdit carries out one edit and holds the result to the promises of Apply: the text reads as
// the tree with the value set, and no byte outside of the lines of the old value is touched.
func checkEdit(t *testing.T, root *Node, e Edit, must bool) {
	t.Helper()
	old := root.Span.File.Text
	text, err := Apply(root, []Edit{e})
	if err != nil {
		if must {
			t.Errorf("%q: %v", old, err)
		}
		return
	}
	got := Parse(&File{Name: "edited.yaml", Text: text}, new(Log))
	keys, err := e.keys(root)
	if err != nil {
		t.Fatal(err)
	}
	value, err := newValue(e.Text)
	if err != nil {
		t.Fatal(err)
	}
	if !Equal(got, withValue(root, keys, value)) {
		t.Errorf("%q with %v=%s became %q", old, keys, e.Text, text)
	}
	start, end := len(old), len(old)
	if target, err := findPath(root, keys); err == nil && (len(target.rest) == 0 || target.node.Kind == Null) { // a written null makes way for a map
		start, end = lineAt(old, target.node.Span.Start), lineEnd(old, target.node.Span.End)+2
		if target.key != nil {
			start = min(start, target.key.Span.Start)
		}
	}
	kept := commonPrefix(old, text) + commonPrefix(reversed(old), reversed(text))
	if kept < len(old)-(end-start) {
		t.Errorf("%q with %v=%s became %q: only %d bytes are kept", old, keys, e.Text, text, kept)
	}
}

func commonPrefix(a, b []byte) int {
	n := 0
	for n < min(len(a), len(b)) && a[n] == b[n] {
		n++
	}
	return n
}

func reversed(b []byte) []byte {
	out := make([]byte, len(b))
	for i := range b {
		out[len(b)-1-i] = b[i]
	}
	return out
}

// FuzzEdit edits any text at any path, and at one of its own: it is refused, or the promises of
// Apply hold.
func FuzzEdit(f *testing.F) {
	for i, s := range seeds {
		f.Add([]byte(s), uint(i), "", "a", "1")
		f.Add([]byte(s), uint(2*i), "", "b.c.d", "[x, {y: z}]")
	}
	f.Add([]byte("setups:\n  wide: {camera: A}\n  close:\n    after: wide\n"), uint(3), "close", "lights.key.level", "35 %")
	f.Fuzz(func(t *testing.T, text []byte, pick uint, layer, path, value string) {
		root := Parse(&File{Name: "fuzz.yaml", Text: text}, new(Log))
		if root == nil {
			return
		}
		checkEdit(t, root, Edit{layer, path, value}, false)
		own := paths(root, nil)
		checkEdit(t, root, Edit{"", own[pick%uint(len(own))], value}, false)
	})
}
