package truth

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
)

// weigh is a receptor's weight for light that travels along d.
func (r *Receptor) weigh(d r3.Vec) float64 {
	cos := -r3.Dot(d, r.Axis)
	if r.Response == Dome {
		return max(0, (1+cos)/2)
	}
	return max(0, cos)
}

// whole is the integral of a receptor's weight over all directions.
func (r *Receptor) whole() float64 {
	if r.Response == Dome {
		return 2 * math.Pi
	}
	return math.Pi
}

// pick gives a direction to look in, as likely as the receptor weighs it.
func (r *Receptor) pick(u, v float64) r3.Vec {
	cos := math.Sqrt(1 - u)
	if r.Response == Dome {
		cos = 2*cos - 1
	}
	return tiltedFrom(r.Axis, cos, v)
}

// direct is what a point of a lamp gives to a receptor, straight and by one mirror.
func (s *set) direct(l *lamp, r *Receptor, n [4]float64, plain *PCG) (e colour.RGB) {
	e = s.straight(l, r, n[0], n[1], plain)
	for i := range s.mirrors {
		e = e.Add(s.byMirror(l, r, &s.mirrors[i], n, plain))
	}
	return e
}

// straight is what a point of a lamp gives straight to a receptor.
func (s *set) straight(l *lamp, r *Receptor, u, v float64, plain *PCG) (e colour.RGB) {
	p := l.sample(r, u, v, plain)
	if !(p.value > 0) {
		return e
	}
	if l.stopped(p.point, r.At) {
		return e
	}
	return s.reaching(r, p.point).Times(l.output).Scale(p.value)
}

// reaching is what surfaces and panes leave of light on its way from a point.
func (s *set) reaching(r *Receptor, point r3.Vec) colour.RGB {
	d := r3.Sub(point, r.At)
	far := r3.Norm(d)
	d = r3.Scale(1/far, d)
	if s.opaque.blocked(r.At, d, far-touching, r.Skip) {
		return colour.RGB{}
	}
	return s.passed(r.At, d, far-touching)
}

// byMirror is what a point of a lamp gives to a receptor by a mirror.
func (s *set) byMirror(l *lamp, r *Receptor, m *face, n [4]float64, plain *PCG) (e colour.RGB) {
	over := r3.Dot(m.normal, r.At) - m.offset
	side := m.sideOf(r.At)
	if m.shine[side] == (colour.RGB{}) || over*over < touching*touching {
		return e
	}
	if m.lobe[side] > 0 {
		return s.byLobe(l, r, m, side, n, plain)
	}
	image := Receptor{At: r3.Sub(r.At, r3.Scale(2*over, m.normal)), Axis: m.mirrored(r.Axis), Response: r.Response, Skip: r.Skip}
	p := l.sample(&image, n[0], n[1], plain)
	if !(p.value > 0) || (r3.Dot(m.normal, p.point)-m.offset)*over <= 0 {
		return e
	}
	way := r3.Sub(image.At, p.point)
	t, _, ok := m.meets(p.point, way, 1)
	if !ok {
		return e
	}
	at := r3.Add(p.point, r3.Scale(t, way))
	return s.over(l, r, p.point, at).Times(m.shine[side]).Scale(p.value)
}

// over is what is left of a lamp's light on its way from a point of it over a place to a receptor.
func (s *set) over(l *lamp, r *Receptor, point, at r3.Vec) (e colour.RGB) {
	if l.stopped(point, at) {
		return e
	}
	there := Receptor{At: at, Skip: r.Skip}
	return s.reaching(&there, point).Times(s.reaching(r, at)).Times(l.output)
}

// byLobe is what a lamp gives to a receptor by a place of a board that sends it on in a lobe: one place of it is as likely as
// any other.
func (s *set) byLobe(l *lamp, r *Receptor, m *face, side int, n [4]float64, plain *PCG) (e colour.RGB) {
	at, area := m.place(n[2], n[3])
	normal := r3.Scale(float64(1-2*side), m.normal)
	way := r3.Sub(r.At, at)
	far := r3.Norm(way)
	out := r3.Scale(1/far, way)
	leaves := r.weigh(out) * r3.Dot(out, normal) / (far * far) * area
	on := Receptor{At: at, Axis: normal, Skip: r.Skip}
	p := l.sample(&on, n[0], n[1], plain)
	if !(leaves > 0) || !(p.value > 0) {
		return e
	}
	in := r3.Unit(r3.Sub(p.point, at))
	cos := -r3.Dot(m.mirrored(in), out)
	power := m.lobe[side]
	if cos <= 0 {
		return e
	}
	flattest := max(r3.Dot(in, normal), r3.Dot(out, normal))
	value := p.value * leaves * (power + 1) / (2 * math.Pi) * math.Pow(cos, power) / flattest
	return s.over(l, r, p.point, at).Times(m.shine[side]).Scale(value)
}
