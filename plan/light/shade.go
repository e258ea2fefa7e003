package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// shadeLamp is a shade made ready, in the scene's coordinates. It is seen as flat figures of one luminance each: the
// facets of its side that face a place, what is seen through the nearer opening of the bands inside, and the bulb there.
type shadeLamp struct {
	at, axis    r3.Vec
	low, high   float64 // radii of the openings, m
	half        float64 // of its height, m
	bulb        float64 // radius, m
	luminance   float64 // of the bulb, cd/m²
	fine, rough shadeFacets
	body        [8]r3.Vec // corners of a box that holds all figures
}

// shadeFacets is a shade as rings of corners with bands between, from the bottom up. A round of the side is a polygon of
// as much area.
type shadeFacets struct {
	rings [][]r3.Vec // counter-clockwise seen from over the axis
	bands []facetBand
}

// facetBand is what the band between two rings shines with, cd/m².
type facetBand struct{ outside, inside float64 }

// overRound is how much farther from the middle than the round, at most, the corners of a polygon lie that has as much area.
const overRound = 1.01

// setBody finds the box that holds all figures.
func (s *shadeLamp) setBody(right, up r3.Vec) {
	wide, high := overRound*max(s.low, s.high, s.bulb), max(s.half, overRound*s.bulb)
	for i := range s.body {
		side := func(bit int, size float64) float64 { return size * float64(2*(i>>bit&1)-1) }
		s.body[i] = r3.Add(s.at, r3.Add(r3.Scale(side(0, wide), right), r3.Add(r3.Scale(side(1, wide), up), r3.Scale(side(2, high), s.axis))))
	}
}

// reach is how far the farthest of it is from its middle, m.
func (s *shadeLamp) reach() float64 { return math.Hypot(s.half, max(s.low, s.high)) }

// over is how high a place lies over the middle along the axis, m.
func (s *shadeLamp) over(p r3.Vec) float64 { return r3.Dot(r3.Sub(p, s.at), s.axis) }

// holds says whether a place lies within the shade.
func (s *shadeLamp) holds(p r3.Vec) bool {
	over := s.over(p)
	if math.Abs(over) > s.half {
		return false
	}
	radius := s.low + (s.high-s.low)*(over+s.half)/(2*s.half)
	return r3.Norm2(r3.Sub(p, s.at))-over*over < radius*radius
}
