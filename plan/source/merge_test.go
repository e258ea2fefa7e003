package source

import (
	"bytes"
	"slices"
	"strings"
	"testing"
)

// value parses one value, which may be of any kind.
func value(t testing.TB, text string) *Node {
	t.Helper()
	return parsed(t, "v: "+text).Get("v")
}

// TestMergeRFC7396 runs the test cases of RFC 7396 (JSON Merge Patch, October 2014), Appendix A:
// original, patch, result. Status: secondary, all fifteen cases as the tests of public
// JSON libraries give them.
func TestMergeRFC7396(t *testing.T) {
	for _, c := range [][3]string{
		{`{"a":"b"}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"b"}`, `{"b":"c"}`, `{"a":"b","b":"c"}`},
		{`{"a":"b"}`, `{"a":null}`, `{}`},
		{`{"a":"b","b":"c"}`, `{"a":null}`, `{"b":"c"}`},
		{`{"a":["b"]}`, `{"a":"c"}`, `{"a":"c"}`},
		{`{"a":"c"}`, `{"a":["b"]}`, `{"a":["b"]}`},
		{`{"a":{"b":"c"}}`, `{"a":{"b":"d","c":null}}`, `{"a":{"b":"d"}}`},
		{`{"a":[{"b":"c"}]}`, `{"a":[1]}`, `{"a":[1]}`},
		{`["a","b"]`, `["c","d"]`, `["c","d"]`},
		{`{"a":"b"}`, `["c"]`, `["c"]`},
		{`{"a":"foo"}`, `null`, `null`},
		{`{"a":"foo"}`, `"bar"`, `"bar"`},
		{`{"e":null}`, `{"a":1}`, `{"e":null,"a":1}`},
		{`[1,2]`, `{"a":"b","c":null}`, `{"a":"b"}`},
		{`{}`, `{"a":{"bb":{"ccc":null}}}`, `{"a":{"bb":{}}}`},
	} {
		original, patch, want := value(t, c[0]), value(t, c[1]), value(t, c[2])
		if got := merge(original, patch, ""); !Equal(got, want) {
			t.Errorf("%s with %s is %s, want %s", c[0], c[1], flow(got), flow(want))
		}
		if again := value(t, c[0]); !Equal(original, again) {
			t.Errorf("the merge changed its base from %s to %s", c[0], flow(original))
		}
	}
}

// merge is the merge without rules: a patch over base in the manner of RFC 7396.
func merge(base, patch *Node, layer string) *Node {
	return (&merger{layer: layer}).value(base, patch, nil)
}

// flow writes a tree in one line.
func flow(n *Node) string {
	var parts []string
	for _, k := range n.Keys {
		parts = append(parts, k.Name+": "+flow(k.Value))
	}
	for _, item := range n.Items {
		parts = append(parts, flow(item))
	}
	switch n.Kind {
	case Null:
		return "~"
	case Scalar:
		return n.Text
	case List:
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

func TestMergeKeepsPlaces(t *testing.T) {
	base := parsed(t, "lights:\n  key: {level: 40 %, at: [1, 2]}\n")
	patch := parsed(t, "# the change\nlights:\n  key: {level: 20 %}\n  fill: {level: 5 %}\n")
	lights := merge(base, patch, "close").Get("lights")
	for _, c := range []struct {
		what  string
		n     *Node
		layer string
		line  int
	}{
		{"the map of lights", lights, "", 2},
		{"a light that was changed", lights.Get("key"), "", 2},
		{"its new level", lights.Get("key").Get("level"), "close", 3},
		{"its old place", lights.Get("key").Get("at"), "", 2},
		{"a new light", lights.Get("fill"), "close", 4},
		{"its level", lights.Get("fill").Get("level"), "close", 4},
	} {
		if c.n.Layer != c.layer || c.n.Span.Line != c.line {
			t.Errorf("%s: layer %q, line %d; want %q, %d", c.what, c.n.Layer, c.n.Span.Line, c.layer, c.line)
		}
	}
	if line := lights.Get("key").Key("level").Span.Line; line != 3 {
		t.Errorf("the key of a changed value is at line %d, want that of the change", line)
	}
	if line := lights.Key("key").Span.Line; line != 2 {
		t.Errorf("the key of a merged map is at line %d, want that of the scene", line)
	}
}

// lightRules are rules as a scene has them, in small.
var lightRules = &Rules{
	Things: []string{"lights.*", "grip.*"},
	Whole:  []string{"*.*.at"},
	Forms:  map[string][]string{"lights.*": {"unit", "output"}, "grip.*": {"flag", "card"}},
	Resets: []Reset{{At: "lights.*", Key: "unit", Drops: []string{"gels", "level"}}},
	Lists:  []string{"lights.*.gels"},
	Fixed:  []string{"units"},
	Complete: func(path []string, thing *Node) bool {
		return path[0] != "lights" || thing.Get("unit") != nil
	},
}

const litScene = `units: m
lights:
  key: {unit: led, at: {opening: bay, out: 2}, gels: [1/2 CTO, 1/4 CTO], level: 40 %}
  fill: {unit: panel, at: [1, 2]}
grip: {black: {flag: [1, 1]}}
`

func TestRulesMerge(t *testing.T) {
	for _, c := range []struct{ name, change, want string }{
		{"nothing", ``, `{units: m, lights: {key: KEY, fill: FILL}, grip: GRIP}`},
		{"a level", `lights: {key: {level: 5 %}}`,
			`{units: m, lights: {key: {unit: led, at: {opening: bay, out: 2}, gels: [1/2 CTO, 1/4 CTO], level: 5 %}, fill: FILL}, grip: GRIP}`},
		{"a place is replaced whole", `lights: {key: {at: {opening: bay}}}`,
			`{units: m, lights: {key: {unit: led, at: {opening: bay}, gels: [1/2 CTO, 1/4 CTO], level: 40 %}, fill: FILL}, grip: GRIP}`},
		{"a new unit drops what went with the old", `lights: {key: {unit: open-face}}`,
			`{units: m, lights: {key: {unit: open-face, at: {opening: bay, out: 2}}, fill: FILL}, grip: GRIP}`},
		{"but not what the change gives", `lights: {key: {level: 10 %, unit: open-face}}`,
			`{units: m, lights: {key: {unit: open-face, at: {opening: bay, out: 2}, level: 10 %}, fill: FILL}, grip: GRIP}`},
		{"the same unit is no new one", `lights: {key: {unit: led}}`, `{units: m, lights: {key: KEY, fill: FILL}, grip: GRIP}`},
		{"another form", `lights: {fill: {output: {lux: 100}}}`,
			`{units: m, lights: {key: KEY, fill: {at: [1, 2], output: {lux: 100}}}, grip: GRIP}`},
		{"another form of grip", `grip: {black: {card: [2, 2]}}`,
			`{units: m, lights: {key: KEY, fill: FILL}, grip: {black: {card: [2, 2]}}}`},
		{"strike by value", `lights: {key: strike}`, `{units: m, lights: {fill: FILL}, grip: GRIP}`},
		{"strike a key", `lights: {fill: {at: strike}}`, `{units: m, lights: {key: KEY, fill: {unit: panel}}, grip: GRIP}`},
		{"strike by list", `strike: [key, black]`, `{units: m, lights: {fill: FILL}, grip: {}}`},
		{"strike one", `strike: key`, `{units: m, lights: {fill: FILL}, grip: GRIP}`},
		{"strike in quotes is text", `lights: {fill: {note: "strike"}}`,
			`{units: m, lights: {key: KEY, fill: {unit: panel, at: [1, 2], note: strike}}, grip: GRIP}`},
		{"add gels", `lights: {key: {+gels: [plus-green]}}`,
			`{units: m, lights: {key: {unit: led, at: {opening: bay, out: 2}, gels: [1/2 CTO, 1/4 CTO, plus-green], level: 40 %}, fill: FILL}, grip: GRIP}`},
		{"add the first gel", `lights: {fill: {+gels: 1/4 CTB}}`,
			`{units: m, lights: {key: KEY, fill: {unit: panel, at: [1, 2], gels: [1/4 CTB]}}, grip: GRIP}`},
		{"take and add", `lights: {key: {-gels: 1/2 CTO, +gels: [1/8 CTO]}}`,
			`{units: m, lights: {key: {unit: led, at: {opening: bay, out: 2}, gels: [1/4 CTO, 1/8 CTO], level: 40 %}, fill: FILL}, grip: GRIP}`},
		{"a new light", `lights: {edge: {unit: led}}`, `{units: m, lights: {key: KEY, fill: FILL, edge: {unit: led}}, grip: GRIP}`},
	} {
		t.Run(c.name, func(t *testing.T) {
			base, log := parsed(t, litScene), new(Log)
			change := &Node{}
			if c.change != "" {
				change = parsed(t, c.change)
			}
			got := flow(lightRules.Merge(base, change, "close", log))
			want := strings.NewReplacer("KEY", flow(base.Get("lights").Get("key")), "FILL", flow(base.Get("lights").Get("fill")),
				"GRIP", flow(base.Get("grip"))).Replace(c.want)
			if got != want {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
			if log.Failed() {
				t.Error(log.All())
			}
			if !Equal(base, parsed(t, litScene)) {
				t.Error("the merge changed its base")
			}
		})
	}
}

func TestRulesMergeFaults(t *testing.T) {
	for _, c := range []struct{ change, want string }{
		{"units: ft", `c.yaml:1:1: error: in set-up close: a change may not alter "units" [fixed] (fix: set it in the scene)`},
		{"lights: {key: {level: }}", `c.yaml:1:16: error: in set-up close: "level" has no value [empty-value] (fix: write level: strike to remove it, or give it a value)`},
		{"lights: {kye: strike}", `c.yaml:1:10: error: in set-up close: there is no "kye" to strike [unknown-name] (fix: did you mean "key"?)`},
		{"strike: [blakc]", `c.yaml:1:10: error: in set-up close: there is no "blakc" to strike [unknown-name] (fix: did you mean "black"?)`},
		{"strike: {}", `c.yaml:1:9: error: in set-up close: a list of names belongs here, not a map [wrong-type] (fix: write it like [NAME, NAME])`},
		{"lights: {kei: {level: 5 %}}", `c.yaml:1:10: error: in set-up close: nothing is called "kei" before this change, and what is written here is too little for a new thing [unknown-name] (fix: did you mean "key"?)`},
		{"lights: {key: {-gels: 1/2 CTB}}", `c.yaml:1:23: error: in set-up close: "1/2 CTB" is not one of the gels here, so it cannot be taken away [unknown-name] (fix: did you mean "1/2 CTO"?)`},
		{"lights: {key: {gels: [a], +gels: [b]}}", `c.yaml:1:27: error: in set-up close: "gels" is both replaced and changed item by item [bad-change] (fix: keep one of them)`},
		{"lights: {key: {+gels: {a: b}}}", `c.yaml:1:23: error: in set-up close: a list belongs here, not a map [wrong-type] (fix: write it like [a, b])`},
	} {
		log := new(Log)
		change := Parse(&File{Name: "c.yaml", Text: []byte(c.change)}, log)
		base := parsed(t, litScene)
		got := lightRules.Merge(base, change, "close", log)
		var b bytes.Buffer
		_ = Short(&b, log.All())
		if strings.TrimSpace(b.String()) != c.want {
			t.Errorf("%s\ngot  %swant %s", c.change, b.String(), c.want)
		}
		if !strings.Contains(c.change, "gels: [a]") && !Equal(got, base) {
			t.Errorf("%s: what is wrong was not left out: %s", c.change, flow(got))
		}
	}
}

func TestMatches(t *testing.T) {
	for _, c := range []struct {
		pattern, path string
		want          bool
	}{
		{"lights.*", "lights.key", true}, {"lights.*", "lights", false}, {"lights.*", "lights.key.at", false},
		{"*.*.at", "lights.key.at", true}, {"*.*.at", "at.at", false}, {"units", "units", true}, {"lights.*", "grip.key", false},
	} {
		if got := matches(c.pattern, strings.Split(c.path, ".")); got != c.want {
			t.Errorf("%s fits %s: %v", c.pattern, c.path, got)
		}
	}
	if matches("", nil) != true || matches("a", nil) {
		t.Error("only the empty pattern fits the root")
	}
}

// FuzzMerge holds both merges to what is true of any two trees: the base stays as it was, merging
// twice is merging once, and after a plain merge every value of the patch can be read back.
func FuzzMerge(f *testing.F) {
	for i, s := range seeds {
		f.Add([]byte(s), []byte(seeds[len(seeds)-1-i]))
	}
	f.Add([]byte(litScene), []byte("lights: {key: {unit: led, +gels: a, -gels: b}, fill: strike, edge: {unit: x}}\nstrike: [black, kei]\n"))
	f.Add([]byte(litScene), []byte("units: ft\nlights: {key: {output: {lux: 1}, at: ~}}\n"))
	f.Fuzz(func(t *testing.T, a, b []byte) {
		base := Parse(&File{Name: "a.yaml", Text: a}, new(Log))
		patch := Parse(&File{Name: "b.yaml", Text: b}, new(Log))
		if base == nil || patch == nil {
			return
		}
		before := flow(base)
		merged := merge(base, patch, "layer")
		if !Equal(merge(merged, patch, "layer"), merged) {
			t.Errorf("merging %s twice over %s differs from once", flow(patch), before)
		}
		checkPatched(t, merged, patch)
		lightRules.Merge(base, patch, "layer", new(Log))
		if flow(base) != before {
			t.Errorf("a merge changed its base from %s to %s", before, flow(base))
		}
	})
}

// checkPatched finds every value of the patch in the merged map, and nothing that it removes.
func checkPatched(t *testing.T, merged, patch *Node) {
	t.Helper()
	for _, k := range patch.Keys {
		switch got := merged.Get(k.Name); {
		case k.Value.Kind == Null && got != nil:
			t.Errorf("%q was not removed", k.Name)
		case k.Value.Kind == Map:
			checkPatched(t, got, k.Value)
		case k.Value.Kind != Null && !Equal(got, k.Value):
			t.Errorf("%q is not what the patch says", k.Name)
		}
	}
	if slices.ContainsFunc(merged.Keys, func(k Key) bool { return k.Value == nil }) {
		t.Error("a key without a value")
	}
}
