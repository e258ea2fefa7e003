package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// mergeSetups lays the set-ups out, each after the one it starts from.
func (d *Document) mergeSetups(log *source.Log) {
	setups := d.base.scene.Setups
	for i := range setups {
		d.Setups = append(d.Setups, setups[i].Name)
	}
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
		l = after.derive(s, rules)
	}
	d.layers[s.Name] = l
	return l
}

// after is the layer that a set-up starts from.
func (d *Document) after(s *Setup, waiting []*Setup, rules *source.Rules, log *source.Log) *layer {
	if s.After.Name == "" {
		return d.base
	}
	if before := d.base.scene.setup(s.After.Name); before != nil {
		return d.mergeSetup(before, waiting, rules, log)
	}
	others := slices.DeleteFunc(slices.Clone(d.Setups), func(name string) bool { return name == s.Name })
	hint := source.Offer(s.After.Name, others)
	if hint == "" {
		hint = "leave after out, and the set-up starts from the scene"
	}
	log.Add(source.Diagnostic{
		Severity: source.Error, Code: CodeUnknownSetup, Span: s.After.Span, Path: s.Path + ".after", Setup: s.Name,
		Message: "there is no set-up " + s.After.Name, Hint: hint,
	})
	return nil
}

// tellCycle says which set-ups wait for each other.
func tellCycle(round []*Setup, log *source.Log) {
	first := round[0]
	names := []string{first.Name}
	var related []source.Related
	for i, s := range round {
		next := round[(i+1)%len(round)]
		names = append(names, next.Name)
		if i > 0 {
			related = append(related, source.Related{Span: s.After.Span, Message: s.Name + " is after " + next.Name})
		}
	}
	log.Add(source.Diagnostic{
		Severity: source.Error, Code: CodeSetupCycle, Span: first.After.Span, Path: first.Path + ".after", Setup: first.Name, Related: related,
		Message: "these set-ups wait for each other: " + strings.Join(names, " after "), Hint: "leave one after out",
	})
}
