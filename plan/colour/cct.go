package colour

import (
	"math"
	"sync"
)

// The table of the Planckian locus. A step of a quarter of a per cent leaves an error under
// 0.05 K at 6500 K.
const (
	tableFrom  = 900.0
	tableTo    = 120000.0
	tableStep  = 1.0025
	coarseStep = 32 // of the first, coarse pass over the table
)

// locusPoint is one entry: temperature, K, and CIE 1960 u, v.
type locusPoint struct{ t, u, v float64 }

// locus builds the table once, on first use.
var locus = sync.OnceValue(func() []locusPoint {
	n := int(math.Ceil(math.Log(tableTo/tableFrom)/math.Log(tableStep))) + 1
	table := make([]locusPoint, n)
	for i := range table {
		t := tableFrom * math.Pow(tableStep, float64(i))
		uv := UV(Planck(t))
		table[i] = locusPoint{t, uv[0], uv[1]}
	}
	return table
})

// CCT gives the correlated colour temperature, K, of a chromaticity and its Duv, the distance
// from the Planckian locus in CIE 1960 u, v, positive above it (towards green). Method: Ohno,
// "Practical use and calculation of CCT and Duv", LEUKOS 10:47 (2014), on a finer table. It
// answers for every chromaticity, held to 900 K and 120000 K; a temperature says nothing where
// |Duv| > 0.05, and the caller has to withhold it.
func CCT(xy [2]float64) (kelvin, duv float64) {
	uv := UV(xy)
	table := locus()
	i := nearest(table, uv)
	prev, next := table[i-1], table[i+1]
	dPrev, dHere, dNext := prev.distance(uv), table[i].distance(uv), next.distance(uv)

	// The triangle of the two neighbours and the point: exact near the locus.
	base := math.Hypot(next.u-prev.u, next.v-prev.v)
	foot := (dPrev*dPrev - dNext*dNext + base*base) / (2 * base)
	foot = math.Min(math.Max(foot, 0), base) // held to the table at its ends
	kelvin = prev.t + (next.t-prev.t)*foot/base
	duv = math.Sqrt(math.Max(dPrev*dPrev-foot*foot, 0))
	sign := 1.0
	if uv[1] < prev.v+(next.v-prev.v)*foot/base {
		sign = -1
	}
	if duv >= 0.002 {
		// A parabola through the three distances: better away from the locus, where it is smooth.
		if t, d, ok := parabolaMinimum(prev.t-table[i].t, next.t-table[i].t, dPrev, dHere, dNext); ok {
			kelvin, duv = table[i].t+t, d
		}
	}
	return kelvin, sign * duv
}

// distance is the distance from p in u, v.
func (p *locusPoint) distance(uv [2]float64) float64 { return math.Hypot(uv[0]-p.u, uv[1]-p.v) }

// square is its square, without the care that Hypot takes.
func (p *locusPoint) square(uv [2]float64) float64 {
	du, dv := uv[0]-p.u, uv[1]-p.v
	return du*du + dv*dv
}

// nearest finds the inner table entry closest to uv, in two passes: the distance along the
// locus has one valley wherever a temperature means anything.
func nearest(table []locusPoint, uv [2]float64) int {
	coarse := closest(table, uv, 1, len(table)-2, coarseStep)
	return closest(table, uv, max(coarse-coarseStep, 1), min(coarse+coarseStep, len(table)-2), 1)
}

// closest is the entry closest to uv among from, from+step, ... up to to.
func closest(table []locusPoint, uv [2]float64, from, to, step int) int {
	best, least := from, math.Inf(1)
	for i := from; i <= to; i += step {
		if d := table[i].square(uv); d < least {
			best, least = i, d
		}
	}
	return best
}

// parabolaMinimum is the lowest point of the parabola through (a, da), (0, d0), (b, db), with a < 0 < b;
// not ok where it has none between a and b.
func parabolaMinimum(a, b, da, d0, db float64) (t, d float64, ok bool) {
	slopeA, slopeB := (da-d0)/a, (db-d0)/b
	curve := (slopeB - slopeA) / (b - a)
	slope := slopeA - curve*a
	t = -slope / (2 * curve)
	if !(curve > 0) || t < a || t > b {
		return 0, 0, false
	}
	return t, d0 + slope*t/2, true
}
