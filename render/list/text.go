package list

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"scrimshaw/plan/unit"
)

// WriteText writes all lists for a reader, lengths in the units of the scene.
func WriteText(w io.Writer, d *Day, feet bool) error {
	var b strings.Builder
	if d.Scene != "" {
		b.WriteString(d.Scene + "\n\n")
	}
	d.writeKit(&b)
	d.writeTable(&b, &d.Dimmers, "DIMMERS: the most in use at one time")
	d.writeLamps(&b, feet)
	d.writeCircuits(&b)
	if len(d.Setups) > 1 {
		d.writeTable(&b, &d.Power, "POWER: the worst of all set-ups")
	}
	b.WriteString("\nWITHOUT\n")
	for _, line := range d.Lacks() {
		b.WriteString("  - " + line + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// writeKit writes the kit as a table, its notes below each line, and the totals.
func (d *Day) writeKit(b *strings.Builder) {
	t := &d.Kit
	b.WriteString("KIT: the most of each in use at one time\n")
	shelf := ""
	columns := append([]int{t.At("count")}, t.filled([]int{t.At("spares"), t.At("what"), t.At("kgEach"), t.At("kg"), t.At("litres"), t.At("rate"), t.At("price"), t.At("name"), t.At("numbers")})...)
	wide := t.widths(columns)
	b.WriteString(t.line(-1, columns, wide))
	for r := range t.Rows {
		if s := t.Said(r, t.At("shelf")); s != shelf {
			shelf = s
			b.WriteString(strings.ToUpper(s) + "\n")
		}
		b.WriteString(t.line(r, columns, wide))
		if note := joined("; ", before("or equal: ", t.Said(r, t.At("orEqual"))), t.Said(r, t.At("note"))); note != "" {
			fmt.Fprintf(b, "%*s%s\n", wide[0]+6, "", note)
		}
	}
	total := []string{}
	if mass := d.Mass(); mass.Number != nil {
		total = append(total, unit.FormatMass(*mass.Number))
	}
	if volume := d.Volume(); volume.Number != nil {
		total = append(total, unit.FormatNumber(*volume.Number)+" litres of cases")
	}
	if len(total) > 0 {
		b.WriteString("\n  total " + strings.Join(total, ", ") + "\n")
	}
	d.writeTable(b, &d.Consumables, "CONSUMABLES: what does not come back")
	if mass := d.ConsumableMass(); mass.Number != nil {
		b.WriteString("\n  total " + unit.FormatMass(*mass.Number) + "\n")
	}
	d.writePrices(b)
}

// writePrices writes what all of it costs, where the scene has a price file.
func (d *Day) writePrices(b *strings.Builder) {
	if terms := d.Terms(); terms != "" {
		money := func(c Cell) string { return strconv.FormatFloat(*c.Number, 'f', 2, 64) }
		fmt.Fprintf(b, "\n  hire %s, consumables %s, together %s: %s\n", money(d.Hire()), money(d.Sales()), money(d.Price()), terms)
	}
}

// widths are those of some columns with their heads.
func (t *Table) widths(columns []int) []int {
	wide := make([]int, len(columns))
	for i, c := range columns {
		wide[i] = utf8.RuneCountInString(t.Columns[c].Head)
		for r := range t.Rows {
			wide[i] = max(wide[i], utf8.RuneCountInString(t.Said(r, c)))
		}
	}
	return wide
}

// line is one row of some columns, numbers to the right; row -1 is the heads.
func (t *Table) line(row int, columns, wide []int) string {
	var b strings.Builder
	for i, c := range columns {
		text := t.Columns[c].Head
		if row >= 0 {
			text = t.Said(row, c)
		}
		space := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(text))
		if t.Columns[c].Number {
			text = space + text
		} else {
			text += space
		}
		b.WriteString("  " + text)
	}
	return strings.TrimRight(b.String(), " ") + "\n"
}

// writeLamps writes each lamp as a few lines, under its set-up.
func (d *Day) writeLamps(b *strings.Builder, feet bool) {
	t := &d.Lamps
	for r := range t.Rows {
		if setup := t.Said(r, t.At("setup")); r == 0 || setup != t.Said(r-1, t.At("setup")) {
			b.WriteString("\n" + strings.TrimSpace("LAMPS "+setup) + "\n")
		}
		fmt.Fprintf(b, "  %-3s %s\n", t.Said(r, t.At("number")), t.some(r, ", ", "unit", "wears", "scrims", "doors", "focus", "filters"))
		height := ""
		if h := t.Rows[r][t.At("heightMetres")].Number; h != nil {
			height = "height " + unit.FormatLength(*h, feet)
		}
		for _, line := range []string{
			joined(", ", t.some(r, ", ", "role"), height, t.some(r, ", ", "rise"), before("at ", t.some(r, "", "aim")), t.tilt(r), t.figure(r, "panDegrees", "pan %s°"),
				before("level ", t.some(r, "", "level")), t.figure(r, "lightPercent", "that is %s %% of its light"), t.some(r, "", "colour"), t.some(r, "", "dimmer"), before("circuit ", t.some(r, "", "circuit")), t.figure(r, "amps", "%s A at full")),
			joined(", ", t.some(r, "", "mount"), t.bags(r), t.some(r, "", "placing")),
			before("in cues: ", t.some(r, "", "cues")), t.some(r, "", "note"), t.some(r, "", "change"), before("then ", t.some(r, "", "next")),
		} {
			if line != "" {
				b.WriteString("      " + line + "\n")
			}
		}
	}
}

// some joins the words of some columns.
func (t *Table) some(row int, between string, keys ...string) string {
	var all []string
	for _, key := range keys {
		all = append(all, t.Said(row, t.At(key)))
	}
	return joined(between, all...)
}

// figure is a number in a phrase; "" where it is not known.
func (t *Table) figure(row int, key, phrase string) string {
	if t.Rows[row][t.At(key)].Number == nil {
		return ""
	}
	return fmt.Sprintf(phrase, t.Said(row, t.At(key)))
}

// tilt says the tilt of a lamp as a gaffer does.
func (t *Table) tilt(row int) string {
	tilt := t.Rows[row][t.At("tiltDegrees")].Number
	switch {
	case tilt == nil:
		return ""
	case *tilt == -90:
		return "straight down"
	case *tilt == 90:
		return "straight up"
	case *tilt < 0:
		return unit.FormatAngle(-*tilt) + " down"
	case *tilt > 0:
		return unit.FormatAngle(*tilt) + " up"
	}
	return "level"
}

// bags says how many sandbags a lamp has, where it has any.
func (t *Table) bags(row int) string {
	switch n := t.Rows[row][t.At("bags")].Number; {
	case n == nil || *n == 0:
		return ""
	case *n == 1:
		return "1 bag"
	}
	return t.figure(row, "bags", "%s bags")
}

// before puts words before a text that there is.
func before(words, text string) string {
	if text == "" {
		return ""
	}
	return words + text
}

func joined(between string, parts ...string) string {
	var some []string
	for _, p := range parts {
		if p != "" {
			some = append(some, p)
		}
	}
	return strings.Join(some, between)
}

// writeCircuits writes what each circuit carries.
func (d *Day) writeCircuits(b *strings.Builder) {
	t := &d.Circuits
	if len(t.Rows) == 0 {
		return
	}
	b.WriteString("\nCIRCUITS\n")
	columns := []int{t.At("setup"), t.At("circuit"), t.At("kind"), t.At("fedBy"), t.At("volts"), t.At("numbers"), t.At("ampsAsSet"), t.At("ampsFull"), t.At("ampsLimit"), t.At("ampsLeft")}
	columns = t.filled(columns)
	wide := t.widths(columns)
	b.WriteString(t.line(-1, columns, wide))
	for r := range t.Rows {
		b.WriteString(t.line(r, columns, wide))
		for _, note := range []string{t.some(r, "; ", "phases", "source"), t.earth(r), before("cable ", t.some(r, "", "cable")), before("as set it carries most after ", t.some(r, "", "cue")), before("without the amps of ", t.some(r, "", "without")), t.tooMuch(r)} {
			if note != "" {
				b.WriteString("      " + note + "\n")
			}
		}
	}
}

// earth says what flows down the earth of a circuit whose protection is known.
func (t *Table) earth(row int) string {
	if t.Rows[row][t.At("residualMilliamps")].Number == nil {
		return ""
	}
	return "about " + t.Said(row, t.At("leakageMilliamps")) + " mA down the earth, protection at " + t.Said(row, t.At("residualMilliamps")) + " mA"
}

// writeTable writes all columns of a table in which something stands.
func (d *Day) writeTable(b *strings.Builder, t *Table, title string) {
	if len(t.Rows) == 0 {
		return
	}
	b.WriteString("\n" + title + "\n")
	columns := make([]int, len(t.Columns))
	for i := range columns {
		columns[i] = i
	}
	columns = t.filled(columns)
	wide := t.widths(columns)
	b.WriteString(t.line(-1, columns, wide))
	for r := range t.Rows {
		b.WriteString(t.line(r, columns, wide))
	}
}

// filled are those of some columns in which something stands.
func (t *Table) filled(columns []int) (some []int) {
	for _, c := range columns {
		for r := range t.Rows {
			if said := t.Said(r, c); said != "" && said != Dash {
				some = append(some, c)
				break
			}
		}
	}
	return some
}

// tooMuch says that a circuit carries more than it may.
func (t *Table) tooMuch(row int) string {
	if left := t.Rows[row][t.At("ampsLeft")].Number; left != nil && *left < 0 {
		return "more than it may carry"
	}
	return ""
}
