package kit

import (
	"cmp"
	"math"

	"scrimshaw/plan/unit"
)

// screwIn gives a unit with the bulb of the choice in it; not ok after a fault.
func (b *builder) screwIn(u *Unit) (*Unit, bool) {
	choice := b.choice.Bulb
	if choice == nil {
		return u, true
	}
	own := b.catalogue.Bulb(u.Bulb)
	if own == nil {
		b.fault(choice.Span, CodeNoBulb, "leave bulb out, or take a practical", "%q has no bulb to change", u.Name)
		return u, false
	}
	bulb := *own
	if choice.Name != "" {
		named := b.catalogue.Bulb(choice.Name)
		if named == nil {
			b.fault(choice.Span, CodeUnknownEntry, unknown(choice.Name, Names(b.catalogue.Bulbs), "bulbs"), "there is no bulb %q in the catalogue", choice.Name)
			return u, false
		}
		bulb = *named
	}
	choice.alter(&bulb)
	if efficacy := bulb.Lumens / bulb.Watts; efficacy > mostEfficacy {
		b.fault(choice.Span, CodeBulb, "write the power that it draws, not the one that it replaces",
			"a bulb of %s and %s lm would make %s lm of each watt, and none makes more than %s",
			unit.FormatPower(bulb.Watts), unit.FormatNumber(bulb.Lumens), unit.FormatNumber(math.Round(efficacy)), unit.FormatNumber(mostEfficacy))
		return u, false
	}
	fitted := *u
	fitted.applyBulb(&bulb)
	b.head.BulbWatts, b.head.Bulb = bulb.Watts, &bulb
	return &fitted, true
}

// filamentExponent is how the flux of household filament bulbs goes with their power, from 415 lm at 40 W to 1340 lm
// at 100 W: larger ones burn hotter.
const filamentExponent = 1.28

// flickerExponent is how the ripple of household filaments goes with their power, from 13 % at 40 W to 7 % at 100 W: thick ones keep
// their heat (common practice).
const flickerExponent = -0.67

// alter changes a bulb to what the choice says. Where only one of power and flux is given the other follows from the kind
// of bulb: of a filament by the law of household bulbs, of others in proportion.
func (g *BulbChoice) alter(b *Bulb) {
	exponent, was := 1.0, b.Watts
	if b.WarmsWhenDimmed {
		exponent = filamentExponent
	}
	switch {
	case g.Watts > 0 && g.Lumens == 0:
		b.Lumens *= math.Pow(g.Watts/b.Watts, exponent)
	case g.Lumens > 0 && g.Watts == 0:
		b.Watts *= math.Pow(g.Lumens/b.Lumens, 1/exponent)
	}
	if b.WarmsWhenDimmed {
		b.Flicker = min(1, b.Flicker*math.Pow(cmp.Or(g.Watts, b.Watts)/was, flickerExponent))
	}
	b.Watts, b.Lumens, b.Kelvin = cmp.Or(g.Watts, b.Watts), cmp.Or(g.Lumens, b.Lumens), cmp.Or(g.Kelvin, b.Kelvin)
}

// shadeOf gives the modifier with what the choice says of its shade; not ok after a fault.
func (b *builder) shadeOf(u *Unit, m *Modifier) (*Modifier, bool) {
	choice := b.choice.Shade
	if choice == nil || choice.Name != "" {
		return m, true
	}
	if u.Bulb == "" {
		b.fault(choice.Span, CodeNoBulb, "leave shade out, or take a practical", "%q has no bulb to hang a shade around", u.Name)
		return m, false
	}
	altered := *m
	shade := choice.over(m.Shade)
	if cloth := b.catalogue.ClothOf(choice.Cloth); cloth != nil {
		shade.Transmittance, shade.Reflectance = cloth.Direct+cloth.Diffuse, cloth.Reflect
	}
	shade.Transmittance, shade.Reflectance = cmp.Or(choice.Transmittance, shade.Transmittance), cmp.Or(choice.Reflectance, shade.Reflectance)
	if choice.Reflectance == 0 {
		shade.Reflectance = min(shade.Reflectance, 1-shade.Transmittance)
	}
	if shade.makesLight() {
		b.fault(choice.Span, CodeKit, "lower one of them", "the shade "+tooBright)
		return m, false
	}
	altered.Shade, altered.MostWatts = &shade, cmp.Or(choice.MostWatts, m.MostWatts)
	altered.Beam, altered.Field, altered.Opening.Form, altered.Grid, altered.Efficiency = 0, 0, 0, [2]float64{}, 1
	return &altered, true
}

// plainShade is the shade of a lamp that has none of its own: a drum of white cloth. Common practice.
var plainShade = Shade{Top: 0.3, Bottom: 0.3, Height: 0.22, Transmittance: 0.35, Reflectance: 0.5}

// over is a shade with the measures of the choice; nil has those of a plain one.
func (c *ShadeChoice) over(own *Shade) Shade {
	s := plainShade
	if own != nil {
		s = *own
	}
	s.Top, s.Bottom, s.Height = cmp.Or(c.Top, s.Top), cmp.Or(c.Bottom, s.Bottom), cmp.Or(c.Height, s.Height)
	return s
}
