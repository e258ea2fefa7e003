package scene

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Circuit is one circuit of the house, a generator or a battery, of one phase.
type Circuit struct {
	Thing
	Volts, Breaker, Hertz Given[float64] // voltage, V; rated current, A; frequency, Hz
	At                    Given[Place]
	Already               Given[float64] // W that it carries before the first light
	Rule                  Given[float64] // share of the breaker that may be used, 0 to 1
	Kind                  Given[term.Feed]
}

var circuitTable = tableOf("circuit", "A circuit that lights are put on.", nil,
	value("volts", quantity("a voltage", "230", numbers, between(1, 1000)),
		func(t *Circuit) *Given[float64] { return &t.Volts },
		"Its voltage.", "230", "230 on 50 Hz, 120 on 60 Hz"),
	value("breaker", quantity("a breaker", "16", numbers, between(0.1, 5000)),
		func(t *Circuit) *Given[float64] { return &t.Breaker },
		"What its breaker carries, A.", "16", "").needed(),
	value("at", place, func(t *Circuit) *Given[Place] { return &t.At },
		"Where its outlet is.", "{wall: kitchen.left, along: 0.4}", "not drawn"),
	value("hertz", quantity("a frequency", "50", numbers, between(0, 1000)),
		func(t *Circuit) *Given[float64] { return &t.Hertz },
		"Of the mains; 0 for direct current.", "50", "50, and 60 where lengths are in feet"),
	value("already", quantity("a load", "300 W", watts, between(0, 1e6)),
		func(t *Circuit) *Given[float64] { return &t.Already },
		"What is on it before the first light.", "300 W", "0 W"),
	value("rule", quantity("a rule", "80 %", percents, between(0.01, 1)), func(t *Circuit) *Given[float64] { return &t.Rule },
		"The share of the breaker that may be used.", "80 %", unit.FormatPercent(DefaultRule)),
	value("kind", source.Vocabulary("a circuit", term.Feeds), func(t *Circuit) *Given[term.Feed] { return &t.Kind },
		"What feeds it. A battery gives direct current, and its volts have to be said.", "generator", string(DefaultFeed)),
)

// Cue is one change of levels within a set-up. Computed later.
type Cue struct {
	Thing
	At     Given[string]  // the line or action that it goes on
	Over   Given[float64] // s
	Lights []CueLight
}

// CueLight is what one light does in a cue.
type CueLight struct {
	Light  Ref
	Level  Given[float64] // share of the full output, 0 to 1
	Colour Given[ColourWord]
}

var cueLightTable = tableOf("light of a cue", "What one light does. A level alone may stand for the map.", nil,
	value("level", cueLevel, func(l *CueLight) *Given[float64] { return &l.Level },
		"The level it goes to.", "35 %", "as it was"),
	value("colour", whiteKind, func(l *CueLight) *Given[ColourWord] { return &l.Colour },
		"The white it goes to.", "3200 K", "as it was"),
)

var cueLevel = quantity("a level", "35 %", levels, between(0, 1))

var cueLight = either("a level, or a map of level and colour", "35 %", ofKind(source.Map),
	mapOf("a level and a colour", "{level: 35 %, colour: 3200 K}", cueLightTable),
	source.Reader[CueLight]{What: cueLevel.What, Like: cueLevel.Like, Schema: cueLevel.Schema,
		Read: func(n *source.Node, c *source.Context) (CueLight, bool) {
			v, ok := cueLevel.Read(n, c)
			return CueLight{Level: Given[float64]{Value: v, Set: ok, Span: n.Span}}, ok
		}})

var cueTable = tableOf("cue", "A change of levels and colours while the camera runs.", nil,
	value("at", text("a line or an action", "she opens the door"), func(q *Cue) *Given[string] { return &q.At },
		"What it goes on.", "she opens the door", "its name"),
	value("over", quantity("a time", "4 s", seconds, between(0, 3600)), func(q *Cue) *Given[float64] { return &q.Over },
		"How long it takes.", "4 s", "0 s"),
	cueLights(),
)

func cueLights() entry[Cue] {
	return entry[Cue]{Field: source.Field[Cue]{
		Key: "lights", Doc: "The lights that change: a level, or `{level, colour}`.", Example: "{lamp: off, moon: 35 %}", Required: true,
		Schema: func() map[string]any {
			return map[string]any{"type": "object", "additionalProperties": cueLight.Schema()}
		},
		Read: func(q *Cue, n *source.Node, c *source.Context) {
			source.Each(n, "level", c, func(k *source.Key) {
				if l, ok := cueLight.Read(k.Value, c); ok {
					l.Light = Ref{Name: k.Name, Span: k.Span}
					q.Lights = append(q.Lights, l)
				}
			})
		},
	}}
}

// cues is the list of cues of a scene or of a set-up.
func cues[T any](at func(*T) *[]Cue) entry[T] {
	return section[T, Cue, *Cue]{
		key: "cues", doc: "Changes of levels and colours while the camera runs.", plain: true,
		example: "{q2: {at: she opens the door, over: 4 s, lights: {lamp: off, moon: 35 %}}}",
		table:   cueTable, at: at,
	}.entry()
}
