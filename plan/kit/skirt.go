package kit

import (
	"math"

	"scrimshaw/plan/photometry"
)

// discShare is the share of a globe's light that the disc in its middle sends on to one side: a globe that is as bright all
// over has four times the surface of that.
const discShare = 0.25

// behindSkirt is the light of a globe within a black skirt that hangs so far below its middle, m: what is seen of the globe
// through the mouth, as through that of one round cell. ok is false for what is no globe.
func behindSkirt(globe photometry.Opening, hangs float64) (d photometry.Distribution, opening photometry.Opening, share float64, ok bool) {
	if globe.Form != photometry.Sphere {
		return nil, globe, 0, false
	}
	cutOff := 2 * math.Atan(globe.Width/hangs) * 180 / math.Pi
	cell, passes := photometry.NewHoneycomb(photometry.Lambertian(photometry.Disc), cutOff)
	return cell, photometry.Opening{Form: photometry.Disc, Width: globe.Width}, discShare * passes, true
}

// dropSkirt hangs a skirt round the globe that the head's light comes from.
func (b *builder) dropSkirt(m *Modifier) {
	s := b.head.Source
	d, opening, share, ok := behindSkirt(s.Opening, m.Skirt)
	if !ok {
		b.fault(b.choice.ModifierSpan, CodeNoFit, "leave it out, or take a lantern", "%q hangs round a globe, and %q has none", m.Name, b.choice.Unit)
		return
	}
	b.head.Source = photometry.FromLumens(s.Flux*share, d, opening)
	b.head.HangsDown = true
	b.step("out of the mouth of "+m.Name, "flux x share within its cut-off", place(m.Origin), b.head.Source.Flux, "lm", s.Flux, share)
}
