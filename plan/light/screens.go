package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// What stops the light of one lamp and no other, as barn doors do, are sheets that this lamp alone has in its set.

// placeScreens makes black sheets of the screens of an emitter. No other solid has an ID below nought, but what shuts the plane of
// a mirror, which has the least there is.
func (l *lamp) placeScreens(screens [][]r3.Vec) {
	for i, corners := range screens {
		if c, ok := sheetCaster(&solid.Sheet{ID: solid.ID(-1 - i), Name: "screen", Corners: corners}); ok {
			l.screens = append(l.screens, c)
		}
	}
}

// past is the set with the lamp's own screens in it.
func (l *lamp) past(set *solid.BVH) *solid.BVH {
	if l.screened != nil {
		return l.screened
	}
	return set
}

// stops says whether the caster, a flat one, lies on the ray from a point.
func (c *caster) stops(o, d r3.Vec) bool {
	fall := r3.Dot(c.normal, d)
	t := r3.Dot(c.normal, r3.Sub(c.base[0], o)) / fall
	if !(t > 0) || math.IsInf(t, 1) {
		return false
	}
	p := r3.Add(o, r3.Scale(t, d))
	last := c.base[len(c.base)-1]
	for _, corner := range c.base {
		if r3.Dot(c.normal, r3.Cross(r3.Sub(corner, last), r3.Sub(p, last))) < 0 {
			return false
		}
		last = corner
	}
	return true
}

// steep is how many times the light of one point of an opening that of another must be for a short rule to miss it, and
// faintShare the share of the brightest place of the opening's axis below which nobody misses it.
const (
	steep      = 2
	faintShare = 1e-4
)

// isSteep says whether the light that comes from an opening differs much over it: at the edge of a narrow beam close by.
func (l *lamp) isSteep(r *Receptor) bool {
	low := l.fromPoint(l.at, r)
	high := low
	for _, side := range [...]r3.Vec{l.right, l.up} {
		for _, reach := range [...]float64{-1, -0.5, 0.5, 1} {
			e := l.fromPoint(r3.Add(l.at, r3.Scale(reach*l.opening.Largest()/2, side)), r)
			low, high = min(low, e), max(high, e)
		}
	}
	return high > steep*low && high*l.distance2(r.At) > faintShare*l.flux*photometry.Peak(l.shape)
}
