package kit

import "scrimshaw/plan/source"

// check fills what a unit leaves to its defaults and logs what does not go together.
func (u *Unit) check(c *source.Context) {
	fault := func(hint, format string, args ...any) { c.ErrorAt(u.Origin, CodeKit, hint, format, args...) }
	u.Modifier = bareAsEmpty(u.Modifier)
	if u.Modifier == "" && len(u.Outputs) > 0 && u.Spread == "" {
		u.Modifier = u.Outputs[0].Modifier
	}
	if u.Bulb != "" {
		return // white and flux come with the bulb
	}
	u.PowerFactor = orOne(u.PowerFactor)
	if u.Native == 0 {
		u.Native = u.Kelvin[0]
	}
	switch {
	case u.Kelvin[0] == 0:
		fault("add kelvin: 5600 K", "the unit %q does not say what white it makes", u.Name)
	case u.Native < u.Kelvin[0] || u.Native > u.Kelvin[1]:
		fault("", "the native white of %q lies outside its own range", u.Name)
	case len(u.Outputs) == 0 && u.Lumens == 0:
		fault("add lumens: or outputs:", "the unit %q does not say how much light it makes", u.Name)
	case u.Spread != "" && u.Lumens == 0:
		fault("add lumens:", "the unit %q says how its bare flux is spread, but not how much it is", u.Name)
	case u.Technology == "":
		fault("add technology: led", "the unit %q does not say what makes its light", u.Name)
	}
}

// check logs what does not go together in a modifier.
func (m *Modifier) check(c *source.Context) {
	if m.Field > 0 && m.Field <= m.Beam {
		c.ErrorAt(m.Origin, CodeKit, "", "the field angle of %q must be wider than its beam angle", m.Name)
	}
}

// check fills what a gel leaves out and logs what does not go together.
func (g *GelData) check(c *source.Context) {
	if g.Label == "" {
		g.Label = g.Name
	}
	if g.Doc == "" {
		g.Doc = g.Name
	}
	if g.Kind == "colour" && g.XY == nil {
		c.ErrorAt(g.Origin, CodeKit, "add xy: [0.58, 0.40]", "the colour %q does not say what colour it is", g.Name)
	}
	if g.Transmittance == 0 {
		c.ErrorAt(g.Origin, CodeKit, "", "the gel %q lets no light through", g.Name)
	}
}

// finish gives practicals their bulbs and checks the names by which entries call each other.
func (l *loader) finish(log *source.Log) {
	for _, u := range l.units {
		l.catalogue.finish(u, log)
	}
}

func (c *Catalogue) finish(u *Unit, log *source.Log) {
	missing := func(what, name string, names []string) {
		log.Errorf(u.Origin, CodeUnknownEntry, source.DidYouMean(name, names), "the unit %q names the %s %q, which the catalogue does not hold", u.Name, what, name)
	}
	if u.Bulb != "" {
		if b := c.Bulb(u.Bulb); b != nil {
			u.screwIn(b)
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

// screwIn makes the bulb's power, light and white the unit's.
func (u *Unit) screwIn(b *Bulb) {
	u.Technology, u.Watts, u.PowerFactor = b.Technology, b.Watts, b.PowerFactor
	u.Lumens, u.Warms = b.Lumens, b.Warms
	u.Native, u.Kelvin = b.Kelvin, [2]float64{b.Kelvin, b.Kelvin}
	if u.Spread == "" {
		u.Spread = "uniform"
	}
}
