package kit

import (
	"cmp"

	"scrimshaw/plan/photometry"
)

// computeOutput finds what light leaves the unit through the modifiers of the choice.
func (b *builder) computeOutput(u *Unit) {
	name := u.Modifier
	if b.choice.Modifier != "" {
		name = normaliseModifier(b.choice.Modifier)
	}
	stack, ok := b.stack(name)
	if !ok {
		return
	}
	if stack[0], ok = b.shadeOf(u, stack[0]); !ok || !b.headWith(u, stack[0]) {
		return
	}
	b.head.MostWatts = stack[0].MostWatts
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
	case o.Lumens > 0:
		b.step(what, "flux", from, s.Flux, "lm", o.Lumens)
		return
	}
	b.step("flux", "integral of I over the sphere", "", s.Flux, "lm", s.Peak())
}

// modifiedSource makes the source of a unit's bare flux through a modifier.
func (b *builder) modifiedSource(u *Unit, m *Modifier) {
	flux := u.BareFlux()
	if m.Shade != nil {
		b.hangShade(u, m, flux)
		return
	}
	d, opening := u.bare()
	b.head.Source = photometry.FromLumens(flux, d, opening)
	b.step("flux of "+u.Name+" bare, typical", "flux", place(u.Origin), flux, "lm")
	b.pass(m)
}
