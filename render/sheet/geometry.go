package sheet

import (
	"gonum.org/v1/gonum/spatial/r2"

	"scrimshaw/render/carto"
	"scrimshaw/symbols/ink"
)

// mix is the point at a share of the way from p to q.
func mix(p, q r2.Vec, share float64) r2.Vec { return r2.Add(p, r2.Scale(share, r2.Sub(q, p))) }

// middle is the point half way.
func middle(a, b r2.Vec) r2.Vec { return mix(a, b, 0.5) }

func contains(b r2.Box, p r2.Vec) bool {
	return p.X >= b.Min.X && p.X <= b.Max.X && p.Y >= b.Min.Y && p.Y <= b.Max.Y
}

// bearing is the direction of a step in plan, degrees clockwise from up.
func bearing(d r2.Vec) float64 { return ink.Bearing(r2.Vec{}, d) }

// turnedBox is a box about a middle, turned counter-clockwise by degrees.
func turnedBox(centre, size r2.Vec, degrees float64) []r2.Vec {
	along, up := r2.Scale(size.X/2, ink.Direction(90-degrees)), r2.Scale(size.Y/2, ink.Direction(-degrees))
	return []r2.Vec{
		r2.Sub(r2.Sub(centre, along), up), r2.Sub(r2.Add(centre, along), up),
		r2.Add(r2.Add(centre, along), up), r2.Add(r2.Sub(centre, along), up),
	}
}

// meets says whether an outline meets any of those that must not be covered.
func meets(o carto.Obstacle, taken []carto.Obstacle) bool {
	for _, q := range taken {
		if q.Cost == 0 && carto.Overlap(o.Outline, q.Outline) {
			return true
		}
	}
	return false
}

// hard is an obstacle of a box that neither lettering nor leaders may cover.
func hard(b r2.Box) carto.Obstacle {
	return carto.Obstacle{Outline: carto.BoxOutline(b), Leaders: true}
}

// soft is a line that had better not be covered.
func soft(cost float64, a, b r2.Vec) carto.Obstacle {
	return carto.Obstacle{Outline: []r2.Vec{a, b}, Cost: cost}
}
