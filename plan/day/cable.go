package day

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/unit"
)

// The lengths of cable are reckoned in these steps, m, and a run of more pieces than mostPieces is one of the longest alone.
const (
	cableGrain = 0.1
	mostPieces = 12
)

// cable counts the cable from outlets to lights and to other circuits, a run each; of circuits that say no outlet nobody knows any.
func (n *needs) cable() {
	all := supply.Of(n.setup)
	plugs := map[*plan.Circuit]int{} // that go into its outlets
	for i := range n.setup.Lights {
		if load, d := all.DrawOf(&n.setup.Lights[i]); d != nil && d.Run != nil {
			n.run(run{d.Run, ownCable(d.Light), load.Circuit.Breaker, ends{outlet: plugOf(load.Circuit), inlet: inletOf(d, load.Circuit)}, d.Light.Count, d.Light.Tag})
			plugs[load.Circuit] += d.Light.Count
		}
	}
	for i := range all.Loads {
		if load := &all.Loads[i]; load.Feeder != nil {
			ends := ends{outlet: plugOf(load.From.Circuit), inlet: n.inletOfBox(load.Circuit), phases: load.Circuit.ThreePhases}
			if ends.phases && load.From.Circuit.Plug == "" {
				ends.outlet = ends.inlet // no country has a plug of its own for three phases
			}
			n.run(run{load.Feeder, 0, load.FeederAmps(n.setup), ends, 1, load.Circuit.Name})
			plugs[load.From.Circuit]++
		}
	}
	for i := range all.Loads {
		n.splitters(all.Loads[i].Circuit, plugs[all.Loads[i].Circuit])
	}
}

// splitters count the blocks that make of the outlets of a circuit as many as plugs go into them. Where nothing says how many it has, it has one.
func (n *needs) splitters(c *plan.Circuit, plugs int) {
	outlets := 1
	if item := n.kit.ItemOf(c.Item); item != nil {
		outlets = max(1, item.Outlets)
	}
	missing := plugs - outlets
	if missing <= 0 || c.Direct || c.ThreePhases {
		return
	}
	var best *kit.Item
	for _, item := range n.kit.Items {
		if item.Group == "splitter" && item.Breakers == 0 && item.Outlets > 1 && item.Amps >= c.Breaker && item.Plug == plugOf(c) && (best == nil || item.Amps < best.Amps) {
			best = item
		}
	}
	if best == nil {
		n.add(Item{Shelf: Power, Label: fmt.Sprintf("splitter for %s, %d plugs", unit.FormatAmps(c.Breaker), plugs)}, 1, c.Name)
		return
	}
	n.add(stocked(Power, best), (missing+best.Outlets-2)/(best.Outlets-1), c.Name)
}

// ownCable is how long the mains cable is that comes with a light, m: that much less has to be laid for it.
func ownCable(l *plan.Light) float64 {
	if u := l.Head.Unit; u != nil {
		return u.OwnCable
	}
	return 0
}

// run is a cable to be made of pieces.
type run struct {
	*supply.Run
	own   float64 // of it, that comes with what is fed, m
	amps  float64 // that it has to stand
	ends  ends
	count int
	tag   string
}

// ends are what a cable goes into and what goes into it, by the words of plugs; "" is that of the country.
type ends struct {
	outlet, inlet string
	phases        bool
}

// run counts the pieces of a cable, and the adapters at its ends.
func (n *needs) run(r run) {
	n.laid += r.Length * float64(r.count)
	if r.Length <= r.own {
		n.adapter(r.ends.outlet, r.ends.inlet, &r)
		return
	}
	pieces := n.pieces(&r)
	if pieces == nil {
		n.add(Item{Shelf: Cable, Label: "cable for " + unit.FormatAmps(r.amps) + " of " + n.length(math.Ceil(r.Length-r.own))}, r.count, r.tag)
		return
	}
	for _, p := range pieces {
		item := stocked(Cable, p)
		item.section, item.length = p.Section, p.Length
		n.add(item, r.count, r.tag)
	}
	n.adapter(r.ends.outlet, pieces[0].Plug, &r)
	n.adapter(pieces[0].Plug, r.ends.inlet, &r)
}

// adapter counts what joins two kinds of plug.
func (n *needs) adapter(from, to string, r *run) {
	if from != to {
		n.add(Item{Shelf: Adapter, Label: "adapter from " + plugWords(from) + " to " + plugWords(to)}, r.count, r.tag)
	}
}

// plugWords name a plug.
func plugWords(plug string) string { return cmp.Or(plug, "the plug of the country") }

// lowCountry is the plug of countries of 120 V, by the words of the kit's cables (NEMA WD 6).
const lowCountry = "NEMA 5-20"

// countryPlug is the plug of the country by its voltage, V.
func countryPlug(volts float64) string {
	const between = (kit.MainsLow + kit.MainsHigh) / 2
	if volts > leastMains && volts < between {
		return lowCountry
	}
	return ""
}

// leastMains is the voltage below which nothing has the plug of a country, V.
const leastMains = 90

// plugOf is what goes into the outlets of a circuit.
func plugOf(c *plan.Circuit) string { return cmp.Or(c.Plug, countryPlug(c.Volts)) }

// industrial begins the names of plugs that a unit of the kit has on its own cable.
const industrial = "IEC 60309"

// inletOf is what a unit's own cable ends in: one of industry where its inlet is, else that of the country.
func inletOf(d *supply.Draw, c *plan.Circuit) string {
	if u := d.Light.Head.Unit; u != nil && strings.HasPrefix(u.Inlet, industrial) {
		return u.Inlet
	}
	return countryPlug(c.Volts)
}

// inletOfBox is what feeds a box.
func (n *needs) inletOfBox(c *plan.Circuit) string {
	if item := n.kit.ItemOf(c.Item); item != nil && item.Plug != "" {
		return item.Plug
	}
	return countryPlug(c.Volts)
}

// kindOfCable are cables that go into each other.
type kindOfCable struct {
	plug    string
	section float64 // mm²
}

// pieces are the cables of one kind that make a run: of those that need the fewest adapters the thinnest, the fewest, and of as few those with the least over.
// Nil where no cable carries the current.
func (n *needs) pieces(r *run) (best []*kit.Item) {
	byKind := map[kindOfCable][]*kit.Item{}
	var kinds []kindOfCable
	for _, item := range n.kit.Items {
		if r.Section > 0 && item.Section >= r.Section && item.Amps >= r.amps && item.Length > 0 && r.ends.phases == (item.Cores >= supply.PhaseCores) {
			kind := kindOfCable{item.Plug, item.Section}
			if !slices.Contains(kinds, kind) {
				kinds = append(kinds, kind)
			}
			byKind[kind] = append(byKind[kind], item)
		}
	}
	for _, kind := range kinds {
		p := Pieces(byKind[kind], r.Length-r.own)
		if best == nil || slices.Compare(r.ends.cost(p), r.ends.cost(best)) < 0 {
			best = p
		}
	}
	return best
}

// cost is by what cables are chosen, the first figure first: adapters, the section of a core, pieces, length.
func (e ends) cost(pieces []*kit.Item) []float64 {
	adapters := 0.0
	for _, end := range []string{e.outlet, e.inlet} {
		if end != pieces[0].Plug {
			adapters++
		}
	}
	return []float64{adapters, pieces[0].Section, float64(len(pieces)), total(pieces)}
}

func total(pieces []*kit.Item) (sum float64) {
	for _, p := range pieces {
		sum += p.Length
	}
	return sum
}

// Pieces are the fewest cables that reach a length, m, and of as few those with the least over, the longest first.
func Pieces(cables []*kit.Item, length float64) []*kit.Item {
	longest := slices.MaxFunc(cables, func(a, b *kit.Item) int { return steps(a.Length) - steps(b.Length) })
	want := max(1, int(math.Ceil(length/cableGrain-1e-6)))
	count := (want + steps(longest.Length) - 1) / steps(longest.Length)
	if count > mostPieces {
		return slices.Repeat([]*kit.Item{longest}, count)
	}
	// last is by which cable a sum is reached with so many pieces; a sum is never more than is needed with the longest.
	last := make([]map[int]*kit.Item, count+1)
	last[0] = map[int]*kit.Item{0: nil}
	for k := 1; k <= count; k++ {
		last[k] = map[int]*kit.Item{}
		for sum := range last[k-1] {
			for _, c := range cables {
				if to := sum + steps(c.Length); last[k][to] == nil || steps(last[k][to].Length) < steps(c.Length) {
					last[k][to] = c
				}
			}
		}
	}
	best := count * steps(longest.Length)
	for sum := range last[count] {
		if sum >= want && sum < best {
			best = sum
		}
	}
	var found []*kit.Item
	for k, sum := count, best; k > 0; k-- {
		c := last[k][sum]
		found, sum = append(found, c), sum-steps(c.Length)
	}
	slices.SortStableFunc(found, func(a, b *kit.Item) int { return steps(b.Length) - steps(a.Length) })
	return found
}

// steps are those that a cable is long for sure.
func steps(length float64) int { return max(1, int(math.Floor(length/cableGrain+1e-6))) }

// power counts the boxes, batteries and generators that circuits are. A battery or a generator that names no thing of the kit is one by its figures, else no
// desk would send it.
func (n *needs) power() {
	for i := range n.setup.Circuits {
		c := &n.setup.Circuits[i]
		if item := n.kit.ItemOf(c.Item); item != nil {
			stock := stocked(Power, item)
			if item.Energy > 0 {
				stock.Note = "with its charger"
			}
			n.add(stock, 1, c.Name)
		} else if c.From == "" && c.Kind != "" && c.Kind != scene.DefaultFeed {
			n.add(Item{Shelf: Power, Label: sourceLabel(c)}, 1, c.Name)
		}
	}
}

// sourceLabel names a battery or a generator by what the scene says of it: "generator 20 kVA, 230 V, three phases of 32 A".
func sourceLabel(c *plan.Circuit) string {
	label := string(c.Kind)
	switch {
	case c.Energy > 0:
		label += " " + unit.FormatNumber(c.Energy) + " Wh"
	case c.VoltAmps > 0:
		label += " " + unit.FormatNumber(c.VoltAmps/1000) + " kVA"
	case c.Watts > 0:
		label += " " + unit.FormatPower(c.Watts)
	}
	if c.Volts > 0 {
		label += ", " + unit.FormatNumber(c.Volts) + " V"
	}
	if c.ThreePhases {
		return label + ", three phases of " + unit.FormatAmps(c.Breaker)
	}
	return label + ", " + unit.FormatAmps(c.Breaker)
}

// usedUp counts what a rule of the kit says of what is used up: tape by the cable that is laid, foil by lights.
func (n *needs) usedUp() {
	lights := 0.0
	for i := range n.setup.Lights {
		lights += float64(n.setup.Lights[i].Count)
	}
	for _, item := range n.kit.Items {
		count := 0.0
		if item.PerCable > 0 {
			count += n.laid / item.PerCable
		}
		if item.PerLight > 0 {
			count += lights / item.PerLight
		}
		if count = math.Ceil(count - 1e-9); count > 0 {
			n.add(stocked(UsedUp, item), int(count), "")
		}
	}
}
