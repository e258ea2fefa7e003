package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Fields take what passes glass by the angle at which the middle of a lamp is seen.

// glassBit marks a pane of a field that passes less from aside.
func (f *field) glassBit(pane int) uint64 {
	if s := f.panes[pane].caster.sheet; s.Front.Glass == nil || pane >= 64 {
		return 0
	}
	return 1 << pane
}

// fromAside is what passes some panes of a field on the way from the middle of the lamp to a point, by what passes them from
// straight ahead.
func (f *field) fromAside(panes uint64, i, j int) float64 {
	ratio := 1.0
	for k := range f.panes {
		if panes>>k&1 != 0 {
			ratio *= f.glassRatio(k, i, j)
		}
	}
	return ratio
}

// glassRatio is that of one pane.
func (f *field) glassRatio(pane, i, j int) float64 {
	c := f.panes[pane].caster
	way := r3.Sub(f.g.lattice.At(i, j), f.l.at)
	return c.sheet.Front.Glass.Ratio(r3.Dot(way, c.normal) / math.Sqrt(r3.Norm2(way)*r3.Norm2(c.normal)))
}
