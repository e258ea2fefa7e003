package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

var furnitureForms = term.Words(term.Furnitures)

var (
	measureOf = quantity("a measure", "0.8", lengths, between(minLength, maxHeight))
	block     = triple("a size [width, depth, height]", "[1.5, 0.5, 0.9]", measureOf)
)

var furnitureTable = tableOf("piece of furniture", "A solid thing that stands in a room.", furnitureForms,
	solidForm(term.Box, "A block: width, depth, height.", "[1.5, 0.5, 0.9]"),
	into(string(term.Cylinder), pair("a size [diameter, height]", "[0.4, 0.9]", measureOf),
		func(f *Furniture, v [2]float64, n *source.Node) {
			f.Kind, f.Size, f.SizeSpan = term.Cylinder, [3]float64{v[0], v[0], v[1]}, n.Span
		}, "A round block: diameter, height.", "[0.4, 0.9]", ""),
	solidForm(term.Table, "A top on legs: width, depth, height.", "[1.6, 0.8, 0.75]"),
	solidForm(term.Sofa, "A seat with a back and arms: width, depth, height.", "[2.0, 0.9, 0.85]"),
	solidForm(term.Stairs, "Steps that rise to the back: width, depth, height.", "[1.0, 1.8, 1.2]"),
	solidForm(term.Deck, "A platform that things stand on: width, depth, height.", "[2.0, 1.0, 0.3]"),
	into(string(term.Mirror), pair("a size [width, height]", "[0.6, 1.2]", measureOf),
		func(f *Furniture, v [2]float64, n *source.Node) {
			f.Kind, f.Size, f.SizeSpan = term.Mirror, [3]float64{v[0], mirrorDepth, v[1]}, n.Span
		}, "A flat mirror on a wall: width, height. It shows lamps, openings and surfaces.", "[0.6, 1.2]", ""),
	value("at", place, func(f *Furniture) *Given[Place] { return &f.At }, "Its centre.", "[2.9, 2.6]", "").needed(),
	value("turn", bearing, func(f *Furniture) *Given[float64] { return &f.Turn },
		"How far it is turned, clockwise.", "30", "0; a mirror hangs along its wall"),
	value("lift", quantity("a lift", "0.4", lengths, between(-maxHeight, maxHeight)),
		func(f *Furniture) *Given[float64] { return &f.Lift },
		"Its underside, above the floor.", "0.4", "0"),
	value("material", surface, func(f *Furniture) *Given[string] { return &f.Material },
		"What it is made of; of a mirror, what mirrors.", "dark-wood", DefaultFurnitureMaterial+"; of a mirror "+DefaultMirror),
	value("seat", quantity("a seat's height", "0.42", lengths, between(0.01, 3)),
		func(f *Furniture) *Given[float64] { return &f.Seat },
		"Height of the seat of a sofa.", "0.42", "half its height").of(string(term.Sofa)),
	value("steps", source.Int("a count of steps", 1, 200), func(f *Furniture) *Given[int] { return &f.Steps },
		"How many steps stairs have.", "7", "one for each 0.18 m").of(string(term.Stairs)),
).meant(otherFurnitureKeys)

// mirrorDepth is how far a mirror with its frame stands off the wall, m.
const mirrorDepth = 0.03

// solidForm is a form that is given by width, depth and height.
func solidForm(kind term.Furniture, doc, example string) entry[Furniture] {
	return into(string(kind), block, func(f *Furniture, v [3]float64, n *source.Node) { f.Kind, f.Size, f.SizeSpan = kind, v, n.Span }, doc, example,
		"")
}

// checkFurniture looks at what the keys of a thing say together.
func checkFurniture(f *Furniture, _ *source.Node, c *source.Context) {
	if f.Seat.Set && f.Kind == term.Sofa && f.Seat.Value >= f.Size[2] {
		errorWith(c, f.Seat.Span, CodeContradicts, "make the seat lower, or the sofa higher", f.SizeSpan, "the third number here is its height",
			"the seat of a sofa lies below its back")
	}
}
