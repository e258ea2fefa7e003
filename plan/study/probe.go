package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light"
	"scrimshaw/plan/photometry"
	"scrimshaw/plan/solid"
)

// Probe returns the light, lx, at any place of a field by its two distances, for the edges of shadows that fall between
// its points. Point sources throw hard edges, so their direct light is traced by the rays that meters use. What comes
// straight from luminous faces is traced where the points about the place differ, as where the shadow of a near thing has
// hardly any width, and interpolated where they are alike; what the surfaces of the set send back is interpolated, from
// points on the same side of a card or a wall. One goroutine may use the function.
func (s *Study) Probe(f *Field) func(r2.Vec) float64 {
	hard, soft := s.split()
	p := prober{Field: f, set: s.World.BVH(), hard: s.evaluator(hard), soft: s.evaluator(soft)}
	p.back, p.even = make([]float32, len(f.Lux)), make([]float32, len(f.Lux))
	all := s.fieldLevels()
	levels := light.Levels{light.FromFaces: all[light.FromFaces]}
	for _, e := range soft {
		levels[e.Name] = all[e.Name]
	}
	s.Basis.Field(s.index(f), levels, p.even)
	s.Basis.ReflectedField(s.index(f), levels, p.back)
	for n, v := range p.back {
		p.even[n] -= v
	}
	s.Basis.ReflectedField(s.index(f), all, p.back)
	return p.read
}

// prober reads a field anywhere.
type prober struct {
	*Field
	set        *solid.BVH
	back       []float32 // by point, lx: what surfaces send there
	even       []float32 // by point, lx: what comes straight from faces
	hard, soft func(light.Receptor) float64
}

// evaluator traces the direct light of some emitters; nil where there are none.
func (s *Study) evaluator(some []light.Emitter) func(light.Receptor) float64 {
	if len(some) == 0 {
		return nil
	}
	return s.World.QuickEvaluator(some, s.Levels)
}

func (p *prober) read(at r2.Vec) float64 {
	l := &p.Lattice
	corner, step := p.Corner()
	steps := r2.Scale(1/step, r2.Sub(at, corner))
	place := p.At(at)
	r := light.Receptor{At: place, Axis: l.Axis(place), Response: l.Response, Skip: l.Skip}
	value := 0.0
	if p.hard != nil {
		value = p.hard(r)
	}
	switch {
	case p.soft == nil:
	case alike(l, p.even, steps, value):
		value += interpolate(l, p.even, steps, nil)
	default:
		value += p.soft(r)
	}
	if alike(l, p.back, steps, value) {
		return value + interpolate(l, p.back, steps, nil)
	}
	return value + interpolate(l, p.back, steps, func(u, v int) bool { return !p.set.Blocked(place, l.At(u, v), l.Skip) })
}

// alike says whether the points about a place, in steps from the first, differ too little for an edge to show between
// them beside other light, lx.
func alike(l *light.Lattice, values []float32, p r2.Vec, other float64) bool {
	const share = 0.12 // of all the light: a sixth of a stop
	low, high := float32(math.Inf(1)), float32(0)
	for k := range 4 {
		if u, v := int(math.Floor(p.X))+k&1, int(math.Floor(p.Y))+k>>1; u >= 0 && v >= 0 && u < l.NU && v < l.NV && !l.Masked(u, v) {
			low, high = min(low, values[v*l.NU+u]), max(high, values[v*l.NU+u])
		}
	}
	return float64(high-low) <= share*(float64(low)+other)
}

// split parts the lights into point sources and those with an extent.
func (s *Study) split() (hard, soft []light.Emitter) {
	for _, e := range light.Emitters(s.Setup) {
		if e.Source.Opening.Form == photometry.Point {
			hard = append(hard, e)
		} else {
			soft = append(soft, e)
		}
	}
	return hard, soft
}

// index is the place of a field among the lattices of the basis.
func (s *Study) index(f *Field) int {
	for i := range s.Fields {
		if &s.Fields[i] == f {
			return i
		}
	}
	return 0
}

// interpolate is bilinear between the four points round p, in steps from the first, leaving out those without data, and
// those that seen leaves out where it is not nil and some are left.
func interpolate(l *light.Lattice, values []float32, p r2.Vec, seen func(u, v int) bool) float64 {
	x, y := p.X, p.Y
	i, j := int(math.Floor(x)), int(math.Floor(y))
	x, y = x-float64(i), y-float64(j)
	sum, weight := 0.0, 0.0
	for k, w := range [4]float64{(1 - x) * (1 - y), x * (1 - y), (1 - x) * y, x * y} {
		u, v := i+k&1, j+k>>1
		if u < 0 || v < 0 || u >= l.NU || v >= l.NV || l.Masked(u, v) || seen != nil && w > 0 && !seen(u, v) {
			continue
		}
		sum += w * float64(values[v*l.NU+u])
		weight += w
	}
	switch {
	case weight > 0:
		return sum / weight
	case seen != nil:
		return interpolate(l, values, p, nil)
	}
	return 0
}
