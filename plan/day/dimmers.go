package day

import (
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// Dimmers are those of one class that a set-up has in use, and the lights on them.
type Dimmers struct {
	Name   string  // in the catalogue; "" where nothing of it stands that much
	Label  string  // with what one stands: "dimmer 1 kW"
	Amps   float64 // that one may carry, A; 0 not known
	Count  int
	Lights []*plan.Light
}

// DimmersOf are the dimmers of a set-up by their class, in the order of its lights. A dimmer for each unit: common practice for hand dimmers, which have
// one outlet.
func DimmersOf(s *plan.Setup) (all []Dimmers) {
	n := newNeeds(s)
	for i := range s.Lights {
		l := &s.Lights[i]
		item, ok := n.dimmerOf(l)
		if !ok {
			continue
		}
		at := slices.IndexFunc(all, func(d Dimmers) bool { return d.Label == item.Label })
		if at < 0 {
			at, all = len(all), append(all, Dimmers{Name: item.Name, Label: item.Label})
		}
		if stock := n.kit.ItemOf(item.Name); stock != nil {
			all[at].Amps = stock.Amps
		}
		all[at].Count += l.Count
		all[at].Lights = append(all[at].Lights, l)
	}
	return all
}

// dimmer counts the dimmer of a filament lamp that is not at full, or not after a cue, or fades.
func (n *needs) dimmer(l *plan.Light) {
	if item, ok := n.dimmerOf(l); ok {
		n.add(item, l.Count, l.Tag)
	}
}

// dimmerOf is the smallest dimmer that stands the power of a filament lamp; not ok where the lamp takes none.
func (n *needs) dimmerOf(l *plan.Light) (Item, bool) {
	if l.Head.Technology != term.Tungsten || !n.setup.Dims(l) {
		return Item{}, false
	}
	found := n.kit.DimmerFor(l.Head.Watts)
	if found == nil {
		return Item{Shelf: Dimmer, Label: "dimmer for " + unit.FormatPower(l.Head.Watts)}, true
	}
	return stocked(Dimmer, found), true
}

// DimmerOf names the dimmer of a light; "" where it takes none.
func DimmerOf(s *plan.Setup, l *plan.Light) string {
	item, _ := newNeeds(s).dimmerOf(l)
	return item.Label
}
