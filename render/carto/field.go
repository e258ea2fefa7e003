package carto

import "math"

// Grow returns the grid with values carried n points into what is masked, so that tints and lines
// reach under the walls and furniture that are drawn over them: the lattice ends up to a step short
// of a wall, which shows on paper. The values run on straight, in the logarithm, from the two
// nearest points of each of the eight directions; what stands for no light stays so.
func Grow(g Grid, n int) Grid {
	if !g.usable() {
		return g
	}
	out := g
	out.Value = append([]float32(nil), g.Value...)
	out.Mask = make([]uint64, (g.NX*g.NY+63)/64)
	copy(out.Mask, g.Mask)
	for range n {
		out = out.ring()
	}
	return out
}

// ring is Grow by one point.
func (g Grid) ring() Grid {
	out := g
	out.Value = append([]float32(nil), g.Value...)
	out.Mask = append([]uint64(nil), g.Mask...)
	for j := range g.NY {
		for i := range g.NX {
			n := j*g.NX + i
			if !g.masked(n) {
				continue
			}
			if v, ok := g.onward(i, j); ok {
				out.Value[n] = v
				out.Mask[n>>6] &^= 1 << (n & 63)
			}
		}
	}
	return out
}

// onward carries the values beside (i, j) on to it.
func (g Grid) onward(i, j int) (float32, bool) {
	sum, count := 0.0, 0.0
	for dj := -1; dj <= 1; dj++ {
		for di := -1; di <= 1; di++ {
			if g.Masked(i+di, j+dj) {
				continue
			}
			near := g.value(i+di, j+dj)
			v := near
			if !g.Masked(i+2*di, j+2*dj) {
				v = extend(g.value(i+2*di, j+2*dj), near)
			}
			// Straight neighbours tell more than diagonal ones.
			weight := 1 / float64(di*di+dj*dj)
			sum += weight * math.Log(math.Max(v, math.SmallestNonzeroFloat32))
			count += weight
		}
	}
	if count == 0 {
		return 0, false
	}
	v := math.Exp(sum / count)
	if v <= 2*math.SmallestNonzeroFloat32 {
		v = 0
	}
	return float32(v), true
}

func (g Grid) value(i, j int) float64 { return float64(g.Value[j*g.NX+i]) }

// extend carries far, near one step on, by no more than a factor of two.
func extend(far, near float64) float64 {
	if far <= 0 || near <= 0 {
		return near
	}
	return near * math.Min(math.Max(near/far, 0.5), 2)
}

// Calm returns the grid with the noise of sampling smoothed away: no value differs from the given
// one by more than the given share of a stop. A line of the result therefore lies where the light
// is the level to within that share; edges of shadow, steeper than it, stay where they are, and
// lines of different levels cannot cross. A thirtieth of a stop is 2 %.
func Calm(g Grid, stops float64) Grid {
	if !g.usable() || !(stops > 0) {
		return g
	}
	up := float32(math.Exp2(math.Min(stops, 1)))
	now := append([]float32(nil), g.Value...)
	next := append([]float32(nil), g.Value...)
	for n := range g.NX * g.NY {
		if g.masked(n) {
			now[n] = float32(math.NaN()) // is nobody's neighbour
		}
	}
	const rounds = 4
	for range rounds {
		for j := range g.NY {
			g.blurRow(next, now, j, up)
		}
		now, next = next, now
	}
	for n := range now {
		if now[n] != now[n] {
			now[n] = g.Value[n]
		}
	}
	out := g
	out.Value = now
	return out
}

// blurRow writes row j of from to to: each point the mean of itself, twice, and its neighbours,
// within a factor up of its given value.
func (g Grid) blurRow(to, from []float32, j int, up float32) {
	nx := g.NX
	for i := range nx {
		n := j*nx + i
		v := from[n]
		mean := blur{v: v, sum: 2 * v, count: 2}
		if i > 0 {
			mean.add(from[n-1])
		}
		if i < nx-1 {
			mean.add(from[n+1])
		}
		if j > 0 {
			mean.add(from[n-nx])
		}
		if j < g.NY-1 {
			mean.add(from[n+nx])
		}
		to[n] = min(max(mean.sum/mean.count, g.Value[n]/up), g.Value[n]*up)
	}
}

// blur is a mean around a value v.
type blur struct{ v, sum, count float32 }

// add counts a neighbour, unless it differs by some half a stop or more: then it stands on the
// other side of an edge. What is not a number is not counted either.
func (b *blur) add(v float32) {
	if v > 0.7*b.v && 0.7*v < b.v {
		b.sum += v
		b.count++
	}
}
