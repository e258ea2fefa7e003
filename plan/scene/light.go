package scene

import (
	"slices"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

var (
	gelName   = catalogueNameReader("a gel", "1/2 CTO")
	clothList = oneOrMore("a list of cloths", "half-diffusion", catalogueNameReader("a cloth", "half-diffusion"), 5)
	gelList   = either("a list of gels", "[1/2 CTO]", ofKind(source.List), source.ListOf("a list of gels", "[1/2 CTO]", gelName, 0, 12),
		source.Converted(gelName, func(r Ref) []Ref { return []Ref{r} }))
)

var lightForms = []string{"unit", "output"}

var lightTable = tableOf("light", "One light.", lightForms, slices.Concat(lightKeys(), lightAccessories(), lightPractical(), lightGate(), lightStandIn(), lightLater())...).meant(otherLightKeys).alone(lightAlone)

func lightKeys() []entry[Light] {
	return []entry[Light]{
		value("unit", text("a unit", "led-point-600-bicolour"), func(l *Light) *Given[string] { return &l.Unit },
			"The lamp head, by its name in the kit.", "led-point-600-bicolour", ""),
		into("output", output, func(l *Light, v kit.Output, _ *source.Node) { l.Output = &v },
			"A plain source in place of a unit.", "{candela: 1000, shape: uniform}", ""),
		value("modifier", text("a modifier", "softbox-90"), func(l *Light) *Given[string] { return &l.Modifier },
			"What shapes its light, by its name in the kit; what goes on that stands behind a plus: `softbox-90 + grid-40`.", "softbox-90", "the one the unit comes with").of("unit"),
		value("at", place, func(l *Light) *Given[Place] { return &l.At },
			"The centre of its emitting face, in plan.", "{opening: street, out: 2.4}", "").needed(),
		value("height", height, func(l *Light) *Given[float64] { return &l.Height },
			"Height of the centre of its emitting face, above the floor of the room that the place belongs to.",
			"2.5", inMetres(DefaultLampHeight, 0)+"; a practical stands on what is under it"),
		value("aim", aim, func(l *Light) *Given[Aim] { return &l.Aim },
			"Where its axis points.", "ruth", "the first person, else down; a practical that shines all round stands upright"),
		value("roll", bearing, func(l *Light) *Given[float64] { return &l.Roll },
			"Turn about its axis, clockwise seen from behind.", "90", "0, the long side level; a tube on a wall lies along it"),
		value("colour", whiteKind, func(l *Light) *Given[ColourWord] { return &l.Colour },
			"The white it is set to.", "4300 K", "the unit's native colour"),
		value("tint", quantity("a tint", "+0.003", duvs, between(-colour.MaxDuv, colour.MaxDuv)),
			func(l *Light) *Given[float64] { return &l.Tint },
			"Duv: plus is green, minus magenta.", "+0.003", "0"),
		into("diffusion", clothList, func(l *Light, v []Ref, _ *source.Node) {
			l.Diffusion = v
			l.noteCatalogueName("diffusion", "cloth", v...)
		}, "Cloth clipped to the head, by its name in the kit.", "half-diffusion", "none"),
		into("gels", gelList, func(l *Light, v []Ref, _ *source.Node) { l.Gels = v },
			"Its gels, in order.", "[1/2 CTO]", "none"),
		value("level", quantity("a level", "80 %", levels, between(0, 1)),
			func(l *Light) *Given[float64] { return &l.Level },
			"How far it is up. A bare number is refused.", "80 %", unit.FormatPercent(DefaultLevel)),
		value("mount", mount, func(l *Light) *Given[Mount] { return &l.Mount },
			"What holds it.", "{boom: 1.6, base: [2.6, 3.3]}", "stand; floor for a practical, on what is under it"),
		value("stand", text("a stand", "c-stand"), func(l *Light) *Given[string] { return &l.Stand },
			"The stand that holds it, by its name in the kit.", "combo-stand", "the one its unit usually stands on"),
		into("role", role, func(l *Light, v []Role, _ *source.Node) { l.Role = v },
			"What it does, for all or by person.", "{ada: key, noor: edge}", "none"),
		value("note", text("a note", "two bags, tie off"), func(l *Light) *Given[string] { return &l.Note },
			"A line for the crew.", "two bags, tie off", "none"),
		value("count", source.Int("a count", 1, 100), func(l *Light) *Given[int] { return &l.Count },
			"How many alike units stand here as one.", "2", "1"),
		value("tag", text("a tag", "1"), func(l *Light) *Given[string] { return &l.Tag },
			"What the plan calls it.", "K1", "its number in the file"),
		value("circuit", text("a circuit", "kitchen-ring"), func(l *Light) *Given[string] { return &l.Circuit },
			"The circuit it is on.", "kitchen-ring", "none"),
	}
}

// roleWord is one thing that a light does.
var roleWord = withSynonyms(source.Vocabulary("a role", term.Roles), otherRoles)

// role is a word for everyone, or words by person.
var role = source.Reader[[]Role]{
	What: "a role", Like: "key", Read: readRole,
	Schema: func() map[string]any {
		return anyOf(roleWord.Schema(), map[string]any{"type": "object", "additionalProperties": roleWord.Schema(),
			"minProperties": 1})
	},
}

func readRole(n *source.Node, c *source.Context) ([]Role, bool) {
	if n.Kind != source.Map {
		word, ok := roleWord.Read(n, c)
		return []Role{{Role: word}}, ok
	}
	var roles []Role
	fine := true
	source.Each(n, "role", c, func(k *source.Key) {
		word, ok := roleWord.Read(k.Value, c)
		roles = append(roles, Role{Person: Ref{Name: k.Name, Span: k.Span}, Role: word})
		fine = fine && ok
	})
	return roles, fine
}

// output reads a plain source in place of a unit.
var output = kit.OutputReader()
