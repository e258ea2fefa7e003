package kit

import (
	"cmp"
	"math"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/source"
	"scrimshaw/plan/term"
)

// PlainWhite is the white of an output that belongs to no unit, where the scene gives none.
const PlainWhite = 5600 // K

// Head makes the head of a choice: the unit's output with its modifier, or the light that leaves it bare times the
// modifier's efficiency; then white, level and gels. ok is false after a fault was logged.
func (c *Catalogue) Head(ch Choice, log *source.Log) (h Head, ok bool) {
	b := &builder{catalogue: c, choice: ch, log: log, ok: true}
	u := c.Unit(ch.Unit)
	if u == nil {
		b.fault(ch.UnitSpan, CodeUnknownUnit, unknown(ch.Unit, Names(c.Units), "units"), "there is no unit %q in the catalogue", ch.Unit)
		return b.head, false
	}
	b.head.Unit, b.head.Bulb = u, c.Bulb(u.Bulb)
	if u, ok = b.screwIn(u); !ok {
		return b.head, false
	}
	b.head.Class, b.head.Technology, b.head.UnitLabel = u.Class, u.Technology, u.Label
	b.head.Body = u.Body
	b.head.Watts, b.head.PowerFactor, b.head.Mass = u.Watts, u.PowerFactor, u.Mass
	b.head.Mains, b.head.BulbVolts, b.head.Inrush = u.Volts, u.BulbVolts, u.Inrush
	b.head.Flicker = u.Flicker
	b.head.WarmsWhenDimmed, b.head.Curve, b.head.Spigot = u.WarmsWhenDimmed, u.Curve, u.Spigot
	b.computeOutput(u)
	b.head.Aperture = cmp.Or(b.head.Source.Opening.Width, b.head.Aperture, mouthShare*u.Body[0])
	b.setEdge()
	b.dropScrims(u)
	b.hangDoors(u)
	b.setWhite(u)
	b.dimByWhite(u)
	b.checkLevel(u)
	b.addGels()
	return b.head, b.ok
}

// mouthShare is how much of a head's width its lens or mouth takes where nothing says it: common practice.
const mouthShare = 0.8

// HeadOf makes the head of an output that a scene states in place of a unit. White and tint are
// whatever the choice says; it has no modifier.
func (c *Catalogue) HeadOf(o Output, ch Choice, log *source.Log) (h Head, ok bool) {
	b := &builder{catalogue: c, choice: ch, log: log, ok: true}
	if ch.Modifier != "" {
		b.fault(ch.ModifierSpan, CodeNoFit, "leave the modifier out, or name a unit", "a modifier goes on a unit, and this light states its own output")
	}
	b.unfocused()
	d, opening, ok := o.spread()
	if !ok { // the photometric file could not be read, and a fault says so: the light is dark
		d = photometry.Uniform{}
	}
	b.head.Class, b.head.UnitLabel, b.head.PowerFactor = plainClass(&o, d, opening), "plain source", 1
	if m := o.Measured; m != nil {
		b.head.UnitLabel, b.head.Watts = m.Label, m.Watts
	}
	b.statedSource("the source's own figure", &o, d, opening)
	b.setEdge()
	b.head.Aperture = opening.Width
	b.head.native = colour.White{Kelvin: PlainWhite}
	if ch.White != nil {
		b.head.native = *ch.White
	}
	b.head.native.Duv += ch.Tint
	b.addGels()
	return b.head, b.ok
}

// widestLens is the widest beam, degrees, of what is drawn as a lensed head where only its light is
// known: a wide one is a face or a bare source.
const widestLens = 70

// plainClass is how a source is drawn of which only the light is known.
func plainClass(o *Output, d photometry.Distribution, opening photometry.Opening) term.Class {
	if o.Measured != nil {
		if beam, along := photometry.BeamAngle(d); math.Max(beam, along) <= widestLens {
			return term.Lensed
		}
	}
	switch opening.Form {
	case photometry.Rectangle, photometry.Disc:
		return term.Panel
	case photometry.Tube:
		return term.Linear
	case photometry.Sphere:
		return term.Lantern
	}
	if o.Beam > 0 {
		return term.Lensed
	}
	return term.Bare
}

// AllRound says whether it shines the same in every direction, so that an aim means nothing.
func (h *Head) AllRound() bool {
	_, uniform := h.Source.Distribution.(photometry.Uniform)
	return uniform
}
