package study_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/light"
)

// In a closed room whose surfaces return a share rho, all the same, the mean of what comes back to them is
// rho Phi/(A (1 - rho)), wherever the lamp and whatever the room's shape: under a sloping ceiling too.
func TestClosedRoomUnderASlope(t *testing.T) {
	const flux = 5000.0
	for name, c := range map[string]struct{ room, lamp string }{
		"a shed": {"size: [4, 3], height: {low: 1.2, high: 3.4, toward: right}", "[2.6, 1.2]"},
		"an L":   {"outline: [right 4, up 2, left 2, up 2, left 2, down 4], height: {low: 1.5, high: 3, toward: w2}", "[1.3, 1.1]"},
		"askew": {"corners: [{a: [0, 0]}, {b: [4, -0.7]}, {c: [5.1, 2.9]}, {d: [2.6, 1.9]}, {e: [1.3, 4.2]}], " +
			"height: {low: 1.7, high: 3.1, toward: e-a}", "[2.2, 1]"},
	} {
		for rho, grey := range map[float64]string{0.3: "0.3", 0.8: "0.8"} {
			s := laidOut(t, "scrimshaw: 1\nmaterials: {even: {reflectance: "+grey+"}}\n"+
				"rooms: {k: {"+c.room+", walls: even, floor: even, ceiling: even}}\n"+
				"lights: {a: {output: {lumens: 5000, shape: uniform}, at: "+c.lamp+", height: 1.1, aim: down}}\n")
			area := 0.0
			var to light.Targets
			var sizes []float64
			for _, ring := range surfaces(&s.Rooms[0]) {
				l, size := over(ring, 0.05)
				to.Lattices, sizes, area = append(to.Lattices, l), append(sizes, size), area+size
			}
			world, err := light.Build(t.Context(), &s.Set, light.Options{})
			if err != nil {
				t.Fatal(err)
			}
			basis, err := world.Basis(t.Context(), light.Emitters(s), to)
			if err != nil {
				t.Fatal(err)
			}
			mean := 0.0
			for k := range to.Lattices {
				mean += sizes[k] / area * meanOf(basis, light.LevelsOf(s.Lights), k)
			}
			want := rho * flux / (area * (1 - rho))
			t.Logf("%s, rho %g: mean %.2f lx, %+.3f %%", name, rho, mean, 100*(mean/want-1))
			if !(math.Abs(mean/want-1) <= 1e-3) {
				t.Errorf("%s, rho %g: a mean of %.2f lx comes back, want %.2f", name, rho, mean, want)
			}
		}
	}
}

// surfaces are the parts of the floor and the ceiling, and the walls, as convex polygons that look inward.
func surfaces(room *plan.Room) (all [][]r3.Vec) {
	lift := func(p r2.Vec, z float64) r3.Vec { return r3.Vec{X: p.X, Y: p.Y, Z: z} }
	for _, part := range room.Parts {
		var floor, ceiling []r3.Vec
		for i := range part {
			last := part[len(part)-1-i]
			floor = append(floor, lift(part[i], room.Base))
			ceiling = append(ceiling, lift(last, room.CeilingAt(last)))
		}
		all = append(all, floor, ceiling)
	}
	for _, w := range room.Walls {
		all = append(all, []r3.Vec{lift(w.Left, room.Base), lift(w.Right, room.Base),
			lift(w.Right, room.CeilingAt(w.Right)), lift(w.Left, room.CeilingAt(w.Left))})
	}
	return all
}

// over is a lattice on a polygon, and the polygon's area.
func over(ring []r3.Vec, step float64) (l light.Lattice, area float64) {
	var twice r3.Vec
	for i := 2; i < len(ring); i++ {
		twice = r3.Add(twice, r3.Cross(r3.Sub(ring[i-1], ring[0]), r3.Sub(ring[i], ring[0])))
	}
	n := r3.Unit(twice)
	u := r3.Unit(r3.Sub(ring[1], ring[0]))
	v := r3.Cross(n, u)
	low, high := r2.Vec{}, r2.Vec{}
	flat := make([]r2.Vec, len(ring))
	for i, p := range ring {
		way := r3.Sub(p, ring[0])
		flat[i] = r2.Vec{X: r3.Dot(way, u), Y: r3.Dot(way, v)}
		low = r2.Vec{X: min(low.X, flat[i].X), Y: min(low.Y, flat[i].Y)}
		high = r2.Vec{X: max(high.X, flat[i].X), Y: max(high.Y, flat[i].Y)}
	}
	l.NU, l.NV = int(math.Ceil((high.X-low.X)/step)), int(math.Ceil((high.Y-low.Y)/step))
	du, dv := (high.X-low.X)/float64(l.NU), (high.Y-low.Y)/float64(l.NV)
	l.Origin = r3.Add(ring[0], r3.Add(r3.Scale(low.X+du/2, u), r3.Scale(low.Y+dv/2, v)))
	l.U, l.V, l.Normal = r3.Scale(du, u), r3.Scale(dv, v), n
	l.Mask = make([]uint64, (l.NU*l.NV+63)/64)
	for k := range l.NU * l.NV {
		p := r2.Vec{X: low.X + (float64(k%l.NU)+0.5)*du, Y: low.Y + (float64(k/l.NU)+0.5)*dv}
		for i, a := range flat {
			if r2.Cross(r2.Sub(flat[(i+1)%len(flat)], a), r2.Sub(p, a)) < 0 {
				l.Mask[k>>6] |= 1 << (k & 63)
			}
		}
	}
	return l, r3.Norm(twice) / 2
}

// meanOf is the mean of what comes back to a lattice, over its points with data.
func meanOf(b *light.Basis, d light.Levels, k int) float64 {
	l := &b.Targets().Lattices[k]
	values := make([]float32, l.NU*l.NV)
	b.ReflectedField(k, d, values)
	sum, n := 0.0, 0.0
	for i, v := range values {
		if !l.Masked(i%l.NU, i/l.NU) {
			sum, n = sum+float64(v), n+1
		}
	}
	return sum / n
}
