package scene

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"scrimshaw/plan/source"
	"scrimshaw/samples"
)

// validator checks a tree against the part of JSON Schema that Schema uses; a word that it does
// not know fails the test.
type validator struct {
	t    *testing.T
	root map[string]any
}

func newValidator(t *testing.T) *validator {
	t.Helper()
	text, err := json.Marshal(Schema())
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	return &validator{t, root}
}

// jsonOf is the value that an editor sees, by the core schema of YAML 1.2.
func jsonOf(n *source.Node) any {
	switch n.Kind {
	case source.Map:
		m := map[string]any{}
		for _, k := range n.Keys {
			m[k.Name] = jsonOf(k.Value)
		}
		return m
	case source.List:
		list := []any{}
		for _, item := range n.Items {
			list = append(list, jsonOf(item))
		}
		return list
	case source.Null:
		return nil
	}
	if !n.Quoted {
		if v, err := strconv.ParseFloat(n.Text, 64); err == nil {
			return v
		}
		if n.Text == "true" || n.Text == "false" {
			return n.Text == "true"
		}
	}
	return n.Text
}

// fits reports what is wrong with a value, "" where it fits.
func (v *validator) fits(schema, value any, path string) string {
	if yes, ok := schema.(bool); ok {
		if !yes {
			return path + ": not allowed here"
		}
		return ""
	}
	s := schema.(map[string]any)
	for word, arg := range s {
		if fault := v.word(word, arg, s, value, path); fault != "" {
			return fault
		}
	}
	return ""
}

// word reports why a value does not fit one word of a schema, "" where it does.
func (v *validator) word(word string, arg any, s map[string]any, value any, path string) string {
	switch word {
	case "$schema", "$defs", "title", "description", "examples":
		return ""
	case "$ref":
		name := strings.TrimPrefix(arg.(string), "#/$defs/")
		target, ok := v.root["$defs"].(map[string]any)[name]
		if !ok {
			v.t.Fatalf("%s is not defined", arg)
		}
		return v.fits(target, value, path)
	case "type", "const", "enum":
		return ofWords(word, arg, value, path)
	case "minimum", "maximum", "maxLength", "minItems", "maxItems", "minProperties", "maxProperties":
		return withinBound(word, arg.(float64), value, path)
	case "prefixItems":
		list, _ := value.([]any)
		for i, inner := range arg.([]any)[:min(len(list), len(arg.([]any)))] {
			if fault := v.fits(inner, list[i], fmt.Sprintf("%s[%d]", path, i)); fault != "" {
				return fault
			}
		}
		return ""
	case "items":
		if arg == false {
			return "" // the most that prefixItems leaves is said by maxItems
		}
		list, _ := value.([]any)
		for i, item := range list {
			if fault := v.fits(arg, item, fmt.Sprintf("%s[%d]", path, i)); fault != "" {
				return fault
			}
		}
		return ""
	case "anyOf", "oneOf":
		fitting, why := 0, ""
		for _, inner := range arg.([]any) {
			if fault := v.fits(inner, value, path); fault == "" {
				fitting++
			} else {
				why += "; " + fault
			}
		}
		if fitting == 0 || word == "oneOf" && fitting > 1 {
			return fmt.Sprintf("%s: fits %d of %s%s", path, fitting, word, why)
		}
		return ""
	}
	return v.ofKeys(word, arg, s, value, path)
}

// ofWords says why a value is not among those that a word of a schema lists; "" where it is one.
func ofWords(word string, arg, value any, path string) string {
	switch word {
	case "type":
		types, ok := arg.([]any)
		if !ok {
			types = []any{arg}
		}
		if !slices.ContainsFunc(types, func(t any) bool { return ofType(t.(string), value) }) {
			return fmt.Sprintf("%s: %v is no %v", path, value, types)
		}
	case "const":
		if value != arg {
			return fmt.Sprintf("%s: %v is not %v", path, value, arg)
		}
	case "enum":
		if !slices.Contains(arg.([]any), value) {
			return fmt.Sprintf("%s: %v is not one of %v", path, value, arg)
		}
	}
	return ""
}

// withinBound says why a value breaks a bound of a schema; "" where it does not, or the bound is of values of another type.
func withinBound(word string, bound float64, value any, path string) string {
	size := math.NaN()
	switch value := value.(type) {
	case float64:
		if word == "minimum" || word == "maximum" {
			size = value
		}
	case string:
		if word == "maxLength" {
			size = float64(utf8.RuneCountInString(value))
		}
	case []any:
		if word == "minItems" || word == "maxItems" {
			size = float64(len(value))
		}
	case map[string]any:
		if word == "minProperties" || word == "maxProperties" {
			size = float64(len(value))
		}
	}
	if least := strings.HasPrefix(word, "min"); least && size < bound || !least && size > bound {
		return fmt.Sprintf("%s: %s is %g", path, word, bound)
	}
	return ""
}

// ofKeys says why the keys of a value do not fit a word of a schema; "" where they do, or the value has no keys.
func (v *validator) ofKeys(word string, arg any, s map[string]any, value any, path string) string {
	object, isObject := value.(map[string]any)
	switch word {
	case "required":
		for _, key := range arg.([]any) {
			if _, has := object[key.(string)]; isObject && !has {
				return fmt.Sprintf("%s: no %s", path, key)
			}
		}
	case "propertyNames":
		pattern := regexp.MustCompile(arg.(map[string]any)["pattern"].(string))
		for key := range object {
			if !pattern.MatchString(key) {
				return fmt.Sprintf("%s: %q is no name", path, key)
			}
		}
	case "properties":
		for key, inner := range arg.(map[string]any) {
			if child, has := object[key]; has {
				if fault := v.fits(inner, child, path+"."+key); fault != "" {
					return fault
				}
			}
		}
	case "additionalProperties":
		known, _ := s["properties"].(map[string]any)
		for key, child := range object {
			if _, has := known[key]; !has {
				if fault := v.fits(arg, child, path+"."+key); fault != "" {
					return fault
				}
			}
		}
	default:
		v.t.Fatalf("the schema says %q, which this test does not know", word)
	}
	return ""
}

func ofType(t string, value any) bool {
	switch v := value.(type) {
	case map[string]any:
		return t == "object"
	case []any:
		return t == "array"
	case string:
		return t == "string"
	case float64:
		return t == "number" || t == "integer" && v == float64(int(v))
	case bool:
		return t == "boolean"
	}
	return false
}

func (v *validator) faultOf(text string) string {
	v.t.Helper()
	root := source.Parse(&source.File{Name: "s.yaml", Text: []byte(text)}, &source.Log{})
	if root == nil {
		v.t.Fatalf("no YAML: %s", text)
	}
	return v.fits(v.root, jsonOf(root), "")
}

// inWordsOfTheSet has places and aims as they are said, and changes of one key of a place.
const inWordsOfTheSet = `scrimshaw: 1
exposure: {range: {over: 6}}
people: {ruth: {at: [1, 1], faces: [2, 2], marks: {sit: {at: {by: desk, toward: A, distance: 1}, faces: [0, 0]}}}}
lights: {k: {unit: a, at: {by: ruth, turn: 55 camera-right, distance: 2}, aim: ceiling}, d: {unit: a, at: {opening: w, out: 2}, aim: {opening: w}}}
grip: {g: {card: [1, 1], at: [0, 0], faces: [1, 1]}}
setups: {a: {change: {lights: {k: {at: {distance: 1.5}}}, people: {ruth: {marks: {sit: {at: {turn: 10}}}}}}}}
`

func TestTheSchemaTakesWhatTheLoaderTakes(t *testing.T) {
	v := newValidator(t)
	texts := []string{everything(t), twoSetups, inWordsOfTheSet}
	for _, name := range samples.Names() {
		text, err := samples.Text(name)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(text))
	}
	for _, text := range texts {
		if fault := v.faultOf(text); fault != "" {
			t.Errorf("%.60s…: %s", text, fault)
		}
	}
}

func TestTheSchemaRefusesWhatTheLoaderRefuses(t *testing.T) {
	v := newValidator(t)
	for _, lines := range []string{
		"rooms: {den: {size: [5, 4], heigth: 2}}",
		"rooms: {den: {height: 2}}",
		"rooms: {den: {size: [5, 4], corners: []}}",
		"openings: {w: {gap: den.left, width: 1, panes: [1, 1]}}",
		"rooms: {a.b: {size: [5, 4]}}",
		"people: {ruth: {at: desk}}",
		"people: {ruth: {pose: seated}}",
		"people: {ruth: {at: [0, 0], pose: siting}}",
		"people: {ruth: {at: {from: desk, distance: 2}}}",
		"lights: {k: {unit: a, output: {lumens: 3}, at: [0, 0]}}",
		"lights: {k: {unit: a, at: [0, 0], level: 80}}",
		"cameras: {A: {at: [0, 0], lens: 35}}",
		"cameras: {A: {at: [0, 0], lens: 35 mm, exposure: {constant: 3}}}",
		"setups: {a: {change: {kit: x}}}",
		"setups: {a: {change: {lights: {k: {levle: 3 %}}}}}",
		"setups: {a: {change: {lights: {k: {at: {distnace: 1.5}}}}}}",
		"exposure: {range: 6}",
		"setup: {}",
	} {
		text := "scrimshaw: 1\n" + lines + "\n"
		log := &source.Log{}
		d := Open(testEnv(t), &source.File{Name: "s.yaml", Text: []byte(text)}, log)
		d.Base(log)
		for _, s := range d.Setups {
			d.Scene(s, log)
		}
		if !log.Failed() {
			t.Errorf("%s: the loader takes it", lines)
		}
		if v.faultOf(text) == "" {
			t.Errorf("%s: the schema takes it", lines)
		}
	}
}

// The reference has a line for every key.
// TestTheVersionInTheSchemaAndTheLoader: the two agree on every way to write the version.
func TestTheVersionInTheSchemaAndTheLoader(t *testing.T) {
	v := newValidator(t)
	for written, fine := range map[string]bool{
		"1": true, `"1"`: true, "'1'": true, "1.0": true, `"1.0"`: false, "2": false, `"2"`: false, "one": false, "true": false, "[1]": false,
	} {
		text := "scrimshaw: " + written + "\nrooms: {den: {size: [5, 4]}}\n"
		log := &source.Log{}
		Open(testEnv(t), &source.File{Name: "s.yaml", Text: []byte(text)}, log).Base(log)
		if log.Failed() == fine {
			t.Errorf("scrimshaw: %s: the loader says %v", written, log.All())
		}
		if fault := v.faultOf(text); (fault == "") != fine {
			t.Errorf("scrimshaw: %s: the schema says %q", written, fault)
		}
	}
}

func TestReference(t *testing.T) {
	var b strings.Builder
	if err := Reference(&b); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	everyKey(t, func(t *testing.T, p probe) {
		_, section, _ := strings.Cut(text, "### "+p.table+"\n")
		section, _, _ = strings.Cut(section, "\n### ")
		if !strings.Contains(section, "| `"+p.key+"` |") {
			t.Errorf("no line for %s of a %s", p.key, p.table)
		}
	})
}

// The pattern of a name is one that every validator compiles: it takes what the loader takes, and
// of ASCII nothing else.
func TestSchemaNamePattern(t *testing.T) {
	if strings.Contains(namePattern, `\p`) {
		t.Error("\\p is not known to all validators")
	}
	pattern := regexp.MustCompile(namePattern)
	for r := rune(0); r < 0x250; r++ {
		name := "a" + string(r)
		if takes := checkName(name) == nil; takes != pattern.MatchString(name) && (takes || r < 0x80) {
			t.Errorf("%q: the loader takes it: %v, the schema: %v", name, takes, pattern.MatchString(name))
		}
	}
	if pattern.MatchString("") || pattern.MatchString(strings.Repeat("a", maxName+1)) {
		t.Error("a name has 1 to 64 characters")
	}
}
