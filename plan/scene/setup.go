package scene

import (
	"slices"

	"scrimshaw/plan/source"
)

// setupTable is a set-up as it is listed. Its change is read where it meets the scene.
var setupTable = tableOf("set-up", "One set-up: its cameras, and what it changes.", nil,
	into("camera", oneOrMore("a list of cameras", "[A, B]", ref("a camera", "A"), 26),
		func(s *Setup, v []Ref, _ *source.Node) { s.Cameras = v },
		"Its camera, or cameras.", "[A, B]", "every camera"),
	into("after", ref("a set-up", "wide"), func(s *Setup, r Ref, _ *source.Node) { s.After = r },
		"The set-up that it starts from.", "wide", "the scene"),
	value("sequence", sequenceWord, func(s *Setup) *Given[string] { return &s.Sequence },
		"Which set-ups are cut together: those of one name. Matching holds each to the first of its sequence, and none to one of another.",
		"night", "that of the set-up that it starts from; of one that starts from the scene, that of the first"),
	change(),
	into("stays", oneOrMore("a list of names", "[soft]", anything, maxThings),
		func(s *Setup, v []Ref, _ *source.Node) { s.Stays = v },
		"Things that stay where they stood in the set-up before, though what they follow moves.", "[soft]", "none"),
	into("reverse", mapOf("a reverse", "{of: close}", reverseTable),
		func(s *Setup, v Reverse, n *source.Node) { s.Reverse, s.Reversed = n, &v },
		reverseTable.Doc, "{of: close, swap: [[ada, noor]]}", "none"),
	cueChange(),
).elsewhere(inChange).meant(otherSetupKeys)

// inChange says that a key of the scene belongs under the change of a set-up.
func inChange(key string, _ *source.Context) string {
	if slices.ContainsFunc(parts(), func(p part) bool { return p.name() == key }) || key == "exposure" {
		return "put it under change: {" + key + ": {…}}"
	}
	return ""
}

// change is the patch of a set-up.
func change() entry[Setup] {
	return entry[Setup]{Field: source.Field[Setup]{
		Key: "change", Doc: "What changes: a scene with only the changed values. `strike` in place of a thing removes it; `+gels` and `-gels` add and take. An `at` without from, by, wall, opening or top changes keys of the place that stands, as in {distance: 1.5}; any other is a place of its own.",
		Example: "{lights: {soft: {level: 14 %}}}", Default: "nothing",
		Schema: defined("change"),
		Read: func(s *Setup, n *source.Node, c *source.Context) {
			if n.Kind != source.Map {
				c.Error(n, source.CodeWrongType, "write it like {lights: {soft: {level: 14 %}}}",
					"a change is a map of what changes, not %s", n.Kind)
				return
			}
			s.Change = n
		},
	}}
}

var reverseTable = tableOf("reverse", "The other side of a set-up, in place of `after`: that set-up with the two of each pair exchanged wherever lights, grip and cameras name them. "+
	"What stands by one of a pair, or by what does, goes across as a whole: camera-left becomes camera-right, own-left own-right, a bare turn or roll changes its sign, leaves and cuts change hands. "+
	"People and the set stay, and so does what stands in coordinates, at a wall, at an opening or on a top, of a camera all but its `looks`: the sheet says which. A `change` comes on top.", nil,
	into("of", ref("a set-up", "close"), func(r *Reverse, v Ref, _ *source.Node) { r.Of = v },
		"The set-up that is reversed. Its cameras roll where the reverse names none.", "close", "").needed(),
	into("swap", source.ListOf("a list of pairs", "[[ada, noor]]", pair("a pair of people, cameras or marks", "[ada, noor]", ref("a person, a camera or a mark", "ada")), 1, 50),
		func(r *Reverse, v [][2]Ref, _ *source.Node) { r.Swap = v },
		"What changes places: two people with the marks that both have, two cameras, two marks.", "[[ada, noor]]", "the people at the ends of the line of action"),
)
