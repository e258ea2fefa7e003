package list

import (
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/section"
)

// circuitColumns are those of what each circuit carries.
var circuitColumns = []Column{
	{Key: "setup", Head: "set-up", Doc: "the set-up; \"\" of a scene without"},
	{Key: "circuit", Head: "circuit", Doc: "its name"},
	{Key: "kind", Head: "from", Doc: "house, generator or battery"},
	{Key: "fedBy", Head: "fed by", Doc: "the circuit that feeds it, and on which of its phases"},
	{Key: "volts", Head: "V", Doc: "its voltage, V; of three phases that from one to the neutral", Number: true},
	{Key: "numbers", Head: "lights", Doc: "the numbers of the lights on it and on what it feeds"},
	{Key: "ampsAsSet", Head: "A as set", Doc: "with each light at its level, in the set-up or after the cue that takes most, A; of three phases on the fullest", Number: true},
	{Key: "cue", Head: "after", Doc: "that cue; \"\" where the set-up itself takes as much"},
	{Key: "ampsFull", Head: "A at full", Doc: "with each light at full, A", Number: true},
	{Key: "ampsLimit", Head: "may carry A", Doc: "what of its breaker may be used, A", Number: true},
	{Key: "ampsLeft", Head: "left A", Doc: "what is left with each light at full, A; less than 0 is too much", Number: true},
	{Key: "phases", Head: "phases", Doc: "of three: the amps of each and of the neutral with each light at full"},
	{Key: "source", Head: "source", Doc: "of a generator or a battery: what it has to give, what it can, and how long it lasts"},
	{Key: "leakageMilliamps", Head: "mA earth", Doc: "about what flows down the earth all the time, mA", Number: true},
	{Key: "residualMilliamps", Head: "trips at mA", Doc: "residual current at which its protection trips, mA", Number: true},
	{Key: "hours", Head: "hours", Doc: "that its battery lasts as set, or its tank at full load, h", Number: true},
	{Key: "cable", Head: "cable", Doc: "from what feeds it: length, section, what it loses; and from its outlet to each light, with what is lost in all on the way to that"},
	{Key: "without", Head: "without", Doc: "the numbers of the lights of which nobody knows what they draw"},
}

// addCircuits adds what each circuit of a set-up carries.
func (d *Day) addCircuits(s *plan.Setup, powered *supply.Supply) {
	for i := range powered.Loads {
		l := &powered.Loads[i]
		row := make([]Cell, len(circuitColumns))
		put := func(key string, c Cell) { row[d.Circuits.At(key)] = c }
		for key, text := range map[string]string{"setup": s.Name, "circuit": l.Circuit.Name, "kind": string(l.Circuit.Kind), "fedBy": section.Joined(" ", l.Circuit.From, string(l.Circuit.Phase)),
			"numbers": strings.Join(l.Numbers(), ", "), "cue": l.Cue, "phases": section.PhaseWords(l), "source": section.SourceWords(l), "cable": cablesOf(l, s.Feet), "without": unknownOf(l)} {
			put(key, words(text))
		}
		put("ampsLimit", number(l.Circuit.Limit(), 2))
		put("leakageMilliamps", known(l.Leakage, 1))
		put("residualMilliamps", known(l.Circuit.Residual, 1))
		put("hours", known(wholeMinutes(l.Hours()), 4))
		if l.Known {
			put("volts", number(l.Circuit.Volts, 1))
			put("ampsLeft", noMore(l.Room(), 2))
			put("ampsAsSet", noLess(l.AsSet, 2))
			put("ampsFull", noLess(l.Full, 2))
		}
		d.Circuits.Rows = append(d.Circuits.Rows, row)
	}
}

// unknownOf are the numbers of the lights of which nobody knows what they draw.
func unknownOf(l *supply.Load) string {
	var unknown []string
	for _, lamp := range l.Unknown() {
		unknown = append(unknown, lamp.Tag)
	}
	return strings.Join(unknown, ", ")
}

// wholeMinutes are hours rounded down to a minute: what is rounded down further from there comes out as from the hours themselves.
func wholeMinutes(hours float64) float64 { return math.Floor(60*hours+1e-6) / 60 }

// cablesOf say the cable that feeds a circuit, and those to its lights.
func cablesOf(l *supply.Load, feet bool) string {
	var runs []string
	if l.Feeder != nil {
		runs = append(runs, runWords("from "+l.Circuit.From, l.Feeder, l.Feeder.Drop, feet))
	}
	for i := range l.Draws {
		if d := &l.Draws[i]; d.Run != nil {
			runs = append(runs, runWords(d.Light.Tag, d.Run, d.Run.InAll, feet))
		}
	}
	return strings.Join(runs, "; ")
}

// runWords say one cable, and the share that is lost: "2: 7.4 m of 1.5 mm², loses 0.4 %".
func runWords(to string, r *supply.Run, lost float64, feet bool) string {
	text := to + ": " + unit.FormatLength(r.Length, feet)
	if r.Section > 0 {
		text += " of " + unit.FormatNumber(r.Section) + " mm²"
	}
	if lost > 0 {
		text += ", loses " + section.LossWords(lost)
	}
	return section.Joined(", ", text, section.Units{Feet: feet}.WayWords(r.Run))
}
