package fit

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
)

// corner is the solid angle of a rectangle a wide and b high that is seen square on at a distance from over one of its corners:
// atan(a b / (d sqrt(a² + b² + d²))), in every handbook of radiometry.
func corner(a, b, d float64) float64 { return math.Atan(a * b / (d * math.Sqrt(a*a+b*b+d*d))) }

// raking is a lamp so far out of a thin wall and to the right of the middle of a window of 1.4 m by 1.2 m, level with its sill, with its axis square to the wall,
// turned about the origin.
func raking(d photometry.Distribution, out, aside, turn float64) (*plan.Light, *plan.Opening) {
	sin, cos := math.Sincos(turn)
	at := func(x, y float64) r2.Vec { return r2.Vec{X: x*cos - y*sin, Y: x*sin + y*cos} }
	// Seen from inside, which is down the sheet, right is to the right.
	o := &plan.Opening{Left: at(-0.7, 0), Right: at(0.7, 0), Outward: at(0, 1), Depth: 1e-6, Sill: 0.9, Head: 2.1}
	inward := at(0, -1)
	return &plan.Light{Frame: plan.FrameAlong(plan.AtHeight(at(aside, out), 0.9), r3.Vec{X: inward.X, Y: inward.Y}, 0, 0),
		Head: kit.Head{Source: photometry.FromLumens(1000, d, photometry.Opening{})}}, o
}

// Of a lamp that shines all round alike an opening gets its solid angle, by whatever corner it is seen over.
func TestBeamThroughIsASolidAngle(t *testing.T) {
	for _, turn := range []float64{0, 0.7, 2.5} {
		l, o := raking(photometry.Uniform{}, 1.5, 1.1, turn)
		want := (corner(1.8, 1.2, 1.5) - corner(0.4, 1.2, 1.5)) / (4 * math.Pi)
		if got := beamThrough(l, o); !(math.Abs(got-want) <= 0.03*want) {
			t.Errorf("turned by %g: %.5f, want %.5f", turn, got, want)
		}
	}
}

// Of a narrow beam on a jamb and on the sill half a half goes through, of one beyond them nothing, and of one within all.
func TestBeamThroughOfANarrowBeam(t *testing.T) {
	for _, c := range []struct{ aside, up, want float64 }{{0.7, 0, 0.25}, {-0.7, 0.6, 0.5}, {0, 0.6, 1}, {0.8, 0, 0}, {0, 1.3, 0}} {
		l, o := raking(photometry.NewLobe(3, 5), 1.5, c.aside, 0.3)
		l.Frame.At.Z += c.up
		if got := beamThrough(l, o); !(math.Abs(got-c.want) <= 0.02) {
			t.Errorf("%g aside and %g up: %.3f, want %.2f", c.aside, c.up, got, c.want)
		}
	}
	// In a thick wall the far jamb takes what the near one lets through.
	l, o := raking(photometry.NewLobe(20, 30), 1.5, 0.85, 0)
	thin := beamThrough(l, o)
	o.Depth = 0.6
	if thick := beamThrough(l, o); !(thick < thin) {
		t.Errorf("%.3f through a thick wall, %.3f through a thin one", thick, thin)
	}
	if got := beamThrough(&plan.Light{}, o); got != 0 {
		t.Errorf("%g of a lamp without light", got)
	}
}
