// Package day says what must be in the van: what each set-up of a day takes, and of each thing the most that is in use at one time.
package day

import (
	"cmp"
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/unit"
)

// Shelf is what a thing is for, in the order in which a van is loaded.
type Shelf string

// The shelves.
const (
	Unit      Shelf = "unit"
	Bulb      Shelf = "bulb"
	Modifier  Shelf = "modifier"
	Accessory Shelf = "accessory" // scrims, barn doors
	Stand     Shelf = "stand"
	Rigging   Shelf = "rigging" // what holds a thing otherwise: booms, clamps, poles, lifts
	Grip      Shelf = "grip"
	Cloth     Shelf = "cloth" // of frames, curtains and blinds
	Bag       Shelf = "bag"
	Safety    Shelf = "safety"
	Dimmer    Shelf = "dimmer"
	Cable     Shelf = "cable"
	Power     Shelf = "power" // boxes, batteries and generators
	Adapter   Shelf = "adapter"
	Sheet     Shelf = "sheet"      // gel and diffusion, cut to pieces
	UsedUp    Shelf = "consumable" // tape, foil and the like
)

// Shelves lists them in order.
var Shelves = []Shelf{Unit, Bulb, Modifier, Accessory, Stand, Rigging, Grip, Cloth, Bag, Safety, Dimmer, Power, Cable, Adapter, Sheet, UsedUp}

// Item is one kind of thing, and how many of it a day takes.
type Item struct {
	Shelf Shelf
	Name  string // in the catalogue; "" where it has none
	Label string
	Note  string     // what comes in its case, what it has to hold
	Count int        // the most in use at one time
	For   []string   // the numbers of what it is for, over all set-ups
	Mass  float64    // of one, kg; 0 not known
	Case  [3]float64 // width, depth and height of the case of one, m; 0 not known
	Piece [2]float64 // width and height of one piece of a sheet, m; 0 of all else, and where it is not known
	Roll  float64    // the width of the roll that it is cut from, m; 0 not known
	From  *kit.Item  // that roll; nil: nobody knows one
	Spare float64    // the share of those in use that goes along beside them, 0 to 1
	Gives []Equal    // what another unit has to give to do in its place, use by use; none of all else

	section, length float64 // of a cable of the kit, mm² and m: cables are listed by them
}

// Spares are how many go along beside those in use.
func (i *Item) Spares() int { return int(math.Ceil(i.Spare*float64(i.Count) - 1e-9)) }

// Consumed says whether it is used up, and so stands on no list of what comes back.
func (i *Item) Consumed() bool { return i.Shelf == Sheet || i.Shelf == UsedUp }

// Volume is that of its case, m³; 0 where it is not known.
func (i *Item) Volume() float64 { return i.Case[0] * i.Case[1] * i.Case[2] }

// Area is that of one piece of a sheet, m²; 0 where it is not known.
func (i *Item) Area() float64 { return i.Piece[0] * i.Piece[1] }

// same says whether two items are one kind of thing, which a set-up may use again after another.
func (i *Item) same(j *Item) bool {
	return i.Shelf == j.Shelf && i.Name == j.Name && i.Label == j.Label
}

// List is what a day takes. The zero List is that of a day without set-ups.
type List struct {
	Items []Item

	equals kit.Equals // of all set-ups
}

// Add takes a set-up into the list: of each thing the day takes the most that one set-up has of it.
func (l *List) Add(s *plan.Setup) {
	for _, item := range of(s, &l.equals) {
		at := slices.IndexFunc(l.Items, func(other Item) bool { return other.same(&item) })
		if at < 0 {
			l.Items = append(l.Items, item)
			continue
		}
		kept := &l.Items[at]
		kept.Count = max(kept.Count, item.Count)
		kept.Note = joinNote(kept.Note, item.Note)
		kept.addGives(item.Gives...)
		kept.addFor(item.For...)
	}
	slices.SortStableFunc(l.Items, func(a, b Item) int {
		return cmp.Or(cmp.Compare(slices.Index(Shelves, a.Shelf), slices.Index(Shelves, b.Shelf)), cmp.Compare(a.section, b.section), cmp.Compare(a.length, b.length))
	})
}

// addGives takes more uses of a unit to those that are known, each once.
func (i *Item) addGives(more ...Equal) {
	for _, e := range more {
		if !slices.Contains(i.Gives, e) {
			i.Gives = append(i.Gives, e)
		}
	}
}

// OrEqual says what another unit has to give in all uses of a day; "" where nobody asks.
func (i *Item) OrEqual() string { return orEqual(i.Gives) }

// addFor names what an item is for, each once.
func (i *Item) addFor(tags ...string) {
	for _, tag := range tags {
		if !slices.Contains(i.For, tag) {
			i.For = append(i.For, tag)
		}
	}
}

// Totals are sums over a list, and what they are without.
type Totals struct {
	Mass          float64  // of all whose mass is known, kg
	Volume        float64  // of all cases whose size is known, m³
	WithoutMass   []string // the labels of what has no mass, in the order of the list
	WithoutVolume int      // how many things have no case that is known
}

// Totals adds up what comes back of a list, with its spares.
func (l *List) Totals() (t Totals) {
	for i := range l.Items {
		item := &l.Items[i]
		if item.Consumed() {
			continue
		}
		count := item.Count + item.Spares()
		t.Mass += item.Mass * float64(count)
		t.Volume += item.Volume() * float64(count)
		if item.Mass == 0 {
			t.WithoutMass = append(t.WithoutMass, item.Label)
		}
		if item.Volume() == 0 {
			t.WithoutVolume += count
		}
	}
	return t
}

// of is what one set-up takes, in no order of shelves.
func of(s *plan.Setup, equals *kit.Equals) []Item {
	n := newNeeds(s)
	n.equals = equals
	for i := range s.Lights {
		n.light(&s.Lights[i])
	}
	for i := range s.Grip {
		n.grip(&s.Grip[i])
	}
	n.mirrors()
	n.openings()
	n.cable()
	n.power()
	n.usedUp()
	return n.items
}

// needs gathers what a set-up takes.
type needs struct {
	setup  *plan.Setup
	kit    *kit.Catalogue
	equals *kit.Equals
	items  []Item
	laid   float64 // of cable, m
}

func newNeeds(s *plan.Setup) *needs {
	n := &needs{setup: s, kit: s.Kit}
	if n.kit == nil { // of a set-up made by hand
		n.kit = &kit.Catalogue{}
	}
	return n
}

// add counts a thing for a light or a piece of grip.
func (n *needs) add(item Item, count int, tag string) {
	at := slices.IndexFunc(n.items, func(other Item) bool { return other.same(&item) })
	if at < 0 {
		n.items, at = append(n.items, item), len(n.items)
	}
	n.items[at].Count += count
	n.items[at].Note = joinNote(n.items[at].Note, item.Note)
	n.items[at].addGives(item.Gives...)
	if tag != "" {
		n.items[at].addFor(tag)
	}
}

// stock is an item of the catalogue by name; where it has none of that name, the words in its place and no figures.
func (n *needs) stock(shelf Shelf, name, words string) Item {
	if item := n.kit.ItemOf(name); item != nil {
		return stocked(shelf, item)
	}
	return Item{Shelf: shelf, Label: words}
}

func stocked(shelf Shelf, item *kit.Item) Item {
	return Item{Shelf: shelf, Name: item.Name, Label: item.Label, Mass: item.Mass, Case: item.Size, Spare: item.Spare}
}

// least is the item of a group that is just good enough by a figure; nil where none is.
func (n *needs) least(group string, figure func(*kit.Item) float64, enough float64) (best *kit.Item) {
	for _, item := range n.kit.Items {
		if v := figure(item); item.Group == group && v > 0 && v >= enough && (best == nil || v < figure(best)) {
			best = item
		}
	}
	return best
}

// length prints a length in the scene's units.
func (n *needs) length(metres float64) string { return unit.FormatLength(metres, n.setup.Feet) }

// size prints two lengths.
func (n *needs) size(width, height float64) string {
	return n.length(width) + " × " + n.length(height)
}
