package kit

import (
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// mostEfficacy is the most that any lamp makes, lm for each watt that it draws: the best white LEDs of today give less.
const mostEfficacy = 220

// fluxSlack is how far a stated output may lie over what leaves the bare head, and count as rounded.
const fluxSlack = 1.02

// doubt warns of figures that no lamp has, in entries that were read now.
func (c *Catalogue) doubt(units []*Unit, bulbs []*Bulb, log *source.Log) {
	for _, b := range bulbs {
		doubtEfficacy(&b.Entry, "bulb", b.Lumens, b.Watts, log)
	}
	for _, u := range units {
		if u.Bulb != "" {
			continue
		}
		bare := u.BareFlux()
		doubtEfficacy(&u.Entry, "unit", bare, u.Watts, log)
		u.doubtOutputs(bare, log)
		if s := c.Stand(u.Stand); s != nil && u.Mass > s.Load {
			log.Warnf(u.Origin, CodeImplausible, "name a stand that carries it", "the unit %q weighs %s, and its stand %q carries %s", u.Name, unit.FormatMass(u.Mass), s.Name, unit.FormatMass(s.Load))
		}
	}
}

func doubtEfficacy(e *Entry, noun string, lumens, watts float64, log *source.Log) {
	if efficacy := lumens / watts; watts > 0 && efficacy > mostEfficacy {
		log.Warnf(e.Origin, CodeImplausible, "check its lumens and its power, as drawn from the mains",
			"the %s %q makes %s lm for each watt, and no lamp makes over %d", noun, e.Name, unit.FormatFigures(efficacy), mostEfficacy)
	}
}

// doubtOutputs warns of an output that is more than the head has, and of a zoom that is no brighter at spot.
func (u *Unit) doubtOutputs(bare float64, log *source.Log) {
	var before *UnitOutput
	for i := range u.Outputs {
		o := &u.Outputs[i]
		s, ok := o.Output.Source()
		if !ok {
			continue
		}
		if bare > 0 && s.Flux > bare*fluxSlack {
			log.Warnf(o.Output.Span, CodeImplausible, "check lux, distance and angles against its lumens",
				"the unit %q gives %s lm with %s, more than the %s lm that leave it bare", u.Name, unit.FormatFigures(s.Flux), orBareWord(o.Modifier), unit.FormatFigures(bare))
		}
		if before != nil && o.Zooms && before.Modifier == o.Modifier {
			if narrow, ok := before.Output.Source(); ok && narrow.Peak() < s.Peak() {
				log.Warnf(o.Output.Span, CodeImplausible, "check that spot and flood are not changed over", "the zoom of the unit %q is brighter at %s than at %s", u.Name, focusWord(o.Focus), focusWord(before.Focus))
			}
		}
		before = o
	}
}

func orBareWord(modifier string) string {
	if modifier == "" {
		return Unmodified
	}
	return modifier
}
