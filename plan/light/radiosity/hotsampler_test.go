package radiosity

import (
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// A look at what is far falls where its turn and its offset put it along the chances: each of four patches has a quarter of them.
func TestWhereFarLooksFall(t *testing.T) {
	f := &face{basis: basisOf(r3.Vec{Z: -1})}
	var s hotParts
	for k := range 4 {
		x := float64(k)
		part := newHotPart([]r3.Vec{{X: x, Z: 3}, {X: x, Y: 0.02, Z: 3}, {X: x + 0.02, Y: 0.02, Z: 3}, {X: x + 0.02, Z: 3}}, f, 0.0016)
		part.own = grey(1)
		s.parts = append(s.parts, part)
		s.upTo = append(s.upTo, float64(k+1)*part.power())
		s.patches = append(s.patches, newHotPatch(1, s.parts, k))
	}
	for _, c := range []struct {
		offset               float64
		samples, turn, turns int
		want                 []int
	}{
		{0.1, 1, 0, 1, []int{0}}, {0.3, 1, 0, 1, []int{1}}, {0.6, 1, 0, 1, []int{2}}, {0.9, 1, 0, 1, []int{3}},
		{0.6, 2, 0, 1, []int{1, 3}}, {0.4, 2, 0, 1, []int{0, 2}}, {0.4, 1, 1, 2, []int{2}}, {0.6, 1, 0, 2, []int{1}}, {0.5, 2, 1, 2, []int{1, 3}},
	} {
		from := viewpoint{normal: r3.Vec{Z: 1}, response: receptor.Cosine, samples: c.samples, turn: c.turn, turns: c.turns, standsFor: 1, offset: c.offset}
		var got []int
		l := hotSampler{samples: sobol.Samples(64), tracer: newTracer(&mesh{bvh: solid.NewBVH(&solid.Set{})}), of: &s, from: &from,
			each: func(g hotSample) { got = append(got, int(g.part.middle.X)) }}
		l.far([]float64{1, 2, 3, 4})
		if !slices.Equal(got, c.want) {
			t.Errorf("%+v: looks fall on %v", c, got)
		}
	}
}
