package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// What stops the light of one lamp and no other, as barn doors do, are sheets that this lamp alone has in its set.

// placeScreens makes black sheets of the screens of an emitter. No other solid has an ID below nought.
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

// screenShapes places the lamp's own screens on one side of a lattice.
func (g *grid) screenShapes(l *lamp, sign float64) (all []shape) {
	for i := range l.screens {
		if s := g.shape(&l.screens[i], sign); s.z1 > g.epsilon {
			all = append(all, s)
		}
	}
	return all
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
