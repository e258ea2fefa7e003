package review

import (
	"scrimshaw/plan"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/power"
	"scrimshaw/plan/source"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// mostDrop is the share of the voltage that a cable may lose: the informational notes of NEC 210.19 and 215.2 have 5 % in all.
const mostDrop = 0.05

// cables looks at the cables from the outlet of a circuit to its lights.
func (c *checker) cables(circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || circuit.Outlet == nil {
		return
	}
	for i := range load.Draws {
		d := &load.Draws[i]
		if d.Run == nil {
			c.add(source.Warning, CodeNoCable, d.Light.Span, d.Light.Path, "open a door or a gap on the way, or put it on another circuit",
				"there is no way for a cable from the outlet of %s to %s", circuit.Name, d.Light.Numbered())
			continue
		}
		c.lost(load, d)
		c.across(d)
	}
}

// lost warns of a cable that loses too much, or of one that the kit has not.
func (c *checker) lost(load *supply.Load, d *supply.Draw) {
	l, run := d.Light, d.Run
	switch {
	case run.Section == 0:
		c.add(source.Warning, CodeNoCable, l.Span, l.Path, "split it over smaller circuits, or write such a cable into a kit file",
			"no cable of the kit carries %s, the breaker of %s", unit.FormatAmps(load.Circuit.Breaker), load.Circuit.Name)
	case run.Drop > mostDrop:
		effect := ""
		if l.Head.Technology == term.Tungsten {
			effect = ", and gives " + unit.FormatPercent(power.FilamentLight(1-run.Drop)) + " of its light"
		}
		c.add(source.Warning, CodeCableDrop, l.Span, l.Path, "take a thicker cable, or an outlet that is nearer",
			"%s loses %s of its voltage in %s of cable of %s mm²%s", l.Numbered(), unit.FormatPercent(run.Drop), unit.FormatLength(run.Length, c.setup.Feet),
			unit.FormatNumber(run.Section), effect)
	}
}

// across tells where a cable is in the way of people.
func (c *checker) across(d *supply.Draw) {
	l := d.Light
	for _, name := range d.Run.Through {
		o := c.setup.OpeningNamed(name)
		switch {
		case o.Escape:
			c.add(source.Warning, CodeCableAcross, l.Span, l.Path, "feed it from elsewhere, or take the cable over the door", "the cable to %s leads through %s, the way out", l.Numbered(), name)
		case o.Kind == term.Door:
			c.add(source.Info, CodeCableAcross, l.Span, l.Path, "ramp or tape it, and keep the door open", "the cable to %s leads through the door %s", l.Numbered(), name)
		}
	}
	for i := range c.setup.People {
		p := &c.setup.People[i]
		if p.Walk != nil && plane.LinesMeet(d.Run.Path, p.Walk.Corners) {
			c.add(source.Info, CodeCableAcross, l.Span, l.Path, "ramp or tape it, or lead it round", "the cable to %s crosses the walk of %s", l.Numbered(), p.Name)
		}
	}
}
