package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
)

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
