package kit

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// hangShade makes the source of a bulb of a flux in a shade.
func (b *builder) hangShade(u *Unit, m *Modifier, flux float64) {
	d, opening, share := m.Shade.around(u.BulbWidth)
	b.head.Source = photometry.FromLumens(flux*share, d, opening)
	b.step("flux of "+u.Name+" bare, typical", "flux", place(u.Origin), flux, "lm")
	b.head.shadeAims = m.Shade.Aims
	b.shadeSteps(m, flux)
}

// shadeSteps notes by which ways the light of a bulb leaves its shade.
func (b *builder) shadeSteps(m *Modifier, bulb float64) {
	d, ok := b.head.Source.Distribution.(*photometry.Shade)
	if !ok {
		return
	}
	p := d.Parts()
	from := place(m.Origin)
	above, below := p.Above, p.Below
	if m.Shade.Aims {
		above, below = below, above
	}
	b.step("out above the shade", "flux x share by that opening", from, bulb*above, "lm", bulb, above)
	b.step("out of its side", "flux x share that comes through", from, bulb*p.Side, "lm", bulb, p.Side)
	b.step("out below it", "flux x share by that opening", from, bulb*below, "lm", bulb, below)
}

// Upright says whether a head has an up of its own, as what hangs about a bulb has: an aim means nothing to it. A shade that
// turns with its aim has none.
func (h *Head) Upright() bool {
	return h.AllRound() || h.Source.Opening.Form == photometry.Lampshade && !h.shadeAims
}

// keepShadeUpright turns a shade over where the axis leads down: whichever way its light is wanted, its top hangs above.
func (h *Head) keepShadeUpright(axis r3.Vec) {
	form, ok := h.ShadeForm()
	if !ok || h.shadeAims || axis.Z >= 0 {
		return
	}
	form.Top, form.Bottom = form.Bottom, form.Top
	h.Source.Distribution, _ = photometry.NewShade(form)
}

// ShadeForm returns the shade around the head's bulb; ok is false where there is none.
func (h *Head) ShadeForm() (form photometry.ShadeForm, ok bool) {
	d, ok := h.Source.Distribution.(*photometry.Shade)
	if !ok {
		return form, false
	}
	return d.Form(), true
}
