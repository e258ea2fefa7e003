package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A ray that meets a mirror goes on mirrored, from mirror to mirror. Where the mirror reflects some light diffusely as well, a
// ray goes on or ends there by turns, in the proportion of the two, as at a cloth.

// mostMirrors is how many mirrors a ray meets before what it brings is lost: between two good ones face to face a quarter of
// the light is left then.
const mostMirrors = 8

// specular is a side of a mirror.
type specular struct {
	turns  veil
	factor colour.RGB // of what goes on, times how much seldomer rays go on than meet the mirror
}

// mirrorSide is a sheet and which of its sides.
type mirrorSide struct {
	id    solid.ID
	front bool
}

// mirrors are those of a set.
type mirrors map[mirrorSide]*specular

// addSide takes up one side of an opaque sheet.
func (m *mesh) addSide(side mirrorSide, faces []face, group int32, skin *solid.Skin) {
	shiny, matt := skin.Specular(), skin.Matt()
	first := len(m.faces)
	if shiny == (colour.RGB{}) {
		m.add(side.id, faces, group, skin)
		return
	}
	on := shiny.Y() / (shiny.Y() + matt.Y())
	s := &specular{veil{passing: on, turn: math.Sqrt(prime(len(m.veils) + len(m.mirrors)))}, shiny.Scale(1 / on)}
	m.mirrors[side] = s
	m.noteColour(shiny)
	if on < 1 {
		matt = matt.Scale(1 / (1 - on))
	}
	m.add(side.id, faces, group, &solid.Skin{Reflect: matt})
	for i := first; i < len(m.faces); i++ {
		m.faces[i].met, m.faces[i].specular = 1-on, s
	}
}

// mirrored says whether a ray, by its number, goes on mirrored from what it has met, and what is left of its light then.
func (m *mesh) mirrored(h *solid.Hit, number int) (factor colour.RGB, is bool) {
	s := m.mirrors[mirrorSide{h.ID, h.Front}]
	if !s.goesOn(number) {
		return factor, false
	}
	return s.factor, true
}

// goesOn says whether a ray, by its number, goes on mirrored from a surface.
func (s *specular) goesOn(number int) bool {
	return s != nil && (s.turns.passing == 1 || s.turns.passes(number))
}

// mirror follows the rays of a drawing on that have met mirrors.
func (p *depthBuffer) mirror(v *view, d r3.Vec, hits []uint32) {
	p.tracer.number = p.number
	for n, k := range p.seen {
		if k < 0 || !p.m.faces[k].specular.goesOn(p.number) {
			continue
		}
		hits[n], _ = p.tracer.trace(v.at(n), d, p.skip)
		if len(p.panes) > 0 {
			p.passed[n] = false
		}
	}
}

// turned is a direction mirrored at a surface.
func turned(d, normal r3.Vec) r3.Vec { return r3.Sub(d, r3.Scale(2*r3.Dot(d, normal), normal)) }
