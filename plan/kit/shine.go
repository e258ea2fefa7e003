package kit

import (
	"cmp"
	"slices"
	"strings"

	"scrimshaw/plan/photometry"
)

// computeOutput finds what light leaves the unit through the modifiers of the choice.
func (b *builder) computeOutput(u *Unit) {
	name := u.Modifier
	if b.choice.Modifier != "" {
		name = normaliseModifier(b.choice.Modifier)
	}
	stack, ok := b.stack(name)
	if !ok || !b.headWith(u, stack[0]) {
		return
	}
	for i, m := range stack[1:] {
		b.cover(stack[i], m)
	}
}

// headWith finds the light of the unit with the modifier that is on its front, and whether that goes there.
func (b *builder) headWith(u *Unit, m *Modifier) bool {
	name := normaliseModifier(m.Name)
	b.head.Aperture = cmp.Or(m.Aperture, u.Aperture)
	switch out := b.focused(u, name); {
	case out != nil:
		d, opening := m.complete(u, out)
		b.statedSource(nameWithModifier(u.Name, name)+", typical", out, d, opening)
		return true
	case name != "" && u.accepts(m) && m.onlyCells() && u.output("") != nil:
		b.headWith(u, &bareModifier)
		b.pass(m)
		b.head.Aperture = cmp.Or(m.Aperture, u.Aperture)
		return true
	case name == "" && u.Spread != "", name != "" && u.accepts(m):
		b.modifiedSource(u, b.zoomed(u, m))
		return true
	case name == "":
		b.fault(b.choice.ModifierSpan, CodeNoFit, b.takes(u), "%q needs a modifier", u.Name)
	default:
		b.fault(b.choice.ModifierSpan, CodeNoFit, b.onWhat(u, m), "%q does not fit on %q", name, u.Name)
	}
	return false
}

// bareModifier is the modifier of a bare unit.
var bareModifier = Modifier{Entry: Entry{Name: Unmodified}, Efficiency: 1}

// modifier finds the modifier of a name and puts it on the head.
func (b *builder) modifier(name string) (*Modifier, bool) {
	if name == "" {
		return &bareModifier, true
	}
	m := b.catalogue.Modifier(name)
	if m == nil {
		b.fault(b.choice.ModifierSpan, CodeUnknownModifier, unknown(name, Names(b.catalogue.Modifiers), "modifiers"),
			"there is no modifier %q in the catalogue", name)
		return nil, false
	}
	b.head.ModifierLabel = strings.TrimPrefix(b.head.ModifierLabel+stackSign+m.Label, stackSign)
	b.head.Mass += m.Mass
	if m.Class != "" {
		b.head.Class = m.Class
	}
	return m, true
}

// onlyCells reports whether the modifier does nothing but hide light behind cells, so that focus tells as on the bare head.
func (m *Modifier) onlyCells() bool {
	return m.Beam == 0 && m.Opening.Form == photometry.Point
}

// accepts reports whether a modifier fits the unit's front and its light can be computed there.
func (u *Unit) accepts(m *Modifier) bool {
	return (u.Lumens > 0 || u.output("") != nil) && slices.Contains(m.Fits, u.Front)
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

// nameWithModifier names a unit and its modifier.
func nameWithModifier(unit, modifier string) string {
	if modifier == "" {
		return unit + ", bare"
	}
	return unit + " with " + modifier
}

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

// shape is how a modifier sends on light that is spread as told and leaves by an opening, and the share of it that its cells
// let pass.
func (m *Modifier) shape(d photometry.Distribution, opening photometry.Opening) (photometry.Distribution, photometry.Opening, float64) {
	switch {
	case m.Beam > 0:
		d, opening = lobe(m.Beam, m.Field, m.Opening), m.Opening
	case m.Opening.Form != photometry.Point:
		d, opening = photometry.Lambertian(m.Opening.Form), m.Opening
	}
	switch {
	case m.Grid[0] > 0:
		grid, passes := photometry.NewGrid(d, m.Grid[0], m.Grid[1])
		return grid, opening, passes
	case m.Honeycomb > 0:
		cells, passes := photometry.NewHoneycomb(d, m.Honeycomb)
		return cells, opening, passes
	}
	return d, opening, 1
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

// complete is the spread of a unit's output: what the output states, else what its modifier does.
func (m *Modifier) complete(u *Unit, o *Output) (photometry.Distribution, photometry.Opening) {
	d, opening, ok := o.spread()
	if !ok {
		d, opening, _ = m.shape(u.bare())
	}
	if opening.Form == photometry.Point {
		opening = m.Opening
		if o.Beam > 0 && o.Measured == nil {
			d = lobe(o.Beam, o.Field, opening)
		}
	}
	return d, opening
}

// statedSource makes the source of a stated output.
func (b *builder) statedSource(what string, o *Output, d photometry.Distribution, opening photometry.Opening) {
	s := o.source(d, opening)
	b.head.Source = s
	from := place(o.Span)
	switch {
	case o.Measured != nil:
		b.head.Tilt = o.Measured.Tilt
		b.step("measured in "+o.Measured.File.Name, "the greatest I of its table", from, s.Peak(), "cd")
	case o.Lux > 0:
		b.step(what, "E at d on the axis, over the opening", from, s.Peak(), "cd", o.Lux, o.Distance)
	case o.Candela > 0:
		b.step(what, "I", from, s.Peak(), "cd", o.Candela)
	case o.Luminance > 0:
		b.step(what, "pi L A", from, s.Flux, "lm", o.Luminance, opening.Surface())
		return
	}
	b.step("flux", "integral of I over the sphere", "", s.Flux, "lm", s.Peak())
}

// modifiedSource makes the source of a unit's bare flux through a modifier.
func (b *builder) modifiedSource(u *Unit, m *Modifier) {
	flux := u.BareFlux()
	d, opening := u.bare()
	b.head.Source = photometry.FromLumens(flux, d, opening)
	b.step("flux of "+u.Name+" bare, typical", "flux", place(u.Origin), flux, "lm")
	b.pass(m)
}

// pass sends the light of the head through a modifier: a share of it leaves, and that is never more than came.
func (b *builder) pass(m *Modifier) {
	s := b.head.Source
	d, opening, passes := m.shape(s.Distribution, s.Opening)
	b.head.Source = photometry.FromLumens(s.Flux*m.Efficiency*passes, d, opening)
	b.step("through "+m.Name+", typical", "flux x efficiency", place(m.Origin), s.Flux*m.Efficiency, "lm", s.Flux, m.Efficiency)
	if passes < 1 {
		b.step("through its cells", "flux x share within the cut-off", place(m.Origin), b.head.Source.Flux, "lm", s.Flux*m.Efficiency, passes)
	}
}
