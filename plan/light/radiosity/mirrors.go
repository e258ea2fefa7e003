package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A ray that meets a mirror goes on mirrored, from mirror to mirror. Where the mirror reflects some light diffusely as well, a
// ray goes on or ends there by turns, in the proportion of the two, as at a cloth.

// mostMirrors is how many mirrors a ray meets before what it brings is lost: of the light between two good ones face to face 1/700 is
// left then.
const mostMirrors = 40

// Where it mirrors in a lobe, a ray goes on somewhere in that, as likely as the lobe is bright there, and the flatter than it has
// come the seldomer: that is what the lobe is less bright toward there.

// specular is a side of a mirror.
type specular struct {
	turns  veil
	factor colour.RGB // of what goes on, times how much seldomer rays go on than meet the mirror
	power  float64    // of the lobe; 0 of a flat mirror
	lobe   [3]veil    // by which turns rays spread in the lobe, and go on
}

// mirrorSide is a sheet and which of its sides.
type mirrorSide struct {
	id    solid.ID
	front bool
}

// mirrors are those of a set.
type mirrors map[mirrorSide]*specular

// meet says whether a ray goes on mirrored from what it has met, where to, and what is left of its light
// then. None is left where it would go into the mirror.
func (m mirrors) meet(h *solid.Hit, d r3.Vec, now moment) (to r3.Vec, factor colour.RGB, is bool) {
	s := m[mirrorSide{h.ID, h.Front}]
	if !s.goesOn(now) {
		return to, factor, false
	}
	to = solid.Mirrored(d, h.Normal)
	if s.power == 0 {
		return to, s.factor, true
	}
	to = s.inLobe(to, now)
	if s.lobe[2].at(now)*-r3.Dot(d, h.Normal) >= r3.Dot(to, h.Normal) {
		return to, colour.RGB{}, true
	}
	return to, s.factor, true
}

// inLobe is a direction in the lobe about another.
func (s *specular) inLobe(middle r3.Vec, now moment) r3.Vec {
	cos := math.Pow(s.lobe[0].at(now), 1/(s.power+1))
	y, x := math.Sincos(2 * math.Pi * s.lobe[1].at(now))
	round := math.Sqrt(1 - cos*cos)
	frame := basisOf(middle)
	return r3.Add(r3.Scale(cos, middle), r3.Add(r3.Scale(round*x, frame.u), r3.Scale(round*y, frame.v)))
}

// goesOn says whether a ray goes on mirrored from a surface.
func (s *specular) goesOn(now moment) bool {
	return s != nil && (s.turns.passing == 1 || s.turns.passes(now))
}
