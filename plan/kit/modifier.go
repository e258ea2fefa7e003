package kit

import (
	"slices"
	"strings"

	"scrimshaw/plan/photometry"
)

// stackSign stands between a modifier and what goes on it: "softbox-90 + grid-40".
const stackSign = " + "

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
	b.head.Modifiers = append(b.head.Modifiers, m)
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

// pass sends the light of the head through a modifier: a share of it leaves, and that is never more than came.
func (b *builder) pass(m *Modifier) {
	if m.Skirt > 0 {
		b.dropSkirt(m)
		return
	}
	s := b.head.Source
	d, opening, passes := m.shape(s.Distribution, s.Opening)
	b.head.Source = photometry.FromLumens(s.Flux*m.Efficiency*passes, d, opening)
	b.step("through "+m.Name+", typical", "flux x efficiency", place(m.Origin), s.Flux*m.Efficiency, "lm", s.Flux, m.Efficiency)
	if passes < 1 {
		b.step("through its cells", "flux x share within the cut-off", place(m.Origin), b.head.Source.Flux, "lm", s.Flux*m.Efficiency, passes)
	}
}
