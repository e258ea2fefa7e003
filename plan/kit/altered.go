package kit

import (
	"math"
	"slices"

	"scrimshaw/plan/colour"
)

// Gelled is the head with more gels of the catalogue before those that it has. Names that the catalogue does not hold change nothing.
func (h Head) Gelled(c *Catalogue, names []string) Head {
	h.stack = slices.Clone(h.stack)
	for _, name := range names {
		if g := c.Gel(name); g != nil {
			h.stack = append(h.stack, g.Filter())
		}
	}
	return h.filtered()
}

// Ungelled is the head without its gels.
func (h Head) Ungelled() Head {
	h.stack = nil
	return h.filtered()
}

// filtered takes the white of the lamp through its gels again.
func (h Head) filtered() Head {
	light := colour.ThroughGels(h.native, h.stack)
	h.White, h.RGB, h.Filter = light.White, light.RGB, light.Transmittance
	return h
}

// The steps in which a lamp's own white is set, K and Duv: common practice.
const (
	whiteStep = 50
	tintStep  = 0.001
)

// Setting is what a unit can be set to itself.
type Setting struct {
	Kelvin, Duv float64 // K, and Duv off the locus
	Moves       bool    // whether it is another than it is set to
}

// SetNearer gives the head set to the white of its own, among those that the unit makes, that closes a gap best, in the steps that
// units are set in, and what that is. Gels stay. Moves is false where no other setting is nearer.
func (h Head) SetNearer(u *Unit, gap colour.Gap) (Head, Setting) {
	was := h.native.OnPlanck()
	to := Setting{Kelvin: was.Kelvin, Duv: was.Duv}
	if u.Kelvin[1] > u.Kelvin[0] {
		wanted := colour.Mired(math.Max(colour.Mired(was.Kelvin)-gap.Mired, colour.MinMired))
		to.Kelvin = min(max(math.Round(wanted/whiteStep)*whiteStep, u.Kelvin[0]), u.Kelvin[1])
	}
	if u.Tint > 0 {
		to.Duv = min(max(math.Round((was.Duv-gap.Duv)/tintStep)*tintStep, -u.Tint), u.Tint)
	}
	left := gap.Shifted(colour.Mired(to.Kelvin)-colour.Mired(was.Kelvin), to.Duv-was.Duv)
	if to.Moves = left.Size() < gap.Size()-alike; !to.Moves {
		return h, to
	}
	h.Source.Flux *= u.ShareAt(to.Kelvin) / u.ShareAt(h.native.Kelvin)
	h.native = colour.White{Kelvin: to.Kelvin, Duv: to.Duv}
	return h.filtered(), to
}

// OwnWhite is the white of the lamp itself, before its gels.
func (h Head) OwnWhite() colour.White { return h.native }

// SetTo gives the head set to another white of its own, its gels as they are, and how much light it gives then at full as a share of what
// it gave. Whether the unit makes that white is not asked.
func (h Head) SetTo(white colour.White) (Head, float64) {
	if white == h.native {
		return h, 1
	}
	share := 1.0
	if h.Unit != nil {
		share = h.Unit.ShareAt(white.Kelvin) / h.Unit.ShareAt(h.native.Kelvin)
	}
	h.Source.Flux *= share
	h.native = white
	return h.filtered(), share
}
