package scene

import (
	"slices"

	"scrimshaw/plan/source"
)

// mergeSetups lays the set-ups out, each after the one it starts from.
func (d *Document) mergeSetups(log *source.Log) {
	setups := d.base.scene.Setups
	for i := range setups {
		d.Setups = append(d.Setups, setups[i].Name)
	}
	d.sequences = sequences(setups)
	rules := changeRules()
	for i := range setups {
		d.mergeSetup(&setups[i], nil, rules, log)
	}
}

// mergeSetup lays out a set-up, after the one it starts from. waiting are the set-ups that wait
// for it. It returns nil after a fault of the chain, which is reported once.
func (d *Document) mergeSetup(s *Setup, waiting []*Setup, rules *source.Rules, log *source.Log) *layer {
	if l, done := d.layers[s.Name]; done {
		return l
	}
	if i := slices.Index(waiting, s); i >= 0 {
		tellCycle(waiting[i:], log)
		return nil
	}
	var l *layer
	if after := d.after(s, append(waiting, s), rules, log); after != nil {
		l = after.derive(s, d.sequences[s.Name], rules)
	}
	d.layers[s.Name] = l
	return l
}

// after is the layer that a set-up starts from.
func (d *Document) after(s *Setup, waiting []*Setup, rules *source.Rules, log *source.Log) *layer {
	from, key := s.From(), s.startKey()
	if s.Reversed != nil && s.After.Name != "" {
		log.Add(source.Diagnostic{Severity: source.Error, Code: CodeWrongKey, Span: s.After.Span, Path: s.Path + ".after", Setup: s.Name,
			Message: s.Name + " starts from " + s.After.Name + " and from the reverse of " + from.Name, Hint: "keep after or reverse",
			Related: []source.Related{{Span: from.Span, Message: "the reverse is of this one"}}})
		return nil
	}
	if from.Name == "" {
		return d.base
	}
	if before := d.base.scene.setup(from.Name); before != nil {
		return d.mergeSetup(before, waiting, rules, log)
	}
	others := slices.DeleteFunc(slices.Clone(d.Setups), func(name string) bool { return name == s.Name })
	hint := source.Offer(from.Name, others)
	if hint == "" {
		hint = "leave " + key + " out, and the set-up starts from the scene"
	}
	log.Add(source.Diagnostic{
		Severity: source.Error, Code: CodeUnknownSetup, Span: from.Span, Path: s.Path + "." + key, Setup: s.Name,
		Message: "there is no set-up " + from.Name, Hint: hint,
	})
	return nil
}

// startKey is the key that says what a set-up starts from.
func (s *Setup) startKey() string {
	if s.Reversed != nil {
		return "reverse"
	}
	return "after"
}

// startWords say how a set-up starts from another.
func (s *Setup) startWords() string {
	if s.Reversed != nil {
		return "the reverse of"
	}
	return "after"
}

// tellCycle says which set-ups wait for each other.
func tellCycle(round []*Setup, log *source.Log) {
	first := round[0]
	words := first.Name
	var related []source.Related
	for i, s := range round {
		next := round[(i+1)%len(round)]
		words += " " + s.startWords() + " " + next.Name
		if i > 0 {
			related = append(related, source.Related{Span: s.From().Span, Message: s.Name + " is " + s.startWords() + " " + next.Name})
		}
	}
	message, hint := "these set-ups wait for each other: "+words, "leave one "+first.startKey()+" out"
	if len(round) == 1 {
		message, hint = first.Name+" starts from itself", "name another set-up, or leave "+first.startKey()+" out"
	}
	log.Add(source.Diagnostic{
		Severity: source.Error, Code: CodeSetupCycle, Span: first.From().Span, Path: first.Path + "." + first.startKey(), Setup: first.Name, Related: related,
		Message: message, Hint: hint,
	})
}
