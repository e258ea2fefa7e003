package scene

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"sync"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
)

// layer is the scene, or one of its set-ups merged over what it starts from. It is read when it
// is asked for, and what was read can be let go: its faults alone are kept for good.
type layer struct {
	setup    *Setup              // nil for the scene itself
	shown    []Ref               // the cameras of the set-up; none: all
	stays    []Ref               // what is frozen where it stood before
	staid    []Uncrossed         // what a reverse leaves where it stood
	swaps    map[string]Exchange // by thing: who comes first for it in place of whom
	sequence string              // that the set-up is in; "": none is written
	after    *layer              // what it starts from
	tree     *source.Node
	kit      *kit.Catalogue
	files    *photometricFiles

	kitLacks bool // a name that kit does not hold may be fine

	feet   bool                // what bare lengths mean
	merged []source.Diagnostic // what is wrong with the change, and with those that it follows

	mu     sync.Mutex
	known  bool // the faults are
	scene  *Scene
	faults []source.Diagnostic
}

// derive is the layer of a set-up that starts from l, in a sequence.
func (l *layer) derive(s *Setup, sequence string, rules *source.Rules) *layer {
	next := &layer{setup: s, sequence: sequence, after: l, tree: l.tree, kit: l.kit, kitLacks: l.kitLacks, files: l.files, feet: l.feet, merged: l.merged,
		shown: s.Cameras, stays: s.Stays, swaps: l.swaps}
	log := &source.Log{}
	if s.Reversed != nil {
		next.reverse(log)
	}
	for _, change := range []*source.Node{s.Change, s.Cues} {
		if change != nil {
			next.tree = rules.Merge(next.tree, change, s.Name, log)
		}
	}
	next.tellNothing(log)
	told := log.All()
	for i := range told {
		next.showStruck(&told[i])
	}
	next.merged = append(next.merged[:len(next.merged):len(next.merged)], told...)
	return next
}

// showStruck adds to a fault of a change the place where a set-up that it comes after strikes what it names.
func (l *layer) showStruck(d *source.Diagnostic) {
	name, _, _ := strings.Cut(d.Span.Text(), ".")
	for before := l.after; d.Code == source.CodeUnknownName && before != nil && before.setup != nil; before = before.after {
		if before.setup.Change == nil {
			continue
		}
		if span, ok := struck(before.setup.Change, name); ok {
			d.Related = append(d.Related, source.Related{Span: span, Message: "the set-up " + before.setup.Name + " strikes it here"})
			return
		}
	}
}

// reverse turns the set-up that a layer starts from into its reverse. What stood frozen there stays so, and its cameras roll unless
// the reverse names its own.
func (l *layer) reverse(log *source.Log) {
	pairs, ok := exchangeOf(l.setup, l.after.tree, log)
	if !ok {
		return
	}
	m := &mirror{tree: l.after.tree, pairs: pairs, change: l.setup.Change, asked: map[string]bool{}, verdicts: map[string]verdict{}}
	l.freeze(m)
	l.tree = m.reversed()
	if len(l.setup.Cameras) == 0 {
		for _, ref := range l.after.shown {
			l.shown = append(l.shown, Ref{Name: pairs.Of(ref.Name), Span: ref.Span})
		}
	}
	l.staid = slices.DeleteFunc(m.told, func(u Uncrossed) bool { // cameras that do not roll
		return l.tree.Get("cameras").Get(u.Name) != nil && len(l.shown) > 0 && !slices.ContainsFunc(l.shown, func(r Ref) bool { return r.Name == u.Name })
	})
	l.swaps = map[string]Exchange{}
	maps.Copy(l.swaps, l.after.swaps)
	for _, name := range m.crossed {
		l.swaps[name] = pairs.after(l.swaps[name])
	}
	tellStaying(l.setup, l.staid, log)
}

// freeze keeps what stays, and what stayed in the set-up that is reversed and is not placed anew.
func (l *layer) freeze(m *mirror) {
	for _, ref := range l.after.stays {
		if !m.placedAnew(ref.Name) && m.remains(ref.Name) && !slices.ContainsFunc(l.stays, func(own Ref) bool { return own.Name == ref.Name }) {
			l.stays = append(l.stays[:len(l.stays):len(l.stays)], ref)
		}
	}
	for _, ref := range l.stays {
		m.stay = append(m.stay, ref.Name)
	}
}

// tellNothing warns of a set-up that is as the one that it starts from, and in the same sequence.
func (l *layer) tellNothing(log *source.Log) {
	s, before := l.setup, l.after.setup
	if before == nil || log.Failed() || l.sequence != l.after.sequence || !slices.EqualFunc(l.shown, l.after.shown, sameName) ||
		!slices.EqualFunc(l.stays, l.after.stays, sameName) || !source.Equal(l.tree, l.after.tree) {
		return
	}
	log.Add(source.Diagnostic{Severity: source.Warning, Code: CodeChangesNothing, Span: s.Span, Path: s.Path, Setup: s.Name,
		Message: s.Name + " changes nothing: it is " + before.Name + " over again", Hint: "write what changes, or leave the set-up out"})
}

func sameName(a, b Ref) bool { return a.Name == b.Name }

// reportFaults logs the faults of a layer and returns its scene; nil for no layer.
func (l *layer) reportFaults(log *source.Log) *Scene {
	if l == nil {
		return nil
	}
	scene := l.read()
	for _, f := range l.faults {
		log.Add(f)
	}
	return scene
}

// read decodes the tree of a layer, where it is not at hand.
func (l *layer) read() *Scene {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.scene == nil {
		l.decode()
	}
	return l.scene
}

// judge finds the faults of a layer.
func (l *layer) judge() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if !l.known {
		l.decode()
	}
}

// release lets go of what was read.
func (l *layer) release() {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.scene = nil
}

func (l *layer) decode() {
	log := &source.Log{}
	s := &Scene{Tree: l.tree}
	if l.setup != nil {
		s.Setup, s.Sequence, s.Shown, s.Stays, s.Uncrossed, s.Exchanged = l.setup.Name, l.sequence, l.shown, l.stays, l.staid, l.swaps
	}
	c := &source.Context{Log: log, Setup: s.Setup, Feet: func(*source.File) bool { return l.feet }, Later: s.keepLater}
	sceneTable.read(s, l.tree, c, l.tree.Span)
	s.dropOtherSetups()
	s.withoutSun()
	s.Feet = l.feet
	l.files.measureLights(s.Lights, c)
	s.checkNames(l.lightNames(), c)
	if !l.kitLacks {
		s.checkCatalogueNames(l.kit, c)
	}
	l.scene = s
	if l.known {
		return // it was read before: the same faults
	}
	l.faults, l.known = log.All(), true
	for i := range l.faults {
		hintAtComment(&l.faults[i])
	}
	if l.after != nil {
		l.inherit()
	}
	l.faults = append(l.faults, l.merged...)
}

// lightNames are the lights of the file: of the scene, and of what its set-ups change.
func (l *layer) lightNames() map[string]bool {
	for l.after != nil {
		l = l.after
	}
	all := map[string]bool{}
	add := func(lights *source.Node) {
		if lights != nil {
			for i := range lights.Keys {
				all[lights.Keys[i].Name] = true
			}
		}
	}
	add(l.tree.Get("lights"))
	if setups := l.tree.Get("setups"); setups != nil {
		for i := range setups.Keys {
			add(setups.Keys[i].Value.Get("change").Get("lights"))
		}
	}
	return all
}

// hintAtComment explains an empty value whose text was taken for a comment: colour: #8a6040.
func hintAtComment(d *source.Diagnostic) {
	if d.Code != source.CodeEmptyValue || !d.Span.Valid() {
		return
	}
	line, _, _ := bytes.Cut(d.Span.File.Text[d.Span.End:], []byte("\n"))
	words := strings.Fields(string(line))
	if len(words) > 1 && words[0] == ":" && len(words[1]) > 1 && words[1][0] == '#' {
		d.Hint = `a # starts a comment: put the value in quotes, "` + words[1] + `"`
	}
}

// inherit gives faults back to the layer in which they arise first, and shows both places of a
// fault that only the combination has.
func (l *layer) inherit() {
	l.after.judge()
	known := make(map[source.DiagnosticKey]source.Diagnostic, len(l.after.faults))
	for _, f := range l.after.faults {
		known[f.Key()] = f
	}
	for i := range l.faults {
		f := &l.faults[i]
		if first, ok := known[f.Key()]; ok {
			*f = first
			continue
		}
		l.scene.ShowChange(f)
		l.showStanding(f)
	}
}

// showStanding adds to a fault in a change that changes keys of a place where the rest of that place stands.
func (l *layer) showStanding(f *source.Diagnostic) {
	if l.setup.Change == nil || !containsSpan(l.setup.Change.Span, f.Span) {
		return
	}
	before, patch := l.after.tree, l.setup.Change
	for name := range strings.SplitSeq(f.Path, ".") {
		before, patch = before.Get(name), patch.Get(name)
		if name != "at" {
			continue
		}
		if before != nil && patch != nil && before.Kind == source.Map && patch.Kind == source.Map && !slices.ContainsFunc(placeForms, func(form string) bool { return patch.Key(form) != nil }) {
			f.Related = append(f.Related, source.Related{Span: before.Span, Message: "the rest of the place stands here"})
		}
		return
	}
}
