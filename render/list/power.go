package list

import "math"

// powerColumns are those of what each circuit carries over the day: the worst of its set-ups.
var powerColumns = []Column{
	{Key: "circuit", Head: "circuit", Doc: "its name"},
	{Key: "kind", Head: "from", Doc: "house, generator or battery"},
	{Key: "fedBy", Head: "fed by", Doc: "the circuit that feeds it, and on which of its phases"},
	{Key: "ampsLimit", Head: "may carry A", Doc: "the least that may be used of its breaker, A", Number: true},
	{Key: "ampsFull", Head: "A at full", Doc: "the most with each light at full, A", Number: true},
	{Key: "fullIn", Head: "in", Doc: "the set-up of that; \"\" of a scene without"},
	{Key: "ampsAsSet", Head: "A as set", Doc: "the most with each light at its level, A", Number: true},
	{Key: "asSetIn", Head: "in", Doc: "the set-up of that"},
	{Key: "ampsLeft", Head: "left A", Doc: "the least that is left with each light at full, A; less than 0 is too much", Number: true},
	{Key: "leakageMilliamps", Head: "mA earth", Doc: "about the most that flows down the earth all the time, mA", Number: true},
	{Key: "residualMilliamps", Head: "trips at mA", Doc: "the least residual current at which its protection trips, mA", Number: true},
	{Key: "hours", Head: "hours", Doc: "the least that its battery lasts with the lights of one set-up as set, or its tank at full load, h", Number: true},
	{Key: "hoursIn", Head: "in", Doc: "the set-up of that"},
}

// powerRows are the worst of each circuit over the rows of all set-ups, in the order in which the circuits come.
func powerRows(circuits *Table) [][]Cell {
	out := Table{Columns: powerColumns}
	at := map[string]int{}
	for r := range circuits.Rows {
		of := func(key string) Cell { return circuits.Rows[r][circuits.At(key)] }
		name := of("circuit").Text
		if _, known := at[name]; !known {
			at[name] = len(out.Rows)
			row := make([]Cell, len(powerColumns))
			for _, key := range []string{"circuit", "kind", "fedBy"} {
				row[out.At(key)] = of(key)
			}
			out.Rows = append(out.Rows, row)
		}
		for _, w := range worsts {
			out.keepWorst(at[name], w, of(w.key), of("setup"))
		}
	}
	return out.Rows
}

// worst is a figure of which the worst of all set-ups counts, and where the set-up of it stands.
type worst struct {
	key, in string
	of      func(a, b float64) float64
}

var worsts = []worst{{"ampsLimit", "", math.Min}, {"ampsFull", "fullIn", math.Max}, {"ampsAsSet", "asSetIn", math.Max}, {"ampsLeft", "", math.Min},
	{"leakageMilliamps", "", math.Max}, {"residualMilliamps", "", math.Min}, {"hours", "hoursIn", math.Min}}

// keepWorst keeps a figure where it is worse than the one that stands.
func (t *Table) keepWorst(row int, w worst, now, setup Cell) {
	kept := &t.Rows[row][t.At(w.key)]
	if now.Number == nil || kept.Number != nil && w.of(*now.Number, *kept.Number) == *kept.Number {
		return
	}
	*kept = now
	if w.in != "" {
		t.Rows[row][t.At(w.in)] = setup
	}
}
