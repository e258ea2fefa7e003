package main

import (
	"fmt"
	"strings"

	"scrimshaw/plan/kit"
	"scrimshaw/plan/unit"
)

// unitPage is all that the catalogue holds of a unit, as text.
func unitPage(u *kit.Unit, catalogue *kit.Catalogue) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s. %s\n", u.Name, u.Label, u.Doc)
	figures := catalogue.Figures(u)
	for _, f := range unitFacts(&figures) {
		if f[1] != "" {
			fmt.Fprintf(&b, "  %-14s  %s\n", f[0], f[1])
		}
	}
	b.WriteString("\n" + modifierTable(figures.With) + "\n" + kitFooter)
	return b.String()
}

// unitFacts are the lines of a unit: what it is about, and the figures.
func unitFacts(f *kit.UnitFigures) [][2]string {
	return [][2]string{
		{"draws", drawWords(f)},
		{"mains", mainsWords(f)},
		{"white", whiteWords(f)},
		{"light by white", byWhiteWords(f.ByWhite)},
		{"dims", levelWords(f)},
		{"flicker", flickerWords(f)},
		{"mass", massWords(f)},
		{"mount", joined(", ", f.Spigot, f.Stand)},
		{"battery", batteryWords(f.Battery)},
		{"protection", f.Protection},
		{"comes with", joined(", ", strings.Join(f.ComesWith, ", "), ownCableWords(f.OwnCable))},
		{"case", sizeWords(f.Case)},
		{"bulb", f.Bulb},
	}
}

func ownCableWords(metres float64) string {
	if metres == 0 {
		return ""
	}
	return "mains cable of " + unit.FormatNumber(metres) + " m"
}

func drawWords(f *kit.UnitFigures) string {
	amps := func(a *float64, volts int) string {
		if a == nil {
			return ""
		}
		return fmt.Sprintf("%s A at %d V", unit.FormatFigures(*a), volts)
	}
	factor := ""
	if f.PowerFactor < 1 {
		factor = "power factor " + unit.FormatNumber(f.PowerFactor)
	}
	inrush := ""
	if f.Inrush > 0 {
		inrush = fmt.Sprintf("%g A as it is switched on", f.Inrush)
	}
	leakage := ""
	if f.Leakage != nil {
		leakage = unit.FormatNumber(*f.Leakage) + " mA down its earth"
	}
	return joined(", ", unit.FormatPower(f.Watts), amps(f.Amps230, kit.MainsHigh), amps(f.Amps120, kit.MainsLow), factor, inrush, leakage)
}

func mainsWords(f *kit.UnitFigures) string {
	volts := ""
	if len(f.Volts) == 2 {
		volts = fmt.Sprintf("%g to %g V", f.Volts[0], f.Volts[1])
	}
	return joined(", ", f.Inlet, volts)
}

func whiteWords(f *kit.UnitFigures) string {
	words := unit.FormatKelvin(f.Native)
	if f.Kelvin[0] != f.Kelvin[1] {
		words = fmt.Sprintf("%s to %s, %s where nothing is said", unit.FormatKelvin(f.Kelvin[0]), unit.FormatKelvin(f.Kelvin[1]), words)
	}
	if f.Tint > 0 {
		words += ", tint to " + unit.FormatDuv(f.Tint) + " Duv either way"
	}
	if f.Warms {
		words += ", warmer as it dims"
	}
	return words
}

func byWhiteWords(all []kit.WhiteShare) string {
	var words []string
	for _, w := range all {
		words = append(words, unit.FormatKelvin(w.Kelvin)+" "+unit.FormatPercent(w.Share))
	}
	return strings.Join(words, ", ")
}

func levelWords(f *kit.UnitFigures) string {
	switch {
	case f.LeastLevel >= 1:
		return "not"
	case f.LeastLevel == 0:
		return "all the way down"
	}
	words := "to " + unit.FormatPercent(f.LeastLevel)
	if f.LevelStep > 0 {
		words += " in steps of " + unit.FormatPercent(f.LevelStep)
	}
	if f.KelvinAtLeast > 0 {
		words += ", and is " + unit.FormatKelvin(f.KelvinAtLeast) + " there"
	}
	return words
}

func flickerWords(f *kit.UnitFigures) string {
	if f.Flicker == 0 {
		return ""
	}
	return unit.FormatPercent(f.Flicker) + " deep, at twice the mains"
}

func massWords(f *kit.UnitFigures) string {
	words := unit.FormatMass(f.Mass)
	if f.SupplyMass > 0 {
		words += " on the stand, " + unit.FormatMass(f.SupplyMass) + " beside it"
	}
	return words
}

func batteryWords(b *kit.Battery) string {
	if b == nil {
		return ""
	}
	kind := "built in"
	if b.Plates > 0 {
		kind = fmt.Sprintf("%d on plates", b.Plates)
	}
	hours := ""
	if b.Hours > 0 {
		hours = fmt.Sprintf("for %g h", b.Hours)
	}
	return joined(", ", fmt.Sprintf("%g V", b.Volts), kind, joined(" ", unit.FormatPercent(b.Share)+" of its light", hours))
}

func sizeWords(size []float64) string {
	if len(size) != 3 {
		return ""
	}
	return fmt.Sprintf("%.2f x %.2f x %.2f m", size[0], size[1], size[2])
}

// modifierTable is the light with each modifier; what goes on a modifier stands indented below it.
func modifierTable(all []kit.ModifierLight) string {
	rows := [][]string{{"WITH", "LUMENS", "LX AT 3 M", "BEAM", "AT SPOT", "BEAM", "ON STAND"}}
	for _, s := range all {
		name := s.Modifier
		if _, cover, stacked := strings.Cut(name, " + "); stacked {
			name = "  + " + cover
		}
		row := []string{name, unit.FormatFigures(s.Flood.Lumens), unit.FormatFigures(s.Flood.Lux), unit.FormatAngle(s.Flood.Beam), "", "", unit.FormatMass(s.StandMass)}
		if s.Spot != nil {
			row[4], row[5] = unit.FormatFigures(s.Spot.Lux), unit.FormatAngle(s.Spot.Beam)
		}
		rows = append(rows, row)
	}
	return columns(rows)
}

// columns sets rows in columns, the first to the left, the others to the right.
func columns(rows [][]string) string {
	widths := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, cell := range r {
			widths[i] = max(widths[i], len([]rune(cell)))
		}
	}
	var b strings.Builder
	for _, r := range rows {
		fmt.Fprintf(&b, "  %-*s", widths[0], r[0])
		for i, cell := range r[1:] {
			fmt.Fprintf(&b, "  %*s", widths[i+1], cell)
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// joined joins what is not empty.
func joined(between string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, between)
}
