package list

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
)

// circuitColumns are those of what each circuit carries.
var circuitColumns = []Column{
	{Key: "setup", Head: "set-up", Doc: "the set-up; \"\" of a scene without"},
	{Key: "circuit", Head: "circuit", Doc: "its name"},
	{Key: "kind", Head: "from", Doc: "house, generator or battery"},
	{Key: "volts", Head: "V", Doc: "its voltage, V", Number: true},
	{Key: "numbers", Head: "lights", Doc: "the numbers of the lights on it"},
	{Key: "ampsAsSet", Head: "A as set", Doc: "with each light at its level, in the set-up or after the cue that takes most, A", Number: true},
	{Key: "cue", Head: "after", Doc: "that cue; \"\" where the set-up itself takes as much"},
	{Key: "ampsFull", Head: "A at full", Doc: "with each light at full, A", Number: true},
	{Key: "ampsLimit", Head: "may carry A", Doc: "what of its breaker may be used, A", Number: true},
	{Key: "ampsLeft", Head: "left A", Doc: "what is left with each light at full, A; less than 0 is too much", Number: true},
	{Key: "cable", Head: "cable", Doc: "from its outlet to each light: length, section, what it loses"},
	{Key: "without", Head: "without", Doc: "the numbers of the lights of which nobody knows what they draw"},
}

// addCircuits adds what each circuit of a set-up carries.
func (d *Day) addCircuits(s *plan.Setup, powered *supply.Supply) {
	for i := range powered.Loads {
		l := &powered.Loads[i]
		volts, asSet, full, left := Cell{}, Cell{}, Cell{}, Cell{}
		if l.Known {
			volts, left = number(l.Circuit.Volts, 1), number(l.Room(), 2)
			asSet, full = number(l.AsSet, 2), number(l.Full, 2)
		}
		var tags, unknown, runs []string
		for _, draw := range l.Draws {
			tags = append(tags, draw.Light.Tag)
			if run := cableWords(&draw, s.Feet); run != "" {
				runs = append(runs, run)
			}
		}
		for _, lamp := range l.Unknown() {
			unknown = append(unknown, lamp.Tag)
		}
		d.Circuits.Rows = append(d.Circuits.Rows, []Cell{
			words(s.Name), words(l.Circuit.Name), words(string(l.Circuit.Kind)), volts, words(strings.Join(tags, ", ")), asSet, words(l.Cue), full,
			number(l.Circuit.Limit(), 2), left, words(strings.Join(runs, "; ")), words(strings.Join(unknown, ", ")),
		})
	}
}

// cableWords say the cable of a light: "2: 7.4 m of 1.5 mm², loses 0.4 %".
func cableWords(d *supply.Draw, feet bool) string {
	if d.Run == nil {
		return ""
	}
	text := d.Light.Tag + ": " + unit.FormatLength(d.Run.Length, feet)
	if d.Run.Section > 0 {
		text += " of " + unit.FormatNumber(d.Run.Section) + " mm²"
	}
	if d.Run.Drop > 0 {
		text += fmt.Sprintf(", loses %.1f %%", 100*d.Run.Drop)
	}
	if len(d.Run.Through) > 0 {
		text += ", through " + strings.Join(d.Run.Through, " and ")
	}
	return text
}
