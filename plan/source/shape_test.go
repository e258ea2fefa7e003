package source

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"
)

// hole is a thing with all that a Shape can ask: a required key, forms, a key for later.
type hole struct {
	wall   string
	width  float64
	panes  [2]float64
	swing  string
	escape bool
}

var holeShape = &Shape[hole]{
	Name: "opening", Doc: "A hole in a wall.", Forms: []string{"window", "door"},
	Fields: []Field[hole]{
		{Key: "window", Doc: "The wall of a window.", Example: "kitchen.left",
			Schema: Text("a wall", "kitchen.left").Schema, Read: Into(Text("a wall", "kitchen.left"), func(h *hole) *string { return &h.wall })},
		{Key: "door", Doc: "The wall of a door.", Example: "kitchen.left",
			Schema: Text("a wall", "kitchen.left").Schema, Read: Into(Text("a wall", "kitchen.left"), func(h *hole) *string { return &h.wall })},
		{Key: "width", Doc: "How wide it is.", Example: "1.4", Required: true,
			Schema: number("a width", 0.1, 20).Schema, Read: Into(number("a width", 0.1, 20), func(h *hole) *float64 { return &h.width })},
		{Key: "panes", Doc: "Panes across | up.", Example: "[2, 2]", Default: "one",
			Schema: pair("panes", 1, 20).Schema, Read: Into(pair("panes", 1, 20), func(h *hole) *[2]float64 { return &h.panes })},
		{Key: "swing", Doc: "Where it opens to.", Default: "in",
			Schema: OneOf("a swing", "in", "out").Schema, Read: Into(OneOf("a swing", "in", "out"), func(h *hole) *string { return &h.swing })},
		{Key: "escape", Doc: "Whether it is a way out.", Later: "escape routes", Until: "mark it by hand",
			Schema: Bool("escape").Schema, Read: Into(Bool("escape"), func(h *hole) *bool { return &h.escape })},
	},
}

// short is the log in one line a finding.
func short(log *Log) string {
	var b strings.Builder
	_ = Short(&b, log.All())
	return b.String()
}

func TestShapeRead(t *testing.T) {
	var h hole
	log := new(Log)
	holeShape.Read(&h, parsed(t, "window: kitchen.left\nwidth: 1.4\npanes: [2, 3]\nswing: out\n"), &Context{Log: log})
	if want := (hole{wall: "kitchen.left", width: 1.4, panes: [2]float64{2, 3}, swing: "out"}); h != want {
		t.Errorf("read %+v, want %+v", h, want)
	}
	if out := short(log); out != "" {
		t.Errorf("unexpected findings:\n%s", out)
	}
}

func TestShapeReadFaults(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"an unknown key with a neighbour", "{window: a, widht: 1, width: 2}",
			`s.yaml:1:16: error: an opening has no key "widht" [unknown-key] (fix: did you mean "width"?)`},
		{"an unknown key without one", "{window: a, width: 2, colour: red}",
			`s.yaml:1:26: error: an opening has no key "colour" [unknown-key] (fix: its keys are window, door, width, panes, swing, escape)`},
		{"a key with its value glued on", "{window: a, width:2}",
			`s.yaml:1:16: error: an opening has no key "width:2" [unknown-key] (fix: write a space behind the colon: width: 2)`},
		{"a missing key", "{window: a}", `s.yaml:1:1: error: an opening needs "width" [missing-key] (fix: add width: 1.4)`},
		{"two forms", "{window: a, width: 2, door: b}",
			`s.yaml:1:26: error: an opening takes "window" or "door", and this has both "window" and "door" [two-forms] (fix: keep one of them)`},
		{"no form", "{width: 2}",
			`s.yaml:1:1: error: an opening needs one of "window" or "door" [no-form] (fix: for example window: kitchen.left)`},
		{"an empty value", "{window: a, width: }",
			`s.yaml:1:16: error: "width" has no value [empty-value] (fix: remove the key or give it a value)`},
		{"null", "{window: a, width: null}",
			`s.yaml:1:16: error: "width" has no value [empty-value] (fix: remove the key or give it a value)`},
		{"no map", "[window, a]",
			`s.yaml:1:4: error: an opening is a map of keys, not a list [wrong-type] (fix: write it like {window: kitchen.left})`},
		{"later", "{window: a, width: 2, escape: true}",
			`s.yaml:1:26: warning: "escape" is read but not computed yet: escape routes [not-computed-yet] (fix: mark it by hand)`},
		{"all at once", "{window: a, door: b, widht: 1, panes: [2, x], swing: }",
			`s.yaml:1:16: error: an opening takes "window" or "door", and this has both "window" and "door" [two-forms] (fix: keep one of them)
s.yaml:1:25: error: an opening has no key "widht" [unknown-key] (fix: did you mean "width"?)
s.yaml:1:46: error: a value of panes is a number, and "x" is not [bad-value]
s.yaml:1:50: error: "swing" has no value [empty-value] (fix: remove the key or give it a value)`},
	} {
		t.Run(c.name, func(t *testing.T) {
			log, root := new(Log), &Node{}
			if root = Parse(&File{Name: "s.yaml", Text: []byte("v: " + c.text)}, log); root == nil {
				t.Fatal(short(log))
			}
			context := &Context{Log: log}
			Each(root, "opening", context, func(k *Key) { holeShape.Read(new(hole), k.Value, context) })
			if got := strings.TrimSpace(short(log)); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if len(context.Path) != 0 {
				t.Errorf("the path is left at %q", context.Path)
			}
		})
	}
}

func TestContextPath(t *testing.T) {
	log := new(Log)
	root := Parse(&File{Name: "s.yaml", Text: []byte("quay: {window: a, width: 2, panes: [1, x]}\n")}, log)
	context := &Context{Log: log, Setup: "close", Path: []string{"openings"}}
	Each(root, "opening", context, func(k *Key) { holeShape.Read(new(hole), k.Value, context) })
	all := log.All()
	if len(all) != 1 || all[0].Path != "openings.quay.panes.1" || all[0].Setup != "close" {
		t.Errorf("got %+v", all)
	}
	if !slices.Equal(context.Path, []string{"openings"}) {
		t.Errorf("the path is left at %q", context.Path)
	}
}

func TestEachFaults(t *testing.T) {
	for text, want := range map[string]string{
		"{a: }":  "s.yaml:1:5: error: the opening \"a\" is empty [empty-value] (fix: remove the name or give it keys)\n",
		"[a, b]": "s.yaml:1:4: error: a map of names belongs here, each with its opening, not a list [wrong-type] (fix: write each as NAME: {…})\n",
	} {
		log := new(Log)
		root := Parse(&File{Name: "s.yaml", Text: []byte("v: " + text)}, log)
		Each(root.Get("v"), "opening", &Context{Log: log}, func(*Key) { t.Error("read") })
		if got := short(log); got != want {
			t.Errorf("%s: got %swant %s", text, got, want)
		}
	}
}

func TestReaders(t *testing.T) {
	height, whole, yes := number("a height", 0, 30), Int("a count", 1, 99), Bool("a wish")
	word := OneOf("a pose", "standing", "seated", "lying")
	for _, c := range []struct {
		read func(n *Node, c *Context) (any, bool)
		text string
		want any    // what is read
		say  string // or the fault, with its hint
	}{
		{anyOf(height), "2.5", 2.5, ""}, {anyOf(height), "+.5", 0.5, ""}, {anyOf(height), "3.", 3.0, ""}, {anyOf(height), "2e1", 20.0, ""},
		{anyOf(height), `"7"`, 7.0, ""}, {anyOf(height), "-0", 0.0, ""},
		{anyOf(height), ".nan", nil, "a height must be a finite number, not .nan [not-finite] (fix: write a number, such as 1)"},
		{anyOf(height), "-.inf", nil, "a height must be a finite number, not -.inf [not-finite] (fix: write a number, such as 1)"},
		{anyOf(height), "Infinity", nil, "a height must be a finite number, not Infinity [not-finite] (fix: write a number, such as 1)"},
		{anyOf(height), "1e999", nil, `a height must be a finite number, and "1e999" is too large [not-finite] (fix: write a smaller number)`},
		{anyOf(height), "1_000", nil, `a height is a number, and "1_000" is not [bad-value] (fix: write the digits together: 1000)`},
		{anyOf(height), "0x10", nil, `a height is a number, and "0x10" is not [bad-value] (fix: write it as a decimal number)`},
		{anyOf(height), "010", nil, `a height is a number, and "010" is not [bad-value] (fix: write it without the leading zero)`},
		{anyOf(height), "1,5", nil, `a height is a number, and "1,5" is not [bad-value] (fix: use a point, and no marks between thousands)`},
		{anyOf(height), "1:30", nil, `a height is a number, and "1:30" is not [bad-value]`},
		{anyOf(height), "two", nil, `a height is a number, and "two" is not [bad-value]`},
		{anyOf(height), "31", nil, "a height is from 0 to 30, and 31 is not [out-of-range] (fix: write 30 or less)"},
		{anyOf(height), "[1]", nil, "a height belongs here, not a list [wrong-type] (fix: write it like 1)"},
		{anyOf(whole), "12", 12, ""},
		{anyOf(whole), "1.5", nil, "a count is a whole number, and 1.5 is not [bad-value] (fix: write 2)"},
		{anyOf(whole), "0", nil, "a count is from 1 to 99, and 0 is not [out-of-range] (fix: write 1 or more)"},
		{anyOf(yes), "true", true, ""}, {anyOf(yes), "false", false, ""},
		{anyOf(yes), "yes", nil, `a wish is true or false, not "yes" [bad-value] (fix: write true)`},
		{anyOf(yes), "Off", nil, `a wish is true or false, not "Off" [bad-value] (fix: write false)`},
		{anyOf(yes), `"true"`, nil, `a wish is true or false, not "true" [bad-value] (fix: write true)`},
		{anyOf(yes), "maybe", nil, `a wish is true or false, not "maybe" [bad-value] (fix: write true or false)`},
		{anyOf(word), "seated", "seated", ""},
		{anyOf(word), "Seated", nil, `a pose is "standing", "seated" or "lying", not "Seated" [unknown-word] (fix: did you mean "seated"?)`},
		{anyOf(word), "flying", nil, `a pose is "standing", "seated" or "lying", not "flying" [unknown-word] (fix: did you mean "lying"?)`},
		{anyOf(word), "asleep", nil, `a pose is "standing", "seated" or "lying", not "asleep" [unknown-word] (fix: write one of these words)`},
		{anyOf(Text("a note", "")), "12", "12", ""}, {anyOf(Text("a note", "")), "yes", "yes", ""},
		{anyOf(pair("a size", 0, 9)), "[1, 2]", [2]float64{1, 2}, ""},
		{anyOf(pair("a size", 0, 9)), "[1, 2, 3]", nil, "a size has 2 values, not 3 [wrong-type] (fix: write it like [1, 1])"},
		{anyOf(pair("a size", 0, 9)), "[1, ~]", nil, "this item of the list has no value [empty-value] (fix: remove the item or give it a value)"},
	} {
		log := new(Log)
		got, ok := c.read(value(t, c.text), &Context{Log: log})
		_, say, _ := strings.Cut(strings.TrimSpace(short(log)), "error: ")
		if say != c.say || ok != (c.say == "") || ok && got != c.want {
			t.Errorf("%s: read %v, %v, %q; want %v, %q", c.text, got, ok, say, c.want, c.say)
		}
	}
}

// anyOf forgets the type of a reader.
func anyOf[V any](r Reader[V]) func(n *Node, c *Context) (any, bool) {
	return func(n *Node, c *Context) (any, bool) { return r.Read(n, c) }
}

func TestNearest(t *testing.T) {
	keys := []string{"at", "size", "height", "wall", "walls", "floor", "outline", "colour", "iso", "barndoors"}
	for text, want := range map[string]string{
		"heigth": "height", "Height": "height", "hight": "height", "siez": "size", "color": "colour", "wals": "wall",
		"flor": "floor", "barn-doors": "barndoors", "outlines": "outline", "ISO": "iso",
		"it": "", "a": "", "": "", "door": "", "length": "", "zzz": "", "room": "", "lens": "",
	} {
		if got := Nearest(text, keys); got != want {
			t.Errorf("the nearest to %q is %q, want %q", text, got, want)
		}
	}
	if got := Nearest(strings.Repeat("height", 1000), keys); got != "" {
		t.Errorf("a long text is near %q", got)
	}
}

// TestDidYouMean: a slip of the hand is mended before a name that was left off, of which three are offered.
func TestDidYouMean(t *testing.T) {
	words := []string{"led-300-daylight", "led-300-bicolour", "led-3000", "led-300-tube", "height", "par"}
	for text, want := range map[string]string{
		"led-300": `did you mean "led-3000"?`, "led-300-day": `did you mean "led-300-daylight"?`,
		"LED": `did you mean "led-300-daylight", "led-300-bicolour" or "led-3000"?`, "hei": `did you mean "height"?`,
		"he": "", "par": "", "zzz": "",
	} {
		if got := DidYouMean(text, words); got != want {
			t.Errorf("for %q: %s, want %s", text, got, want)
		}
	}
}

// TestDidYouMeanOr: where no name is near, those that begin with the most parts of it are offered, or end in its last; where there is none, where to look.
func TestDidYouMeanOr(t *testing.T) {
	words := []string{"half-spun", "silk", "quarter-silk", "china-silk", "raw silk", "full CTO", "led-300", "arc-1800", "arc-1800-soft", "arc-800", "fan", "fan-small", "to-1"}
	for text, want := range map[string]string{
		"half-silk": `did you mean "silk", "quarter-silk" or "china-silk"?`, "double CTO": `did you mean "full CTO"?`, "lead-300": `did you mean "led-300"?`,
		"wool": "look there", "wool-of-x": "look there", "a very long-SILK": `did you mean "silk", "quarter-silk" or "china-silk"?`, "silks": `did you mean "silk"?`, "": "look there",
		"arc-1800-bright": `did you mean "arc-1800" or "arc-1800-soft"?`, "ARC-1800-silver": `did you mean "arc-1800" or "arc-1800-soft"?`, "arc-125000-silk": `did you mean "silk", "quarter-silk" or "china-silk"?`,
		"arc-wonderful": `did you mean "arc-1800", "arc-1800-soft" or "arc-800"?`, "fan-wonderful": `did you mean "fan" or "fan-small"?`, "to-wonderful": "look there", "-": "look there",
	} {
		if got := DidYouMeanOr(text, words, "look there"); got != want {
			t.Errorf("for %q: %s, want %s", text, got, want)
		}
	}
}

// TestDistance holds the distance to cases of its definition (Damerau 1964, restricted to one
// edit of a substring) and to its symmetry.
func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0}, {"abc", "", 3}, {"abc", "abc", 0}, {"abc", "abd", 1}, {"abc", "acb", 1}, {"abc", "ab", 1},
		{"ca", "abc", 3}, {"kitten", "sitting", 3}, {"é", "e", 1},
	} {
		ab, ba := distance([]rune(c.a), []rune(c.b)), distance([]rune(c.b), []rune(c.a))
		if ab != c.want || ba != c.want {
			t.Errorf("%q to %q is %d, and back %d; want %d", c.a, c.b, ab, ba, c.want)
		}
	}
}

func TestSchema(t *testing.T) {
	got, err := json.Marshal(holeShape.Schema())
	if err != nil {
		t.Fatal(err)
	}
	const want = `{"additionalProperties":false,"description":"A hole in a wall.","oneOf":[{"required":["window"]},{"required":["door"]}],` +
		`"properties":{"door":{"description":"The wall of a door.","examples":["kitchen.left"],"type":["string","number"]},` +
		`"escape":{"description":"Whether it is a way out. Not computed yet: escape routes.","type":"boolean"},` +
		`"panes":{"description":"Panes across | up. Default: one.","examples":["[2, 2]"],` +
		`"items":{"maximum":20,"minimum":1,"type":"number"},"maxItems":2,"minItems":2,"type":"array"},` +
		`"swing":{"description":"Where it opens to. Default: in.","enum":["in","out"]},` +
		`"width":{"description":"How wide it is.","examples":["1.4"],"maximum":20,"minimum":0.1,"type":"number"},` +
		`"window":{"description":"The wall of a window.","examples":["kitchen.left"],"type":["string","number"]}},` +
		`"required":["width"],"type":"object"}`
	if string(got) != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func ExampleShape_Reference() {
	if err := holeShape.Reference(os.Stdout); err != nil {
		panic(err)
	}
	// Output:
	// ### opening
	//
	// A hole in a wall.
	//
	// Exactly one of: window, door.
	//
	// | key | meaning | example | default |
	// |---|---|---|---|
	// | `window` | The wall of a window. | `kitchen.left` |  |
	// | `door` | The wall of a door. | `kitchen.left` |  |
	// | `width` | How wide it is. | `1.4` | required |
	// | `panes` | Panes across \| up. | `[2, 2]` | one |
	// | `swing` | Where it opens to. |  | in |
	// | `escape` | Whether it is a way out. (not computed yet: escape routes) |  |  |
}
