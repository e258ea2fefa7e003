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

// uneven tells where three phases differ by more than is even, and what to move from which to which. A generator is worse off than the mains: its
// voltages stray from each other.
func uneven(c *checker, circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || load.Overloaded() || !load.OutOfBalance() {
		return
	}
	severity := source.Info
	if circuit.Kind == term.Generator {
		severity = source.Warning
	}
	c.add(severity, CodeUneven, circuit.Span, circuit.Path, balanceWords(c, load), "the phases of %s carry %s with all lights at full: they differ by %s, over %s of the %s that each may carry, and its neutral carries %s",
		circuit.Name, ofPhases(load.Flow.Amps), supply.AmpsOver(load.Flow.Spread()), unit.FormatPercent(supply.EvenShare), unit.FormatAmps(circuit.Limit()), supply.AmpsOver(load.Flow.Neutral()))
}

// ofPhases says what each phase carries.
func ofPhases(amps [3]float64) string {
	return fmt.Sprintf("%s on %s, %s on %s and %s on %s", supply.AmpsOver(amps[0]), term.Phases[0], supply.AmpsOver(amps[1]), term.Phases[1], supply.AmpsOver(amps[2]), term.Phases[2])
}

// balanceWords say what to move to which phase, and what they carry then.
func balanceWords(c *checker, load *supply.Load) string {
	moves, left := c.supply.Balance(load)
	if moves == nil {
		return "no light that is on it makes them more even: put the next ones on the emptiest phase"
	}
	var words []string
	for _, m := range moves {
		words = append(words, fmt.Sprintf("%s (%s) from %s to %s", m.Light.Numbered(), unit.FormatAmps(m.Amps), onWhich(m.From.Circuit), onWhich(m.To.Circuit)))
	}
	return "move " + strings.Join(words, ", ") + ": then they carry " + ofPhases(left)
}

// onWhich names a circuit with its phase, where it is on one itself.
func onWhich(c *plan.Circuit) string {
	if c.Phase == "" {
		return c.Name
	}
	return c.Name + " on " + string(c.Phase)
}

// neutral warns of a neutral, or of phases beside it, that carry more than a cable of so many loaded cores does with the third harmonics that its supplies and dimmers
// may make.
func neutral(c *checker, circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || !load.Known || !circuit.ThreePhases || load.Overloaded() {
		return
	}
	flow, third := &load.Flow, load.Flow.ThirdShare()
	factor, byNeutral := power.HarmonicFactor(third)
	carried, where := flow.Most(), "a phase"
	if byNeutral || flow.WorstNeutral() > carried {
		carried, where = flow.WorstNeutral(), "the neutral"
	}
	if carried <= circuit.Limit()*factor+ampSlack {
		return
	}
	c.add(source.Warning, CodeNeutral, circuit.Span, circuit.Path, "take lights off it, spread them over the phases, or feed them by a thicker cable",
		"with up to %.0f %% of third harmonic %s of %s carries %s, and a cable for %s carries %s then", 100*third, where, circuit.Name, supply.AmpsOver(carried),
		unit.FormatAmps(circuit.Limit()), unit.FormatAmps(circuit.Limit()*factor))
}
