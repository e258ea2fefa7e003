package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/raster"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// unlitBeyond are the planes over which no point of the opening of a lamp sends light: that of a one-sided face, and those at which what
// leaves it ends to the sides.
func unlitBeyond(l *lamp) (all []solid.Plane) {
	if !l.onesided {
		return nil
	}
	add := func(out r3.Vec, from float64) {
		size := r3.Norm(out)
		all = append(all, solid.Plane{N: r3.Scale(1/size, out), C: (r3.Dot(out, l.at) + from) / size})
	}
	add(r3.Scale(-1, l.axis), 0)
	if l.creases == nil {
		return all
	}
	across, along := l.opening.Width/2, l.opening.Height/2
	if l.opening.Form == photometry.Disc {
		along = across
	}
	toward := func(side r3.Vec, half, tangent float64) {
		if !math.IsInf(tangent, 1) {
			add(r3.Sub(side, r3.Scale(tangent, l.axis)), half)
		}
	}
	toward(l.right, across, l.creases.right)
	toward(r3.Scale(-1, l.right), across, l.creases.left)
	toward(l.up, along, l.creases.up)
	toward(r3.Scale(-1, l.up), along, l.creases.down)
	return all
}

// hideUnlit sets in a mask the points that a lamp sends no light to, whatever stands between: neither shadows nor sums are
// asked for there.
func (g *grid) hideUnlit(mask []uint64, l *lamp) {
	for _, h := range unlitBeyond(l) {
		along := r3.Dot(h.N, g.lattice.U)
		for j := range g.nv {
			row := g.row(mask, j)
			over := h.Over(g.lattice.At(0, j)) - g.epsilon // of point i: over + i along
			edge := raster.Ceil(-over/along, g.nu)
			switch {
			case along > 0 && edge < g.nu:
				fill(row, edge, g.nu)
			case along < 0 && edge > 0:
				fill(row, 0, edge)
			case along == 0 && over > 0:
				fill(row, 0, g.nu)
			}
		}
	}
}
