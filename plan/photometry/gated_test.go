package photometry_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// onPlane is the direction to a place on the plane at a distance of 1, to the right of the axis and over it.
func onPlane(x, y float64) r3.Vec { return r3.Unit(r3.Vec{X: x, Y: y, Z: -1}) }

// planeIntegral sums a function over the square of a half width on that plane, by solid angle.
func planeIntegral(half float64, f func(x, y float64) float64) (sum float64) {
	const n = 600
	step := 2 * half / n
	for i := range n {
		for k := range n {
			x, y := -half+(float64(i)+0.5)*step, -half+(float64(k)+0.5)*step
			sum += f(x, y) * step * step / math.Pow(1+x*x+y*y, 1.5)
		}
	}
	return sum
}

// A flat field has half its light at half the beam, and all of its lumens.
func TestFlatField(t *testing.T) {
	for _, beam := range []float64{5, 20, 50} {
		for _, blur := range []float64{0.015, 0.1, 0.3} {
			f := photometry.NewFlatField(beam, blur)
			within(t, "half", f.At(beam/2*math.Pi/180)/f.Peak(), 0.5, 1e-9)
			radius := math.Tan(beam / 2 * math.Pi / 180)
			within(t, "lm", planeIntegral(radius*(1+blur), func(x, y float64) float64 { return f.Candela(onPlane(x, y)) }), 1, 1e-4)
			within(t, "flat", f.At(math.Atan(0.95*(1-blur)*radius))/f.Peak(), 1, 1e-12)
			within(t, "dark", f.At(math.Atan(1.001*(1+blur)*radius)), 0, 0)
		}
	}
}

// The blur of an edge is found again from the angles that it leaves a half and a tenth at.
func TestEdgeBlurFromAngles(t *testing.T) {
	f := photometry.NewFlatField(30, photometry.EdgeBlur(30, 33.3))
	within(t, "a tenth", f.At(33.3/2*math.Pi/180)/f.Peak(), 0.1, 1e-6)
}

// In the middle of a cut the light is halved, within it all is left and beyond it none; what passes is the integral over what is
// left, and the lamp's intensity there is what it was.
func TestCutsLeaveTheRest(t *testing.T) {
	const beam = 30
	radius := math.Tan(beam / 2 * math.Pi / 180)
	bases := []photometry.Distribution{photometry.NewFlatField(beam, 0.05), photometry.NewLobe(beam, 33.3)}
	if testing.Short() {
		bases = bases[:1]
	}
	for _, base := range bases {
		for _, cuts := range [][]photometry.Cut{
			{{Angle: 0, Depth: 0.3}}, {{Angle: 90, Depth: 0.6}}, {{Angle: 0, Depth: 0.2}, {Angle: 95, Depth: 0.3}, {Angle: 180, Depth: 0.25}, {Angle: 265, Depth: 0.4}},
		} {
			const blur = 0.04
			d, share := photometry.NewGated(base, beam, photometry.Gate{Cuts: cuts, Blur: blur})
			left := func(x, y float64) float64 { // by the definition of a cut: nothing past an edge, all before it
				for _, c := range cuts {
					sin, cos := math.Sincos(c.Angle * math.Pi / 180)
					if x*sin+y*cos > radius*(1-2*c.Depth) {
						return 0
					}
				}
				return base.Candela(onPlane(x, y))
			}
			within(t, "what is left", share, planeIntegral(4*radius, left)/planeIntegral(4*radius, func(x, y float64) float64 { return base.Candela(onPlane(x, y)) }), 2e-3)
			within(t, "lm", planeIntegral(4*radius, func(x, y float64) float64 { return d.Candela(onPlane(x, y)) }), 1, 1e-3)
		}
		d, share := photometry.NewGated(base, beam, photometry.Gate{Cuts: []photometry.Cut{{Angle: 90, Depth: 0.4}}, Blur: 0.04})
		edge := 0.2 * radius
		within(t, "in the edge", share*d.Candela(onPlane(edge, 0)), base.Candela(onPlane(edge, 0))/2, 1e-9)
		within(t, "inside", share*d.Candela(onPlane(edge-0.041*radius, 0.1*radius)), base.Candela(onPlane(edge-0.041*radius, 0.1*radius)), 1e-9)
		within(t, "beyond", d.Candela(onPlane(edge+0.041*radius, 0)), 0, 0)
	}
}

// A gate with nothing in it changes nothing, and one that is cut away to the axis from both sides has no light left.
func TestGatesThatPassAllOrNothing(t *testing.T) {
	base := photometry.NewLobe(20, 22.5)
	all, share := photometry.NewGated(base, 20, photometry.Gate{Cuts: []photometry.Cut{{Angle: 45, Depth: -1}}, Blur: 0.02})
	within(t, "share", share, 1, 1e-9)
	within(t, "axis", all.Candela(onPlane(0, 0)), base.Peak(), 1e-9)
	_, share = photometry.NewGated(base, 20, photometry.Gate{Cuts: []photometry.Cut{{Angle: 0, Depth: 0.6}, {Angle: 180, Depth: 0.6}}, Blur: 0.02})
	within(t, "none left", share, 0, 1e-6)
}

// A pattern is open over its share, whatever its grain and the lens; other seeds are other patterns, the same seed the same.
func TestBreakupIsOpenOverItsShare(t *testing.T) {
	base := photometry.NewFlatField(20, 0.01)
	axis := photometry.NewFlatField(20, 0.01).Peak()
	at := func(b photometry.Breakup, blur float64) (share, contrast float64) {
		d, share := photometry.NewGated(base, 20, photometry.Gate{Breakup: &b, Blur: blur})
		low, high := math.Inf(1), 0.0
		for i := range 400 {
			e := share * d.Candela(onPlane(0.12*(float64(i)/200-1), 0.03)) / axis
			low, high = min(low, e), max(high, e)
		}
		return share, high - low
	}
	grains := []float64{0.1, 0.03, 0.2}
	if testing.Short() {
		grains = grains[:1]
	}
	for _, open := range []float64{0.2, 0.4, 0.75, 1} {
		for _, grain := range grains {
			share, contrast := at(photometry.Breakup{Open: open, Grain: grain, Seed: 7}, 0.01)
			within(t, "open", share, open, 0.012)
			if open < 1 && contrast < 0.99 {
				t.Errorf("open %g, grain %g: from dark to light it is only %g", open, grain, contrast)
			}
			soft, blurred := at(photometry.Breakup{Open: open, Grain: grain, Seed: 7}, 0.2)
			within(t, "open and soft", soft, share, 0.1)
			if open < 1 && blurred >= contrast {
				t.Errorf("open %g, grain %g: out of focus it goes from dark to light by %g, in focus by %g", open, grain, blurred, contrast)
			}
		}
	}
	one, _ := photometry.NewGated(base, 20, photometry.Gate{Breakup: &photometry.Breakup{Open: 0.4, Grain: 0.1, Seed: 1}})
	again, _ := photometry.NewGated(base, 20, photometry.Gate{Breakup: &photometry.Breakup{Open: 0.4, Grain: 0.1, Seed: 1}})
	other, _ := photometry.NewGated(base, 20, photometry.Gate{Breakup: &photometry.Breakup{Open: 0.4, Grain: 0.1, Seed: 2}})
	same := 0
	for i := range 200 {
		d := onPlane(0.001*float64(i-100), 0.02)
		if one.Candela(d) != again.Candela(d) {
			t.Fatal("the same seed is another pattern")
		}
		if one.Candela(d) == other.Candela(d) {
			same++
		}
	}
	if same > 180 {
		t.Errorf("another seed is the same at %d of 200 places", same)
	}
}

// ringArea is the area of a ring of places on the plane; plus counter-clockwise.
func ringArea(ring []r2.Vec) (area float64) {
	for i, p := range ring {
		area += r2.Cross(p, ring[(i+1)%len(ring)]) / 2
	}
	return area
}

// The rim of an image is where the light falls to its share: a circle without cuts, counter-clockwise, and with cuts the part of the disc
// that lies before their edges, whose area has a closed form. To a tenth of the light the image ends beyond an edge, as far as its
// blur says, and what passes there is a tenth.
func TestOutlineOfAnImage(t *testing.T) {
	const beam, field = 30, 33.3
	base := photometry.NewLobe(beam, field)
	radius := math.Tan(beam / 2 * math.Pi / 180)
	round := photometry.Outline(base, 0.5)
	for _, p := range round {
		within(t, "m from the axis", r2.Norm(p), radius, 1e-4)
	}
	for _, p := range photometry.Outline(base, 0.1) {
		within(t, "m from the axis to a tenth", r2.Norm(p), math.Tan(field/2*math.Pi/180), 1e-3)
	}
	disc := math.Pi * radius * radius
	within(t, "the disc, m²", ringArea(round), disc, 0.01*disc)
	for _, depth := range []float64{0.2, 0.5, 0.7} {
		angles := []float64{200, 0, 90}
		if testing.Short() {
			angles = angles[:1]
		}
		for _, angle := range angles {
			cut := []photometry.Cut{{Angle: angle, Depth: depth}}
			d, _ := photometry.NewGated(base, beam, photometry.Gate{Cuts: cut, Blur: 0.04})
			at := 1 - 2*depth // of the edge, in radii from the axis toward the side that it comes from
			left := (math.Pi - math.Acos(at) + at*math.Sqrt(1-at*at)) * radius * radius
			within(t, "left of the disc, m²", ringArea(photometry.Outline(d, 0.5)), left, 0.01*disc)
			sin, cos := math.Sincos(angle * math.Pi / 180)
			past := math.Inf(-1)
			for _, p := range photometry.Outline(d, 0.1) {
				past = max(past, p.X*sin+p.Y*cos)
			}
			share := d.Candela(onPlane(past*sin, past*cos)) / d.Candela(onPlane(-0.5*radius*sin, -0.5*radius*cos))
			if depth >= 0.5 { // there the lobe itself is flat
				share *= base.Candela(onPlane(-0.5*radius*sin, -0.5*radius*cos)) / base.Candela(onPlane(past*sin, past*cos))
				within(t, "the share on the rim past an edge", share, 0.1, 1e-3)
			}
		}
	}
	two := []photometry.Cut{{Angle: 0, Depth: 0.6}, {Angle: 180, Depth: 0.6}}
	if d, _ := photometry.NewGated(base, beam, photometry.Gate{Cuts: two, Blur: 0.04}); len(photometry.Outline(d, 0.5)) != 0 {
		t.Error("cuts that leave nothing leave a rim")
	}
}

// The finest detail of a beam with an edge is as wide as its light falls from nine tenths to one; a wide one falls off slowly.
func TestDetailOfABeam(t *testing.T) {
	steep := photometry.NewLobe(20, 22.4)
	edge := func(share float64) float64 {
		low, high := 0.0, 0.3
		for range 60 {
			if middle := (low + high) / 2; steep.At(middle) > share*steep.Peak() {
				low = middle
			} else {
				high = middle
			}
		}
		return math.Tan(low)
	}
	within(t, "the edge, by the distance", photometry.Detail(steep), edge(0.1)-edge(0.9), 1e-9)
	if d := photometry.Detail(photometry.NewLobe(40, 70)); !math.IsInf(d, 1) {
		t.Errorf("a soft beam has a detail of %g", d)
	}
}
