package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// The rays by which it is found where the light of a lamp lands: rings about its axis, closer to it by equal
// ratios, and rays in each.
const (
	emitRings     = 32
	emitRound     = 32
	emitInnermost = 1e-3 // of a half turn: the innermost ring
	emitLeak      = 2e-3 // of the flux that may miss: a ray may slip through the rim of two sheets
	emitStride    = 29   // of the points of the opening from ray to ray
)

// EmitRays implements radiosity.Lamp.
func (b *surfaceLamp) EmitRays(land func(h solid.Hit, at r3.Vec, flux colour.RGB) bool) (all bool) {
	l := b.l
	if l.screened != nil {
		return false // how much of it its own screens stop, so few rays tell badly
	}
	sent := b.eachRay(func(_, _ r3.Vec, weight float64) bool { return true })
	if sent == 0 {
		return false
	}
	scale := l.flux / sent
	missed := 0.0
	b.eachRay(func(o, d r3.Vec, weight float64) bool {
		hit, ok := b.w.bvh.First(o, d, nil)
		part := weight * scale
		if !ok || hit.Skin.Clear() || hit.Skin.Specular() != (colour.RGB{}) || !land(hit, r3.Add(o, r3.Scale(hit.T, d)), colour.RGB{part, part, part}) {
			missed += weight
		}
		return missed <= emitLeak*sent
	})
	return missed <= emitLeak*sent
}

// eachRay sends rays out of the lamp, each with a weight by the intensity, until ray says no, and gives the
// sum of the weights.
func (b *surfaceLamp) eachRay(ray func(o, d r3.Vec, weight float64) bool) (sum float64) {
	l := b.l
	inner := 0.0
	for i := range emitRings {
		outer := math.Pi * math.Pow(emitInnermost, 1-float64(i+1)/emitRings)
		sin, cos := math.Sincos((inner + outer) / 2)
		angle := (math.Cos(inner) - math.Cos(outer)) / emitRound // solid, by 2 pi
		inner = outer
		for k := range emitRound {
			s, c := math.Sincos(2 * math.Pi * (float64(k) + 0.5*float64(i%2)) / emitRound)
			side := r3.Add(r3.Scale(c, l.right), r3.Scale(s, l.up))
			d := r3.Add(r3.Scale(cos, l.axis), r3.Scale(sin, side))
			start := b.points[(i*emitRound+k)*emitStride%len(b.points)]
			weight := l.intensity(d) * l.relative(start) * angle
			if weight <= 0 {
				continue
			}
			sum += weight
			if !ray(start, d, weight) {
				return sum
			}
		}
	}
	return sum
}
