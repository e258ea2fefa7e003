package kit

import "scrimshaw/plan/photometry"

// output is the unit's own output with a modifier ("" bare), or nil; of a zoom, flooded.
func (u *Unit) output(modifier string) *Output {
	if all := u.outputs(modifier); len(all) > 0 {
		return &all[len(all)-1].Output
	}
	return nil
}

// outputs are the unit's own with a modifier; of a zoom one for each focus, spot first.
func (u *Unit) outputs(modifier string) (all []*UnitOutput) {
	for i := range u.Outputs {
		if u.Outputs[i].Modifier == modifier {
			all = append(all, &u.Outputs[i])
		}
	}
	return all
}

// BareFlux gives the flux that leaves the unit without a modifier, flooded, lm: what a modifier has to work with.
func (u *Unit) BareFlux() float64 {
	if o := u.output(""); o != nil {
		if s, ok := o.Source(); ok {
			return s.Flux
		}
	}
	return u.Lumens
}

// bare is how a unit's light leaves without a modifier.
func (u *Unit) bare() (photometry.Distribution, photometry.Opening) {
	if o := u.output(""); o != nil {
		if d, opening, ok := o.spread(); ok {
			return d, opening
		}
	}
	if d := spreadNamed(u.Spread); d != nil {
		return d, photometry.Opening{}
	}
	return evenly.light, photometry.Opening{}
}

// nameWithModifier names a unit and its modifier.
func nameWithModifier(unit, modifier string) string {
	if modifier == "" {
		return unit + ", bare"
	}
	return unit + " with " + modifier
}

// nameWithModifierOnly names a unit, and its modifier where it has one.
func nameWithModifierOnly(unit, modifier string) string {
	if modifier == "" {
		return unit
	}
	return nameWithModifier(unit, modifier)
}
