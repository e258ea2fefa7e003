package scene

import (
	"slices"

	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Circuit is one circuit of the house, a generator, a battery, or a box that is fed by another.
type Circuit struct {
	Thing
	Volts, Breaker, Hertz Given[float64] // voltage, V; rated current, A; frequency, Hz
	At                    Given[Place]
	Already               Given[float64] // W that it carries before the first light
	Rule                  Given[float64] // share of the breaker that may be used, 0 to 1
	Kind                  Given[term.Feed]
	From                  Ref // the circuit that feeds it
	Phases                Given[int]
	Phase                 Given[term.Phase]
	Residual              Given[float64] // mA
	Power, KVA            Given[float64] // what it gives at most, W and kVA
	Energy, Usable        Given[float64] // Wh, and the share of it that gets to the lights, 0 to 1
	Tank, Burn            Given[float64] // litres, and litres an hour
	Item                  Given[string]  // of the kit
	Plug                  Given[string]
}

var circuitTable = tableOf("circuit", "A circuit that lights are put on, or that feeds others.", nil, slices.Concat(circuitKeys(), treeKeys(), sourceKeys())...).meant(otherCircuitKeys)

// circuitKeys are those of any circuit.
func circuitKeys() []entry[Circuit] {
	return []entry[Circuit]{
		value("volts", quantity("a voltage", "230", numbers, between(1, 1000)),
			func(t *Circuit) *Given[float64] { return &t.Volts },
			"Its voltage; of three phases that from one of them to the neutral.", "230", "that of its item or of what feeds it, else 230 on 50 Hz, 120 on 60 Hz"),
		value("breaker", quantity("a breaker", "16", numbers, between(0.1, 5000)),
			func(t *Circuit) *Given[float64] { return &t.Breaker },
			"What its breaker carries, A; of three phases each.", "16", "that of its item, else what the outlets of the circuit that feeds it carry"),
		value("at", place, func(t *Circuit) *Given[Place] { return &t.At },
			"Where its outlet is.", "{wall: kitchen.left, along: 0.4}", "not drawn"),
		value("hertz", quantity("a frequency", "50", numbers, between(0, 1000)),
			func(t *Circuit) *Given[float64] { return &t.Hertz },
			"Of the mains; 0 for direct current.", "50", "that of what feeds it, else 50, and 60 where lengths are in feet"),
		value("already", quantity("a load", "300 W", watts, between(0, 1e6)),
			func(t *Circuit) *Given[float64] { return &t.Already },
			"What is on it before the first light; on three phases a third of it on each.", "300 W", "0 W"),
		value("rule", quantity("a rule", "80 %", percents, between(0.01, 1)), func(t *Circuit) *Given[float64] { return &t.Rule },
			"The share of the breaker that may be used.", "80 %", unit.FormatPercent(DefaultRule)),
		value("kind", source.Vocabulary("a circuit", term.Feeds), func(t *Circuit) *Given[term.Feed] { return &t.Kind },
			"What feeds it. A battery gives direct current unless its `hertz` or its item says otherwise, and its volts have to be said.", "generator",
			"that of its item or of what feeds it, else "+string(DefaultFeed)),
	}
}

// treeKeys are those of circuits that feed others.
func treeKeys() []entry[Circuit] {
	return []entry[Circuit]{
		into("from", ref("a circuit", "house"), func(t *Circuit, r Ref, _ *source.Node) { t.From = r },
			"The circuit that feeds it: what it carries is carried by that one too.", "house", "none"),
		value("phases", source.Int("a number of phases", 1, 3), func(t *Circuit) *Given[int] { return &t.Phases },
			"3 where it has three phases and a neutral. Lights are put on circuits that are fed by one of them.", "3", "those of its item, else 1"),
		value("phase", source.Vocabulary("a phase", term.Phases), func(t *Circuit) *Given[term.Phase] { return &t.Phase },
			"The phase that it is on, of a circuit that is fed by three.", "L1", "none"),
		value("residual", quantity("a residual current", "30", numbers, between(1, 1000)), func(t *Circuit) *Given[float64] { return &t.Residual },
			"Residual current at which its protection trips, mA.", "30", "that of its item, else nobody knows of one"),
		value("plug", text("a plug", "IEC 60309, 16 A"), func(t *Circuit) *Given[string] { return &t.Plug },
			"What goes into its outlets, by the words of the kit's cables.", `"IEC 60309, 16 A"`, "the plug of the country"),
	}
}

// sourceKeys are those of what gives power itself.
func sourceKeys() []entry[Circuit] {
	litres := func(what string, most float64) source.Reader[float64] {
		return quantity(what, "4.5", numbers, between(0.01, most))
	}
	return []entry[Circuit]{
		value("item", text("an item of the kit", "generator-2000"), func(t *Circuit) *Given[string] { return &t.Item },
			"The thing of the kit that it is, a generator, a battery, a distribution: its figures hold where the circuit says none, and the kit list has it.", "generator-2000", "none"),
		value("power", quantity("a power", "1800 W", watts, between(1, 1e7)), func(t *Circuit) *Given[float64] { return &t.Power },
			"What a generator or a battery gives at most.", "1800 W", "that of its item, else not known"),
		value("kva", quantity("an apparent power", "2.2", numbers, between(0.01, 1e4)), func(t *Circuit) *Given[float64] { return &t.KVA },
			"Apparent power that a generator gives at most, kVA; of three phases all of it.", "2.2", "not known"),
		value("energy", quantity("an energy", "1000", numbers, between(1, 1e7)), func(t *Circuit) *Given[float64] { return &t.Energy },
			"Of a battery, watt-hours.", "1000", "that of its item, else not known"),
		value("usable", quantity("a share", "80 %", percents, between(0.01, 1)), func(t *Circuit) *Given[float64] { return &t.Usable },
			"The share of a battery's energy that gets to the lights.", "90 %", unit.FormatPercent(DefaultUsable)),
		value("tank", litres("a tank", 1e5), func(t *Circuit) *Given[float64] { return &t.Tank },
			"Fuel in the tank of a generator, litres.", "4.5", "not known"),
		value("burn", litres("a burn", 1e4), func(t *Circuit) *Given[float64] { return &t.Burn },
			"Fuel that a generator burns at its full load, litres an hour.", "1.1", "not known"),
	}
}
