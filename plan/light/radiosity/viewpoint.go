package radiosity

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"scrimshaw/plan/light/internal/sobol"
	"scrimshaw/plan/light/receptor"
	"scrimshaw/plan/solid"
)

// viewpoint is where hot elements are looked at from: a patch, a cell of one, or a point of a lattice.
type viewpoint struct {
	middle, normal r3.Vec
	reach          float64 // m from the middle, how far it may lie behind the plane of what it looks at
	size           float64 // m², about the square of how far the places are apart that looks start from
	response       receptor.Response
	skip           []solid.ID // what is not there for it
	samples        int        // looks at what is not close
	closeSamples   int        // looks at each part that is close
	besideSamples  float64    // looks, by the number of parts, at those that only their elements are close for
	shift          sobol.Sample
	offset         float64 // of the first far look, 0 to 1
	standsFor      float64 // so many viewpoints that look at what is not close
	turn, turns    int     // its place among those that look in turn, and how many these are
	face           *face   // of the patch that the looks are spread over; nil where they start in the middle
	patch          *patch
}

// at is the place of a look, by a point of the unit square.
func (v *viewpoint) at(x, y float64) r3.Vec {
	if v.face == nil {
		return v.middle
	}
	return placeOn(v.face, v.patch, x, y)
}

// ofPatch is the viewpoint of a patch.
func (t *Transport) ofPatch(slot int) viewpoint {
	p := &t.patches[slot]
	f := &t.mesh.faces[p.face]
	// A patch on which more hangs than on most looks more often.
	samples := t.quality.HotSamples * int(min(mostHotSamples, max(1, p.importance*float64(len(t.patches)))))
	shift := sobol.Shift(p.number)
	return viewpoint{
		middle: f.at(p.x+f.du/2, p.y+f.dv/2), normal: f.n, reach: f.du, size: p.whole() / math.Pi, shift: shift, offset: offsetOf(shift),
		samples: samples, closeSamples: closeSamples(samples), besideSamples: besideShare * float64(samples), turns: 1, standsFor: 1,
		face: f, patch: p,
	}
}

// offsetOf is an offset that has nothing to do with places and directions.
func offsetOf(shift sobol.Sample) float64 { return sobol.Unit(shift[0] ^ shift[3]) }

// mostHotSamples is how many times as often, at most, a patch looks on which much hangs.
const mostHotSamples = 16

// closeSamples is how often a part close by is looked at by who looks so often at the others.
func closeSamples(samples int) int { return max(1, samples/(hotAcross*hotAcross/2)) }

// cellSamples is how many times as often as a patch a cell looks: it has fewer rays.
const cellSamples = 4

// ofCell is the viewpoint of a face of a cell.
func (t *Transport) ofCell(i int, normal r3.Vec) viewpoint {
	c := &t.cells[i]
	samples := cellSamples * t.quality.HotSamples
	shift := sobol.Shift(uint32(i))
	return viewpoint{middle: c.at, normal: normal, shift: shift, offset: offsetOf(shift),
		samples: samples, closeSamples: closeSamples(samples), besideSamples: float64(closeSamples(samples)), turns: 1, standsFor: 1}
}

// besideShare is how many looks a part gets that only its element is close for, for each look at what is not close.
const besideShare = 1.0 / 32

// besideOffset is where along what parts return the first look at those falls that only their elements are close for, 0 to 1. Viewpoints
// that look in turn share them out.
func (v *viewpoint) besideOffset() float64 {
	if v.turns > 1 {
		return (float64(v.turn) + 0.5) / float64(v.turns)
	}
	return v.offset
}
