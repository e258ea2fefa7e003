package receptor_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/receptor"
)

// Integral is that of To over the sphere.
func TestIntegral(t *testing.T) {
	for _, r := range []receptor.Response{receptor.Cosine, receptor.Dome, receptor.Radiance} {
		sum := 0.0
		const steps = 10_000
		for i := range steps {
			cos := 2*(float64(i)+0.5)/steps - 1
			sum += r.To(cos) * 2 * math.Pi * 2 / steps
		}
		if got := r.Integral(); !(math.Abs(got-sum/math.Pi) <= 1e-6) {
			t.Errorf("response %d: %g, the sum is %g", r, got, sum/math.Pi)
		}
	}
}

// The receptor of a lattice stands at its point and has the lattice's axis, or one toward the place the domes turn to.
func TestReceptorOfALattice(t *testing.T) {
	l := receptor.Lattice{Origin: r3.Vec{X: 1}, U: r3.Vec{X: 0.5}, V: r3.Vec{Z: 2}, Normal: r3.Vec{Y: 1}, NU: 4, NV: 2, Mask: []uint64{1 << 6}}
	if got := l.Receptor(2, 1); got.At != (r3.Vec{X: 2, Z: 2}) || got.Axis != l.Normal {
		t.Errorf("%v facing %v", got.At, got.Axis)
	}
	if !l.Masked(2, 1) || l.Masked(1, 1) {
		t.Error("point (2, 1) alone has no data")
	}
	l.Response, l.Toward = receptor.Dome, &r3.Vec{X: 2, Y: 3, Z: 2}
	if got := l.Receptor(2, 1); got.Axis != (r3.Vec{Y: 1}) {
		t.Errorf("the axis %v does not point to %v", got.Axis, *l.Toward)
	}
	l.Toward = &r3.Vec{X: 2, Z: 2}
	if got := l.Receptor(2, 1); got.Axis != (r3.Vec{}) {
		t.Errorf("in the place itself the axis is %v, want none", got.Axis)
	}
}
