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
