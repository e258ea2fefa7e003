package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

var standInTable = tableOf("stand-in", "An opening that a light passes for, with the colour of what comes in by it. Where other light of the scene comes in by it, the name alone says it.", nil,
	into("opening", openingRef, func(s *StandIn, r Ref, _ *source.Node) { s.Thing = r },
		"The opening.", "street", "").needed(),
	value("colour", whiteKind, func(s *StandIn) *Given[ColourWord] { return &s.Colour },
		"The white of what comes in by it.", "7000 K", "").needed(),
)

// standIn reads a name, a white, or an opening with a white. What reads as a white names no thing.
var standIn = either("what it passes for", "desk-lamp", ofKind(source.Map), mapOf("what it passes for", "{opening: street, colour: 7000 K}", standInTable),
	either("what it passes for", "desk-lamp", isName,
		source.Converted(ref("a lamp, an opening or a white", "desk-lamp"), func(r Ref) StandIn { return StandIn{Thing: r} }),
		source.Converted(whiteKind, func(w ColourWord) StandIn { return StandIn{Colour: Given[ColourWord]{Value: w, Set: true}} })))

// isName says whether a node is a name and no white.
func isName(n *source.Node) bool {
	_, err := unit.ParseKelvin(n.Text)
	return n.Kind != source.Scalar || err != nil && isPath(n.Text) && !isNumber(n.Text)
}

func lightStandIn() []entry[Light] {
	return []entry[Light]{
		value("stands-for", standIn, func(l *Light) *Given[StandIn] { return &l.StandsFor },
			"What it passes for: a lamp of the scene at its level, an opening by the light that comes in there, a white, or both an opening and its white as a map. The readings say how far its colour, its direction and its softness at a face are from that, and which gels close the gap.",
			"desk-lamp", "itself"),
	}
}
