package review

import (
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/power"
	"scrimshaw/plan/source"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// feed warns of a generator or a battery that has to give more than it can.
func feed(c *checker, circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || !load.Known || !load.OverPower() {
		return
	}
	asked, can := unit.FormatPower(math.Ceil(load.Flow.Watts-1e-6)), unit.FormatPower(circuit.Watts)
	if circuit.VoltAmps > 0 && load.Flow.VoltAmps > circuit.VoltAmps {
		asked, can = kilo(math.Ceil(load.Flow.VoltAmps-1e-6)), kilo(circuit.VoltAmps)
	}
	c.add(source.Warning, CodeFeedOver, circuit.Span, circuit.Path, "take lights off it, or feed them from a larger one",
		"%s has to give %s with all lights at full, and it gives %s", circuit.Name, asked, can)
}

// kilo prints volt-amperes in thousands.
func kilo(voltAmps float64) string { return unit.FormatNumber(voltAmps/1000) + " kVA" }

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

// ampSlack is how far a current may be over a limit by rounding, A.
const ampSlack = 1e-9

// leakage warns where so many supplies stand on one residual-current device that it may trip for nothing.
func leakage(c *checker, circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || !load.Leaks() {
		return
	}
	c.add(source.Warning, CodeLeakage, circuit.Span, circuit.Path, "spread the supplies over more residual-current devices, and write leakage: into a kit file where their plates say it",
		"about %s mA flow down the earth of %s all the time, over %s of the %s mA of its protection, which may trip from half of them on", unit.FormatNumber(math.Ceil(10*load.Leakage-1e-6)/10),
		circuit.Name, unit.FormatPercent(power.StandingShare), unit.FormatNumber(circuit.Residual))
}

// dimming warns of what a dimmer that cuts half-waves does not dim, and of a filament that is too small or too large for the dimmers of the kit.
func dimming(c *checker, l *plan.Light) {
	if !c.setup.Dims(l) {
		return
	}
	switch bulb := l.Head.Bulb; {
	case l.Head.Technology == term.Tungsten:
		dimmerLoad(c, l)
	case l.Dimming.Kind == term.PhaseDimmer:
		c.add(source.Warning, CodeDimmer, l.Span, l.Path, "dim it by its own control, with ND or with nets", "%s is no filament, and a dimmer that cuts half-waves does not dim it as it is set", l.Numbered())
	case bulb != nil && l.Dimming.Kind == "":
		c.add(source.Info, CodeDimmer, l.Span, l.Path, "try the bulb with its dimmer first, and write dimmer: once that is known", "%s has a bulb that is no filament at %s, and nothing says what dims it",
			l.Numbered(), unit.FormatPercent(l.Level))
	}
}

// dimmerLoad holds a filament to the dimmers of the kit.
func dimmerLoad(c *checker, l *plan.Light) {
	if c.setup.Kit == nil || l.Dimming.Kind == term.NoDimmer || l.Head.Watts == 0 {
		return
	}
	item := c.setup.Kit.DimmerFor(l.Head.Watts)
	switch {
	case item == nil:
		c.add(source.Info, CodeDimmer, l.Span, l.Path, "use scrims or nets, or write such a dimmer into a kit file", "no dimmer of the kit stands the %s of %s", unit.FormatPower(l.Head.Watts), l.Numbered())
	case item.Least > l.Head.Watts:
		c.add(source.Info, CodeDimmer, l.Span, l.Path, "put a second lamp on the same dimmer", "%s draws %s, and a %s dims from %s on", l.Numbered(), unit.FormatPower(l.Head.Watts), item.Label, unit.FormatPower(item.Least))
	}
}
