package kit

import (
	"slices"

	"scrimshaw/plan/source"
)

// link gives units their bulbs and checks the names by which entries call each other. units and bulbs are those that
// were read now.
func (c *Catalogue) link(units []*Unit, bulbs []*Bulb, log *source.Log) {
	for _, u := range units {
		c.checkNames(u, log)
	}
	c.relinkBulbs(bulbs)
}

// relinkBulbs links bulbs that were read now into the units that were there before them: into a copy of
// each, as the catalogue below has the units too.
func (c *Catalogue) relinkBulbs(bulbs []*Bulb) {
	for i, u := range c.Units {
		if b := c.Bulb(u.Bulb); u.Bulb != "" && slices.Contains(bulbs, b) {
			fitted := *u
			fitted.applyBulb(b)
			c.Units[i] = &fitted
		}
	}
}

// checkNames screws the bulb of a unit in, and logs each name by which it calls what the catalogue does not hold.
func (c *Catalogue) checkNames(u *Unit, log *source.Log) {
	missing := func(what, name string, names []string) {
		log.Errorf(u.Origin, CodeUnknownEntry, source.DidYouMean(name, names), "the unit %q names the %s %q, which the catalogue does not hold", u.Name, what, name)
	}
	if u.Bulb != "" {
		if b := c.Bulb(u.Bulb); b != nil {
			u.applyBulb(b)
		} else {
			missing("bulb", u.Bulb, Names(c.Bulbs))
		}
	}
	if u.Stand != "" && c.Stand(u.Stand) == nil {
		missing("stand", u.Stand, Names(c.Stands))
	}
	if u.Modifier != "" && c.Modifier(u.Modifier) == nil {
		missing("modifier", u.Modifier, Names(c.Modifiers))
	}
	for _, o := range u.Outputs {
		if o.Modifier != "" && c.Modifier(o.Modifier) == nil {
			missing("modifier", o.Modifier, Names(c.Modifiers))
		}
	}
}

// applyBulb makes the bulb's power, light and white the unit's.
func (u *Unit) applyBulb(b *Bulb) {
	u.Technology, u.Watts, u.PowerFactor = b.Technology, b.Watts, b.PowerFactor
	u.Lumens, u.WarmsWhenDimmed = b.Lumens, b.WarmsWhenDimmed
	u.Native, u.Kelvin, u.BulbWidth, u.BulbVolts = b.Kelvin, [2]float64{b.Kelvin, b.Kelvin}, b.Width, b.Volts
	u.Flicker = b.Flicker
	if u.Spread == "" {
		u.Spread = evenly.word
	}
}
