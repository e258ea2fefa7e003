package photometry_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"scrimshaw/plan/photometry"
)

// shades are a drum, a cone, a tall narrow one and one of metal.
var shades = map[string]photometry.ShadeForm{
	"drum":    {Top: 0.3, Bottom: 0.3, Height: 0.22, Bulb: 0.06, Reflectance: 0.5, Transmittance: 0.35},
	"cone":    {Top: 0.12, Bottom: 0.32, Height: 0.2, Bulb: 0.06, Reflectance: 0.55, Transmittance: 0.3},
	"chimney": {Top: 0.1, Bottom: 0.1, Height: 0.4, Bulb: 0.04, Reflectance: 0.7, Transmittance: 0.25},
	"metal":   {Top: 0.05, Bottom: 0.2, Height: 0.15, Bulb: 0.045, Reflectance: 0.8},
	"black":   {Top: 0.2, Bottom: 0.3, Height: 0.2, Bulb: 0.06},
}

// What leaves a shade by its three ways and what it takes is the light of the bulb, and the intensities add up to what
// leaves, as the exchange of the parts says.
func TestShadeKeepsTheBulbsLight(t *testing.T) {
	for name, form := range shades {
		s, share := photometry.NewShade(form)
		p := s.Parts()
		if sum := p.Above + p.Side + p.Below + p.Absorbed; !(math.Abs(sum-1) <= 1e-12) {
			t.Errorf("%s: the ways add up to %.15g", name, sum)
		}
		if math.Abs(share-(1-p.Absorbed)) > 1e-15 || form.Reflectance+form.Transmittance == 0 && p.Side != 0 {
			t.Errorf("%s: share %g, parts %+v", name, share, p)
		}
		if got := aroundAxis(s.At); !(math.Abs(got-1) <= 2e-5) {
			t.Errorf("%s sends out %.7f lm for one", name, got)
		}
		for _, gamma := range []float64{0, 20, 77, 160} {
			for _, plane := range []float64{0, 131, 270} {
				if got, want := s.Candela(photometry.Direction(gamma, plane)), s.At(gamma*math.Pi/180); !(math.Abs(got-want) <= 1e-9*want) {
					t.Errorf("%s: %g cd at %g degrees in plane %g, %g all round", name, got, gamma, plane, want)
				}
			}
		}
	}
}

// aroundAxis integrates intensities that are the same all round an axis over the sphere, lm: degree by degree down from it.
func aroundAxis(at func(gamma float64) float64) (lumens float64) {
	for band := range 180 {
		lumens += quad.Fixed(func(gamma float64) float64 { return 2 * math.Pi * at(gamma) * math.Sin(gamma) }, float64(band)*math.Pi/180, float64(band+1)*math.Pi/180, 15, quad.Legendre{}, 1)
	}
	return lumens
}

// A black shade leaves of the bulb what its openings are seen under: half of one less the cosine of each.
func TestBlackShade(t *testing.T) {
	s, share := photometry.NewShade(shades["black"])
	cone := func(radius float64) float64 { return (1 - 0.1/math.Hypot(0.1, radius)) / 2 }
	if want := cone(0.1) + cone(0.15); !(math.Abs(share-want) <= 1e-12) {
		t.Errorf("%g of the light leaves, want %g", share, want)
	}
	// Straight up, and level.
	if got, want := s.At(0)*share, 1/(4*math.Pi); !(math.Abs(got/want-1) <= 2e-3) {
		t.Errorf("up: %g cd/lm, want %g", got, want)
	}
	if got := s.At(math.Pi / 2); got != 0 {
		t.Errorf("level: %g cd/lm, want none", got)
	}
}

// In a tall drum that takes nothing and lets nothing through, all light leaves by the ends, half by each.
func TestMirroringDrum(t *testing.T) {
	s, share := photometry.NewShade(photometry.ShadeForm{Top: 0.2, Bottom: 0.2, Height: 0.5, Bulb: 0.05, Reflectance: 1})
	if p := s.Parts(); !(math.Abs(p.Above-0.5) <= 1e-9) || !(math.Abs(p.Below-0.5) <= 1e-9) || !(math.Abs(share-1) <= 1e-9) {
		t.Errorf("%+v", p)
	}
}

// A shade of no height is a bare bulb.
func TestShadeOfNoHeight(t *testing.T) {
	s, _ := photometry.NewShade(photometry.ShadeForm{Top: 0.4, Bottom: 0.4, Height: 1e-6, Bulb: 0.06, Reflectance: 0.5, Transmittance: 0.3})
	if p := s.Parts(); !(math.Abs(p.Above-0.5) <= 1e-5) || !(math.Abs(p.Below-0.5) <= 1e-5) {
		t.Errorf("%+v", p)
	}
	for _, t0 := range []float64{0.1, 1, 2, 3} {
		if got, want := s.At(t0), 1/(4*math.Pi); !(math.Abs(got/want-1) <= 2e-3) {
			t.Errorf("at %g: %g cd/lm, want %g", t0, got, want)
		}
	}
}

// Bands of a shade are pieces of cones: their areas are the sums of rings that are cut ever finer, and taken together they send out
// as much as each alone.
func TestBandsOfAShade(t *testing.T) {
	for name, form := range shades {
		s, _ := photometry.NewShade(form)
		single := s.Bands(1)
		flux := func(bands []photometry.Band) (area, inside, outside float64) {
			for i := range bands {
				a := bands[i].Area()
				area, inside, outside = area+a, inside+a*bands[i].Inside, outside+a*bands[i].Outside
			}
			return area, inside, outside
		}
		area, inside, outside := flux(single)
		const rings = 4000
		slant := math.Hypot(form.Height, (form.Top-form.Bottom)/2)
		want := 0.0
		for k := range rings {
			up := (float64(k) + 0.5) / rings
			want += math.Pi * (form.Bottom + up*(form.Top-form.Bottom)) * slant / rings
		}
		if !(math.Abs(area-want) <= 1e-6*want) {
			t.Errorf("%s: %g m² of side, want %g", name, area, want)
		}
		for _, together := range []int{2, 3, len(single)} {
			some := s.Bands(together)
			a, in, out := flux(some)
			if len(some) != (len(single)+together-1)/together || !(math.Abs(a-area) <= 1e-9*area) || !(math.Abs(in-inside) <= 1e-9*inside) || !(math.Abs(out-outside) <= 1e-9*outside) {
				t.Errorf("%s, %d together: %d bands of %g m², %g and %g lm; single %g m², %g and %g lm", name, together, len(some), a, in, out, area, inside, outside)
			}
		}
	}
}
