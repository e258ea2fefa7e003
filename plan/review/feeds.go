package review

import (
	"fmt"
	"math"

	"scrimshaw/plan"
	"scrimshaw/plan/power"
	"scrimshaw/plan/source"
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

// workingDay is how long a day of shooting is where nothing says it, h: common practice.
const workingDay = 10

// lasts holds a battery, and the tank of a generator, to the time that the site says is shot; where it says none, a note has what a day takes.
func lasts(c *checker, circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || load.Hours() == 0 {
		return
	}
	severity, wanted, day := source.Warning, c.setup.Shooting, "and the site says "+unit.FormatHours(c.setup.Shooting)
	if wanted == 0 {
		severity, wanted, day = source.Info, workingDay, fmt.Sprintf("and nothing says how long is shot: a day is reckoned at %d h", workingDay)
	}
	times := math.Ceil(wanted/load.Hours() - 1e-9)
	if times <= 1 {
		return
	}
	what, hint := "the battery "+circuit.Name+" lasts "+unit.FormatHours(load.Hours())+" with the lights as they are set", fmt.Sprintf("bring %.0f in all and change them, feed it from mains, or dim what is on it", times)
	if circuit.Energy == 0 {
		what = "a tank of " + circuit.Name + " lasts " + unit.FormatHours(load.Hours()) + " at full load"
		hint = fmt.Sprintf("bring %s l of fuel in all, and fill it between takes, stopped and cool", unit.FormatNumber(math.Ceil(wanted*circuit.Burn-1e-9)))
	}
	c.add(severity, CodeRunsOut, circuit.Span, circuit.Path, hint, "%s, %s", what, day)
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

// dimming warns of what a dimmer that cuts half-waves does not dim, of what has nothing that dims it, and of a filament that is too small or too large for the dimmers of the kit.
func dimming(c *checker, l *plan.Light) {
	if !c.setup.Dims(l) {
		return
	}
	switch bulb := l.Head.Bulb; {
	case l.Dimming.Kind == term.NoDimmer && (bulb != nil || l.Head.Technology == term.Tungsten):
		c.add(source.Warning, CodeDimmer, l.Span, l.Path, "write dimmer: phase, or another, or leave it at full and use nets or scrims", "%s is to be dimmed, and the scene says that it is on no dimmer: it gives all its light then", l.Numbered())
	case l.Head.Technology == term.Tungsten:
		dimmerLoad(c, l)
	case l.Dimming.Kind == term.PhaseDimmer:
		c.add(source.Warning, CodeDimmer, l.Span, l.Path, "dim it by its own control, with ND or with nets", "%s is no filament, and a dimmer that cuts half-waves does not dim it as it is set", l.Numbered())
	case bulb != nil && l.Dimming.Kind == "":
		c.add(source.Info, CodeDimmer, l.Span, l.Path, "try the bulb with its dimmer first, and write dimmer: once that is known", "%s has a bulb that is no filament at %s, and nothing says what dims it",
			l.Numbered(), unit.FormatPercent(l.Level))
	}
}

// dimmerLoad holds a filament to the dimmers of the kit, which cut half-waves.
func dimmerLoad(c *checker, l *plan.Light) {
	if c.setup.Kit == nil || !l.Dimming.Phase() || l.Head.Watts == 0 {
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
