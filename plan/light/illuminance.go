package light

import (
	"math"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/formfactor"
)

// unoccluded is what the receptor gets, lx, where nothing hides any part of the opening: by closed
// form where there is one, else by a rule as close as asked.
func (l *lamp) unoccluded(r *Receptor, to *precision) float64 {
	if l.opening.Form == photometry.Point {
		return l.fromPoint(l.at, r)
	}
	if l.lambertian {
		return l.closedForm(r)
	}
	if l.creases != nil {
		return l.creases.sum(l, r, to)
	}
	sum := 0.0
	for _, n := range l.rule(math.Sqrt(l.distance2(r.At)), to) {
		sum += n.weight * l.fromPoint(n.at, r)
	}
	return sum
}

// closedForm is full by closed form.
func (l *lamp) closedForm(r *Receptor) float64 {
	o := l.opening
	dome := r.Response == Dome
	switch o.Form {
	case photometry.Rectangle:
		luminance := l.flux / (math.Pi * o.Width * o.Height)
		if dome {
			return luminance * formfactor.PolygonDome(l.corners[:], r.At, r.Axis)
		}
		return luminance * formfactor.Polygon(l.corners[:], r.At, r.Axis)
	case photometry.Disc:
		luminance := l.flux / (math.Pi * o.Surface())
		disc := formfactor.Circle{Centre: l.at, Normal: l.axis, Radius: o.Width / 2}
		if dome {
			return luminance * formfactor.DiscDome(disc, r.At, r.Axis)
		}
		return luminance * formfactor.Disc(disc, r.At, r.Axis)
	case photometry.Tube:
		perMetre := l.flux / (math.Pi * math.Pi * o.Width) // cd/m square to it
		if dome {
			return perMetre * formfactor.LineDome(l.ends[0], l.ends[1], r.At, r.Axis)
		}
		return perMetre * formfactor.Line(l.ends[0], l.ends[1], r.At, r.Axis)
	}
	luminance := l.flux / (math.Pi * o.Surface())
	if dome {
		return luminance * formfactor.SphereDome(l.at, o.Width/2, r.At, r.Axis)
	}
	return luminance * formfactor.Sphere(l.at, o.Width/2, r.At, r.Axis)
}

// luminance is that of a Lambertian opening, cd/m²; of a tube the intensity square to a metre of it.
func (l *lamp) luminance() float64 {
	o := l.opening
	if o.Form == photometry.Tube {
		return l.flux / (math.Pi * math.Pi * o.Width)
	}
	return l.flux / (math.Pi * o.Surface())
}
