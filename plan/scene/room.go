package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

var (
	side    = quantity("a side", "3.6", lengths, between(minRoom, maxRoom))
	surface = checked(text("a material", "plaster"), isMaterialName)
)

// isMaterialName refuses a number where a material is named.
func isMaterialName(name string) error {
	if _, err := parseShare(name); err == nil {
		return source.Errorf(source.CodeWrongType, "name it under materials: {wall: {reflectance: "+name+"}}",
			"a surface is the name of a material, not %s", name)
	}
	return nil
}

// directions are the words of a tape's steps, as the sheet lies.
var directions = []string{"right", "left", "up", "down"}

// step reads one step of an outline: `right 3.6`, `up 12'6"`.
var step = scalar("a step", "right 3.6", map[string]any{"type": "string"},
	func(text string, n *source.Node, c *source.Context) (OutlineStep, error) {
		s := OutlineStep{Span: n.Span}
		word, length, _ := strings.Cut(strings.TrimSpace(text), " ")
		if !slices.Contains(directions, word) {
			return s, source.Errorf(source.CodeUnknownWord, stepHint(text, word, length),
				"%q does not start with a direction: %s", text, orList(directions))
		}
		feet := c.Feet != nil && c.Feet(n.Span.File)
		metres, err := unit.ParseLength(length, feet)
		if err != nil {
			return s, err
		}
		s.Direction, s.Length = word, metres
		return s, between(minLength, maxRoom).check("a step", length, metres, func(v float64) string { return showLength(v, feet) })
	})

// stepHint is a step as it was meant: with its word, with a space behind it, or as the sheet lies.
func stepHint(text, word, length string) string {
	meant := otherDirections[strings.ToLower(word)]
	if meant == "" {
		meant = source.Nearest(word, directions)
	}
	for _, d := range directions {
		if rest, glued := strings.CutPrefix(text, d); glued {
			meant, length = d, strings.TrimLeft(rest, ": ")
		}
	}
	if meant == "" || length == "" {
		return "write it like right 3.6"
	}
	return "did you mean " + meant + " " + length + "?"
}

// corner reads one corner: `{a: [6.6, 0]}`.
var corner = source.Reader[Corner]{
	What: "a corner", Like: "{a: [6.6, 0]}", Read: readCorner,
	Schema: func() map[string]any {
		return map[string]any{"type": "object", "minProperties": 1, "maxProperties": 1,
			"additionalProperties": point.Schema()}
	},
}

func readCorner(n *source.Node, c *source.Context) (Corner, bool) {
	if n.Kind != source.Map || len(n.Keys) != 1 {
		c.Error(n, source.CodeWrongType, "write it like {a: [6.6, 0]}", "a corner is one name with its point")
		return Corner{}, false
	}
	key := n.Keys[0]
	if err := checkCornerName(key.Name); err != nil {
		c.Refuse(key.Span, err)
		return Corner{}, false
	}
	at, ok := point.Read(key.Value, c)
	return Corner{Name: key.Name, At: at, Span: key.Span}, ok
}

// checkCornerName refuses a dash, which joins two corners to the name of their wall.
func checkCornerName(name string) error {
	if strings.Contains(name, "-") {
		return source.Errorf(CodeBadName, "write "+strings.ReplaceAll(name, "-", "_"),
			"the corner %q holds a dash, which joins two corners to a wall: a-b", name)
	}
	if name == "" || strings.ContainsFunc(name, notInName) {
		return source.Errorf(CodeBadName, "write it like a", "a corner is named by letters, digits and _, not %q", name)
	}
	return nil
}

// maxCorners is how many corners a room may have.
const maxCorners = 100

var (
	cornerList = source.ListOf("a list of corners", "[{a: [0, 0]}, {b: [4, 0]}, {c: [4, 3]}]", corner, 3, maxCorners)
	steps      = source.ListOf("an outline", "[right 3.6, up 2.0, left 3.6, down 2.0]", step, 4, maxCorners)
	size       = pair("a size", "[3.6, 3.1]", side)
)

// slopeTable is a ceiling that rises from one wall to another.
var slopeTable = tableOf("sloped height", "A ceiling that rises toward a wall.", nil,
	into("low", ceilingHeight, func(s *Slope, v float64, _ *source.Node) { s.Low = v },
		"Height at the lowest wall.", "2.1", "").needed(),
	into("high", ceilingHeight, func(s *Slope, v float64, _ *source.Node) { s.High = v },
		"Height at the wall it rises toward.", "3.4", "").needed(),
	into("toward", ref("a wall", "left"), func(s *Slope, r Ref, _ *source.Node) { s.Toward = r },
		"The wall of this room that it rises toward.", "left", "").needed(),
)

var ceilingHeight = quantity("a room's height", "2.5", lengths, between(minRoom, maxHeight))

// roomForms are the ways to give a room's outline.
var roomForms = []string{"size", "corners", "outline"}

var roomTable = tableOf("room", "A room by its clear inside; walls stand outside of it.", roomForms,
	value("at", point, func(r *Room) *Given[[2]float64] { return &r.At },
		"Lower-left inside corner of a `size`; where an `outline` starts; what `corners` count from.", "[0, 0]", "[0, 0]"),
	into("size", size, func(r *Room, v [2]float64, n *source.Node) { r.Form, r.Size, r.FormSpan = BySize, v, n.Span },
		"Clear inside: width and depth. Its walls are top, right, bottom and left, as the sheet lies.", "[3.6, 3.1]", ""),
	into("corners", cornerList,
		func(r *Room, v []Corner, n *source.Node) { r.Form, r.Corners, r.FormSpan = ByCorners, v, n.Span },
		"Named inside corners in order; its walls are a-b, b-c, and so on.", "[{a: [0, 0]}, {b: [4, 0]}, {c: [4, 3]}]", ""),
	into("outline", steps,
		func(r *Room, v []OutlineStep, n *source.Node) { r.Form, r.Outline, r.FormSpan = ByOutline, v, n.Span },
		"Tape lengths in order; its walls are w1, w2, and so on. The closing error is printed.",
		"[right 3.6, up 2.0, left 3.6, down 2.0]", ""),
	roomHeight(),
	value("base", quantity("a floor level", "0.15", lengths, between(-maxHeight, maxHeight)),
		func(r *Room) *Given[float64] { return &r.Base },
		"Level of its floor.", "0.15", "0"),
	value("wall", quantity("a wall's thickness", "0.15", lengths, between(0.01, 5)),
		func(r *Room) *Given[float64] { return &r.Wall },
		"Thickness of its walls, outward.", "0.15", inMetres(DefaultWallThickness, 2)),
	value("walls", surface, func(r *Room) *Given[string] { return &r.Walls },
		"Material of the walls.", "plaster", inGrey(DefaultWallReflectance)),
	value("floor", surface, func(r *Room) *Given[string] { return &r.Floor },
		"Material of the floor.", "light-wood", inGrey(DefaultFloorReflectance)),
	value("ceiling", surface, func(r *Room) *Given[string] { return &r.Ceiling },
		"Material of the ceiling.", "white", inGrey(DefaultCeilingReflectance)),
).meant(otherRoomKeys)

// roomHeight is a level height, or a slope.
func roomHeight() entry[Room] {
	slope := mapOf("a sloped height", "{low: 2.1, high: 3.4, toward: left}", slopeTable)
	e := value("height", ceilingHeight, func(r *Room) *Given[float64] { return &r.Height },
		"Clear height; of a sloped ceiling `{low, high, toward}`.", "2.5", inMetres(DefaultRoomHeight, 1))
	level := e.Read
	e.Schema = func() map[string]any { return anyOf(ceilingHeight.Schema(), slope.Schema()) }
	e.Read = func(r *Room, n *source.Node, c *source.Context) {
		if n.Kind != source.Map {
			level(r, n, c)
			return
		}
		if s, ok := slope.Read(n, c); ok {
			s.Span = n.Span
			r.Slope = &s
		}
	}
	return e
}

// checkRoom looks at what the keys of a room say together.
func checkRoom(r *Room, n *source.Node, c *source.Context) {
	if s := r.Slope; s != nil && s.High <= s.Low {
		c.ErrorAt(s.Span, CodeContradicts, "swap low and high",
			"a slope is higher toward its wall than at the other: high is more than low")
	}
	seen := map[string]Corner{}
	for _, corner := range r.Corners {
		if first, twice := seen[corner.Name]; twice {
			errorWith(c, corner.Span, CodeTwice, "give this one another name", first.Span, "it is first here",
				"the corner %q is named twice", corner.Name)
		}
		seen[corner.Name] = corner
	}
}
