package scene

import (
	"scrimshaw/plan/source"
)

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
	aimTable  = tableOf("aim", "A direction or a target, as a map; `{opening: NAME}` alone is its middle. It may also be a name, `[x, y, z]`, a bearing, `up`, `down`, and of a light `ceiling` or `floor`: the point of it that lies over, or under, the middle between the light and whom it is for.", aimForms, aimKeys()...)
)

// aimKeys are the keys of a place, with a height, and those of a direction.
func aimKeys() []entry[aimMap] {
	keys := embedEntries(placeKeys(), func(a *aimMap) *Place { return &a.place })
	return append(keys,
		value("height", height, func(a *aimMap) *Given[float64] { return &a.place.Height },
			"Height of the point aimed at, above the floor there.", "1.2", "the height of what is named").of(placeForms...),
		into("ceiling", ref("a room", "kitchen"), func(a *aimMap, r Ref, _ *source.Node) { a.ceiling = r },
			"The ceiling of a room, over the place `at`.", "kitchen", ""),
		value("at", place, func(a *aimMap) *Given[Place] { return &a.at },
			"The place under the point of the ceiling.", "[1.2, 2.0]", "none: it is required").of("ceiling"),
		value("pan", bearing, func(a *aimMap) *Given[float64] { return &a.pan },
			"A bearing, clockwise from the sheet's up.", "30", ""),
		value("tilt", elevation, func(a *aimMap) *Given[float64] { return &a.tilt },
			"Degrees above the horizontal.", "-20", "0").of("pan"),
	)
}

// aimLists names the forms of an aim in messages.
const aimLists = "an aim is a name, a place with its height, {opening: NAME}, [x, y, z], a bearing, up, down, ceiling, floor, {ceiling: ROOM, at: PLACE} or {pan: 30, tilt: -20}"

// aim is where a lamp, a camera or a face points, in any of its forms.
var aim = source.Reader[Aim]{
	What: "an aim", Like: "ruth", Read: readAim,
	Schema: defined("aim"),
}

// faces is what a face, or a card, looks at: an aim, or a point of the plan.
var faces = source.Reader[Aim]{
	What: "an aim", Like: "ruth", Schema: func() map[string]any { return anyOf(defined("aim")(), point.Schema()) },
	Read: func(n *source.Node, c *source.Context) (Aim, bool) {
		if n.Kind != source.List || len(n.Items) != 2 {
			return readAim(n, c)
		}
		xy, ok := point.Read(n, c)
		return Aim{Form: AtXY, Span: n.Span, Point: [3]float64{xy[0], xy[1], 0}}, ok
	},
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
	case n.Text == "ceiling":
		a.Form, a.Thing = AimCeiling, Ref{Name: n.Text, Span: n.Span}
	case n.Text == "floor":
		a.Form, a.Thing = AimFloor, Ref{Name: n.Text, Span: n.Span}
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

// readMap reads an aim that is a place, a ceiling or a direction.
func (a *Aim) readMap(n *source.Node, c *source.Context) bool {
	m := aimMap{place: Place{Form: placeForm(n), Span: n.Span}}
	if !aimTable.read(&m, n, c, n.Span) {
		return false
	}
	switch {
	case n.Get("pan") != nil:
		a.Form, a.Pan, a.Tilt = AimPanTilt, m.pan.Value, m.tilt.Value
	case n.Get("ceiling") != nil:
		a.Form, a.Thing, a.Place = AtCeiling, m.ceiling, m.at.Value
		if !m.at.Set {
			c.Error(n, source.CodeMissingKey, "add at: [1.2, 2.0]", "a ceiling is aimed at over a place")
		}
		return m.at.Set
	default:
		a.Form, a.Place = AtPlace, m.place
		if a.MeansOpening() {
			return true
		}
		return checkPlace(&a.Place, n, c)
	}
	return true
}
