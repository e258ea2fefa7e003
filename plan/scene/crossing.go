package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// verdict says of a light, a piece of grip or a camera whether it goes across.
func (m *mirror) verdict(name string) verdict {
	v, known := m.verdicts[name]
	if known || m.asked[name] { // of what stands by itself the passes tell, which resolve places
		return v
	}
	m.asked[name] = true
	v = m.judge(name)
	m.verdicts[name] = v
	return v
}

func (m *mirror) judge(name string) verdict {
	n := m.node(name)
	places := placesOf(n)
	if len(places) == 0 {
		return verdict{why: "has no place", span: n.Span}
	}
	at := places[0]
	if m.placedAnew(name) {
		return verdict{goes: true}
	}
	if slices.Contains(m.stay, name) {
		return verdict{why: "stays where it stood", key: "at", span: at.Span}
	}
	for _, key := range []string{"at", "track", "aim", "looks", "faces", "mount"} {
		if mark := m.lost(n.Get(key)); mark != "" {
			who, part, _ := strings.Cut(mark, ".")
			return verdict{why: "is by " + mark + ", and " + m.pairs[who] + " has no mark " + part, key: key, span: n.Get(key).Span}
		}
	}
	if held := n.Get("mount"); held != nil && held.Kind == source.Map && held.Key(string(term.Boom)) == nil && held.Key(string(term.Lift)) == nil {
		return verdict{why: "is held by what stays", key: "mount", span: held.Span}
	}
	for _, p := range places {
		if v := m.place(p); !v.goes {
			return v
		}
	}
	return verdict{goes: true}
}

// placedAnew says whether the change of the set-up gives a thing a place of its own: the rest of it goes across.
func (m *mirror) placedAnew(name string) bool {
	for _, section := range crossing {
		at := m.change.Get(section).Get(name).Get("at")
		if at != nil && (at.Kind == source.List || firstOf(at, placeForms...) != nil) {
			return true
		}
	}
	return false
}

// remains says whether the change of the set-up leaves a thing there.
func (m *mirror) remains(name string) bool {
	if m.change == nil {
		return true
	}
	_, gone := struck(m.change, name)
	return !gone
}

// node is a thing of the sections that go across, nil for any other.
func (m *mirror) node(name string) *source.Node {
	for _, section := range crossing {
		if n := m.tree.Get(section).Get(name); n != nil {
			return n
		}
	}
	return nil
}

// placesOf are the places that say where a thing is: its own, or those of its track.
func placesOf(n *source.Node) (places []*source.Node) {
	if at := n.Get("at"); at != nil {
		places = append(places, at)
	}
	if track := n.Get("track"); track != nil {
		places = append(places, track.Items...)
	}
	if base := n.Get("mount").Get("base"); base != nil {
		places = append(places, base)
	}
	return places
}

// place says of a place whether it goes across: one by somebody of a pair or toward them, or by what goes across
// itself. What stands by a light or a piece of grip that stays belongs to it.
func (m *mirror) place(at *source.Node) verdict {
	if at.Kind == source.List {
		return verdict{why: "stands in coordinates", key: "at", span: at.Span}
	}
	by := firstOf(at, "by", "from")
	if by == nil {
		return verdict{why: standsAt(at), key: "at", span: at.Span}
	}
	if m.isGear(by.Text) && !m.verdict(by.Text).goes {
		return verdict{why: "stands by " + by.Text + ", which stays", key: "at", span: at.Span}
	}
	for _, end := range []*source.Node{by, at.Get("toward")} {
		if end != nil && m.moves(end.Text) {
			return verdict{goes: true}
		}
	}
	return verdict{why: "stands by " + by.Text + ", which stays", key: "at", span: at.Span}
}

// firstOf is the value of the first of some keys that a map has, or nil.
func firstOf(n *source.Node, keys ...string) *source.Node {
	for _, key := range keys {
		if v := n.Get(key); v != nil {
			return v
		}
	}
	return nil
}

// standsAt says what a place is by that is by nothing that goes across.
func standsAt(at *source.Node) string {
	switch {
	case at.Get("opening") != nil:
		return "stands at the opening " + at.Get("opening").Text
	case at.Get("wall") != nil:
		return "stands along " + at.Get("wall").Text
	case at.Get("top") != nil:
		return "stands on " + at.Get("top").Text
	}
	return "stands in coordinates"
}

// isGear says whether a name is that of a light or a piece of grip.
func (m *mirror) isGear(name string) bool {
	return m.tree.Get("lights").Get(name) != nil || m.tree.Get("grip").Get(name) != nil
}

// moves says whether what is by a name is elsewhere in the reverse: somebody of a pair, what goes across, and a camera
// that looks at somebody else.
func (m *mirror) moves(name string) bool {
	if m.other(name) != name {
		return true
	}
	n := m.node(name)
	if n == nil {
		return false
	}
	if m.verdict(name).goes {
		return true
	}
	return m.tree.Get("cameras").Get(name) != nil && !slices.Contains(m.stay, name) && m.looksAcross(n)
}
