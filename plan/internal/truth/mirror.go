package truth

import (
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A mirror sends light on as if it came from behind it. What a lamp gives by one is found by the image of the receptor: the
// way from a point of the lamp to that image leads through the mirror where the light meets it. A walk that meets a mirror
// goes on mirrored. From a lamp over two mirrors nothing is looked for.

// mattAndShine are the shares of light that a side of a sheet reflects diffusely and that it mirrors.
func mattAndShine(s *solid.Skin) (matt, shine colour.RGB) {
	if s.Mirror == 0 || s.Clear() {
		return s.Reflect, shine
	}
	return s.Reflect.Scale(1 - s.Mirror), s.Reflect.Scale(s.Mirror)
}

// shineFrom is what a mirror sends on of light that comes to the side on which a place lies.
func (f *face) shineFrom(at r3.Vec) colour.RGB {
	if r3.Dot(f.normal, at) > f.offset {
		return f.shine[0]
	}
	return f.shine[1]
}

// mirrored is a direction after it has met a face.
func (f *face) mirrored(d r3.Vec) r3.Vec {
	return r3.Sub(d, r3.Scale(2*r3.Dot(d, f.normal), f.normal))
}

// byMirror is what a point of a lamp gives to a receptor by a mirror.
func (s *set) byMirror(l *lamp, r *Receptor, m *face, u, v float64, plain *PCG) (e colour.RGB) {
	over := r3.Dot(m.normal, r.At) - m.offset
	shine := m.shineFrom(r.At)
	if shine == (colour.RGB{}) || over*over < touching*touching {
		return e
	}
	image := Receptor{At: r3.Sub(r.At, r3.Scale(2*over, m.normal)), Axis: m.mirrored(r.Axis), Weight: r.Weight, Skip: r.Skip}
	p := l.sample(&image, u, v, plain)
	if !(p.value > 0) || (r3.Dot(m.normal, p.point)-m.offset)*over <= 0 {
		return e
	}
	way := r3.Sub(image.At, p.point)
	t, _, ok := m.meets(p.point, way, 1)
	if !ok {
		return e
	}
	at := r3.Add(p.point, r3.Scale(t, way))
	if l.stopped(p.point, at) {
		return e
	}
	onMirror := Receptor{At: at, Skip: r.Skip}
	first, last := s.reaching(&onMirror, p.point), s.reaching(r, at)
	return first.Times(last).Times(shine).Times(l.drive).Scale(p.value)
}

// shines says whether a walk that has met a face goes on mirrored, as chance decides, and how much what comes of it counts.
func shines(f *face, front bool, p *points) (weight colour.RGB, on bool) {
	side := 0
	if !front {
		side = 1
	}
	shine, matt := f.shine[side].Y(), f.reflect[side].Y()
	if shine == 0 {
		return colour.RGB{1, 1, 1}, false
	}
	share := shine / (shine + matt)
	if p.plain.Float() < share {
		return f.shine[side].Scale(1 / share), true
	}
	return colour.RGB{1, 1, 1}.Scale(1 / (1 - share)), false
}
