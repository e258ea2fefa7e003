package carto

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
)

// rng is a small generator with a fixed seed (splitmix64), so that a failing scene can be named.
type rng uint64

func (r *rng) next() float64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return float64((z^z>>31)>>11) / (1 << 53)
}

func (r *rng) between(a, b float64) float64 { return a + (b-a)*r.next() }

// sampled fills a lattice of nx by ny points from f.
func sampled(nx, ny int, step float64, f func(r2.Vec) float64) Grid {
	g := Grid{Step: step, NX: nx, NY: ny, Value: make([]float32, nx*ny), Mask: make([]uint64, (nx*ny+63)/64)}
	for n := range g.Value {
		g.Value[n] = float32(f(g.place(n)))
	}
	return g
}

func (g Grid) hide(n int) { g.Mask[n>>6] |= 1 << (n & 63) }

// floor is the illuminance on the floor of a lamp of 1000 cd at height h over (x, y), E = I h / d³.
func floor(x, y, h float64) func(r2.Vec) float64 {
	return func(p r2.Vec) float64 {
		square := (p.X-x)*(p.X-x) + (p.Y-y)*(p.Y-y) + h*h
		return 1000 * h / (square * math.Sqrt(square))
	}
}

// studio is the sum of some lamps over a floor of 10 m by 8 m, noisy by a share of the value, with
// solids masked.
func studio(seed rng, nx, ny int, noise float64) Grid {
	r := &seed
	step := 10 / float64(nx)
	var lamps []func(r2.Vec) float64
	for range 6 {
		lamps = append(lamps, floor(r.between(0, 10), r.between(0, 8), r.between(0.5, 3)))
	}
	g := sampled(nx, ny, step, func(p r2.Vec) float64 {
		e := 0.0
		for _, l := range lamps {
			e += l(p)
		}
		return e * (1 + noise*(2*r.next()-1))
	})
	for range 8 {
		x, y, w, d := r.between(0, 10), r.between(0, 8), r.between(0.1, 1.5), r.between(0.1, 1.5)
		for n := range g.Value {
			if p := g.place(n); p.X >= x && p.X <= x+w && p.Y >= y && p.Y <= y+d {
				g.hide(n)
			}
		}
	}
	return g
}

// stops12 are twelve levels one a stop.
var stops12 = Values(StopLevels(64, 1, 2100, 12))
