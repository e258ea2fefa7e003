package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

var gripForms = term.Words(term.Grips)

var gripTable = tableOf("piece of grip", "A thing that shapes light.", gripForms,
	gripForm(term.Flag, "A black that stops light: width, height"),
	gripForm(term.Card, "A white that returns light: width, height"),
	gripForm(term.Frame, "A frame with cloth: width, height"),
	gripForm(term.Net, "A net that dims: width, height"),
	gripForm(term.Silver, "A board that mirrors and returns light: width, height"),
	value("at", place, func(g *Grip) *Given[Place] { return &g.At },
		"Its centre, in plan.", "{by: ruth, turn: 70 own-left, distance: 1}", "").needed(),
	value("height", height, func(g *Grip) *Given[float64] { return &g.Height },
		"Height of its centre above the floor.", "1.4", "the eyes of the person it stands by, else of the first, else "+inMetres(DefaultEyeLevel, 1)),
	value("faces", faces, func(g *Grip) *Given[Aim] { return &g.Faces }, "What it faces; a point `[x, y]` level.", "ruth", "the person it stands by, else the first, else down the sheet"),
	value("tilt", elevation, func(g *Grip) *Given[float64] { return &g.Tilt },
		"Degrees that its face looks up.", "-20", "as it faces"),
	value("roll", bearing, func(g *Grip) *Given[float64] { return &g.Roll },
		"Turn in its own plane, clockwise seen from behind.", "45", "0, its width level"),
	value("surface", surface, func(g *Grip) *Given[string] { return &g.Surface },
		"Material of a flag, card or silver.", "black", DefaultFlag+" of a flag, "+DefaultCard+" of a card").of(term.Words([]term.Grip{term.Flag, term.Card, term.Silver})...),
	value("cloth", text("a cloth", "half-diffusion"), func(g *Grip) *Given[string] { return &g.Cloth },
		"Cloth of a frame or net, by its name in the kit.", "half-diffusion", "none").of(term.Words([]term.Grip{term.Frame, term.Net})...),
	value("mount", mount, func(g *Grip) *Given[Mount] { return &g.Mount }, "What holds it.", "stand", string(term.Stand)),
	value("stand", text("a stand", "c-stand"), func(g *Grip) *Given[string] { return &g.Stand },
		"The stand that holds it, by its name in the kit.", "low-c-stand", "a stand of "+inMetres(DefaultFootprint, 0)+" across"),
	value("note", text("a note", "cut the wall"), func(g *Grip) *Given[string] { return &g.Note },
		"A line for the crew.", "cut the wall", "none"),
).meant(otherGripKeys)

// gripForm reads a size, or the name of a piece of the catalogue, which has one.
func gripForm(kind term.Grip, doc string) entry[Grip] {
	like := map[term.Grip]string{term.Flag: "floppy-120x120", term.Card: "card-240x120", term.Frame: "frame-180x180", term.Net: "net-60x45", term.Silver: "silver-100x100"}[kind]
	named := source.Converted(text("a piece of grip", like), func(name string) gripWord { return gripWord{name: name} })
	sized := source.Converted(gripSize, func(size [2]float64) gripWord { return gripWord{size: size} })
	return into(string(kind), either("a size [width, height]", "[1.2, 1.2]", ofKind(source.Scalar), named, sized),
		func(g *Grip, v gripWord, n *source.Node) {
			g.Kind, g.Size = kind, v.size
			g.Item = Given[string]{Value: v.name, Set: v.name != "", Span: n.Span}
		}, doc+", or its name in the kit.", "[1.2, 1.2]", "")
}

// gripWord is a size, or a name.
type gripWord struct {
	name string
	size [2]float64
}

var gripSize = pair("a size [width, height]", "[1.2, 1.2]", quantity("a side", "1.2", lengths, between(0.005, 50)))
