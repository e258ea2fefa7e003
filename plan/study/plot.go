package study

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/unit"
)

// plot is a field before its points are laid out.
type plot struct {
	Field
	first r2.Vec               // the first point, by the field's two distances, m
	size  r2.Vec               // how far the points reach, along and across, m
	data  func(at r3.Vec) bool // whether there is any at a place; nil: everywhere
}

// The most points that all fields of a set-up have together, and the most figures: one a point for what
// each light gives straight, and one for what comes back of it.
const (
	maxPoints  = 2_000_000
	maxFigures = 48_000_000
)

// minAcross is how many points a plot keeps across at least where its points are spread wider.
const minAcross = 8

// holds says whether there is room for two points each way.
func (p *plot) holds(step float64) bool { return p.size.X > step && p.size.Y > step }

// tooSmall says that there is no room for points.
func (p *plot) tooSmall(step float64, feet bool) error {
	what, size := "the floor", p.size
	if p.Kind == OnWall {
		what, size = strings.TrimSpace("the wall "+p.Name), r2.Add(size, r2.Vec{X: offGrid, Y: offGrid})
	}
	length := func(m float64) string { return unit.FormatLength(m, feet) }
	return fmt.Errorf("%s is too small for a map: it has %s by %s, and the points of a map are %s apart",
		what, length(size.X), length(size.Y), length(step))
}

// spacing is how far apart points must be so that all plots and lights together do not have too many,
// and no less than step, m.
func spacing(plots []plot, step float64, lights int) float64 {
	most := maxPoints
	if lights > 0 {
		most = min(most, maxFigures/(2*lights))
	}
	all := 0.0
	for i := range plots {
		all += plots[i].size.X * plots[i].size.Y
	}
	return math.Max(step, math.Sqrt(all/float64(most)))
}

// spread lays out the points, step apart or, where the plot is not too small for that, wide.
func (p *plot) spread(step, wide float64) Field {
	f := p.Field
	if small := math.Min(p.size.X, p.size.Y) / minAcross; wide > step {
		wide = math.Max(step, math.Min(wide, small))
		f.Coarse = wide > step
		step = wide
	}
	l := &f.Lattice
	l.NU, l.NV = int(math.Ceil(p.size.X/step)), int(math.Ceil(p.size.Y/step))
	l.Origin, l.U, l.V = f.At(p.first), r3.Scale(step, f.right), r3.Scale(step, f.up)
	l.Mask = make([]uint64, (l.NU*l.NV+63)/64)
	if p.data != nil {
		for n := range l.NU * l.NV {
			if !p.data(l.At(n%l.NU, n/l.NU)) {
				l.Mask[n>>6] |= 1 << (n & 63)
			}
		}
	}
	f.Lux = make([]float32, l.NU*l.NV)
	return f
}
