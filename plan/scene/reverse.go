package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

// A reverse is made of the words of the set-up that it is of, before anything is resolved: it is that set-up in a mirror
// between the two of each pair. Of lights, grip and cameras each one that stands by somebody of a pair, or by what does, goes
// across as a whole: names are exchanged, turns go to the other side, rolls, doors and cuts change hands. What stands in
// coordinates, at a wall, at an opening or on a top stays as a whole, for no word of it says where its counterpart would be; of a camera
// the look is exchanged even so, since a reverse is the picture of the other one. The set and the people stay, and so does a camera
// of a pair.

// Reverse is a set-up made from another by exchanging the two of each pair.
type Reverse struct {
	Of   Ref
	Swap [][2]Ref // none: the ends of the line of action
}

// Uncrossed is a thing that a reverse leaves where it stood, or a value of one that counts along the sheet.
type Uncrossed struct {
	Name string // of the thing
	Why  string // "stands at the opening street"
	Span source.Span
}

// Exchange says of whom somebody takes the place, by name.
type Exchange map[string]string

// Of is who takes the place of somebody; they themselves, where nobody does.
func (e Exchange) Of(name string) string {
	if other := e[name]; other != "" {
		return other
	}
	return name
}

// after is the exchange that comes of this one after another.
func (e Exchange) after(first Exchange) Exchange {
	both := Exchange{}
	for _, names := range []Exchange{first, e} {
		for name := range names {
			if to := e.Of(first.Of(name)); to != name {
				both[name] = to
			}
		}
	}
	return both
}

// mirror reverses the tree of a set-up.
type mirror struct {
	tree     *source.Node
	pairs    Exchange
	change   *source.Node // of the set-up; nil: none
	stay     []string     // things that are frozen where they stand
	asked    map[string]bool
	verdicts map[string]verdict
	told     []Uncrossed
	crossed  []string // things for which it is the other one of a pair that comes first
}

// verdict says whether a thing goes across, and where not, why.
type verdict struct {
	goes     bool
	why, key string // key: of what says why
	span     source.Span
}

// crossing are the sections whose things go across.
var crossing = []string{"lights", "grip", "cameras"}

// reversed is the tree with all that goes across.
func (m *mirror) reversed() *source.Node {
	out := *m.tree
	out.Keys = slices.Clone(out.Keys)
	for i := range out.Keys {
		section := &out.Keys[i]
		if section.Value.Kind != source.Map || !slices.Contains(crossing, section.Name) {
			continue
		}
		things := *section.Value
		things.Keys = slices.Clone(things.Keys)
		for k := range things.Keys {
			things.Keys[k].Value = m.thing(section.Name, things.Keys[k].Name, things.Keys[k].Value)
		}
		section.Value = &things
	}
	return &out
}

// thing is one thing as the reverse has it.
func (m *mirror) thing(section, name string, n *source.Node) *source.Node {
	if n.Kind != source.Map || m.pairs[name] != "" {
		return n
	}
	v := m.verdict(name)
	switch {
	case v.goes:
		m.crossed = append(m.crossed, name)
		return m.across(section, name, n)
	case section == "cameras" && !slices.Contains(m.stay, name):
		return m.turned(name, n, v)
	}
	m.tell(section, name, v)
	return n
}

// turned is a camera that stays where it is, and looks at the other one of a pair.
func (m *mirror) turned(name string, n *source.Node, v verdict) *source.Node {
	if !m.looksAcross(n) {
		return n
	}
	m.crossed = append(m.crossed, name)
	v.why += ": its look alone is exchanged"
	m.tell("cameras", name, v)
	return mapped(n, func(k *source.Key) {
		if k.Name == "looks" {
			k.Value = m.words(k.Value)
		}
	})
}

// looksAcross says whether a camera looks at somebody of a pair.
func (m *mirror) looksAcross(n *source.Node) bool {
	looks := n.Get("looks")
	if looks == nil {
		return m.pairs[m.first()] != ""
	}
	return m.mentions(looks) && m.lost(looks) == ""
}

// first is the name of the first person, whom things are for that say nothing else.
func (m *mirror) first() string {
	if people := m.tree.Get("people"); people != nil && len(people.Keys) > 0 {
		return people.Keys[0].Name
	}
	return ""
}

// across is a thing that goes across, all of it.
func (m *mirror) across(section, name string, n *source.Node) *source.Node {
	m.tellFixed(section, name, n)
	return mapped(n, func(k *source.Key) {
		switch k.Name {
		case "at", "aim", "looks", "faces", "mount", "track", "seen":
			k.Value = m.words(k.Value)
		case "role":
			k.Value = m.roles(k.Value)
		case "roll":
			k.Value = otherSign(k.Value)
		case "barndoors":
			k.Value = otherDoors(k.Value)
		case "cuts":
			k.Value = otherCuts(k.Value)
		}
	})
}

// tellFixed tells what of a thing that goes across counts along the sheet, which no exchange of words turns.
func (m *mirror) tellFixed(section, name string, n *source.Node) {
	if shift := n.Get("at").Get("shift"); shift != nil {
		m.tell(section, name, verdict{why: "goes across, and its shift counts along the sheet as before", key: "at", span: shift.Span})
	}
	for _, key := range []string{"aim", "looks", "faces"} {
		aim := n.Get(key)
		if aim == nil || m.mentions(aim) || aim.Kind == source.Scalar && !isNumber(aim.Text) {
			continue
		}
		m.tell(section, name, verdict{why: "goes across, and its " + key + " stays as it is on the sheet", key: key, span: aim.Span})
	}
}

// tell notes what does not go across, where the change of the set-up does not say it anew.
func (m *mirror) tell(section, name string, v verdict) {
	if !m.remains(name) || v.key != "" && m.change.Get(section).Get(name).Get(v.key) != nil {
		return
	}
	m.told = append(m.told, Uncrossed{name, v.why, v.span})
}

// words are the names and the turns of a place, an aim or a mount as the reverse has them.
func (m *mirror) words(n *source.Node) *source.Node {
	switch n.Kind {
	case source.Scalar:
		return scalarOf(n, m.other(n.Text))
	case source.List:
		out := *n
		out.Items = slices.Clone(n.Items)
		for i, item := range out.Items {
			out.Items[i] = m.words(item)
		}
		return &out
	case source.Map:
		return mapped(n, func(k *source.Key) {
			if k.Name == "turn" {
				k.Value = otherTurn(k.Value)
				return
			}
			k.Value = m.words(k.Value)
		})
	}
	return n
}

// roles are what a light does by person.
func (m *mirror) roles(n *source.Node) *source.Node {
	return mapped(n, func(k *source.Key) { k.Name = m.pairs.Of(k.Name) })
}

// other is the counterpart of a name; the name itself, where it has none.
func (m *mirror) other(name string) string {
	if to := m.pairs[name]; to != "" {
		return to
	}
	who, mark, dotted := strings.Cut(name, ".")
	to := m.pairs[who]
	if !dotted || to == "" || !m.marked(to, mark) || m.pairs[to+"."+mark] != "" {
		return name
	}
	return to + "." + mark
}

// marked says whether somebody has a mark.
func (m *mirror) marked(who, mark string) bool {
	return m.tree.Get("people").Get(who).Get("marks").Get(mark) != nil
}

// mentions says whether a value names somebody or something of a pair.
func (m *mirror) mentions(n *source.Node) bool {
	return anyName(n, func(name string) bool { return m.other(name) != name }) || m.lost(n) != ""
}

// lost is a mark in a value of which the other one of the pair has no counterpart; "" for none.
func (m *mirror) lost(n *source.Node) (mark string) {
	anyName(n, func(name string) bool {
		who, _, dotted := strings.Cut(name, ".")
		if dotted && m.pairs[who] != "" && m.other(name) == name {
			mark = name
		}
		return mark != ""
	})
	return mark
}

// anyName says whether one of the words in a value is as is says.
func anyName(n *source.Node, is func(name string) bool) bool {
	if n == nil {
		return false
	}
	if n.Kind == source.Scalar {
		return is(n.Text)
	}
	return slices.ContainsFunc(n.Items, func(item *source.Node) bool { return anyName(item, is) }) ||
		slices.ContainsFunc(n.Keys, func(k source.Key) bool { return k.Name != "turn" && anyName(k.Value, is) })
}
