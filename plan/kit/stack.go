package kit

import (
	"slices"
	"strings"
)

// split gives the names of the modifiers of a stack, the one on the head first.
func split(name string) []string {
	parts := strings.Split(name, strings.TrimSpace(stackSign))
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	return parts
}

// stack finds the modifiers that a name asks for, each on the one before it.
func (b *builder) stack(name string) (all []*Modifier, ok bool) {
	for _, part := range split(name) {
		m, known := b.modifier(part)
		if !known {
			return nil, false
		}
		all = append(all, m)
	}
	return all, true
}

// cover puts a modifier on another.
func (b *builder) cover(under, m *Modifier) {
	if !m.goesOn(under) {
		hint := "nothing goes on it"
		if names := b.catalogue.covers(under); len(names) > 0 {
			hint = "it takes " + strings.Join(names, ", ")
		}
		b.fault(b.choice.ModifierSpan, CodeNoFit, hint, "%q does not fit on %q", m.Name, under.Name)
		return
	}
	b.pass(m)
}

// goesOn reports whether a modifier goes on another.
func (m *Modifier) goesOn(under *Modifier) bool {
	return under.Front != "" && slices.Contains(m.Fits, under.Front)
}

// covers lists what goes on a modifier.
func (c *Catalogue) covers(under *Modifier) (names []string) {
	for _, m := range c.Modifiers {
		if m.goesOn(under) {
			names = append(names, m.Name)
		}
	}
	return names
}

// onWhat is the hint for a modifier that does not fit a unit: what it would go on there, or what the unit takes.
func (b *builder) onWhat(u *Unit, m *Modifier) string {
	for _, under := range b.catalogue.Modifiers {
		if u.accepts(under) && m.goesOn(under) {
			return "it goes on another modifier; write " + under.Name + stackSign + m.Name
		}
	}
	return b.takes(u)
}

// takes is a hint that lists what may go on a unit.
func (b *builder) takes(u *Unit) string {
	names := b.catalogue.fronts(u)
	if len(names) == 0 {
		return "leave the modifier out"
	}
	return "it takes " + strings.Join(names, ", ")
}

// fronts lists what goes on the front of a unit, `bare` for nothing, its default first.
func (c *Catalogue) fronts(u *Unit) []string {
	var names []string
	if u.output("") != nil || u.Spread != "" {
		names = append(names, Unmodified)
	}
	for _, m := range c.Modifiers {
		if u.output(m.Name) != nil || u.accepts(m) {
			names = append(names, m.Name)
		}
	}
	first := u.Modifier
	if first == "" {
		first = Unmodified
	}
	if i := slices.Index(names, first); i > 0 {
		names = slices.Insert(slices.Delete(names, i, i+1), 0, first)
	}
	return names
}

// Fitting lists the modifiers that a unit can be used with, `bare` among them, its default first; behind each what goes on it.
func (c *Catalogue) Fitting(u *Unit) (names []string) {
	for _, front := range c.fronts(u) {
		names = append(names, front)
		if m := c.Modifier(front); m != nil {
			for _, cover := range c.covers(m) {
				names = append(names, front+stackSign+cover)
			}
		}
	}
	return names
}
