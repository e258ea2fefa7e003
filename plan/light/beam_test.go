package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// batwing is brightest 30° off its axis: I = 1 + 4 sin² t − 4 sin⁴ t before the lamp, and half as much behind.
type batwing struct{}

func (batwing) Candela(d r3.Vec) float64 {
	s := d.X*d.X + d.Y*d.Y
	v := (1 + 4*s - 4*s*s) / 20
	if d.Z > 0 {
		return v / 2
	}
	return v
}

// An opening reaches from its middle to its rim, whichever way.
func TestHowFarAnOpeningReaches(t *testing.T) {
	turned := func(l *lamp, degrees float64) r3.Vec {
		sin, cos := math.Sincos(degrees * radian)
		return r3.Add(r3.Scale(cos, l.right), r3.Scale(sin, l.up))
	}
	for _, c := range []struct {
		form          photometry.Form
		degrees, want float64
	}{
		{photometry.Point, 0, 0}, {photometry.Rectangle, 0, 0.6}, {photometry.Rectangle, 90, 0.35}, {photometry.Rectangle, 180, 0.6}, {photometry.Rectangle, 45, 0.35 * math.Sqrt2},
		{photometry.Disc, 0, 0.6}, {photometry.Disc, 70, 0.6}, {photometry.Sphere, 200, 0.6}, {photometry.Tube, 0, 0.6}, {photometry.Tube, 60, 0.3}, {photometry.Tube, 90, 0},
	} {
		l := lampOf(photometry.Opening{Form: c.form, Width: 1.2, Height: 0.7})
		close(t, fmt.Sprintf("form %d at %g°", c.form, c.degrees), l.halfExtent(turned(l, c.degrees)), c.want, 1e-9)
	}
}

// A beam ends where its intensity falls under a threshold for the first time outside its brightest direction.
func TestWhereABeamEnds(t *testing.T) {
	lobe := photometry.NewLobe(40, 70)
	for _, c := range []struct {
		name            string
		d               photometry.Distribution
		threshold, want float64 // cd/lm, degrees
	}{
		{"half of a lobe", lobe, 0.5 * lobe.Peak(), 20}, {"a tenth of a lobe", lobe, 0.1 * lobe.Peak(), 35}, {"the peak of a lobe", lobe, lobe.Peak(), 0},
		{"more than a lobe has", lobe, 1.01 * lobe.Peak(), 0}, {"a quarter of a cosine", photometry.Cosine{}, 0.25 / math.Pi, math.Acos(0.25) / radian},
		{"all round", photometry.Uniform{}, 0.5 / (4 * math.Pi), 180}, {"all round, at its peak", photometry.Uniform{}, 0, 180},
		{"the brightest of a batwing", batwing{}, 2.0 / 20, 45}, {"more than a batwing has", batwing{}, 2.01 / 20, 0},
		{"half as bright again as its axis", batwing{}, 1.5 / 20, math.Asin(math.Sqrt((1+math.Sqrt(0.5))/2)) / radian},
		{"its axis", batwing{}, 0.6 / 20, 90}, {"what is behind", batwing{}, 0.5 / 20, 180},
	} {
		e := Emitter{Name: "a", Frame: down(2), Source: photometry.Source{Flux: 1, Distribution: c.d}}
		l := newLamp(&e, 1, 1, 1)
		tolerance := 1e-6
		if c.threshold == photometry.Peak(c.d) || c.want == 45 { // a flat top: a billionth of the light is a thousandth of a degree
			tolerance = 2e-3
		}
		close(t, c.name, l.cutoffAngle(l.right, c.threshold), c.want, tolerance)
		_, twice := c.d.(batwing) // falls and rises again behind
		if widest := l.widestAngle(c.threshold) / radian; !twice && c.threshold < photometry.Peak(c.d) && (widest < c.want || widest > c.want+2) {
			t.Errorf("%s: nothing is followed from %g° on, want from %g° to 2° more", c.name, widest, c.want)
		}
	}
}
