package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/photometry"
)

// bulbShare is how often a point of the bulb is picked, and not one of the side; faintShade is what of the light inside
// is worth following.
const (
	bulbShare  = 0.4
	faintShade = 0.1
)

// shadeOf makes a shade of a lamp that has one. The lamp's flux is what leaves the shade; the bulb's own stands behind it.
func shadeOf(l *lamp, d photometry.Distribution) *shade {
	made, ok := d.(*photometry.Shade)
	if !ok || l.form != photometry.Lampshade {
		return nil
	}
	f := made.Form()
	bulb := *l
	bulb.form, bulb.width, bulb.even, bulb.onesided, bulb.flux = photometry.Sphere, f.Bulb, true, false, l.flux*made.BulbFlux()
	s := &shade{frame: l, bulb: &bulb, low: f.Bottom / 2, high: f.Top / 2, half: f.Height / 2, passes: f.Transmittance, throws: f.Reflectance}
	slant := math.Hypot(2*s.half, s.high-s.low)
	s.area = math.Pi * (s.low + s.high) * slant
	s.outward, s.along, s.mid = 2*s.half/slant, (s.low-s.high)/slant, (s.low+s.high)/2
	return s
}

// slope is how much the side's radius grows a metre along the axis.
func (s *shade) slope() float64 { return (s.high - s.low) / (2 * s.half) }

// place is a point of the side by two numbers from 0 to 1, all equally likely, and its normal to the outside, in the
// lamp's frame: along right, up and axis.
func (s *shade) place(u, w float64) (p, normal r3.Vec) {
	radius := math.Sqrt(s.low*s.low + u*(s.high*s.high-s.low*s.low))
	z := s.half * (2*u - 1)
	if k := s.slope(); k != 0 {
		z = (radius - s.mid) / k
	}
	sin, cos := math.Sincos(2 * math.Pi * w)
	return r3.Vec{X: radius * cos, Y: radius * sin, Z: z}, r3.Vec{X: s.outward * cos, Y: s.outward * sin, Z: s.along}
}

// meets says how far along a way the side is next met, in units of d.
func (s *shade) meets(o, d r3.Vec) (t float64, ok bool) {
	k := s.slope()
	radius, grows := s.mid+k*o.Z, k*d.Z
	a := d.X*d.X + d.Y*d.Y - grows*grows
	b := o.X*d.X + o.Y*d.Y - radius*grows
	c := o.X*o.X + o.Y*o.Y - radius*radius
	root := b*b - a*c
	if root < 0 || a == 0 {
		return 0, false
	}
	root = math.Sqrt(root)
	first, second := (-b-root)/a, (-b+root)/a
	if a < 0 {
		first, second = second, first
	}
	for _, t := range [2]float64{first, second} {
		if z := o.Z + t*d.Z; t > touching && math.Abs(z) <= s.half {
			return t, true
		}
	}
	return 0, false
}

// local is a place of the scene in the lamp's frame, world the other way.
func (s *shade) local(p r3.Vec) r3.Vec {
	x, y, z := s.frame.local(p)
	return r3.Vec{X: x, Y: y, Z: z}
}

func (s *shade) world(p r3.Vec) r3.Vec {
	return r3.Add(s.frame.on(p.X, p.Y), r3.Scale(p.Z, s.frame.axis))
}

// sampleFrom picks a point of the bulb or of the side.
func (s *shade) sampleFrom(r *Receptor, u, w float64, plain *PCG) (seen sight) {
	if u >= bulbShare {
		return s.sampleSide(r, (u-bulbShare)/(1-bulbShare), w, plain)
	}
	seen = s.bulb.sampleFrom(r, u/bulbShare, w)
	if !(seen.value > 0) {
		return sight{}
	}
	from := s.local(seen.point)
	if t, met := s.meets(from, r3.Sub(s.local(r.At), from)); met && t < 1 {
		return sight{}
	}
	seen.value /= bulbShare
	return seen
}

// sampleSide picks a point of the side, and follows its light back to the bulb.
func (s *shade) sampleSide(r *Receptor, u, w float64, plain *PCG) (seen sight) {
	p, normal := s.place(u, w)
	way := r3.Sub(s.local(r.At), p)
	square := r3.Norm2(way)
	cos := r3.Dot(way, normal) / math.Sqrt(square)
	share := s.passes
	if cos < 0 {
		share = s.throws
	}
	if t, met := s.meets(p, way); share == 0 || met && t < 1 {
		return seen
	}
	seen.point, seen.odds = s.world(p), 1
	d := r3.Scale(1/math.Sqrt(square), r3.Sub(r.At, seen.point))
	radiance := share / math.Pi * s.falling(p, normal, plain)
	seen.value = r.weigh(d) * radiance * math.Abs(cos) / square * s.area / (1 - bulbShare)
	return seen
}

// falling estimates what falls on the inside of a place of the side, lx: straight from the bulb, of which nothing lies
// behind the side, and from one other place of the side, and so on.
func (s *shade) falling(p, normal r3.Vec, plain *PCG) (e float64) {
	for carry := 1.0; ; {
		square := r3.Norm2(p)
		e += carry * s.bulb.flux / (4 * math.Pi) * r3.Dot(p, normal) / (square * math.Sqrt(square))
		carry *= s.throws
		if carry < faintShade {
			if plain.Float()*faintShade >= carry {
				return e
			}
			carry = faintShade
		}
		d := tiltedFrom(r3.Scale(-1, normal), math.Sqrt(1-plain.Float()), plain.Float())
		t, met := s.meets(p, d)
		if !met {
			return e
		}
		p = r3.Add(p, r3.Scale(t, d))
		flat := math.Hypot(p.X, p.Y)
		normal = r3.Vec{X: s.outward * p.X / flat, Y: s.outward * p.Y / flat, Z: s.along}
	}
}
