package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// cuts are the places of a lattice where something stands between two neighbouring points, across which they
// lend each other nothing: bit j*NU+i is between point (i, j) and the next along U, or along V.
type cuts struct{ u, v []uint64 }

// sampleHeight is how far over the lattice, m, things are looked for: what stands on a floor counts.
const sampleHeight = 1e-4

// cut finds where faces meet the plane of a lattice.
func (f *frame) cut(m *mesh) {
	n := r3.Cross(f.U, f.V)
	square := r3.Norm2(n)
	if !(square > 0) {
		return
	}
	over := r3.Unit(n)
	if r3.Dot(n, f.Normal) < 0 {
		over = r3.Scale(-1, over)
	}
	toU, toV := r3.Scale(1/square, r3.Cross(f.V, n)), r3.Scale(1/square, r3.Cross(n, f.U))
	for i := range m.faces {
		a, b, ok := m.faces[i].section(f.Origin, over)
		if !ok {
			continue
		}
		a, b = r3.Sub(a, f.Origin), r3.Sub(b, f.Origin)
		f.between(r2.Vec{X: r3.Dot(toU, a), Y: r3.Dot(toV, a)}, r2.Vec{X: r3.Dot(toU, b), Y: r3.Dot(toV, b)})
	}
}

// section is where a face meets a plane just over a point.
func (f *face) section(at, over r3.Vec) (a, b r3.Vec, ok bool) {
	var ends [2]r3.Vec
	found := 0
	last := f.corners[len(f.corners)-1]
	was := r3.Dot(over, r3.Sub(last, at)) - sampleHeight
	for _, c := range f.corners {
		is := r3.Dot(over, r3.Sub(c, at)) - sampleHeight
		if (was > 0) != (is > 0) && found < 2 {
			ends[found] = r3.Add(last, r3.Scale(was/(was-is), r3.Sub(c, last)))
			found++
		}
		last, was = c, is
	}
	return ends[0], ends[1], found == 2
}

// between marks the pairs of neighbours that a line from a to b, in steps of the lattice, runs between.
func (f *frame) between(a, b r2.Vec) {
	f.cuts.u = crossed(f.cuts.u, a, b, f.NU, f.NV, func(i, j int) int { return j*f.NU + i })
	turned := func(p r2.Vec) r2.Vec { return r2.Vec{X: p.Y, Y: p.X} }
	f.cuts.v = crossed(f.cuts.v, turned(a), turned(b), f.NV, f.NU, func(j, i int) int { return j*f.NU + i })
}

// crossed sets the bits of the pairs in each of nv rows of nu points.
func crossed(bits []uint64, a, b r2.Vec, nu, nv int, place func(i, j int) int) []uint64 {
	if a.Y > b.Y {
		a, b = b, a
	}
	first, last := math.Ceil(max(a.Y, 0)), math.Floor(min(b.Y, float64(nv-1)))
	for y := first; y <= last && b.Y > a.Y; y++ {
		x := math.Floor(a.X + (y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
		if !(x >= 0 && x < float64(nu-1)) {
			continue
		}
		if bits == nil {
			bits = make([]uint64, (nu*nv+63)/64)
		}
		n := place(int(x), int(y))
		bits[n>>6] |= 1 << (n & 63)
	}
	return bits
}

// set says whether a bit is set; bits beyond the last are not.
func set(bits []uint64, n int) bool { return n>>6 < len(bits) && bits[n>>6]>>(n&63)&1 != 0 }
