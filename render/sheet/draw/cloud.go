package draw

import (
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/plan/plane"
	"scrimshaw/symbols/ink"
)

// How the cloud of a revision is drawn, mm: scallops bulge outward from a ring about what it is round.
const (
	cloudAir     = 1.3 // from what it is round to the feet of the scallops
	cloudScallop = 2.8 // from foot to foot, about
	cloudBulge   = 0.4 // how far a scallop bulges, as a share of that
	cloudLeast   = 7   // scallops
	cloudRound   = 24  // corners of a ring about a point
)

// cloudRings are the ring that the scallops of a cloud round some points stand on, counter-clockwise, and the ring that holds them.
func cloudRings(points []r2.Vec) (feet, around []r2.Vec) {
	ring := func(air float64) []r2.Vec {
		var all []r2.Vec
		for _, p := range plane.Hull(points) {
			for k := range cloudRound {
				sin, cos := math.Sincos(2 * math.Pi * float64(k) / cloudRound)
				all = append(all, r2.Vec{X: p.X + air*cos, Y: p.Y + air*sin})
			}
		}
		return plane.Hull(all)
	}
	return ring(cloudAir), ring(cloudAir + cloudBulge*cloudScallop)
}

// cloudPath is a line of equal scallops along a convex ring, which bulge outward.
func cloudPath(ring []r2.Vec) ink.Path {
	feet := cloudFeet(ring)
	last := feet[len(feet)-1]
	path := ink.Path{}.MoveTo(last)
	for _, foot := range feet {
		chord := r2.Sub(foot, last)
		// A cubic whose controls stand 4/3 of the bulge out from its feet rises to the bulge in the middle.
		out := r2.Scale(cloudBulge*4/3, r2.Vec{X: chord.Y, Y: -chord.X})
		path = path.CurveTo(r2.Add(last, out), r2.Add(foot, out), foot)
		last = foot
	}
	return path.Close()
}

// cloudFeet are the feet of the scallops along a ring, evenly.
func cloudFeet(ring []r2.Vec) (feet []r2.Vec) {
	closed := append(ring[:len(ring):len(ring)], ring[0])
	length := plane.PathLength(closed)
	n := max(cloudLeast, int(math.Round(length/cloudScallop)))
	for i := range n {
		foot, _ := plane.OnPath(closed, length*float64(i)/float64(n))
		feet = append(feet, foot)
	}
	return feet
}
