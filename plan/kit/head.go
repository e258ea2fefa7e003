package kit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/unit"
)

// PlainWhite is the white of an output that belongs to no unit, where the scene gives none.
const PlainWhite = 5600 // K

// Head makes the head of a choice: the unit's output with its modifier, or its bare flux times the
// modifier's efficiency; then white and gels. ok is false after a fault was logged.
func (c *Catalogue) Head(ch Choice, log *source.Log) (h Head, ok bool) {
	b := &builder{catalogue: c, choice: ch, log: log, ok: true}
	u := c.Unit(ch.Unit)
	if u == nil {
		b.fault(ch.UnitSpan, CodeUnknownUnit, unknown(ch.Unit, Names(c.Units), "units"), "there is no unit %q in the catalogue", ch.Unit)
		return b.head, false
	}
	b.head.Class, b.head.UnitLabel = u.Class, u.Label
	b.head.Watts, b.head.PowerFactor, b.head.Mass = u.Watts, u.PowerFactor, u.Mass
	b.head.Warms, b.head.Curve = u.Warms, u.Curve
	b.shine(u)
	b.setWhite(u)
	b.addGels()
	return b.head, b.ok
}

// HeadOf makes the head of an output that a scene states in place of a unit. White and tint are
// whatever the choice says; its unit and modifier are not looked at.
func (c *Catalogue) HeadOf(o Output, ch Choice, log *source.Log) (h Head, ok bool) {
	b := &builder{catalogue: c, choice: ch, log: log, ok: true}
	d, opening, ok := o.spread()
	if !ok { // a photometric file, which is not read yet: a light that gives none
		d = photometry.Uniform{}
	}
	b.head.Class, b.head.UnitLabel, b.head.PowerFactor = plainClass(&o, opening), "plain source", 1
	b.state("the source's own figure", &o, d, opening)
	b.head.native = colour.White{Kelvin: PlainWhite}
	if ch.White != nil {
		b.head.native = *ch.White
	}
	b.head.native.Duv += ch.Tint
	b.addGels()
	return b.head, b.ok
}

// plainClass is how a plain source is drawn.
func plainClass(o *Output, opening photometry.Opening) Class {
	switch opening.Form {
	case photometry.Rectangle, photometry.Disc:
		return Panel
	case photometry.Tube:
		return Linear
	case photometry.Sphere:
		return Lantern
	}
	if o.Beam > 0 {
		return Lensed
	}
	return Bare
}

// builder makes one head.
type builder struct {
	catalogue *Catalogue
	choice    Choice
	log       *source.Log
	head      Head
	ok        bool
}

// fault logs an error at span, or at the light where span is not valid.
func (b *builder) fault(span source.Span, code, hint, format string, args ...any) {
	b.ok = false
	b.report(source.Error, span, code, hint, format, args...)
}

func (b *builder) report(severity source.Severity, span source.Span, code, hint, format string, args ...any) {
	if !span.Valid() {
		span = b.choice.Span
	}
	b.log.Add(source.Diagnostic{
		Severity: severity, Code: code, Span: span, Path: b.choice.Path, Setup: b.choice.Setup,
		Message: fmt.Sprintf(format, args...), Hint: hint,
	})
}

// step notes one line of how the head came about.
func (b *builder) step(what, formula, from string, out float64, unit string, in ...float64) {
	b.head.Steps = append(b.head.Steps, Step{What: what, Formula: formula, Source: from, In: in, Out: out, Unit: unit})
}

// shine finds what light leaves the unit through the modifier of the choice.
func (b *builder) shine(u *Unit) {
	name := u.Modifier
	if b.choice.Modifier != "" {
		name = bareAsEmpty(b.choice.Modifier)
	}
	var m *Modifier
	if name != "" {
		if m = b.catalogue.Modifier(name); m == nil {
			b.fault(b.choice.ModifierSpan, CodeUnknownModifier, unknown(name, Names(b.catalogue.Modifiers), "modifiers"),
				"there is no modifier %q in the catalogue", name)
			return
		}
		b.head.ModifierLabel = m.Label
		b.head.Mass += m.Mass
		if m.Class != "" {
			b.head.Class = m.Class
		}
	}
	switch out := u.output(name); {
	case out != nil:
		d, opening, _ := m.complete(u, out)
		b.state(with(u.Name, name)+", typical", out, d, opening)
	case m == nil && u.Spread != "":
		b.take(u, &Modifier{Entry: Entry{Name: Unmodified}, Efficiency: 1})
	case m != nil && u.Lumens > 0 && slices.Contains(m.Fits, u.Front):
		b.take(u, m)
	case m == nil:
		b.fault(b.choice.ModifierSpan, CodeNoFit, b.takes(u), "%q is not used bare", u.Name)
	default:
		b.fault(b.choice.ModifierSpan, CodeNoFit, b.takes(u), "%q does not go on %q", name, u.Name)
	}
}

// with names a unit and its modifier.
func with(unit, modifier string) string {
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
		if u.output(m.Name) != nil || u.Lumens > 0 && slices.Contains(m.Fits, u.Front) {
			names = append(names, m.Name)
		}
	}
	first := u.Modifier
	if first == "" {
		first = Unmodified
	}
	slices.SortStableFunc(names, func(a, b string) int {
		switch {
		case a == first && b != first:
			return -1
		case b == first && a != first:
			return 1
		}
		return 0
	})
	return names
}

// spread is how a modifier sends a unit's light out, and the share of it that a grid lets pass.
func (m *Modifier) spread(u *Unit) (d photometry.Distribution, opening photometry.Opening, passes float64) {
	d, opening = u.bare()
	switch {
	case m.Beam > 0:
		d, opening = photometry.NewLobe(m.Beam, m.Field), m.Opening
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
	if u.Spread == "cosine" {
		return photometry.Cosine{}, photometry.Opening{}
	}
	return photometry.Uniform{}, photometry.Opening{}
}

// complete is the spread of a unit's output: what the output states, else what its modifier does.
func (m *Modifier) complete(u *Unit, o *Output) (d photometry.Distribution, opening photometry.Opening, ok bool) {
	d, opening, ok = o.spread()
	if m == nil {
		m = &Modifier{}
	}
	if !ok {
		d, opening, _ = m.spread(u)
		return d, opening, true
	}
	if opening.Form == photometry.Point {
		opening = m.Opening
	}
	return d, opening, true
}

// state makes the source of a stated output.
func (b *builder) state(what string, o *Output, d photometry.Distribution, opening photometry.Opening) {
	s := o.source(d, opening)
	b.head.Source = s
	from := place(o.Span)
	switch {
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

// take makes the source of a unit's bare flux through a modifier.
func (b *builder) take(u *Unit, m *Modifier) {
	d, opening, passes := m.spread(u)
	b.head.Source = photometry.FromLumens(u.Lumens*m.Efficiency*passes, d, opening)
	b.step("bare flux of "+u.Name+", typical", "flux", place(u.Origin), u.Lumens, "lm")
	b.step("through "+m.Name+", typical", "flux x efficiency", place(m.Origin), u.Lumens*m.Efficiency, "lm", u.Lumens, m.Efficiency)
	if passes < 1 {
		b.step("through its grid", "flux x share within the cut-off", place(m.Origin), b.head.Source.Flux, "lm", u.Lumens*m.Efficiency, passes)
	}
}

// place is a file and line, as a source of a step.
func place(s source.Span) string {
	if !s.Valid() {
		return ""
	}
	return fmt.Sprintf("%s:%d", s.File.Name, s.Line)
}

// setWhite sets the lamp's own white: the choice's where the unit can make it, else its native.
func (b *builder) setWhite(u *Unit) {
	w := colour.White{Kelvin: u.Native}
	if asked := b.choice.White; asked != nil {
		w = *asked
		if w.Kelvin < u.Kelvin[0]-0.5 || w.Kelvin > u.Kelvin[1]+0.5 {
			b.whiteFault(u, w.Kelvin)
		}
	}
	w.Duv += b.choice.Tint
	if math.Abs(w.Duv) > u.Tint+1e-9 {
		b.report(source.Warning, b.choice.TintSpan, CodeTintRange, "a plus or minus green gel does it on any unit",
			"%q cannot be set to a Duv of %s; it is reckoned with as measured", u.Name, unit.FormatDuv(w.Duv))
	}
	b.head.native = w
}

// whiteFault says which whites a unit makes, the nearest of them, and the way there with gels.
func (b *builder) whiteFault(u *Unit, asked float64) {
	nearest := math.Min(math.Max(asked, u.Kelvin[0]), u.Kelvin[1])
	makes := "from " + unit.FormatKelvin(u.Kelvin[0]) + " to " + unit.FormatKelvin(u.Kelvin[1])
	if u.Kelvin[0] == u.Kelvin[1] {
		makes = unit.FormatKelvin(u.Kelvin[0]) + " only"
	}
	gels := "CTO"
	if asked > nearest {
		gels = "CTB"
	}
	b.fault(b.choice.WhiteSpan, CodeWhiteRange,
		fmt.Sprintf("its nearest is %s; %s gels go the rest of the way", unit.FormatKelvin(nearest), gels),
		"%q makes %s, not %s", u.Name, makes, unit.FormatKelvin(asked))
}

// Filter gives what the gel does to light.
func (g *GelData) Filter() colour.Filter {
	return colour.Filter{Mired: g.Mired, Duv: g.Duv, Transmittance: g.Transmittance, Tint: g.XY}
}

// addGels sends the lamp's white through the gels of the choice.
func (b *builder) addGels() {
	h := &b.head
	b.step("white of the lamp", "", "", h.native.Kelvin, "K")
	for _, gel := range b.choice.Gels {
		g := b.catalogue.Gel(gel.Name)
		if g == nil {
			b.fault(gel.Span, CodeUnknownGel, unknown(gel.Name, Names(b.catalogue.Gels), "gels"), "there is no gel %q in the catalogue", gel.Name)
			continue
		}
		h.stack = append(h.stack, g.Filter())
		after := colour.Through(h.native, h.stack)
		b.step("white after "+g.Name, "mireds and Duv add", place(g.Origin), after.White.Kelvin, "K", g.Mired, g.Duv)
		b.step("light after "+g.Name, "transmittances multiply", place(g.Origin), after.Transmittance, "", g.Transmittance)
	}
	light := colour.Through(h.native, h.stack)
	h.White, h.RGB, h.Filter = light.White, light.RGB, light.Transmittance
	if len(h.stack) == 0 {
		h.White = h.native // keeps the word daylight
	}
	if light.Clamped {
		b.report(source.Warning, b.choice.Span, CodeGelGamut, "", "these gels make a colour purer than can be carried; it was brought to the nearest that can")
	}
}
