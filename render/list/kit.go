package list

import (
	"fmt"
	"strings"

	"scrimshaw/plan/day"
)

// kitColumns are those of what must be in the van.
var kitColumns = []Column{
	{Key: "shelf", Head: "for", Doc: "unit, bulb, modifier, accessory, stand, rigging, grip, cloth, bag, safety, dimmer, cable or sheet"},
	{Key: "count", Head: "pieces", Doc: "how many: the most that one set-up has in use", Number: true},
	{Key: "what", Head: "what", Doc: "what it is called"},
	{Key: "name", Head: "in the kit", Doc: "its name in the kit, which `scrimshaw kit` explains; \"\" where it has none"},
	{Key: "kgEach", Head: "kg each", Doc: "mass of one with its supply, kg", Number: true},
	{Key: "kg", Head: "kg", Doc: "mass of all, kg", Number: true},
	{Key: "litresEach", Head: "litres each", Doc: "volume of the case of one, litres", Number: true},
	{Key: "litres", Head: "litres", Doc: "volume of the cases of all, litres", Number: true},
	{Key: "squareMetres", Head: "m²", Doc: "of gel and cloth cut to pieces: the area of all of them, m²", Number: true},
	{Key: "numbers", Head: "of", Doc: "the numbers of the lights and the grip that it is for, in any set-up"},
	{Key: "note", Head: "note", Doc: "what comes in its case, what it has to hold"},
}

// kitRows are the items of a day as a table.
func kitRows(items []day.Item) [][]Cell {
	var rows [][]Cell
	for i := range items {
		item := &items[i]
		if item.Count == 0 {
			continue
		}
		n := float64(item.Count)
		rows = append(rows, []Cell{
			words(string(item.Shelf)), number(n, 0), words(item.Label), words(item.Name),
			known(item.Mass, 3), known(item.Mass*n, 3), known(litres*item.Volume(), 1), known(litres*item.Volume()*n, 1), known(item.Area()*n, 3),
			words(strings.Join(item.For, ", ")), words(noteOf(item)),
		})
	}
	return rows
}

// noteOf is the note of an item, and of a sheet how much of a roll it takes.
func noteOf(item *day.Item) string {
	length, waste, ok := item.Cut()
	if !ok {
		return item.Note
	}
	return joined("; ", item.Note, fmt.Sprintf("%.2f m off a roll of %.2f m, %.0f %% of that waste", length, item.Roll, 100*waste))
}
