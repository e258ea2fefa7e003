package list

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/day"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
)

// Day is the lists of a day: of some set-ups of one file.
type Day struct {
	Scene                string   // the title
	Setups               []string // "" of a scene without set-ups
	Kit, Lamps, Circuits Table
	Power                Table    // what each circuit carries at most in one of the set-ups
	Consumables          Table    // what is used up
	Dimmers              Table    // of each class, and of all, the most in use at one time
	Without              []string // sentences: what is not on the lists

	kit     day.List
	sums    day.Totals
	bill    bill
	dimmers day.MostDimmed
	noCable []string // the numbers of lights of which nobody knows how much cable they take
}

// New is a day without set-ups yet.
func New() *Day {
	return &Day{Setups: []string{}, Kit: Table{Name: "kit", Title: "Kit", Columns: kitColumns},
		Consumables: Table{Name: "consumables", Title: "Consumables", Columns: consumableColumns},
		Dimmers:     Table{Name: "dimmers", Title: "Dimmers", Columns: dimmerColumns}, Lamps: Table{Name: "lamps", Title: "Lamps", Columns: lampColumns},
		Circuits: Table{Name: "circuits", Title: "Circuits", Columns: circuitColumns},
		Power:    Table{Name: "power", Title: "Power", Columns: powerColumns}}
}

// Tables are those of a day, the kit first.
func (d *Day) Tables() []*Table {
	return []*Table{&d.Kit, &d.Consumables, &d.Dimmers, &d.Lamps, &d.Circuits, &d.Power}
}

// Add takes the next set-up into the lists.
func (d *Day) Add(s *plan.Setup) {
	if s.Scene != nil {
		d.Scene = words(s.Scene.Title.Value).Text
	}
	d.Scene = cmp.Or(d.Scene, words(s.Title).Text)
	d.Setups = append(d.Setups, s.Name)
	d.kit.Add(s)
	powered := supply.Of(s)
	d.addLamps(s, &powered)
	d.addCircuits(s, &powered)
	d.dimmers.Add(s, &powered)
	d.Dimmers.Rows = dimmerRows(d.dimmers)
	d.Power.Rows = powerRows(&d.Circuits)
	for i := range s.Lights {
		if l := &s.Lights[i]; !hasCable(&powered, l) && l.Head.Watts > 0 && !slices.Contains(d.noCable, l.Tag) {
			d.noCable = append(d.noCable, l.Tag)
		}
	}
	d.bill = bill{prices: s.Prices}
	d.Kit.Rows, d.Consumables.Rows = kitRows(d.kit.Items, &d.bill), consumableRows(d.kit.Items, &d.bill)
	d.sums = d.kit.Totals()
	d.Without = d.without()
}

// hasCable says whether the way of a light's cable is known.
func hasCable(powered *supply.Supply, l *plan.Light) bool {
	_, d := powered.DrawOf(l)
	return d != nil && d.Run != nil
}

// Mass is the sum of all masses that are known, kg; it is not known where none of them is.
func (d *Day) Mass() Cell { return known(d.sums.Mass, 1) }

// ConsumableMass is the sum of the masses of what is used up that are known, kg, which Mass does not count.
func (d *Day) ConsumableMass() Cell {
	sum := 0.0
	for _, row := range d.Consumables.Rows {
		if kg := row[d.Consumables.At("kg")].Number; kg != nil {
			sum += *kg
		}
	}
	return known(sum, 1)
}

// Volume is the sum of all cases that are known, in litres.
func (d *Day) Volume() Cell { return known(litres*d.sums.Volume, 0) }

// Hire says what all that comes back costs over the days that are charged, Sales what is used up; cells that say nothing without a price file.
func (d *Day) Hire() Cell  { return d.money(d.bill.hire) }
func (d *Day) Sales() Cell { return d.money(d.bill.sales) }

// Price is both.
func (d *Day) Price() Cell { return d.money(d.bill.hire + d.bill.sales) }

func (d *Day) money(m kit.Money) Cell {
	if d.bill.prices == nil {
		return Cell{}
	}
	return number(m.Units(), 2)
}

// Terms say the days of the hire and the currency; "" without a price file.
func (d *Day) Terms() string {
	p := d.bill.prices
	if p == nil {
		return ""
	}
	return joined(", ", fmt.Sprintf("prep %s, shoot %s, return %s, %s charged", days(p.Days.Prep), days(p.Days.Shoot), days(p.Days.Return), unit.FormatNumber(p.Days.Charged)), before("prices in ", p.Currency))
}

// days is a number of days in words.
func days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return strconv.Itoa(n) + " days"
}

// Lacks says in sentences what the totals and the lists are without.
func (d *Day) Lacks() []string {
	var all []string
	if len(d.sums.WithoutMass) > 0 {
		all = append(all, "The mass is without "+strings.Join(d.sums.WithoutMass, "; ")+".")
	}
	if d.sums.WithoutVolume > 0 {
		all = append(all, fmt.Sprintf("The volume is without %d pieces whose case is not known.", d.sums.WithoutVolume))
	}
	return append(all, d.Without...)
}

// litres are those of a cubic metre.
const litres = 1000

// without says what the lists lack.
func (d *Day) without() (all []string) {
	if len(d.noCable) > 0 {
		all = append(all, "No cable for "+strings.Join(d.noCable, ", ")+": no circuit says where the outlet is, or there is no way from it.")
	}
	if len(d.bill.unpriced) > 0 {
		all = append(all, "No price for "+strings.Join(d.bill.unpriced, "; ")+".")
	}
	return append(all, NotListed()...)
}

// NotListed says in sentences what no list has, nor a part of one.
func NotListed() []string {
	return []string{
		"Not listed: cameras and their rails, furniture and decks, control, tools, fuel, what holds a head on a lift, batteries and boxes that no circuit names, and splitters where no circuit says its outlet.",
		"Cable is counted up to where a lamp's own mains cable begins, where one comes with it.",
		"Adapters of spigots are counted between a head and the stand that it is on alone, and nobody checks what walls, ceilings and furniture bear: whoever rigs decides."}
}
