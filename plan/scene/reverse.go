package scene

import (
	"slices"

	"scrimshaw/plan/source"
)

// A reverse is made of the words of the set-up that it is of, before anything is resolved: it is that set-up in a mirror
// between the two of each pair. Of lights, grip and cameras each one that stands by somebody of a pair, or by what does, goes
// across as a whole: names are exchanged, turns go to the other side, rolls, doors and cuts change hands. What stands in
// coordinates, at a wall, at an opening or on a top stays as a whole, for no word of it says where its counterpart would be; of a camera
// the look is exchanged even so, since a reverse is the picture of the other one. The set and the people stay, and so does a camera
// of a pair.

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
