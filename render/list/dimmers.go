package list

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day"
	"scrimshaw/plan/supply"
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

// allDimmers is what the dimmers of all classes are called.
const allDimmers = "all together"

// dimmed are dimmers in one set-up, of one class or of all.
type dimmed struct {
	day.Dimmers
	setup       string
	watts, amps float64
	known       bool // whether the amps are
}

// rank is where dimmers stand: the small before the large, then what is of no class, and all together.
func (d *dimmed) rank() float64 {
	switch {
	case d.Label == allDimmers:
		return math.Inf(1)
	case d.Amps == 0:
		return math.MaxFloat64
	}
	return d.Amps
}

// dimmedOf adds up what is on some dimmers of a set-up.
func dimmedOf(s *plan.Setup, powered *supply.Supply, of day.Dimmers) dimmed {
	d := dimmed{Dimmers: of, setup: s.Name, known: true}
	for _, l := range of.Lights {
		d.watts += l.Head.Watts * float64(l.Count)
		_, draw := powered.DrawOf(l)
		if draw == nil || draw.Full == 0 {
			d.known = false
			continue
		}
		d.amps += draw.Full
	}
	return d
}

// dimmedDay are those of a day.
type dimmedDay []dimmed

// add keeps of each class, and of all together, the set-up that has most of it in use.
func (d *dimmedDay) add(s *plan.Setup, powered *supply.Supply) {
	together := day.Dimmers{Label: allDimmers}
	for _, of := range day.DimmersOf(s) {
		d.keepMost(dimmedOf(s, powered, of))
		together.Count += of.Count
		together.Lights = append(together.Lights, of.Lights...)
	}
	if together.Count > 0 {
		d.keepMost(dimmedOf(s, powered, together))
	}
	slices.SortStableFunc(*d, func(a, b dimmed) int { return cmp.Compare(a.rank(), b.rank()) })
}

// keepMost keeps dimmers where they are more than those of their class in the set-ups before, or as many with larger lamps.
func (d *dimmedDay) keepMost(now dimmed) {
	at := slices.IndexFunc(*d, func(was dimmed) bool { return was.Label == now.Label })
	if at < 0 {
		*d = append(*d, now)
		return
	}
	if was := &(*d)[at]; now.Count > was.Count || now.Count == was.Count && now.watts > was.watts {
		*was = now
	}
}

// rows are the table; of one class alone nothing is summed.
func (d dimmedDay) rows() (rows [][]Cell) {
	all := d
	if len(all) == 2 {
		all = all[:1]
	}
	for _, d := range all {
		amps := Cell{}
		if d.known {
			amps = noLess(d.amps, 2)
		}
		var numbers []string
		for _, l := range d.Lights {
			numbers = append(numbers, l.Tag)
		}
		rows = append(rows, []Cell{words(d.Label), words(d.Name), known(d.Amps, 2), number(float64(d.Count), 0), words(d.setup), words(strings.Join(numbers, ", ")), number(d.watts, 0), amps})
	}
	return rows
}
