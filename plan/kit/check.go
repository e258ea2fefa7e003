package kit

import (
	"math"
	"slices"

	"scrimshaw/plan/source"
)

// fill gives a unit the values that it leaves to their defaults.
func (u *Unit) fill() {
	u.Modifier = bareAsEmpty(u.Modifier)
	if u.Modifier == "" && len(u.Outputs) > 0 && u.Spread == "" {
		u.Modifier = u.Outputs[0].Modifier
	}
	u.PowerFactor = orOne(u.PowerFactor)
	if u.Native == 0 {
		u.Native = u.Kelvin[0]
	}
}

// check says what does not go together in a unit.
func (u *Unit) check() (message, hint string) {
	switch {
	case u.Bulb != "":
		return "", "" // white and flux come with the bulb
	case u.Kelvin[0] == 0:
		return "does not say what white it makes", "add kelvin: 5600 K"
	case u.Native < u.Kelvin[0] || u.Native > u.Kelvin[1]:
		return "has its native white outside its own range", ""
	case len(u.Outputs) == 0 && u.Lumens == 0:
		return "does not say how much light it makes", "add lumens: or outputs:"
	case u.Spread != "" && u.Lumens == 0:
		return "says how its bare flux is spread, but not how much it is", "add lumens:"
	case u.Technology == "":
		return "does not say what makes its light", "add technology: led"
	}
	return "", ""
}

// check says what does not go together in a modifier.
func (m *Modifier) check() (message, hint string) {
	if m.Field > 0 && m.Field <= m.Beam {
		return "must have a field angle wider than its beam angle", ""
	}
	return "", ""
}

// fill gives a gel the words that it leaves out.
func (g *GelData) fill() {
	if g.Label == "" {
		g.Label = g.Name
	}
	if g.Doc == "" {
		g.Doc = g.Name
	}
}

// check says what does not go together in a gel.
func (g *GelData) check() (message, hint string) {
	switch {
	case g.Kind == "colour" && g.XY == nil:
		return "does not say what colour it is", "add xy: [0.58, 0.40]"
	case g.Transmittance == 0:
		return "lets no light through", ""
	}
	return "", ""
}

// tooBright is said of a surface that makes light.
const tooBright = "lets through and throws back more light than falls on it"

// check says whether a cloth makes light.
func (d *clothData) check() (message, hint string) {
	if d.through()+d.reflectShare > 1 {
		return tooBright, ""
	}
	return "", ""
}

// through is the share of light that the cloth lets through.
func (d *clothData) through() float64 {
	if d.opaque {
		return 0
	}
	return math.Exp2(-d.stops)
}

// check says whether a material makes light.
func (m *Material) check() (message, hint string) {
	if m.Reflectance+m.Transmittance > 1 {
		return tooBright, ""
	}
	return "", ""
}

// check says what does not go together in a stand.
func (s *Stand) check() (message, hint string) {
	if s.Highest < s.Lowest {
		return "has its highest height below its lowest", ""
	}
	return "", ""
}

// finish gives practicals their bulbs and checks the names by which entries call each other.
func (l *loader) finish(log *source.Log) {
	for _, u := range l.units {
		l.catalogue.finish(u, log)
	}
	l.catalogue.refit(l.bulbs)
}

// refit screws bulbs that were read now into the units that were there before them: into a copy of
// each, as the catalogue below has the units too.
func (c *Catalogue) refit(bulbs []*Bulb) {
	for i, u := range c.Units {
		if b := c.Bulb(u.Bulb); u.Bulb != "" && slices.Contains(bulbs, b) {
			fitted := *u
			fitted.screwIn(b)
			c.Units[i] = &fitted
		}
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
