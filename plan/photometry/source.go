package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The most flux, lm, and luminous intensity, cd, that a source may be given: beyond any lamp and any searchlight.
const (
	MostLumens  = 1e8
	MostCandela = 1e10
)

// FromLumens is a source of a flux, lm.
func FromLumens(lumens float64, d Distribution, o Opening) Source {
	return Source{Flux: lumens, Distribution: d, Opening: o}
}

// FromCandela is a source with a peak intensity, cd, as seen from far away.
func FromCandela(candela float64, d Distribution, o Opening) Source {
	return Source{Flux: candela / Peak(d), Distribution: d, Opening: o}
}

// FromLux is a source that gives an illuminance, lx, at a distance, m, before the middle of its
// opening on the axis. The opening's own size counts: a soft face close by is no point.
func FromLux(lux, distance float64, d Distribution, o Opening) Source {
	return Source{Flux: lux / onAxis(d, o, distance), Distribution: d, Opening: o}
}

// FromLuminance is a Lambertian opening of a luminance, cd/m2.
func FromLuminance(luminance float64, o Opening) Source {
	return Source{Flux: luminance * luminousArea(o), Distribution: Lambertian(o.Form), Opening: o}
}

// Lambertian gives the distribution of an opening of the same luminance from everywhere it
// is seen: the cosine of a face, the sine of a tube, the same all round a sphere.
func Lambertian(f Form) Distribution {
	switch f {
	case Rectangle, Disc:
		return Cosine{}
	case Tube:
		return TubeCosine{}
	}
	return Uniform{}
}

// luminousArea is the flux, lm, of an opening of 1 cd/m²: pi times its luminous surface; 0 for a
// point or a line without thickness.
func luminousArea(o Opening) float64 { return math.Pi * o.Surface() }

// Surface gives the luminous surface of the opening, m²: one side of a face, the mantle of a
// tube, the whole of a sphere.
func (o Opening) Surface() float64 {
	switch o.Form {
	case Rectangle:
		return o.Width * o.Height
	case Disc:
		return math.Pi / 4 * o.Width * o.Width
	case Tube:
		return math.Pi * o.Width * o.Height
	case Sphere:
		return math.Pi * o.Width * o.Width
	}
	return 0
}

// Largest gives the largest dimension of the opening, m.
func (o Opening) Largest() float64 { return math.Max(o.Width, o.Height) }

// Intensity gives the luminous intensity, cd, in a direction of the lamp frame (unit vector), as
// seen from far away.
func (s Source) Intensity(dir r3.Vec) float64 { return s.Flux * s.Distribution.Candela(dir) }

// Peak gives the greatest intensity, cd.
func (s Source) Peak() float64 { return s.Flux * Peak(s.Distribution) }

// Luminance gives the mean luminance of the opening seen along the axis, cd/m²; 0 for a point and
// for a line without thickness, which have none.
func (s Source) Luminance() float64 {
	seen := s.Opening.Surface()
	switch s.Opening.Form {
	case Tube:
		seen /= math.Pi
	case Sphere:
		seen /= 4
	}
	if seen == 0 {
		return 0
	}
	return s.Intensity(r3.Vec{Z: -1}) / seen
}

// AxisLux gives the illuminance, lx, on a plane square to the axis at a distance, m, before the middle of the opening.
func (s Source) AxisLux(distance float64) float64 {
	return s.Flux * onAxis(s.Distribution, s.Opening, distance)
}

// onAxis is the illuminance, lx per lumen, on a plane square to the axis at a distance before the
// middle of the opening, summed over the opening.
func onAxis(d Distribution, o Opening, distance float64) float64 {
	at := func(x, y float64) float64 { // from the point (x, y, 0) of the opening, per lumen of it
		r2 := x*x + y*y + distance*distance
		r := math.Sqrt(r2)
		return d.Candela(r3.Vec{X: -x / r, Y: -y / r, Z: -distance / r}) * distance / (r * r2)
	}
	w, h := o.Width/2, o.Height/2
	switch o.Form {
	case Rectangle:
		return integrate(func(x float64) float64 {
			return integrate(func(y float64) float64 { return at(x, y) + at(x, -y) + at(-x, y) + at(-x, -y) }, 0, h)
		}, 0, w) / (4 * w * h)
	case Disc:
		return integrate(func(r float64) float64 {
			return r * integrate(func(c float64) float64 { s, cos := math.Sincos(c); return at(r*cos, r*s) }, 0, 2*math.Pi)
		}, 0, w) / (math.Pi * w * w)
	case Tube:
		return integrate(func(x float64) float64 { return at(x, 0) + at(-x, 0) }, 0, w) / (2 * w)
	}
	return d.Candela(r3.Vec{Z: -1}) / (distance * distance) // a point; a sphere, exactly
}
