package section

import (
	"fmt"
	"math"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/supply"
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
		{Strong: true},
		{Flexible: true},
		{Head: "as set", Align: ink.Right},
		{Head: "at full", Align: ink.Right},
		{Head: "may carry", Align: ink.Right},
	}}
	for i := range all.Loads {
		l := &all.Loads[i]
		t.Entries = append(t.Entries, Entry{
			Cells: []string{l.Circuit.Name, numbersOf(l.Draws), amps(l, l.AsSet), amps(l, l.Full), unit.FormatAmps(l.Circuit.Limit())},
			Notes: NonEmpty(feedWords(l), c.cableWords(l)),
			Alarm: l.Overloaded(),
		})
	}
	listed := &Section{Title: "Circuits", Rank: layout.Listed, Tables: []Table{t}}
	if len(all.Loose) > 0 {
		listed.Words = []string{"On no circuit: " + numbersOf(all.Loose) + "."}
	}
	return listed
}

// circuitsSince are those of the set-up, a bar beside each row that does not read as on the sheet before.
func circuitsSince(in *Input, u Units) *Section {
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
		section, drop = d.Run.Section, math.Max(drop, d.Run.Drop)
		words := d.Light.Tag + ": " + c.Length(d.Run.Length)
		if len(d.Run.Through) > 0 {
			words += " through " + strings.Join(d.Run.Through, " and ")
		}
		runs = append(runs, words)
	}
	if len(runs) == 0 {
		return ""
	}
	words := "cable: " + strings.Join(runs, ", ")
	if section == 0 {
		return words
	}
	return words + fmt.Sprintf("; of %s mm², loses up to %.1f %%", unit.FormatNumber(section), 100*drop)
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
