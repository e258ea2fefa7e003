package scene

import (
	"slices"
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// Limits of lengths on a set, m.
const (
	minLength   = 0.001
	minRoom     = 0.01 // a side of a room or of an opening
	maxRoom     = 500  // a side of a room, or a wall
	maxHeight   = 100
	maxDistance = 1000
)

var (
	coordinate = quantity("a coordinate", "1.2", lengths, between(-1e4, 1e4))
	point      = pair("a point", "[1.2, 2.0]", coordinate)
	pointXYZ   = triple("a point", "[1.2, 2.0, 1.5]", coordinate)
	shift      = pair("a shift", "[0.3, -0.2]", quantity("a shift", "0.3", lengths, between(-maxDistance, maxDistance)))
	distance   = quantity("a distance", "2.4", lengths, between(0, maxDistance))
	height     = quantity("a height", "1.5", lengths, between(-maxHeight, maxHeight))
	anything   = ref("a thing", "desk")
	wallOf     = checked(ref("a wall", "kitchen.left"), checkWallPart)
	openingRef = ref("an opening", "street")
)

// fromLeftEnd is the fix for a distance along a wall that is negative.
const fromLeftEnd = "count from the wall's left end, as seen from inside the room"

// wallDistance is a distance from a face of a wall; side is the fix for a negative one, the key of the other side.
func wallDistance(side string) source.Reader[float64] {
	return quantity("a distance", "2.4", lengths, between(0, maxDistance).lower(side))
}

// checkWallPart refuses a wall without its room.
func checkWallPart(r Ref) error {
	if strings.Count(r.Name, ".") != 1 {
		return source.Errorf(source.CodeBadValue, "write ROOM.WALL, such as kitchen.left", "%q is not a wall of a room", r.Name)
	}
	return nil
}

// centreSynonyms are words that are meant as centre.
var centreSynonyms = []string{"center", "centred", "centered", "middle", "mid", "half"}

// alongWall is a distance along a wall, or its centre.
func alongWall(name, like string, l limits) source.Reader[Along] {
	metres := quantity(name, like, lengths, l)
	return source.Reader[Along]{
		What: name, Like: like, Schema: metres.Schema,
		Read: func(n *source.Node, c *source.Context) (Along, bool) {
			if n.Kind == source.Scalar && n.Text == "centre" {
				return Along{Centre: true, Set: true, Span: n.Span}, true
			}
			if n.Kind == source.Scalar && slices.Contains(centreSynonyms, strings.ToLower(n.Text)) {
				c.Error(n, source.CodeUnknownWord, `did you mean "centre"?`, "%q is neither %s nor centre", n.Text, name)
				return Along{}, false
			}
			v, ok := metres.Read(n, c)
			return Along{Metres: v, Set: ok, Span: n.Span}, ok
		},
	}
}

// placeForms are the keys that say how a place is given.
var placeForms = []string{"from", "by", "wall", "opening", "top"}

// placeForm is the form that the keys of a place say.
func placeForm(n *source.Node) PlaceForm {
	switch {
	case n.Get("from") != nil:
		return FromThing
	case n.Get("by") != nil && n.Get("toward") != nil:
		return ByToward
	case n.Get("by") != nil:
		return ByNose
	case n.Get("wall") != nil:
		return AtWall
	case n.Get("opening") != nil:
		return AtOpening
	}
	return OnTop
}

// placeKeys are the keys of a place that is written as a map.
func placeKeys() []entry[Place] {
	named := func(p *Place, r Ref, _ *source.Node) { p.Thing = r }
	return []entry[Place]{
		into("from", anything, named, "The centre of a thing, moved by `shift`.", "desk", ""),
		into("by", anything, named,
			"Beside a thing: look `toward` another (without it: along a person's nose, or for a turn camera-left or camera-right toward the one camera), `turn`, walk `distance`.",
			"ruth", ""),
		into("wall", wallOf, named, "Along a wall, `in` from its inside face.", "kitchen.left", ""),
		into("opening", openingRef, named, "Before the middle of an opening, `out` or `in`.", "street", ""),
		into("top", anything, named, "On a table, a shelf, a deck; someone seated sits on it.", "desk", ""),
		into("shift", shift, func(p *Place, v [2]float64, _ *source.Node) { p.Shift = v },
			"How far to the right and up the sheet.", "[0.1, 0]", "[0, 0]").of("from", "top"),
		into("toward", anything, func(p *Place, r Ref, _ *source.Node) { p.Toward = r },
			"What is looked at before the turn.", "A", "the one camera, for a turn to its left or right; else where the person's nose points").of("by"),
		into("turn", turnKind, func(p *Place, t Turn, _ *source.Node) { p.Turn = t },
			"The turn from that look. A bare number goes clockwise. Camera-left and camera-right are of the camera at an end of the place, else of the one camera of the set-up.", "45 camera-left", "0").of("by"),
		value("distance", distance, func(p *Place) *Given[float64] { return &p.Distance },
			"How far to walk after the turn.", "2", "none: it is required").of("by"),
		into("along", alongWall("a distance along a wall", "1.2", between(-maxRoom, maxRoom)),
			func(p *Place, a Along, _ *source.Node) { p.Along = a },
			"From the wall's left end as seen from inside, or `centre`; beside an opening, from its middle, to the right as seen from inside.",
			"1.2", "centre").of("wall", "opening"),
		value("out", wallDistance("write in: for the room's side of the wall"), func(p *Place) *Given[float64] { return &p.Out },
			"From the wall's outside face, away from the room.", "2.4", "none: write out or in").of("opening"),
		value("in", wallDistance("count into the room; beyond an opening, write out: instead"), func(p *Place) *Given[float64] { return &p.In },
			"From the wall's inside face, into the room, to the near side of the thing.", "0.4", "0 from a wall").of("wall", "opening"),
	}
}

var placeTable = tableOf("place", "Somewhere in plan, as a map. A point is written `[x, y]`.", placeForms, placeKeys()...)

// placeLists names the forms of a place in messages.
const placeLists = "a place is [x, y], or a map by from, by, wall, opening or top"

// place is somewhere in plan, in any of its forms.
var place = source.Reader[Place]{
	What: "a place", Like: "[1.2, 2.0]", Read: readPlace,
	Schema: defined("place"),
}

func readPlace(n *source.Node, c *source.Context) (Place, bool) {
	switch {
	case n.Kind == source.List && len(n.Items) == 3:
		c.Error(n, source.CodeWrongType, "leave the third out; height is a key of its own",
			"a place has two coordinates, not three")
	case n.Kind == source.List:
		xy, ok := point.Read(n, c)
		return Place{Form: AtPoint, Span: n.Span, Point: xy}, ok
	case n.Kind == source.Map:
		p := Place{Form: placeForm(n), Span: n.Span}
		return p, placeTable.read(&p, n, c, n.Span) && checkPlace(&p, n, c)
	case n.Kind == source.Scalar && isPath(n.Text) && !isNumber(n.Text):
		c.Error(n, source.CodeWrongType, namedPlace(n.Text), "%s, not a name", placeLists)
	default:
		c.Error(n, source.CodeWrongType, placeHint(n.Text), "%s, not %s", placeLists, n.Kind)
	}
	return Place{}, false
}

// namedPlace is a name as the place that it was meant to be: by a wall of a room, or at a thing.
func namedPlace(name string) string {
	if _, side, ok := strings.Cut(name, "."); ok && slices.Contains(term.Walls(), side) {
		return "did you mean {wall: " + name + ", along: 1.2, in: 0.3}?"
	}
	return "did you mean {from: " + name + "}?"
}

// placeHint is a text of two numbers as the place that it was meant to be.
func placeHint(text string) string {
	xy := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' })
	if len(xy) != 2 || !isNumber(xy[0]) || !isNumber(xy[1]) {
		return "write it like [1.2, 2.0]"
	}
	return "did you mean [" + xy[0] + ", " + xy[1] + "]?"
}

// checkPlace looks at what the keys of a place say together.
func checkPlace(p *Place, n *source.Node, c *source.Context) bool {
	switch p.Form {
	case ByToward, ByNose:
		if !p.Distance.Set {
			c.Error(n, source.CodeMissingKey, "add distance: 2", "a place by %s needs a distance", p.Thing.Name)
			return false
		}
	case AtWall:
		if p.Along.Metres < 0 {
			c.ErrorAt(p.Along.Span, source.CodeOutOfRange, fromLeftEnd,
				"a distance along a wall is never negative")
			return false
		}
	case AtOpening:
		return checkBeside(p, n, c)
	}
	return true
}

// checkBeside wants out or in beside an opening, and not both.
func checkBeside(p *Place, n *source.Node, c *source.Context) bool {
	switch {
	case p.Out.Set && p.In.Set:
		c.ErrorAt(n.Key("in").Span, CodeWrongKey, "keep out for outside, in for inside the room",
			"a place beside an opening is out or in, not both")
	case !p.Out.Set && !p.In.Set:
		c.Error(n, source.CodeMissingKey, "add out: 2 for outside, or in: 1 for inside the room",
			"a place beside an opening needs out or in")
	default:
		return true
	}
	return false
}
