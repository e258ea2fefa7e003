package scene

import (
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// sides are the words that may follow the degrees of a turn, in the order of the Sides.
var sides = []string{CameraLeft - 1: "camera-left", "camera-right", "own-left", "own-right", "left", "right"}

// turnKind reads a turn: `45`, `-20`, `45 camera-left`.
var turnKind = scalar("a turn", "45 camera-left", map[string]any{"type": numberOrText},
	func(text string, n *source.Node, _ *source.Context) (Turn, error) {
		figure, side, err := splitTurn(text)
		if err != nil {
			return Turn{}, err
		}
		degrees, err := unit.ParseAngle(figure)
		if err == nil && side != Clockwise && degrees < 0 {
			return Turn{}, troublef(source.CodeOutOfRange, "turn to the other side instead",
				"%q has a side and a sign", text)
		}
		return Turn{Degrees: degrees, Side: side, Set: true, Span: n.Span}, err
	})

// splitTurn takes the side off a turn.
func splitTurn(text string) (figure string, side Side, err error) {
	figure, word, cut := strings.Cut(strings.TrimSpace(text), " ")
	if !cut && !startsNumber(figure) {
		return "", 0, troublef(source.CodeBadValue, "write it like 45 camera-left",
			"%q is a turn without its degrees", text)
	}
	word = strings.TrimSpace(word)
	if word == "" || word == "deg" || word == "°" {
		return figure, Clockwise, nil
	}
	for i, s := range sides {
		if s == word {
			return figure, CameraLeft + Side(i), nil
		}
	}
	return "", 0, troublef(source.CodeUnknownWord, source.DidYouMean(word, sides),
		"%q is not a side to turn to: %s", word, orList(sides))
}

func startsNumber(text string) bool {
	return strings.ContainsAny(text[:min(1, len(text))], "0123456789+-.")
}

// aimMap is an aim that is written as a map.
type aimMap struct {
	place     Place
	at        Given[Place]
	ceiling   Ref
	pan, tilt Given[float64]
}

var (
	bearing   = quantity("a bearing", "90", degrees, between(-3600, 3600))
	elevation = quantity("a tilt", "-20", degrees, between(-90, 90))
	aimForms  = append(placeForms[:len(placeForms):len(placeForms)], "ceiling", "pan")
	aimTable  = tableOf("aim", "A direction or a target, as a map. It may also be a name, `[x, y, z]`, a bearing, `up` or `down`.", aimForms, aimKeys()...)
)

// aimKeys are the keys of a place, with a height, and those of a direction.
func aimKeys() []entry[aimMap] {
	keys := within(placeKeys(), func(a *aimMap) *Place { return &a.place })
	return append(keys,
		value("height", height, func(a *aimMap) *Given[float64] { return &a.place.Height },
			"Height of the point aimed at, above the floor there.", "1.2", "the height of what is named").of(placeForms...),
		into("ceiling", ref("a room", "kitchen"), func(a *aimMap, r Ref, _ *source.Node) { a.ceiling = r },
			"The ceiling of a room, over the place `at`.", "kitchen", ""),
		value("at", place, func(a *aimMap) *Given[Place] { return &a.at },
			"The place under the point of the ceiling.", "[1.2, 2.0]", "none: it has to be said").of("ceiling"),
		value("pan", bearing, func(a *aimMap) *Given[float64] { return &a.pan },
			"A bearing, clockwise from the sheet's up.", "30", ""),
		value("tilt", elevation, func(a *aimMap) *Given[float64] { return &a.tilt },
			"Degrees above the horizontal.", "-20", "0").of("pan"),
	)
}

// aimLists names the forms of an aim in messages.
const aimLists = "an aim is a name, a place with its height, [x, y, z], a bearing, up, down, {ceiling: ROOM, at: PLACE} or {pan: 30, tilt: -20}"

// aim is where a lamp, a camera or a face points, in any of its forms.
var aim = source.Reader[Aim]{
	What: "an aim", Like: "ruth", Read: readAim,
	Schema: defined("aim"),
}

func readAim(n *source.Node, c *source.Context) (Aim, bool) {
	a := Aim{Span: n.Span}
	switch n.Kind {
	case source.Scalar:
		return a, a.readWord(n, c)
	case source.List:
		if len(n.Items) == 2 {
			c.Error(n, source.CodeWrongType, "add the height as the third",
				"a point to aim at has three coordinates, not two")
			return a, false
		}
		xyz, ok := pointXYZ.Read(n, c)
		a.Form, a.Point = AtXYZ, xyz
		return a, ok
	case source.Map:
		return a, a.readMap(n, c)
	}
	c.Error(n, source.CodeWrongType, "write it like ruth", "%s", aimLists)
	return a, false
}

// readWord reads a name, a bearing, up or down.
func (a *Aim) readWord(n *source.Node, c *source.Context) bool {
	switch {
	case n.Text == "up":
		a.Form = AimUp
	case n.Text == "down":
		a.Form = AimDown
	case isNumber(n.Text):
		a.Form = AtBearing
		pan, ok := bearing.Read(n, c)
		a.Pan = pan
		return ok
	case !isPath(n.Text):
		c.Error(n, source.CodeBadValue, refHint(n.Text, "ruth, or 90"), "%q is no aim: %s", n.Text, aimLists)
		return false
	default:
		a.Form, a.Thing = AtThing, Ref{Name: n.Text, Span: n.Span}
	}
	return true
}

// isNumber reports whether a text is meant as a number: 90.5 and 45deg, but not the name 2k.
func isNumber(text string) bool {
	if _, err := unit.ParseAngle(text); err == nil {
		return true
	}
	first, _, _ := strings.Cut(text, ".")
	return startsNumber(text) && checkThingName(first) != nil
}

// readMap reads an aim that is a place, a ceiling or a direction.
func (a *Aim) readMap(n *source.Node, c *source.Context) bool {
	m := aimMap{place: Place{Form: placeForm(n), Span: n.Span}}
	if !aimTable.read(&m, n, c, n.Span) {
		return false
	}
	switch {
	case n.Get("pan") != nil:
		a.Form, a.Pan, a.Tilt = AimPanTilt, m.pan.V, m.tilt.V
	case n.Get("ceiling") != nil:
		a.Form, a.Thing, a.Place = AtCeiling, m.ceiling, m.at.V
		if !m.at.Set {
			c.Error(n, source.CodeMissingKey, "add at: [1.2, 2.0]", "a ceiling is aimed at over a place")
		}
		return m.at.Set
	default:
		a.Form, a.Place = AtPlace, m.place
		return checkPlace(&a.Place, n, c)
	}
	return true
}
