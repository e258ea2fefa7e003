package carto

import "math"

// Extrapolate returns the grid with values carried n points into what is masked, so that tints and lines
// reach under the walls and furniture that are drawn over them: the lattice ends up to a step short
// of a wall, which shows on paper. The values run on straight, in the logarithm, from the two
// nearest points of each of the eight directions; what stands for no light stays so.
func Extrapolate(g Grid, n int) Grid {
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
			if v, ok := g.extrapolated(i, j); ok {
				out.Value[n] = v
				out.Mask[n>>6] &^= 1 << (n & 63)
			}
		}
	}
	return out
}

// extrapolated is the value at (i, j) as those beside it go on.
func (g Grid) extrapolated(i, j int) (float32, bool) {
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

// Denoise returns the grid with the noise of sampling smoothed away: no value differs from the given
// one by more than the given share of a stop. A line of the result therefore lies where the light
// is the level to within that share; edges of shadow, steeper than it, stay where they are, and
// lines of different levels cannot cross. A thirtieth of a stop is 2 %.
func Denoise(g Grid, stops float64) Grid {
	if !g.usable() || !(stops > 0) {
		return g
	}
	b := newBlur(g, float32(math.Exp2(min(stops, 1))))
	const rounds = 12
	for range rounds {
		for j := range g.NY {
			b.row(j)
		}
		b.now, b.next = b.next, b.now
	}
	out := g
	out.Value = append([]float32(nil), g.Value...)
	for n := range b.now {
		if !g.masked(n) {
			out.Value[n] = b.now[n]
		}
	}
	return out
}

// blur is a smoothing in progress.
type blur struct {
	nx        int
	now, next []float32
	low, high []float32 // what each value may become
	right, up []float32 // 1 where a point and its neighbour that way are averaged, else 0
}

// newBlur sets out to smooth g within a factor. Neighbours half a stop or more apart stand on two
// sides of an edge and are not averaged; nor is what has no data.
func newBlur(g Grid, factor float32) *blur {
	size := g.NX * g.NY
	b := &blur{nx: g.NX, now: make([]float32, size), next: make([]float32, size), low: make([]float32, size),
		high: make([]float32, size), right: make([]float32, size), up: make([]float32, size)}
	for n := range size {
		if !g.masked(n) {
			b.now[n] = g.Value[n]
			b.low[n], b.high[n] = g.Value[n]/factor, g.Value[n]*factor
		}
	}
	for n := range size {
		if n%g.NX < g.NX-1 && b.alikeRow(n, n+1) {
			b.right[n] = 1
		}
		if n+g.NX < size && b.alikeRow(n, n+g.NX) {
			b.up[n] = 1
		}
	}
	return b
}

// alikeRow is false for what is masked, whose value is zero here.
func (b *blur) alikeRow(n, m int) bool { return b.now[n] > 0.7*b.now[m] && b.now[m] > 0.7*b.now[n] }

// row writes row j of next: each point the mean of itself, counted twice, and its neighbours.
func (b *blur) row(j int) {
	from, to := j*b.nx, (j+1)*b.nx
	for n := from; n < to; n++ {
		v := b.now[n]
		sum, count := 2*v, float32(2)
		if n > from {
			w := b.right[n-1]
			sum, count = sum+w*b.now[n-1], count+w
		}
		if n+1 < to {
			w := b.right[n]
			sum, count = sum+w*b.now[n+1], count+w
		}
		if j > 0 {
			w := b.up[n-b.nx]
			sum, count = sum+w*b.now[n-b.nx], count+w
		}
		if n+b.nx < len(b.now) {
			w := b.up[n]
			sum, count = sum+w*b.now[n+b.nx], count+w
		}
		b.next[n] = min(max(sum/count, b.low[n]), b.high[n])
	}
}
