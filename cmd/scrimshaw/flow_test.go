package main

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"scrimshaw/plan/scene"
)

// flow is a map of a scene in the making: its keys in order, each with a value as a user writes it, or a map.
type flow struct {
	keys   []string
	values map[string]any // string or *flow
}

// flowOf makes a map from keys and values in turn.
func flowOf(pairs ...any) *flow {
	f := &flow{values: map[string]any{}}
	for i := 0; i+1 < len(pairs); i += 2 {
		f.put(pairs[i].(string), pairs[i+1])
	}
	return f
}

// put writes the value of a key, at the end where there is none.
func (f *flow) put(key string, value any) {
	if _, there := f.values[key]; !there {
		f.keys = append(f.keys, key)
	}
	f.values[key] = value
}

// drop takes keys out.
func (f *flow) drop(keys ...string) {
	f.keys = slices.DeleteFunc(f.keys, func(k string) bool { return slices.Contains(keys, k) })
	for _, k := range keys {
		delete(f.values, k)
	}
}

// at is the map at a path, made where there is none.
func (f *flow) at(path ...string) *flow {
	for _, key := range path {
		if _, is := f.values[key].(*flow); !is {
			f.put(key, flowOf())
		}
		f = f.values[key].(*flow)
	}
	return f
}

// String is the map in flow style.
func (f *flow) String() string {
	var b strings.Builder
	for i, key := range f.keys {
		if i > 0 {
			b.WriteString(", ")
		}
		b.WriteString(key + ": ")
		switch v := f.values[key].(type) {
		case *flow:
			b.WriteString(v.String())
		case string:
			b.WriteString(v)
		}
	}
	return "{" + b.String() + "}"
}

// text is the map as the scene of a file, a line a key.
func (f *flow) text() string {
	var b strings.Builder
	for _, key := range f.keys {
		line := flowOf(key, f.values[key]).String()
		b.WriteString(line[1:len(line)-1] + "\n")
	}
	return b.String()
}

// written is one key of the language where a scene holds it: "lights", "*", "scrims".
type written struct {
	path    []string
	example string
	waits   string   // for what, where it is not computed yet
	forms   []string // of its map, of which it may be one
}

func (w *written) name() string { return strings.Join(w.path, ".") }

// language lists every key of the language by the schema, which is made of the tables that the loader reads by. Keys
// within one that is not computed yet are not apart from it.
func language(t *testing.T) []written {
	t.Helper()
	text, err := json.Marshal(scene.Schema())
	if err != nil {
		t.Fatal(err)
	}
	var root map[string]any
	if err := json.Unmarshal(text, &root); err != nil {
		t.Fatal(err)
	}
	var all []written
	collect(root, nil, &all)
	// A place, an aim and a mount are described once; a light shows them best.
	for word, key := range map[string]string{"place": "at", "aim": "aim", "mount": "mount"} {
		collect(root["$defs"].(map[string]any)[word].(map[string]any), []string{"lights", "*", key}, &all)
	}
	slices.SortFunc(all, func(a, b written) int { return strings.Compare(a.name(), b.name()) })
	return all
}

// collect adds the keys of a schema, and of the schemas of their values.
func collect(schema map[string]any, path []string, all *[]written) {
	if named, ok := schema["additionalProperties"].(map[string]any); ok {
		collect(named, append(slices.Clone(path), "*"), all)
	}
	if either, ok := schema["anyOf"].([]any); ok {
		for _, s := range either {
			collect(s.(map[string]any), path, all)
		}
	}
	keys, _ := schema["properties"].(map[string]any)
	for key, value := range keys {
		inner, ok := value.(map[string]any)
		if !ok {
			continue
		}
		w := written{path: append(slices.Clone(path), key), forms: formsOf(schema)}
		said, _ := inner["description"].(string)
		if _, waits, later := strings.Cut(said, "Not computed yet: "); later {
			w.waits = strings.TrimSuffix(waits, ".")
		}
		if examples, ok := inner["examples"].([]any); ok {
			w.example, _ = examples[0].(string)
		}
		*all = append(*all, w)
		if w.waits == "" {
			collect(inner, w.path, all)
		}
	}
}

// formsOf are the keys of which exactly one stands in a map.
func formsOf(schema map[string]any) []string {
	var forms []string
	choices, _ := schema["oneOf"].([]any)
	for _, choice := range choices {
		needs, _ := choice.(map[string]any)["required"].([]any)
		for _, key := range needs {
			forms = append(forms, key.(string))
		}
	}
	return forms
}
