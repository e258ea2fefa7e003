package light

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/solid"
)

// BenchmarkShade reads a shade from close by, as lattices do and as receptors do.
func BenchmarkShade(b *testing.B) {
	e := shaded(r3.Vec{Z: 1}, taper)
	l := newLamp(&e, 1, 1, 1)
	for name, quick := range map[string]bool{"lattice": true, "receptor": false} {
		tr := tracer{visibleSums: newVisibleSums(solid.NewBVH(&solid.Set{})), quick: quick}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			i := 0
			for b.Loop() {
				i++
				tr.light(l, &Receptor{At: r3.Vec{X: 0.1 + 0.01*float64(i%150), Y: 0.2}, Axis: r3.Vec{Z: 1}})
			}
		})
	}
}
