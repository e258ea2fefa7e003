package resolve

import (
	"slices"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/scene"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// circuitPass takes the circuits.
type circuitPass struct{ *placer }

// feed resolves every circuit, each after the one that feeds it.
func (r *circuitPass) feed() {
	for i := range r.s.Circuits {
		c := &r.s.Circuits[i]
		leave := r.About(c.Path)
		r.out.Circuits = append(r.out.Circuits, r.circuit(c))
		leave()
	}
	for i := range r.out.Circuits {
		r.outletOfFeed(&r.out.Circuits[i])
		r.checkPhases(&r.s.Circuits[i], &r.out.Circuits[i])
	}
	for i := range r.s.Lights {
		r.checkOnOnePhase(&r.s.Lights[i])
	}
}

// written is a circuit of the scene by its name; nil where there is none.
func (r *draft) written(name string) *scene.Circuit {
	for i := range r.s.Circuits {
		if r.s.Circuits[i].Name == name {
			return &r.s.Circuits[i]
		}
	}
	return nil
}

// feeders are a circuit and those that feed it, up to the one that nothing does; ok where they do not feed each other in a ring.
func (r *draft) feeders(c *scene.Circuit) (all []*scene.Circuit, ok bool) {
	for ; c != nil; c = r.written(c.From.Name) {
		if slices.Contains(all, c) {
			return all, false
		}
		all = append(all, c)
	}
	return all, true
}

// ofSource is the first value that a circuit or one of those that feed it says.
func (r *draft) ofSource(c *scene.Circuit, value func(*scene.Circuit) scene.Given[float64]) (none scene.Given[float64]) {
	all, _ := r.feeders(c)
	for _, c := range all {
		if v := value(c); v.Set {
			return v
		}
	}
	return none
}

// itemOf is the thing of the kit that a circuit is; the zero Item where the scene says no such thing.
func (r *draft) itemOf(c *scene.Circuit) kit.Item {
	if item := r.out.Kit.ItemOf(c.Item.Value); item != nil {
		return *item
	}
	return kit.Item{}
}

// kindOf is what feeds a circuit: as it is written, by its item, by the fuel that it burns, or as what feeds it.
func (r *draft) kindOf(c *scene.Circuit) term.Feed {
	all, _ := r.feeders(c)
	for _, c := range all {
		switch item := r.itemOf(c); {
		case c.Kind.Set:
			return c.Kind.Value
		case item.Energy > 0:
			return term.Battery
		case item.Group == kit.GeneratorGroup || c.Tank.Set || c.Burn.Set:
			return term.Generator
		}
	}
	return scene.DefaultFeed
}

// leastMains is the voltage below which a battery of the kit has no outlet of the mains, V.
const leastMains = 100

// isDirect says whether a circuit gives direct current: one of 0 Hz, and a battery of no frequency and of no item with mains.
func (r *draft) isDirect(c *scene.Circuit) bool {
	all, _ := r.feeders(c)
	for _, c := range all {
		if c.Hertz.Set {
			return c.Hertz.Value == 0
		}
		if volts := r.itemOf(c).Volts; volts > 0 {
			return volts < leastMains
		}
	}
	return r.kindOf(c) == term.Battery
}

// voltsOf is the voltage of a circuit: as it is written, of its item, or of what feeds it, else by the frequency of its mains. Of direct current
// it is not known, and 0.
func (r *draft) voltsOf(c *scene.Circuit) (volts float64, told bool) {
	const between = 55 // Hz
	all, _ := r.feeders(c)
	for _, c := range all {
		if c.Volts.Set {
			return c.Volts.Value, true
		}
		if volts := r.itemOf(c).Volts; volts > 0 {
			return volts, true
		}
	}
	hertz := r.ofSource(c, func(c *scene.Circuit) scene.Given[float64] { return c.Hertz })
	switch {
	case r.isDirect(c):
		return 0, false
	case hertz.Set && hertz.Value > between, !hertz.Set && r.s.Feet:
		return kit.MainsLow, false
	}
	return kit.MainsHigh, false
}

// circuit is one circuit as it is written, with what its item and what feeds it say.
func (r *circuitPass) circuit(c *scene.Circuit) plan.Circuit {
	item := r.circuitItem(c)
	volts, told := r.voltsOf(c)
	if volts == 0 {
		r.Warnf(c.Span, CodeNoVoltage, "add volts:, as volts: 24", "nothing says the voltage of %s, and so not its amps", c.Name)
	} else if !told && c.From.Name == "" {
		r.assume(c.Path, "volts", unit.FormatNumber(volts)+" V")
	}
	out := plan.Circuit{
		Name: c.Name, Path: c.Path, Kind: r.kindOf(c), Volts: volts, Breaker: r.breakerOf(c), From: r.fedBy(c), Phase: c.Phase.Value,
		ThreePhases: c.Phases.Or(item.Phases) == threePhases, Rule: c.Rule.Or(scene.DefaultRule), Already: c.Already.Value, Direct: r.isDirect(c),
		Residual: c.Residual.Or(item.Residual), Watts: c.Power.Or(item.Watts), VoltAmps: 1000 * c.KVA.Value, Energy: c.Energy.Or(item.Energy),
		Tank: c.Tank.Value, Burn: c.Burn.Value, Item: item.Name, Plug: c.Plug.Value, Span: c.Span,
	}
	if out.Energy > 0 {
		out.Usable = c.Usable.Or(scene.DefaultUsable)
		if !c.Usable.Set {
			r.assume(c.Path, "usable", unit.FormatPercent(out.Usable))
		}
	}
	if c.At.Set {
		if spot, ok := r.placed(c.Span, c.At, nil); ok {
			out.Outlet, out.Floor = &spot.At, r.out.Ground
			if room := r.out.RoomNamed(spot.Room); room != nil {
				out.Floor = room.Base
			}
		}
	}
	return out
}

// outletOfFeed gives a circuit without a place of its own the outlet of what feeds it: it is a way of that box. So is one that is written where that is,
// but for a thing of its own that stands beside it.
func (r *circuitPass) outletOfFeed(c *plan.Circuit) {
	if from := r.out.CircuitNamed(c.From); from != nil && from.Outlet != nil && c.Outlet != nil && c.Item == "" {
		c.InBox = plane.SamePoint(*c.Outlet, *from.Outlet) && c.Floor == from.Floor
	}
	for from := c; c.Outlet == nil && from != nil; from = r.out.CircuitNamed(from.From) {
		c.Outlet, c.Floor, c.InBox = from.Outlet, from.Floor, from != c
	}
}

// threePhases is how many phases a supply has that has more than one.
const threePhases = 3

// circuitItem is the thing of the kit that a circuit is, with a fault where the kit has none of that name.
func (r *circuitPass) circuitItem(c *scene.Circuit) kit.Item {
	item := r.itemOf(c)
	if c.Item.Set && item.Name == "" {
		r.unknownEntry(c.Item, "item", kit.Names(r.out.Kit.Items))
	}
	return item
}

// fedBy is the circuit that feeds one; "" where circuits feed each other in a ring, which is a fault.
func (r *circuitPass) fedBy(c *scene.Circuit) string {
	all, ok := r.feeders(c)
	if ok {
		return c.From.Name
	}
	var names []string
	for _, c := range all {
		names = append(names, c.Name)
	}
	if all[len(all)-1].From.Name != c.Name || slices.Min(names) != c.Name {
		return "" // the ring tells it once
	}
	r.Errorf(c.From.Span, CodeCycle, "take from: off the one that nothing here feeds", "circuits feed each other: %s", strings.Join(names, " from "))
	return ""
}

// breakerOf is what a circuit carries, A: as it is written, by its item, else what an outlet of what feeds it carries.
func (r *circuitPass) breakerOf(c *scene.Circuit) float64 {
	if c.Breaker.Set {
		return c.Breaker.Value
	}
	all, ok := r.feeders(c)
	for i, c := range all {
		item := r.itemOf(c)
		switch {
		case i > 0 && item.Breakers > 0:
			return item.Breakers
		case i > 0 && c.Breaker.Set:
			return c.Breaker.Value
		case item.Amps > 0:
			return item.Amps
		}
	}
	if ok && !(c.Item.Set && r.itemOf(c).Name == "") {
		r.Errorf(c.Span, source.CodeMissingKey, "add breaker:, as breaker: 16", "nothing says what %s carries", c.Name)
	}
	return 0
}

// betweenPhases are the least and the most volts that are taken for those between two phases, where those of one to the neutral belong.
var betweenPhases = [2]float64{346, 480}

// checkPhases refuses phases that do not go with what feeds a circuit.
func (r *circuitPass) checkPhases(written *scene.Circuit, c *plan.Circuit) {
	defer r.About(c.Path)()
	from := r.out.CircuitNamed(c.From)
	threes := from != nil && from.ThreePhases
	switch {
	case written.Phases.Set && written.Phases.Value == 2:
		r.Errorf(written.Phases.Span, CodePhase, "write phases: 3, or make each of the two a circuit", "a circuit has one phase or three")
	case c.ThreePhases && c.Volts >= betweenPhases[0] && c.Volts <= betweenPhases[1]:
		r.Errorf(c.Span, CodePhase, "write the volts from one phase to the neutral, as volts: 230", "%s V is the voltage between two phases, and here that from one to the neutral belongs", unit.FormatNumber(c.Volts))
	case c.ThreePhases && from != nil && !threes:
		r.Errorf(c.Span, CodePhase, "feed it from one of three phases, or leave out phases:", "%s has three phases, and %s, which feeds it, one", c.Name, from.Name)
	case c.Phase != "" && (c.ThreePhases || !threes):
		r.Errorf(written.Phase.Span, CodePhase, "leave it out, or write phases: 3 into what feeds it", "%s is on no phase of its own: nothing with three phases feeds it, or it has all of them", c.Name)
	case c.Phase == "" && !c.ThreePhases && threes:
		r.Errorf(c.Span, CodePhase, "add phase: L1, L2 or L3", "%s has three phases, and nothing says on which of them %s is", from.Name, c.Name)
	}
}

// checkOnOnePhase refuses a light on a circuit of three phases.
func (r *circuitPass) checkOnOnePhase(l *scene.Light) {
	c := r.out.CircuitNamed(l.Circuit.Value)
	if c == nil || !c.ThreePhases {
		return
	}
	defer r.About(l.Path)()
	r.Errorf(l.Circuit.Span, CodePhase, "write a circuit with from: "+c.Name+" and phase: L1, and put the light on that", "%s has three phases, and a light is on one of them", c.Name)
}
