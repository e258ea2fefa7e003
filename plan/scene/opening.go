package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

var openingForms = term.Words(term.Openings)

var openingTable = tableOf("opening", "A window, a door or a gap in a wall.", openingForms, append(openingKeys(), openingLater()...)...).meant(otherOpeningKeys)

func openingKeys() []entry[Opening] {
	form := func(kind term.Opening, doc string) entry[Opening] {
		return into(string(kind), wallOf, func(o *Opening, r Ref, _ *source.Node) { o.Kind, o.Wall = kind, r }, doc, "kitchen.left",
			"")
	}
	level := quantity("a height", "0.9", lengths, between(-maxHeight, maxHeight))
	return []entry[Opening]{
		form(term.Window, "A window, by its wall."),
		form(term.Door, "A door, by its wall."),
		form(term.Gap, "A hole without a leaf, by its wall."),
		into("along", alongWall("a distance along a wall", "1.3", between(0, maxRoom).lower(fromLeftEnd)),
			func(o *Opening, a Along, _ *source.Node) { o.Along = a },
			"From the wall's left end, as seen from inside, to the near edge; or `centre`.", "1.3", "centre"),
		value("width", quantity("a width", "1.4", lengths, between(minRoom, maxRoom)),
			func(o *Opening) *Given[float64] { return &o.Width },
			"Clear width.", "1.4", inMetres(DefaultDoorWidth, 1)+" for a door; a window and a gap need theirs"),
		value("sill", level, func(o *Opening) *Given[float64] { return &o.Sill },
			"Lower edge, above the floor of the room.", "0.9", inMetres(DefaultWindowSill, 1)+" for a window, else the floor"),
		value("head", level, func(o *Opening) *Given[float64] { return &o.Head },
			"Upper edge, above the floor of the room.", "2.1", inMetres(DefaultWindowHead, 1)+" for a window, "+inMetres(DefaultDoorHead, 1)+" for a door"),
		value("panes", pair("a count of panes [across, up]", "[2, 2]", source.Int("a count of panes", 1, 20)),
			func(o *Opening) *Given[[2]int] { return &o.Panes },
			"How many panes across and up. The bars between them, as wide as the glass says, throw their shadows.", "[2, 2]", "[1, 1]").of(string(term.Window), string(term.Door)),
		value("hinge", source.OneOf("a hinge", "left", "right"), func(o *Opening) *Given[string] { return &o.Hinge },
			"The side of the hinge, as seen from inside the room.", "left", "left").of(string(term.Window), string(term.Door)),
		value("swing", source.OneOf("a swing", "in", "out"), func(o *Opening) *Given[string] { return &o.Swing },
			"Whether the leaf opens into the room.", "in", "in").of(string(term.Window), string(term.Door)),
		value("ajar", quantity("an opening angle", "75", degrees, between(0, 180)),
			func(o *Opening) *Given[float64] { return &o.Ajar },
			"How far the leaf stands open.", "75", "0, closed").of(string(term.Window), string(term.Door)),
		value("glass", surface, func(o *Opening) *Given[string] { return &o.Glass },
			"Glass of the panes, by its name in the kit.", "glass", "clear glass in a window").of(string(term.Window), string(term.Door)),
		into("dressing", dressingList, func(o *Opening, v []Dressing, _ *source.Node) { o.takeDressing(v) },
			"Curtains and blinds, from the room outward.",
			"[{cloth: sheer, drawn: [60 %, 60 %]}, {blind: 50 mm, tilt: 45}]", "none"),
		into("gels", gelList, func(o *Opening, v []Ref, _ *source.Node) { o.Gels = v; o.noteCatalogueName("gels", "gel", v...) },
			"Gels on the glass.", "[1/2 CTO]", "none").of(string(term.Window), string(term.Door)),
		value("escape", source.Bool("an escape"), func(o *Opening) *Given[bool] { return &o.Escape },
			"Whether it is a way out that must stay free.", "true", "false"),
	}
}

// outside is what is seen through an opening.
type outside struct {
	luminance float64
	colour    ColourWord
}

var outsideTable = tableOf("outside", "What is seen through an opening.", nil,
	into("luminance", quantity("a luminance", "800", numbers, between(0, 1e6)),
		func(o *outside, v float64, _ *source.Node) { o.luminance = v },
		"Its luminance, cd/m².", "800", "").needed(),
	into("colour", whiteKind, func(o *outside, v ColourWord, _ *source.Node) { o.colour = v },
		"Its white.", "6500 K", "daylight 6500 K"),
)

func openingLater() []entry[Opening] {
	return []entry[Opening]{
		raw("outside", mapOf("an outside", "{luminance: 800}", outsideTable),
			func(o *Opening) **source.Node { return &o.Outside },
			"What is seen through it.", "{luminance: 800, colour: 6500 K}", "nothing"),
	}
}

// checkOpening looks at what the keys of an opening say together.
func checkOpening(o *Opening, n *source.Node, c *source.Context) {
	if (o.Kind == term.Window || o.Kind == term.Gap) && n.Key("width") == nil {
		c.ErrorAt(c.Here(n), source.CodeMissingKey, "add width: 1.2", "a %s needs a width", o.Kind)
	}
	if o.Sill.Set && o.Head.Set && o.Head.Value <= o.Sill.Value {
		errorWith(c, o.Head.Span, CodeContradicts, "swap sill and head, or make the head higher", o.Sill.Span, "the sill is here",
			"the head of an opening lies above its sill")
	}
}
