package review

import (
	"fmt"
	"slices"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/plane"
	"scrimshaw/plan/power"
	"scrimshaw/plan/source"
	"scrimshaw/plan/supply"
	"scrimshaw/plan/term"
	"scrimshaw/plan/unit"
)

// mostDrop is the share of the voltage that a cable may lose: the informational notes of NEC 210.19 and 215.2 have 5 % in all.
const mostDrop = 0.05

// cables looks at the cables from the outlet of a circuit to its lights, and to the circuits that it feeds.
func (c *checker) cables(circuit *plan.Circuit) {
	load := c.supply.Of(circuit.Name)
	if load == nil || circuit.Outlet == nil {
		return
	}
	for i := range load.Draws {
		d := &load.Draws[i]
		wire := wire{d.Light.Span, d.Light.Path, d.Light.Numbered()}
		if d.Run == nil {
			noWay(c, circuit, wire)
			continue
		}
		c.lost(load, d)
		c.across(d.Run, wire)
	}
	for _, fed := range load.Feeds {
		wire := wire{fed.Circuit.Span, fed.Circuit.Path, fed.Circuit.Name}
		switch {
		case fed.Circuit.Outlet == nil || fed.Circuit.InBox:
		case fed.Feeder == nil:
			noWay(c, circuit, wire)
		default:
			if fed.Feeder.Section == 0 {
				noCable(c, fed.FeederAmps(c.setup), circuit, wire)
			}
			c.across(fed.Feeder, wire)
		}
	}
}

// wire is what a cable leads to.
type wire struct {
	span source.Span
	path string
	to   string // in words
}

// noWay warns that nothing lets a cable through.
func noWay(c *checker, from *plan.Circuit, w wire) {
	c.add(source.Warning, CodeNoCable, w.span, w.path, "open a door or a gap on the way, or put it on another circuit",
		"there is no way for a cable from the outlet of %s to %s", from.Name, w.to)
}

// noCable warns that the kit has no cable for a breaker, A.
func noCable(c *checker, amps float64, from *plan.Circuit, w wire) {
	c.add(source.Warning, CodeNoCable, w.span, w.path, splitHint(c.setup, amps, from),
		"no cable of the kit carries %s, the breaker of %s", unit.FormatAmps(amps), from.Name)
}

// splitHint says which box of the kit makes smaller circuits of one, which stands beside its outlet.
func splitHint(s *plan.Setup, amps float64, from *plan.Circuit) string {
	phases, behind := 1, "a: {from: box}"
	if from.ThreePhases {
		phases, behind = 3, "a: {from: box, phase: L1}"
	}
	if s.Kit != nil {
		if box := kit.BoxFor(s.Kit.Items, amps, from.Volts, phases); box != nil {
			return fmt.Sprintf("put a %s beside it, with breakers of %s: write box: {from: %s, item: %s} and %s, and put lights on that", box.Label, unit.FormatAmps(box.Breakers), from.Name, box.Name, behind)
		}
	}
	return "split it over smaller circuits, or write such a cable into a kit file: no box of the kit takes " + unit.FormatAmps(amps)
}

// lost warns of a cable that loses too much, or of one that the kit has not.
func (c *checker) lost(load *supply.Load, d *supply.Draw) {
	l, run := d.Light, d.Run
	switch {
	case run.Section == 0:
		noCable(c, load.Circuit.Breaker, load.Circuit, wire{l.Span, l.Path, l.Numbered()})
	case run.InAll > mostDrop:
		before, effect := "", ""
		if run.InAll > run.Drop {
			before = " and in what feeds it"
		}
		if l.Head.Technology == term.Tungsten {
			effect = ", and gives " + unit.FormatPercent(power.FilamentLight(1-run.InAll)) + " of its light"
		}
		c.add(source.Warning, CodeCableDrop, l.Span, l.Path, "take a thicker cable, or an outlet that is nearer",
			"%s loses %s of its voltage in %s of cable of %s mm²%s%s", l.Numbered(), unit.FormatPercent(run.InAll), unit.FormatLength(run.Length, c.setup.Feet),
			unit.FormatNumber(run.Section), before, effect)
	}
}

// across tells where a cable is in the way of people, and where it hangs over a sill.
func (c *checker) across(run *supply.Run, w wire) {
	betweenFloors(c, run, w)
	for _, name := range run.Through {
		switch o := c.setup.OpeningNamed(name); {
		case o.Escape:
			c.add(source.Warning, CodeCableAcross, w.span, w.path, "feed it from elsewhere, or take the cable over the door", "the cable to %s leads through %s, the way out", w.to, name)
		case o.Kind == term.Door:
			c.add(source.Warning, CodeCableAcross, w.span, w.path, "ramp or tape it, and keep the door open", "the cable to %s leads through the door %s", w.to, name)
		case slices.Contains(run.Over, name):
			c.add(source.Info, CodeCableAcross, w.span, w.path, "keep the window open and the cable off its edge, with a loop that drips outside", "the cable to %s leads over the sill of %s", w.to, name)
		}
	}
	for i := range c.setup.People {
		p := &c.setup.People[i]
		if p.Walk != nil && plane.LinesMeet(run.Path, p.Walk.Corners) {
			c.add(source.Warning, CodeCableAcross, w.span, w.path, "ramp or tape it, or lead it round", "the cable to %s crosses the walk of %s", w.to, p.Name)
		}
	}
	for i := range c.setup.Cameras {
		a := &c.setup.Cameras[i]
		if a.Track != nil && plane.LinesMeet(run.Path, a.Track.Corners) {
			c.add(source.Warning, CodeCableAcross, w.span, w.path, "lead it under the rails between two sleepers, or round the end of the track", "the cable to %s crosses the track of %s", w.to, a.Name)
		}
	}
}

// betweenFloors tells where a cable goes over stairs, and where nothing says how it gets from one floor to another.
func betweenFloors(c *checker, run *supply.Run, w wire) {
	for _, name := range run.Stairs {
		c.add(source.Info, CodeCableAcross, w.span, w.path, "tie it along the wall or the banister, off the treads", "the cable to %s leads over the stairs %s", w.to, name)
	}
	if run.Climb > 0 {
		c.add(source.Info, CodeCableAcross, w.span, w.path, "write the stairs that it takes into furniture:, or feed it from its own floor",
			"the cable to %s goes from one floor to another, %s apart, and no stairs of the scene lead there: it is %s long at least", w.to, unit.FormatLength(run.Climb, c.setup.Feet), unit.FormatLength(run.Length, c.setup.Feet))
	}
}
