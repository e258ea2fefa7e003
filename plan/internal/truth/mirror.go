package truth

import (
	"math"

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

// lobePower is the power of a cosine that has half of its value at half of an angle, degrees; 0 for none.
func lobePower(degrees float64) float64 {
	if degrees == 0 {
		return 0
	}
	return -math.Ln2 / math.Log(math.Cos(degrees*math.Pi/360))
}

// shineFrom is what a mirror sends on of light that comes to the side on which a place lies.
func (f *face) shineFrom(at r3.Vec) colour.RGB { return f.shine[f.sideOf(at)] }

// sideOf is the side of a face on which a place lies: 0 for the front.
func (f *face) sideOf(at r3.Vec) int {
	if r3.Dot(f.normal, at) > f.offset {
		return 0
	}
	return 1
}

// mirrored is a direction after it has met a face.
func (f *face) mirrored(d r3.Vec) r3.Vec {
	return r3.Sub(d, r3.Scale(2*r3.Dot(d, f.normal), f.normal))
}

// byMirror is what a point of a lamp gives to a receptor by a mirror.
func (s *set) byMirror(l *lamp, r *Receptor, m *face, n [4]float64, plain *PCG) (e colour.RGB) {
	over := r3.Dot(m.normal, r.At) - m.offset
	shine := m.shineFrom(r.At)
	if side := m.sideOf(r.At); m.lobe[side] > 0 {
		return s.byLobe(l, r, m, side, n, plain)
	}
	u, v := n[0], n[1]
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

// byLobe is what a lamp gives to a receptor by a place of a board that sends it on in a lobe: one place of it is as likely as
// any other.
func (s *set) byLobe(l *lamp, r *Receptor, m *face, side int, n [4]float64, plain *PCG) (e colour.RGB) {
	c := m.corners
	one, two := r3.Sub(c[1], c[0]), r3.Sub(c[3], c[0])
	at := r3.Add(c[0], r3.Add(r3.Scale(n[2], one), r3.Scale(n[3], two)))
	normal := r3.Scale(float64(1-2*side), m.normal)
	way := r3.Sub(r.At, at)
	far := r3.Norm(way)
	out := r3.Scale(1/far, way)
	leaves := r.weigh(out) * r3.Dot(out, normal) / (far * far) * r3.Norm(r3.Cross(one, two))
	on := Receptor{At: at, Axis: normal, Skip: r.Skip}
	p := l.sample(&on, n[0], n[1], plain)
	if !(leaves > 0) || !(p.value > 0) || l.stopped(p.point, at) {
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
	back := Receptor{At: at, Skip: r.Skip}
	return s.reaching(&back, p.point).Times(s.reaching(r, at)).Times(m.shine[side]).Times(l.drive).Scale(value)
}

// spread picks a direction in the lobe about a mirrored one, and gives the weight that it counts with; not ok where it leads
// into the face.
func (f *face) spread(d r3.Vec, front bool, p *points) (to r3.Vec, weight float64, ok bool) {
	side := 0
	if !front {
		side = 1
	}
	to = f.mirrored(d)
	power := f.lobe[side]
	if power == 0 {
		return to, 1, true
	}
	to = tiltedFrom(to, math.Pow(p.plain.Float(), 1/(power+1)), p.plain.Float())
	leaves, comes := math.Abs(r3.Dot(d, f.normal)), r3.Dot(to, f.normal)*float64(1-2*side)
	return to, comes / max(leaves, comes), comes > 0
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
