package scene

import (
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

var cueLightTable = tableOf("light of a cue", "What one light does. A level alone may stand for the map.", nil,
	value("level", cueLevel, func(l *CueLight) *Given[float64] { return &l.Level },
		"The level it goes to; `off`.", "35 %", "as it was"),
	value("colour", whiteKind, func(l *CueLight) *Given[ColourWord] { return &l.Colour },
		"The white it goes to. In a fade it goes there by the even way in mireds; a light that is off has its new white as it comes up.", "3200 K", "as it was"),
	value("tint", quantity("a tint", "+0.003", duvs, between(-colour.MaxDuv, colour.MaxDuv)), func(l *CueLight) *Given[float64] { return &l.Tint },
		"Duv: plus is green, minus magenta.", "+0.003", "as it was"),
)

var cueLevel = quantity("a level", "35 %", levels, between(0, 1))

var cueLight = either("a level, or a map of level and colour", "35 %", ofKind(source.Map),
	mapOf("a level and a colour", "{level: 35 %, colour: 3200 K}", cueLightTable),
	source.Reader[CueLight]{What: cueLevel.What, Like: cueLevel.Like, Schema: cueLevel.Schema,
		Read: func(n *source.Node, c *source.Context) (CueLight, bool) {
			v, ok := cueLevel.Read(n, c)
			return CueLight{Level: Given[float64]{Value: v, Set: ok, Span: n.Span}}, ok
		}})

var cueTable = tableOf("cue", "A change of levels and colours while the camera runs. It starts from the state that the cue before it left, "+
	"the first from the set-up as it is written. In a fade a level goes evenly from the one to the other; below the least level of its unit a light is out.", nil,
	value("at", cueAt, func(q *Cue) *Given[CueAt] { return &q.At },
		"What it goes on: words of the script, or a time from the start of the take (`12 s`). Where all cues of a set-up have times, the graph of stops over time is to scale; "+
			"where one has not, it has the cues in even steps, and the fades alone are to scale.", "she opens the door", "its name"),
	value("over", quantity("a time", "4 s", seconds, between(0, maxTake)), func(q *Cue) *Given[float64] { return &q.Over },
		"How long it takes; 0 s is a snap.", "4 s", "0 s"),
	cueLights(),
)

// maxTake is the longest that a take lasts, s.
const maxTake = 3600

var cueAt = scalar("a line, an action or a time", "she opens the door", map[string]any{"type": []any{"string", "number"}, "maxLength": maxText}, parseCueAt)

// parseCueAt reads a time, where it is one, else words. A bare number is neither.
func parseCueAt(text string, n *source.Node, _ *source.Context) (CueAt, error) {
	seconds, err := parseSeconds(strings.TrimSpace(text))
	if err == nil {
		return CueAt{Timed: true, Seconds: seconds}, between(0, maxTake).check("a time", text, seconds, showSeconds)
	}
	if _, bare := unit.ParseNumber(text); bare == nil && !n.Quoted {
		return CueAt{}, err
	}
	words, err := plainWords("a line or an action", text)
	return CueAt{Words: words}, err
}

func cueLights() entry[Cue] {
	return entry[Cue]{Field: source.Field[Cue]{
		Key: "lights", Doc: "The lights that change: `off`, a level, or `{level, colour, tint}`.", Example: "{lamp: off, moon: 35 %}", Required: true,
		Schema: func() map[string]any {
			return map[string]any{"type": "object", "additionalProperties": cueLight.Schema()}
		},
		Read: func(q *Cue, n *source.Node, c *source.Context) {
			source.Each(n, "level", c, func(k *source.Key) {
				if l, ok := cueLight.Read(k.Value, c); ok {
					l.Light, l.Span = Ref{Name: k.Name, Span: k.Span}, k.Value.Span
					q.Lights = append(q.Lights, l)
				}
			})
		},
	}}
}

// cueList is the list of cues of a scene.
func cueList() section[Scene, Cue, *Cue] {
	return section[Scene, Cue, *Cue]{
		key: "cues", doc: "Changes of levels and colours while the camera runs, in the order in which they go.", plain: true,
		example: "{q2: {at: she opens the door, over: 4 s, lights: {lamp: off, moon: 35 %}}}",
		table:   cueTable, at: func(s *Scene) *[]Cue { return &s.Cues },
	}
}

// changedCues names the schema of what a set-up changes of the cues.
const changedCues = "cue-changes"

// cueChange is what a set-up changes of the cues of the scene.
func cueChange() entry[Setup] {
	return entry[Setup]{Field: source.Field[Setup]{
		Key: "cues", Doc: "What the set-up changes of the cues that it has from the scene, or from the set-up that it is after, as a change does: a cue of their name by its keys, " +
			"`q2: strike` removes one, and a new one goes after them.",
		Example: "{q2: {at: she opens the door, over: 4 s, lights: {lamp: off, moon: 35 %}}}", Default: "those of the scene",
		Schema: defined(changedCues),
		Read: func(s *Setup, n *source.Node, c *source.Context) {
			if n.Kind != source.Map {
				c.Error(n, source.CodeWrongType, "write it like {q2: {lights: {lamp: off}}}", "cues are a map by their names, not %s", n.Kind)
				return
			}
			s.Cues = &source.Node{Kind: source.Map, Span: n.Span, Keys: []source.Key{{Name: "cues", Span: n.Span, Value: n}}}
		},
	}}
}
