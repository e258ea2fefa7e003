package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Fields take what passes glass by the angle at which the middle of a lamp is seen.

// ifGlass is the number of a pane of a field where that passes less from aside, else noGlass.
func (f *field) ifGlass(pane int) int {
	if f.panes[pane].caster.sheet.Front.Glass == nil {
		return noGlass
	}
	return pane
}

// glassWay is a pane of glass on the way to some points, and the one before it as a place in a list of such.
type glassWay struct{ pane, before int }

// glassWays are all that some points have.
type glassWays []glassWay

// noGlass stands for the number of no pane, and for its place.
const noGlass = -1

// add notes a pane of glass, if it is one, on the way to points behind another, and gives the place of the last in the list.
func (g *glassWays) add(pane, before int) int {
	if pane == noGlass {
		return before
	}
	*g = append(*g, glassWay{pane, before})
	return len(*g) - 1
}

// fromAside is what passes the last of some panes and those before it on the way from the middle of the lamp to a point, by what
// passes them from straight ahead.
func (f *field) fromAside(g glassWays, last, i, j int) float64 {
	if last == noGlass {
		return 1
	}
	return f.fromAside(g, g[last].before, i, j) * f.glassRatio(g[last].pane, i, j)
}

// glassRatio is that of one pane.
func (f *field) glassRatio(pane, i, j int) float64 {
	c := f.panes[pane].caster
	way := r3.Sub(f.g.lattice.At(i, j), f.l.at)
	return c.sheet.Front.Glass.Ratio(r3.Dot(way, c.normal) / math.Sqrt(r3.Norm2(way)*r3.Norm2(c.normal)))
}
