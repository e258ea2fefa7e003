package kit

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
)

// computeOutput finds what light leaves the unit through the modifier of the choice.
func (b *builder) computeOutput(u *Unit) {
	name := u.Modifier
	if b.choice.Modifier != "" {
		name = normaliseModifier(b.choice.Modifier)
	}
	m, ok := b.modifier(name)
	if !ok {
		return
	}
	if m, ok = b.shadeOf(u, m); !ok {
		return
	}
	b.head.MostWatts = m.MostWatts
	b.head.Aperture = cmp.Or(m.Aperture, u.Aperture)
	switch out := b.focused(u, name); {
	case out != nil:
		d, opening := m.complete(u, out)
		b.statedSource(nameWithModifier(u.Name, name)+", typical", out, d, opening)
	case name == "" && u.Spread != "", name != "" && u.accepts(m):
		b.modifiedSource(u, m)
	case name == "":
		b.fault(b.choice.ModifierSpan, CodeNoFit, b.takes(u), "%q needs a modifier", u.Name)
	default:
		b.fault(b.choice.ModifierSpan, CodeNoFit, b.takes(u), "%q does not fit on %q", name, u.Name)
	}
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
	b.head.ModifierLabel = m.Label
	b.head.Mass += m.Mass
	if m.Class != "" {
		b.head.Class = m.Class
	}
	return m, true
}

// accepts reports whether a modifier fits the unit's front and its light can be computed there.
func (u *Unit) accepts(m *Modifier) bool {
	return u.Lumens > 0 && slices.Contains(m.Fits, u.Front)
}

// nameWithModifier names a unit and its modifier.
func nameWithModifier(unit, modifier string) string {
	if modifier == "" {
		return unit + ", bare"
	}
	return unit + " with " + modifier
}

// output is the unit's own output with a modifier ("" bare), or nil.
func (u *Unit) output(modifier string) *Output {
	for i := range u.Outputs {
		if u.Outputs[i].Modifier == modifier {
			return &u.Outputs[i].Output
		}
	}
	return nil
}

// takes is a hint that lists what may go on a unit.
func (b *builder) takes(u *Unit) string {
	names := b.catalogue.Fitting(u)
	if len(names) == 0 {
		return "leave the modifier out"
	}
	return "it takes " + strings.Join(names, ", ")
}

// Fitting lists the modifiers that a unit can be used with, `bare` among them, its default first.
func (c *Catalogue) Fitting(u *Unit) []string {
	var names []string
	if u.output("") != nil || u.Spread != "" {
		names = append(names, Unmodified)
	}
	for _, m := range c.Modifiers {
		if u.output(m.Name) != nil || u.accepts(m) {
			names = append(names, m.Name)
		}
	}
	first := u.Modifier
	if first == "" {
		first = Unmodified
	}
	if i := slices.Index(names, first); i > 0 {
		names = slices.Insert(slices.Delete(names, i, i+1), 0, first)
	}
	return names
}

// spread is how a modifier sends a unit's light out, and the share of it that a grid lets pass.
func (m *Modifier) spread(u *Unit) (d photometry.Distribution, opening photometry.Opening, passes float64) {
	d, opening = u.bare()
	switch {
	case m.Shade != nil:
		return m.Shade.around(u.BulbWidth)
	case m.Beam > 0:
		d, opening = lobe(m.Beam, m.Field, m.Opening), m.Opening
	case m.Opening.Form != photometry.Point:
		d, opening = photometry.Lambertian(m.Opening.Form), m.Opening
	}
	if m.Grid[0] > 0 {
		grid, passes := photometry.NewGrid(d, m.Grid[0], m.Grid[1])
		return grid, opening, passes
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
		d, opening, _ = m.spread(u)
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
	d, opening, passes := m.spread(u)
	b.head.Source = photometry.FromLumens(u.Lumens*m.Efficiency*passes, d, opening)
	b.step("bare flux of "+u.Name+", typical", "flux", place(u.Origin), u.Lumens, "lm")
	b.step("through "+m.Name+", typical", "flux x efficiency", place(m.Origin), u.Lumens*m.Efficiency, "lm", u.Lumens, m.Efficiency)
	if passes < 1 {
		if m.Shade != nil {
			b.shadeSteps(m, u.Lumens)
			return
		}
		b.step("through its grid", "flux x share within the cut-off", place(m.Origin), b.head.Source.Flux, "lm", u.Lumens*m.Efficiency, passes)
	}
}

// focused is the unit's own output with a modifier, nil where it has none; of a zoom, the one whose focus is
// nearest to the choice's. Between two of them nothing is made up: how a lens spreads light on the way from
// one to the other, no figure tells.
func (b *builder) focused(u *Unit, modifier string) *Output {
	var best *UnitOutput
	var words []string
	for i := range u.Outputs {
		o := &u.Outputs[i]
		if o.Modifier != modifier {
			continue
		}
		words = append(words, focusWord(o.Focus))
		if best == nil || math.Abs(o.Focus-b.choice.Zoom) < math.Abs(best.Focus-b.choice.Zoom) {
			best = o
		}
	}
	if best == nil || !best.Zooms {
		b.unfocused()
		return u.output(modifier)
	}
	b.head.Zooms = true
	if best.Focus != b.choice.Zoom {
		b.report(source.Info, b.choice.ZoomSpan, CodeNearestZoom, "", "%q has figures for %s; at a focus of %s the figures of %s are used",
			u.Name, strings.Join(words, ", "), focusWord(b.choice.Zoom), focusWord(best.Focus))
	}
	return &best.Output
}

// unfocused warns of a focus that changes nothing, because the light has no figures by focus.
func (b *builder) unfocused() {
	if b.choice.ZoomSpan.Valid() {
		_, name, _ := strings.Cut(b.choice.Path, ".")
		b.report(source.Warning, b.choice.ZoomSpan, CodeNoZoom, "leave it out, or give the unit outputs by focus in a kit file",
			"the focus of %s changes nothing: the catalogue has no figures by focus for %s", name, cmp.Or(b.choice.Unit, "its output"))
	}
}
