package scene

import (
	"strings"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// PlayDefault is how a light plays where nothing says it: common practice.
type PlayDefault struct {
	Low  float64 // share of the light's level
	Rate float64 // 1/s
}

// PlayDefaults are those of each kind: a fire rolls by about half, a candle trembles, a screen cuts from bright to dark pictures and
// does not go black, headlamps that pass come from nothing, and so does what pulses. Common practice.
var PlayDefaults = map[term.Play]PlayDefault{
	term.Fire:    {Low: 0.5, Rate: 4},
	term.Candle:  {Low: 0.7, Rate: 8},
	term.Screen:  {Low: 0.2, Rate: 0.5},
	term.Passing: {Low: 0, Rate: 0.2},
	term.Pulse:   {Low: 0, Rate: 1},
}

// playWords words the defaults of each kind.
func playWords(of func(PlayDefault) string) string {
	var words []string
	for _, kind := range term.Plays {
		words = append(words, string(kind)+" "+of(PlayDefaults[kind]))
	}
	return strings.Join(words, ", ")
}

var (
	playKind  = source.Vocabulary("a play of light", term.Plays)
	playTable = tableOf("play", "How a light changes by itself. The readings have it at its level; below them stands what it gives at its lowest, in the mean and at its highest. "+
		"In a cue both go with its level.", nil,
		into("kind", playKind, func(f *Play, v term.Play, _ *source.Node) { f.Kind = v },
			"What it plays.", "fire", "").needed(),
		value("low", quantity("a level", "20 %", levels, between(0, 1)), func(f *Play) *Given[float64] { return &f.Low },
			"The lowest level.", "20 %", "of the light's level "+playWords(func(d PlayDefault) string { return unit.FormatPercent(d.Low) })+"; common practice"),
		value("high", quantity("a level", "60 %", levels, between(0, 1)), func(f *Play) *Given[float64] { return &f.High },
			"The highest level.", "60 %", "the light's level; of one that is off its full light"),
		value("rate", quantity("a rate", "4 /s", rates, between(0.001, 100)), func(f *Play) *Given[float64] { return &f.Rate },
			"How often it goes up and down in a second.", "4 /s", playWords(func(d PlayDefault) string { return showRate(d.Rate) })+"; common practice"),
	).whole("plays: " + playExample)
)

// playExample is a play with its keys.
const playExample = "{kind: fire, low: 20 %, rate: 4 /s}"

// plays is the key of a light.
func plays() entry[Light] {
	r := orWord("a play of light", playExample, playTable, playKind, func(v term.Play) Play { return Play{Kind: v} })
	return value("plays", r, func(l *Light) *Given[Play] { return &l.Plays }, "How it changes by itself. Its kind alone may stand for the map.", playExample, "steady")
}

// rates are numbers in a second.
var rates = withoutFileUnits(parseRate, showRate, "string")

// parseRate reads a rate: `4 /s`. A bare number is refused.
func parseRate(text string) (float64, error) {
	number, per := strings.CutSuffix(strings.TrimSpace(text), "/s")
	v, err := unit.ParseNumber(strings.TrimSpace(number))
	switch {
	case err != nil:
		return 0, source.Errorf(source.CodeBadValue, "write it like 4 /s", "%q is not a rate", text)
	case !per:
		return 0, source.Errorf(CodeMissingUnit, "did you mean "+number+" /s?", "a rate needs /s, and %q has none", text)
	}
	return v, nil
}

func showRate(v float64) string { return unit.FormatNumber(v) + " /s" }
