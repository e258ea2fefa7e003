package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

var gripForms = term.Words(term.Grips)

var gripTable = tableOf("piece of grip", "A thing that shapes light.", gripForms,
	gripForm(term.Flag, "A black that stops light: width, height."),
	gripForm(term.Card, "A white that returns light: width, height."),
	gripForm(term.Frame, "A frame with cloth: width, height."),
	gripForm(term.Net, "A net that dims: width, height."),
	gripForm(term.Silver, "A board that mirrors and returns light: width, height."),
	value("at", place, func(g *Grip) *Given[Place] { return &g.At },
		"Its centre, in plan.", "{by: ruth, turn: 70 own-left, distance: 1}", "").needed(),
	value("height", height, func(g *Grip) *Given[float64] { return &g.Height },
		"Height of its centre above the floor.", "1.4", "the eyes of the person it stands by, else of the first, else "+inMetres(DefaultEyeLevel, 1)),
	value("faces", aim, func(g *Grip) *Given[Aim] { return &g.Faces }, "What it faces.", "ruth", "the person it stands by, else the first, else down the sheet"),
	value("tilt", elevation, func(g *Grip) *Given[float64] { return &g.Tilt },
		"Degrees that its face looks up.", "-20", "as it faces"),
	value("roll", bearing, func(g *Grip) *Given[float64] { return &g.Roll },
		"Turn in its own plane, clockwise seen from behind.", "45", "0, its width level"),
	value("surface", surface, func(g *Grip) *Given[string] { return &g.Surface },
		"Material of a flag, card or silver.", "black", DefaultFlag+" of a flag, "+DefaultCard+" of a card").of(term.Words([]term.Grip{term.Flag, term.Card, term.Silver})...),
	value("cloth", text("a cloth", "half-diffusion"), func(g *Grip) *Given[string] { return &g.Cloth },
		"Cloth of a frame or net, by its name in the kit.", "half-diffusion", "none").of(term.Words([]term.Grip{term.Frame, term.Net})...),
	value("mount", mount, func(g *Grip) *Given[Mount] { return &g.Mount }, "What holds it.", "stand", string(term.Stand)),
	value("note", text("a note", "cut the wall"), func(g *Grip) *Given[string] { return &g.Note },
		"A line for the crew.", "cut the wall", "none"),
)

var gripSize = pair("a size [width, height]", "[1.2, 1.2]", quantity("a side", "1.2", lengths, between(0.005, 50)))

func gripForm(kind term.Grip, doc string) entry[Grip] {
	return into(string(kind), gripSize, func(g *Grip, v [2]float64, _ *source.Node) { g.Kind, g.Size = kind, v }, doc, "[1.2, 1.2]",
		"")
}
