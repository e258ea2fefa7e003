package photometry

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// At gives the intensity, cd/lm, at an angle from the axis in radians: luminance times what is seen of each band, from
// outside and through the nearer opening, and of the bulb.
func (s *Shade) At(t float64) float64 {
	sin, cos := math.Sincos(t)
	v := shadeView{s, math.Max(0, sin), math.Abs(cos), cos > 0}
	sum := 0.0
	rims, before := v.rimsOfBands(), v.through(0)
	for k := range s.bands {
		seen := v.through(k + 1)
		sum += s.bands[k].Outside*v.outside(k, &rims) + s.bands[k].Inside*math.Abs(seen-before)
		before = seen
	}
	return sum/math.Pi + s.bulbLuminance()*v.bulb()
}

// Candela gives the intensity, cd/lm.
func (s *Shade) Candela(dir r3.Vec) float64 { return s.At(angleFromAxis(dir)) }

// Peak gives the greatest intensity on a grid of one degree, cd/lm.
func (s *Shade) Peak() (peak float64) {
	for t := range 181 {
		peak = math.Max(peak, s.At(float64(t)*math.Pi/180))
	}
	return peak
}

// shadeView is a shade as seen from far away, at an angle of which these are the sine and the cosine's size. Discs are
// seen as ellipses of one shape.
type shadeView struct {
	*Shade
	sin, cos float64
	above    bool // from over it
}

// near is the ring of the opening that is seen.
func (v *shadeView) near() int {
	if v.above {
		return shadeBands
	}
	return 0
}

// bandRims are how the rims of a band lie as they are seen: of all bands alike, for they are equally high and narrow by as much.
type bandRims struct {
	touch float64 // the angle from its narrowing at which a line touches both rims, radians; nought where one rim holds the other
	line  float64 // m, how long that line is from the one to the other
}

// rimsOfBands finds that.
func (v *shadeView) rimsOfBands() (r bandRims) {
	low, high := v.rings[0], v.rings[1]
	apart, narrows := (high.at-low.at)*v.sin, v.cos*math.Abs(high.radius-low.radius)
	if apart > narrows {
		r.touch, r.line = math.Acos(narrows/apart), math.Sqrt(apart*apart-narrows*narrows)
	}
	return r
}

// outside is how much is seen of the outside of a band, m²: the hull of its two rims without the disc in the nearer.
func (v *shadeView) outside(band int, r *bandRims) float64 {
	low, high := v.rings[band], v.rings[band+1]
	nearer := low
	if v.above {
		nearer = high
	}
	large, small := math.Max(low.radius, high.radius), math.Min(low.radius, high.radius)
	hull := v.cos*(large*large*(math.Pi-r.touch)+small*small*r.touch) + (large+small)*r.line
	return hull - v.cos*math.Pi*nearer.radius*nearer.radius
}

// through is how much of the disc in a ring is seen through the nearer opening, m²: two circles, once their ellipses are
// drawn out, have a lens in common.
func (v *shadeView) through(disc int) float64 {
	a, b := v.rings[v.near()], v.rings[disc]
	if !(v.cos > 0) {
		return 0
	}
	return v.cos * circlesOverlap(a.radius, b.radius, math.Abs(a.at-b.at)*v.sin/v.cos)
}

// circlesOverlap is the area that two circles have in common whose middles are apart.
func circlesOverlap(a, b, apart float64) float64 {
	switch {
	case apart >= a+b:
		return 0
	case apart <= math.Abs(a-b):
		least := math.Min(a, b)
		return math.Pi * least * least
	}
	segment := func(own, other float64) float64 {
		x := math.Min(1, math.Max(-1, (apart*apart+own*own-other*other)/(2*apart*own)))
		return own * own * (math.Acos(x) - x*math.Sqrt(1-x*x))
	}
	return segment(a, b) + segment(b, a)
}

// bulbStrips is into how many strips the bulb is cut across.
const bulbStrips = 64

// strip is one of them: how long half of it is, in radii of the bulb, and how far half of the opening before it reaches, seen along the axis, m; less
// than nought where the opening does not reach across to it.
type strip struct{ half, rim float64 }

// stripsOf cut the bulb across before an opening. A shade has them ready, as its bulb is looked at from every point that its light falls on.
func (s *Shade) stripsOf(opening ring) (all [bulbStrips]strip) {
	for i := range all {
		sin, half := math.Sincos(math.Pi * ((float64(i)+0.5)/bulbStrips - 0.5))
		x := s.form.Bulb / 2 * sin
		all[i] = strip{half, -1}
		if rest := opening.radius*opening.radius - x*x; rest > 0 {
			all[i].rim = math.Sqrt(rest)
		}
	}
	return all
}

// bulb is how much of the bulb is seen through the nearer opening, m²: of each strip of its round, what lies within the
// ellipse.
func (v *shadeView) bulb() float64 {
	opening, strips := v.rings[v.near()], &v.under
	if v.above {
		strips = &v.over
	}
	radius := v.form.Bulb / 2
	shift := math.Abs(opening.at) * v.sin
	if shift-v.cos*opening.radius >= radius {
		return 0 // the rim hides all of it
	}
	sum := 0.0
	for i := range strips {
		s := &strips[i]
		if s.rim < 0 {
			continue
		}
		rim := v.cos * s.rim
		low, high := max(-radius*s.half, shift-rim), min(radius*s.half, shift+rim)
		sum += max(0, high-low) * radius * s.half * math.Pi / bulbStrips
	}
	return sum
}
