package resolve

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// A scene's places depend on each other: a lamp stands by a person, who faces a camera, which
// stands at a wall. Each is found when it is first asked for, and kept. A question that is asked
// while it is being answered closes a ring, which is reported with every place on it.

// evaluate finds what q asks for: from what is known, or by work.
func evaluate[T any](r *placer, known map[string]result[T], q dependency, work func() (T, bool)) (T, bool) {
	if a, done := known[q.of]; done {
		return a.v, a.ok
	}
	if r.onStack[q] {
		r.reportCycle(q)
		var none T
		return none, false
	}
	r.onStack[q] = true
	r.stack = append(r.stack, q)
	leave := r.About(r.things[q.of].path)
	v, ok := work()
	leave()
	r.stack = r.stack[:len(r.stack)-1]
	delete(r.onStack, q)
	known[q.of] = result[T]{v, ok}
	return v, ok
}

// reportCycle logs the cycle that q closes, at the first of its places in the file.
func (r *placer) reportCycle(q dependency) {
	ring := slices.Clone(r.stack[slices.Index(r.stack, q):])
	first := 0
	for i := range ring {
		if r.spanOf(ring[i]).Start < r.spanOf(ring[first]).Start {
			first = i
		}
	}
	ring = append(ring[first:], ring[:first]...)
	words := make([]string, 0, len(ring)+1)
	for _, q := range append(ring, ring[0]) {
		words = append(words, q.String())
	}
	d := r.Diagnostic(source.Error, r.spanOf(ring[0]), CodeCycle, "give one of them a place of its own",
		"these places depend on each other in a circle: %s", strings.Join(words, " -> "))
	d.Path = r.things[ring[0].of].path
	for _, q := range ring[1:] {
		d.Related = append(d.Related, source.Related{Span: r.spanOf(q), Message: q.String() + " waits here"})
	}
	r.Log.Add(d)
}

// spanOf is where the value was written that answers q.
func (r *placer) spanOf(q dependency) source.Span {
	t := r.things[q.of]
	span := r.placeSpan(t)
	if q.what == "facing" {
		span = r.facingSpan(t)
	}
	if !span.Valid() {
		return t.span
	}
	return span
}
