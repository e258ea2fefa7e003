package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/row"
	"scrimshaw/plan/solid"
)

// lamp is an emitter made ready: an opening whose every point sends out the same distribution.
// The light of a point of it, weighted as one of many, is the source's intensity by that weight. A
// tube is its middle line: what its thickness adds falls with the square of diameter over distance.
type lamp struct {
	at              r3.Vec
	axis, right, up r3.Vec
	flux            float64
	shape           photometry.Distribution
	opening         photometry.Opening
	profile         Profile      // nil where the opening is as bright all over
	onesided        bool         // a face: nothing behind its plane, unless measured data has light there
	lambertian      bool         // the same luminance from everywhere: closed forms hold
	corners         [4]r3.Vec    // of the rectangle that a face fills or a disc lies in, counter-clockwise from before it
	ends            [2]r3.Vec    // of a tube
	ring            []r3.Vec     // a polygon for a disc
	coarseRing      []r3.Vec     // one of fewer sides
	points          []r3.Vec     // of the opening, traced where it is seen in part
	order           []int        // of the points, so that those of a bundle follow each other
	begins          []bool       // in that order: whether a bundle begins
	kernel          row.Kernel   // of the fields; nil where none is asked for
	creases         *creases     // of a face that is not smooth
	shade           *shadeLamp   // nil for all else
	screens         []caster     // what stops its light alone
	screened        *solid.BVH   // the set with those; nil where there are none
	images          []image      // as mirrors show it
	boards          []litBoard   // that throw its light on in a lobe
	before          *solid.Plane // as a mirror shows it: what of it lies before that, where this is not all of it
}

// isMeasured says whether light is known at some angles only, with a crease at each.
func (l *lamp) isMeasured() bool { return l.creases != nil && l.creases.measured != nil }

// intensity is the intensity, cd, of the whole source in a unit direction.
func (l *lamp) intensity(d r3.Vec) float64 {
	ahead := r3.Dot(d, l.axis)
	if l.onesided && ahead <= 0 {
		return 0
	}
	right, up := r3.Dot(d, l.right), r3.Dot(d, l.up)
	if l.isMeasured() {
		return l.flux * l.creases.measured.FastCandela(right, up, ahead, 1)
	}
	return l.flux * l.shape.Candela(r3.Vec{X: right, Y: up, Z: -ahead})
}

// fromPoint is what the receptor gets, lx, from a point s that sends out the whole source's light.
func (l *lamp) fromPoint(s r3.Vec, r *Receptor) float64 {
	way := r3.Sub(r.At, s)
	square := r3.Norm2(way)
	if square == 0 {
		return 0
	}
	d := r3.Scale(1/math.Sqrt(square), way)
	w := response(r, d)
	if w == 0 {
		return 0
	}
	if l.profile != nil {
		w *= l.relative(s)
	}
	return l.intensity(d) * w / square
}

// relative is the luminance at a point of the opening, by the mean over the opening.
func (l *lamp) relative(s r3.Vec) float64 {
	if l.profile == nil {
		return 1
	}
	way := r3.Sub(s, l.at)
	return l.profile.Relative(r3.Dot(way, l.right), r3.Dot(way, l.up))
}

// response is the receptor's weight for light that travels along d.
func response(r *Receptor, d r3.Vec) float64 {
	return r.Response.To(-r3.Dot(d, r.Axis))
}

// discCircle is the rim of the lamp's opening, a disc.
func (l *lamp) discCircle() circle { return circle{l.at, l.up, l.right, l.opening.Width / 2} }

// local gives a vector in the lamp's frame: along its right, its up and its axis.
func (l *lamp) local(v r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(v, l.right), Y: r3.Dot(v, l.up), Z: r3.Dot(v, l.axis)}
}

// image is a lamp as a mirror shows it: to images of places, in the set of the mirror.
type image struct {
	*mirror
	l *lamp
}
