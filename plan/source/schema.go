package source

import (
	"fmt"
	"io"
	"maps"
	"math"
	"slices"
	"strings"
)

// Schema returns the JSON Schema (draft 2020-12) of a map of the shape: an object with exactly
// the keys of the table.
func (s *Shape[T]) Schema() map[string]any {
	properties := make(map[string]any, len(s.Fields))
	object := map[string]any{"type": "object", "properties": properties, "additionalProperties": false}
	var required []string
	for i := range s.Fields {
		f := &s.Fields[i]
		properties[f.Key] = f.schema()
		switch {
		case f.Required && f.Instead != "":
			object["anyOf"] = []any{map[string]any{"required": []string{f.Key}}, map[string]any{"required": []string{f.Instead}}}
		case f.Required:
			required = append(required, f.Key)
		}
	}
	if s.Doc != "" {
		object["description"] = s.Doc
	}
	if len(required) > 0 {
		object["required"] = required
	}
	if len(s.Forms) > 0 {
		object["oneOf"] = s.formSchemas()
	}
	return object
}

// formSchemas is one schema for each form, each asking for its key.
func (s *Shape[T]) formSchemas() []any {
	forms := make([]any, len(s.Forms))
	for i, form := range s.Forms {
		forms[i] = map[string]any{"required": []string{form}}
	}
	return forms
}

// schema is the field's own schema with what the table says of it.
func (f *Field[T]) schema() map[string]any {
	own := map[string]any{}
	if f.Schema != nil {
		own = maps.Clone(f.Schema())
	}
	if f.Doc != "" {
		own["description"] = f.described()
	}
	if f.Example != "" {
		own["examples"] = []any{f.Example}
	}
	return own
}

// described is the field's sentence, its default and what is still to come.
func (f *Field[T]) described() string {
	text := f.Doc
	if f.Default != "" {
		text += " Default: " + f.Default + "."
	}
	if f.Later != "" {
		text += " Not computed yet: " + f.Later + "."
	}
	return text
}

// Reference writes the shape as a Markdown table: one line a key.
func (s *Shape[T]) Reference(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "### %s\n\n", s.Name)
	if s.Doc != "" {
		fmt.Fprintf(&b, "%s\n\n", s.Doc)
	}
	if len(s.Forms) > 0 {
		fmt.Fprintf(&b, "Exactly one of: %s.\n\n", strings.Join(s.Forms, ", "))
	}
	b.WriteString("| key | meaning | example | default |\n|---|---|---|---|\n")
	for i := range s.Fields {
		f := &s.Fields[i]
		fmt.Fprintf(&b, "| `%s` | %s | %s | %s |\n", f.Key, tableCell(f.meaning()), tableCell(code(f.Example)), tableCell(f.fallback()))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// meaning is the field's sentence and what is still to come.
func (f *Field[T]) meaning() string {
	if f.Later != "" {
		return f.Doc + " (not computed yet: " + f.Later + ")"
	}
	return f.Doc
}

// fallback is what holds where the key is left out.
func (f *Field[T]) fallback() string {
	if f.Required && f.Instead == "" {
		return "required"
	}
	return f.Default
}

// code marks text as code in Markdown.
func code(text string) string {
	if text == "" {
		return ""
	}
	return "`" + text + "`"
}

// tableCell keeps text inside one cell of a Markdown table.
func tableCell(text string) string {
	return strings.NewReplacer("|", `\|`, "\n", " ").Replace(text)
}

// numberSchema is the schema of a number from least to most; infinite limits are left out.
func numberSchema(kind string, least, most float64) map[string]any {
	schema := map[string]any{"type": kind}
	if !math.IsInf(least, 0) {
		schema["minimum"] = least
	}
	if !math.IsInf(most, 0) {
		schema["maximum"] = most
	}
	return schema
}

// cloneSchema gives each caller its own copy, lists included, so that nobody changes another's.
func cloneSchema(schema map[string]any) map[string]any {
	own := maps.Clone(schema)
	for key, value := range own {
		switch list := value.(type) {
		case []any:
			own[key] = slices.Clone(list)
		case []string:
			own[key] = slices.Clone(list)
		}
	}
	return own
}
