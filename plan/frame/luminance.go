package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/photometry"
)

// Luminance is the mean luminance of the opening of a lamp as it is seen from a place, cd/m², where the lamp gives so many times
// the light of its head; 0 where it has no size, shows its back, or hides behind cloth of its own.
func Luminance(l *plan.Light, output float64, from r3.Vec) float64 {
	if len(l.Diffusion) > 0 || l.Head.Source.Distribution == nil {
		return 0
	}
	d := l.Frame.Local(r3.Unit(r3.Sub(from, l.Frame.At)))
	area := areaToward(l, d)
	if area < 1e-9 {
		return 0
	}
	return l.Head.Source.Intensity(d) * output / float64(l.Count) / area
}

// areaToward is how large the opening of a lamp looks from a direction of its frame, m².
func areaToward(l *plan.Light, d r3.Vec) float64 {
	o := l.Head.Source.Opening
	switch o.Form {
	case photometry.Rectangle, photometry.Disc:
		return o.Surface() * max(0, -d.Z)
	case photometry.Tube:
		return o.Width * o.Height * math.Sqrt(max(0, 1-d.X*d.X))
	case photometry.Sphere:
		return math.Pi / 4 * o.Width * o.Width
	case photometry.Lampshade:
		form, _ := l.Head.ShadeForm()
		wide := (form.Top + form.Bottom) / 2
		return wide*form.Height*math.Sqrt(max(0, 1-d.Z*d.Z)) + math.Pi/4*wide*wide*math.Abs(d.Z)
	}
	if hasMouth(l) {
		return math.Pi / 4 * l.Head.Aperture * l.Head.Aperture * max(0, -d.Z)
	}
	return 0
}
