package radiosity

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// byPaths is what a dome that looks up gets of a bulb's light from surfaces, lx, with its standard error: by so many paths from it that are
// followed by chance and ask for the bulb wherever they turn. It shares no code with patches, links and looks.
func byPaths(s *solid.Set, at r3.Vec, lamp *bulb, paths int) (mean, off float64) {
	r := rand.New(rand.NewPCG(1, 2))
	sum, squares := 0.0, 0.0
	for range paths {
		lux := alongPath(r, lamp, at)
		sum, squares = sum+lux, squares+lux*lux
	}
	mean = sum / float64(paths)
	return mean, math.Sqrt((squares/float64(paths) - mean*mean) / float64(paths))
}

// alongPath is what one path brings.
func alongPath(r *rand.Rand, lamp *bulb, from r3.Vec) (lux float64) {
	frame := basisOf(r3.Vec{Z: 1})
	way := frame.direction(receptor.Dome, r.Float64(), r.Float64())
	for left := grey(receptor.Dome.Integral()); ; {
		hit, met := lamp.bvh.First(from, way, nil)
		left = left.Times(hit.Skin.Reflect)
		if !met || left == (colour.RGB{}) {
			return lux
		}
		from = r3.Add(r3.Add(from, r3.Scale(hit.T, way)), r3.Scale(1e-7, hit.Normal))
		lux += left.Times(lamp.Light(0, from, hit.Normal)).Y()
		goesOn := min(1, 2*max(left[0], left[1], left[2]))
		if r.Float64() >= goesOn {
			return lux
		}
		left = left.Scale(1 / goesOn)
		onward := basisOf(hit.Normal)
		way = onward.direction(receptor.Cosine, r.Float64(), r.Float64())
	}
}

// Where two cards cross below a bulb, in a room that is black but for its floor, a dim part of the one lies next to a patch of the other, and
// bright ones farther off. Looks at the dim one do not stand for those: all that a reader gets is what such a patch passes on.
func TestCardsThatCross(t *testing.T) {
	s, at, lamp := darkened(29, colour.RGB{})
	tr, bvh := trace(t, s, usual, []receptor.Receptor{{At: at, Axis: r3.Vec{Z: 1}, Response: receptor.Dome}}, nil)
	b := &bulb{bvh: bvh, at: lamp, flux: grey(5000), cos: -1}
	got := 0.0
	for _, e := range solve(t, tr, b).Point(0, 0) {
		got += e.Y()
	}
	want, off := byPaths(s, at, b, 100_000)
	if !(math.Abs(got-want) <= 0.15*want+3*off) {
		t.Errorf("a reader gets %.3f lx, by paths %.3f ± %.3f", got, want, off)
	}
	t.Logf("a reader gets %.3f lx, by paths %.3f ± %.3f", got, want, off)
}
