package scene

import (
	"strings"

	"scrimshaw/plan/source"
)

// layer is the scene, or one of its set-ups, merged and read.
type layer struct {
	scene  *Scene
	faults []source.Diagnostic
}

// tell logs the faults of a layer and returns its scene.
func (l *layer) tell(log *source.Log) *Scene {
	if l == nil {
		return nil
	}
	for _, f := range l.faults {
		log.Add(f)
	}
	return l.scene
}

// decoded reads a merged tree. after is the layer that it was made from, whose faults are its
// own; nil for the scene itself.
func (d *Document) decoded(setup string, tree *source.Node, after *layer) *layer {
	log := &source.Log{}
	s := &Scene{Tree: tree, Setup: setup}
	c := &source.Context{Log: log, Setup: setup, Feet: func(*source.File) bool { return d.feet }}
	sceneTable.read(s, tree, c, tree.Span)
	s.Feet = d.feet
	if own := s.setup(setup); own != nil {
		s.Shown, s.Stays = own.Cameras, own.Stays
	}
	s.checkNames(c)
	l := &layer{scene: s, faults: log.All()}
	if after != nil {
		l.inherit(after, s.setup(setup))
	}
	return l
}

// inherit gives faults back to the layer in which they arise first, and shows both places of a
// fault that only the combination has.
func (l *layer) inherit(after *layer, setup *Setup) {
	known := make(map[faultKey]source.Diagnostic, len(after.faults))
	for _, f := range after.faults {
		known[keyOf(f)] = f
	}
	for i := range l.faults {
		f := &l.faults[i]
		if first, ok := known[keyOf(*f)]; ok {
			*f = first
			continue
		}
		if setup != nil && setup.Change != nil && !holds(setup.Change.Span, f.Span) {
			f.Related = append(f.Related, source.Related{
				Span:    changed(setup, f.Path),
				Message: "the set-up " + setup.Name + " changes it here",
			})
		}
	}
}

// faultKey tells faults apart whatever set-up they are found in.
type faultKey struct {
	code, message string
	span          source.Span
}

func keyOf(d source.Diagnostic) faultKey { return faultKey{d.Code, d.Message, d.Span} }

// holds reports whether a span lies in another.
func holds(outer, inner source.Span) bool {
	return outer.File == inner.File && inner.Start >= outer.Start && inner.End <= outer.End
}

// changed is the place in a set-up's change that is nearest to a path of the scene.
func changed(s *Setup, path string) source.Span {
	n, span := s.Change, s.Change.Span
	for name := range strings.SplitSeq(path, ".") {
		key := n.Key(name)
		if key == nil {
			break
		}
		n, span = key.Value, key.Span
	}
	return span
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
