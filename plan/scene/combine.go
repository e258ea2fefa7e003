package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// ShowChange adds to a fault of a set-up the place in its change that has to do with it, where
// the fault itself lies elsewhere: the scene may be right without the change, and the change on
// another scene.
func (s *Scene) ShowChange(d *source.Diagnostic) {
	own := s.setup(s.Setup)
	if own == nil || s.showStrike(d) || own.Change == nil || containsSpan(own.Change.Span, d.Span) || own.Cues != nil && containsSpan(own.Cues.Span, d.Span) {
		return
	}
	if slices.ContainsFunc(d.Related, func(r source.Related) bool { return containsSpan(own.Change.Span, r.Span) }) {
		return
	}
	d.Related = append(d.Related, source.Related{
		Span: nearestPlace(own.Change, d.Path), Message: "the set-up " + own.Name + " changes it here",
	})
}

// showStrike adds to a fault the place where its set-up, or one that it starts from, strikes what the fault names.
func (s *Scene) showStrike(d *source.Diagnostic) bool {
	name, _, _ := strings.Cut(d.Span.Text(), ".")
	if d.Code != source.CodeUnknownName {
		return false
	}
	seen := map[string]bool{}
	for own := s.setup(s.Setup); own != nil && !seen[own.Name]; own = s.setup(own.From().Name) {
		seen[own.Name] = true
		if own.Change == nil {
			continue
		}
		if span, ok := struck(own.Change, name); ok && span != d.Span {
			d.Related = append(d.Related, source.Related{Span: span, Message: "the set-up " + own.Name + " strikes it here"})
			return true
		}
	}
	return false
}

// containsSpan reports whether a span lies in another.
func containsSpan(outer, inner source.Span) bool {
	return outer.File == inner.File && inner.Start >= outer.Start && inner.End <= outer.End
}

// struck finds where a change strikes the thing of a name.
func struck(change *source.Node, name string) (source.Span, bool) {
	if list := change.Get(source.Strike); list != nil {
		for _, item := range append([]*source.Node{list}, list.Items...) {
			if item.Text == name {
				return item.Span, true
			}
		}
	}
	for _, section := range change.Keys {
		if k := section.Value.Key(name); k != nil && k.Value.Text == source.Strike {
			return k.Span, true
		}
	}
	return source.Span{}, false
}

// nearestPlace is the place in a change that is nearest to a path of the scene.
func nearestPlace(change *source.Node, path string) source.Span {
	n, span := change, change.Span
	for name := range strings.SplitSeq(path, ".") {
		key := n.Key(name)
		if key == nil {
			break
		}
		n, span = key.Value, key.Span
	}
	return span
}

// SetupSpan is where the set-up of the scene is listed; no place for the scene itself.
func (s *Scene) SetupSpan() source.Span {
	if own := s.setup(s.Setup); own != nil {
		return own.Span
	}
	return source.Span{}
}

// setup returns a set-up by its name, or nil.
func (s *Scene) setup(name string) *Setup {
	for i := range s.Setups {
		if s.Setups[i].Name == name {
			return &s.Setups[i]
		}
	}
	return nil
}
