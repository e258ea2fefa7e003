package truth

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan"
	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// set is a set-up made ready: what stops light, what lets it pass, what only a spot meter sees, and the lamps.
type set struct {
	opaque  *tree
	panes   []face
	cloths  []face // those of the panes that scatter light as well
	cloth   bool   // whether anything lets light through scattered
	mirrors []face // those of the opaque that mirror
	bodies  *tree
	lamps   []*lamp
	reach   int // how many surfaces a walk from a lamp meets
}

func newSet(s *plan.Setup) *set {
	opaque, panes := facesOf(&s.Set)
	bodies, _ := facesOf(&s.Bodies)
	t := &set{opaque: newTree(opaque), panes: panes, bodies: newTree(bodies), reach: maxLanded}
	for i := range s.Lights {
		l := newLamp(&s.Lights[i])
		l.shade, l.leaves = shadeOf(l, s.Lights[i].Head.Source.Distribution), leavesOf(l, s.Lights[i].Head.Doors)
		if l.flux > 0 && l.output != (colour.RGB{}) {
			t.lamps = append(t.lamps, l)
		}
	}
	for _, f := range panes {
		if f.scatter != [2]colour.RGB{} {
			t.cloths = append(t.cloths, f)
		}
	}
	for _, f := range opaque {
		if f.shine != [2]colour.RGB{} {
			t.mirrors = append(t.mirrors, f)
		}
	}
	t.cloth = slices.ContainsFunc(append(opaque, panes...), func(f face) bool { return f.scatter != [2]colour.RGB{} })
	t.shareOut()
	return t
}

// shareOut gives each lamp its share of the rays that lamps send, by its flux.
func (s *set) shareOut() {
	all := 0.0
	for _, l := range s.lamps {
		all += l.flux * l.output.Y()
	}
	for _, l := range s.lamps {
		l.share = l.flux * l.output.Y() / all
	}
}

// facesOf makes faces of solids, those of clear sheets apart. The inside of a prism is black.
func facesOf(s *solid.Set) (opaque, panes []face) {
	for i := range s.Prisms {
		p := &s.Prisms[i]
		for _, corners := range prismFaces(p) {
			if f, ok := newFace(p.ID, corners); ok {
				f.reflect[0] = p.Skin.Reflect
				opaque = append(opaque, f)
			}
		}
	}
	for i := range s.Sheets {
		sheet := &s.Sheets[i]
		f, ok := newFace(sheet.ID, sheet.Corners)
		f.reflect[0], f.shine[0] = mattAndShine(&sheet.Front)
		f.reflect[1], f.shine[1] = mattAndShine(&sheet.Back)
		f.lobe = [2]float64{lobePower(sheet.Front.Lobe), lobePower(sheet.Back.Lobe)}
		f.pass = [2]colour.RGB{sheet.Front.Direct, sheet.Back.Direct}
		f.glass = sheet.Front.Glass
		f.keepGlass()
		f.scatter = [2]colour.RGB{sheet.Front.Diffuse, sheet.Back.Diffuse}
		switch {
		case !ok:
		case sheet.Front.Clear() || sheet.Back.Clear():
			panes = append(panes, f)
		default:
			opaque = append(opaque, f)
		}
	}
	return opaque, panes
}

// prismFaces are the polygons around a prism, each counter-clockwise from outside.
func prismFaces(p *solid.Prism) [][]r3.Vec {
	base := p.Base
	twice := 0.0
	for i, a := range base {
		twice += r2.Cross(a, base[(i+1)%len(base)])
	}
	n := len(base)
	low, high := make([]r3.Vec, n), make([]r3.Vec, n)
	for i, c := range base {
		if twice < 0 {
			i = n - 1 - i
		}
		low[i], high[i] = r3.Vec{X: c.X, Y: c.Y, Z: p.Z0}, r3.Vec{X: c.X, Y: c.Y, Z: p.Z1}
	}
	all := [][]r3.Vec{high}
	bottom := make([]r3.Vec, n)
	for i := range low {
		bottom[n-1-i] = low[i]
		k := (i + 1) % n
		all = append(all, []r3.Vec{low[i], low[k], high[k], high[i]})
	}
	return append(all, bottom)
}

// passed is what the panes leave of light that reaches o along a ray from as far away as far.
func (s *set) passed(o, d r3.Vec, far float64) colour.RGB {
	factor := colour.RGB{1, 1, 1}
	for i := range s.panes {
		f := &s.panes[i]
		if _, front, ok := f.meets(o, d, far); ok {
			side := 0
			if front { // the light meets the other side
				side = 1
			}
			factor = factor.Times(f.pass[side]).Scale(f.fromAside(d))
		}
	}
	return factor
}

// hit is a place on a surface, seen from one side.
type hit struct {
	at, normal r3.Vec
	reflect    colour.RGB
	passed     colour.RGB // what panes leave of light from there
}

// look finds the first surface on a ray.
func (s *set) look(o, d r3.Vec, skip []solid.ID) (h hit, ok bool) {
	f, distance, front := s.opaque.first(o, d, math.Inf(1), skip)
	if f == nil {
		return h, false
	}
	return s.hitOn(o, d, f, distance, front), true
}

func (s *set) hitOn(o, d r3.Vec, f *face, distance float64, front bool) hit {
	h := hit{at: r3.Add(o, r3.Scale(distance, d)), normal: f.normal, reflect: f.reflect[0]}
	if !front {
		h.normal, h.reflect = r3.Scale(-1, f.normal), f.reflect[1]
	}
	h.passed = s.passed(o, d, distance)
	return h
}

// resolveSpot resolves a spot meter to a flat receptor on the surface that it looks at, and the factor from its
// illuminance to the luminance seen.
func (s *set) resolveSpot(r Receptor) (flat Receptor, gain colour.RGB) {
	f, distance, front := s.opaque.first(r.At, r.Axis, math.Inf(1), r.Skip)
	if body, nearer, before := s.bodies.first(r.At, r.Axis, distance, r.Skip); body != nil {
		f, distance, front = body, nearer, before
	}
	if f == nil {
		return r, colour.RGB{}
	}
	h := s.hitOn(r.At, r.Axis, f, distance, front)
	return Receptor{At: h.at, Axis: h.normal, Skip: r.Skip}, h.reflect.Times(h.passed).Scale(1 / math.Pi)
}

// sample picks a point of the lamp by two numbers from 0 to 1; what more a shade takes comes from plain.
func (l *lamp) sample(r *Receptor, u, w float64, plain *PCG) sight {
	if l.shade != nil {
		return l.shade.sampleFrom(r, u, w, plain)
	}
	return l.sampleFrom(r, u, w)
}
