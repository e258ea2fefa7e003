package sheet

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
	"scrimshaw/render/list"
	"scrimshaw/render/sheet/draw"
	"scrimshaw/render/sheet/section"
	"scrimshaw/symbols/ink"
)

// written is the width of a column that a desk or a crew writes into, mm.
const written = 22.0

// dayColumn is a column of a page of lists: the keys of the table whose cells stand in it, one after the other.
type dayColumn struct {
	head  string
	keys  []string
	fills bool
	blank bool // to be written in
}

// dayList is one list of a day as its page has it.
type dayList struct {
	name, title, about string
	columns            []dayColumn
	by                 string // the key of the set-up that its rows are gathered by; "" of a list of all together
	brief              string // what it is, beside its title on the pages of another
	on                 string // the list on whose pages it stands where the reader has that; "" on its own
	first              bool   // whether it stands before that
	alike              bool   // set-ups with the same rows stand once, with all their names
}

// dayLists are the lists of a day in their order.
func dayLists() []dayList { return append(listsOfKit(), listsOfSetups()...) }

// dayLists are the lists as the reader of the day has them: who has some shelves of the van hires nothing, and reads which they are.
func (b *binder) dayLists() []dayList {
	all := dayLists()
	if columns := b.reader.lamps; len(columns) > 0 {
		l := &all[slices.IndexFunc(all, func(l dayList) bool { return l.name == "lamps" })]
		l.about = "What each lamp wears and stands on in each set-up."
		l.columns = slices.DeleteFunc(l.columns, func(c dayColumn) bool { return !slices.Contains(columns, c.keys[0]) })
		for i := range l.columns {
			l.columns[i].fills = false
		}
		l.columns = append(l.columns, dayColumn{head: "remark", blank: true, fills: true})
		l.alike = true
	}
	if len(b.reader.shelves) == 0 {
		return all
	}
	for i := range all {
		l := &all[i]
		l.columns = slices.DeleteFunc(l.columns, func(c dayColumn) bool {
			return slices.ContainsFunc(c.keys, func(key string) bool { return slices.Contains([]string{"rate", "price", "each", "orEqual"}, key) })
		})
		if l.name == "kit" {
			l.about = "Of what must be in the van: " + strings.Join(b.reader.shelves, ", ") + "."
		}
	}
	return all
}

// listsOfKit are those of what must be in the van.
func listsOfKit() []dayList {
	return []dayList{
		{name: "kit", title: "Kit", about: "What must be in the van, with room for a rate and a remark.", columns: []dayColumn{
			{head: "kind", keys: []string{"shelf"}}, {head: "pieces", keys: []string{"count"}}, {head: "spare", keys: []string{"spares"}}, {head: "what", keys: []string{"what"}}, {head: "kg each", keys: []string{"kgEach"}},
			{head: "kg", keys: []string{"kg"}}, {head: "litres", keys: []string{"litres"}}, {head: "for", keys: []string{"numbers"}}, {head: "or equal", keys: []string{"orEqual"}},
			{head: "note", keys: []string{"note"}}, {head: "rate", keys: []string{"rate"}, blank: true}, {head: "price", keys: []string{"price"}}, {head: "remark", blank: true, fills: true}}},
		{name: "consumables", title: "Consumables", on: "kit", brief: "what does not come back", about: "What does not come back: gel and cloth by the roll, tape and foil.", columns: []dayColumn{
			{head: "what", keys: []string{"what"}}, {head: "in the kit", keys: []string{"name"}}, {head: "pieces", keys: []string{"pieces"}}, {head: "cut to", keys: []string{"sizes"}},
			{head: "m²", keys: []string{"squareMetres"}}, {head: "roll m", keys: []string{"rollMetres"}}, {head: "m off it", keys: []string{"metres"}}, {head: "waste %", keys: []string{"wastePercent"}},
			{head: "bring", keys: []string{"count"}}, {head: "for", keys: []string{"numbers"}}, {head: "each", keys: []string{"each"}, blank: true}, {head: "price", keys: []string{"price"}}, {head: "remark", blank: true, fills: true}}},
	}
}

// listsOfSetups are the lists of lamps and of power.
func listsOfSetups() []dayList {
	return []dayList{
		{name: "lamps", title: "Lamps", about: "The lamps of each set-up as they are rigged, with what changes.", by: "setup", columns: []dayColumn{
			{head: "no.", keys: []string{"number"}}, {head: "unit", keys: []string{"unit", "wears", "scrims", "doors", "focus"}, fills: true}, {head: "gels and cloth", keys: []string{"filters"}}, {head: "role", keys: []string{"role"}},
			{head: "level", keys: []string{"level"}}, {head: "light %", keys: []string{"lightPercent"}}, {head: "cues", keys: []string{"cues"}}, {head: "dimmer", keys: []string{"dimmer"}}, {head: "colour", keys: []string{"colour"}}, {head: "height", keys: []string{"heightMetres"}}, {head: "aim", keys: []string{"aim"}},
			{head: "tilt°", keys: []string{"tiltDegrees"}}, {head: "pan°", keys: []string{"panDegrees"}}, {head: "circuit", keys: []string{"circuit"}}, {head: "A", keys: []string{"amps"}},
			{head: "on", keys: []string{"mount"}}, {head: "bags", keys: []string{"bags"}}, {head: "place", keys: []string{"placing"}}, {head: "change", keys: []string{"change"}}, {head: "next", keys: []string{"next"}}, {head: "note", keys: []string{"note"}}}},
		{name: "circuits", title: "Circuits", about: "What each circuit carries in each set-up.", by: "setup", columns: []dayColumn{
			{head: "circuit", keys: []string{"circuit"}}, {head: "from", keys: []string{"kind"}}, {head: "fed by", keys: []string{"fedBy"}}, {head: "V", keys: []string{"volts"}}, {head: "lights", keys: []string{"numbers"}},
			{head: "A as set", keys: []string{"ampsAsSet"}}, {head: "A at full", keys: []string{"ampsFull"}}, {head: "may carry A", keys: []string{"ampsLimit"}}, {head: "left A", keys: []string{"ampsLeft"}},
			{head: "phases and source", keys: []string{"phases", "source"}}, {head: "mA earth", keys: []string{"leakageMilliamps"}}, {head: "trips at mA", keys: []string{"residualMilliamps"}},
			{head: "without", keys: []string{"without"}}, {head: "cable", keys: []string{"cable"}, fills: true}, {head: "remark", blank: true}}},
		{name: "power", title: "Power", on: "circuits", first: true, brief: "the worst of all set-ups", about: "The worst of all set-ups, circuit by circuit.", columns: []dayColumn{
			{head: "circuit", keys: []string{"circuit"}}, {head: "from", keys: []string{"kind"}}, {head: "fed by", keys: []string{"fedBy"}}, {head: "may carry A", keys: []string{"ampsLimit"}},
			{head: "A at full", keys: []string{"ampsFull"}}, {head: "in", keys: []string{"fullIn"}}, {head: "A as set", keys: []string{"ampsAsSet"}}, {head: "in", keys: []string{"asSetIn"}},
			{head: "left A", keys: []string{"ampsLeft"}}, {head: "mA earth", keys: []string{"leakageMilliamps"}}, {head: "trips at mA", keys: []string{"residualMilliamps"}}, {head: "hours", keys: []string{"hours"}},
			{head: "in", keys: []string{"hoursIn"}}, {head: "remark", blank: true, fills: true}}},
		{name: "dimmers", title: "Dimmers", on: "circuits", first: true, brief: "the most in use at one time", about: "The most dimmers in use at one time, class by class.", columns: []dayColumn{
			{head: "what", keys: []string{"what"}}, {head: "A each", keys: []string{"ampsEach"}}, {head: "pieces", keys: []string{"count"}}, {head: "in", keys: []string{"setup"}},
			{head: "for", keys: []string{"numbers"}}, {head: "W at full", keys: []string{"watts"}}, {head: "A at full", keys: []string{"amps"}}, {head: "remark", blank: true, fills: true}}},
	}
}

// listSheets are the lists that the reader of the day has use for; those that are empty have no pages, and some stand on the pages of others.
func (b *binder) listSheets() (all []*sheet) {
	lists := b.dayLists()
	for i := range lists {
		if l := &lists[i]; b.reads(l.name) && !(l.on != "" && b.reads(l.on)) {
			all = append(all, b.listSheet(l, lists))
		}
	}
	return all
}

// reads says whether the reader of the day has use for a list.
func (b *binder) reads(name string) bool { return slices.Contains(b.reader.lists, name) }

// listSheet is the pages of one list, with the lists that stand on them.
func (b *binder) listSheet(l *dayList, lists []dayList) *sheet {
	s := b.sheetOf(l.title)
	t := &s.d.Typesetter
	var before, after []*draw.Block
	for i := range lists {
		guest := &lists[i]
		switch {
		case guest.on != l.name || !b.reads(guest.name):
		case guest.first:
			before = append(before, b.blocks(t, guest, true)...)
		default:
			after = append(after, b.blocks(t, guest, true)...)
		}
	}
	b.pour(s, slices.Concat(before, b.blocks(t, l, false), after), t.Wide(b.noteOf(l), b.footWide()), func() (*dayPage, float64) {
		d := b.newPage(s, l.name, l.about, "Lists", l.title)
		return d, d.heading(l.title, section.Joined(", ", s.title, b.totals(l)))
	})
	return s
}

// blocks are the rows of a list as they are set; one that is a guest on the pages of another says what it is.
func (b *binder) blocks(t *draw.Typesetter, l *dayList, guest bool) (all []*draw.Block) {
	for _, q := range b.sections(l) {
		if guest {
			q.Title = l.title + ": " + l.brief
		}
		all = append(all, t.Wide(q, b.wide))
	}
	return all
}

// noteOf is what stands at the foot of the pages of a list.
func (b *binder) noteOf(l *dayList) *section.Section {
	switch {
	case l.name != "kit":
		return section.DayCautions(b.digests)
	case len(b.reader.shelves) > 0: // of the rest of the van this page has no totals
		return &section.Section{Words: list.NotListed()}
	}
	return &section.Section{Words: b.lists.Lacks()}
}

// totals are the sums that stand over the kit, or of which shelves it is.
func (b *binder) totals(l *dayList) string {
	if l.name != "kit" {
		return ""
	}
	if shelves := b.reader.shelves; len(shelves) > 0 {
		return "of the van: " + strings.Join(shelves, ", ")
	}
	var words []string
	if m := b.lists.Mass(); m.Number != nil {
		words = append(words, unit.FormatMass(*m.Number))
	}
	if v := b.lists.Volume(); v.Number != nil {
		words = append(words, unit.FormatNumber(*v.Number)+" litres of cases")
	}
	if p := b.lists.Price(); p.Number != nil {
		words = append(words, fmt.Sprintf("hire and consumables %.2f", *p.Number), b.lists.Terms())
	}
	return strings.Join(words, ", ")
}

// sections are the rows of a list, gathered by their set-ups, with a bar beside those that do not read as on the sheets before.
func (b *binder) sections(l *dayList) []*section.Section {
	all := b.gathered(l, b.lists)
	if b.since != nil {
		b.mark(l, all)
	}
	if l.alike {
		all = once(all)
	}
	for _, s := range all {
		dropEmpty(&s.Tables[0])
		if l.by == "" {
			onceEach(&s.Tables[0])
		}
	}
	return all
}

// once are the rows of set-ups, those of several with the same rows as one of all their names.
func once(all []*section.Section) (out []*section.Section) {
	alike := func(a, b section.Entry) bool { return a.Revised == b.Revised && slices.Equal(a.Cells, b.Cells) }
	for _, s := range all {
		at := slices.IndexFunc(out, func(o *section.Section) bool {
			return slices.EqualFunc(o.Tables[0].Entries, s.Tables[0].Entries, alike)
		})
		if at < 0 {
			out = append(out, s)
			continue
		}
		out[at].Title += ", " + s.Title
	}
	return out
}

// mark puts the bars beside rows of a list, and says what only the sheets before have on it where that is said nowhere else.
func (b *binder) mark(l *dayList, all []*section.Section) {
	before := b.gathered(l, b.since.lists)
	for _, s := range all {
		var was *section.Section
		for _, q := range before {
			if q.Title == s.Title || b.since.single {
				was = q
			}
		}
		if !l.has("count") {
			section.MarkNew(s, was)
			continue
		}
		b.markCounts(l, s, was)
	}
}

// markCounts puts the bars beside what the van needs more or less of, with how many it was, whatever numbers its things have on the plans; and says what
// it needs no more.
func (b *binder) markCounts(l *dayList, now, was *section.Section) {
	left := map[string]string{} // pieces, by what they are
	name := func(e *section.Entry) string { return l.of(e, "shelf") + "\t" + l.of(e, "what") }
	if was != nil {
		for i := range was.Tables[0].Entries {
			e := &was.Tables[0].Entries[i]
			left[name(e)] = l.of(e, "count")
		}
	}
	for i := range now.Tables[0].Entries {
		e := &now.Tables[0].Entries[i]
		pieces, known := left[name(e)]
		if e.Revised = pieces != l.of(e, "count"); e.Revised {
			e.Notes = []string{"was " + pieces}
			if !known {
				e.Notes[0] = "new"
			}
		}
		delete(left, name(e))
	}
	var gone []string
	for _, key := range slices.Sorted(maps.Keys(left)) {
		_, what, _ := strings.Cut(key, "\t")
		gone = append(gone, left[key]+" "+what)
	}
	now.Words = section.NonEmpty(section.Prefixed("No more since "+b.since.Words+": ", strings.Join(gone, "; ")))
}

// column is where a figure of a list stands on its page; -1 where it does not.
func (l *dayList) column(key string) int {
	return slices.IndexFunc(l.columns, func(c dayColumn) bool { return slices.Contains(c.keys, key) })
}

// has says whether a list has a figure.
func (l *dayList) has(key string) bool { return l.column(key) >= 0 }

// of is what a row says of a figure; "" where the list has none.
func (l *dayList) of(e *section.Entry, key string) string {
	if at := l.column(key); at >= 0 {
		return e.Cells[at]
	}
	return ""
}

// gathered are the rows of a list of a day, gathered by their set-ups.
func (b *binder) gathered(l *dayList, day *list.Day) (all []*section.Section) {
	t := tableOf(day, l.name)
	for r := range t.Rows {
		group := ""
		if l.by != "" {
			group = t.Said(r, t.At(l.by))
		} else if shelves := b.reader.shelves; l.name == "kit" && len(shelves) > 0 && !slices.Contains(shelves, t.Said(r, t.At("shelf"))) {
			continue
		}
		if len(all) == 0 || l.by != "" && all[len(all)-1].Title != group {
			all = append(all, &section.Section{Title: group, Tables: []section.Table{l.table(t)}})
		}
		rows := &all[len(all)-1].Tables[0]
		rows.Entries = append(rows.Entries, b.entry(l, t, r, group))
	}
	return all
}

// entry is a row of a list, which leads to the plan of its set-up.
func (b *binder) entry(l *dayList, t *list.Table, row int, setup string) section.Entry {
	e := section.Entry{Link: setup}
	for i := range l.columns {
		e.Cells = append(e.Cells, b.cell(t, row, &l.columns[i]))
	}
	return e
}

// tableOf is the table of a list by its name.
func tableOf(day *list.Day, name string) *list.Table {
	for _, t := range day.Tables() {
		if t.Name == name {
			return t
		}
	}
	return &list.Table{}
}

// table is a list without rows.
func (l *dayList) table(t *list.Table) (out section.Table) {
	for i := range l.columns {
		c := &l.columns[i]
		col := section.Column{Head: c.head, Flexible: c.fills}
		if c.blank {
			col.Least = written
		} else if t.Columns[t.At(c.keys[0])].Number {
			col.Align = ink.Right
		}
		out.Columns = append(out.Columns, col)
	}
	out.Columns[0].Strong = true
	return out
}

// cell is what a column of a page says of a row; lengths are in the units of the scene.
func (b *binder) cell(t *list.Table, row int, c *dayColumn) string {
	var parts []string
	for _, key := range c.keys {
		at := t.At(key)
		words := t.Said(row, at)
		if n := t.Rows[row][at].Number; n != nil {
			words = b.asOnPlans(key, *n, words)
		}
		if c.blank && words == list.Dash {
			words = "" // somebody writes it in
		}
		if t.Columns[at].Number {
			words = strings.Replace(words, "-", "−", 1)
		}
		parts = append(parts, words)
	}
	return section.Joined(", ", parts...)
}

// asOnPlans says a figure as the sheets of the set-ups say it: lengths in the units of the scene, amperes and hours rounded to the safe side; and sums of money in full.
func (b *binder) asOnPlans(key string, n float64, words string) string {
	switch key {
	case "hours":
		return unit.FormatHours(math.Round(60*n) / 60)
	case "rate", "price", "each":
		return fmt.Sprintf("%.2f", n)
	case "heightMetres":
		return unit.FormatLength(n, b.feet)
	case "amps", "ampsAsSet", "ampsFull":
		return unit.FormatNumber(supply.RoundedUp(n))
	case "ampsLeft":
		return unit.FormatNumber(-supply.RoundedUp(-n))
	}
	return words
}

// dropEmpty leaves out columns in which nothing stands.
func dropEmpty(t *section.Table) {
	for i := len(t.Columns) - 1; i >= 0; i-- {
		if t.Columns[i].Least > 0 || slices.ContainsFunc(t.Entries, func(e section.Entry) bool { return e.Cells[i] != "" && e.Cells[i] != list.Dash }) {
			continue
		}
		t.Columns = slices.Delete(t.Columns, i, i+1)
		for k := range t.Entries {
			t.Entries[k].Cells = slices.Delete(t.Entries[k].Cells, i, i+1)
		}
	}
}

// onceEach leaves what the first column says to the first of the rows that say it.
func onceEach(t *section.Table) {
	said := ""
	for i := range t.Entries {
		first := &t.Entries[i].Cells[0]
		if *first == said {
			*first = ""
			continue
		}
		said = *first
	}
}
