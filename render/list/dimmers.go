package list

import (
	"strings"

	"scrimshaw/plan/day"
)

// dimmerColumns are those of the dimmers of a day, class by class.
var dimmerColumns = []Column{
	{Key: "what", Head: "what", Doc: "the class, by what one stands; \"all together\" of several classes"},
	{Key: "name", Head: "in the kit", Doc: "its name in the kit; \"\" where it has none"},
	{Key: "ampsEach", Head: "A each", Doc: "that one may carry, A", Number: true},
	{Key: "count", Head: "pieces", Doc: "how many: the most that one set-up has in use", Number: true},
	{Key: "setup", Head: "in", Doc: "the set-up of that: of as many in several the one with the largest lamps; \"\" of a scene without"},
	{Key: "numbers", Head: "for", Doc: "the numbers of the lights on them there"},
	{Key: "watts", Head: "W at full", Doc: "of those lights, W", Number: true},
	{Key: "amps", Head: "A at full", Doc: "of those lights, A; not known where one of them is on no circuit", Number: true},
}

// dimmerRows are the table of them.
func dimmerRows(most day.MostDimmed) (rows [][]Cell) {
	for _, d := range most.Classes() {
		amps := Cell{}
		if d.Known {
			amps = noLess(d.AtFull, 2)
		}
		var numbers []string
		for _, l := range d.Lights {
			numbers = append(numbers, l.Tag)
		}
		rows = append(rows, []Cell{words(d.Label), words(d.Name), known(d.Amps, 2), number(float64(d.Count), 0), words(d.Setup), words(strings.Join(numbers, ", ")), number(d.Watts, 0), amps})
	}
	return rows
}
