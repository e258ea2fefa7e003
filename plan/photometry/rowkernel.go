package photometry

import (
	"math"

	"scrimshaw/plan/photometry/row"
)

// RowSummed is a Distribution that brings its own kernel for rows of receptors.
type RowSummed interface {
	Distribution
	// RowKernel gives the kernel of a flux, lm, sent out through an opening; oneSided says that none goes out behind
	// the plane of the opening. It is nil where the general kernel serves as well.
	RowKernel(flux float64, o Opening, oneSided bool) row.Kernel
}

// RowKernel gives the kernel by which the light of a source is summed over rows of receptors: the one that its
// distribution brings, a table where that is the same all round the axis, and else one that asks it for every receptor.
func RowKernel(s Source, oneSided bool) row.Kernel {
	if d, ok := s.Distribution.(RowSummed); ok {
		if k := d.RowKernel(s.Flux, s.Opening, oneSided); k != nil {
			return k
		}
	}
	if d, ok := s.Distribution.(Axial); ok {
		return axialKernel(d, s.Flux, oneSided)
	}
	return row.General(s.Distribution.Candela, s.Flux, oneSided)
}

func axialKernel(d Axial, flux float64, oneSided bool) row.Kernel {
	return row.Axial(func(t float64) float64 { return flux * d.At(t) }, flux*Peak(d), oneSided)
}

// RowKernel implements RowSummed.
func (Cosine) RowKernel(flux float64, _ Opening, oneSided bool) row.Kernel {
	return row.Cosine(flux/math.Pi, oneSided)
}

// RowKernel implements RowSummed.
func (Uniform) RowKernel(flux float64, _ Opening, oneSided bool) row.Kernel {
	return row.Uniform(flux/(4*math.Pi), oneSided)
}

// RowKernel implements RowSummed.
func (TubeCosine) RowKernel(flux float64, _ Opening, oneSided bool) row.Kernel {
	return row.Line(flux/(math.Pi*math.Pi), oneSided)
}

// RowKernel implements RowSummed. Of a point each direction is asked for once, which no map is worth.
func (t *Table) RowKernel(flux float64, o Opening, oneSided bool) row.Kernel {
	if o.Form == Point {
		return nil
	}
	return row.Measured(func(right, up, ahead float64) float64 { return t.FastCandela(right, up, ahead, 1) }, flux, oneSided)
}

// RowKernel implements RowSummed.
func (c Curve) RowKernel(flux float64, _ Opening, oneSided bool) row.Kernel {
	return axialKernel(c, flux, oneSided)
}

// RowKernel implements RowSummed.
func (g Grid) RowKernel(flux float64, _ Opening, oneSided bool) row.Kernel {
	if inverse, gain, ok := g.OverCosine(); ok && oneSided {
		return row.CosineGrid(inverse, gain*flux)
	}
	return nil
}

// OverCosine gives the inverse tangents of the cut-off half angles of a grid before a cosine, toward C0 and C90, and its
// intensity on the axis, cd/lm; not ok where something else is behind the grid.
func (g Grid) OverCosine() (inverseTangents [2]float64, perLumen float64, ok bool) {
	if _, ok = g.base.(Cosine); !ok {
		return inverseTangents, 0, false
	}
	return [2]float64{1 / g.across, 1 / g.along}, g.gain / math.Pi, true
}
