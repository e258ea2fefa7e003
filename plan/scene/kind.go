package scene

import (
	"errors"
	"fmt"
	"strings"

	"scrimshaw/plan/source"
)

// withExample gives a value that could not be read at all an example to follow, where nothing better
// is known.
func withExample(err error, like string) error {
	var d *source.Diagnostic
	if errors.As(err, &d) && d.Hint == "" && (d.Code == source.CodeBadValue || d.Code == source.CodeNotFinite) {
		return withHint(d, "write it like "+like)
	}
	return err
}

// withHint is what d says, with another fix.
func withHint(d *source.Diagnostic, hint string) error {
	return source.Errorf(d.Code, hint, "%s", d.Message)
}

// errorWith logs an error that a second place explains.
func errorWith(c *source.Context, span source.Span, code, hint string, other source.Span, why, format string, args ...any) {
	c.Log.Add(source.Diagnostic{
		Severity: source.Error, Code: code, Span: span, Hint: hint, Path: strings.Join(c.Path, "."), Setup: c.Setup,
		Message: fmt.Sprintf(format, args...), Related: []source.Related{{Span: other, Message: why}},
	})
}

// wrongType logs that n is not what r reads.
func wrongType[V any](r *source.Reader[V], n *source.Node, c *source.Context) (v V, ok bool) {
	c.Error(n, source.CodeWrongType, "write it like "+r.Like, "%s belongs here, not %s", r.What, n.Kind)
	return v, false
}

// scalar reads a single value whose text parse understands.
func scalar[V any](what, like string, schema map[string]any,
	parse func(text string, n *source.Node, c *source.Context) (V, error)) source.Reader[V] {
	r := source.Reader[V]{What: what, Like: like, Schema: func() map[string]any { return schema }}
	r.Read = func(n *source.Node, c *source.Context) (v V, ok bool) {
		if n.Kind != source.Scalar {
			return wrongType(&r, n, c)
		}
		v, err := parse(n.Text, n, c)
		if err != nil {
			c.Refuse(n.Span, withExample(err, like))
		}
		return v, err == nil
	}
	return r
}

// oneOrMore reads a value as r does, or a list of up to most of them.
func oneOrMore[V any](what, like string, r source.Reader[V], most int) source.Reader[[]V] {
	list := source.ListOf(what, like, r, 1, most)
	single := source.Converted(r, func(v V) []V { return []V{v} })
	return either(what, like, ofKind(source.List), list, single)
}

// ofKind reports whether a node is of kind k.
func ofKind(k source.Kind) func(*source.Node) bool {
	return func(n *source.Node) bool { return n.Kind == k }
}

// either reads as a does where is says so, else as b does.
func either[V any](what, like string, is func(*source.Node) bool, a, b source.Reader[V]) source.Reader[V] {
	return source.Reader[V]{
		What: what, Like: like,
		Schema: func() map[string]any { return anyOf(b.Schema(), a.Schema()) },
		Read: func(n *source.Node, c *source.Context) (V, bool) {
			if is(n) {
				return a.Read(n, c)
			}
			return b.Read(n, c)
		},
	}
}

// checked reads as r does what also passes check.
func checked[V any](r source.Reader[V], check func(V) error) source.Reader[V] {
	read := r.Read
	r.Read = func(n *source.Node, c *source.Context) (v V, ok bool) {
		if v, ok = read(n, c); !ok {
			return v, false
		}
		if err := check(v); err != nil {
			c.Refuse(n.Span, err)
			return v, false
		}
		return v, true
	}
	return r
}

// pair reads two values of one kind.
func pair[V any](what, like string, r source.Reader[V]) source.Reader[[2]V] {
	return source.Converted(source.ListOf(what, like, r, 2, 2), func(v []V) [2]V { return [2]V(v) })
}

// triple reads three values of one kind.
func triple[V any](what, like string, r source.Reader[V]) source.Reader[[3]V] {
	return source.Converted(source.ListOf(what, like, r, 3, 3), func(v []V) [3]V { return [3]V(v) })
}

// anyOf is the JSON Schema of a value that fits one of several.
func anyOf(schemas ...any) map[string]any { return map[string]any{"anyOf": schemas} }

// orList is "a, b or c".
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
