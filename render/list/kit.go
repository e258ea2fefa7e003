package list

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/day"
	"scrimshaw/plan/kit"
)

// kitColumns are those of what must be in the van.
var kitColumns = []Column{
	{Key: "shelf", Head: "kind", Doc: "unit, bulb, modifier, accessory, stand, rigging, grip, cloth, bag, safety, dimmer, power, cable or adapter"},
	{Key: "count", Head: "pieces", Doc: "how many: the most that one set-up has in use", Number: true},
	{Key: "spares", Head: "spare", Doc: "how many go along beside them, by the rule of the kit", Number: true},
	{Key: "what", Head: "what", Doc: "what it is called"},
	{Key: "name", Head: "in the kit", Doc: "its name in the kit, which `scrimshaw kit` explains; \"\" where it has none"},
	{Key: "orEqual", Head: "or equal", Doc: "what another unit has to give to do in its place: lx on its axis, rounded down, its white, and the smallest other of the kit that gives as much, used alike"},
	{Key: "kgEach", Head: "kg each", Doc: "mass of one with its supply, kg", Number: true},
	{Key: "kg", Head: "kg", Doc: "mass of all with the spares, kg", Number: true},
	{Key: "litresEach", Head: "litres each", Doc: "volume of the case of one, litres", Number: true},
	{Key: "litres", Head: "litres", Doc: "volume of the cases of all with the spares, litres", Number: true},
	{Key: "rate", Head: "rate", Doc: "for one a day, by the price file", Number: true},
	{Key: "price", Head: "price", Doc: "for all with the spares over the days that are charged", Number: true},
	{Key: "numbers", Head: "for", Doc: "the numbers of the lights and the grip that it is for, or the circuits, in any set-up"},
	{Key: "note", Head: "note", Doc: "what comes in its case, what it has to hold"},
}

// consumableColumns are those of what is used up.
var consumableColumns = []Column{
	{Key: "what", Head: "what", Doc: "gel or cloth off a roll, tape, foil"},
	{Key: "name", Head: "in the kit", Doc: "its name in the kit"},
	{Key: "pieces", Head: "pieces", Doc: "into how many pieces it is cut", Number: true},
	{Key: "sizes", Head: "cut to", Doc: "the pieces, and how many of each"},
	{Key: "squareMetres", Head: "m²", Doc: "area of all pieces, m²", Number: true},
	{Key: "rollMetres", Head: "roll m", Doc: "width of the roll, m", Number: true},
	{Key: "metres", Head: "m off it", Doc: "length of roll that the pieces take, side by side as far as it is wide, m", Number: true},
	{Key: "wastePercent", Head: "waste %", Doc: "share of that which is waste, %", Number: true},
	{Key: "count", Head: "rolls", Doc: "how many rolls or pieces to bring", Number: true},
	{Key: "kg", Head: "kg", Doc: "mass of them, kg", Number: true},
	{Key: "each", Head: "each", Doc: "price of one, by the price file", Number: true},
	{Key: "price", Head: "price", Doc: "of all of them", Number: true},
	{Key: "numbers", Head: "for", Doc: "the numbers of the lights and openings that it is for"},
}

// bill is what a price file makes of lists.
type bill struct {
	prices   *kit.Prices
	hire     kit.Money // for all that comes back, over the days that are charged
	sales    kit.Money
	unpriced []string // what has no price, in the order of the lists
}

// rental is what a thing of the kit costs a day, and in all; cells that say nothing where no price is known.
func (b *bill) rental(item *day.Item) (rate, price Cell) {
	if b.prices == nil {
		return rate, price
	}
	each, known := b.prices.Rates[item.Name]
	if !known {
		b.unpriced = append(b.unpriced, item.Label)
		return rate, price
	}
	all := kit.Money(math.Round(float64(each) * float64(item.Count+item.Spares()) * b.prices.Days.Charged))
	b.hire += all
	return number(each.Units(), 2), number(all.Units(), 2)
}

// sale is what some of a thing that is used up cost.
func (b *bill) sale(name, label string, count int) (each, price Cell) {
	if b.prices == nil {
		return each, price
	}
	one, known := b.prices.Sales[name]
	if !known {
		b.unpriced = append(b.unpriced, label)
		return each, price
	}
	all := one * kit.Money(count)
	b.sales += all
	return number(one.Units(), 2), number(all.Units(), 2)
}

// kitRows are the items of a day that come back, as a table.
func kitRows(items []day.Item, b *bill) [][]Cell {
	var rows [][]Cell
	for i := range items {
		item := &items[i]
		if item.Count == 0 || item.Consumed() {
			continue
		}
		n := float64(item.Count + item.Spares())
		rate, price := b.rental(item)
		rows = append(rows, []Cell{
			words(string(item.Shelf)), number(float64(item.Count), 0), known(float64(item.Spares()), 0), words(item.Label), words(item.Name), words(item.OrEqual()),
			known(item.Mass, 3), known(item.Mass*n, 3), known(litres*item.Volume(), 1), known(litres*item.Volume()*n, 1), rate, price,
			words(strings.Join(item.For, ", ")), words(item.Note),
		})
	}
	return rows
}

// usedUp gathers what is cut off one roll, or one kind of what else is used up.
type usedUp struct {
	what, name     string
	roll           *kit.Item
	width          float64 // of the roll, m
	pieces, count  int     // count is for what is not cut
	area, length   float64 // m², m
	mass           float64 // of one that is not cut, kg
	sizes, numbers []string
}

// consumableRows are the items of a day that are used up: gel and cloth by the roll, and what a rule of the kit counts.
func consumableRows(items []day.Item, b *bill) (rows [][]Cell) {
	var all []*usedUp
	for i := range items {
		if item := &items[i]; item.Count > 0 && item.Consumed() {
			all = gathered(all, item)
		}
	}
	for _, u := range all {
		rows = append(rows, u.row(b))
	}
	return rows
}

// gathered takes an item to the others of its kind.
func gathered(all []*usedUp, item *day.Item) []*usedUp {
	what, name := item.Label, item.Name
	if item.From != nil {
		what, name = item.Name, item.From.Name
	}
	u := find(all, what)
	if u == nil {
		u = &usedUp{what: what, name: name, roll: item.From, width: item.Roll}
		all = append(all, u)
	}
	u.add(item)
	return all
}

func find(all []*usedUp, what string) *usedUp {
	for _, u := range all {
		if u.what == what {
			return u
		}
	}
	return nil
}

// add takes the pieces of one size.
func (u *usedUp) add(item *day.Item) {
	if item.Shelf == day.Sheet {
		u.pieces += item.Count
	} else {
		u.count, u.mass = u.count+item.Count, item.Mass
	}
	if length, _, ok := item.Cut(); ok {
		u.length += length
		u.area += item.Area() * float64(item.Count)
		u.sizes = append(u.sizes, fmt.Sprintf("%d of %s", item.Count, strings.TrimPrefix(item.Label, item.Name+", piece of ")))
	}
	for _, tag := range item.For {
		if !slices.Contains(u.numbers, tag) {
			u.numbers = append(u.numbers, tag)
		}
	}
}

// row is a line of the table.
func (u *usedUp) row(b *bill) []Cell {
	metres, waste := Cell{}, Cell{}
	if u.length > 0 {
		metres, waste = number(u.length, 2), number(100*(1-u.area/(u.length*u.width)), 0)
	}
	if u.roll != nil && u.roll.Length > 0 {
		u.count, u.mass = int(math.Ceil(u.length/u.roll.Length-1e-9)), u.roll.Mass
	}
	each, price := b.sale(u.name, u.what, u.count)
	return []Cell{words(u.what), words(u.name), known(float64(u.pieces), 0), words(strings.Join(u.sizes, "; ")), known(u.area, 3), known(u.width, 2), metres, waste,
		known(float64(u.count), 0), known(u.mass*float64(u.count), 1), each, price, words(strings.Join(u.numbers, ", "))}
}
