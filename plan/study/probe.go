package study

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/light"
	"scrimshaw/plan/photometry"
)

// Probe returns the light, lx, at any place of a field by its two distances, for the edges of shadows that fall between
// its points. Points sources throw hard edges, so their direct light is traced by the rays that meters
// use; what luminous faces and the surfaces of the set give is smooth at the lattice's own scale and is
// interpolated from it. One goroutine may use the function.
func (s *Study) Probe(f *Field) func(r2.Vec) float64 {
	hard, soft := s.split()
	var evaluate func(light.Receptor) float64
	if len(hard) > 0 {
		evaluate = s.World.Evaluator(hard, s.Levels)
	}
	smooth := s.smooth(f, hard, soft)
	l := &f.Lattice
	corner, step := f.Corner()
	return func(p r2.Vec) float64 {
		value := interpolate(l, smooth, r2.Scale(1/step, r2.Sub(p, corner)))
		if evaluate != nil {
			at := f.At(p)
			value += evaluate(light.Receptor{At: at, Axis: l.Axis(at), Response: l.Response, Skip: l.Skip})
		}
		return value
	}
}

// smooth is the light at the points of a field, lx, without what comes straight from point sources.
func (s *Study) smooth(f *Field, hard []light.Emitter, soft light.Levels) []float32 {
	all, back := make([]float32, len(f.Lux)), make([]float32, len(f.Lux))
	s.Basis.Field(s.index(f), soft, all)
	traced := light.Levels{}
	for _, e := range hard {
		traced[e.Name] = s.Levels[e.Name]
	}
	s.Basis.ReflectedField(s.index(f), traced, back)
	for n, v := range back {
		all[n] += v
	}
	return all
}

// split parts the lights into point sources and, as a drive, those with an extent.
func (s *Study) split() (hard []light.Emitter, soft light.Levels) {
	soft = light.Levels{}
	for _, e := range light.Emitters(s.Setup) {
		if e.Source.Opening.Form == photometry.Point {
			hard = append(hard, e)
		} else {
			soft[e.Name] = s.Levels[e.Name]
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

// interpolate is bilinear between the four points round p, in steps from the first, leaving out those
// without data.
func interpolate(l *light.Lattice, values []float32, p r2.Vec) float64 {
	x, y := p.X, p.Y
	i, j := int(math.Floor(x)), int(math.Floor(y))
	x, y = x-float64(i), y-float64(j)
	sum, weight := 0.0, 0.0
	for k, w := range [4]float64{(1 - x) * (1 - y), x * (1 - y), (1 - x) * y, x * y} {
		u, v := i+k&1, j+k>>1
		if u < 0 || v < 0 || u >= l.NU || v >= l.NV || l.Masked(u, v) {
			continue
		}
		sum += w * float64(values[v*l.NU+u])
		weight += w
	}
	if weight == 0 {
		return 0
	}
	return sum / weight
}
