package radiosity

import (
	"math"

	"scrimshaw/plan/colour"
	"scrimshaw/plan/solid"
)

// A cloth passes light straight on and scatters light through: it is a pane and has faces. A ray that meets it either
// passes or ends there, by turns in the proportion of what passes, and counts for as much more as the other way would have
// been taken. What falls on one of its faces shines from the other, too.

// veil is a sheet that scatters what it lets through.
type veil struct {
	passing float64 // share of rays that pass
	turn    float64 // by how much of a whole the turns go on from one ray to the next: irrational
}

// mostPassing bounds the share of rays that pass, so that what the cloth itself sends is met.
const mostPassing = 0.9

// ofCloth is the share of the longest side of other patches that those of cloth have: cloth stands near faces, and light
// that comes through one to the next is uneven.
const ofCloth = 0.5

// veils are those of a set.
type veils map[solid.ID]veil

// add notes a sheet that lets light through scattered, with turns of its own, and gives the share of rays that end there.
func (v veils) add(s *solid.Sheet, turn float64) (met float64) {
	passing := min(max(s.Front.Direct.Y(), s.Back.Direct.Y()), mostPassing)
	v[s.ID] = veil{passing: passing, turn: turn}
	return 1 - passing
}

// passes says whether a ray passes the cloth.
func (v veil) passes(now moment) bool { return v.at(now) < v.passing }

// at is the place of a ray on 0 to 1.
func (v veil) at(now moment) float64 {
	_, turn := math.Modf(float64(now.number+1) * (v.turn * now.stretch))
	return turn
}

// weigh multiplies what clear sheets let pass by how much seldomer rays pass them than others.
func (v veils) weigh(panes []solid.Pane) {
	for i := range panes {
		if w, is := v[panes[i].ID]; is && w.passing > 0 {
			panes[i].Ahead = panes[i].Ahead.Scale(1 / w.passing)
		}
	}
}

// leastReflect is the least that a face of a cloth is taken to return, so that what comes through is a share of it.
const leastReflect = 1e-6

// through is what shines from a face by what falls on the face behind it, as a share of what the same light before it would.
func through(reflect, diffuse colour.RGB) (share colour.RGB) {
	for c := range share {
		share[c] = diffuse[c] / reflect[c]
	}
	return share
}
