package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
	"scrimshaw/plan/photometry/formfactor"
	"scrimshaw/plan/photometry/row"
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
	onesided        bool       // a face: nothing behind its plane, unless measured data has light there
	lambertian      bool       // the same luminance from everywhere: closed forms hold
	corners         [4]r3.Vec  // of the rectangle that a face fills or a disc lies in, counter-clockwise from before it
	ends            [2]r3.Vec  // of a tube
	ring            []r3.Vec   // a polygon for a disc
	coarseRing      []r3.Vec   // one of fewer sides
	points          []r3.Vec   // of the opening, traced where it is seen in part
	order           []int      // of the points, so that those of a bundle follow each other
	begins          []bool     // in that order: whether a bundle begins
	kernel          row.Kernel // of the fields; nil where none is asked for
	pieces          *pieces    // of a face that is not smooth
}

// newLamp prepares an emitter; faces and tubes are how many points are traced, bundle is how many of them
// are taken together.
func newLamp(e *Emitter, faces, tubes, bundle int) *lamp {
	l := &lamp{
		at: e.Frame.At, axis: e.Frame.Axis, right: e.Frame.Right, up: e.Frame.Up(),
		flux: e.Source.Flux, shape: e.Source.Distribution, opening: e.Source.Opening,
	}
	if l.shape == nil {
		l.shape, l.flux = photometry.Uniform{}, 0
	}
	l.normalise()
	face := l.opening.Form == photometry.Rectangle || l.opening.Form == photometry.Disc
	l.onesided = face && !photometry.Behind(l.shape)
	l.lambertian = l.opening.Form != photometry.Point && l.shape == photometry.Lambertian(l.opening.Form)
	own, points := l.openingPoints(faces, tubes)
	l.points = points
	l.order, l.begins = bundled(own, bundle)
	if _, axial := l.shape.(photometry.Axial); l.onesided && !axial && !l.lambertian {
		l.pieces = newPieces(l.shape)
	}
	l.lay()
	return l
}

// lay finds the corners of the opening.
func (l *lamp) lay() {
	w, h := r3.Scale(l.opening.Width/2, l.right), r3.Scale(l.opening.Height/2, l.up)
	if l.opening.Form == photometry.Disc {
		h = r3.Scale(l.opening.Width/2, l.up)
		disc := l.disc()
		l.ring, l.coarseRing = disc.polygon(roundSides), disc.polygon(fewSides)
	}
	low, high := r3.Sub(l.at, h), r3.Add(l.at, h)
	l.corners = [4]r3.Vec{r3.Sub(low, w), r3.Sub(high, w), r3.Add(high, w), r3.Add(low, w)}
	l.ends = [2]r3.Vec{r3.Sub(l.at, w), r3.Add(l.at, w)}
}

// normalise makes points of openings without size.
func (l *lamp) normalise() {
	o := &l.opening
	if !(o.Width > 0) || o.Form == photometry.Rectangle && !(o.Height > 0) {
		*o = photometry.Opening{}
	}
}

// intensity is the intensity, cd, of the whole source in a unit direction.
func (l *lamp) intensity(d r3.Vec) float64 {
	ahead := r3.Dot(d, l.axis)
	if l.onesided && ahead <= 0 {
		return 0
	}
	return l.flux * l.shape.Candela(r3.Vec{X: r3.Dot(d, l.right), Y: r3.Dot(d, l.up), Z: -ahead})
}

// from is what the receptor gets, lx, from a point s that sends out the whole source's light.
func (l *lamp) from(s r3.Vec, r *Receptor) float64 {
	way := r3.Sub(r.At, s)
	square := r3.Norm2(way)
	if square == 0 {
		return 0
	}
	d := r3.Scale(1/math.Sqrt(square), way)
	w := weigh(r, d)
	if w == 0 {
		return 0
	}
	return l.intensity(d) * w / square
}

// weigh is the receptor's weight for light that travels along d.
func weigh(r *Receptor, d r3.Vec) float64 {
	cos := -r3.Dot(d, r.Axis)
	if r.Weight == Dome {
		return max(0, (1+cos)/2)
	}
	return max(0, cos)
}

// full is what the receptor gets, lx, where nothing hides any part of the opening: by closed
// form where there is one, else by a rule as close as asked.
func (l *lamp) full(r *Receptor, to *precision) float64 {
	if l.opening.Form == photometry.Point {
		return l.from(l.at, r)
	}
	if l.lambertian {
		return l.closed(r)
	}
	if l.pieces != nil {
		return l.pieces.sum(l, r, to)
	}
	sum := 0.0
	for _, n := range l.nodes(math.Sqrt(l.distance2(r.At)), to) {
		sum += n.weight * l.from(n.at, r)
	}
	return sum
}

// closed is full by closed form.
func (l *lamp) closed(r *Receptor) float64 {
	o := l.opening
	dome := r.Weight == Dome
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
