package radiosity

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// darkened is a set of which so many sides and things have one colour, and in which a wall may be missing.
func darkened(seed uint64, paint colour.RGB) (s *solid.Set, at, lamp r3.Vec) {
	r := rand.New(rand.NewPCG(seed, 7))
	s = furnished(r)
	at, lamp = free(r, s, solid.NewBVH(s)), free(r, s, solid.NewBVH(s))
	for i := range s.Prisms {
		if r.IntN(2) == 0 {
			s.Prisms[i].Skin.Reflect = paint
		}
	}
	for i := range s.Sheets {
		if r.IntN(2) == 0 {
			s.Sheets[i].Front.Reflect = paint
		}
		if r.IntN(2) == 0 {
			s.Sheets[i].Back.Reflect = paint
		}
	}
	if r.IntN(3) == 0 {
		s.Sheets = append(s.Sheets[:3], s.Sheets[4:]...)
	}
	return s, at, lamp
}

// lit is what a set with a lamp and its reader is read as: by a receptor and in the middle of a lattice about it, lx, with how many patches are
// followed and what is sent, taken in and lost of the light, lm.
type lit struct {
	receptor, field, sent, taken, lost float64
	followed                           int
}

func read(t *testing.T, seed uint64, paint colour.RGB) (l lit) {
	s, at, lamp := darkened(seed, paint)
	q := usual
	q.Links, q.Lattice, q.HotSamples = 256, 512, 16
	points := []receptor.Receptor{{At: at, Axis: r3.Vec{Z: 1}, Response: receptor.Dome}}
	lattice := receptor.Lattice{Origin: r3.Vec{X: at.X - 0.2, Y: at.Y - 0.2, Z: at.Z}, U: r3.Vec{X: 0.05}, V: r3.Vec{Y: 0.05}, NU: 8, NV: 8, Normal: r3.Vec{Z: 1}}
	tr, bvh := trace(t, s, q, points, []receptor.Lattice{lattice})
	solution := solve(t, tr, &bulb{bvh: bvh, at: lamp, flux: grey(5000), cos: -1})
	for _, e := range solution.Point(0, 0) {
		l.receptor += e.Y()
	}
	planes, err := solution.Lattice(context.Background(), 0)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range planes[0] {
		l.field += float64(e) / float64(len(planes[0]))
	}
	for slot := 1; slot < len(tr.patches); slot++ {
		if tr.mesh.faces[tr.patches[slot].face].isBlack() {
			t.Errorf("scene %d: a patch that returns nothing is followed", seed)
		}
	}
	sent, taken, lost := solution.Balance(0)
	l.followed, l.sent, l.taken, l.lost = len(tr.patches), sent.Y(), taken.Y(), lost.Y()
	return l
}

// What returns nothing is not followed, and what is read is what it would be did it return next to nothing: in rooms closed and open of
// which about half is black, by a receptor and on a lattice. What is sent is taken in or leaves.
func TestBlackIsNotFollowed(t *testing.T) {
	scenes := uint64(12)
	if testing.Short() {
		scenes = 4
	}
	sum := 0.0
	for seed := range scenes {
		got, want := read(t, seed, colour.RGB{}), read(t, seed, grey(1e-9))
		if got.followed >= want.followed {
			t.Errorf("scene %d: %d patches are followed of %d", seed, got.followed, want.followed)
		}
		if off := math.Abs(got.taken+got.lost-got.sent) / got.sent; off > 2e-3 {
			t.Errorf("scene %d: %g lm sent, %g taken in, %g lost", seed, got.sent, got.taken, got.lost)
		}
		const dark = 0.1 // lx, of which rays tell little
		off := max(math.Abs(got.receptor-want.receptor)/(want.receptor+dark), math.Abs(got.field-want.field)/(want.field+dark))
		sum += off
		if off > 0.01 {
			t.Errorf("scene %d: %.3f and %.3f lx past what is black, %.3f and %.3f past what nearly is", seed, got.receptor, got.field, want.receptor, want.field)
		}
	}
	t.Logf("off by %.2f %% in the mean", 100*sum/float64(scenes))
	if sum > 0.003*float64(scenes) {
		t.Errorf("off by %.2f %% in the mean", 100*sum/float64(scenes))
	}
}
