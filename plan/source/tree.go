package source

import "math"

// builder turns the library's tree into ours: it finds where each value ends, and refuses what
// is YAML and yet no part of the language.
type builder struct {
	lines   *lines
	log     *Log
	pos     int                  // end of what was read last
	aliased int                  // values that aliases have added
	anchors map[*yamlNode]*built // nil while the anchor's own value is being read
	failed  bool                 // a fault has made the tree useless
}

// built is a value with its size (values in it, aliases written out) and the levels in it.
type built struct {
	node         *Node
	size, levels int
}

// document builds the tree of the first document, or returns nil.
func (b *builder) document(doc *yamlNode) *Node {
	b.anchors = make(map[*yamlNode]*built)
	root := b.value(doc.Content[0], 0)
	if b.failed {
		return nil
	}
	return root.node
}

// value builds y, which stands depth levels down.
func (b *builder) value(y *yamlNode, depth int) built {
	start := b.lines.offset(y.Line, y.Column)
	if depth > maxDepth {
		b.fatal(b.lines.span(start, start+1), CodeTooDeep, nestingHint, "nested too deep: a scene has at most %d levels", maxDepth)
	}
	if b.failed {
		return built{node: &Node{}}
	}
	if y.Kind == aliasNode {
		return b.alias(y, start, depth)
	}
	if y.Anchor == "" {
		return b.plain(y, start, depth)
	}
	b.anchors[y] = nil
	v := b.plain(y, start, depth)
	b.anchors[y] = &v
	return v
}

// plain builds a value that is no alias.
func (b *builder) plain(y *yamlNode, start, depth int) built {
	start = b.properties(start)
	switch y.Kind {
	case mappingNode:
		return b.mapping(y, start, depth)
	case sequenceNode:
		return b.sequence(y, start, depth)
	}
	return b.scalar(y, start)
}

// properties steps over anchors and tags to the value itself. Tags are refused: the key says what
// kind of value it takes.
func (b *builder) properties(start int) int {
	text := b.lines.file.Text
	for start < len(text) && (text[start] == '&' || text[start] == '!') {
		end := propertyEnd(text, start)
		if text[start] == '!' {
			b.log.Errorf(b.lines.span(start, end), CodeTag, "remove it",
				"the tag %s is not part of the language", text[start:end])
		}
		b.pos = end
		start = skipBlank(text, end)
	}
	return start
}

// scalar builds a single value.
func (b *builder) scalar(y *yamlNode, start int) built {
	n := &Node{Kind: Scalar, Text: y.Value, Quoted: y.Style&^taggedStyle != 0}
	end := start
	switch {
	case !n.Quoted && y.Value == "":
		start = min(start, b.pos)
		n.Kind, end = Null, start
	case !n.Quoted && isNull(y.Value):
		n.Kind, n.Text, end = Null, "", start+len(y.Value)
	default:
		end = scalarEnd(b.lines.file.Text, start, y)
	}
	n.Span = b.lines.span(start, end)
	b.pos = end
	return built{n, 1, 0}
}

// isNull reports whether a plain text is one of YAML's words for nothing.
func isNull(text string) bool {
	return text == "~" || text == "null" || text == "Null" || text == "NULL"
}

// sequence builds a list.
func (b *builder) sequence(y *yamlNode, start, depth int) built {
	n := &Node{Kind: List, Span: b.lines.span(start, start)}
	v := built{n, 1, 0}
	b.pos = start + 1
	for _, item := range y.Content {
		b.pos = b.lines.offset(item.Line, item.Column)
		part := b.value(item, depth+1)
		n.Items = append(n.Items, part.node)
		v.count(part)
	}
	b.finish(n, y.Style&flowStyle != 0, ']')
	return v
}

// mapping builds a map.
func (b *builder) mapping(y *yamlNode, start, depth int) built {
	n := &Node{Kind: Map, Span: b.lines.span(start, start)}
	v := built{n, 1, 0}
	braced := y.Style&flowStyle != 0 && !isPair(y)
	b.pos = start + 1
	seen := make(map[string]Span)
	for i := 0; i+1 < len(y.Content) && !b.failed; i += 2 {
		b.entry(&v, seen, y.Content[i], y.Content[i+1], depth)
	}
	b.finish(n, braced, '}')
	return v
}

// isPair reports whether a map in flow style is a single pair in a list, without braces.
func isPair(y *yamlNode) bool {
	return len(y.Content) > 0 && y.Line == y.Content[0].Line && y.Column == y.Content[0].Column
}

// entry builds one entry of the map in v. Entries that the language refuses are left out.
func (b *builder) entry(v *built, seen map[string]Span, key, value *yamlNode, depth int) {
	k := b.value(key, depth+1).node
	b.pos = b.afterColon(k.Span.End)
	val := b.value(value, depth+1)
	switch {
	case b.failed:
	case k.Kind != Scalar || k.Alias:
		b.log.Errorf(k.Span, CodeBadKey, "write the key as a word", "a key is a single word here, not %s", keyKind(k))
	case key.Tag == "!!merge":
		b.log.Errorf(k.Span, CodeMergeKey, "write its keys out",
			"the merge key << is not part of the language")
	default:
		if first, twice := seen[k.Text]; twice {
			b.log.Add(Diagnostic{Severity: Error, Code: CodeDuplicateKey, Span: k.Span, Hint: "keep one of them",
				Message: `the key "` + k.Text + `" stands here twice`, Related: []Related{{first, "it is already written here"}}})
			return
		}
		seen[k.Text] = k.Span
		v.node.Keys = append(v.node.Keys, Key{k.Text, k.Span, val.node})
		v.count(val)
	}
}

// keyKind says what stands where a key should.
func keyKind(n *Node) string {
	if n.Alias {
		return "an alias"
	}
	return n.Kind.String()
}

// afterColon is the offset behind the colon that follows a key in its line, or the key's end.
func (b *builder) afterColon(end int) int {
	text := b.lines.file.Text
	i := end
	for i < len(text) && (text[i] == ' ' || text[i] == '\t') {
		i++
	}
	if i < len(text) && text[i] == ':' {
		return i + 1
	}
	return end
}

// count adds the size and levels of a part.
func (v *built) count(part built) {
	v.size = min(v.size, math.MaxInt/2) + min(part.size, math.MaxInt/2)
	v.levels = max(v.levels, part.levels+1)
}

// finish sets the end of a list or map: its closing bracket, or what was read last.
func (b *builder) finish(n *Node, bracketed bool, closer byte) {
	if b.failed {
		return
	}
	if bracketed {
		b.pos = closing(b.lines.file.Text, b.pos, closer)
	}
	n.Span.End = max(n.Span.Start, b.pos)
}

// alias builds a value written as *name: the anchor's value in the place of the alias.
func (b *builder) alias(y *yamlNode, start, depth int) built {
	end := start + 1 + len(y.Value)
	span := b.lines.span(start, end)
	b.pos = end
	v := b.anchors[y.Alias]
	if v == nil {
		b.fatal(span, CodeAlias, aliasHint, "the alias *%s stands inside the value it repeats", y.Value)
		return built{node: &Node{}}
	}
	b.aliased += v.size
	switch {
	case depth+v.levels > maxDepth:
		b.fatal(span, CodeTooDeep, aliasHint, "the alias *%s nests too deep: a scene has at most %d levels", y.Value, maxDepth)
	case b.aliased > maxAliased:
		b.fatal(span, CodeAlias, aliasHint, "the alias *%s repeats too much: aliases may add %d values to a file", y.Value, maxAliased)
	}
	n := *v.node
	n.Span, n.Alias = span, true
	return built{&n, v.size, v.levels}
}

// aliasHint is the fix for an alias that cannot be followed.
const aliasHint = "write the values out in place of the alias"

// fatal reports a fault that makes the tree useless. Only the first is reported.
func (b *builder) fatal(span Span, code, hint, format string, args ...any) {
	if !b.failed {
		b.log.Errorf(span, code, hint, format, args...)
	}
	b.failed = true
}
