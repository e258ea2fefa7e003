package day

import (
	"cmp"
	"math"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
)

// Dimmers are those of one class that a set-up has in use, or those of all classes, and the lights on them.
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

// dimmer counts the dimmer of a light that takes one.
func (n *needs) dimmer(l *plan.Light) {
	if item, ok := n.dimmerOf(l); ok {
		n.add(item, l.Count, l.Tag)
	}
}

// dimmerOf is the smallest dimmer that stands the power of a light; not ok where the light takes none. Those of the kit cut half-waves: one of another kind
// is named by that.
func (n *needs) dimmerOf(l *plan.Light) (Item, bool) {
	if !l.TakesDimmer() || !n.setup.Dims(l) {
		return Item{}, false
	}
	label := "dimmer for "
	if !l.Dimming.Phase() {
		label = string(l.Dimming.Kind) + " " + label
	}
	if l.Head.Watts == 0 {
		return Item{Shelf: Dimmer, Label: label + l.Name}, true
	}
	if found := n.kit.DimmerFor(l.Head.Watts); found != nil && l.Dimming.Phase() {
		return stocked(Dimmer, found), true
	}
	return Item{Shelf: Dimmer, Label: label + unit.FormatPower(l.Head.Watts)}, true
}

// DimmerOf names the dimmer of a light; "" where it takes none.
func DimmerOf(s *plan.Setup, l *plan.Light) string {
	item, _ := newNeeds(s).dimmerOf(l)
	return item.Label
}

// allDimmers is what the dimmers of all classes are called.
const allDimmers = "all together"

// Dimmed are dimmers in one set-up, with what is on them.
type Dimmed struct {
	Dimmers
	Setup  string
	Watts  float64 // that their lights draw at full, W
	AtFull float64 // the amps of their lights at full
	Known  bool    // whether the amperes are: each of the lights is on a circuit
}

// rank is where dimmers stand: the small before the large, then what is of no class, and all together.
func (d *Dimmed) rank() float64 {
	switch {
	case d.Label == allDimmers:
		return math.Inf(1)
	case d.Amps == 0:
		return math.MaxFloat64
	}
	return d.Amps
}

// dimmedOf adds up what is on some dimmers of a set-up.
func dimmedOf(s *plan.Setup, powered *supply.Supply, of Dimmers) Dimmed {
	d := Dimmed{Dimmers: of, Setup: s.Name, Known: true}
	for _, l := range of.Lights {
		d.Watts += l.Head.Watts * float64(l.Count)
		_, draw := powered.DrawOf(l)
		if draw == nil || draw.Full == 0 {
			d.Known = false
			continue
		}
		d.AtFull += draw.Full
	}
	return d
}

// MostDimmed are the dimmers of a day: of each class, and of all together, those of the set-up that has most of it in use.
type MostDimmed []Dimmed

// Add takes a set-up to the others of the day.
func (m *MostDimmed) Add(s *plan.Setup, powered *supply.Supply) {
	together := Dimmers{Label: allDimmers}
	for _, of := range DimmersOf(s) {
		m.keepMost(dimmedOf(s, powered, of))
		together.Count += of.Count
		together.Lights = append(together.Lights, of.Lights...)
	}
	if together.Count > 0 {
		m.keepMost(dimmedOf(s, powered, together))
	}
	slices.SortStableFunc(*m, func(a, b Dimmed) int { return cmp.Compare(a.rank(), b.rank()) })
}

// keepMost keeps dimmers where they are more than those of their class in the set-ups before, or as many with larger lamps.
func (m *MostDimmed) keepMost(now Dimmed) {
	at := slices.IndexFunc(*m, func(was Dimmed) bool { return was.Label == now.Label })
	if at < 0 {
		*m = append(*m, now)
		return
	}
	if was := &(*m)[at]; now.Count > was.Count || now.Count == was.Count && now.Watts > was.Watts {
		*was = now
	}
}

// Classes are those of a list: of one class alone nothing is summed.
func (m MostDimmed) Classes() []Dimmed {
	if len(m) == 2 {
		return m[:1]
	}
	return m
}
