package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// caster is a solid as it throws shadows.
type caster struct {
	id     solid.ID
	size   float64  // how much it shades, roughly: m²
	base   []r3.Vec // of a prism: counter-clockwise, at z = 0; of a flat caster: its corners
	z0, z1 float64
	flat   bool         // a sheet, or a side of a prism
	sheet  *solid.Sheet // nil for a prism and its sides
	normal r3.Vec       // of a flat caster, from its front; not of unit length
}

// prismCaster prepares a prism; not ok where it stops no light.
func prismCaster(p *solid.Prism) (c caster, ok bool) {
	c = caster{id: p.ID, z0: p.Z0, z1: p.Z1}
	round, area := 0.0, 0.0
	for i, a := range p.Base {
		b := p.Base[(i+1)%len(p.Base)]
		round += r2.Norm(r2.Sub(b, a))
		area += r2.Cross(r2.Sub(a, p.Base[0]), r2.Sub(b, p.Base[0])) / 2
		c.base = append(c.base, r3.Vec{X: a.X, Y: a.Y})
	}
	if area < 0 {
		slices.Reverse(c.base)
	}
	c.size = round*(p.Z1-p.Z0) + math.Abs(area)
	return c, area != 0 && p.Z1 > p.Z0 && isFinite(c.size)
}

// sheetCaster prepares a sheet; not ok where it stops no light.
func sheetCaster(s *solid.Sheet) (c caster, ok bool) {
	c, ok = flatCaster(s.ID, s.Corners)
	c.sheet = s
	return c, ok
}

func flatCaster(id solid.ID, corners []r3.Vec) (c caster, ok bool) {
	c = caster{id: id, base: corners, flat: true, z0: math.Inf(1), z1: math.Inf(-1)}
	for i, p := range corners {
		c.z0, c.z1 = min(c.z0, p.Z), max(c.z1, p.Z)
		if i >= 2 {
			c.normal = r3.Add(c.normal, r3.Cross(r3.Sub(corners[i-1], corners[0]), r3.Sub(p, corners[0])))
		}
	}
	c.size = r3.Norm(c.normal)
	return c, c.size > 0 && isFinite(c.size)
}

// sides are the sides of a prism that can be met from a point of light.
func (c *caster) sides() (all []caster) {
	add := func(corners []r3.Vec) {
		if side, ok := flatCaster(c.id, corners); ok {
			all = append(all, side)
		}
	}
	n := len(c.base)
	foot, top := make([]r3.Vec, n), make([]r3.Vec, n)
	for i, p := range c.base {
		foot[n-1-i], top[i] = r3.Vec{X: p.X, Y: p.Y, Z: c.z0}, r3.Vec{X: p.X, Y: p.Y, Z: c.z1}
	}
	for i, a := range c.base {
		b := c.base[(i+1)%n]
		add([]r3.Vec{{X: a.X, Y: a.Y, Z: c.z0}, {X: b.X, Y: b.Y, Z: c.z0}, {X: b.X, Y: b.Y, Z: c.z1}, {X: a.X, Y: a.Y, Z: c.z1}})
	}
	add(top)
	add(foot)
	return all
}

// facesAway says whether a side of a prism is turned away from p: the light that leaves through it has
// come in through another.
func (c *caster) facesAway(p r3.Vec) bool {
	return c.flat && c.sheet == nil && r3.Dot(c.normal, r3.Sub(p, c.base[0])) <= 0
}

func isFinite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// transmittance is what a sheet passes straight on of light that comes from p.
func (c *caster) transmittance(p r3.Vec) colour.RGB {
	if r3.Dot(c.normal, r3.Sub(p, c.sheet.Corners[0])) > 0 {
		return c.sheet.Front.Direct
	}
	return c.sheet.Back.Direct
}

// dims says whether less than half of the light from a point passes straight on.
func (c *caster) dims(from r3.Vec) bool {
	pass := c.transmittance(from)
	return max(pass[0], pass[1], pass[2]) < 0.5
}

// behind says whether the whole caster lies behind the plane of a face, where no light goes.
func (c *caster) behind(at, axis r3.Vec) bool {
	for _, p := range c.base {
		if !c.flat {
			p.Z = c.z0
			if axis.Z > 0 {
				p.Z = c.z1
			}
		}
		if r3.Dot(axis, r3.Sub(p, at)) > 0 {
			return false
		}
	}
	return true
}

// coloured says whether a factor changes the colour of light.
func coloured(f colour.RGB) bool { return f[0] != f[1] || f[1] != f[2] }
