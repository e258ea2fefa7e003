package scene

import (
	"slices"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

var (
	mountWords = term.Words(term.PlainMounts)  // the mounts that a word says
	mountForms = term.Words(term.MappedMounts) // those that a map says
)

// mountTable is a mount that is written as a map. A word alone is stand, floor, hand or ceiling.
var mountTable = tableOf("mount", "What holds a light or a piece of grip. It may also be the word stand, floor, hand or ceiling.", mountForms,
	into(string(term.Stand), ref("a deck", "riser"), func(m *Mount, r Ref, _ *source.Node) { m.Kind, m.On = term.Stand, r },
		"A stand on a deck.", "riser", ""),
	into(string(term.Boom), quantity("an arm", "1.6", lengths, between(0.01, 20)),
		func(m *Mount, v float64, _ *source.Node) { m.Kind, m.Arm = term.Boom, v },
		"An arm, by its length.", "1.6", ""),
	value("base", place, func(m *Mount) *Given[Place] { return &m.Base },
		"Where the stand of the boom is.", "[2.6, 3.3]", "behind what it holds, the arm's length away, or to a side where that has no room").of(string(term.Boom)),
	into(string(term.Clamp), ref("a thing", "shelf"), func(m *Mount, r Ref, _ *source.Node) { m.Kind, m.On = term.Clamp, r },
		"Clamped to a thing.", "shelf", ""),
	into(string(term.Pole), pair("a pair of walls", "[kitchen.left, kitchen.right]", wallOf),
		func(m *Mount, v [2]Ref, _ *source.Node) { m.Kind, m.Walls = term.Pole, v[:] },
		"A pole between two walls.", "[kitchen.left, kitchen.right]", ""),
	into(string(term.Wall), wallOf, func(m *Mount, r Ref, _ *source.Node) { m.Kind, m.Walls = term.Wall, []Ref{r} },
		"A plate on a wall. A tube on it lies along the wall, level, unless `roll` is given.", "kitchen.left", ""),
	into(string(term.Lift), quantity("a lift's height", "4", lengths, between(0.05, 50)),
		func(m *Mount, v float64, _ *source.Node) { m.Kind, m.Arm = term.Lift, v },
		"A lift, by its working height.", "4", ""),
)

// mountLists names the forms of a mount in messages.
const mountLists = "a mount is stand, floor, hand or ceiling, or a map by stand, boom, clamp, pole, wall or lift"

// mount is what holds a thing, in any of its forms.
var mount = source.Reader[Mount]{
	What: "a mount", Like: "stand", Read: readMount,
	Schema: defined("mount"),
}

func readMount(n *source.Node, c *source.Context) (Mount, bool) {
	m := Mount{Span: n.Span}
	switch {
	case n.Kind == source.Map:
		return m, mountTable.read(&m, n, c, n.Span)
	case n.Kind != source.Scalar:
		c.Error(n, source.CodeWrongType, "write it like stand", "%s, not %s", mountLists, n.Kind)
	case slices.Contains(mountWords, n.Text):
		m.Kind = term.Mount(n.Text)
		return m, true
	default:
		c.Error(n, source.CodeUnknownWord, mountHint(n.Text), "%q is no mount: %s", n.Text, mountLists)
	}
	return m, false
}

// mountHint shows how to write a mount that was named only, or offers the nearest word.
func mountHint(word string) string {
	if f := mountTable.Field(word); f != nil {
		return "write it like {" + word + ": " + f.Example + "}"
	}
	if near := source.DidYouMean(word, append(slices.Clone(mountWords), mountForms...)); near != "" {
		return near
	}
	return "write it like stand"
}
