package radiosity

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// furnished is a closed room of random size and colours, with boxes and a card or two at random.
func furnished(r *rand.Rand) *solid.Set {
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	colours := func() colour.RGB { return colour.RGB{between(0.05, 0.95), between(0.05, 0.95), between(0.05, 0.95)} }
	w, d, h := between(3, 6), between(3, 5), between(2.2, 3)
	s := boxOf(w, d, h, func(int) colour.RGB { return colours() })
	id := solid.ID(10)
	for range 2 + r.IntN(6) {
		id++
		x, y, sx, sy, turn := between(0.5, w-0.5), between(0.5, d-0.5), between(0.1, 0.6), between(0.1, 0.6), between(0, math.Pi)
		sin, cos := math.Sincos(turn)
		var base []r2.Vec
		for _, c := range [][2]float64{{-sx, -sy}, {sx, -sy}, {sx, sy}, {-sx, sy}} {
			base = append(base, r2.Vec{X: x + (cos*c[0]-sin*c[1])/2, Y: y + (sin*c[0]+cos*c[1])/2})
		}
		z := 0.0
		if r.IntN(3) == 0 {
			z = between(0, 1)
		}
		s.Prisms = append(s.Prisms, solid.Prism{ID: id, Base: base, Z0: z, Z1: z + between(0.3, 1), Skin: solid.Skin{Reflect: colours()}})
	}
	for range r.IntN(3) {
		id++
		at := r3.Vec{X: between(1, w-1), Y: between(1, d-1), Z: between(0.8, 1.6)}
		n := r3.Unit(r3.Vec{X: between(-1, 1), Y: between(-1, 1), Z: between(-0.3, 0.3)})
		skin := solid.Skin{Reflect: colours()}
		s.Sheets = append(s.Sheets, solid.Sheet{ID: id, Corners: quad(r, at, n), Front: skin, Back: skin})
	}
	return s
}

// free is a place in the air of a set, near the middle of its room.
func free(r *rand.Rand, s *solid.Set, bvh *solid.BVH) r3.Vec {
	top := s.Sheets[1].Corners[2]
	for {
		p := r3.Vec{X: (0.2 + 0.6*r.Float64()) * top.X, Y: (0.2 + 0.6*r.Float64()) * top.Y, Z: (0.3 + 0.5*r.Float64()) * top.Z}
		if _, in := bvh.Inside(p); !in {
			return p
		}
	}
}

// In a closed room all light is taken in: 200 rooms, a bulb and a narrow spot in each, in colour. The
// patches that are followed hold all of the surface that light can fall on.
func TestNothingIsLost(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	q := usual
	q.Links, q.Patch = 32, 0.4
	rooms := 200
	if testing.Short() {
		rooms = 10
	}
	for room := range rooms {
		s := furnished(r)
		bvh := solid.NewBVH(s)
		at := free(r, s, bvh)
		axis := r3.Unit(r3.Vec{X: r.Float64() - 0.5, Y: r.Float64() - 0.5, Z: -r.Float64()})
		flux := colour.RGB{3000, 1000, 2000}
		tr, _ := trace(t, s, q, []receptor.Receptor{{At: at, Axis: axis, Response: receptor.Dome}}, nil)
		solution := solve(t, tr,
			&bulb{bvh: bvh, at: at, flux: flux, cos: -1},
			&bulb{bvh: bvh, at: at, flux: flux, axis: axis, cos: math.Cos(2 * math.Pi / 180)})
		for lamp := range 2 {
			_, taken, lost := solution.Balance(lamp)
			for c := range flux {
				if !(math.Abs(taken[c]/flux[c]-1) <= 5e-3) || lost[c] > 5e-3*flux[c] {
					t.Errorf("room %d, lamp %d, channel %d: %g lm sent, %g taken in, %g lost", room, lamp, c, flux[c], taken[c], lost[c])
				}
			}
		}
	}
}
