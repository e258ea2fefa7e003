package section

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
	"scrimshaw/render/sheet/layout"
	"scrimshaw/symbols/ink"
)

// circuits is what each circuit carries, and how much it may: with all lights at full, which is what a breaker has to hold, and as they are set.
func circuits(s *plan.Setup, c Units) *Section {
	all := supply.Of(s)
	if len(all.Loads) == 0 {
		return &Section{}
	}
	t := Table{Columns: []Column{
		{Strong: true, Breaks: true},
		{Flexible: true},
		{Head: "as set", Align: ink.Right},
		{Head: "at full", Align: ink.Right},
		{Head: "may carry", Align: ink.Right},
	}}
	for i := range all.Loads {
		l := &all.Loads[i]
		t.Entries = append(t.Entries, Entry{
			Cells: []string{l.Circuit.Name, strings.Join(l.Numbers(), ", "), amps(l, l.AsSet), amps(l, l.Full), unit.FormatAmps(l.Circuit.Limit())},
			Notes: NonEmpty(feedWords(l), SourceWords(l), PhaseWords(l), LeakageWords(l), c.feederWords(l), c.cableWords(l)),
			Alarm: l.Overloaded() || l.OverPower(),
		})
	}
	listed := &Section{Title: "Circuits", Rank: layout.Listed, Tables: []Table{t}}
	if len(all.Loose) > 0 {
		listed.Words = []string{"On no circuit: " + numbersOf(all.Loose) + "."}
	}
	return listed
}

// SourceWords say what a generator or a battery has to give, what it can, and how long it lasts; "" of all else.
func SourceWords(l *supply.Load) string {
	c := l.Circuit
	if c.Watts == 0 && c.VoltAmps == 0 && c.Energy == 0 && c.Tank == 0 && c.Burn == 0 {
		return ""
	}
	var words []string
	if c.Watts > 0 || c.VoltAmps > 0 {
		words = append(words, "at full "+unit.FormatPower(math.Ceil(l.Flow.Watts-1e-6))+" and "+kva(l.Flow.VoltAmps)+" of "+Joined(" and ", nonZero(c.Watts, unit.FormatPower), nonZero(c.VoltAmps, kva)))
	}
	if c.Energy > 0 {
		words = append(words, unit.FormatPercent(c.Usable)+" of "+unit.FormatNumber(c.Energy)+" Wh, as set "+unit.FormatPower(math.Ceil(l.Set.Watts-1e-6)))
	}
	switch hours := l.Hours(); {
	case c.Energy > 0 && hours > 0:
		words = append(words, "lasts "+unit.FormatHours(hours))
	case hours > 0:
		words = append(words, "a tank of "+unit.FormatNumber(c.Tank)+" l lasts "+unit.FormatHours(hours)+" at full load")
	case c.Tank > 0:
		words = append(words, "a tank of "+unit.FormatNumber(c.Tank)+" l, and nobody says what it burns")
	case c.Burn > 0:
		words = append(words, "burns "+unit.FormatNumber(c.Burn)+" l an hour at full load")
	}
	return strings.Join(words, "; ")
}

// kva prints an apparent power, rounded up.
func kva(voltAmps float64) string {
	return unit.FormatNumber(math.Ceil(voltAmps/10-1e-6)/100) + " kVA"
}

// nonZero is a figure in words; "" where it is not known.
func nonZero(v float64, words func(float64) string) string {
	if v == 0 {
		return ""
	}
	return words(v)
}

// PhaseWords say what each of three phases and the neutral carry with all lights at full; "" of one phase.
func PhaseWords(l *supply.Load) string {
	if !l.Circuit.ThreePhases {
		return ""
	}
	var each []string
	for p, name := range term.Phases {
		each = append(each, string(name)+" "+supply.AmpsOver(l.Flow.Amps[p]))
	}
	return fmt.Sprintf("at full %s; neutral %s, with third harmonics up to %s; the fullest %.0f %% over the mean", strings.Join(each, ", "),
		supply.AmpsOver(l.Flow.Neutral()), supply.AmpsOver(l.Flow.WorstNeutral()), 100*l.Flow.Uneven())
}

// LeakageWords say what flows down the earth beside what the protection of the circuit trips at; "" where nothing says that it has one.
func LeakageWords(l *supply.Load) string {
	if l.Circuit.Residual == 0 {
		return ""
	}
	return fmt.Sprintf("about %s mA down the earth, protection at %s mA", unit.FormatNumber(math.Ceil(10*l.Leakage-1e-6)/10), unit.FormatNumber(l.Circuit.Residual))
}

// feederWords say the cable from what feeds a circuit.
func (c Units) feederWords(l *supply.Load) string {
	if l.Feeder == nil {
		return ""
	}
	words := Joined(" ", "fed by "+c.Length(l.Feeder.Length)+" of cable", c.WayWords(l.Feeder.Run))
	if l.Feeder.Section > 0 {
		words += " of " + unit.FormatNumber(l.Feeder.Section) + " mm², loses " + LossWords(l.Feeder.Drop)
	}
	return words
}

// WayWords say what a cable leads through and over, and between which floors it climbs.
func (c Units) WayWords(r *plan.Run) string {
	climb := ""
	if r.Climb > 0 {
		climb = "with " + c.Length(r.Climb) + " between two floors"
	}
	return Joined(" ", Prefixed("through ", strings.Join(r.Through, " and ")), Prefixed("over ", strings.Join(r.Stairs, " and ")), climb)
}

// circuitsSince are those of the set-up, a bar beside each row that does not read as on the sheet before.
func circuitsSince(in *Input, u Units) *Section {
	if in.NoMains {
		return &Section{}
	}
	now := circuits(in.Setup, u)
	if from := in.Since; from != nil && from.Setup != nil {
		MarkNew(now, circuits(from.Setup, u))
	}
	return now
}

// cableWords say how much cable goes from the outlet to each light, and the most that one of them loses.
func (c Units) cableWords(l *supply.Load) string {
	var runs []string
	section, drop := 0.0, 0.0
	for _, d := range l.Draws {
		if d.Run == nil {
			continue
		}
		section, drop = d.Run.Section, math.Max(drop, d.Run.InAll)
		runs = append(runs, Joined(" ", d.Light.Tag+": "+c.Length(d.Run.Length), c.WayWords(d.Run.Run)))
	}
	if len(runs) == 0 {
		return ""
	}
	words := "cable: " + strings.Join(runs, ", ")
	if section == 0 {
		return words
	}
	return words + "; of " + unit.FormatNumber(section) + " mm², loses up to " + LossWords(drop)
}

// LossWords print the share of its volts that a cable loses, to a tenth of a percent; what is less than that is no nothing.
func LossWords(share float64) string {
	if share > 0 && share < 0.0005 {
		return "less than 0.1 %"
	}
	return fmt.Sprintf("%.1f %%", 100*share)
}

// amps is a load of a circuit; a dash where its voltage is not known.
func amps(l *supply.Load, load float64) string {
	if !l.Known {
		return "–"
	}
	return supply.AmpsOver(load)
}

// numbersOf are the numbers of lights, as they stand on the plan.
func numbersOf(draws []supply.Draw) string {
	var tags []string
	for _, d := range draws {
		tags = append(tags, d.Light.Tag)
	}
	return strings.Join(tags, ", ")
}

// feedWords say what feeds a circuit, its breaker where that is not all that it may carry, and what the figures are without.
func feedWords(l *supply.Load) string {
	c := l.Circuit
	words := string(c.Kind)
	if l.Known {
		words += " of " + unit.FormatNumber(c.Volts) + " V"
	}
	if l.From != nil {
		words = Joined(" on ", "fed by "+l.From.Circuit.Name, string(c.Phase)) + ", " + words
	}
	if c.ThreePhases {
		words = "three phases, " + words
	}
	if c.Item != "" {
		words += ", " + c.Item
	}
	if c.Plug != "" {
		words += ", outlets for " + c.Plug
	}
	if c.Rule != 1 {
		words += ", " + unit.FormatPercent(c.Rule) + " of a breaker of " + unit.FormatAmps(c.Breaker)
	}
	if c.Already > 0 {
		words += "; " + unit.FormatPower(c.Already) + " on it already"
	}
	if l.Cue != "" {
		words += "; as set it carries most after " + l.Cue
	}
	var unknown []string
	for _, light := range l.Unknown() {
		unknown = append(unknown, light.Tag)
	}
	if len(unknown) > 0 {
		words += "; without " + strings.Join(unknown, ", ") + ", whose power nothing says"
	}
	return words
}

// circuitWords say which circuit a light is on.
func circuitWords(l *plan.Light) string {
	if l.Circuit == "" {
		return ""
	}
	return "on " + l.Circuit
}
