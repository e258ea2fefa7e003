package frame_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/frame"
	"scrimshaw/plan/kit"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/term"
)

// A Lambertian opening is as bright from everywhere before it: its flux by pi and its surface, of a tube by pi and what it looks like from beside; at half
// its light half of that, of two heads that of each. From behind, behind cloth, without size or without light nothing is said.
func TestLuminanceOfOpenings(t *testing.T) {
	aside, ahead, behind := r3.Vec{X: 2, Y: 1, Z: -3}, r3.Vec{Z: -4}, r3.Vec{X: 1, Z: 4}
	face, disc := photometry.Opening{Form: photometry.Rectangle, Width: 0.6, Height: 0.4}, photometry.Opening{Form: photometry.Disc, Width: 0.5}
	tube, ball := photometry.Opening{Form: photometry.Tube, Width: 1.2, Height: 0.04}, photometry.Opening{Form: photometry.Sphere, Width: 0.3}
	for _, c := range []struct {
		name   string
		o      photometry.Opening
		from   r3.Vec
		output float64
		change func(l *plan.Light)
		want   float64 // cd/m², of 1000 lm
	}{
		{"face", face, ahead, 1, nil, 1000 / (math.Pi * 0.24)}, {"face from aside", face, aside, 1, nil, 1000 / (math.Pi * 0.24)}, {"face from behind", face, behind, 1, nil, 0},
		{"disc", disc, aside, 1, nil, 1000 / (math.Pi * math.Pi * 0.0625)}, {"tube", tube, ahead, 1, nil, 1000 / (math.Pi * math.Pi * 1.2 * 0.04)},
		{"tube from behind and aside", tube, behind, 1, nil, 1000 / (math.Pi * math.Pi * 1.2 * 0.04)}, {"ball", ball, behind, 1, nil, 1000 / (4 * math.Pi) / (math.Pi * 0.0225)},
		{"half of its light", face, ahead, 0.5, nil, 500 / (math.Pi * 0.24)}, {"two heads", face, ahead, 1, func(l *plan.Light) { l.Count = 2 }, 500 / (math.Pi * 0.24)},
		{"behind cloth", face, ahead, 1, func(l *plan.Light) { l.Diffusion = []string{"silk"} }, 0},
		{"of no known light", face, ahead, 1, func(l *plan.Light) { l.Head.Source.Distribution = nil }, 0}, {"a point", photometry.Opening{}, ahead, 1, nil, 0},
	} {
		l := &plan.Light{Count: 1, Frame: plan.Frame{Axis: r3.Vec{Z: -1}, Right: r3.Vec{X: 1}},
			Head: kit.Head{Source: photometry.Source{Flux: 1000, Distribution: photometry.Lambertian(c.o.Form), Opening: c.o}}}
		if c.change != nil {
			c.change(l)
		}
		if got := frame.Luminance(l, c.output, c.from); !(math.Abs(got-c.want) <= 1e-9*c.want) {
			t.Errorf("%s: %g cd/m², want %g", c.name, got, c.want)
		}
	}
}

// A shade is as bright as what goes a way by how large it looks: its side as it is seen from beside and the circle of its mean width as it is seen
// from above or below.
func TestLuminanceOfShades(t *testing.T) {
	shade, _ := photometry.NewShade(photometry.ShadeForm{Top: 0.2, Bottom: 0.4, Height: 0.25, Bulb: 0.06, Reflectance: 0.5, Transmittance: 0.3})
	l := &plan.Light{Count: 1, Frame: plan.Frame{Axis: r3.Vec{Z: -1}, Right: r3.Vec{X: 1}},
		Head: kit.Head{Source: photometry.Source{Flux: 800, Distribution: shade, Opening: photometry.Opening{Form: photometry.Lampshade, Width: 0.4, Height: 0.25}}}}
	const side, circle = 0.3 * 0.25, math.Pi / 4 * 0.3 * 0.3
	for from, area := range map[r3.Vec]float64{{X: 3}: side, {Y: -2}: side, {Z: 4}: circle, {Z: -4}: circle, {X: 1, Z: 1}: math.Sqrt(0.5) * (side + circle), {X: -4, Z: -3}: 0.8*side + 0.6*circle} {
		want := l.Head.Source.Intensity(l.Frame.Local(r3.Unit(from))) / area
		if got := frame.Luminance(l, 1, from); !(math.Abs(got-want) <= 1e-9*want) || !(want > 0) {
			t.Errorf("from %v a shade has %g cd/m², want %g", from, got, want)
		}
	}
}

// A head that counts as a point is as bright as its mouth: the disc of that, from before it. A bulb of the set, and what shines all round, has none.
func TestLuminanceOfMouths(t *testing.T) {
	for _, c := range []struct {
		name   string
		from   r3.Vec
		change func(h *kit.Head)
		want   float64 // cd/m², of 1000 lm
	}{
		{"ahead", r3.Vec{Z: -4}, func(*kit.Head) {}, 1000 / math.Pi / (math.Pi * 0.01)}, {"aside", r3.Vec{X: 3, Z: -4}, func(*kit.Head) {}, 1000 / math.Pi / (math.Pi * 0.01)},
		{"behind", r3.Vec{X: 3, Z: 4}, func(*kit.Head) {}, 0}, {"without a mouth", r3.Vec{Z: -4}, func(h *kit.Head) { h.Aperture = 0 }, 0},
		{"of the set", r3.Vec{Z: -4}, func(h *kit.Head) { h.Class = term.Practical }, 0}, {"all round", r3.Vec{Z: -4}, func(h *kit.Head) { h.Source.Distribution = photometry.Uniform{} }, 0},
	} {
		l := &plan.Light{Count: 1, Frame: plan.Frame{Axis: r3.Vec{Z: -1}, Right: r3.Vec{X: 1}},
			Head: kit.Head{Aperture: 0.2, Source: photometry.Source{Flux: 1000, Distribution: photometry.Lambertian(photometry.Disc)}}}
		c.change(&l.Head)
		if got := frame.Luminance(l, 1, c.from); !(math.Abs(got-c.want) <= 1e-9*c.want) {
			t.Errorf("%s: %g cd/m², want %g", c.name, got, c.want)
		}
	}
}
