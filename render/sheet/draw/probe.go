package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// Light is probed on a lattice of points so fine that it does not show: no coarser than this on
// paper, mm, and on the set, m. Contours of several levels crowd along one edge of shadow and probe
// nearly the same points, each of which costs a fan of rays.
const (
	probePaper = 0.05
	probeSet   = 0.002
)

// remembered is a probe that reads every point of its lattice once.
func remembered(probe func(r2.Vec) float64, scale float64) func(r2.Vec) float64 {
	if probe == nil {
		return nil
	}
	step := math.Min(probeSet, probePaper/scale)
	known := map[[2]int32]float64{}
	return func(p r2.Vec) float64 {
		i, j := math.Round(p.X/step), math.Round(p.Y/step)
		key := [2]int32{int32(i), int32(j)}
		v, ok := known[key]
		if !ok {
			v = probe(r2.Vec{X: i * step, Y: j * step})
			known[key] = v
		}
		return v
	}
}
