package review

import (
	"fmt"
	"strings"

	"scrimshaw/plan"
	"scrimshaw/plan/power"
	"scrimshaw/plan/source"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// load warns of a circuit that carries more than it may with every light at full, and notes what it carries that nobody knows.
func (c *checker) load(circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || !load.Known {
		return
	}
	if unknown := load.Unknown(); len(unknown) > 0 && len(load.Draws) > 0 {
		c.add(source.Info, CodeLoadUnknown, circuit.Span, circuit.Path, "write its power into a kit file, or read it off its plate and add it to already:",
			"nothing says what %s on circuit %s draws, and its amps are without it", namesOf(unknown), circuit.Name)
	}
	if !load.Overloaded() {
		return
	}
	c.add(source.Warning, CodeOverload, circuit.Span, circuit.Path, c.relief(load),
		"circuit %s carries %s%s with all lights at full, and %s", circuit.Name, supply.AmpsOver(load.Full), onPhase(load), limitWords(circuit))
}

// onPhase names the phase of three that carries most: " on L2".
func onPhase(load *supply.Load) string {
	if !load.Circuit.ThreePhases {
		return ""
	}
	most := 0
	for p, amps := range load.Flow.Amps {
		if amps > load.Flow.Amps[most] {
			most = p
		}
	}
	return " on " + string(term.Phases[most])
}

// limitWords say what a circuit may carry, and why.
func limitWords(c *plan.Circuit) string {
	if c.Rule == 1 {
		return "its breaker " + unit.FormatAmps(c.Breaker)
	}
	return fmt.Sprintf("%s of its breaker of %s are %s", unit.FormatPercent(c.Rule), unit.FormatAmps(c.Breaker), unit.FormatAmps(c.Limit()))
}

// relief says what to move where.
func (c *checker) relief(load *supply.Load) string {
	moves := c.supply.Relief(load)
	if moves == nil {
		return fmt.Sprintf("take %s off it: no other circuit has room, so another circuit, a generator or smaller units are wanted", supply.AmpsOver(-load.Room()))
	}
	var words []string
	for _, m := range moves {
		words = append(words, fmt.Sprintf("%s (%s) to %s", m.Light.Numbered(), unit.FormatAmps(m.Amps), m.To.Circuit.Name))
	}
	return "move " + strings.Join(words, ", ")
}

// inrush notes lights that a breaker may not hold if all of them are switched on at once.
func (c *checker) inrush(circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || circuit.Direct || power.HoldsInrush(circuit.Breaker, load.Inrush) {
		return
	}
	for _, d := range load.Draws {
		if one := d.Inrush / float64(d.Light.Count); !power.HoldsInrush(circuit.Breaker, one) {
			c.add(source.Info, CodeInrush, circuit.Span, circuit.Path, "put it on a larger circuit, or one with a breaker of type C",
				"%s alone draws a peak of %s as it is switched on: a breaker of %s, type B, may open", d.Light.Numbered(), unit.FormatAmps(one), unit.FormatAmps(circuit.Breaker))
			return
		}
	}
	c.add(source.Info, CodeInrush, circuit.Span, circuit.Path, "switch them on one after the other",
		"switched on at once, the lights on circuit %s draw a peak of %s: a breaker of %s, type B, may open", circuit.Name, unit.FormatAmps(load.Inrush), unit.FormatAmps(circuit.Breaker))
}

// loose notes a light that is on none of the circuits of its scene.
func (c *checker) loose(l *plan.Light) {
	for _, d := range c.supply.Loose {
		if d.Light == l {
			c.add(source.Info, CodeNoCircuit, l.Span, l.Path, "add circuit: and the name of one", "%s is on no circuit, and no breaker is checked for it", l.Numbered())
		}
	}
}

// namesOf lists lights by number and name.
func namesOf(lights []*plan.Light) string {
	var names []string
	for _, l := range lights {
		names = append(names, l.Numbered())
	}
	return strings.Join(names, ", ")
}
